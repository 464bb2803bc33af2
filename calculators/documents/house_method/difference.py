"""Where two house methods differ, entry by entry, in words a maker can compare."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from calculators.asking.house_method import RULER_STEPS, Written, on_ruler
from calculators.asking.site_method import site_document
from calculators.documents.house_method.change import lines_of, written_at
from calculators.documents.house_method.format import OPENING
from calculators.documents.house_method.sections import MethodTable, entries, sections, tables
from calculators.documents.versions import Document
from calculators.values.kind import InvalidValue, Kind
from calculators.values.measure import Ruler

RULER_LABELS = {
    "unit": "Unit read by habit",
    "cm_step": "Smallest division of the centimetre ruler",
    "in_step": "Smallest division of the inch ruler",
}
HANDBOOKS = "the handbook’s"
NOT_THERE = "not there"
_RULERS = tuple(Ruler(unit, Fraction(RULER_STEPS[unit][0])) for unit in ("cm", "in"))


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
        if not same(_written(one, path, as_followed), _written(other, path, as_followed), _kind_at(path)):
            found.append(Difference(path, label, _shown(one, path, as_followed), _shown(other, path, as_followed)))
    for table in tables().values():
        found += _lines(table, lines_of(one, table.name), lines_of(other, table.name))
    return found


def label(path: str, document: Document) -> str:
    """What an entry of a method is called."""
    place, *rest = path.removeprefix("why.").split(".")
    why = ": why" if path.startswith("why.") else ""
    if place != "tables":
        return dict(_single_paths(document, document)).get(path, path)
    table, lines = tables()[rest[0]], lines_of(document, rest[0])
    number = int(rest[1])
    name = table.called(lines[number]) if number < len(lines) else "a new line"
    column = {each.name: each.label.lower() for each in table.columns}.get(rest[2] if len(rest) > 2 else "", "")
    return f"{table.title}: {name}{f', {column}' if column else ''}{why}"


def same_numbers(one: Document, other: Document) -> bool:
    """Whether two methods, as they are followed, say the same in all but their names, their reasons and their own
    words."""
    return not any(
        each
        for each in differences(_bare(one), _bare(other), as_followed=True)
        if each.path.startswith(("measures.", "ruler.", "tables."))
    )


def _bare(document: Document) -> Document:
    """The method without the reasons in its tables; those that are the handbook's written out."""
    lines = {
        name: [{column: each for column, each in row.items() if column != "why"} for row in lines_of(document, name)]
        for name in tables()
    }
    return {**document, "tables": lines}


def same(one: Written, other: Written, kind: Kind | None) -> bool:
    """Whether two measures mean the same on every ruler, however they are written: 3.2 m and 320 cm are one length.

    kind: how they are read; None for words.
    """
    if one == other or not (one and other and kind):
        return one == other
    try:
        return all(_read(one, kind, ruler) == _read(other, kind, ruler) for ruler in _RULERS)
    except InvalidValue:
        return False


def _read(written: Written, kind: Kind, ruler: Ruler) -> Any:
    return kind.parse(on_ruler(written, ruler), ruler)


def _kind_at(path: str) -> Kind | None:
    place, _, name = path.partition(".")
    return entries()[name].kind if place == "measures" and name in entries() else None


def _written(document: Document, path: str, as_followed: bool) -> Written:
    """What a method says at a path, or what is followed in its place."""
    own = written_at(document, path)
    falls_back = path.startswith(("measures.", "ruler.")) or (
        path.startswith("why.") and not written_at(document, path.removeprefix("why."))
    )
    return own or (written_at(site_document(), path) if as_followed and falls_back else "")


def _single_paths(one: Document, other: Document) -> Iterator[tuple[str, str]]:
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


def _shown(document: Document, path: str, as_followed: bool) -> str:
    own = in_words(written_at(document, path))
    if path.startswith("why.") and not own:
        sites = in_words(_written(document, path, as_followed))
        return f"{HANDBOOKS}: {sites}" if sites else ""
    if own or path.startswith("texts.") or path == "name":
        return own
    sites = in_words(written_at(site_document(), path))
    return f"{HANDBOOKS} {sites}" if sites else ""


def _lines(table: MethodTable, one: list[dict[str, Any]], other: list[dict[str, Any]]) -> Iterator[Difference]:
    """Cell by cell; a line that only one of them has, as a whole."""
    first, *others = table.columns
    by_name = [{row[first.name].casefold(): row for row in rows} for rows in (one, other)]
    names = {row[first.name].casefold(): row[first.name] for row in (*other, *one)}
    for name, shown in names.items():
        here, there = (rows.get(name) for rows in by_name)
        label = f"{table.title}: {shown}"
        if here is None or there is None:
            yield Difference(f"tables.{table.name}", label, _line(table, here), _line(table, there))
            continue
        for column, title, kind in (*((each.name, each.label, each.kind) for each in others), ("why", "Why", None)):
            if not same(here.get(column, ""), there.get(column, ""), kind):
                yield Difference(
                    f"tables.{table.name}",
                    f"{label}, {title.lower()}",
                    in_words(here.get(column, "")),
                    in_words(there.get(column, "")),
                )


def _line(table: MethodTable, row: dict[str, Any] | None) -> str:
    if row is None:
        return NOT_THERE
    parts = [
        f"{column.label.lower()} {in_words(row[column.name])}" for column in table.columns[1:] if column.name in row
    ]
    return "; ".join(parts + ([f"why: {row['why']}"] if "why" in row else [])) or "there, with nothing beside it"


def in_words(written: Written) -> str:
    """A measure as one text, with the round figure for the inch ruler beside it where there is one."""
    return written if isinstance(written, str) else f"{written['cm']} ({written['in']})"
