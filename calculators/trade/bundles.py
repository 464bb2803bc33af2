"""Bundles: pieces that go through the workroom together, and the boxes of a work ticket that are ticked for them."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Bundles:
    """Pieces in bundles of one size, of which the last may be smaller.

    pieces: how many in all. size: how many go together.
    """

    pieces: int
    size: int

    @property
    def count(self) -> int:
        return -(-self.pieces // self.size)

    @property
    def last(self) -> int:
        """How many pieces the last bundle holds."""
        return self.pieces - (self.count - 1) * self.size

    def done(self, pieces_done: int) -> int:
        """How many bundles are whole once so many pieces are done."""
        return self.count if pieces_done >= self.pieces else max(0, pieces_done) // self.size

    def after_one_more(self, pieces_done: int) -> int:
        """How many pieces are done once the next bundle is, too."""
        return min(self.pieces, (self.done(pieces_done) + 1) * self.size)

    def after_one_less(self, pieces_done: int) -> int:
        """How many pieces are done once the last bundle ticked is taken back; a bundle begun is taken back first."""
        whole = self.done(pieces_done)
        begun = whole < self.count and pieces_done > whole * self.size
        return whole * self.size if begun else max(0, whole - 1) * self.size

    def boxes(self, most: int) -> list["TickBox"]:
        """Boxes to tick, at most so many: one a bundle, or each for the same number of bundles."""
        each = -(-self.count // most) * self.size
        return [TickBox(first, min(self.pieces, first + each - 1)) for first in range(1, self.pieces + 1, each)]


@dataclass(frozen=True)
class TickBox:
    """A box of a ticket: it stands for the pieces first to last, counted from 1."""

    first: int
    last: int

    def __contains__(self, piece: int) -> bool:
        return self.first <= piece <= self.last
