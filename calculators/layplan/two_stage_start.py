"""Plans in two stages, with first cuts both ways: where methods for more stages start from."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

from calculators.layplan import two_stage_value
from calculators.layplan.model import Task
from calculators.layplan.progress import Progress

START_STEPS = 24


class TwoStageStart:
    """The two-stage methods for a task, whatever its own stages; after the run `better` holds the prices of the better way."""

    def __init__(self, task: Task):
        self._ways = {way: replace(task, stages=2, first_cut=way) for way in ("across", "along")}
        self._solvers = {way: two_stage_value.Solver(strips.mirrored() if way == "along" else strips) for way, strips in self._ways.items()}
        self.across = self._solvers["across"]

    def run(self, steps: int = START_STEPS) -> Iterator[Progress]:
        """Ever better plans, as plans for the task; at most so many steps each way."""
        for way, solver in self._solvers.items():
            for found in islice(solver.run(), steps):
                yield two_stage_value.mirrored(self._ways[way], found) if way == "along" else found

    def prices(self, scale: int) -> list[int]:
        """The prices of the way that gave the better plan, in 1/scale of a unit of value; 0 before any are known."""
        priced = [solver for solver in self._solvers.values() if solver.relaxed]
        if not priced:
            return [0] * len(self.across.bounds.values)
        best = max(priced, key=lambda solver: solver.value)
        return [price * scale // best.bounds.scale for price in best.relaxed.prices]
