"""What the browser asks about work tickets: the sheets, a tick, a size that was measured, what is settled on the ticket
itself.

Every question carries ``kind`` and ``kept``: a ``job`` as the text it is kept as, or ``loose``, what was ticked and
measured for the batch that is kept as no job; that one brings its ``typed`` (calculator → field → text), the ruler they
are ``read_on``, the ``measures`` in hand and the ``method`` that the pages follow. A reply that changes something holds
the text to keep under the name of the kind.
"""

import json
from collections.abc import Mapping
from typing import Any

from calculators.batch.follows import into_walk
from calculators.batch.walk import BATCH
from calculators.catalogue import calculator_named
from calculators.documents.house_method.reading import read_method
from calculators.documents.job.change import begun, changed
from calculators.documents.job.difference import label, shown
from calculators.documents.job.format import FIGURES
from calculators.documents.job.merge import merged
from calculators.documents.job.reading import Job, opened, read_job, written_down
from calculators.documents.put_back import Draft, put_back
from calculators.documents.versions import Document
from calculators.faces.job.cloth_of_the_job import what_to_do
from calculators.faces.page.markup import element, html
from calculators.faces.page.questions import Question, Reply, Request, asking_of, house, measures_of, ruler_wanted
from calculators.faces.ticket.page import no_ticket, settle_blanks
from calculators.faces.ticket.sheets import ticket_sheets
from calculators.faces.ticket.sizes import all_together, size_said, square_said
from calculators.faces.ticket.steps import MOST_BOXES, bundles_of, ticked
from calculators.ticket.batch import Batch, NoTicketYet, batch_of
from calculators.ticket.sizes import read_size
from calculators.ticket.steps import ONCE
from calculators.ticket.ticks import Kept, in_other_bundles, one_less, one_more, turned
from calculators.trade.bundles import Bundles
from calculators.values.kind import InvalidValue

JOB, LOOSE = "job", "loose"
OF_THE_WALK = ("typed", "read_on", "method")  # what a loose batch has from the walk, and does not keep a second time


def _ticket(request: Request) -> Reply:
    """{…, "home"} → {"name", "body": HTML, "settle": HTML}: the sheets, or why there are none yet."""
    job = _in_hand(request)
    try:
        batch = _batch(job, request)
        document = job.document
        sheets = ticket_sheets(
            job.name,
            batch,
            document.get("ticks", {}),
            document.get("measured", []),
            document.get("notes", ""),
            {name: document.get(name, "") for name in FIGURES},
        )
    except NoTicketYet as error:
        return {
            "name": job.name,
            "body": html(no_ticket(error))
            + html(
                element(
                    "p",
                    None,
                    element(
                        "a", {"href": f"{request['home']}batch/#{_blank_in_the_batch(error)}"}, "Mend it in the batch"
                    ),
                )
            ),
            "settle": "",
        }
    about_cloth = what_to_do(batch.cloth, job.method, house(request), request["kind"] == JOB, request["home"])
    return {
        "name": job.name,
        "body": "".join(map(html, sheets)),
        "settle": "".join(map(html, settle_blanks(batch, request["home"], about_cloth))),
    }


def _blank_in_the_batch(error: NoTicketYet) -> str:
    """The id of a blank on the page of the batch, where the walk stands first."""
    return f"{BATCH.name}-0-{error.calculator}-{error.field}"


def _tick(request: Request) -> Reply:
    """{…, "step", its "title", and either "by": 1 or -1, or "box": a piece of the box that is turned} → the text to
    keep, and {"done": HTML of the step's boxes}."""
    job, step = _in_hand(request), request["step"]
    bundles = bundles_of(step, _batch(job, request))
    after = _after_tick(job, step, request, bundles)
    text = _kept(job, _tick_changes(step, after), request)
    return {request["kind"]: text, "done": html(ticked(step, request["title"], bundles, after))}


def _after_tick(job: Job, step: str, turn: Mapping[str, Any], bundles: Bundles) -> Kept:
    before: Kept = job.document.get("ticks", {}).get(step, 0)
    if "box" in turn:
        box = next((each for each in bundles.boxes(MOST_BOXES) if turn["box"] in each), None)
        return turned(before, box, bundles) if box else before  # another window may have made the batch smaller
    return one_more(before, bundles) if turn["by"] > 0 else one_less(before, bundles)


def _tick_changes(step: str, after: Kept) -> dict[str, str]:
    return {f"ticks.{step}": json.dumps(after) if after else ""}


