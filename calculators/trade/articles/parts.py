"""The flat parts an article is cut from, and the stretches of their sides that work is done to.

Every part is seen from the front of the finished article, so that the left of a back lies behind the left of its front.
A part ends where a finished edge, a seam or a fold is.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from math import hypot, pi, sqrt

TOP, BOTTOM, LEFT, RIGHT, ROUND = "top", "bottom", "left", "right", "round"
TOP_LEFT, TOP_RIGHT, BOTTOM_LEFT, BOTTOM_RIGHT = "top left", "top right", "bottom left", "bottom right"
STRAIGHT_SIDES = (TOP, RIGHT, BOTTOM, LEFT)
SIDES = (TOP, TOP_RIGHT, RIGHT, BOTTOM_RIGHT, BOTTOM, BOTTOM_LEFT, LEFT, TOP_LEFT)

Place = tuple[Fraction, Fraction]
_ZERO = Fraction(0)
#: The corners that each straight side goes between, and whether it meets the level side there where one is cut off.
_ENDS = {
    TOP: ((TOP_LEFT, True), (TOP_RIGHT, True)),
    BOTTOM: ((BOTTOM_LEFT, True), (BOTTOM_RIGHT, True)),
    LEFT: ((BOTTOM_LEFT, False), (TOP_LEFT, False)),
    RIGHT: ((BOTTOM_RIGHT, False), (TOP_RIGHT, False)),
    TOP_LEFT: ((TOP_LEFT, False), (TOP_LEFT, True)),
    TOP_RIGHT: ((TOP_RIGHT, False), (TOP_RIGHT, True)),
    BOTTOM_LEFT: ((BOTTOM_LEFT, True), (BOTTOM_LEFT, False)),
    BOTTOM_RIGHT: ((BOTTOM_RIGHT, True), (BOTTOM_RIGHT, False)),
}


@dataclass(frozen=True)
class FlatPart:
    """A flat part of one cloth, by its finished size [mm].

    width: across, length: up and down, as the finished article is looked at. is_round: a circle or an ellipse.
    count: how many like it an article has. slants: the corners that are cut off straight, such as “top left”, with how
    much of the level and of the upright side each takes away [mm]; the slanting side has the corner's name. like: the
    part that it is cut alike to, empty where it is drawn by itself. cloth: which it is cut from, such as “lining”;
    empty for the article's own. is_bias: whether it is a strip on the bias. is_sideways: whether its width lies along
    the cloth.
    """

    name: str
    width: Fraction
    length: Fraction
    is_round: bool = False
    count: int = 1
    slants: Mapping[str, Place] = field(default_factory=dict, hash=False)
    like: str = ""
    cloth: str = ""
    is_bias: bool = False
    is_sideways: bool = False

    @property
    def sides(self) -> tuple[str, ...]:
        """Its sides, clockwise from the top; one that the slants leave nothing of is none."""
        if self.is_round:
            return (ROUND,)
        return tuple(side for side in SIDES if self.length_of(side)) if self.slants else STRAIGHT_SIDES

    def ends_of(self, side: str) -> tuple[Place, Place]:
        """Both ends of a straight side, the left one first, or the lower one of a side that stands upright or slants.

        side: one of its sides.
        Returns both places, from the lower left corner of the part [mm].
        Source: derived, the corners of a rectangle less what the slants take away.
        """
        one, other = _ENDS[side]
        return self._corner(*one), self._corner(*other)

    def _corner(self, name: str, level: bool) -> Place:
        """A corner, or where its slant meets the level or the upright side."""
        is_right, is_high = name in (TOP_RIGHT, BOTTOM_RIGHT), name in (TOP_LEFT, TOP_RIGHT)
        x, y = self.width if is_right else _ZERO, self.length if is_high else _ZERO
        if name not in self.slants:
            return x, y
        across, up = self.slants[name]
        if level:
            return x - across if is_right else across, y
        return x, y - up if is_high else up

    def place_on(self, side: str, along: Fraction) -> Place:
        """A place so far along a straight side.

        side: one of its sides. along: from its first end [mm].
        Returns the place, from the lower left corner of the part [mm].
        Source: derived, as far of the way between both ends.
        """
        (x1, y1), (x2, y2) = ends = self.ends_of(side)
        way = along / apart(*ends)
        return x1 + way * (x2 - x1), y1 + way * (y2 - y1)

    def length_of(self, side: str) -> Fraction:
        """How long one of its sides is [mm].

        Source: ramanujan-1914 for an ellipse, Pythagoras for a slant, derived for the rest.
        """
        if side == ROUND:
            return _round_an_ellipse(self.width / 2, self.length / 2)
        return apart(*self.ends_of(side))

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
    stands upright or slants; it is walked backwards where `end` is less."""

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


def apart(one: Place, other: Place) -> Fraction:
    """How far two places are apart.

    one, other: the places [mm].
    Returns the distance [mm], exact where one is straight above or beside the other.
    Source: derived, by Pythagoras from what lies across and up between them.
    """
    across, up = abs(other[0] - one[0]), abs(other[1] - one[1])
    return across + up if not across or not up else Fraction(hypot(across, up))


def _round_an_ellipse(one: Fraction, other: Fraction) -> Fraction:
    """Round an ellipse.

    one, other: its half axes [mm].
    Returns the length of its edge [mm].
    Source: ramanujan-1914, the second approximation: π·(a + b)·(1 + 3·h ÷ (10 + √(4 − 3·h))), h = ((a − b) ÷ (a + b))².
    """
    apart = float((one - other) / (one + other)) ** 2
    return Fraction(pi) * (one + other) * Fraction(1 + 3 * apart / (10 + sqrt(4 - 3 * apart)))
