"""Every kind that a calculator or a house method asks for, wherever it stands."""

from collections.abc import Iterable, Iterator

from calculators.asking.declaration import Field
from calculators.asking.rows import rows_of
from calculators.catalogue import catalogue
from calculators.documents.house_method.sections import entries, tables
from calculators.values.kind import Kind


def subclasses(kind: type[Kind] = Kind) -> Iterator[type[Kind]]:
    """Every class of kinds that there is once the catalogue is read."""
    catalogue()
    for each in kind.__subclasses__():
        if each.__module__.startswith("calculators."):
            yield each
            yield from subclasses(each)


def asked_kinds() -> dict[str, Kind]:
    """Every kind asked for, with the words that name its place; cells of rows among them."""
    found = {name: kind for each in catalogue().values() for name, kind in _of(each.name, each.fields)}
    columns = [(table.name, column) for table in tables().values() for column in table.columns]
    return {
        **found,
        **{f"house method, {name}": entry.kind for name, entry in entries().items()},
        **{f"house method, {table}, {column.name}": column.kind for table, column in columns},
    }


def _of(place: str, fields: Iterable[Field]) -> Iterator[tuple[str, Kind]]:
    for field in fields:
        yield f"{place}, {field.name}", field.kind
        if (rows := rows_of(field.kind)) is not None:
            yield from _of(f"{place}, {field.name}", rows.columns)
