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


def differences(one: Document, other: Document, as_followed: bool = False) -> list[Difference]:
    """Every entry in which two methods differ, in the order of the method's sections.

    as_followed: an entry left to the handbook counts as the handbook's measure, which is what is followed.
    """
    found = []
    for path, label in _single_paths(one, other):
        if _said(one, path, as_followed) != _said(other, path, as_followed):
            found.append(Difference(path, label, _shown(one, path), _shown(other, path)))
    for table in tables().values():
        found += [each for each in _lines(table, lines_of(one, table.name), lines_of(other, table.name)) if each.one != each.other]
    return found


def _said(document: Document, path: str, as_followed: bool) -> str:
    """What a method says at a path, or what is followed in its place."""
    own = in_words(written_at(document, path))
    falls_back = path.startswith(("measures.", "ruler.")) or (path.startswith("why.") and not written_at(document, path.removeprefix("why.")))
    return own or (in_words(written_at(site_document(), path)) if as_followed and falls_back else "")


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
    return f"{HANDBOOKS} {sites}" if sites else ""


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
    return written if isinstance(written, str) else f"{written['cm']} ({written['in']})"
