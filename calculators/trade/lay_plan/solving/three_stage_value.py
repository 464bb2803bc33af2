"""Most value in three stages: sections along the whole cloth, strips across each section, then pieces and a trimming
cut.

The section tables at multipliers, and passes of them with counts.
"""

from collections.abc import Generator, Iterator, Sequence

from calculators.trade.lay_plan.solving import two_stage_value
from calculators.trade.lay_plan.solving.constrained_pass import BeamWidth
from calculators.trade.lay_plan.solving.constrained_search import ConstrainedSearch
from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.plan import Part, Plan
from calculators.trade.lay_plan.solving.progress import Progress
from calculators.trade.lay_plan.solving.section_recursion import SectionRecursion
from calculators.trade.lay_plan.solving.section_tables import Sections, SectionTables
from calculators.trade.lay_plan.solving.two_stage_start import TwoStageStart


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds for a task of three stages with first cuts along or across the cloth."""
    if task.first_cut == "across":
        for found in solve(task.mirrored()):
            yield two_stage_value.mirrored(task, found)
        return
    start = TwoStageStart(task)
    if start.across.ways:
        yield from _ThreeStageSearch(task, start).run()
    else:
        yield Progress(Plan(task, Part(0, 0, task.width, task.fixed_length)), 0, 0, True)


class _ThreeStageSearch(ConstrainedSearch[Sections]):
    first = BeamWidth(16, 2_400, 60)
    later_steps = 4

    def __init__(self, task: Task, start: TwoStageStart):
        super().__init__(task, start)
        self.sections = SectionTables(task, start.across.ways)

    def tables(self, worth: Sequence[int]) -> Generator[None, None, tuple[int, list[int], Sections]]:
        sections = yield from self.sections.made(worth)
        return sections.beside[-1], self.sections.used(sections), sections

    def constrained_pass(
        self, tables: Sections, worth: Sequence[int], least: int, beam_width: BeamWidth
    ) -> SectionRecursion:
        return SectionRecursion(self.sections, tables, least, self.counts, beam_width)
