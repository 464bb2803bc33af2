"""Most value with limited quantities and any number of stages.

1. Plans in two stages, both ways, as a start.
2. Prices lower the bound of the free recursion.
3. Passes of the recursion with counts for a target just below the bound, each time with more contents kept or a lower target.
"""

from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass

from calculators.layplan.counted_pass import Breadth
from calculators.layplan.counts import PackedCounts
from calculators.layplan.free_recursion import FreeRecursion
from calculators.layplan.limited_recursion import LimitedRecursion
from calculators.layplan.model import Task
from calculators.layplan.plan import Part, Plan
from calculators.layplan.prices import price_steps
from calculators.layplan.progress import Progress
from calculators.layplan.two_stage_start import TwoStageStart

PRECISION = 1 << 24
PRICE_STEPS = 60
PAUSE_EVERY = 8  # rows of the table
MOST_KEPT = 400
ROUGH = (Breadth(8, 1_200, 30), Breadth(8, 4_000, 30), Breadth(16, 8_000, 60))
FIRST = Breadth(8, 4_000, 400)
FIRST_PASS = 8
PASS_EVERY = (4, 10, 20)  # steps of prices from one such pass to the next


@dataclass(frozen=True)
class Relaxed:
    """The free recursion at given prices; see `value_bound.Relaxed`."""

    bound: int
    prices: list[int]
    worth: list[int]
    rows: list[list[int]]
    used: list[int]
    price_of_all: int


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds for a task with a length and any number of stages."""
    recursion = FreeRecursion(task)
    if not recursion.ways:
        yield Progress(Plan(task, Part(0, 0, task.width, task.length)), 0, 0, True)
        return
    yield from _Solver(task, recursion).run()


class _Solver:
    def __init__(self, task: Task, recursion: FreeRecursion):
        self.task = task
        self.recursion = recursion
        self.values = [piece.worth for piece in task.pieces]
        self.copies = [task.quantity(number) for number in range(len(task.pieces))]
        self.scale = max(4, PRECISION // max(1, sum(v * c for v, c in zip(self.values, self.copies))))
        self.counts = PackedCounts(self.copies)
        self.value = -1
        self.plan: Plan | None = None
        self.bound = task.value_of_area()

    def run(self) -> Iterator[Progress]:
        """All of the method, until the plan is proven or nothing is left to try."""
        start = TwoStageStart(self.task)
        for found in start.run():
            if found.plan is not None:
                self._keep(found.result, found.plan.cloth)
            yield self._progress()
        best: Relaxed | None = None
        steps = price_steps(
            self._relaxed, self.copies, lambda: self.value * self.scale, start.prices(self.scale), PRICE_STEPS, patience=5, drift=0.3
        )
        count, level, due = 0, 0, FIRST_PASS
        for relaxed in steps:
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
        rows = []
        for row in self.recursion.rows(worth):
            rows.append(row)
            if len(rows) % PAUSE_EVERY == 0:
                yield
        price_of_all = sum(price * copies for price, copies in zip(prices, self.copies))
        return Relaxed(rows[-1][-1] + price_of_all, prices, worth, rows, self.recursion.used(rows, worth), price_of_all)

    def _pass(self, relaxed: Relaxed, target: int, breadth: Breadth) -> Iterator[Progress]:
        """One pass for a target, keeping the plan and the bound it proves; returns whether nothing was dropped."""
        least = target * self.scale - relaxed.price_of_all
        search = LimitedRecursion(self.recursion, relaxed.rows, relaxed.worth, least, self.counts, breadth)
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
