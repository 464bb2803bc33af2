"""Most value with limited quantities and any number of stages: the unconstrained recursion at multipliers, and passes
of it with counts."""

from collections.abc import Generator, Iterator, Sequence
from dataclasses import replace

from calculators.trade.lay_plan.solving import two_stage_value
from calculators.trade.lay_plan.solving.constrained_pass import BeamWidth
from calculators.trade.lay_plan.solving.constrained_recursion import ConstrainedRecursion
from calculators.trade.lay_plan.solving.constrained_search import ConstrainedSearch
from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.normal_patterns import reachable_sums
from calculators.trade.lay_plan.solving.plan import Part, Plan
from calculators.trade.lay_plan.solving.progress import Progress
from calculators.trade.lay_plan.solving.two_stage_start import TwoStageStart
from calculators.trade.lay_plan.solving.unconstrained_recursion import UnconstrainedRecursion

PAUSE_EVERY = 2_000  # cells of the table
MOST_POSITIONS = 5_000  # across or along: their pairs would fill the memory

Rows = list[Sequence[int]]


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds for a task with a length and any number of stages."""
    if is_too_fine(task):
        yield from _in_two_stages(task)
        return
    recursion = UnconstrainedRecursion(task)
    if not recursion.ways:
        yield Progress(Plan(task, Part(0, 0, task.width, task.fixed_length)), 0, 0, True)
        return
    yield from _AnyStageSearch(task, recursion).run()


def is_too_fine(task: Task) -> bool:
    """Whether there are too many places for a cut, so that strips alone are tried."""
    return max(_positions(task)) > MOST_POSITIONS


def _positions(task: Task) -> tuple[int, int]:
    """How many places for a cut there are across and along."""
    ways = [
        (width, length, task.quantity(number))
        for number, piece in enumerate(task.pieces)
        for width, length, _ in piece.sizes()
    ]
    across = reachable_sums([(width, copies) for width, _, copies in ways], task.width)
    along = reachable_sums([(length, copies) for _, length, copies in ways], task.fixed_length)
    return len(across), len(along)


def _in_two_stages(task: Task) -> Iterator[Progress]:
    """The best plan in two stages, either way, with the bound by area: for a cloth whose tables would be too large."""
    bound = task.value_of_area()
    value: int | None = None
    plan: Plan | None = None
    for way in ("across", "along"):
        for found in two_stage_value.solve(replace(task, stages=2, first_cut=way)):
            if found.plan and found.result is not None and (value is None or found.result > value):
                value, plan = found.result, Plan(task, found.plan.cloth)
            yield Progress(plan, value, bound)
            if value is not None and value >= bound:
                break
    yield Progress(plan, value, bound, True)


class _AnyStageSearch(ConstrainedSearch[Rows]):
    def __init__(self, task: Task, recursion: UnconstrainedRecursion):
        super().__init__(task, TwoStageStart(task))
        self.recursion = recursion

    def tables(self, worth: Sequence[int]) -> Generator[None, None, tuple[int, list[int], Rows]]:
        rows: Rows = []
        pause = 1 + PAUSE_EVERY // len(self.recursion.along.points)
        for row in self.recursion.rows(worth):
            rows.append(row)
            if len(rows) % pause == 0:
                yield
        return rows[-1][-1], self.recursion.used(rows, worth), rows

    def constrained_pass(
        self, tables: Rows, worth: Sequence[int], least: int, beam_width: BeamWidth
    ) -> ConstrainedRecursion:
        return ConstrainedRecursion(self.recursion, tables, worth, least, self.counts, beam_width)
