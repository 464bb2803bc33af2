"""Changing a method one entry at a time, as its form does; every entry has a path, such as ``measures.turn``."""

import re
from typing import Any

from calculators.asking.house_method import RULER_STEPS, Written, money_of
from calculators.asking.site_method import site_document
from calculators.documents.house_method.check import read_text
from calculators.documents.house_method.format import (
    LONGEST_TEXT,
    LONGEST_VALUE,
    LONGEST_WHY,
    MOST_ROWS,
    normal,
)
from calculators.documents.house_method.kinds_of_steps import COLUMN, TABLE, check_kinds
from calculators.documents.house_method.reading import LONGEST
from calculators.documents.house_method.sections import Entry, entries, tables
from calculators.documents.house_method.two_rulers import rewritten
from calculators.documents.json_text import unshowable, write_json
from calculators.documents.versions import Document
from calculators.values.kind import InvalidValue
from calculators.values.measure import quote


def changed(document: Document, path: str, typed: str, unit: str) -> Document:
    """The document with one entry changed; an empty text gives the entry back to the site's method.

    path: ``name``, ``ruler.unit``, ``measures.turn``, ``why.measures.turn``, ``texts.hems``,
    ``tables.cloths.0.needle``,
    ``why.tables.cloths.0``, ``tables.cloths.0`` to take the line out, or ``tables.cloths`` to go back to the site's
    lines.
    unit: of the ruler in hand, in which a bare number is read and for which a round figure is meant.
    Raises InvalidValue with a sentence for the person; KeyError for a path that no form has.
    """
    typed = typed.replace("\r\n", "\n").strip()
    if unshowable(typed):
        raise InvalidValue("That holds characters that cannot be shown. Type it again.")
    place, *rest = path.split(".")
    made = normal(_CHANGES[place]({**document}, rest, typed, unit))
    if len(write_json(made)) > LONGEST:
        raise InvalidValue(
            f"There is no room for this: all that is written in a method comes to {LONGEST:,} characters at most. "
            "Shorten it, or something else that is written here."
        )
    return made


def lines_of(document: Document, table: str) -> list[dict[str, Any]]:
    """The lines of a table as they stand: the document's own, be it none, or the site's until one of them is
    changed."""
    own = document.get("tables", {})
    return [*(own[table] if table in own else site_document().get("tables", {}).get(table, []))]


def written_at(document: Document, path: str) -> Written:
    """What the document itself says at a path, empty if nothing; for a table, what stands in its lines."""
    place, *rest = path.split(".")
    if place == "why" and rest[0] == "measures":
        return _why(document.get("measures", {}).get(rest[1], ""))
    if place == "measures":
        return _value(document.get("measures", {}).get(rest[0], ""))
    if "tables" in (place, *rest[:1]):
        name, number, column = (rest[1], rest[2], "why") if place == "why" else rest
        lines = lines_of(document, name)
        return lines[int(number)].get(column, "") if int(number) < len(lines) else ""
    found: Written = document.get(place, {}).get(rest[0], "") if rest else document.get(place, "")
    return found


def with_its_line(path: str, before: Document, now: Document) -> str | None:
    """The path of the same entry in a later state of a method: a line of a table is known by its name.

    None where its line is gone, or another has its place.
    """
    line = re.fullmatch(r"((?:why\.)?tables\.(\w+)\.)(\d+)(\.\w+)?", path)
    if not line:
        return path
    start, table, number, column = line[1], line[2], int(line[3]), line[4] or ""
    first = tables()[table].columns[0].name
    then, there = ([row[first].casefold() for row in lines_of(each, table)] for each in (before, now))
    name = then[number] if number < len(then) else None
    if name is not None and there.count(name) == 1:
        return f"{start}{there.index(name)}{column}"
    return path if column == f".{first}" or number >= max(len(then), len(there)) else None


def text_at(document: Document, path: str) -> str:
    """The same where one text stands for every ruler: a name, a division, a reason, words of her own."""
    written = written_at(document, path)
    if not isinstance(written, str):
        raise TypeError(f"{path} has a figure for each ruler")
    return written


def _name(document: Document, rest: list[str], typed: str, unit: str) -> Document:
    if not typed:
        raise InvalidValue("A method needs a name. Give it one, such as Summer linen.")
    return {**document, "name": _short(typed, LONGEST_VALUE)}


