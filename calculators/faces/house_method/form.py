"""A house method as a page to fill in: the same sections as the sheet, with a blank for every measure and its
reason."""

import xml.etree.ElementTree as ET
from typing import Any

from calculators.asking.house_method import RULER_STEPS, HouseMethod, Written, on_ruler
from calculators.asking.site_method import site_document
from calculators.documents.house_method.change import lines_of, text_at, written_at
from calculators.documents.house_method.difference import RULER_LABELS
from calculators.documents.house_method.format import LONGEST_TEXT, LONGEST_WHY, MOST_ROWS, OPENING
from calculators.documents.house_method.kinds_of_steps import COLUMN, TABLE, unknown_kinds
from calculators.documents.house_method.reading import house_of
from calculators.documents.house_method.sections import Entry, MethodTable, Section, entries, sections, tables
from calculators.documents.versions import Document
from calculators.faces.house_method.sheet import heading_id, jump_list
from calculators.faces.page.keyboard import keyboard
from calculators.faces.page.markup import LONGEST_LINE, Attributes, Content, add, element
from calculators.faces.page.two_figures import beside_blank, clash_told, in_both
from calculators.values.kind import Kind
from calculators.values.measure import Ruler

WRITING_HELP = (
    "Leave a line empty to begin a new paragraph; begin a line with a dash for a list. Two stars before and after a "
    "word make it bold, one makes it italic. For a link write its words in square brackets, and its address in round "
    "ones straight after."
)


def form(document: Document, ruler: Ruler) -> list[ET.Element]:
    """The whole method with a blank for everything in it, read and shown on the ruler in hand."""
    method = house_of(document)
    opening = _area(document, f"texts.{OPENING}", "Your own words, at the start", WRITING_HELP, LONGEST_TEXT)
    return [
        element(
            "section",
            {"class": "house"},
            _row("name", "Name of this method", "What you call it.", _input("name", document["name"], in_words=True)),
            opening,
        ),
        jump_list(),
        element(
            "section",
            {"class": "house"},
            element("h2", {"id": heading_id("ruler")}, "Ruler"),
            *(_ruler(document, name, label) for name, label in RULER_LABELS.items()),
        ),
        *(_section(section, document, method, ruler) for section in sections()),
    ]


def fallback(path: str, kind: Kind, ruler: Ruler, method: HouseMethod) -> list[Content]:
    """The words under a blank that is left empty: what stands in for it."""
    name = path.removeprefix("measures.")
    if name in method.because:
        return ["Left empty: ", *in_both(method.measures[name], kind, ruler), f", {method.because[name]}."]
    sites = written_at(site_document(), path)
    return ["Left empty: the handbook’s ", *in_both(sites, kind, ruler), "."] if sites else ["Left empty: not settled."]


def stands_in_blank(document: Document, path: str, ruler: Ruler) -> tuple[str, str]:
    """What stands in a blank of the form, and what is said under it of the other ruler. path: of an entry or a cell
    that has a value."""
    method, (place, name, *rest) = house_of(document), path.split(".")
    if place == "measures":
        written, kind = method.measures.get(name, ""), entries()[name].kind
    else:
        number, column = rest
        written = method.tables[name][int(number)].get(column, "")
        kind = next(each.kind for each in tables()[name].columns if each.name == column)
    return on_ruler(written, ruler), beside_blank(path, kind, ruler, method, written)


def _section(section: Section, document: Document, method: HouseMethod, ruler: Ruler) -> ET.Element:
    made = element(
        "section",
        {"class": "house"},
        element("h2", {"id": heading_id(section.name)}, section.title),
        element("p", {"class": "about"}, section.about),
    )
    for entry in section.entries:
        add(made, _entry(document, f"measures.{entry.name}", entry, method, ruler))
    if section.rows:
        add(made, element("h3", None, section.rows.title), *_lines(section.rows, document, method, ruler))
    add(made, _area(document, f"texts.{section.name}", f"Your own words on {section.title.lower()}", "", LONGEST_TEXT))
    return made


def _ruler(document: Document, name: str, label: str) -> ET.Element:
    path = f"ruler.{name}"
    now, sites = text_at(document, path), text_at(site_document(), path)
    choices = RULER_STEPS if name == "unit" else RULER_STEPS[name.removesuffix("_step")]
    unit = "" if name == "unit" else f" {name.removesuffix('_step')}"
    words = {"": f"the handbook’s ({sites}{unit})", **{each: f"{each}{unit}" for each in choices}}
    return _row(path, label, "", _select(path, words, now))


def _entry(document: Document, path: str, entry: Entry, method: HouseMethod, ruler: Ruler) -> ET.Element:
    own = written_at(document, path)
    now = method.measures.get(entry.name, "") if own else ""
    left_empty = element(
        "p", {"class": "fallback", "data-for": path, "hidden": bool(own)}, *fallback(path, entry.kind, ruler, method)
    )
    return element(
        "div",
        {"class": "settle"},
        _row(
            path,
            entry.label,
            entry.help,
            _blank(path, entry, now, ruler),
            left_empty,
            *_beside(path, entry, now, method, ruler),
        ),
        _reason(document, f"why.{path}", entry.label),
    )


