"""The check of a method's values: whatever cannot be used is taken out and answered with one sentence at its place."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

from calculators.asking.house_method import RULER_STEPS, Written
from calculators.asking.site_method import site_method
from calculators.documents.house_method.format import normal
from calculators.documents.house_method.sections import Entry, entries, tables
from calculators.documents.versions import Document
from calculators.values.kind import InvalidValue, Kind
from calculators.values.measure import Ruler

UNNAMED = "A method without a name"
_BARE = {unit: Ruler(unit, Fraction(steps[0])) for unit, steps in RULER_STEPS.items()}


def mended(document: Document) -> tuple[Document, dict[str, str]]:
    """A document of the right shape with only what can be used, and the sentence for every place that lost something.

    A measure that no calculator here knows is kept as it stands: another edition of the handbook may know it.
    """
    document = normal(document)
    messages: dict[str, str] = {}
    measures = {}
    for name, written in document.get("measures", {}).items():
        entry = entries().get(name)
        kept = _kept(entry, written, f"measures.{name}", messages) if entry else written
        measures[name] = kept
    made = {
        **document,
        "name": document.get("name") or UNNAMED,
        "measures": measures,
        "tables": {name: _rows(name, rows, messages) for name, rows in document.get("tables", {}).items()},
    }
    return normal(made), messages


def read_value(entry: Entry, written: Written, unit: str = "", money: str = "") -> Written:
    """A value with its units written out.

    unit: the unit of a bare number; without one, the unit the house reads by habit. money: what a typed amount may be
    in; without one, in any.
    Raises InvalidValue with a sentence.
    """
    if not isinstance(written, str):
        return {each: _text(entry.kind, text, each, money) for each, text in written.items()}
    return read_text(entry, written, unit, money)


def read_text(entry: Entry, text: str, unit: str = "", money: str = "") -> str:
    """The same of a value that is one text."""
    return _text(entry.kind, text, unit or site_method().unit, money)


def _text(kind: Kind, text: str, unit: str, money: str) -> str:
    ruler = replace(_BARE[unit], money=money)
    kind.parse(text, ruler)
    return kind.write_out(text.strip(), ruler)


def _kept(entry: Entry, written: Any, path: str, messages: dict[str, str]) -> Any:
    """A measure without the value that cannot be used; its reason stays."""
    value = written if isinstance(written, str) or "cm" in written else written.get("value", "")
    if not value:
        return written
    try:
        value = read_value(entry, value)
    except InvalidValue as problem:
        messages[path] = f"{entry.label}: {problem}"
        value = ""
    return {**written, "value": value} if isinstance(written, Mapping) and "why" in written else value


def _rows(name: str, rows: list[dict[str, Any]], messages: dict[str, str]) -> list[dict[str, Any]]:
    first, *others = tables()[name].columns
    kept = []
    for number, row in enumerate(rows):
        path = f"tables.{name}.{number}"
        if not isinstance(row.get(first.name), str):
            messages[f"{path}.{first.name}"] = (
                f"{first.label}: nothing is written here. Name {tables()[name].one}, and the rest of its line is kept."
            )
            continue
        made = {key: row[key] for key in (first.name, "why") if key in row}
        for column in others:
            if column.name in row:
                made[column.name] = _kept(column, row[column.name], f"{path}.{column.name}", messages)
        kept.append(made)
    return kept
