"""How each number was checked, as a page of the handbook and as a part of each calculator's reference page."""

import xml.etree.ElementTree as ET
from collections.abc import Iterable

from calculators.asking.bibliography import source_named
from calculators.asking.declaration import Calculator
from calculators.catalogue import catalogue
from calculators.faces.page.markup import NOT_SEARCHED, Content, element
from calculators.faces.page.table import scrolling
from scripts.checked.cases import EXACT, FOLDER, WITHOUT_SOURCE, Case, cases, why_fewer
from scripts.checked.quantity import printed_value
from scripts.plan_cases.cases import read

_HEADS = ("Given", "Printed", "Ours", "Difference", "Source", "How it was seen")
_SEEN = {"read": "read in a copy", "second-hand": "second-hand", "memory": "from memory"}
_VALUES = {"library": "worked out by a library", "rule": "rule {seen}, number ours", "ours": "number ours"}
_MORE_PLACES = 1  # than the source prints, so that what was rounded away is seen
_PLACES = 4  # of a number that the source gives exactly
_CUTTING_TASKS = FOLDER.parent / "trade" / "lay_plan" / "instances"


def checked(home: str) -> ET.Element:
    """The page: for every calculator the values it is held against. home: the way to the top of the site."""
    listed = (element("li", None, element("a", {"href": f"#{each.name}"}, each.title)) for each in catalogue().values())
    parts = [part for each in catalogue().values() for part in _of_calculator(each, home)]
    return element("div", {"class": "reference"}, element("ul", None, *listed), *parts)


def in_numbers() -> dict[str, int]:
    """How many values there are, whose they are, and how many tasks the lay plans are held against besides."""
    sources = {case.source for case in cases() if case.value == "source"}
    return {
        "printed": sum(case.value == "source" for case in cases()),
        "sources": len(sources),
        "library": sum(case.value == "library" for case in cases()),
        "ours": sum(not case.outside for case in cases()),
        "cutting": sum(len(list(read(file.read_text("utf-8")))) for file in _CUTTING_TASKS.glob("*.json")),
    }


def summary() -> ET.Element:
    """The same numbers in a few sentences."""
    many = in_numbers()
    return element(
        "p", None,
        f"{many['printed']} values printed by {many['sources']} sources are worked out here from what the source "
            f"gives, and {many['library']} by libraries "
        f"made for other things. {many['ours']} more are ours: worked out by a rule that a source prints, or by "
            f"arithmetic. For lay plans, {many['cutting']} "
        "published cutting tasks are solved besides at every test.",
    )  # fmt: skip


def held_against(calculator: Calculator, home: str) -> list[ET.Element]:
    """What stands about it on the calculator's reference page: its values from outside, or why there are so few."""
    link = element("a", {"href": f"{home}reference/checked/#{calculator.name}"}, "How each number was checked")
    return [
        element("h2", {"id": "checked"}, "Held against"),
        *_why_fewer(calculator),
        *_table(calculator, (case for case in cases() if case.calculator == calculator.name and case.outside), home),
        element("p", None, "All of it: ", link, "."),
    ]


def _of_calculator(calculator: Calculator, home: str) -> Iterable[ET.Element]:
    own = [case for case in cases() if case.calculator == calculator.name]
    yield element(
        "h2", {"id": calculator.name}, element("a", {"href": f"{home}reference/{calculator.name}/"}, calculator.title)
    )
    yield from _why_fewer(calculator)
    yield from _table(calculator, own, home)


def _why_fewer(calculator: Calculator) -> list[ET.Element]:
    reason = why_fewer().get(calculator.name)
    return [element("p", {"class": "why-fewer"}, reason)] if reason else []


def _table(calculator: Calculator, some: Iterable[Case], home: str) -> list[ET.Element]:
    rows = [
        element(
            "tr",
            None,
            *(element("td", {"data-label": head}, cell) for head, cell in zip(_HEADS, _cells(case, home), strict=True)),
        )
        for case in some
    ]
    if not rows:
        return []
    head = element("tr", None, *(element("th", {"scope": "col"}, words) for words in _HEADS))
    table = element(
        "table", {"class": "results many", **NOT_SEARCHED}, element("thead", None, head), element("tbody", None, *rows)
    )
    return [element("div", {"class": "answer"}, scrolling(table, f"{calculator.title}: values checked"))]


def _cells(case: Case, home: str) -> tuple[Content, ...]:
    number, unit = printed_value(case.printed)
    difference = case.ours - float(number)
    apart = "none" if case.apart(case.ours) <= 0 else _shown(difference, case, unit)
    return _first(case.said), case.printed, _shown(case.ours, case, unit), apart, _source(case, home), _seen(case)


def _first(said: str) -> str:
    return said[0].upper() + said[1:]


def _shown(number: float, case: Case, unit: str) -> str:
    """A number, one place finer than the source prints it, without zeros that say nothing."""
    places = _PLACES if case.rounding == EXACT else len(case.rounding.partition(".")[2]) + _MORE_PLACES
    text = f"{number:,.{places}f}".rstrip("0").rstrip(".").replace("-", "−")
    return f"{text}{unit}" if unit == "°" else f"{text} {unit}".rstrip()


def _source(case: Case, home: str) -> ET.Element | str:
    if case.source in WITHOUT_SOURCE:
        return "arithmetic" if case.source == "derived" else case.source
    source = source_named(case.source)
    return element("a", {"href": f"{home}reference/sources/#{source.key}", "title": source.cited}, source.short)


def _seen(case: Case) -> str:
    seen = _SEEN.get(case.seen, "")
    return _VALUES[case.value].format(seen=seen) if case.value in _VALUES else seen
