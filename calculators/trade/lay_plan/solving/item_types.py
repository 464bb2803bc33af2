"""Sizes that differ only in name are one kind to a solver; this joins them and shares a plan out again."""

from collections.abc import Iterable

from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.plan import Part, stacked_strips
from calculators.trade.lay_plan.solving.strip_table import Orientation, StripShapes


class ItemTypes:
    """The kinds of piece in an order for a cloth of any length.

    copies: how many of each kind.
    areas: area of each kind.
    shapes: the strips they can lie in.
    """

    def __init__(self, task: Task):
        self.task = task
        self._pieces: dict[frozenset[tuple[int, int]], list[int]] = {}
        for number, piece in enumerate(task.pieces):
            sizes = frozenset((width, length) for width, length, _ in piece.sizes() if width <= task.width)
            if piece.quantity and not sizes:
                raise ValueError(f"Piece {number} is wider than the cloth however it lies.")
            if piece.quantity:
                self._pieces.setdefault(sizes, []).append(number)
        self.copies = [sum(task.quantity(n) for n in numbers) for numbers in self._pieces.values()]
        self.areas = [
            task.pieces[numbers[0]].width * task.pieces[numbers[0]].length for numbers in self._pieces.values()
        ]
        ways = [
            Orientation(kind, width, length)
            for kind, sizes in enumerate(self._pieces)
            for width, length in sorted(sizes)
        ]
        self.shapes = StripShapes(task.width, ways, self.copies) if ways else None

    def cloth(self, strips: Iterable[tuple[int, Iterable[tuple[int, int]]]]) -> Part:
        """The cloth cut into strips of kinds, as a tree of cuts with the pieces of the task."""
        waiting = [
            [number for number in numbers for _ in range(self.task.quantity(number))]
            for numbers in self._pieces.values()
        ]
        named = []
        length = 0
        for height, content in strips:
            named.append((height, [(waiting[kind].pop(), 1) for kind, count in content for _ in range(count)]))
            length += height
        return stacked_strips(self.task, named, length)
