"""Most value from one cloth in two stages: strips across the whole width, then pieces, then at most a trimming cut.

1. A first plan by diving: fill the cloth with the best strips, fix those whose pieces are there, and fill again what is
left.
2. Multipliers on the pieces lower the bound (value_bound).
3. A search over strips (value_search) for a target just below the bound. If its beam width drops nothing and it finds
nothing, the bound comes down to the target and the next target lies lower; if it finds a plan, that plan is the best
there is.
"""

from collections.abc import Generator, Iterable, Iterator

from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.plan import Plan, stacked_strips
from calculators.trade.lay_plan.solving.progress import Progress
from calculators.trade.lay_plan.solving.strip_list import TooManyStrips
from calculators.trade.lay_plan.solving.strip_table import Orientation, StripShapes
from calculators.trade.lay_plan.solving.value_bound import RelaxedStack, ValueBound
from calculators.trade.lay_plan.solving.value_search import ValueSearch

FIRST_BEAM_WIDTH = 200
FIRST_STRIPS = 20_000
MOST_STRIPS = 500_000
MOST_BEAM_WIDTH = 50_000


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds for a task of two stages with first cuts across or along the cloth."""
    if task.first_cut == "along":
        for found in solve(task.mirrored()):
            yield mirrored(task, found)
        return
    solver = ValueSolver(task)
    if solver.ways:
        yield from solver.run()
    else:
        yield Progress(Plan(task, stacked_strips(task, [], task.fixed_length)), 0, 0, True)


def mirrored(task: Task, found: Progress) -> Progress:
    """What was found for the mirrored task, for the task itself."""
    plan = found.plan and Plan(task, found.plan.cloth.mirrored())
    return Progress(plan, found.result, found.bound, found.finished)


class ValueSolver:
    """The method for first cuts across."""

    def __init__(self, task: Task):
        self.task = task
        self.length = task.fixed_length
        self.ways = [
            Orientation(number, width, length)
            for number, piece in enumerate(task.pieces)
            for width, length, _ in piece.sizes()
            if width <= task.width and length <= self.length and task.quantity(number) > 0
        ]
        self.shapes = StripShapes(task.width, self.ways, [task.quantity(number) for number in range(len(task.pieces))])
        self.bounds = ValueBound(self.shapes, self.length, [piece.worth for piece in task.pieces])
        self.value = -1
        self.plan: Plan | None = None
        self.bound: int | None = None

    def run(self) -> Iterator[Progress]:
        """All of the method, until the plan is proven or nothing is left to try."""
        yield from self.first_plans()
        relaxed = yield from self._lower_bound()
        if relaxed and not self._closed():
            yield from self._dive(relaxed.worth)
        if relaxed and not self._closed():
            yield from self._search(relaxed)
        yield self._progress(True)

    def first_plans(self) -> Iterator[Progress]:
        """Plans by diving, at the values themselves and at what they count beyond their area."""
        values = [value * self.bounds.scale for value in self.bounds.values]
        yield from self._dive(values)
        multipliers = self.task.multipliers_of_area(self.bounds.scale)
        if any(multipliers):
            yield from self._dive([max(1, value - multiplier) for value, multiplier in zip(values, multipliers)])

    def _progress(self, finished: bool = False) -> Progress:
        return Progress(self.plan, self.value if self.plan else None, self.bound, finished)

    def _closed(self) -> bool:
        return self.bound is not None and self.value >= self.bound

    def _keep(self, value: int, strips: Iterable[tuple[int, Iterable[tuple[int, int]]]]) -> None:
        if value > self.value:
            self.value = value
            self.plan = Plan(self.task, stacked_strips(self.task, strips, self.length))

    def _lower_bound(self) -> Generator[Progress, None, RelaxedStack | None]:
        """Returns the best multipliers found."""
        best: RelaxedStack | None = None
        for relaxed in self.bounds.improving(self.value, self.task.multipliers_of_area(self.bounds.scale)):
            if best is None or relaxed.bound < best.bound:
                best = relaxed
                self.bound = relaxed.bound // self.bounds.scale
            yield self._progress()
            if self._closed():
                break
        return best

    def _dive(self, worth: list[int]) -> Iterator[Progress]:
        """Fills the cloth with the strips that are best at `worth`, as long as their pieces last, again and again."""
        left = list(self.shapes.copies)
        length = self.length
        strips = []
        value = 0
        while True:
            filled = self.shapes.fill(worth, left)
            tables, stack = self.bounds.stack_up(filled, sparing=True)
            chosen = self.bounds.stacked(filled, tables[-1], stack, length)
            yield self._progress()
            taken = False
            for height_class, number in chosen:
                content = self.shapes.content(filled[height_class])
                while number and all(left[piece] >= count for piece, count in content):
                    for piece, count in content:
                        left[piece] -= count
                        value += count * self.bounds.values[piece]
                    length -= self.shapes.heights[height_class]
                    strips.append((self.shapes.heights[height_class], content))
                    number -= 1
                    taken = True
                if number:
                    break
            if not taken:
                break
        self._keep(value, strips)
        yield self._progress()

    def _search(self, relaxed: RelaxedStack) -> Iterator[Progress]:
        bound = relaxed.bound // self.bounds.scale
        gap = max(1, (bound - self.value) // 8)
        beam_width, most_strips = FIRST_BEAM_WIDTH, FIRST_STRIPS
        while not self._closed():
            target = max(self.value + 1, bound - gap)
            search = ValueSearch(self.bounds, relaxed, target, most_strips, beam_width)
            try:
                for _ in search.run():
                    yield self._progress()
            except TooManyStrips:
                if target < bound:
                    gap //= 2
                elif most_strips < MOST_STRIPS:
                    most_strips *= 4
                else:
                    return
                continue
            if search.best_value > self.value:
                self._keep(search.best_value, search.strips())
            if search.complete:
                self.bound = bound = self.value if self.value >= target else target - 1
                gap *= 2
            elif beam_width < MOST_BEAM_WIDTH:
                beam_width *= 4
            else:
                return
            yield self._progress()
