"""Convex polygons: cut along a line, laid over one another, and joined again into outlines.

A polygon is a tuple of its corners, counterclockwise; an empty tuple is no cloth at all.
"""

from collections import defaultdict
from collections.abc import Iterable
from math import atan2

from calculators.trade.corners.plane import (
    TOUCHING,
    Isometry,
    Line,
    Number,
    Point,
    absolute,
    along,
    cross,
    dot,
    minus,
    point,
    same_place,
    steady,
    total,
)

Polygon = tuple[Point, ...]
Edge = tuple[Point, Point]
Bounds = tuple[Number, Number, Number, Number]

Place = tuple[int, int]  # one name for all points at one place
SPECK = 1e-6  # [mm²], what rounding can leave of a polygon that should be gone


def polygon(corners: Iterable[Point]) -> Polygon:
    """A polygon of corners given in either direction. Raises ValueError unless it is convex and has an inside."""
    ring = tuple(point(x, y) for x, y in corners)
    ring = tuple(b for a, b in zip(ring[-1:] + ring[:-1], ring) if not same_place(a, b))
    if area(ring) < 0:
        ring = ring[::-1]
    if area(ring) < SPECK or any(Line.through(a, b).side(c) < 0 for a, b in edges(ring) for c in ring):
        raise ValueError("a piece of cloth must be a convex polygon with some area")
    return ring


def edges(ring: Polygon) -> list[Edge]:
    return list(zip(ring, (*ring[1:], *ring[:1])))


def area(ring: Polygon) -> Number:
    """Area [mm²], negative when the corners run clockwise."""
    return total(cross(a, b) for a, b in edges(ring)) / 2


def centre(ring: Polygon) -> Point:
    """A point inside: the mean of the corners."""
    return (total(x for x, _ in ring) / len(ring), total(y for _, y in ring) / len(ring))


def centroid(ring: Polygon) -> Point:
    """The middle of a polygon of any shape by its area, wherever its corners are many; outside it if it is bent."""
    turned = [(a, b, cross(a, b)) for a, b in edges(ring)]
    six = 3 * sum(each for _, _, each in turned)
    return (
        sum((a[0] + b[0]) * each for a, b, each in turned) / six,
        sum((a[1] + b[1]) * each for a, b, each in turned) / six,
    )


def largest_first(ring: Polygon) -> tuple[int, ...]:
    """What to sort polygons by: the larger first; of those as large as each other the one farther left, then the
    lower."""
    return -steady(area(ring)), *_key(centre(ring))


def moved(ring: Polygon, lay: Isometry) -> Polygon:
    """A polygon where it lies on the table, counterclockwise again when it was turned over."""
    placed = tuple(lay.place(corner) for corner in ring)
    return placed[::-1] if lay.turned_over else placed


def cut(ring: Polygon, line: Line) -> tuple[Polygon, Polygon]:
    """The parts of a polygon left and right of a line."""
    return _divided(ring, *line.point, *line.direction)


def _divided(ring: Polygon, px: Number, py: Number, dx: Number, dy: Number) -> tuple[Polygon, Polygon]:
    """The parts of a polygon left and right of the line through (px, py) in the direction (dx, dy)."""
    longer = max(absolute(dx), absolute(dy))
    heights = [(dx * (y - py) - dy * (x - px)) / longer for x, y in ring]
    if min(heights) > -TOUCHING:
        return ring, ()
    if max(heights) < TOUCHING:
        return (), ring
    left, right = [], []
    here, height = ring[-1], heights[-1]
    for there, onward in zip(ring, heights):
        if (height >= TOUCHING and onward <= -TOUCHING) or (height <= -TOUCHING and onward >= TOUCHING):
            crossing = along(here, there, height / (height - onward))
            left.append(crossing)
            right.append(crossing)
        if onward > -TOUCHING:
            left.append(there)
        if onward < TOUCHING:
            right.append(there)
        here, height = there, onward
    return tuple(left), tuple(right)


def overlap(one: Polygon, other: Polygon) -> Polygon:
    """Where two polygons lie over each other."""
    if apart(one, other):
        return ()
    for (ax, ay), (bx, by) in edges(other):
        one, _ = _divided(one, ax, ay, bx - ax, by - ay)
        if not one:
            return ()
    return one if area(one) > SPECK else ()


def box(ring: Polygon) -> Bounds:
    """The upright box around a polygon: left, lowest, right, highest [mm]."""
    xs, ys = zip(*ring)
    return min(xs), min(ys), max(xs), max(ys)


def apart(one: Polygon, other: Polygon) -> bool:
    """Whether two polygons plainly do not lie over each other: their upright boxes do not."""
    (xs, ys), (other_xs, other_ys) = _columns(one), _columns(other)
    return min(xs) >= max(other_xs) or min(other_xs) >= max(xs) or min(ys) >= max(other_ys) or min(other_ys) >= max(ys)


def _columns(ring: Polygon) -> tuple[tuple[Number, ...], tuple[Number, ...]]:
    xs, ys = zip(*ring)
    return xs, ys


