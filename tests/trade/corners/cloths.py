"""Random folded cloth for the folding tests, and ways to compare two stacks."""

from fractions import Fraction
from random import Random

from hypothesis import strategies as st
from shapely import unary_union
from shapely.geometry import Polygon

from calculators.trade.corners.cloth import FlatCloth
from calculators.trade.corners.convex import area, holds, polygon
from calculators.trade.corners.plane import Line, Point
from calculators.trade.corners.stack import NothingThere, Stack

SIDE = 120
CLOTH = FlatCloth("napkin", (polygon([(0, 0), (SIDE, 0), (SIDE, SIDE), (0, SIDE)]),))
WHOLE = SIDE * SIDE


def places(least: int = 10, most: int = SIDE - 10) -> st.SearchStrategy[Point]:
    """Exact places on the cloth."""
    number = st.integers(least, most)
    return st.tuples(number, number)


def lines() -> st.SearchStrategy[Line]:
    """Exact lines that cross the cloth."""
    way = st.tuples(st.integers(-9, 9), st.integers(1, 9))
    return st.builds(Line, places(), way) | st.builds(Line, places(), way.map(lambda xy: (-xy[1], xy[0])))


@st.composite
def folded(draw, most: int = 3) -> Stack:
    """The cloth after some folds of all layers, upward or under."""
    stack = Stack.flat(CLOTH)
    for line in draw(st.lists(lines(), max_size=most)):
        try:
            stack = stack.fold(line, over=draw(st.booleans()))
        except NothingThere:
            continue
    return stack


def cloth_area(stack: Stack) -> Fraction:
    return sum(area(facet.flat) for facet in stack.layers)


def shape(stack: Stack):
    """Everything on the table as a shapely shape."""
    return unary_union([as_shapely(facet.on_table) for facet in stack.layers])


def as_shapely(ring) -> Polygon:
    return Polygon([(float(x), float(y)) for x, y in ring])


def spots(count: int = 30, seed: int = 5) -> list[Point]:
    """Places all over the table, off every line that an exact fold could make."""
    random = Random(seed)
    return [(random.uniform(-SIDE, 2 * SIDE), random.uniform(-SIDE, 2 * SIDE)) for _ in range(count)]


def under(stack: Stack, spot: Point) -> list[tuple[int, int, bool]]:
    """What lies at a place of the table, the lowest first: the place in the flat cloth (to 1 µm) and which side is
    up."""
    found = []
    for facet in stack.layers:
        if holds(facet.on_table, spot):
            x, y = facet.lay.undone().place(spot)
            found.append((round(float(x) * 1000), round(float(y) * 1000), facet.right_side_up))
    return found
