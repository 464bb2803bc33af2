"""Most value in three stages: sections along the whole cloth, strips across each section, then pieces and a trimming cut.

1. Plans in two stages, both ways, as a start.
2. Prices lower the bound of the section tables.
3. Passes of those tables with counts, each time with more contents kept or a target nearer the bound.
"""

from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass

from calculators.layplan import two_stage_value
from calculators.layplan.counted_pass import Breadth
from calculators.layplan.counts import PackedCounts
from calculators.layplan.model import Task
from calculators.layplan.plan import Part, Plan
from calculators.layplan.prices import price_steps
from calculators.layplan.progress import Progress
from calculators.layplan.section_recursion import SectionRecursion
from calculators.layplan.section_tables import Sections, SectionTables
from calculators.layplan.two_stage_start import TwoStageStart

PRICE_STEPS = 60
MOST_KEPT = 400
ROUGH = (Breadth(8, 1_200, 30), Breadth(8, 4_000, 30), Breadth(16, 8_000, 60))
FIRST = Breadth(8, 4_000, 400)
FIRST_PASS = 4
PASS_EVERY = (3, 6, 12)  # steps of prices from one such pass to the next


@dataclass(frozen=True)
class Relaxed:
    """The best sections at given prices; see `value_bound.Relaxed`."""

    bound: int
    prices: list[int]
    used: list[int]
    sections: Sections
    price_of_all: int


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
        self.values, self.scale = start.across.bounds.values, start.across.bounds.scale
        self.tables = SectionTables(task, start.across.ways)
        self.copies = self.tables.shapes.copies
        self.counts = PackedCounts(self.copies)
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
        best: Relaxed | None = None
        count, level, due = 0, 0, FIRST_PASS
        for relaxed in price_steps(self._relaxed, self.copies, lambda: self.value * self.scale, prices, PRICE_STEPS, 3, 0.3):
            if relaxed is None:
                yield self._progress()
                continue
            count += 1
            if best is None or relaxed.bound < best.bound:
                best = relaxed
                self.bound = min(self.bound, best.bound // self.scale)
            yield self._progress()
            if self._closed():
                break
            if count >= due:
                before = self.value
                yield from self._pass(relaxed, self.value + 1, ROUGH[level])
                level = 0 if self.value > before else min(level + 1, len(ROUGH) - 1)
                due = count + PASS_EVERY[level]
        if not self._closed():
            yield from self._close_gap(best)
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
        sections = yield from self.tables.made(worth)
        price_of_all = sum(price * copies for price, copies in zip(prices, self.copies))
        return Relaxed(sections.beside[-1] + price_of_all, prices, self.tables.used(sections), sections, price_of_all)

    def _pass(self, relaxed: Relaxed, target: int, breadth: Breadth) -> Iterator[Progress]:
        """One pass for a target, keeping the plan and the bound it proves; returns whether nothing was dropped."""
        search = SectionRecursion(self.tables, relaxed.sections, target * self.scale - relaxed.price_of_all, self.counts, breadth)
        for _ in search.run():
            yield self._progress()
        for content in search.found():
            value = sum(self.values[piece] * count for piece, count in self.counts.pairs(content[1]))
            if value > self.value:
                self._keep(value, search.cloth(content))
        if search.complete:
            self.bound = min(self.bound, max(self.value, target - 1))
        yield self._progress()
        return search.complete

    def _close_gap(self, relaxed: Relaxed) -> Iterator[Progress]:
        """Passes for targets below the bound, with more contents and cells each time one had to drop some."""
        gap, breadth = max(1, (self.bound - self.value) // 8), FIRST
        while not self._closed():
            complete = yield from self._pass(relaxed, max(self.value + 1, self.bound - gap), breadth)
            if complete:
                gap *= 2
            elif breadth.kept < MOST_KEPT:
                breadth = breadth.wider()
                yield from self._pass(relaxed, self.value + 1, Breadth(breadth.kept, breadth.cells // 4, 12))
            else:
                return
