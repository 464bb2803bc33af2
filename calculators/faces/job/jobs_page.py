"""The page of jobs: every job this browser keeps, what it came to, and what can be done with it."""

import xml.etree.ElementTree as ET
from collections.abc import Iterable

from calculators.asking.answering import Asking
from calculators.documents.job.reading import Job, read_job
from calculators.documents.json_text import InvalidDocument
from calculators.faces.house_method.compare import in_words
from calculators.faces.page.answer_html import spoken_text
from calculators.faces.page.markup import Content, element

NONE_YET = (
    "No job is kept in this browser yet. Begin one here, or fill in the batch and press “Keep this as a job” there."
)
WHERE = "The jobs that this browser keeps are listed here."
UNREADABLE = "A job that cannot be read here"
PIECES = "pieces-from-cloth"
DO = {
    "copy": "Duplicate",
    "archive": "Move to finished jobs",
    "back": "Back to work",
    "file": "Save to a file",
    "share": "Share as a link",
    "remove": "Delete",
}


def jobs_page() -> ET.Element:
    """The whole page below its first words; what a browser keeps is filled in by a script."""
    return element(
        "div", {"class": "jobs jobs-page"},
        element("div", {"class": "tools", "hidden": True},
            element("button", {"type": "button", "class": "first", "data-do": "new"}, "Begin a new job")),
        element("p", {"class": "said", "role": "status"}),
        element("p", {"class": "reminder"}),
        element("div", {"class": "listed"}, element("p", None, WHERE)),
    )  # fmt: skip


def job_listed(record: dict[str, str], ruler: str, home: str) -> ET.Element:
    """One line of the list of jobs.

    record: ``{"id", "at", "text"}`` of its newest. ruler: as for HouseMethod.ruler. home: the way back to the top of
    the site.
    """
    return _item(_opened(record["text"]), record, ruler, home)


def pieces_of(job: Job, ruler: str) -> str:
    """What the job's cloth gives, in one line, worked out now."""
    step_result = next((each for each in job.stops(ruler) if each.calculator.name == PIECES), None)
    if not step_result or not step_result.answer:
        return "Its pieces cannot be worked out yet: a blank needs mending."
    width, length = (
        step_result.asking.text(step_result.calculator.field(name)) for name in ("piece_width", "piece_length")
    )
    in_hand = Asking({}, method=job.method, wanted_ruler=ruler).ruler
    pieces = spoken_text(step_result.calculator, step_result.answer, in_hand)
    return f"{pieces} Each is cut {width} by {length}."


def _opened(text: str) -> Job | str:
    try:
        return read_job(text)
    except InvalidDocument as error:
        return str(error)


def _item(job: Job | str, record: dict[str, str], ruler: str, home: str) -> ET.Element:
    here = f"#job={record['id']}"
    if isinstance(job, str):
        head, words, ways = element("strong", None, UNREADABLE), element("p", {"class": "trouble"}, job), []
        can: tuple[str, ...] = ("file", "remove")
    else:
        head = element("a", {"href": f"{home}batch/{here}"}, job.name)
        words = element("p", None, pieces_of(job, ruler))
        ways = [
            element("a", {"href": f"{home}batch/{here}"}, "Open"),
            element("a", {"href": f"{home}house/ticket/{here}"}, "Work ticket"),
        ]
        can = ("copy", "back" if job.document.get("archived") else "archive", "file", "share", "remove")
    name = UNREADABLE if isinstance(job, str) else job.name
    buttons = (
        element(
            "button",
            {"type": "button", "data-do": what, "data-job": record["id"], "aria-label": f"{DO[what]}: {name}"},
            DO[what],
        )
        for what in can
    )
    changed = element(
        "p",
        {"class": "changed"},
        "Last changed ",
        element("time", {"datetime": record["at"]}, in_words(record["at"])),
        ".",
    )
    return element(
        "li",
        {"data-job": record["id"]},
        element("h2", None, head),
        words,
        changed,
        element("p", {"class": "job-tools"}, *_spaced([*ways, *buttons])),
        element("div", {"class": "shared", "hidden": True}),
    )


def _spaced(parts: Iterable[Content]) -> list[Content]:
    return [each for part in parts for each in (part, " ")][:-1]
