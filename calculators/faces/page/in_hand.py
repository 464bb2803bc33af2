"""The line at the top of a page that says what is in hand, and the list in which each measure can be changed or put
down; of a job in hand, by its name."""

import xml.etree.ElementTree as ET
from collections.abc import Mapping
from typing import Any

from calculators.asking.answering import Asking
from calculators.batch.in_hand import MEASURES, field_of
from calculators.faces.page.keyboard import keyboard
from calculators.faces.page.markup import NOT_SEARCHED, Content, element
from calculators.values.kind import InvalidValue
from calculators.values.measure import Ruler

#: Named first, since a maker knows her work by them.
_KNOWN_BY = ("pieces", "finished_width", "finished_length", "cut_width", "cut_length", "hem")
_IN_THE_LINE = 4  # measures; more would take a second line on a phone


def in_hand() -> ET.Element:
    """The place for the line in a built page, where nothing is in hand yet."""
    return element("div", {"class": "in-hand", "hidden": True, **NOT_SEARCHED})


def follows() -> ET.Element:
    """What is said below the line where the numbers in the text are hers."""
    words = "The numbers in the text are yours, as you wrote them on other pages."
    return element("p", {"class": "follows", "hidden": True, **NOT_SEARCHED}, words)


def in_hand_lines(
    measures: Mapping[str, Mapping[str, Any]], job: Mapping[str, str], asking: Asking
) -> list[ET.Element]:
    """What stands in it.

    measures: name → ``text`` as it was typed, ``readOn`` the ruler of a bare number. job: ``id`` and ``name`` of the
    job in hand, ``home`` the address of the site; empty where it is of no job.
    """
    there = [name for name in MEASURES if name in measures]
    named = [job["name"]] if job else []
    refused = [name for name in there if _read(name, measures[name], asking)[1]]
    told = [name for name in sorted(there, key=_place) if name not in refused]
    said = named + [_said(name, measures[name], asking) for name in told[: _IN_THE_LINE - len(named)]]
    if more := len(told) + len(named) - len(said):
        said.append(f"{more} more")
    if refused:
        said.append(f"{MEASURES[refused[0]] if len(refused) == 1 else len(refused)} to mend")
    rows = [_row(name, measures[name], asking) for name in there]
    return [
        element(
            "details",
            None,
            element(
                "summary",
                None,
                element("b", None, "Your measures: "),
                " · ".join(said),
                " ",
                element("u", None, "change"),
            ),
            element("ul", None, *rows) if rows else None,
            _ways(job)
            if job
            else element("p", None, element("button", {"type": "button", "data-put-down": ""}, "Put all of it down")),
        )
    ]


def _ways(job: Mapping[str, str]) -> ET.Element:
    mark, home = f"#job={job['id']}", job["home"]
    return element(
        "p",
        {"class": "ways-on"},
        element("a", {"href": f"{home}batch/{mark}"}, "Its batch"),
        " ",
        element("a", {"href": f"{home}house/ticket/{mark}"}, "Its work ticket"),
        " ",
        element("a", {"href": f"{home}house/jobs/"}, "Other jobs"),
        " ",
        element("button", {"type": "button", "data-job-put-down": ""}, "Put the job down"),
    )


def _place(name: str) -> int:
    return _KNOWN_BY.index(name) if name in _KNOWN_BY else len(_KNOWN_BY)


def _said(name: str, measure: Mapping[str, Any], asking: Asking) -> str:
    text, _ = _read(name, measure, asking)
    return f"{MEASURES[name]} {text}" if name != "pieces" else f"{text} pieces"


def _row(name: str, measure: Mapping[str, Any], asking: Asking) -> ET.Element:
    text, refusal = _read(name, measure, asking)
    label = MEASURES[name]
    put_down = {"type": "button", "data-put-down": name, "aria-label": f"Put down: {label}"}
    parts: list[Content] = [
        element("label", None, f"{label} ", _blank(name, str(measure["text"]))),
        " ",
        element("button", put_down, "Put down"),
    ]
    if refusal:
        parts.append(element("p", {"class": "refusal"}, f"{refusal}"))
    return element("li", None, *parts)


def _blank(name: str, text: str) -> ET.Element:
    kind = field_of(name).kind
    if not kind.choices:
        common = {"type": "text", "data-measure": name, "value": text, "maxlength": "200"}
        return element("input", {**common, **keyboard(kind)})
    options = (
        element("option", {"value": each, **({"selected": True} if each == text else {})}, words)
        for each, words in kind.choices.items()
    )
    return element("select", {"data-measure": name}, *options)


def _read(name: str, measure: Mapping[str, Any], asking: Asking) -> tuple[str, str]:
    """What was typed with its unit, and why it cannot be read, empty where it can."""
    kind, text = field_of(name).kind, str(measure["text"])
    ruler = _ruler(measure, asking)
    try:
        kind.parse(text, ruler)
    except InvalidValue as problem:
        return text, f"{MEASURES[name]}: {problem}"
    return kind.house_text(kind.write_out(text, ruler), ruler), ""


def _ruler(measure: Mapping[str, Any], asking: Asking) -> Ruler:
    wanted = str(measure.get("readOn", ""))
    return asking.method.ruler(wanted if asking.method.offers(wanted) else "")
