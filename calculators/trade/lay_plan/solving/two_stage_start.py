"""Plans in two stages made at once, with first cuts both ways: where methods for more stages start from."""

from collections.abc import Iterator
from dataclasses import replace

from calculators.trade.lay_plan.solving import two_stage_value
from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.progress import Progress


class TwoStageStart:
    """The first plans of the two-stage method for a task, whatever its own stages."""

    def __init__(self, task: Task):
        self._ways = {way: replace(task, stages=2, first_cut=way) for way in ("across", "along")}
        self._solvers = {
            way: two_stage_value.ValueSolver(strips.mirrored() if way == "along" else strips)
            for way, strips in self._ways.items()
        }
        self.across = self._solvers["across"]

    def run(self) -> Iterator[Progress]:
        """Ever better plans, as plans for the task."""
        for way, solver in self._solvers.items():
            for found in solver.first_plans():
                yield two_stage_value.mirrored(self._ways[way], found) if way == "along" else found
