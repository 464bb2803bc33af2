"""General-purpose libraries as judges: the values of the cases marked *library*, worked out by another way than the
calculators'."""

from collections.abc import Callable

import sympy
from shapely import Point as Spot
from shapely import Polygon, affinity, box, union_all
from sympy.geometry import Circle, Ellipse, Line, Point

_FAR = 1_000


def _lines(hem_1: int, hem_2: int, degrees: int) -> tuple[Line, Line, Point]:
    """Both edges of a corner at the origin and the point where creases parallel to them cross."""
    away = Point(sympy.cos(sympy.rad(degrees)), sympy.sin(sympy.rad(degrees)))
    edge_1, edge_2 = Line(Point(0, 0), Point(1, 0)), Line(Point(0, 0), away)
    inward = Point(away.y, -away.x)
    crease_1, crease_2 = edge_1.translate(0, hem_1), edge_2.translate(hem_2 * inward.x, hem_2 * inward.y)
    return edge_1, edge_2, crease_1.intersection(crease_2)[0]


def _marks(hem_1: int, hem_2: int, degrees: int) -> tuple[Point, Point, Point]:
    """Where the circle round the crossing that runs through the corner meets the edges again, and the crossing."""
    edge_1, edge_2, crossing = _lines(hem_1, hem_2, degrees)
    around, corner = Circle(crossing, crossing.distance(Point(0, 0))), Point(0, 0)
    first, second = (
        max(around.intersection(edge), key=lambda point: float(corner.distance(point))) for edge in (edge_1, edge_2)
    )
    return first, second, crossing


def _from_corner(number: int) -> float:
    return float(Point(0, 0).distance(_marks(20, 30, 75)[number]))


def _to_line() -> float:
    first, _, crossing = (each.n(30) for each in _marks(23, 31, 110))  # in roots it takes seconds
    return float(Line(first, crossing).distance(Point(0, 0)))


def _folded(layers: list[Polygon], place: float, way: str) -> list[Polygon]:
    """Layers of cloth folded along a line square to an edge, everything short of the line laid over."""
    x, y = (place, -_FAR) if way == "x" else (-_FAR, place)
    kept = box(x, y, 2 * _FAR, 2 * _FAR)
    over = [affinity.scale(each.difference(kept), **{f"{way}fact": -1}, origin=(place, place)) for each in layers]
    return [part for part in (*(each.intersection(kept) for each in layers), *over) if part.area > 0]


def _layers(hem_1: float, hem_2: float, turn: float) -> float:
    """The most layers over any place of two hems folded one after the other."""
    cloth = [box(0, 0, _FAR, _FAR)]
    for way, hem in (("y", hem_1), ("x", hem_2)):
        cloth = _folded(_folded(cloth, turn, way), turn + hem, way)
    deepest, piled = 0, cloth
    while piled:
        deepest += 1
        covered = union_all(piled[:1])
        again = []
        for each in piled[1:]:
            again.append(each.intersection(covered))
            covered = covered.union(each)
        piled = [part for part in again if part.area > 1e-9]
    return deepest


def _round_a_polygon(across: float, corners: int) -> float:
    """Round a circle so wide, as a polygon of so many corners."""
    return float(Spot(0, 0).buffer(across / 2, quad_segs=corners // 4).length)


def _round_an_oval(width: int, length: int) -> float:
    """Round an ellipse so wide and long, by the elliptic integral."""
    return float(Ellipse(Point(0, 0), sympy.Rational(width, 2), sympy.Rational(length, 2)).circumference)


JUDGES: dict[str, Callable[[], float]] = {
    "unequal hems at 75°, the first mark": lambda: _from_corner(0),
    "unequal hems at 75°, the second mark": lambda: _from_corner(1),
    "corner to line at 110°": _to_line,
    "layers of two hems across each other": lambda: _layers(20, 20, 10),
    "layers of two unequal hems across each other": lambda: _layers(30, 20, 8),
    "round the end of a bolster": lambda: _round_a_polygon(8, 80_000),
    "round a long oval": lambda: _round_an_oval(90, 250),
}
