"""The format of a house method, explained entry by entry from its own declaration."""

import json
import xml.etree.ElementTree as ET

from calculators.asking.house_method import FORMAT, VERSION
from calculators.asking.site_method import site_method
from calculators.documents.house_method.format import LONGEST_TEXT, LONGEST_VALUE, LONGEST_WHY, MOST_ROWS
from calculators.documents.house_method.sections import Entry, Section, sections
from calculators.faces.page.markup import Content, element
from calculators.faces.page.table import row_of_name, table
from calculators.faces.page.two_figures import in_both

EXAMPLE = {
    "format": FORMAT,
    "version": VERSION,
    "name": "Summer linen",
    "ruler": {"unit": "cm", "in_step": "1/32"},
    "measures": {
        "turn": {"value": {"cm": "1.2 cm", "in": "1/2 in"}, "why": "Thin cloth frays further."},
        "hem": "2.4 cm",
    },
    "tables": {"pieces": [{"piece": "Napkin", "hem": "1.8 cm"}]},
    "texts": {"hems": "Turn once, press, turn again."},
}


def method_format() -> ET.Element:
    """What may stand in a house method, with an example."""
    written = json.dumps(EXAMPLE, ensure_ascii=False, indent=2)
    return element(
        "div", {"class": "reference"},
        element("pre", None, element("code", None, written)),
        element("p", None, f"A value has at most {LONGEST_VALUE} characters, a reason {LONGEST_WHY}, the studio’s "
            f"own words {LONGEST_TEXT:,}; a table {MOST_ROWS} lines."),
        *(part for section in sections() for part in _section(section)),
    )  # fmt: skip


def _section(section: Section) -> list[ET.Element]:
    parts = [
        element("h2", {"id": section.name}, section.title),
        element("p", None, f"Own words: texts.{section.name}. {section.about}"),
    ]
    if section.entries:
        parts.append(
            _table(
                f"measures: {section.title.lower()}",
                [(entry, _value(entry)) for entry in section.entries],
                "The handbook’s",
            )
        )
    if section.rows:
        parts.append(
            _table(
                f"tables.{section.rows.name}: {section.rows.title.lower()}",
                [(column, []) for column in section.rows.columns],
                None,
            )
        )
    return parts


def _value(entry: Entry) -> list[Content]:
    method = site_method()
    return in_both(method.measures[entry.name], entry.kind, method.ruler())


def _table(caption: str, lines: list[tuple[Entry, list[Content]]], last: str | None) -> ET.Element:
    heads = ("Name", "Label", "Meaning", *([last] if last else []))
    rows = (row_of_name(entry.name, [entry.label], [entry.help], *([value] if last else [])) for entry, value in lines)
    return table(caption, heads, rows)
