"""Which method serves which task."""

from collections.abc import Iterator

from calculators.trade.lay_plan.solving import (
    any_stage_value,
    three_stage_value,
    two_stage_length,
    two_stage_value,
    unconstrained,
)
from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.progress import Progress


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds, pausing often, until the plan is proven, nothing is left to try, or the
    caller stops.

    task: two or three stages with first cuts across or along (two, across, where the length is asked for), or any
    number of
        stages.
    """
    if task.length is None:
        if task.stages != 2 or task.first_cut != "across":
            raise ValueError("The shortest length is sought in two stages with first cuts across.")
        return two_stage_length.solve(task)
    if task.stages == 2 and task.first_cut in ("across", "along"):
        return two_stage_value.solve(task)
    if task.stages == 3 and task.first_cut in ("across", "along"):
        return three_stage_value.solve(task)
    if task.stages is not None:
        raise ValueError(f"No method for {task.stages} stages with first cuts {task.first_cut}.")
    if all(piece.quantity is None for piece in task.pieces):
        return unconstrained.solve(task)
    return any_stage_value.solve(task)
