"""The whole order on the shortest length in two stages: strips across the whole width, then pieces, then a trimming
cut.

1. A first plan at once: the largest piece left opens a strip, which is filled with the largest pieces that fit.
2. Dual feasible values and a bound by column generation (length_bound). The linear programme's strips, rounded down,
with a search for what is left, make a plan when pieces are many.
3. Searches over the whole order (length_search) with these values, wider each time; one early, with rough values.
4. Ruin and recreate: a few strips at a time are taken up and their pieces laid again on less length
(ruin_and_recreate), by turns with ever wider searches, until the bound is met or the caller stops; with many sizes some
of this goes on beside the linear programme.
"""

from collections import Counter
from collections.abc import Iterator

from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.item_types import ItemTypes
from calculators.trade.lay_plan.solving.length_bound import LengthBound
from calculators.trade.lay_plan.solving.length_search import LengthSearch
from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.plan import Plan
from calculators.trade.lay_plan.solving.progress import Progress
from calculators.trade.lay_plan.solving.ruin_and_recreate import RuinAndRecreate, Strip
from calculators.trade.lay_plan.solving.strip_table import StripShapes

MANY_COPIES = 400
LISTED = 200
PAUSES_A_STEP = 4  # of the linear programme, while some searching goes on beside it
PAUSES_TOLD = 2  # callers count steps, and one pause is less than a step of other methods
TURN = 4  # pauses of ruin and recreate for each pause, a longer step, of the search over the whole order
WIDER = ((20, 6), (40, 9), (80, 13))


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds for a task with a cloth of any length and first cuts across."""
    kinds = ItemTypes(task)
    if kinds.shapes is None:
        yield Progress(Plan(task, kinds.cloth([])), 0, 0, True)
        return
    yield from _LengthSolver(task, kinds, kinds.shapes).run()


class _LengthSolver:
    laid: list[Strip]
    length: int
    plan: Plan

    def __init__(self, task: Task, kinds: ItemTypes, shapes: StripShapes):
        self.task = task
        self.kinds = kinds
        self.shapes = shapes
        self.counts = PackedCounts(kinds.copies)
        self.bounds = LengthBound(self.shapes)
        self.bound = -(-sum(area * copies for area, copies in zip(kinds.areas, kinds.copies)) // task.width)
        self._lay(self._first_plan())
        self.ruin_and_recreate = RuinAndRecreate(self.counts)
        self._pauses = 0

    def run(self) -> Iterator[Progress]:
        """All of the method, until the plan is proven or the caller stops."""
        yield self._progress()
        few_copies = sum(self.kinds.copies) <= MANY_COPIES
        searched_early = False
        bounding_until = 0
        for step, _ in enumerate(self.bounds.improving()):
            yield self._progress()
            if self._closed():
                break
            if self.bounds.warm and few_copies and step >= bounding_until:
                before = self._pauses
                yield from self._ruin_and_recreate() if searched_early else self._search(WIDER[:1])
                searched_early = True
                bounding_until = step + (self._pauses - before) // PAUSES_A_STEP
        if not few_copies and not self._closed():
            yield from self._rounded()
        if not self._closed():
            yield from self._search(WIDER if few_copies else WIDER[:1])
        if not self._closed():
            yield from self._by_turns()
        yield self._progress(True)

    def _by_turns(self) -> Iterator[Progress]:
        """A few strips at a time, and beside it searches over the whole order, which end in a proof if nothing else
        does."""
        searching = self._ever_wider()
        owed = 0
        while not self._closed():
            before = self._pauses
            yield from self._ruin_and_recreate()
            owed += self._pauses - before
            while owed > 0 and not self._closed():
                before = self._pauses
                yield next(searching, None) or self._progress()
                owed -= TURN * max(1, self._pauses - before)

    def _ever_wider(self) -> Iterator[Progress]:
        """Searches over the whole order until the plan is proven."""
        beam_width, choices = WIDER[-1]
        listed = LISTED
        while not self._closed():
            beam_width, choices, listed = 2 * beam_width, 2 * choices, 2 * listed
            yield from self._search(((beam_width, choices),), listed)

    def _progress(self, finished: bool = False) -> Progress:
        self.bound = max(self.bound, self.bounds.bound)
        return Progress(self.plan, self.length, self.bound, finished)

    def _closed(self) -> bool:
        return self.length <= max(self.bound, self.bounds.bound)

    def _keep(self, strips: list[Strip]) -> None:
        length = sum(height for height, _ in strips)
        if length < self.length:
            self._lay(strips)
        elif length == self.length:
            self.laid = sorted(strips, reverse=True)

    def _lay(self, strips: list[Strip]) -> None:
        self.laid = sorted(strips, reverse=True)
        self.length = sum(height for height, _ in strips)
        self.plan = Plan(self.task, self.kinds.cloth([(h, self.counts.pairs(packed)) for h, packed in self.laid]))

    def _first_plan(self, copies: list[int] | None = None) -> list[Strip]:
        """Strips opened by the largest piece left and filled with the largest area; of its ways to lie the one that
        fills better."""
        left = list(self.kinds.copies if copies is None else copies)
        shapes, areas = self.shapes, self.kinds.areas
        strips = []
        for piece in sorted(range(len(left)), key=lambda p: (-shapes.lowest[p], -areas[p])):
            while left[piece]:
                left[piece] -= 1
                options = []
                for height, width in shapes.own_heights[piece]:
                    filled = shapes.fill_class(shapes.class_of[height], areas, left)
                    space = shapes.width - width
                    area = areas[piece] + filled.table[shapes.widths.floor[space]]
                    options.append((area / height, height, shapes.content(filled, space)))
                _, height, beside = max(options)
                left[piece] += 1
                content = Counter(dict(beside))
                content[piece] += 1
                times = min(left[p] // count for p, count in content.items())
                for p, count in content.items():
                    left[p] -= count * times
                strips.extend([(height, self.counts.pack(content.items()))] * times)
        return strips

    def _searcher(self, order: int) -> LengthSearch:
        return LengthSearch(self.shapes, self.counts, self.bounds.duals, order)

    def _telling(self, work: Iterator[list[Strip] | None]) -> Iterator[Progress]:
        """Passes on progress, and plans that are found, while some work goes on."""
        for strips in work:
            if strips is not None:
                self._keep(strips)
            self._pauses += 1
            if self._pauses % PAUSES_TOLD == 0:
                yield self._progress()

    def _search(self, widths: tuple[tuple[int, int], ...], listed: int = LISTED) -> Iterator[Progress]:
        """Searches over the whole order, wider and wider."""
        search = self._searcher(self.counts.all)
        yield from self._telling(search.list_up(self.length - 1, listed))
        for beam_width, choices in widths:
            for progress in self._telling(search.run(self.length - 1, beam_width, choices)):
                yield progress
                search.aim(self.length - 1)  # plans may have been bettered meanwhile
            if search.best_length is not None:
                self._keep(search.strips())
            if search.complete:
                self.bound = max(self.bound, self.length)
            if self._closed():
                return

    def _rounded(self) -> Iterator[Progress]:
        """A plan from the linear programme: its strips as often as it says, rounded down, and a search for the rest."""
        left = list(self.kinds.copies)
        strips: list[Strip] = []
        for amount, (height, content) in sorted(self.bounds.strips, reverse=True):
            times = min([int(amount + 1e-6), *(left[piece] // count for piece, count in content)])
            for piece, count in content:
                left[piece] -= count * times
            strips.extend([(height, self.counts.pack(content))] * times)
        rest = self._first_plan(left)
        self._keep(strips + rest)
        yield self._progress()
        search = self._searcher(self.counts.pack(enumerate(left)))
        length = sum(height for height, _ in rest)
        yield from self._telling(search.list_up(length - 1, LISTED))
        for beam_width, choices in WIDER:
            yield from self._telling(search.run(length - 1, beam_width, choices))
            if search.best_length is not None:
                length = search.best_length
                self._keep(strips + search.strips())

    def _ruin_and_recreate(self) -> Iterator[Progress]:
        """Ruins a few strips and recreates them."""
        yield from self._telling(self.ruin_and_recreate.once(self.laid, self.bounds.duals))
        if self.ruin_and_recreate.complete:
            self.bound = self.length
