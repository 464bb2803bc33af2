"""Pieces of one size from one cloth, all lying the same way: how many fit, where to mark, what a change would gain."""

from dataclasses import dataclass
from fractions import Fraction
from math import hypot

from calculators.trade.cloth import LongEdges


@dataclass(frozen=True)
class Grid:
    """Pieces side by side on a cloth, all lying the same way; sizes [mm] as they lie, turned or not.

    cloth_width, cloth_length: what can be used [mm]. edges: the long edges outside that width.
    wanted: how many of those that fit are to be cut, row after row from the straightened end; None for all.
    """

    cloth_width: Fraction
    cloth_length: Fraction
    lie_width: Fraction
    lie_length: Fraction
    turned: bool
    edges: LongEdges = LongEdges()
    wanted: int | None = None

    @property
    def across(self) -> int:
        return self.cloth_width // self.lie_width

    @property
    def along(self) -> int:
        return self.cloth_length // self.lie_length

    @property
    def count(self) -> int:
        return self.across * self.along

    @property
    def cut(self) -> int:
        """Pieces that are cut [pieces]."""
        return self.count if self.wanted is None else min(self.wanted, self.count)

    @property
    def rows(self) -> int:
        """Rows that are cut, the last of them perhaps not whole."""
        return rows_of(self.cut, self.across) if self.count else 0

    @property
    def columns(self) -> int:
        """Pieces of the first row that are cut."""
        return min(self.cut, self.across)

    @property
    def in_last_row(self) -> int:
        """Pieces of the last row that are cut."""
        return self.cut - (self.rows - 1) * self.across if self.cut else 0

    @property
    def marks_across(self) -> list[Fraction]:
        """Distances from one side of what can be used [mm], each measured from that same side.

        Source: derived, pieces lie side by side without a gap.
        """
        return [n * self.lie_width for n in range(1, self.columns + 1)]

    @property
    def marks_along(self) -> list[Fraction]:
        """Distances from the straightened end [mm], each measured from that same end.

        Source: derived, rows lie one behind another without a gap.
        """
        return [n * self.lie_length for n in range(1, self.rows + 1)]

    @property
    def left_width(self) -> Fraction:
        """What is left of the width beside the last piece [mm].

        Source: derived, the width less the pieces across it.
        """
        return self.cloth_width - self.across * self.lie_width

    @property
    def left_length(self) -> Fraction:
        """What is left of the length behind the last row [mm].

        Source: derived, the length less the rows along it.
        """
        return self.cloth_length - self.along * self.lie_length


def rows_of(pieces: int, across: int) -> int:
    """Rows that pieces take, the last one perhaps not whole.

    pieces: how many; across: how many lie side by side.
    Returns whole rows [rows].
    Source: derived, pieces ÷ across rounded up.
    """
    return -(-pieces // across)


def threads_of_a_piece(across: int) -> Fraction:
    """The threads that are drawn for one piece where every cut follows one.

    across: how many lie side by side in a strip [pieces].
    Returns one for the piece itself and its share of the one that parts its strip [threads].
    Source: derived: a strip of n pieces takes 1 + n cuts.
    """
    return 1 + Fraction(1, across)


def further_length(pieces: int, across: int, size: Fraction) -> Fraction:
    """The length that pieces still lacking take on a further cloth of the same width.

    pieces: how many are lacking; across: how many lie side by side; size: one piece along the cloth [mm].
    Returns whole rows [mm]. What is left of the first cloth is not counted on: a piece cannot lie over two ends.
    Source: derived: the next whole number of rows × size.
    """
    return rows_of(pieces, across) * size


@dataclass(frozen=True)
class OtherCount:
    """What another number of pieces in one direction asks for.

    direction: "across" or "along"; in_direction: pieces in that direction; count: pieces in all.
    size: the largest piece, in that direction, of which so many fit [mm].
    more_cloth: cloth to add in that direction to keep the piece as it is [mm]; 0 when it fits already.
    """

    direction: str
    in_direction: int
    count: int
    size: Fraction
    more_cloth: Fraction


def pieces_from_cloth(
    cloth_width: Fraction, cloth_length: Fraction, piece_width: Fraction, piece_length: Fraction, may_turn: bool
) -> Grid:
    """The most pieces of one size that a cloth gives when all lie the same way.

    cloth_width, cloth_length: usable cloth [mm]; piece_width, piece_length: cut size [mm].
    may_turn: whether the pieces may lie with their length across the cloth.
    Returns the grid; upright when both ways give as many. Its count is 0 when no piece fits.
    Source: derived, whole pieces in each direction.
    """
    upright = Grid(cloth_width, cloth_length, piece_width, piece_length, False)
    if not may_turn:
        return upright
    return max(upright, Grid(cloth_width, cloth_length, piece_length, piece_width, True), key=lambda grid: grid.count)


def other_counts(grid: Grid, step_range: range = range(-1, 3)) -> list[OtherCount]:
    """What the next counts on either side would need, in each direction.

    grid: the pieces as they lie.
    step_range: how many pieces fewer or more to look at in each direction.
    Returns one entry per direction and count, fewest first.
    Source: derived: the largest piece of which n fit is the cloth divided by n.
    """
    entries = []
    for direction, now, beside, cloth, lie in (
        ("across", grid.across, grid.along, grid.cloth_width, grid.lie_width),
        ("along", grid.along, grid.across, grid.cloth_length, grid.lie_length),
    ):
        for n in (now + step for step in step_range if now + step > 0):
            entries.append(OtherCount(direction, n, n * beside, cloth / n, max(Fraction(0), n * lie - cloth)))
    return entries


def diagonal(width: Fraction, length: Fraction) -> float:
    """From corner to opposite corner of a square piece, the same both ways.

    width, length: its sides [mm].
    Returns the diagonal [mm].
    Source: derived, the theorem of Pythagoras.
    """
    return hypot(float(width), float(length))