def _size(request: Request) -> Reply:
    """{…, "piece", "side": width, length, a diagonal or note, "text"} → the text to keep, {"shown", "refusal", "said",
    "within", "square", "is_square", "all": HTML}.

    What cannot be read as a size is kept as it was typed, with one sentence as "refusal"; what cannot be kept gives
    that sentence alone.
    """
    job, side, text = _in_hand(request), request["side"], request["text"].strip()
    batch = _batch(job, request)
    text, refusal = (text, "") if side == "note" or not text else _written(text, side, batch)
    at = _line_of(request["piece"], job.document)
    try:
        kept = _kept(job, _size_changes(at, request["piece"], side, text), request)
    except InvalidValue as error:
        return {"refusal": refusal or str(error)}
    said, within = ("", True) if side == "note" else size_said(text, side, batch)
    lines = read_job(kept).document["measured"]
    square, is_square = square_said(lines[at], batch)
    every = "".join(map(html, all_together(batch, lines)))
    return {
        request["kind"]: kept,
        "shown": text,
        "refusal": refusal,
        "said": said,
        "within": within,
        "square": square,
        "is_square": is_square,
        "all": every,
    }


def _line_of(piece: str, document: Document) -> int:
    """The number of the line where a piece is measured, or of the one after the last."""
    lines = document.get("measured", [])
    return next((number for number, line in enumerate(lines) if line.get("piece") == piece), len(lines))


def _size_changes(at: int, piece: str, side: str, text: str) -> dict[str, str]:
    return {f"measured.{at}.piece": piece, f"measured.{at}.{side}": text}


def _written(text: str, side: str, batch: Batch) -> tuple[str, str]:
    """A measured size with the unit it was read in, or as it was typed, and one sentence why it could not be read."""
    try:
        read_size(text, side, batch)
        return calculator_named("finished-size").kinds["finished_width"].write_out(text, batch.ruler), ""
    except InvalidValue as error:
        return text, str(error)


def _settle(request: Request) -> Reply:
    """{…, "name": cloth or bundle, "text"} → the text to keep, or for a loose batch's bundle {"typed": {calculator,
    field, text}}; or {"refusal"}."""
    job, text = _in_hand(request), request["text"].strip()
    try:
        if request["name"] == "cloth":
            return {request["kind"]: _kept(job, {"cloth": text}, request)}
        changes = _bundle_changes(job, text, request)
        kept = {request["kind"]: _kept(job, changes, request)}
        if request["kind"] == LOOSE:
            return {
                "typed": {"calculator": "bundles", "field": "bundle", "text": text},
                **(kept if len(changes) > 1 else {}),
            }
        return kept
    except InvalidValue as error:
        return {"refusal": str(error)}


def _bundle_changes(job: Job, text: str, request: Request) -> dict[str, str]:
    """Raises InvalidValue with a sentence where the text is no size of a bundle."""
    if text:
        calculator_named("bundles").field("bundle").kind.parse(text, _batch(job, request).ruler)
    return {"typed.bundles.bundle": text, **_moved(job, text, request)}


def _moved(job: Job, size: str, request: Request) -> dict[str, str]:
    """What has to change among the bundles ticked by number once bundles have another size."""
    ticks = {
        step: kept
        for step, kept in job.document.get("ticks", {}).items()
        if isinstance(kept, list) and step not in ONCE
    }
    if not ticks:
        return {}
    before, after = (
        _batch(each, request).bundles for each in (job, opened(changed(job, {"typed.bundles.bundle": size})))
    )
    moved = {step: in_other_bundles(kept, before, after) for step, kept in ticks.items()}
    return {f"ticks.{step}": json.dumps(kept) if kept else "" for step, kept in moved.items()}


def _merge(request: Request) -> Reply:
    """{"base", "mine", "theirs"} → {"loose": text, "said"}: as for jobs; what another window ticked stays ticked."""
    base, mine, theirs = (_loose(request[name]).document for name in ("base", "mine", "theirs"))
    return {LOOSE: written_down(merged(base, mine, theirs)[0]), "said": ""}


