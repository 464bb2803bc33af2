"""The whole order on the shortest length in two stages: strips across the whole width, then pieces, then a trimming cut.

1. A first plan at once: the tallest piece left opens a strip, which is filled with the largest pieces that fit.
2. Fair values and a bound by column generation (length_bound). The linear programme's strips, rounded down, with a search for
   what is left, make a second plan when pieces are many.
3. Searches over the whole order (length_search), wider each time.
4. Taking up a few strips at a time and laying their pieces again on less length, over and over, until the bound is met.
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
from calculators.layplan.strip_list import TooManyStrips

Strip = tuple[int, int]  # height, packed pieces
LONG_PROGRAM = 200
MANY_COPIES = 400
LISTED = 6_000


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
        self._keep(self._first_plan())
        yield self._progress()
        bounding = self.bounds.improving()
        for _ in range(LONG_PROGRAM):
            if next(bounding, self) is self:
                bounding = None
                break
            yield self._progress()
            if self._closed():
                break
        if sum(self.kinds.copies) > MANY_COPIES and bounding is None and not self._closed():
            yield from self._rounded()
        breadth, choices = 20, 6
        improving = None
        while not self._closed():
            if bounding is not None and next(bounding, self) is self:
                bounding = None
            if improving is None and breadth <= 80:
                yield from self._search(breadth, choices)
                breadth, choices = breadth * 2, choices * 3 // 2
            else:
                improving = improving or self._relay()
                next(improving)
            yield self._progress()
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

    def _first_plan(self, left: list[int] | None = None) -> list[Strip]:
        left = list(self.kinds.copies) if left is None else left
        strips = []
        for height_class in range(len(self.shapes.heights) - 1, -1, -1):
            height = self.shapes.heights[height_class]
            ways = self.shapes.ways_in[height_class]
            due = sorted((w.width, w.piece) for w in ways if w.height == height == self.shapes.lowest[w.piece])
            while due:
                width, piece = due[-1]
                if not left[piece]:
                    due.pop()
                    continue
                left[piece] -= 1
                filled = self.shapes.fill_class(height_class, self.kinds.areas, left)
                content = Counter(dict(self.shapes.content(filled, self.shapes.width - width)))
                content[piece] += 1
                left[piece] += 1
                times = min(left[p] // count for p, count in content.items())
                for p, count in content.items():
                    left[p] -= count * times
                strips.extend([(height, self.counts.pack(content.items()))] * times)
        return strips

    def _search(self, breadth: int, choices: int) -> Iterator[Progress]:
        found = yield from self._laid_again(self.counts.all, self.length - 1, breadth, choices, LISTED)
        if found:
            self._keep(found)

    def _laid_again(self, order: int, target: int, breadth: int, choices: int, listed: int, whole: bool = False):
        """Searches for strips for an order within a target length; returns them or None, and tells a proof for the whole order."""
        search = LengthSearch(
            self.shapes, self.counts, self.bounds.values, self.bounds.scale, order, target, breadth, choices, listed, whole
        )
        for _ in search.run():
            yield self._progress()
        if search.complete and order == self.counts.all:
            self.bound = max(self.bound, min(self.length, search.target + 1))
        return search.strips() if search.best_length is not None else None

    def _rounded(self) -> Iterator[Progress]:
        """A plan from the linear programme: its strips as often as it says, rounded down, and a search for the rest."""
        left = list(self.kinds.copies)
        strips: list[Strip] = []
        for amount, (height, content) in sorted(self.bounds.strips, reverse=True):
            times = min([int(amount + 1e-6), *(left[piece] // count for piece, count in content)])
            for piece, count in content:
                left[piece] -= count * times
            strips.extend([(height, self.counts.pack(content))] * times)
        rest = self._first_plan(list(left))
        self._keep(strips + rest)
        yield self._progress()
        order = self.counts.pack(enumerate(left))
        for breadth in (20, 60):
            found = yield from self._laid_again(order, sum(h for h, _ in rest) - 1, breadth, 8, LISTED)
            if found:
                rest = found
                self._keep(strips + rest)

    def _relay(self) -> Iterator[None]:
        """Takes up a few strips and lays their pieces again, for ever."""
        number = 3
        while True:
            taken = self._choose(number)
            order = sum(self.laid[index][1] for index in taken)
            height = sum(self.laid[index][0] for index in taken)
            search = self._laid_again(order, height - 1, 60, 30, 3000, True)
            try:
                while True:
                    next(search)
                    yield
            except StopIteration as ended:
                found = ended.value
            except TooManyStrips:
                number = max(2, number - 1)
                continue
            if found:
                kept = [strip for index, strip in enumerate(self.laid) if index not in taken]
                self._keep(kept + found)
            else:
                number = self.random.choice((number, number, number + 1, 3)) if number < 12 else 3
            yield

    def _choose(self, number: int) -> set[int]:
        """Which strips to take up: more often those that waste most, and their neighbours in height."""
        values, scale = self.bounds.values, self.bounds.scale
        waste = []
        for index, (height, packed) in enumerate(self.laid):
            worth = sum(values[piece] * count for piece, count in self.counts.pairs(packed))
            waste.append(max(1, height * scale - worth) + scale // 8)
        number = min(number, len(self.laid))
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
