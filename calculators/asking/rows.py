"""Several rows of the same questions, such as an order of mixed pieces: read from a table on a page or from one line of
text.

At a terminal a row's cells are parted by ``|`` and rows by ``;`` or a new line: ``napkin | 40 cm | 40 cm | 24; runner |
…``.
A page sends the same as JSON, a list of rows that are lists of texts, so that any character may stand in a cell.
"""

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from random import Random
from types import SimpleNamespace
from typing import Any, ClassVar

from calculators.asking.declaration import Field
from calculators.values.kind import Control, InvalidValue, Kind
from calculators.values.measure import Ruler

LONGEST_TABLE, MOST_EMPTY = 20_000, 100


@dataclass(frozen=True)
class Rows(Kind):
    """Rows of values. columns: a field for each cell, its `fixed` text filling a cell left empty.

    one: what one row is called, such as "piece". least: how many rows there must be. A row whose cells are all empty or
    hold just
    what they start from is not counted; `place` of each row read is where it stands among all of them, from 0.
    rarer: the last columns, if they are seldom changed; on a phone they wait behind *more*.
    told_as: how a folded row is told in one line: groups of columns, each with what stands between them.
    called: what columns are called by what the first of the row holds: column → first cell → label; elsewhere their own
    label.
    """

    columns: tuple[Field, ...] = ()
    one: str = "row"
    most: int = 40
    least: int = 1
    rarer: tuple[str, ...] = ()
    told_as: tuple[tuple[str, tuple[str, ...]], ...] = ()
    called: Mapping[str, Mapping[str, str]] = field(default_factory=dict, hash=False)
    control: ClassVar[Control] = "rows"

    def __post_init__(self) -> None:
        if self.rarer and tuple(column.name for column in self.columns[-len(self.rarer) :]) != self.rarer:
            raise ValueError(f"{self.rarer} are not the last columns of a {self.one}")

    def parse(self, text: str, ruler: Ruler) -> tuple[SimpleNamespace, ...]:
        rows = [(place, row) for place, row in enumerate(self.cells(text)) if self._counts(row)]
        if len(rows) < self.least:
            raise InvalidValue(f"nothing is written here. Write at least one {self.one}.")
        if len(rows) > self.most:
            raise self._too_many(len(rows))
        return tuple(self._row(number, place, row, ruler) for number, (place, row) in enumerate(rows, start=1))

    def _counts(self, row: list[str]) -> bool:
        return any(cell != begins_with(column) for cell, column in zip(row, self.columns) if cell)

    def cells(self, text: str) -> list[list[str]]:
        """The text of every cell, as many in each row as there are columns; raises InvalidValue when a row has more, or
        the whole is longer than any table."""
        if len(text) > LONGEST_TABLE:
            raise InvalidValue(
                f"that is {len(text)} characters long, and all rows together have at most {LONGEST_TABLE}. Put the "
                "rest in a second order."
            )
        rows = (
            _from_json(text) if text.lstrip().startswith("[") else [row.split("|") for row in re.split(r"[;\n]", text)]
        )
        if len(rows) > MOST_EMPTY + self.most:
            raise self._too_many(len(rows))
        if too_long := next((number for number, row in enumerate(rows, start=1) if len(row) > len(self.columns)), None):
            raise InvalidValue(
                f"row {too_long} has more than {len(self.columns)} parts. They are: "
                f"{' | '.join(c.label for c in self.columns)}."
            )
        return [[cell.strip() for cell in row] + [""] * (len(self.columns) - len(row)) for row in rows]

    @property
    def line(self) -> list[tuple[str, list[int]]]:
        """As `told_as`, each column by its place from 0; where nothing is said, all but the rarer ones."""
        names = [column.name for column in self.columns]
        told = self.told_as or ((", ", tuple(name for name in names if name not in self.rarer)),)
        return [(between, [names.index(name) for name in group]) for between, group in told]

    def in_one_line(self, row: list[str]) -> str:
        """A row as it is told while it is folded, such as “12× Napkin, 46 cm × 46 cm”; what one is called where nothing
        is written."""
        words = [column.kind.choices.get(cell, cell) for column, cell in zip(self.columns, row)]
        groups = (between.join(words[at] for at in places if words[at]) for between, places in self.line)
        return ", ".join(filter(None, groups)) or self.one.capitalize()

    def label(self, column: Field, row: Sequence[str]) -> str:
        """What a column is called in a row that holds these cells."""
        return self.called.get(column.name, {}).get(row[0], column.label)

    def _too_many(self, rows: int) -> InvalidValue:
        return InvalidValue(
            f"there are {rows} rows, and {self.most} is the most that works. Put the rest in a second order."
        )

    def standing(self, text: str) -> str:
        return json.dumps([row for row in self.cells(text) if any(row)], ensure_ascii=False)

    def write_out(self, text: str, ruler: Ruler) -> str:
        rows = [
            [column.kind.write_out(cell, ruler) if cell else "" for column, cell in zip(self.columns, row)]
            for row in self.cells(text)
        ]
        return json.dumps(rows, ensure_ascii=False)

    def show(self, value: tuple[SimpleNamespace, ...], ruler: Ruler) -> str:
        return "; ".join(" | ".join(self._shown(row, column, ruler) for column in self.columns) for row in value)

    def plain(self, value: tuple[SimpleNamespace, ...]) -> list[dict[str, Any]]:
        return [
            {c.name: None if getattr(row, c.name) is None else c.kind.plain(getattr(row, c.name)) for c in self.columns}
            for row in value
        ]

    def write(self, value: tuple[SimpleNamespace, ...], ruler: Ruler) -> str:
        return json.dumps(
            [[self._written(row, column, ruler) for column in self.columns] for row in value], ensure_ascii=False
        )

    def samples(self, chance: Random, near: str = "") -> list[str]:
        usual = [row for row in self.cells(near) if self._counts(row)] if near else []
        some = [self._sample(chance, chance.choice(usual or [[]])) for _ in range(chance.randint(1, 3))]
        orders = [rows for rows in (usual, some, [*usual, *some]) if len(rows) <= self.most]
        texts = [json.dumps(rows, ensure_ascii=False) for rows in orders]
        in_one_line = ["; ".join(" | ".join(row) for row in rows) for rows in orders if not _has_marks(rows)]
        return [text for text in (*texts, *in_one_line) if sum(map(self._counts, self.cells(text))) >= self.least]

    def invalid_samples(self, chance: Random) -> list[str]:
        row = self._sample(chance, [])
        told = [
            [*row[:place], wrong, *row[place + 1 :]]
            for place, column in enumerate(self.columns)
            for wrong in column.kind.invalid_samples(chance)
        ]
        too_many = [[*row, "one more"]], [row] * (self.most + 1)
        orders = [json.dumps(rows) for rows in (*too_many, *([each] for each in told))]
        return ['[["', "[1]", '["1"]', *orders, *(["", "[]", " | "] if self.least else [])]

    def _sample(self, chance: Random, near: list[str]) -> list[str]:
        """A row by chance that is let through, some cells left as they begin. near: a row to stay near to."""
        cells = near or [begins_with(column) for column in self.columns]
        made = [chance.choice(each.kind.samples(chance, cell)) for each, cell in zip(self.columns, cells)]
        may_be_empty = [each.optional or bool(each.fixed) for each in self.columns]
        row = ["" if may and chance.random() < 0.3 else cell for may, cell in zip(may_be_empty, made)]
        return row if self._counts(row) else made

    def _shown(self, row: SimpleNamespace, column: Field, ruler: Ruler) -> str:
        value = getattr(row, column.name)
        return "" if value is None else column.kind.show(value, ruler)

    def _written(self, row: SimpleNamespace, column: Field, ruler: Ruler) -> str:
        value = getattr(row, column.name)
        return "" if value is None else column.kind.write(value, ruler)

    def _row(self, number: int, place: int, row: list[str], ruler: Ruler) -> SimpleNamespace:
        values: dict[str, Any] = {"place": place}
        for column, cell in zip(self.columns, row):
            text = cell or begins_with(column)
            if not text and column.optional:
                values[column.name] = None
                continue
            try:
                if not text:
                    raise InvalidValue("nothing is written here.")
                values[column.name] = column.kind.parse(text, ruler)
            except InvalidValue as problem:
                raise InvalidValue(f"row {number}, {self.label(column, row)}: {problem}") from None
        return SimpleNamespace(**values)


def _has_marks(rows: list[list[str]]) -> bool:
    """Whether a cell holds what parts cells or rows where they stand in one line of text."""
    return any(mark in cell for row in rows for cell in row for mark in "|;\n[")


def begins_with(column: Field) -> str:
    """What a cell of a column starts from, alike on every ruler; raises TypeError where a column says otherwise."""
    if isinstance(column.fixed, Mapping):
        raise TypeError(f"{column.name}: a cell cannot start from a figure for each ruler")
    return column.fixed or ""


def rows_of(kind: Kind) -> Rows | None:
    """A kind that is asked in rows; None for every other."""
    return kind if isinstance(kind, Rows) else None


def _from_json(text: str) -> list[list[str]]:
    try:
        rows = json.loads(text)
    except (ValueError, RecursionError):
        rows = None
    if not isinstance(rows, list) or not all(
        isinstance(row, list) and all(isinstance(cell, str) for cell in row) for row in rows
    ):
        raise InvalidValue("this does not read as rows. Write one row after another, its parts separated by |.")
    return rows
