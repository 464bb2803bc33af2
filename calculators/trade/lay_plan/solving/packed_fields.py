"""Tables of whole numbers packed into one large whole number, a bit field each: sums and the larger of two, all at
once.

Each field has a guard bit on top that values never reach. Taking one table from another with all guards set leaves a
guard
standing exactly where the first was not less; those guards, spread over their fields, choose (`lamport-1975`).
"""

from collections.abc import Callable, Iterable, Sequence
from functools import cache

from calculators.trade.lay_plan.solving.normal_patterns import doublings

Packed = int


class PackedFields:
    """Tables of `count` numbers from 0 to `most`."""

    def __init__(self, count: int, most: int):
        self.count = count
        self.bits = 32 if most < 1 << 31 else 64
        self.top = self.bits - 1
        self.most = (1 << self.top) - 1
        if most > self.most:
            raise ValueError("Numbers too large for a field.")
        self.all = (1 << (self.bits * count)) - 1
        self.ones = self.all // ((1 << self.bits) - 1)
        self.guards = self.ones << self.top
        self.from_field = cache(self._from_field)

    def _from_field(self, first: int) -> Packed:
        """A table of 1 from a field on, 0 before."""
        return self.ones >> (self.bits * first) << (self.bits * first)

    def larger(self, one: Packed, other: Packed) -> Packed:
        """The larger of two tables, field by field."""
        spare = (one | self.guards) - other
        guard = spare & self.guards
        return other + (spare & (guard - (guard >> self.top)))

    def largest(self, tables: Iterable[Packed]) -> Packed:
        """The largest of several tables, field by field."""
        guards, top = self.guards, self.top
        best = 0
        for table in tables:
            spare = (best | guards) - table
            guard = spare & guards
            best = table + (spare & (guard - (guard >> top)))
        return best

    def later(self, table: Packed, size: int, gain: int) -> Packed:
        """The table `size` fields later, `gain` more in each of them; 0 before."""
        return (table << (self.bits * size) & self.all) + gain * self.from_field(size)

    def holding(self, points: Sequence[int]) -> Callable[[Packed], Packed]:
        """What makes a rising table rise at these fields only, the first of which is 0, each other holding what the
        last of them does."""
        kept = sum(1 << (self.bits * point) for point in points)
        since = [0] * self.count
        for field in range(1 + (points[1] if len(points) > 1 else self.count), self.count):
            since[field] = 0 if kept >> (self.bits * field) & 1 else since[field - 1] + 1
        spread = (1 << self.bits) - 1
        steps = []
        back = 1
        while back <= max(since):
            steps.append(
                (
                    self.bits * back,
                    spread * sum(1 << (self.bits * f) for f, gap in enumerate(since) if back <= gap < 2 * back),
                )
            )
            back *= 2
        if not steps:
            return lambda table: table
        kept *= spread

        def held(table: Packed) -> Packed:
            table &= kept
            for shift, mask in steps:
                table |= table << shift & mask
            return table

        return held

    def with_item(self, table: Packed, size: int, value: int, copies: int) -> Packed:
        """The knapsack table after up to `copies` of an item may be added to what `table` holds."""
        guards, top = self.guards, self.top
        for count in doublings(copies):
            first = size * count
            if first >= self.count:
                break
            added = (table << (self.bits * first) & self.all) + value * count * self.from_field(first)
            spare = (table | guards) - added
            guard = spare & guards
            table = added + (spare & (guard - (guard >> top)))
        return table

    def at(self, table: Packed, field: int) -> int:
        """One number of a table."""
        return table >> (self.bits * field) & ((1 << self.bits) - 1)

    def listed(self, table: Packed) -> Sequence[int]:
        """All numbers of a table."""
        return memoryview(table.to_bytes(self.bits // 8 * self.count, "little")).cast("I" if self.bits == 32 else "Q")
