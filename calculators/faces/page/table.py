"""Tables of results: a caption, heads, and rows, in a box that scrolls where they are wider than a phone."""

import xml.etree.ElementTree as ET
from collections.abc import Iterable, Sequence

from calculators.faces.page.markup import Content, element

PAIR = 2  # columns that fit on every phone
FEW = 3  # columns that stand side by side on a phone


def table(
    label: str,
    heads: Iterable[str],
    rows: Iterable[ET.Element],
    caption: Sequence[Content] | None = None,
    style: str = "results",
) -> ET.Element:
    """A table in its box.

    label: what it is called where nothing of it is seen, and its caption. heads: of its columns, none where each row
    has its own. rows: as elements.
    caption: what stands over it in place of the label; nothing where that is empty.
    """
    over = (label,) if caption is None else caption
    columns = [element("th", {"scope": "col"}, head) for head in heads]
    return scrolling(
        element(
            "table",
            {"class": style},
            element("caption", None, *over) if over else None,
            element("thead", None, element("tr", None, *columns)) if columns else None,
            element("tbody", None, *rows),
        ),
        label,
    )


def row(head: str, *cells: ET.Element) -> ET.Element:
    """A row with its head."""
    return element("tr", None, element("th", {"scope": "row"}, head), *cells)


def row_of_name(name: str, *cells: Sequence[Content]) -> ET.Element:
    """A row about what is written in code by a name, and what stands in its further cells."""
    coded = element("td", None, element("code", None, name))
    return element("tr", None, coded, *(element("td", None, *cell) for cell in cells))


def scrolling(table: ET.Element, label: str) -> ET.Element:
    """A table that may be wider than a phone, in a box that scrolls by touch and by keyboard; one of many columns can
    be read line by line there. One of two columns is never wider."""
    if max((len(row) for row in table.iter("tr")), default=0) <= PAIR:
        return element("div", {"class": "wide"}, table)
    heads = ["".join(each.itertext()) for each in table.findall("thead/tr/th")]
    rows = [row for row in table.iter("tr") if len(row.findall("td")) and len(row) == len(heads)]
    if (
        (len(heads) > FEW or table.find("tbody/tr/td/code") is not None)
        and rows
        and not any(cell.get("data-label") for row in rows for cell in row)
    ):
        table.set("class", f"{table.get('class', '')} by-line".strip())
        for row in rows:
            for cell, head in zip(row, heads):
                cell.set("data-label", head)
    return element("div", {"class": "wide", "tabindex": "0", "role": "region", "aria-label": label}, table)
