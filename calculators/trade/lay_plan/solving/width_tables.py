"""Tables over the widths that pieces side by side can reach, kept as is quickest: all widths at once, or the few there
are in a list."""

from collections.abc import Callable, Iterable, Sequence
from operator import add, itemgetter
from typing import Any, Protocol

from calculators.trade.lay_plan.solving.normal_patterns import NormalPatterns
from calculators.trade.lay_plan.solving.packed_fields import PackedFields

DENSE = 8  # as many single widths for each reachable one are quick enough all at once


class WidthTables(Protocol):
    """What a table can do; a table holds for each width the best value within it.

    nothing: the empty table.
    """

    nothing: Any

    def with_item(self, table: Any, size: int, value: int, copies: int) -> Any:
        """The knapsack table after up to `copies` of an item may be added to what `table` holds."""

    def sum(self, one: Any, other: Any) -> Any:
        """The sums, width by width."""

    def largest(self, tables: Iterable[Any]) -> Any:
        """The largest values, width by width."""

    def listed(self, table: Any) -> Sequence[int]:
        """The values at the reachable widths."""

    def whole(self, table: Any) -> int:
        """The value at the whole width."""


def width_tables(positions: NormalPatterns, most: int) -> WidthTables:
    """Tables over these positions for values up to `most`."""
    if fields_serve(positions) and most < 1 << 62:
        return InFields(positions, most)
    return InLists(positions)


def fields_serve(positions: NormalPatterns) -> bool:
    """Whether enough widths are reachable."""
    return len(positions.floor) <= DENSE * len(positions.points)


class InFields:
    """Every single width has a field."""

    def __init__(self, positions: NormalPatterns, most: int):
        self.fields = PackedFields(len(positions.floor), most)
        self.nothing = 0
        self.with_item: Callable[[int, int, int, int], int] = self.fields.with_item
        self.largest: Callable[[Iterable[int]], int] = self.fields.largest
        every = len(positions.points) == len(positions.floor)
        self._pick = (
            (lambda table: table)
            if every
            else itemgetter(*positions.points)
            if positions.last
            else lambda table: (table[0],)
        )

    def sum(self, one: int, other: int) -> int:
        return one + other

    def listed(self, table: int) -> Sequence[int]:
        return self._pick(self.fields.listed(table))

    def whole(self, table: int) -> int:
        return self.fields.at(table, self.fields.count - 1)


class InLists:
    """A list over the reachable widths."""

    def __init__(self, positions: NormalPatterns):
        self.nothing = positions.empty_table()
        self.with_item = positions.with_item

    def sum(self, one: list[int], other: list[int]) -> list[int]:
        return list(map(add, one, other))

    def largest(self, tables: Iterable[list[int]]) -> list[int]:
        return list(map(max, self.nothing, *tables))

    def listed(self, table: list[int]) -> list[int]:
        return table

    def whole(self, table: list[int]) -> int:
        return table[-1]