def _beside(path: str, entry: Entry, now: Written, method: HouseMethod, ruler: Ruler) -> list[ET.Element | None]:
    """What is said under a blank of its figure for the other ruler."""
    words = beside_blank(path, entry.kind, ruler, method, now) if now else ""
    return [
        element("p", {"class": "other-ruler", "data-for": path, "hidden": not words}, words),
        clash_told(path, method),
    ]


def _blank(path: str, entry: Entry, now: Written, ruler: Ruler) -> ET.Element:
    text = on_ruler(now, ruler) if now else ""
    if entry.kind.control == "list":
        return _select(path, {"": "", **entry.kind.choices}, text)
    return _input(path, text, keyboard(entry.kind), in_words=entry.kind.in_words)


def _lines(rows: MethodTable, document: Document, method: HouseMethod, ruler: Ruler) -> list[ET.Element]:
    lines = lines_of(document, rows.name)
    made = [_line(rows, document, number, line, method, ruler) for number, line in enumerate(lines)]
    if len(lines) < MOST_ROWS:
        made.append(_line(rows, document, len(lines), {}, method, ruler))
    if rows.name in document.get("tables", {}):
        made.append(
            element(
                "p",
                None,
                element(
                    "button", {"type": "button", "data-take-out": f"tables.{rows.name}"}, "Back to the handbook’s list"
                ),
            )
        )
    return made


def _line(
    rows: MethodTable, document: Document, number: int, line: dict[str, Any], method: HouseMethod, ruler: Ruler
) -> ET.Element:
    path = f"tables.{rows.name}.{number}"
    name = rows.called(line)
    made = element(
        "details",
        {"class": "line", "data-line": path, "open": any(each.startswith(f"{path}.") for each in method.clashing)},
        element("summary", None, name or f"Add {rows.one}"),
    )
    stands = method.tables[rows.name][number] if line else {}
    for column in rows.columns:
        cell, now = f"{path}.{column.name}", stands.get(column.name, "")
        unusable = _unusable(column.name, now, rows, document)
        add(
            made,
            _row(
                cell,
                column.label,
                column.help,
                _blank(cell, column, now, ruler),
                *_beside(cell, column, now, method, ruler),
                refusal=unusable,
            ),
        )
        if unusable:
            made.set("open", "")
    if name:
        add(made, _reason(document, f"why.{path}", name))
        add(made, element("p", None, element("button", {"type": "button", "data-take-out": path}, f"Take out {name}")))
    return made


def _unusable(column: str, now: Written, rows: MethodTable, document: Document) -> str:
    """The sentence for a cell that names what the method no longer has, or never had; empty where all is well, or the
    line is the handbook’s."""
    if (rows.name, column) != (TABLE, COLUMN) or rows.name not in document.get("tables", {}):
        return ""
    return unknown_kinds(str(now), lines_of(document, "pieces"))


def _reason(document: Document, path: str, label: str) -> ET.Element:
    return _area(document, path, f"Why: {label}", "", LONGEST_WHY, lines="1", shown="Why")


def _row(path: str, label: str, help: str, control: ET.Element, *more: Content, refusal: str = "") -> ET.Element:
    control.set("aria-describedby", f"{_id(path)}-help {_id(path)}-refusal")
    if refusal:
        control.set("aria-invalid", "true")
    return element(
        "div",
        {"class": "field"},
        element("label", {"for": _id(path)}, label),
        control,
        *more,
        element(
            "p", {"class": "refusal", "id": f"{_id(path)}-refusal", "data-field": path, "hidden": not refusal}, refusal
        ),
        element("p", {"class": "help", "id": f"{_id(path)}-help"}, help) if help else None,
    )


def _area(
    document: Document, path: str, label: str, help: str, longest: int, lines: str = "3", shown: str = ""
) -> ET.Element:
    text = text_at(document, path)
    attributes: Attributes = {
        "id": _id(path),
        "name": path,
        "rows": lines,
        "maxlength": str(longest),
        "aria-label": label if shown else None,
    }
    return _row(
        path, shown or label, help, element("textarea", attributes, f"\n{text}" if text.startswith("\n") else text)
    )


def _input(path: str, text: str, typed_on: Attributes | None = None, in_words: bool = False) -> ET.Element:
    return element(
        "input",
        {
            "class": "in-words" if in_words else None,
            "id": _id(path),
            "name": path,
            "type": "text",
            **(typed_on or {}),
            "maxlength": str(LONGEST_LINE),
            "value": text,
            "spellcheck": "false",
            "size": str(max(12, len(text) + 2)),
        },
    )


def _select(path: str, words: dict[str, str], now: str) -> ET.Element:
    return element(
        "select",
        {"id": _id(path), "name": path},
        *(element("option", {"value": key, "selected": key == now}, shown) for key, shown in words.items()),
    )


def _id(path: str) -> str:
    return path.replace(".", "-")