class _BlanksOfATicket:
    """How a job is filled in, on its ticket too: a size at ``7.width``, a turn of a tick at ``ticks.press``, the size
    of its ``bundle``; every other path is one of a change of the job."""

    def __init__(self, request: Request):
        self.request = request

    def changed(self, document: Document, path: str, text: str, ruler: str) -> Document:
        try:
            return self._changed(opened(document), path, text, {**self.request, "ruler": ruler})
        except NoTicketYet as error:
            raise InvalidValue(str(error)) from None

    def _changed(self, job: Job, path: str, text: str, request: Request) -> Document:
        place, *rest = path.split(".")
        if place == "ticks":
            (step,) = rest
            after = _after_tick(job, step, json.loads(text), bundles_of(step, _batch(job, request)))
            return changed(job, _tick_changes(step, after))
        if place == "bundle":
            return changed(job, _bundle_changes(job, text.strip(), request))
        if place.isdecimal():
            (side,) = rest
            if side != "note" and text.strip():
                text, _ = _written(text.strip(), side, _batch(job, request))
            return changed(job, _size_changes(_line_of(place, job.document), place, side, text))
        return changed(job, {path: text}, ruler_wanted(request) if place == "typed" else "")

    def at(self, document: Document, path: str) -> Any:
        place, *rest = path.split(".")
        if place == "bundle":
            return self.at(document, "typed.bundles.bundle")
        if place.isdecimal():
            lines = [*document.get("measured", []), {}]
            return lines[_line_of(place, document)].get(rest[0], "")
        found: Any = document
        for name in (place, *rest):
            found = found.get(name, {})
        return found or ""

    def moved(self, path: str, base: Document, now: Document) -> str:
        return path

    def label(self, path: str, document: Document) -> str:
        place, *rest = path.split(".")
        if place.isdecimal():
            return f"Piece {place}, {rest[0].replace('_', ' ')}"
        return label("typed.bundles.bundle" if place == "bundle" else path)

    def words(self, value: Any) -> str:
        return shown(value)


def _put_back(request: Request) -> Reply:
    """{…, "drafts": [{"path", "texts", "ruler", "base": the text kept when they were typed}, …]} → the text to keep,
    what `PutBack.reply` says, and {"typed": as `_settle` does}. base: null where it is no longer known."""
    job = _in_hand(request)
    drafts = [
        Draft(each["path"], tuple(each["texts"]), each["ruler"], _base(each, request)) for each in request["drafts"]
    ]
    done = put_back(job.document, drafts, _BlanksOfATicket(request))
    reply: Reply = done.reply()
    if (text := _of_kind(done.document, request)) != _of_kind(job.document, request):
        reply[request["kind"]] = text
    if request["kind"] == LOOSE and "bundle" in done.paths:
        size = _BlanksOfATicket(request).at(done.document, "bundle")
        reply["typed"] = {"calculator": "bundles", "field": "bundle", "text": size}
    return reply


def _base(draft: Mapping[str, Any], request: Request) -> Document | None:
    if draft["base"] is None:
        return None
    then: dict[str, Any] = {**request, "kept": draft["base"]}
    if "was" in draft:  # what the batch kept as no job had there, which its ticket does not keep
        of_bundles = {**request["typed"].get("bundles", {}), "bundle": draft["was"]}
        then["typed"] = {**request["typed"], "bundles": of_bundles}
    return _in_hand(then).document


def _in_hand(request: Request) -> Job:
    """The job a question is about. Raises InvalidDocument with a sentence."""
    if request["kind"] == JOB:
        return read_job(request["kept"])
    document = {
        **_loose(request["kept"]).document,
        "typed": into_walk(BATCH, request.get("typed", {}), measures_of(request), asking_of(request, {})),
        "read_on": request.get("read_on", ""),
    }
    if request.get("method"):
        document["method"] = read_method(request["method"])[0]
    return opened(document)


def _loose(text: str) -> Job:
    return read_job(text) if text else opened(begun("batch", "This batch", "batch", ""))


def _batch(job: Job, request: Request) -> Batch:
    return batch_of(job.step_results(ruler_wanted(request)), job.method, job.document.get("cloth", ""))


def _kept(job: Job, changes: Mapping[str, str], request: Request) -> str:
    return _of_kind(changed(job, changes), request)


def _of_kind(document: Document, request: Request) -> str:
    if request["kind"] == LOOSE:
        document = {name: each for name, each in document.items() if name not in OF_THE_WALK}
    return written_down(document)


TICKET_QUESTIONS: dict[str, Question] = {
    "ticket": _ticket,
    "ticket tick": _tick,
    "ticket size": _size,
    "ticket settle": _settle,
    "loose merge": _merge,
    "put back": _put_back,
}