def _ruler(document: Document, rest: list[str], typed: str, unit: str) -> Document:
    (name,) = rest
    choices = tuple(RULER_STEPS) if name == "unit" else RULER_STEPS[name.removesuffix("_step")]
    if typed and typed not in choices:
        raise InvalidValue(f"“{quote(typed)}” is not one of the choices: {', '.join(choices)}.")
    return {**document, "ruler": {**document.get("ruler", {}), name: typed}}


def _measures(document: Document, rest: list[str], typed: str, unit: str) -> Document:
    (name,) = rest
    measures = document.get("measures", {})
    old = measures.get(name, "")
    value = _with_value(entries()[name], _value(old), typed, unit, _money(document))
    return {**document, "measures": {**measures, name: {"value": value, "why": _why(old)}}}


def _tables(document: Document, rest: list[str], typed: str, unit: str) -> Document:
    if len(rest) == 1:
        return {
            **document,
            "tables": {name: lines for name, lines in document.get("tables", {}).items() if name != rest[0]},
        }
    name, number, *column = rest
    table, lines = tables()[name], lines_of(document, name)
    place = int(number)
    if not 0 <= place <= len(lines) or place >= MOST_ROWS:
        raise InvalidValue(f"There is room for {MOST_ROWS} lines here.")
    if not column:
        del lines[place : place + 1]
        return _with_lines(document, name, lines)
    entry = next(each for each in table.columns if each.name == column[0])
    row = lines[place] if place < len(lines) else {}
    if entry is table.columns[0]:
        if not typed and row:
            raise InvalidValue(f"Name {table.one}, or take the whole line out.")
        value: Written = _short(typed, LONGEST_VALUE)
    elif not row:
        raise InvalidValue(f"Name {table.one} first, in “{table.columns[0].label}”.")
    else:
        if (name, entry.name) == (TABLE, COLUMN):
            check_kinds(typed, lines_of(document, "pieces"))
        value = _with_value(entry, row.get(entry.name, ""), typed, unit, _money(document))
    lines[place : place + 1] = [{**row, entry.name: value}]
    return _with_lines(document, name, lines)


def _reasons(document: Document, rest: list[str], typed: str, unit: str) -> Document:
    place, name, *number = rest
    typed = _short(typed, LONGEST_WHY)
    if place == "measures":
        measures = document.get("measures", {})
        entries()[name]
        return {**document, "measures": {**measures, name: {"value": _value(measures.get(name, "")), "why": typed}}}
    lines = lines_of(document, name)
    if not 0 <= int(number[0]) < len(lines):
        raise InvalidValue(f"Name {tables()[name].one} first, in “{tables()[name].columns[0].label}”.")
    lines[int(number[0])] = {**lines[int(number[0])], "why": typed}
    return _with_lines(document, name, lines)


def _texts(document: Document, rest: list[str], typed: str, unit: str) -> Document:
    (name,) = rest
    return {**document, "texts": {**document.get("texts", {}), name: _short(typed, LONGEST_TEXT)}}


_CHANGES = {"name": _name, "ruler": _ruler, "measures": _measures, "tables": _tables, "why": _reasons, "texts": _texts}


def _with_lines(document: Document, name: str, lines: list[dict[str, Any]]) -> Document:
    return {**document, "tables": {**document.get("tables", {}), name: lines}}


def _money(document: Document) -> str:
    return money_of(document) or money_of(site_document())


def _with_value(entry: Entry, old: Written, typed: str, unit: str, money: str) -> Written:
    """The value of an entry with a text for the ruler in hand; what was meant for the other ruler follows it."""
    text = read_text(entry, typed, unit, money) if typed else ""
    _short(text, LONGEST_VALUE)
    return rewritten(old, text, entry.kind)


def _short(text: str, longest: int) -> str:
    if len(text) > longest:
        raise InvalidValue(f"That is {len(text):,} characters long. Keep it to {longest:,}.")
    return text


def _value(written: Any) -> Written:
    return written if isinstance(written, str) or "cm" in written else written.get("value", "")


def _why(written: Any) -> str:
    return "" if isinstance(written, str) else written.get("why", "")
