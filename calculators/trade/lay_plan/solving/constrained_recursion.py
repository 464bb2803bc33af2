"""Plans with limited quantities and any number of stages, from the unconstrained recursion at good multipliers (see
`constrained_pass`)."""

from collections.abc import Iterator, Sequence
from operator import add, itemgetter

from calculators.trade.lay_plan.solving.constrained_pass import BeamWidth, ConstrainedPass, Content, Cut
from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.plan import Part
from calculators.trade.lay_plan.solving.unconstrained_recursion import Cell, UnconstrainedRecursion, piece_in_corner


class ConstrainedRecursion(ConstrainedPass[Cell]):
    """One pass for a target.

    Parameters:
        recursion: positions and splits.
        rows: the unconstrained recursion's table at `worth`.
        worth: value less multiplier of each piece.
        least, counts, beam_width: see `ConstrainedPass`.
    """

    def __init__(
        self,
        recursion: UnconstrainedRecursion,
        rows: list[Sequence[int]],
        worth: Sequence[int],
        least: int,
        counts: PackedCounts,
        beam_width: BeamWidth,
    ):
        super().__init__(recursion.whole, least, counts, beam_width)
        self.recursion, self.rows, self.worth = recursion, rows, worth
        self.columns = list(zip(*rows))

    def most(self, cell: Cell) -> int:
        return self.rows[cell[0]][cell[1]]

    def size(self, cell: Cell) -> int:
        return cell[0] + cell[1]

    def cuts(self, cell: Cell, least: int) -> list[Cut[Cell]]:
        x, y = cell
        row, column = self.rows[x], self.columns[y]
        value = row[y]
        cuts: list[Cut[Cell]] = []
        if x and column[x - 1] >= least:
            cuts.append((value - column[x - 1], ((x - 1, y),)))
        if y and row[y - 1] >= least:
            cuts.append((value - row[y - 1], ((x, y - 1),)))
        rests = self.recursion.splits_across[x]
        sums = _sums(column, rests)
        cuts += [
            (value - sums[part - 1], ((part, y), (rest, y)))
            for part, rest in enumerate(rests, 1)
            if sums[part - 1] >= least
        ]
        rests = self.recursion.splits_along[y]
        sums = _sums(row, rests)
        cuts += [
            (value - sums[part - 1], ((x, part), (x, rest)))
            for part, rest in enumerate(rests, 1)
            if sums[part - 1] >= least
        ]
        return cuts

    def uncut(self, cell: Cell, least: int) -> Iterator[Content]:
        for _, _, piece in self.recursion.single_ways(*cell):
            if self.worth[piece] >= least:
                yield self.worth[piece], self.counts.unit(piece), (piece,)

    def cloth(self, content: Content) -> Part:
        """A content of the whole cloth as a tree of cuts."""
        task = self.recursion.task
        across, along = self.recursion.across.points, self.recursion.along.points

        def part(content: Content, x: int, y: int, width: int, length: int) -> Part:
            made = content[2]
            if not made:
                return Part(x, y, width, length)
            if len(made) == 1:
                return piece_in_corner(task, made[0], x, y, width, length)
            cell, (first_x, first_y), one, other = made
            if first_y == cell[1]:
                at = across[first_x]
                parts = (part(one, x, y, at, length), part(other, x + at, y, width - at, length))
                return Part(x, y, width, length, "along", parts)
            at = along[first_y]
            parts = (part(one, x, y, width, at), part(other, x, y + at, width, length - at))
            return Part(x, y, width, length, "across", parts)

        return part(content, 0, 0, task.width, self.recursion.length)


def _sums(line: Sequence[int], rests: Sequence[int]) -> Sequence[int]:
    """Value of part and rest for each way of cutting a line of the table."""
    if len(rests) > 1:
        return list(map(add, line[1:], itemgetter(*rests)(line)))
    return [line[1] + line[rest] for rest in rests]
