"""Plans with limited quantities from a recursion that ignores them, at good multipliers.

The recursion tells how much each cell (what one of its tables stands for: a part of the cloth) can be worth at most.
Going down
from the whole cloth, a cut is worth looking at only if its loss against the best cut, together with the losses above
it, stays
within the gap between bound and target. Few cells remain. Going up again, each of them keeps several contents (counts
of
pieces, so that quantities hold), the best first. If the beam width dropped none, the result is proven
(for limited quantities `hadjiconstantinou-christofides-1995` go a like way).
"""

from abc import ABC, abstractmethod
from collections.abc import Generator, Iterable, Iterator
from dataclasses import dataclass
from heapq import heappop, heappush
from operator import itemgetter
from typing import Any, Generic, TypeVar

from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.plan import Part

Cell = TypeVar("Cell", bound=tuple[int, ...])
# A content: (worth at multipliers, packed counts, how it was made); made is what the recursion says of a single piece
# or strip, or (the cell, its first part, the content of that, the content of the other part).
Content = tuple[int, int, tuple[Any, ...]]
Cut = tuple[int, tuple[Cell, ...]]  # its loss, and the cells it leaves: two, or one where it only trims


@dataclass(frozen=True, slots=True)
class BeamWidth:
    """The beam width of a pass: contents a cell keeps, cells (the most promising first), cuts of a cell (the best
    first)."""

    kept: int
    cells: int
    cuts: int

    def wider(self) -> "BeamWidth":
        """Twice as many cells, and more of the rest."""
        return BeamWidth(self.kept * 3 // 2, 2 * self.cells, 2 * self.cuts)


class ConstrainedPass(ABC, Generic[Cell]):
    """One pass for a target.

    Parameters:
        whole: the cell of the whole cloth.
        least: what the whole cloth must be worth at these multipliers to reach the target.

    pause_every: after so many cells the work pauses.
    """

    pause_every = 16

    def __init__(self, whole: Cell, least: int, counts: PackedCounts, beam_width: BeamWidth):
        self.whole, self.least, self.counts, self.beam_width = whole, least, counts, beam_width
        self.complete = True
        self.contents: dict[Cell, list[Content]] = {}

    @abstractmethod
    def most(self, cell: Cell) -> int:
        """What a cell can be worth at most."""

    @abstractmethod
    def cuts(self, cell: Cell, least: int) -> list[Cut[Cell]]:
        """The cuts of a cell that can be worth so much."""

    @abstractmethod
    def uncut(self, cell: Cell, least: int) -> Iterable[Content]:
        """What fills a cell without a cut and is worth so much."""

    @abstractmethod
    def size(self, cell: Cell) -> int:
        """Grows from every cell to those that are cut into it."""

    @abstractmethod
    def cloth(self, content: Content) -> Part:
        """A content of the whole cloth as a tree of cuts."""

    def found(self) -> list[Content]:
        """The contents of the whole cloth, the best at these multipliers first."""
        return self.contents.get(self.whole, [])

    def run(self) -> Iterator[None]:
        """Runs the pass, pausing often."""
        slack = self.most(self.whole) - self.least
        if slack < 0:
            return
        cells = yield from self._cells_worth_looking_at(slack)
        cells.sort(key=lambda entry: self.size(entry[0]))
        for count, (cell, room, cuts) in enumerate(cells):
            self._fill(cell, room, cuts)
            if count % self.pause_every == 0:
                yield

    def _cells_worth_looking_at(self, slack: int) -> Generator[None, None, list[tuple[Cell, int, list[Cut[Cell]]]]]:
        """Each cell with the loss it may have and its cuts, found from the whole cloth downwards, least loss above
        first."""
        waiting = [(-slack, self.whole)]
        rooms: dict[Cell, int] = {self.whole: slack}
        found: dict[Cell, tuple[Cell, int, list[Cut[Cell]]]] = {}
        while waiting:
            room, cell = heappop(waiting)
            room = -room
            if cell in found:
                continue
            if len(found) == self.beam_width.cells:
                self.complete = False
                break
            cuts = self.cuts(cell, self.most(cell) - room)
            cuts.sort()
            if len(cuts) > self.beam_width.cuts:
                self.complete = False
                del cuts[self.beam_width.cuts :]
            found[cell] = (cell, room, cuts)
            for loss, parts in cuts:
                left = room - loss
                for part in parts:
                    if rooms.get(part, -1) < left:
                        rooms[part] = left
                        heappush(waiting, (-left, part))
            if len(found) % self.pause_every == 0:
                yield
        return list(found.values())

    def _fill(self, cell: Cell, room: int, cuts: list[Cut[Cell]]) -> None:
        """The best contents of a cell from those of the cells it is cut into."""
        most = self.most(cell)
        least = most - room
        best: dict[int, Content] = {}
        if least <= 0:
            best[0] = (0, 0, ())
        for content in self.uncut(cell, least):
            best[content[1]] = content
        full = 2 * self.beam_width.kept
        for loss, parts in cuts:
            if most - loss < least:
                break
            if len(best) > full:
                best, least = self._ranked(best)
            if len(parts) == 1:
                for content in self.contents.get(parts[0], ()):
                    if content[0] < least:
                        break
                    best.setdefault(content[1], content)
            else:
                self._join(cell, parts, least, best)
        if len(best) > self.beam_width.kept:
            best, _ = self._ranked(best)
        self.contents[cell] = sorted(best.values(), key=itemgetter(0), reverse=True)

    def _ranked(self, best: dict[int, Content]) -> tuple[dict[int, Content], int]:
        """The best contents alone, as many as are kept, and what another must be worth to come among them."""
        self.complete = False
        ranked = sorted(best.values(), key=itemgetter(0), reverse=True)[: self.beam_width.kept]
        return {content[1]: content for content in ranked}, ranked[-1][0]

    def _join(self, cell: Cell, parts: tuple[Cell, ...], least: int, best: dict[int, Content]) -> None:
        first, second = self.contents.get(parts[0]), self.contents.get(parts[1])
        if not first or not second or first[0][0] + second[0][0] < least:
            return
        guards = self.counts.guards
        everything = self.counts.all | guards
        for one in first:
            worth, counted, _ = one
            need = least - worth
            if second[0][0] < need:
                break
            left = everything - counted
            for other in second:
                if other[0] < need:
                    break
                if (left - other[1]) & guards == guards:
                    packed = counted + other[1]
                    if packed not in best:
                        best[packed] = (worth + other[0], packed, (cell, parts[0], one, other))
