"""Plans with limited quantities and any number of stages, from the free recursion at good prices.

The free recursion (free_recursion) at prices tells how much each cell (width by length) can be worth at most. Going down
from the whole cloth, a cut is worth looking at only if its loss against the best cut, together with the losses above it, stays
within the gap between bound and target. Few cells remain. Going up again, each of them keeps several contents (counts of
pieces, so that quantities hold), the best first. If no cell had to drop any, the result is proven
(recursion with counts: Christofides and Hadjiconstantinou 1995 go this way; from memory).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from heapq import heappop, heappush
from operator import add, itemgetter

from calculators.layplan.counts import PackedCounts
from calculators.layplan.free_recursion import Cell, FreeRecursion, piece_in_corner
from calculators.layplan.plan import Part

# A content: (worth at prices, packed counts, how it was made); made is (), (piece number,), or
# (whether the cut runs along, the first part's cell, its content, the other part's content).
Content = tuple[int, int, tuple]


@dataclass
class LimitedRecursion:
    """One pass for a target.

    Parameters:
        recursion: positions and splits.
        rows: the free recursion's table at `worth`.
        worth: value less price of each piece.
        least: what the whole cloth must be worth at these prices to reach the target.
        kept: how many contents a cell keeps.
        most_cells: how many cells may be looked at, the most promising first.
        most_cuts: how many cuts of a cell may be looked at, the best first.
    """

    recursion: FreeRecursion
    rows: list[list[int]]
    worth: Sequence[int]
    least: int
    counts: PackedCounts
    kept: int
    most_cells: int
    most_cuts: int

    complete: bool = True
    contents: dict[Cell, list[Content]] = field(default_factory=dict, repr=False)

    def run(self) -> Iterator[None]:
        """Runs the pass, pausing often. Afterwards `contents` of the whole cloth hold the plans found."""
        slack = self.rows[-1][-1] - self.least
        if slack < 0:
            return
        cells = yield from self._cells_worth_looking_at(slack)
        cells.sort(key=lambda entry: entry[0][0] + entry[0][1])
        for count, (cell, room, cuts) in enumerate(cells):
            self._fill(cell, room, cuts)
            if count % 16 == 0:
                yield

    def _cells_worth_looking_at(self, slack: int) -> Iterator[None]:
        """Each cell with the loss it may have and its cuts, found from the whole cloth downwards, least loss above first."""
        waiting = [(-slack, self.recursion.whole)]
        rooms: dict[Cell, int] = {self.recursion.whole: slack}
        columns = list(zip(*self.rows))
        found: dict[Cell, tuple] = {}
        while waiting:
            room, cell = heappop(waiting)
            if cell in found:
                continue
            if len(found) == self.most_cells:
                self.complete = False
                break
            cuts = self._cuts(cell, -room, columns)
            found[cell] = (cell, -room, cuts)
            for loss, parts in cuts:
                for part in parts:
                    left = -room - loss
                    if rooms.get(part, -1) < left:
                        rooms[part] = left
                        heappush(waiting, (-left, part))
            if len(found) % 16 == 0:
                yield
        return list(found.values())

    def _cuts(self, cell: Cell, room: int, columns: list) -> list[tuple[int, tuple[Cell, ...]]]:
        """The cuts of a cell that lose no more than `room`: pairs (loss, parts), least loss first."""
        x, y = cell
        row, value = self.rows[x], self.rows[x][y]
        least = value - room
        cuts: list[tuple[int, tuple[Cell, ...]]] = []
        if x and self.rows[x - 1][y] >= least:
            cuts.append((value - self.rows[x - 1][y], ((x - 1, y),)))
        if y and row[y - 1] >= least:
            cuts.append((value - row[y - 1], ((x, y - 1),)))
        rests = self.recursion.splits_across[x]
        for part, together in enumerate(_sums(columns[y], rests), start=1):
            if together >= least:
                cuts.append((value - together, ((part, y), (rests[part - 1], y))))
        rests = self.recursion.splits_along[y]
        for part, together in enumerate(_sums(row, rests), start=1):
            if together >= least:
                cuts.append((value - together, ((x, part), (x, rests[part - 1]))))
        cuts.sort()
        if len(cuts) > self.most_cuts:
            self.complete = False
            del cuts[self.most_cuts :]
        return cuts

    def _fill(self, cell: Cell, room: int, cuts: list) -> None:
        """The best contents of a cell from those of the cells it is cut into."""
        x, y = cell
        least = self.rows[x][y] - room
        best: dict[int, Content] = {}
        if least <= 0:
            best[0] = (0, 0, ())
        for _, _, piece in self.recursion.single_ways(x, y):
            if self.worth[piece] >= least:
                unit = self.counts.unit(piece)
                best[unit] = (self.worth[piece], unit, (piece,))
        full = 2 * self.kept
        for loss, parts in cuts:
            if self.rows[x][y] - loss < least:
                break
            if len(best) > full:
                best, least = self._ranked(best)
            if len(parts) == 1:
                for content in self.contents.get(parts[0], ()):
                    if content[0] < least:
                        break
                    best.setdefault(content[1], content)
            else:
                self._join(parts, parts[0][1] == y, least, best)
        if len(best) > self.kept:
            best, _ = self._ranked(best)
        self.contents[cell] = sorted(best.values(), key=itemgetter(0), reverse=True)

    def _ranked(self, best: dict[int, Content]) -> tuple[dict[int, Content], int]:
        """The best contents alone, as many as are kept, and what another must be worth to come among them."""
        self.complete = False
        ranked = sorted(best.values(), key=itemgetter(0), reverse=True)[: self.kept]
        return {content[1]: content for content in ranked}, ranked[-1][0]

    def _join(self, parts: tuple[Cell, Cell], along: bool, least: int, best: dict[int, Content]) -> None:
        first, second = (self.contents.get(part, ()) for part in parts)
        if not first or not second:
            return
        guards, limit = self.counts.guards, self.counts.all | self.counts.guards
        for one in first:
            need = least - one[0]
            if second[0][0] < need:
                break
            for other in second:
                if other[0] < need:
                    break
                packed = one[1] + other[1]
                if packed not in best and (limit - packed) & guards == guards:
                    best[packed] = (one[0] + other[0], packed, (along, parts[0], one, other))

    def cloth(self, content: Content) -> Part:
        """A content of the whole cloth as a tree of cuts."""
        task = self.recursion.task
        across, along = self.recursion.across.points, self.recursion.along.points

        def part(made: tuple, x: int, y: int, width: int, length: int) -> Part:
            if not made:
                return Part(x, y, width, length)
            if len(made) == 1:
                return piece_in_corner(task, made[0], x, y, width, length)
            cut_along, (first_x, first_y), one, other = made
            if cut_along:
                at = across[first_x]
                parts = (part(one[2], x, y, at, length), part(other[2], x + at, y, width - at, length))
                return Part(x, y, width, length, "along", parts)
            at = along[first_y]
            parts = (part(one[2], x, y, width, at), part(other[2], x, y + at, width, length - at))
            return Part(x, y, width, length, "across", parts)

        return part(content[2], 0, 0, task.width, task.length)


def _sums(line: Sequence[int], rests: list[int]) -> Sequence[int]:
    """Value of part and rest for each way of cutting a line of the table."""
    if len(rests) > 1:
        return list(map(add, line[1:], itemgetter(*rests)(line)))
    return [line[1] + line[rest] for rest in rests]
