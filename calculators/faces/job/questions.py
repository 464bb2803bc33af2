"""What the browser asks about jobs. A job travels as the text it is kept as; whatever is wrong with one comes back as
one sentence."""

from collections.abc import Iterator
from contextlib import suppress

from calculators.asking.site_method import site_document
from calculators.batch.follows import into_walk
from calculators.batch.in_hand import begun_with, known_as_in
from calculators.batch.walk import WALKS
from calculators.documents.house_method.difference import same_numbers
from calculators.documents.house_method.reading import read_method
from calculators.documents.house_method.reading import written_down as method_written_down
from calculators.documents.house_method.two_rulers import clashes_told
from calculators.documents.job.change import WORDS, begun, changed
from calculators.documents.job.difference import differences
from calculators.documents.job.format import normal
from calculators.documents.job.merge import merged
from calculators.documents.job.reading import Job, opened, read_job, written_down
from calculators.documents.json_text import InvalidDocument
from calculators.faces.house_method.compare import changes_replies, in_words
from calculators.faces.job.cloth_of_the_job import TAKE_OVER, newer_line
from calculators.faces.job.in_hand import cloths_known
from calculators.faces.job.jobs_page import NONE_YET, job_listed
from calculators.faces.page.markup import element, html
from calculators.faces.page.questions import (
    WORKING,
    Question,
    Reply,
    Request,
    asking_of,
    file_name,
    followed,
    house,
    measures_of,
    ruler_wanted,
)
from calculators.values.kind import InvalidValue


def _listed(request: Request) -> Iterator[Reply]:
    """{"jobs": [{"id", "at", "text"}, …], "ruler", "home"} → {"items": [HTML, …] in the same order, "none": HTML that
    stands where there are none}."""
    items = []
    for job in request["jobs"]:
        items.append(html(job_listed(job, ruler_wanted(request), request["home"])))
        yield WORKING
    yield {"items": items, "none": html(element("p", None, NONE_YET))}


def _new(request: Request) -> Reply:
    """{"id", "at", "walk", "typed", "measures", "loose", "method", "ruler"} → {"job": text}: with the numbers typed so
    far, what the measures in hand come to and the method now followed; or {"trouble": sentence}.

    loose: what was ticked and measured for the batch before it was a job, as its ticket keeps it; it goes over into the
    job.
    """
    name = f"Job of {in_words(request['at']).rpartition(',')[0]}"
    start = begun(request["id"], name, request["walk"], followed(request))
    so_far = into_walk(WALKS[request["walk"]], request["typed"], measures_of(request), asking_of(request, {}))
    typed = {
        f"typed.{calculator}.{field}": text for calculator, texts in so_far.items() for field, text in texts.items()
    }
    try:
        job = changed(opened({**start, **_so_far(request.get("loose", ""))}), typed, ruler_wanted(request))
    except InvalidValue as error:
        return {"trouble": str(error)}
    return {"job": written_down(job)}


def _measures(request: Request) -> Reply:
    """{"job": text} → {"name": of the job, "measures": name in hand → text typed for it, "paths": name in hand → where
    a job keeps it, "without": names of those that it does not begin with}."""
    job = read_job(request["job"])
    walk = WALKS[job.document["walk"]]
    paths = {
        names[0]: (calculator, field)
        for calculator, fields in known_as_in(walk).items()
        for field, names in fields.items()
    }
    typed = job.document.get("typed", {})
    sizes = begun_with(walk, typed)
    paths |= {name: place for name, place in sizes.items() if place}
    measures = {
        name: typed[calculator][field]
        for name, (calculator, field) in paths.items()
        if field in typed.get(calculator, {})
    }
    places = {name: f"typed.{calculator}.{field}" for name, (calculator, field) in paths.items()}
    without = [name for name, place in sizes.items() if not place]
    return {"name": job.document["name"], "measures": measures, "paths": places, "without": without}


def _so_far(loose: str) -> Reply:
    with suppress(InvalidDocument):
        kept = read_job(loose).document if loose else {}
        return {name: kept[name] for name in ("ticks", "measured", "cloth", "notes") if name in kept}
    return {}


def _copy(request: Request) -> Reply:
    """{"job", "id"} → {"job"}: the same batch once more, with nothing ticked or measured yet."""
    job = {**read_job(request["job"]).document, "id": request["id"], "archived": False, "ticks": {}, "measured": []}
    return {"job": written_down(normal({**job, "name": f"{job['name'][:70]}, a copy"}))}


def _opened(request: Request) -> Reply:
    """{"job", "method": the one followed} → {"typed": with units, "method": text, "isApart": whether its numbers are
    others than those followed, "texts": blank → text, "about": HTML, "file": name}."""
    job = read_job(request["job"])
    own = _method_text(job)
    about = [cloths_known([str(row["cloth"]) for row in job.method.tables.get("cloths", ())])]
    is_apart = not same_numbers(
        *(read_method(each)[0] if each else site_document() for each in (own, followed(request)))
    )
    if is_apart:
        about += [
            element(
                "p",
                None,
                f"The measures here are those of “{job.method.name}”, as they stood when they came into this job. "
                "The other pages show other numbers. ",
                newer_line(job.document.get("cloth", ""), job.method, house(request)),
            ),
            element("p", None, element("button", {"type": "button", "data-do": "method"}, TAKE_OVER)),
        ]
    if told := [*job.messages.values(), *clashes_told(job.document.get("method", {}))]:
        about.append(element("ul", {"class": "notes"}, *(element("li", None, sentence) for sentence in told)))
    texts = {name: job.document.get(name, "") for name in ("name", "cloth", *WORDS)}
    return {
        "typed": job.typed,
        "method": own,
        "isApart": is_apart,
        "texts": texts,
        "about": "".join(map(html, about)),
        "file": file_name("job", job.name),
    }


def _change(request: Request) -> Reply:
    """{"job", "changes": path → text, "ruler"} → {"job": text} or {"refusal": sentence}. Paths: see
    calculators.documents.job.change."""
    try:
        return {"job": written_down(changed(read_job(request["job"]), request["changes"], ruler_wanted(request)))}
    except InvalidValue as error:
        return {"refusal": str(error)}


def _merge(request: Request) -> Reply:
    """{"base", "mine", "theirs"} → {"job": text, "said": sentence, empty when nothing was changed on both sides}."""
    document, both = merged(*(read_job(request[name]).document for name in ("base", "mine", "theirs")))
    said = "; ".join(
        f"{each.label}: here “{each.other or 'nothing'}” stands, there it was “{each.one or 'nothing'}”"
        for each in both
    )
    return {"job": written_down(document), "said": f"This was changed in another window too. {said}." if said else ""}


def _changes(request: Request) -> Iterator[Reply]:
    """{"versions": [{"at", "revision", "text"}, …] oldest first} → {"body": HTML}: what changed when, newest first."""
    return changes_replies(
        request["versions"], lambda before, after: differences(read_job(before).document, read_job(after).document)
    )


def _method_text(job: Job) -> str:
    return method_written_down(job.document["method"]) if "method" in job.document else ""


JOB_QUESTIONS: dict[str, Question] = {
    "jobs": _listed,
    "new job": _new,
    "copy job": _copy,
    "job opened": _opened,
    "job change": _change,
    "job merge": _merge,
    "job changes": _changes,
    "job measures": _measures,
}
