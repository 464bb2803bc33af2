"""The job a walk is filled in for: the line above the walk, and the places below it for the maker's own figures and
notes."""

import xml.etree.ElementTree as ET

from calculators.documents.job.format import LONGEST_NAME, LONGEST_NOTE, LONGEST_NOTES
from calculators.faces.page.markup import element

OWN_FIGURES = (
    "What you measured, or know better than the sum above, goes here. On the work ticket your own figure "
    "stands in "
    "its place."
)
WITHOUT_A_JOB = "There is a place for each once the batch is kept as a job."
CLOTHS = "cloths-of-the-house"
FIGURES = {"thread": "Thread", "time": "Time", "cost": "Cost"}


def job_line(home: str) -> ET.Element:
    """What stands above a walk; a script shows the part that fits. home: the way from the page back to the top of the
    site."""
    without = element(
        "p", {"class": "without-job", "hidden": True},
        element("button", {"type": "button", "data-do": "keep"}, "Keep this as a job"),
        " to tick it off and come back to it. ",
        element("a", {"href": f"{home}house/jobs/"}, "Jobs kept here"),
    )  # fmt: skip
    named = element(
        "p", {"class": "named"},
        element("label", None, "Job: ",
            element("input",
                {"name": "name", "type": "text", "maxlength": str(LONGEST_NAME), "spellcheck": "false",
                    "autocomplete": "off"})),
        " – every change is kept.",
    )  # fmt: skip
    cloth = element(
        "p",
        None,
        element(
            "label",
            None,
            "Cloth: ",
            element(
                "input",
                {
                    "name": "cloth",
                    "type": "text",
                    "maxlength": str(LONGEST_NAME),
                    "list": CLOTHS,
                    "autocomplete": "off",
                },
            ),
        ),
    )
    ways = element(
        "p", {"class": "ways-on"},
        element("button", {"type": "button", "data-do": "stop"}, "Put the job down"), " ",
        element("a", {"class": "to-ticket", "href": f"{home}house/ticket/"}, "Its work ticket"), " ",
        element("a", {"href": f"{home}house/jobs/"}, "All jobs"),
    )  # fmt: skip
    changes = element(
        "details",
        {"class": "job-changes"},
        element("summary", None, "What was changed when, and the way back"),
        element("div", {"class": "listed"}),
    )
    return element(
        "div", {"class": "jobs job-in-hand"},
        without,
        element("div", {"class": "with-job", "hidden": True}, named, _refusal("name"), cloth, _refusal("cloth"), ways,
            element("div", {"class": "about-job"}), changes),
        element("p", {"class": "said", "role": "status"}),
    )  # fmt: skip


def job_places(number: int, place: str) -> ET.Element:
    """What comes after the last step of a walk: the maker's own figures, and her notes.

    number: of this heading. place: a word that keeps ids apart.
    """
    return step_of_walk(
        element("h2", {"id": f"{place}-figures"}, f"{number}. Your own figures and notes"),
        element("p", None, OWN_FIGURES, " ", element("span", {"class": "without-job"}, WITHOUT_A_JOB)),
        element(
            "div", {"class": "jobs with-job", "hidden": True},
            *(_area(name, f"{label}: your own figure", LONGEST_NOTE, place) for name, label in FIGURES.items()),
            _area("notes", "Notes on the job", LONGEST_NOTES, place),
        ),
    )  # fmt: skip


def step_of_walk(heading: ET.Element, *content: ET.Element | None) -> ET.Element:
    """A step behind its heading and, where it has one, its answer: tapped, it opens."""
    answer = [each for each in content if each is not None and each.get("class") == "step-answer"]
    rest = [each for each in content if each not in answer]
    return element("details", {"class": "walk-step"}, element("summary", None, heading, *answer), *rest)


def _area(name: str, label: str, longest: int, place: str) -> ET.Element:
    identity = f"{place}-{name}"
    return element(
        "div", {"class": "field"},
        element("label", {"for": identity}, label),
        element("textarea",
            {"id": identity, "name": name, "rows": "1" if name in FIGURES else "3", "maxlength": str(longest)}),
        _refusal(name),
    )  # fmt: skip


def _refusal(name: str) -> ET.Element:
    return element("p", {"class": "refusal", "data-field": name, "hidden": True})


def cloths_known(names: list[str]) -> ET.Element:
    """The cloths of the house method, offered where the job names its own."""
    return element("datalist", {"id": CLOTHS}, *(element("option", {"value": name}) for name in names))
