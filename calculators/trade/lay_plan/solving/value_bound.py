"""How much value can any plan in strips reach? A bound from multipliers on the limited pieces.

Every limited piece gets a price a copy (a Lagrange multiplier). Pieces then count with their value less their
multiplier, quantities
no longer bind over the whole cloth, and the best plan falls apart into knapsacks: one along each strip height, one that
stacks
strips along the cloth. That best value plus the multiplier of all copies is never below the value of a true plan (strip
model: `gilmore-gomory-1965`, `lodi-monaci-2003`; multipliers: see `multipliers`).

All numbers are whole, so a bound is exact: multipliers are counted in 1/scale of a unit of value.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from calculators.trade.lay_plan.solving.normal_patterns import NormalPatterns
from calculators.trade.lay_plan.solving.strip_table import KnapsackTable, StripShapes
from calculators.trade.lay_plan.solving.subgradient import subgradient_steps, without_pause
from calculators.trade.lay_plan.solving.width_tables import width_tables

PRECISION = 1 << 24


@dataclass(frozen=True, slots=True)
class StripStack:
    """Strips of one height entered into the table along the cloth."""

    before: Sequence[int]
    height_class: int
    most: int
    below: "StripStack | None"


@dataclass(frozen=True)
class RelaxedStack:
    """The best plan at given multipliers.

    bound: most value of any plan, in 1/scale units.
    multipliers: the multipliers it holds for.
    worth: value less multiplier of each piece.
    filled: best strip of each height class.
    tables: best stack of strips up to each height class, over lengths.
    used: copies of each piece in the relaxed plan.
    multiplier_of_all: multiplier of all copies together.
    """

    bound: int
    multipliers: list[int]
    worth: list[int]
    filled: list[KnapsackTable]
    tables: list[Sequence[int]]
    used: list[int]
    multiplier_of_all: int


class ValueBound:
    """The bound for pieces worth `values` on a cloth `length` long, in strips described by `shapes`."""

    def __init__(self, shapes: StripShapes, length: int, values: Sequence[int]):
        self.shapes = shapes
        self.length = length
        self.values = list(values)
        self.copies = shapes.copies
        self.scale = max(4, PRECISION // max(1, sum(v * c for v, c in zip(values, self.copies))))
        self.most_strips = self._most_strips()
        self.lengths = NormalPatterns(list(zip(shapes.heights, self.most_strips)), length)
        self._tables = width_tables(self.lengths, self.scale * sum(v * c for v, c in zip(values, self.copies)))

    def _most_strips(self) -> list[int]:
        """How many strips of each height a plan can have: each holds a piece of that height."""
        most = [0] * len(self.shapes.heights)
        for height_class, height in enumerate(self.shapes.heights):
            copies = sum(self.copies[w.piece] for w in self.shapes.ways_in[height_class] if w.height == height)
            most[height_class] = min(copies, self.length // height)
        return most

    def relaxed(self, multipliers: Sequence[int]) -> RelaxedStack:
        """The best plan when every copy has its multiplier and quantities bind only within a strip."""
        worth = [max(1, value * self.scale - multiplier) for value, multiplier in zip(self.values, multipliers)]
        held = [max(0, value * self.scale - w) for value, w in zip(self.values, worth)]
        filled = self.shapes.fill(worth)
        tables, stack = self.stack_up(filled)
        multiplier_of_all = sum(multiplier * copies for multiplier, copies in zip(held, self.copies))
        used = self._used(filled, tables[-1], stack)
        return RelaxedStack(tables[-1][-1] + multiplier_of_all, held, worth, filled, tables, used, multiplier_of_all)

    def stack_up(
        self, filled: list[KnapsackTable], sparing: bool = False
    ) -> tuple[list[Sequence[int]], StripStack | None]:
        """Tables over lengths of the best stack of strips up to each height class.

        sparing: only with strips better than every lower one, however few there are of those; good for plans, but no
        bound.
        """
        table = self._tables.nothing
        listed: Sequence[int] = self.lengths.empty_table()
        tables = []
        stack: StripStack | None = None
        lower = 0
        for height_class, height in enumerate(self.shapes.heights):
            value = filled[height_class].value
            if value > lower:  # else a lower strip is as good, and there are enough of those
                most = self.most_strips[height_class]
                stack = StripStack(listed, height_class, most, stack)
                table = self._tables.with_item(table, height, value, most)
                listed = self._tables.listed(table)
                lower = value if sparing or most == self.length // height else lower
            tables.append(listed)
        return tables, stack

    def stacked(
        self, filled: list[KnapsackTable], table: Sequence[int], stack: StripStack | None, length: int
    ) -> list[tuple[int, int]]:
        """The strips of the best stack within a length: pairs (height class, number), highest first."""
        points, floor = self.lengths.points, self.lengths.floor
        index = floor[length]
        value = table[index]
        strips = []
        while stack is not None:
            height, gain = self.shapes.heights[stack.height_class], filled[stack.height_class].value
            count = 0
            space = points[index]
            while stack.before[floor[space]] + count * gain != value:
                count += 1
                space -= height
            if count:
                strips.append((stack.height_class, count))
                index = floor[space]
                value = stack.before[index]
            stack = stack.below
        return strips

    def _used(self, filled: list[KnapsackTable], table: Sequence[int], stack: StripStack | None) -> list[int]:
        used = [0] * len(self.copies)
        for height_class, number in self.stacked(filled, table, stack, self.length):
            for piece, count in self.shapes.content(filled[height_class]):
                used[piece] += count * number
        return used

    def improving(self, known_value: int, start: Sequence[int], steps: int = 150) -> Iterator[RelaxedStack]:
        """The relaxed plan at ever better multipliers, from those to start with; `known_value` is the value of a plan
        in hand."""
        relaxed = without_pause(self.relaxed)
        for found in subgradient_steps(relaxed, self.copies, lambda: known_value * self.scale, start, steps):
            if found is not None:
                yield found
