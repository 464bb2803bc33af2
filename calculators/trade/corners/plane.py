"""The table: points, straight lines and the movements that lay cloth down without stretching it.

Coordinates are millimetres: fractions, which stay exact through every fold along a line through exact points, or floats
where an angle makes them irrational. Places closer than TOUCHING are one place.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from math import atan2, degrees, fsum, isqrt, sqrt

Number = Fraction | float
Point = tuple[Number, Number]

TOUCHING = 1e-7  # [mm], far above what floats lose over a dozen folds, far below any thread


absolute: Callable[[Number], Number] = abs  # type: ignore[assignment] # abs is typed for one kind of number only


def total(parts: Iterable[Number]) -> Number:
    """The sum [any unit]: exact where every part is, else rounded once, so that every Python comes to the same last
    digit (from 3.12 on the sum of floats is another). Parts with a slope keep it."""
    parts = list(parts)
    kinds = {type(part) for part in parts}
    return fsum(parts) if float in kinds and kinds <= {float, Fraction, int} else sum(parts)


def point(x: Number | int, y: Number | int) -> Point:
    """A point; whole numbers become fractions, so that dividing them later stays exact."""
    return (Fraction(x) if type(x) is int else x, Fraction(y) if type(y) is int else y)


def minus(a: Point, b: Point) -> Point:
    return (a[0] - b[0], a[1] - b[1])


def along(a: Point, b: Point, share: Number) -> Point:
    """The point a share of the way from a to b."""
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)


def middle(a: Point, b: Point) -> Point:
    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)


def onward(place: Point, way: Point, by: Number) -> Point:
    """The place so many times a way further on; for a way of length 1, a distance further on [mm]."""
    return (place[0] + way[0] * by, place[1] + way[1] * by)


def unit(way: Point) -> Point:
    """The direction of a way, with a length of 1."""
    length = root(dot(way, way))
    return (way[0] / length, way[1] / length)


def cross(a: Point, b: Point) -> Number:
    return a[0] * b[1] - a[1] * b[0]


def dot(a: Point, b: Point) -> Number:
    return a[0] * b[0] + a[1] * b[1]


def root(square: Number) -> Number:
    """Square root [any unit]: exact where an exact number has an exact root."""
    if type(square) is Fraction:  # quicker than isinstance, which for Fraction asks an abstract class
        above, below = isqrt(square.numerator), isqrt(square.denominator)
        if above**2 == square.numerator and below**2 == square.denominator:
            return Fraction(above, below)
    return sqrt(square) if type(square) is float else square**0.5  # a root is the same on every machine, a power not


def distance(a: Point, b: Point) -> Number:
    """How far apart two points lie [mm]."""
    return root(dot(minus(b, a), minus(b, a)))


def angle_between(one: Point, other: Point) -> float:
    """The angle from one direction to another, either way round.

    one, other: directions of any length.
    Returns the angle [degrees], 0 to 180.
    Source: derived, its sine and cosine are as cross and dot product.
    """
    return degrees(abs(atan2(float(cross(one, other)), float(dot(one, other)))))


def steady(value: Number) -> int:
    """A number without its last digits, which differ from one computer's Python to another's: to choose by, so that
    equals stay equal.

    value: a length [mm], an area [mm²] or an angle [degrees].
    Returns hundred-thousandths, shifted so that no ruler's division falls between two of them.
    """
    return round(float(value) * 1e5 + 0.1234)


def same_place(a: Point, b: Point) -> bool:
    return absolute(a[0] - b[0]) < TOUCHING and absolute(a[1] - b[1]) < TOUCHING


@dataclass(frozen=True, init=False)
class Line:
    """A straight line through a point in a direction; its left side is the positive one."""

    point: Point
    direction: Point
    longer: Number = field(repr=False, compare=False)

    def __init__(self, through: Point, direction: Point):
        mine = self.__dict__  # the quick way into a frozen object: folding makes lines by the thousand
        mine["point"] = through = point(*through)
        mine["direction"] = direction = point(*direction)
        mine["longer"] = max(absolute(direction[0]), absolute(direction[1]))

    @classmethod
    def through(cls, a: Point, b: Point) -> "Line":
        return cls(a, minus(b, a))

    def reversed(self) -> "Line":
        return Line(self.point, (-self.direction[0], -self.direction[1]))

    def height(self, place: Point) -> Number:
        """How far left of the line a point lies, in units of the direction's longer part (no root, so exact stays
        exact)."""
        (dx, dy), (x, y) = self.direction, self.point
        return (dx * (place[1] - y) - dy * (place[0] - x)) / self.longer

    def side(self, place: Point) -> int:
        """1 left of the line, -1 right of it, 0 on it."""
        height = self.height(place)
        return 0 if absolute(height) < TOUCHING else (1 if height > 0 else -1)

    def towards(self, place: Point) -> "Line":
        """The same line, turned so that a place lies on its left."""
        return self if self.height(place) >= 0 else self.reversed()

    def shifted(self, by: Number) -> "Line":
        """The parallel line a distance to the left [mm]."""
        length = root(dot(self.direction, self.direction))
        dx, dy = self.direction
        return Line((self.point[0] - dy * by / length, self.point[1] + dx * by / length), self.direction)

    def meets(self, other: "Line") -> Point:
        """Where two lines cross. Raises ValueError where they run side by side."""
        turn = cross(self.direction, other.direction) / (self.longer * other.longer)
        if absolute(turn) < 1e-12:
            raise ValueError("these two lines run side by side and never cross")
        share = cross(minus(other.point, self.point), other.direction) / cross(self.direction, other.direction)
        return along(self.point, (self.point[0] + self.direction[0], self.point[1] + self.direction[1]), share)

    def foot(self, place: Point) -> Point:
        """The point of the line nearest to a place."""
        share = dot(minus(place, self.point), self.direction) / dot(self.direction, self.direction)
        return (self.point[0] + self.direction[0] * share, self.point[1] + self.direction[1] * share)


@dataclass(frozen=True)
class Isometry:
    """How a flat piece lies on the table: moved, turned, or turned over; never stretched.

    A flat point (x, y) lies at (a·x + b·y + e, c·x + d·y + f).
    """

    a: Number = 1
    b: Number = 0
    c: Number = 0
    d: Number = 1
    e: Number = 0
    f: Number = 0

    @classmethod
    def folded_over(cls, line: Line) -> "Isometry":
        """The movement that folds the plane over along a line: a reflection."""
        dx, dy = line.direction
        square = dot(line.direction, line.direction)
        p, q = (dx * dx - dy * dy) / square, 2 * dx * dy / square
        x, y = line.point
        return cls(p, q, q, -p, x - p * x - q * y, y - q * x + p * y)

    @property
    def turned_over(self) -> bool:
        """Whether the side that faced up now faces down."""
        return self.a * self.d - self.b * self.c < 0

    def place(self, flat: Point) -> Point:
        x, y = flat
        return (self.a * x + self.b * y + self.e, self.c * x + self.d * y + self.f)

    def then(self, after: "Isometry") -> "Isometry":
        """This movement, followed by another."""
        return Isometry(
            after.a * self.a + after.b * self.c,
            after.a * self.b + after.b * self.d,
            after.c * self.a + after.d * self.c,
            after.c * self.b + after.d * self.d,
            after.a * self.e + after.b * self.f + after.e,
            after.c * self.e + after.d * self.f + after.f,
        )

    def undone(self) -> "Isometry":
        """The movement back. The turn of an isometry undoes itself by exchanging b and c."""
        return Isometry(
            self.a, self.c, self.b, self.d, -(self.a * self.e + self.c * self.f), -(self.b * self.e + self.d * self.f)
        )

    def in_floats(self) -> "Isometry":
        return Isometry(*(float(part) for part in (self.a, self.b, self.c, self.d, self.e, self.f)))

    def same_as(self, other: "Isometry") -> bool:
        return all(same_place(self.place(spot), other.place(spot)) for spot in ((0, 0), (1000, 0), (0, 1000)))
