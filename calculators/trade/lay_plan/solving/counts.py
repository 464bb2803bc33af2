"""Piece counts packed into one whole number, so that "are enough left?" is one subtraction and one comparison.

Each piece has its own group of bits with one guard bit on top. Taking a strip's pieces from what is left borrows from a
guard bit exactly when some piece runs short.
"""

from collections.abc import Iterable, Sequence


class PackedCounts:
    """Packs and unpacks counts of pieces.

    Parameters:
        copies: for each piece the largest count that occurs.
    """

    def __init__(self, copies: Sequence[int]):
        self.bits = max(copies, default=0).bit_length() + 1
        self.pieces = len(copies)
        self.all = self.pack(enumerate(copies))
        self.guards = sum(1 << (self.bits * piece + self.bits - 1) for piece in range(self.pieces))

    def unit(self, piece: int) -> int:
        """One copy of a piece."""
        return 1 << (self.bits * piece)

    def field(self, piece: int) -> int:
        """A mask over the count of a piece."""
        return ((1 << (self.bits - 1)) - 1) << (self.bits * piece)

    def pack(self, counts: Iterable[tuple[int, int]]) -> int:
        """One number from pairs (piece, count)."""
        return sum(count << (self.bits * piece) for piece, count in counts)

    def unpack(self, packed: int) -> list[int]:
        """The count of every piece."""
        field = (1 << self.bits) - 1
        return [(packed >> (self.bits * piece)) & field for piece in range(self.pieces)]

    def pairs(self, packed: int) -> tuple[tuple[int, int], ...]:
        """Pairs (piece, count) of the pieces present."""
        return tuple((piece, count) for piece, count in enumerate(self.unpack(packed)) if count)
