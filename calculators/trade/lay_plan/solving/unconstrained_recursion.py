"""The best plan with any number of stages when every piece may be used as often as it fits.

    F(x, y) = max of   the best single piece that fits in x by y,
                       F(x1, y) + F(x − x1, y),   F(x, y1) + F(x, y − y1)

over the positions that sums of piece sizes reach (`gilmore-gomory-1966`; `herz-1972` for the positions).
Exact and fast;
with multipliers on the pieces it bounds the plans with limited quantities.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from itertools import accumulate
from operator import add, itemgetter

from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.normal_patterns import NormalPatterns
from calculators.trade.lay_plan.solving.packed_fields import PackedFields
from calculators.trade.lay_plan.solving.plan import Part

DENSE = 4  # as many single lengths for each reachable one are quick enough all at once
MOST_IN_FIELDS = 1 << 62

Cell = tuple[int, int]  # indices of a width and a length
Rows = Sequence[Sequence[int]]


class UnconstrainedRecursion:
    """The positions of a task and the recursion over them.

    Parameters:
        task: a task with a length; its stages and first cut are not looked at.
        unlimited: whether every piece may be used as often as it fits; fewer positions then do.
    """

    def __init__(self, task: Task, unlimited: bool = False):
        self.task = task
        self.length = length = task.fixed_length
        self.ways = [
            (width, along, number)
            for number, piece in enumerate(task.pieces)
            for width, along, _ in piece.sizes()
            if width <= task.width and along <= length and task.quantity(number) > 0
        ]
        copies = [task.quantity(number) for number in range(len(task.pieces))]
        self.across = NormalPatterns([(width, copies[n]) for width, _, n in self.ways], task.width)
        self.along = NormalPatterns([(along, copies[n]) for _, along, n in self.ways], length)
        if unlimited:
            self.across, self.along = self.across.reduced(), self.along.reduced()
        self.splits_across = _splits(self.across)
        self.splits_along = _splits(self.along)
        self._fields: tuple[PackedFields, Callable[[int], int]] | None = None
        self.whole: Cell = (self.across.last, self.along.last)

    def single_ways(self, x: int, y: int) -> list[tuple[int, int, int]]:
        """The ways (width, length, piece) that fit in a cell."""
        width, length = self.across.points[x], self.along.points[y]
        return [way for way in self.ways if way[0] <= width and way[1] <= length]

    def rows(self, values: Sequence[int]) -> Iterator[Sequence[int]]:
        """The table row by row, a row for each width over all lengths; a pause between rows is possible."""
        most = self.task.width * self.length * max(values) // min(x * y for x, y, _ in self.ways)
        if self.length <= DENSE * self.along.last and most < MOST_IN_FIELDS:
            return self._rows_in_fields(values, most)
        return self._rows_in_lists(values)

    def _rows_in_fields(self, values: Sequence[int], most: int) -> Iterator[Sequence[int]]:
        """The rows over every single length, all lengths at once."""
        pick = itemgetter(*self.along.points)
        if self._fields is None or most > self._fields[0].most:
            fields = PackedFields(self.length + 1, most)
            self._fields = fields, fields.holding(self.along.points)
        fields, held = self._fields
        starts: dict[int, int] = {}
        for width, length, number in self.ways:
            x = bisect_left(self.across.points, width)
            starts[x] = fields.larger(starts.get(x, 0), values[number] * fields.from_field(length))
        guards, top, larger = fields.guards, fields.top, fields.larger
        rows: list[int] = []
        gains: list[int] = []  # the widths that hold more than the next smaller one
        row = 0
        for x in range(len(self.across.points)):
            rests = self.splits_across[x]
            before = row
            if x in starts:
                row = larger(row, starts[x])
            for part in gains:
                if part > len(rests):
                    break
                cut = rows[part] + rows[rests[part - 1]]
                spare = (row | guards) - cut
                guard = spare & guards
                row = cut + (spare & (guard - (guard >> top)))
            if row != before:
                row = self._closed(row, fields, held)
                gains.append(x)
                listed = pick(fields.listed(row))
            elif not rows:
                listed = (0,) * len(self.along.points)
            rows.append(row)
            yield listed

    def _closed(self, row: int, fields: PackedFields, held: Callable[[int], int]) -> int:
        """A row after any of its lengths may be cut into two or more."""
        given = fields.listed(row)
        below = 0
        for point in self.along.points[1 : 1 + len(self.splits_along[-1])]:
            worth = given[point]
            if worth > below and fields.at(row, point) == worth:
                for _ in range(self.length // point):
                    before = row
                    row = fields.larger(row, held(fields.later(row, point, worth)))
                    if row == before:
                        break
            below = worth
        return row

    def _rows_in_lists(self, values: Sequence[int]) -> Iterator[list[int]]:
        """The rows over the reachable lengths alone, where those are few."""
        rows: list[list[int]] = []
        starts = self._starts(values)
        lengths = len(self.along.points)
        gather = [itemgetter(*rests) if len(rests) > 1 else None for rests in self.splits_along]
        row = [0] * lengths
        for x in range(len(self.across.points)):
            fresh = list(accumulate(starts[x], max)) if x in starts else [0] * lengths
            pairs = [list(map(add, rows[part], rows[rest])) for part, rest in enumerate(self.splits_across[x], start=1)]
            row = list(map(max, row, fresh, *pairs))
            best = 0
            for y, (rests, gathered) in enumerate(zip(self.splits_along, gather)):
                value = row[y]
                if gathered:
                    value = max(value, max(map(add, row[1:], gathered(row))))
                elif rests:
                    value = max(value, row[1] + row[rests[0]])
                best = row[y] = value if value > best else best
            rows.append(row)
            yield row

    def _starts(self, values: Sequence[int]) -> dict[int, list[int]]:
        """For each width that a piece has: the values of those pieces at their lengths."""
        starts: dict[int, list[int]] = {}
        for width, length, number in self.ways:
            x, y = bisect_left(self.across.points, width), bisect_left(self.along.points, length)
            row = starts.setdefault(x, [0] * len(self.along.points))
            row[y] = max(row[y], values[number])
        return starts

    def steps(self, rows: Rows, values: Sequence[int], cell: Cell) -> tuple[int | None, list[Cell]]:
        """How the best plan of a cell is made: its single piece, or the cells it is cut into (one when only
        trimmed)."""
        x, y = cell
        value = rows[x][y]
        if value == 0:
            return None, []
        if x and rows[x - 1][y] == value:
            return None, [(x - 1, y)]
        if y and rows[x][y - 1] == value:
            return None, [(x, y - 1)]
        for _, _, number in self.single_ways(x, y):
            if values[number] == value:
                return number, []
        for part, rest in enumerate(self.splits_across[x], start=1):
            if rows[part][y] + rows[rest][y] >= value:
                return None, [(part, y), (rest, y)]
        for part, rest in enumerate(self.splits_along[y], start=1):
            if rows[x][part] + rows[x][rest] >= value:
                return None, [(x, part), (x, rest)]
        raise AssertionError("a table value without a plan")

    def used(self, rows: Rows, values: Sequence[int]) -> list[int]:
        """How often the best plan uses each piece."""
        used = [0] * len(self.task.pieces)
        cells = [self.whole]
        while cells:
            piece, further = self.steps(rows, values, cells.pop())
            if piece is not None:
                used[piece] += 1
            cells.extend(further)
        return used

    def cloth(self, rows: Rows, values: Sequence[int]) -> Part:
        """The best plan as a tree of cuts."""

        def part(cell: Cell, x: int, y: int, width: int, length: int) -> Part:
            piece, further = self.steps(rows, values, cell)
            if piece is not None:
                return piece_in_corner(self.task, piece, x, y, width, length)
            if not further:
                return Part(x, y, width, length)
            if len(further) == 1:
                return part(further[0], x, y, width, length)
            (first_x, first_y), second = further
            if first_y == cell[1]:
                at = self.across.points[first_x]
                return Part(
                    x,
                    y,
                    width,
                    length,
                    "along",
                    (part(further[0], x, y, at, length), part(second, x + at, y, width - at, length)),
                )
            at = self.along.points[first_y]
            return Part(
                x,
                y,
                width,
                length,
                "across",
                (part(further[0], x, y, width, at), part(second, x, y + at, width, length - at)),
            )

        return part(self.whole, 0, 0, self.task.width, self.length)


def piece_in_corner(task: Task, number: int, x: int, y: int, width: int, length: int) -> Part:
    """A piece in the corner of a part, cut free by as many cuts as it needs beyond one trimming cut."""
    across, along, turned = next(size for size in task.pieces[number].sizes() if size[0] <= width and size[1] <= length)
    if across == width or along == length:
        return Part(x, y, width, length, piece=number, turned=turned)
    strip = Part(x, y, width, along, piece=number, turned=turned)
    return Part(x, y, width, length, "across", (strip, Part(x, y + along, width, length - along)))


def _splits(positions: NormalPatterns) -> list[Sequence[int]]:
    """For each point the index of the rest beside its first part 1, 2, …, as long as the part is not more than half."""
    points, floor = positions.points, positions.floor
    if len(points) == points[-1] + 1:
        return [range(point - 1, point - 1 - point // 2, -1) for point in points]
    return [[floor[point - part] for part in points[1 : bisect_right(points, point // 2)]] for point in points]
