"""The flat parts an article is cut from, and the stretches of their sides that work is done to.

Every part is seen from the front of the finished article, so that the left of a back lies behind the left of its front.
A part ends where a finished edge, a seam or a fold is.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import pi, sqrt

TOP, BOTTOM, LEFT, RIGHT, ROUND = "top", "bottom", "left", "right", "round"
SIDES = (TOP, RIGHT, BOTTOM, LEFT)


@dataclass(frozen=True)
class FlatPart:
    """A flat part of one cloth, by its finished size [mm].

    width: across, length: up and down, as the finished article is looked at. is_round: a circle or an ellipse.
    count: how many like it an article has.
    """

    name: str
    width: Fraction
    length: Fraction
    is_round: bool = False
    count: int = 1

    @property
    def sides(self) -> tuple[str, ...]:
        return (ROUND,) if self.is_round else SIDES

    def length_of(self, side: str) -> Fraction:
        """How long one of its sides is [mm].

        Source: ramanujan-1914 for an ellipse, derived for the rest.
        """
        if side == ROUND:
            return _round_an_ellipse(self.width / 2, self.length / 2)
        return self.width if side in (TOP, BOTTOM) else self.length

    def side(self, name: str) -> "EdgeStretch":
        """A whole side. Raises ValueError where the part has none of that name."""
        if name not in self.sides:
            raise ValueError(f"{self.name} has no side called {name}; it has {', '.join(self.sides)}")
        return EdgeStretch(self, name, Fraction(0), self.length_of(name))

    @property
    def top(self) -> "EdgeStretch":
        return self.side(TOP)

    @property
    def bottom(self) -> "EdgeStretch":
        return self.side(BOTTOM)

    @property
    def left(self) -> "EdgeStretch":
        return self.side(LEFT)

    @property
    def right(self) -> "EdgeStretch":
        return self.side(RIGHT)

    @property
    def around(self) -> tuple["EdgeStretch", ...]:
        """All its sides."""
        return tuple(self.side(name) for name in self.sides)


@dataclass(frozen=True)
class EdgeStretch:
    """A stretch of a side, from `start` to `end` [mm] as they are counted from the left, or from below on a side that
    stands upright; it is walked backwards where `end` is less."""

    part: FlatPart
    side: str
    start: Fraction
    end: Fraction

    @property
    def length(self) -> Fraction:
        """How long it is [mm].

        Source: derived, from one end to the other.
        """
        return abs(self.end - self.start)

    def between(self, start: Fraction, end: Fraction) -> "EdgeStretch":
        """A stretch of it, from so far [mm] to so far along it."""
        way = 1 if self.end >= self.start else -1
        return EdgeStretch(self.part, self.side, self.start + way * start, self.start + way * end)

    @property
    def back(self) -> "EdgeStretch":
        """The same, walked the other way."""
        return EdgeStretch(self.part, self.side, self.end, self.start)


def _round_an_ellipse(one: Fraction, other: Fraction) -> Fraction:
    """Round an ellipse.

    one, other: its half axes [mm].
    Returns the length of its edge [mm].
    Source: ramanujan-1914, the second approximation: π·(a + b)·(1 + 3·h ÷ (10 + √(4 − 3·h))), h = ((a − b) ÷ (a + b))².
    """
    apart = float((one - other) / (one + other)) ** 2
    return Fraction(pi) * (one + other) * Fraction(1 + 3 * apart / (10 + sqrt(4 - 3 * apart)))
