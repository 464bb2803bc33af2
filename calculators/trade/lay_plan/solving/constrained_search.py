"""Most value with limited quantities from any recursion that ignores them: multipliers for the bound, passes with
counts for plans.

1. Plans in two stages made at once, both ways, as a start.
2. Multipliers lower the bound of the recursion, beginning with those of the bound by area; early passes give plans on
the way.
3. Passes at the best multipliers, for a target near the bound and for the next better value in turn; each whose beam
width drops nothing lowers the bound. When one dropped some, the next looks at twice as much, at better multipliers.
"""

from abc import ABC, abstractmethod
from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from calculators.trade.lay_plan.solving.constrained_pass import BeamWidth, ConstrainedPass
from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.plan import Part, Plan
from calculators.trade.lay_plan.solving.progress import Progress
from calculators.trade.lay_plan.solving.subgradient import subgradient_steps
from calculators.trade.lay_plan.solving.two_stage_start import TwoStageStart

PRECISION = 1 << 24
MOST_KEPT = 400
EARLY_PASSES = (4,)  # after so many steps of multipliers
STEPS, STEP_FACTOR = 16, 0.4
LATER_STEP_FACTOR = 0.2
FAR = 16  # part of the bound that is a wide gap


Tables = TypeVar("Tables")


@dataclass(frozen=True)
class RelaxedRecursion(Generic[Tables]):
    """The recursion at given multipliers.

    bound: most value of any plan, in 1/scale units; multipliers: those it holds for; used: copies of each piece in its
    best plan; multiplier_of_all: price of all copies together; tables: what the recursion left.
    """

    bound: int
    multipliers: list[int]
    used: list[int]
    multiplier_of_all: int
    tables: Tables


class ConstrainedSearch(ABC, Generic[Tables]):
    """The method for one recursion; a task with a way for at least one piece.

    first: how much the first passes near the bound look at; later_steps: how many steps of multipliers before each
    wider ones.
    """

    first = BeamWidth(8, 800, 8)
    later_steps = 12

    def __init__(self, task: Task, start: TwoStageStart):
        self.task = task
        self.start = start
        self.values = [piece.worth for piece in task.pieces]
        self.copies = [task.quantity(number) for number in range(len(task.pieces))]
        self.scale = max(4, PRECISION // max(1, sum(v * c for v, c in zip(self.values, self.copies))))
        self.counts = PackedCounts(self.copies)
        self.value = -1
        self.plan: Plan | None = None
        self.bound = task.value_of_area()
        self.best: RelaxedRecursion[Tables] | None = None

    @abstractmethod
    def tables(self, worth: Sequence[int]) -> Generator[None, None, tuple[int, list[int], Tables]]:
        """The recursion for pieces of this worth, with pauses: its best value, the copies used in it, and its
        tables."""

    @abstractmethod
    def constrained_pass(
        self, tables: Tables, worth: Sequence[int], least: int, beam_width: BeamWidth
    ) -> ConstrainedPass[Any]:
        """A pass over those tables."""

    def run(self) -> Iterator[Progress]:
        """All of the method, until the plan is proven or nothing is left to try."""
        for found in self.start.run():
            if found.plan is not None and found.result is not None:
                self._keep(found.result, found.plan.cloth)
            yield self._progress()
        yield from self._lower_bound(self.task.multipliers_of_area(self.scale), STEPS, STEP_FACTOR, EARLY_PASSES)
        yield from self._close_gap()
        yield self._progress(True)

    def _progress(self, finished: bool = False) -> Progress:
        return Progress(self.plan, self.value if self.plan else None, self.bound, finished)

    def _closed(self) -> bool:
        return self.value >= self.bound

    def _near(self) -> bool:
        """Whether there is a gap, and not so wide that plans near the bound are out of reach."""
        return self.value < self.bound < self.value + self.bound / FAR

    def _keep(self, value: int, cloth: Part) -> None:
        if value > self.value:
            self.value, self.plan = value, Plan(self.task, cloth)

    def _worth(self, multipliers: Sequence[int]) -> list[int]:
        return [max(1, value * self.scale - multiplier) for value, multiplier in zip(self.values, multipliers)]

    def _relaxed(self, multipliers: Sequence[int]) -> Generator[None, None, RelaxedRecursion[Tables]]:
        worth = self._worth(multipliers)
        held = [max(0, value * self.scale - w) for value, w in zip(self.values, worth)]
        best, used, tables = yield from self.tables(worth)
        multiplier_of_all = sum(multiplier * copies for multiplier, copies in zip(held, self.copies))
        return RelaxedRecursion(best + multiplier_of_all, held, used, multiplier_of_all, tables)

    def _lower_bound(
        self, multipliers: Sequence[int], steps: int, step_factor: float, passes: Sequence[int] = ()
    ) -> Iterator[Progress]:
        def known() -> int:
            return self.value * self.scale

        count = 0
        for relaxed in subgradient_steps(
            self._relaxed, self.copies, known, multipliers, steps, patience=2, momentum=0.3, step_factor=step_factor
        ):
            if relaxed is None:
                yield self._progress()
                continue
            count += 1
            if self.best is None or relaxed.bound < self.best.bound:
                self.best = relaxed
                self.bound = min(self.bound, relaxed.bound // self.scale)
            yield self._progress()
            if count in passes and self._near():
                yield from self._pass(self.best, self._target(), self.first)
            if self._closed():
                return

    def _pass(
        self, relaxed: RelaxedRecursion[Tables], target: int, beam_width: BeamWidth
    ) -> Generator[Progress, None, bool]:
        """One pass for a target, keeping the plan and the bound it proves; returns whether the beam width dropped
        nothing."""
        search = self.constrained_pass(
            relaxed.tables,
            self._worth(relaxed.multipliers),
            target * self.scale - relaxed.multiplier_of_all,
            beam_width,
        )
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

    def _close_gap(self) -> Iterator[Progress]:
        beam_width = self.first
        while self.best and not self._closed() and beam_width.kept < MOST_KEPT:
            beam_width = beam_width.wider()
            while self._near() and (yield from self._pass(self.best, self._target(), beam_width)):
                pass
            if not self._closed():
                yield from self._pass(self.best, self.value + 1 + (self.bound - self.value) // 8, beam_width)
            if not self._closed():
                yield from self._lower_bound(self.best.multipliers, self.later_steps, LATER_STEP_FACTOR)

    def _target(self) -> int:
        """What a pass near the bound aims at."""
        return self.value + 1 + 2 * (self.bound - self.value - 1) // 3
