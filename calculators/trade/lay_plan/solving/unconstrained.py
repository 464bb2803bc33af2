"""Most value when every piece may be cut as often as it fits, with any number of stages: exact."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from calculators.trade.lay_plan.solving import two_stage_value
from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.plan import Part, Plan
from calculators.trade.lay_plan.solving.progress import Progress
from calculators.trade.lay_plan.solving.unconstrained_recursion import UnconstrainedRecursion

MANY_CELLS = 50_000


def solve(task: Task) -> Iterator[Progress]:
    """Yields the best plan, proven (`unconstrained_recursion`); where that takes a while, a plan in strips first."""
    recursion = UnconstrainedRecursion(task, unlimited=True)
    if not recursion.ways:
        yield Progress(Plan(task, Part(0, 0, task.width, recursion.length)), 0, 0, True)
        return
    so_far = Progress(None, None, None)
    if len(recursion.across.points) * len(recursion.along.points) > MANY_CELLS:
        so_far = first_plan(task)
    values = [piece.worth for piece in task.pieces]
    rows: list[Sequence[int]] = []
    for row in recursion.rows(values):
        rows.append(row)
        yield so_far
    value = rows[-1][-1]
    yield Progress(Plan(task, recursion.cloth(rows, values)), value, value, True)


def first_plan(task: Task) -> Progress:
    """A plan in strips, made at once."""
    strips = replace(task, stages=2, first_cut="across")
    plan, result = next((found.plan, found.result) for found in two_stage_value.solve(strips) if found.plan is not None)
    return Progress(Plan(task, plan.cloth), result, None)
