"""Where two house methods differ, entry by entry, in words a maker can compare."""

from dataclasses import dataclass
from typing import Any

from calculators.house_method import Written, site_document
from calculators.method.change import lines_of, written_at
from calculators.method.format import OPENING, Document
from calculators.method.sections import Rows, entries, sections, tables

RULER_LABELS = {"unit": "Unit read by habit", "cm_step": "Smallest division of the centimetre ruler", "in_step": "Smallest division of the inch ruler"}
HANDBOOKS = "the handbook’s"


@dataclass(frozen=True)
class Difference:
    """One entry that differs: its label, and what stands in each method; empty where nothing does."""

    path: str
    label: str
    one: str
    other: str


def differences(one: Document, other: Document) -> list[Difference]:
    """Every entry in which two methods differ, in the order of the method's sections."""
    found = [Difference(path, label, _shown(one, path), _shown(other, path)) for path, label in _single_paths(one, other)]
    for table in tables().values():
        found += _lines(table, lines_of(one, table.name), lines_of(other, table.name))
    return [each for each in found if each.one != each.other]


def _single_paths(one: Document, other: Document):
    yield "name", "Name"
    yield from ((f"ruler.{name}", label) for name, label in RULER_LABELS.items())
    yield f"texts.{OPENING}", "Your own words, at the start"
    for section in sections():
        yield f"texts.{section.name}", f"Your own words on {section.title.lower()}"
        for entry in section.entries:
            yield f"measures.{entry.name}", entry.label
            yield f"why.measures.{entry.name}", f"{entry.label}: why"
    for name in sorted({*one.get("measures", {}), *other.get("measures", {})} - set(entries())):
        yield f"measures.{name}", name.replace("_", " ")


def _shown(document: Document, path: str) -> str:
    own = in_words(written_at(document, path))
    if own or path.startswith(("texts.", "why.")) or path == "name":
        return own
    sites = in_words(written_at(site_document(), path))
    return f"{sites} ({HANDBOOKS})" if sites else ""


def _lines(table: Rows, one: list[dict[str, Any]], other: list[dict[str, Any]]) -> list[Difference]:
    first = table.columns[0]
    by_name = [{row[first.name].casefold(): row for row in rows} for rows in (one, other)]
    names = {row[first.name].casefold(): row[first.name] for row in (*other, *one)}
    return [
        Difference(f"tables.{table.name}", f"{table.title}: {shown}", *(_line(table, rows.get(name)) for rows in by_name)) for name, shown in names.items()
    ]


def _line(table: Rows, row: dict[str, Any] | None) -> str:
    if row is None:
        return "not there"
    parts = [f"{column.label.lower()} {in_words(row[column.name])}" for column in table.columns[1:] if column.name in row]
    return ", ".join(parts + ([f"why: {row['why']}"] if "why" in row else [])) or "there, with nothing beside it"


def in_words(written: Written) -> str:
    """A measure as one text, with the round figure for the inch ruler beside it where there is one."""
    return written if isinstance(written, str) else f"{written['cm']}, on an inch ruler {written['in']}"
