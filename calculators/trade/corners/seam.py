"""Stitched lines, remembered on every layer they go through, so that one can ask later whether a seam lies closed."""

from dataclasses import dataclass

from calculators.trade.corners.plane import Number, Point, along


@dataclass(frozen=True)
class Thread:
    """A seam in one layer: from start to end in the flat cloth, and which share of the whole seam that is."""

    cloth: str
    start: Point
    end: Point
    first: Number
    last: Number

    def at(self, share: Number) -> Point | None:
        """The flat place of a share of the seam, if this layer has it."""
        if not self.first <= share <= self.last:
            return None
        return along(self.start, self.end, (share - self.first) / (self.last - self.first))


@dataclass(frozen=True)
class Seam:
    """A straight line of stitching through several layers."""

    threads: tuple[Thread, ...]