def without(one: Polygon, other: Polygon) -> list[Polygon]:
    """What is left of one polygon outside another, in convex parts."""
    if apart(one, other):
        return [one]
    left, rest = [], one
    for (ax, ay), (bx, by) in edges(other):
        rest, outside = _divided(rest, ax, ay, bx - ax, by - ay)
        if outside and area(outside) > SPECK:
            left.append(outside)
        if not rest:
            return [one]
    return left if area(rest) > SPECK else [one]


def holds(ring: Polygon, place: Point) -> bool:
    """Whether a point lies in a polygon or on its border."""
    x, y = place
    return all(
        (bx - ax) * (y - ay) - (by - ay) * (x - ax) > -TOUCHING * max(absolute(bx - ax), absolute(by - ay))
        for (ax, ay), (bx, by) in edges(ring)
    )


def part_inside(edge: Edge, ring: Polygon) -> Edge | None:
    """The part of a straight line between two points that lies over a polygon, border included."""
    start, end = edge
    low: Number = 0
    high: Number = 1
    (x1, y1), (x2, y2) = start, end
    for (ax, ay), (bx, by) in edges(ring):
        dx, dy = bx - ax, by - ay
        longer = max(absolute(dx), absolute(dy))
        at_start, at_end = ((dx * (y - ay) - dy * (x - ax)) / longer for x, y in ((x1, y1), (x2, y2)))
        if absolute(at_start) < TOUCHING and absolute(at_end) < TOUCHING:
            continue
        if at_start < -TOUCHING and at_end < TOUCHING or at_end < -TOUCHING and at_start < TOUCHING:
            return None
        if at_start < -TOUCHING:
            low = max(low, at_start / (at_start - at_end))
        elif at_end < -TOUCHING:
            high = min(high, at_start / (at_start - at_end))
    if low >= high:
        return None
    inside = along(start, end, low), along(start, end, high)
    return None if same_place(*inside) else inside


def outlines(pieces: Iterable[Polygon]) -> list[Polygon]:
    """The borders of polygons that lie side by side without overlapping, joined where they touch.

    Returns closed rings: outer borders counterclockwise, holes clockwise.
    """
    pieces = [ring for ring in pieces if ring]
    corners = list({_key(corner): corner for ring in pieces for corner in ring}.values())
    open_edges: dict[tuple[Place, Place], Edge] = {}
    for ring in pieces:
        for a, b in edges(ring):
            for start, end in _split(a, b, corners):
                if (_key(end), _key(start)) in open_edges:
                    del open_edges[_key(end), _key(start)]
                else:
                    open_edges[_key(start), _key(end)] = (start, end)
    return _chained(open_edges)


def _key(place: Point) -> Place:
    """One name for all points at one place."""
    return steady(place[0]), steady(place[1])


def _split(a: Point, b: Point, corners: list[Point]) -> list[Edge]:
    """An edge in parts, divided at every corner of the drawing that lies on it."""
    line, run = Line.through(a, b), minus(b, a)
    length = run[0] * run[0] + run[1] * run[1]
    shares = [(run[0] * (p[0] - a[0]) + run[1] * (p[1] - a[1])) / length for p in corners if line.side(p) == 0]
    inner = [share for share in shares if 1e-9 < share < 1 - 1e-9]
    stops = [a, *(along(a, b, share) for share in sorted(inner)), b]
    return [(p, q) for p, q in zip(stops, stops[1:]) if _key(p) != _key(q)]


def _chained(open_edges: dict[tuple[Place, Place], Edge]) -> list[Polygon]:
    """Edges joined to rings; where several leave from one corner, the one farthest to the left, so that no ring meets
    itself.

    A ring has not come from anywhere when it begins: there the first by place is taken.
    """
    leaving: dict[Place, list[Place]] = defaultdict(list)
    for begins, ends in open_edges:
        leaving[begins].append(ends)
    rings = []
    while leaving:
        here = first = next(iter(leaving))
        ring: list[Point] = []
        way: Point | None = None
        while not ring or here != first:
            choices = leaving[here]
            then = min(choices)
            if way and len(choices) > 1:
                turns = {each: _turn(way, minus(*reversed(open_edges[here, each]))) for each in choices}
                then = max(choices, key=turns.__getitem__)
            choices.remove(then)
            if not choices:
                del leaving[here]
            start, end = open_edges[here, then]
            ring.append(start)
            here, way = then, minus(end, start)
        rings.append(_straightened(ring))
    return rings


def _turn(way: Point, onward: Point) -> float:
    """How far to the left a new direction turns from the old one, from -π to π."""
    return atan2(float(cross(way, onward)), float(dot(way, onward)))


def _straightened(ring: list[Point]) -> Polygon:
    """A ring without the corners at which it does not turn."""
    return tuple(
        b for a, b, c in zip(ring[-1:] + ring[:-1], ring, ring[1:] + ring[:1]) if Line.through(a, c).side(b) != 0
    )
