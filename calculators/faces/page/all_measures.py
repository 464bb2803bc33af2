"""All measures of an answer on the ruler in hand, behind one line to tap."""

import xml.etree.ElementTree as ET

from calculators.asking.declaration import Answer, Calculator, Result
from calculators.faces.page.markup import element, fold
from calculators.faces.page.table import FEW, row, table
from calculators.values.measure import Ruler

_ONE_LINE = 30  # [characters]


def all_measures(calculator: Calculator, answer: Answer, ruler: Ruler) -> ET.Element | None:
    """Every plain result, then the tables that do not go to the work table; None where there is nothing of either."""
    tables = [
        shown
        for each in calculator.results
        if not (each.sheet or each.to_table) and (shown := results_in_columns(each, answer, ruler)) is not None
    ]
    rows = [row(label, _figure(figure)) for label, figure in measures(calculator, answer, ruler)]
    if rows:
        tables.insert(0, table(f"{calculator.title}: all measures", (), rows, (), "results measured"))
    return fold("measures", "All measures", *tables) if tables else None


def _figure(text: str) -> ET.Element:
    """The cell of a figure; words too long for one line of a phone may wrap."""
    return element("td", {"class": "sentence"} if len(text) > _ONE_LINE else None, text)


def measures(calculator: Calculator, answer: Answer, ruler: Ruler) -> list[tuple[str, str]]:
    """The label and the figure of every plain result; two equal ones of like names, one after the other, are one."""
    told: list[tuple[str, str]] = []
    before: Result | None = None
    for result in calculator.results:
        value = answer.results[result.name]
        if result.kind.layout != "figure" or value is None:
            continue
        shown = result.kind.show(value, ruler)
        if (
            before is not None
            and before.kind == result.kind
            and result.kind.in_one_row
            and told[-1][1] == shown
            and (label := both(before.label, result.label))
        ):
            told[-1], before = (label, shown), None
            continue
        told.append((result.label, shown))
        before = result
    return told


def both(one: str, other: str) -> str | None:
    """Two labels that differ in their last word as one: “Mark on edges 1 and 2”, “Cut width and length”; None where
    they differ otherwise."""
    (*start, last), (*other_start, other_last) = one.split(), other.split()
    if not start or start != other_start or last == other_last:
        return None
    if last.isdecimal() and other_last.isdecimal():
        start[-1] += "s"
    return " ".join((*start, last, "and", other_last))


def results_in_columns(result: Result, answer: Answer, ruler: Ruler) -> ET.Element | None:
    """A result that is a table of its own; None for every other, and where it has no row."""
    read, rows = result.kind.table, answer.results[result.name]
    if read is None or not rows:
        return None
    told = [number for number, column in enumerate(read.read) if any(row[column.name] is not None for row in rows)]
    labels = [column.label for column in read.read]
    lines = (
        element("tr", None, *(element("td", {"data-label": labels[number]}, shown[number]) for number in told))
        for shown in (read.cells(row, ruler) for row in rows)
    )
    style = "results many" if len(told) > FEW and not result.sheet else "results"
    heads = [labels[number] for number in told]
    caption = (element("span", {"class": "named"}, f"{result.label}. "), result.meaning)
    return table(result.label, heads, lines, caption, style)
