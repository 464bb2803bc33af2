"""The whole order on the shortest length in two stages: strips across the whole width, then pieces, then a trimming cut.

1. A first plan at once: the largest piece left opens a strip, which is filled with the largest pieces that fit.
2. Fair values and a bound by column generation (length_bound). The linear programme's strips, rounded down, with a search for
   what is left, make a plan when pieces are many.
3. Searches over the whole order (length_search) with these values, wider each time; one early, with rough values.
4. Taking up a few strips at a time and laying their pieces again on less length, until the bound is met or the caller stops.
"""

from collections import Counter
from collections.abc import Iterator
from random import Random

from calculators.layplan.counts import PackedCounts
from calculators.layplan.length_bound import LengthBound
from calculators.layplan.length_search import LengthSearch
from calculators.layplan.model import Task
from calculators.layplan.order_kinds import Kinds
from calculators.layplan.plan import Plan
from calculators.layplan.progress import Progress

Strip = tuple[int, int]  # height, packed pieces
MANY_COPIES = 400
LISTED = 400
WIDER = ((20, 6), (40, 9), (80, 13))
TRIES_AT_ONE_SIZE = 6


def solve(task: Task) -> Iterator[Progress]:
    """Yields ever better plans and bounds for a task with a cloth of any length and first cuts across."""
    kinds = Kinds(task)
    if not kinds.copies:
        yield Progress(Plan(task, kinds.cloth([])), 0, 0, True)
        return
    yield from _Solver(task, kinds).run()


class _Solver:
    def __init__(self, task: Task, kinds: Kinds):
        self.task = task
        self.kinds = kinds
        self.shapes = kinds.shapes
        self.counts = PackedCounts(kinds.copies)
        self.bounds = LengthBound(self.shapes)
        self.bound = -(-sum(p.width * p.length * p.quantity for p in task.pieces) // task.width)
        self.length: int | None = None
        self.laid: list[Strip] = []
        self.plan: Plan | None = None
        self.random = Random(1)

    def run(self) -> Iterator[Progress]:
        """All of the method, until the plan is proven or the caller stops."""
        self._keep(self._first_plan())
        yield self._progress()
        few_copies = sum(self.kinds.copies) <= MANY_COPIES
        bounding = self.bounds.improving()
        searched_early = False
        for _ in bounding:
            yield self._progress()
            if self._closed():
                break
            if self.bounds.warm and few_copies and not searched_early:
                searched_early = True
                yield from self._search(WIDER[:1])
        if not few_copies and not self._closed():
            yield from self._rounded()
        if not self._closed():
            yield from self._search(WIDER if few_copies else WIDER[:1])
        if not self._closed():
            yield from self._take_up_and_lay_again()
        yield self._progress(True)

    def _progress(self, finished: bool = False) -> Progress:
        self.bound = max(self.bound, self.bounds.bound)
        return Progress(self.plan, self.length, self.bound, finished)

    def _closed(self) -> bool:
        return self.length <= max(self.bound, self.bounds.bound)

    def _keep(self, strips: list[Strip]) -> None:
        length = sum(height for height, _ in strips)
        if self.length is None or length < self.length:
            self.length = length
            self.laid = sorted(strips, reverse=True)
            self.plan = Plan(self.task, self.kinds.cloth([(h, self.counts.pairs(packed)) for h, packed in self.laid]))

    def _first_plan(self, copies: list[int] | None = None) -> list[Strip]:
        """Strips opened by the largest piece left and filled with the largest area; of its ways to lie the one that fills better."""
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
                    area = areas[piece] + filled.table[shapes.positions.floor[space]]
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
        return LengthSearch(self.shapes, self.counts, self.bounds.values, self.bounds.scale, order)

    def _telling(self, work: Iterator[None]) -> Iterator[Progress]:
        """Passes on progress while some work goes on."""
        for _ in work:
            yield self._progress()

    def _search(self, widths: tuple[tuple[int, int], ...]) -> Iterator[Progress]:
        """Searches over the whole order, wider and wider."""
        search = self._searcher(self.counts.all)
        yield from self._telling(search.list_up(self.length - 1, LISTED))
        for breadth, choices in widths:
            target = self.length - 1
            yield from self._telling(search.run(target, breadth, choices))
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
        for breadth, choices in WIDER:
            yield from self._telling(search.run(length - 1, breadth, choices))
            if search.best_length is not None:
                length = search.best_length
                self._keep(strips + search.strips())

    def _take_up_and_lay_again(self) -> Iterator[Progress]:
        """Takes up a few strips and lays their pieces again on less length, more strips when that long brought nothing."""
        fruitless = 0
        while not self._closed():
            number = 3 + fruitless // TRIES_AT_ONE_SIZE
            if number > 6:
                number = self.random.choice((3, 4, 5, 6, 8, 10, 14, 20))
            taken = self._choose(min(number, len(self.laid)))
            height = sum(self.laid[index][0] for index in taken)
            search = self._searcher(sum(self.laid[index][1] for index in taken))
            yield from self._telling(search.list_up(height - 1, LISTED // 2))
            yield from self._telling(search.run(height - 1, 40, 10))
            if len(taken) == len(self.laid) and search.complete and search.best_length is None:
                self.bound = self.length
            if search.best_length is None:
                fruitless += 1
            else:
                fruitless = 0
                self._keep([strip for index, strip in enumerate(self.laid) if index not in taken] + search.strips())

    def _choose(self, number: int) -> set[int]:
        """Which strips to take up: more often those that waste most, and their neighbours in height."""
        values, scale = self.bounds.values, self.bounds.scale
        waste = []
        for height, packed in self.laid:
            worth = sum(values[piece] * count for piece, count in self.counts.pairs(packed))
            waste.append(height * scale - worth + scale // 8 + 1)
        chosen: set[int] = set()
        while len(chosen) < number:
            if chosen and self.random.random() < 0.4:
                index = self.random.choice(sorted(chosen)) + self.random.choice((-1, 1))
                if not 0 <= index < len(self.laid):
                    continue
            else:
                index = self.random.choices(range(len(self.laid)), waste)[0]
            chosen.add(index)
        return chosen
