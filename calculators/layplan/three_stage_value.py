"""Most value in three stages: sections along the whole cloth, strips across each section, then pieces and a trimming cut.

At prices on the pieces, one set of strip tables serves sections of every width; strips stack along the cloth for all widths at
once, and a knapsack across the cloth sets sections side by side: a bound (Gilmore and Gomory 1965 for the recursion, from
memory; prices: see `prices`). A plan comes from the same tables: the best section is filled in two stages from the pieces
that are left, at their priced worth, so that it does not take what others need more; then the rest of the width follows.
Plans in two stages, both ways, are plans in three, and the start.
"""

from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from operator import add, itemgetter

from calculators.layplan import two_stage_value
from calculators.layplan.model import Task
from calculators.layplan.plan import Part, Plan, row_of_parts
from calculators.layplan.positions import Table
from calculators.layplan.prices import price_steps
from calculators.layplan.progress import Progress
from calculators.layplan.strip_table import Filled
from calculators.layplan.two_stage_start import TwoStageStart

PRICE_STEPS = 30
SECTION_STEPS = 70
PAUSE_EVERY = 8  # lengths of the table


@dataclass(frozen=True)
class Relaxed:
    """The best sections at given prices; see `value_bound.Relaxed`. sections: their widths, widest first."""

    bound: int
    prices: list[int]
    worth: list[int]
    used: list[int]
    sections: list[int]


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds for a task of three stages with first cuts along or across the cloth."""
    if task.first_cut == "across":
        for found in solve(task.mirrored()):
            yield two_stage_value.mirrored(task, found)
        return
    start = TwoStageStart(task)
    if start.across.ways:
        yield from _Solver(task, start).run()
    else:
        yield Progress(Plan(task, Part(0, 0, task.width, task.length)), 0, 0, True)


class _Solver:
    def __init__(self, task: Task, start: TwoStageStart):
        self.task = task
        self.start = start
        strips = start.across
        self.shapes = strips.shapes
        self.lengths = strips.bounds.lengths
        self.values, self.scale = strips.bounds.values, strips.bounds.scale
        self.value = -1
        self.plan: Plan | None = None
        self.bound = task.value_of_area()

    def run(self) -> Iterator[Progress]:
        """All of the method, until the plan is proven or nothing is left to try."""
        for found in self.start.run():
            if found.plan is not None:
                self._keep(found.result, found.plan.cloth)
            yield self._progress()
        prices = self.start.prices(self.scale)
        steps = price_steps(self._relaxed, self.shapes.copies, lambda: self.value * self.scale, prices, PRICE_STEPS, 3, 0.3)
        for relaxed in steps:
            if relaxed is None:
                yield self._progress()
                continue
            self.bound = min(self.bound, relaxed.bound // self.scale)
            yield self._progress()
            if not self._closed():
                yield from self._lay_sections(relaxed)
            if self._closed():
                break
        yield self._progress(True)

    def _progress(self, finished: bool = False) -> Progress:
        return Progress(self.plan, self.value if self.plan else None, self.bound, finished)

    def _closed(self) -> bool:
        return self.value >= self.bound

    def _keep(self, value: int, cloth: Part) -> None:
        if value > self.value:
            self.value, self.plan = value, Plan(self.task, cloth)

    def _relaxed(self, prices: Sequence[int]) -> Generator[None, None, Relaxed]:
        worth = [max(1, value * self.scale - price) for value, price in zip(self.values, prices)]
        prices = [max(0, value * self.scale - w) for value, w in zip(self.values, worth)]
        filled = self.shapes.fill(worth)
        stacks = yield from self._stacks(filled)
        best, sections = self._side_by_side(stacks[-1], self.task.width)
        used = [0] * len(worth)
        for index in sections:
            for height_class in self._stacked(filled, stacks, index):
                for piece, count in self.shapes.content(filled[height_class], self.shapes.positions.points[index]):
                    used[piece] += count
        bound = best + sum(price * copies for price, copies in zip(prices, self.shapes.copies))
        return Relaxed(bound, prices, worth, used, [self.shapes.positions.points[index] for index in sections])

    def _stacks(self, filled: list[Filled]) -> Generator[None, None, list[Table]]:
        """For each length a table over section widths of the best stack of strips, with pauses."""
        useful = []
        below = None
        for height, strip in zip(self.shapes.heights, filled):
            if strip.table is not below:
                useful.append((height, strip.table))
            below = strip.table
        stacks = [self.shapes.positions.empty_table()]
        for length in self.lengths.points[1:]:
            options = [
                list(map(add, stacks[self.lengths.floor[length - height]], table)) for height, table in useful if height <= length
            ]
            stacks.append(list(map(max, stacks[-1], *options)) if options else stacks[-1])
            if len(stacks) % PAUSE_EVERY == 0:
                yield
        return stacks

    def _stacked(self, filled: list[Filled], stacks: list[Table], index: int) -> list[int]:
        """The height classes of the strips in the best section of a width."""
        classes = []
        at = self.lengths.last
        while stacks[at][index]:
            while at and stacks[at - 1][index] == stacks[at][index]:
                at -= 1
            length = self.lengths.points[at]
            for height_class, height in enumerate(self.shapes.heights):
                rest = self.lengths.floor[length - height] if height <= length else 0
                if height <= length and stacks[rest][index] + filled[height_class].table[index] == stacks[at][index]:
                    classes.append(height_class)
                    at = rest
                    break
        return classes

    def _side_by_side(self, section: Table, width: int) -> tuple[int, list[int]]:
        """The best sections side by side in a width: their worth, and their width indices, widest first."""
        points, floor = self.shapes.positions.points, self.shapes.positions.floor
        best = [0]
        made: list[int] = [0]  # 0: one section; else the index of the first of two parts
        for index in range(1, floor[width] + 1):
            value, part = max(section[index], best[-1]), 0 if section[index] >= best[-1] else -1
            parts = _halves(points, index)
            if parts:
                rests = [floor[points[index] - points[first]] for first in range(1, parts + 1)]
                values = list(map(add, best[1:], itemgetter(*rests)(best))) if parts > 1 else [best[1] + best[rests[0]]]
                if max(values) > value:
                    value = max(values)
                    part = values.index(value) + 1
            best.append(value)
            made.append(part)
        waiting, found = [floor[width]], []
        while waiting:
            index = waiting.pop()
            if index == 0 or best[index] == 0:
                continue
            if made[index] == -1:
                waiting.append(index - 1)
            elif made[index] == 0:
                found.append(index)
            else:
                waiting += [made[index], floor[points[index] - points[made[index]]]]
        return best[-1], sorted(found, reverse=True)

    def _lay_sections(self, relaxed: Relaxed) -> Iterator[Progress]:
        """A plan: the sections that the tables want, widest first, each filled from what is left; the last takes all the width there is."""
        left = list(self.shapes.copies)
        sections: list[Part] = []
        at = 0
        value = 0
        widths = relaxed.sections
        while widths and self.task.width > at:
            last = len(widths) == 1
            width = self.task.width - at if last else widths[0]
            worth = self.values if last else relaxed.worth
            found = None
            for found in islice(two_stage_value.solve(self._section_task(width, left, worth)), SECTION_STEPS):
                yield self._progress()
            if found is None or found.plan is None:
                break
            for piece, count in found.plan.counts().items():
                left[piece] -= count
                value += count * self.values[piece]
            sections.append(found.plan.cloth.moved(at, 0))
            at += width
            if last:
                break
            widths = widths[1:]
        cloth = row_of_parts(0, 0, self.task.width, self.task.length, "along", sections)
        self._keep(value, cloth)
        yield self._progress()

    def _section_task(self, width: int, left: list[int], worth: Sequence[int]) -> Task:
        pieces = tuple(
            replace(piece, quantity=count, value=each) for piece, count, each in zip(self.task.pieces, left, worth)
        )
        return Task(width, self.task.length, pieces, 2, "across")


def _halves(points: list[int], index: int) -> int:
    """How many first parts need looking at: those up to half the width."""
    half = points[index] // 2
    parts = 0
    while parts + 1 < index and points[parts + 1] <= half:
        parts += 1
    return parts
