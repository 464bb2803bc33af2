"""A house method as a page to read and to print: the studio's own words, its measures, and why, section by section."""

import xml.etree.ElementTree as ET

from calculators.asking.house_method import HouseMethod, Written, on_ruler
from calculators.documents.house_method.difference import HANDBOOKS
from calculators.documents.house_method.format import OPENING
from calculators.documents.house_method.sections import Entry, MethodTable, Section, sections
from calculators.faces.page.markup import Content, add, element
from calculators.faces.page.studio_text import studio_text
from calculators.faces.page.table import row, table
from calculators.faces.page.two_figures import clash_told, in_both
from calculators.values.measure import Ruler, show_length

RULER_SENTENCE = "Read in {unit}. The centimetre ruler is divided into {cm}, the inch ruler into {inch}."


def sheet(method: HouseMethod, ruler: Ruler) -> list[ET.Element]:
    """The whole method, its measures on the ruler in hand."""
    return [
        *_words(method, OPENING),
        jump_list(),
        element(
            "section",
            {"class": "house"},
            element("h2", {"id": heading_id("ruler")}, "Ruler"),
            element("p", None, _ruler(method)),
        ),
        *(_section(section, method, ruler) for section in sections()),
    ]


def jump_list() -> ET.Element:
    """The way to every section of a method, as a list of links."""
    titles = {"ruler": "Ruler", **{section.name: section.title for section in sections()}}
    links = (
        element("li", None, element("a", {"href": f"#{heading_id(name)}"}, title)) for name, title in titles.items()
    )
    return element("nav", {"class": "jump-list", "aria-label": "Sections of the method"}, element("ul", None, *links))


def heading_id(section: str) -> str:
    """The place of a section in the page."""
    return f"house-{section}"


def _ruler(method: HouseMethod) -> str:
    cm, inch = (show_length(method.rulers[unit].step_mm, method.rulers[unit]) for unit in ("cm", "in"))
    return RULER_SENTENCE.format(
        unit={"cm": "centimetres", "mm": "millimetres", "in": "inches"}[method.unit], cm=cm, inch=inch
    )


def _section(section: Section, method: HouseMethod, ruler: Ruler) -> ET.Element:
    made = element(
        "section",
        {"class": "house"},
        element("h2", {"id": heading_id(section.name)}, section.title),
        element("p", {"class": "about"}, section.about),
    )
    add(made, *_words(method, section.name))
    if section.entries:
        add(made, element("dl", {"class": "settled"}, *(_entry(entry, method, ruler) for entry in section.entries)))
    if section.rows and method.tables.get(section.rows.name):
        add(made, *_lines(section.rows, method, ruler))
    elif section.rows:
        add(made, element("p", None, f"{section.rows.title}: nothing is listed."))
    return made


def _words(method: HouseMethod, name: str) -> list[ET.Element]:
    words = method.texts.get(name, "")
    return [element("div", {"class": "own-words"}, *studio_text(words))] if words else []


def _entry(entry: Entry, method: HouseMethod, ruler: Ruler) -> ET.Element:
    written = method.measures.get(entry.name, "")
    path = f"measures.{entry.name}"
    shown = in_both(written, entry.kind, ruler, method.follows.get(path, "")) if written else ["not settled yet"]
    value = element("dd", {"class": "value"}, *shown, clash_told(path, method))
    if written and is_handbooks(method, path):
        add(value, " ", element("span", {"class": "whose"}, HANDBOOKS))
    elif entry.name in method.because:
        add(value, " ", element("span", {"class": "whose"}, method.because[entry.name]))
    why = method.why.get(path)
    return element(
        "div", None, element("dt", None, entry.label), value, element("dd", {"class": "why"}, why) if why else None
    )


def is_handbooks(method: HouseMethod, path: str) -> bool:
    """Whether an entry is the handbook's, in a method that a studio settled."""
    return not method.is_example and path not in method.own


def _lines(rows: MethodTable, method: HouseMethod, ruler: Ruler) -> list[ET.Element]:
    made: list[ET.Element] = []
    for number, line in enumerate(method.tables[rows.name]):
        cells = (
            _cell(f"tables.{rows.name}.{number}.{column.name}", line.get(column.name, ""), column, method, ruler)
            for column in rows.columns[1:]
        )
        made.append(row(rows.called(line), *cells))
        if "why" in line:
            why = element("td", {"colspan": str(len(rows.columns))}, on_ruler(line["why"], ruler))
            made.append(element("tr", {"class": "why"}, why))
    caption: list[Content] = [rows.title]
    if is_handbooks(method, f"tables.{rows.name}"):
        caption += [" ", element("span", {"class": "whose"}, HANDBOOKS)]
    return [table(rows.title, [column.label for column in rows.columns], made, caption)]


def _cell(path: str, written: Written, column: Entry, method: HouseMethod, ruler: Ruler) -> ET.Element:
    return (
        element(
            "td", None, *in_both(written, column.kind, ruler, method.follows.get(path, "")), clash_told(path, method)
        )
        if written
        else element("td")
    )
