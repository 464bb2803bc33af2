"""Most value with limited quantities and any number of stages: the free recursion at prices, and passes of it with counts."""

from collections.abc import Generator, Iterator, Sequence

from calculators.layplan.counted_pass import Breadth
from calculators.layplan.counted_search import CountedSearch
from calculators.layplan.free_recursion import FreeRecursion
from calculators.layplan.limited_recursion import LimitedRecursion
from calculators.layplan.model import Task
from calculators.layplan.plan import Part, Plan
from calculators.layplan.progress import Progress
from calculators.layplan.two_stage_start import TwoStageStart

PAUSE_EVERY = 2_000  # cells of the table

Rows = list[Sequence[int]]


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds for a task with a length and any number of stages."""
    recursion = FreeRecursion(task)
    if not recursion.ways:
        yield Progress(Plan(task, Part(0, 0, task.width, task.length)), 0, 0, True)
        return
    yield from _Search(task, recursion).run()


class _Search(CountedSearch):
    def __init__(self, task: Task, recursion: FreeRecursion):
        super().__init__(task, TwoStageStart(task))
        self.recursion = recursion

    def tables(self, worth: Sequence[int]) -> Generator[None, None, tuple[int, list[int], Rows]]:
        rows = []
        pause = 1 + PAUSE_EVERY // len(self.recursion.along.points)
        for row in self.recursion.rows(worth):
            rows.append(row)
            if len(rows) % pause == 0:
                yield
        return rows[-1][-1], self.recursion.used(rows, worth), rows

    def counted_pass(self, tables: Rows, worth: Sequence[int], least: int, breadth: Breadth) -> LimitedRecursion:
        return LimitedRecursion(self.recursion, tables, worth, least, self.counts, breadth)
