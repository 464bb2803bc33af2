"""A row of stitches along one side of a piece: a whole number of them, the last one in the corner."""

from dataclasses import dataclass
from fractions import Fraction
from math import floor

SHORTENED = 6  # stitches before the corner that share what is left over


@dataclass(frozen=True)
class RowToCorner:
    """A row from corner to corner. length: of it; stitch: as it is set [mm]."""

    length: Fraction
    stitch: Fraction

    @property
    def count(self) -> int:
        """The whole number of stitches whose length comes nearest to the one that is set."""
        fewer = max(1, floor(self.length / self.stitch))
        return min((fewer, fewer + 1), key=lambda count: (abs(self.length / count - self.stitch), count))

    @property
    def adjusted(self) -> Fraction:
        """The stitch with which the last one lands in the corner [mm].

        Source: derived: the row in so many equal parts.
        """
        return self.length / self.count

    @property
    def shorten(self) -> tuple[Fraction, int]:
        """Where to shorten instead, the stitch left as it is set: how far before the corner [mm], and how many stitches
        remain from there; 0 and 0 where the last one lands in the corner anyway.

        Source: derived: what whole stitches leave over, and as many whole ones as make `SHORTENED`, in equal parts.
        """
        whole, left = divmod(self.length, self.stitch)
        if not left:
            return Fraction(0), 0
        kept = max(0, int(whole) - (SHORTENED - 1))
        return self.length - kept * self.stitch, int(whole) - kept + 1
