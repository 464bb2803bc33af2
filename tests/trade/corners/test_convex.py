"""Polygons against shapely, on random convex shapes."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import MultiPoint
from shapely.geometry import LineString

from calculators.trade.corners.convex import area, cut, holds, outlines, overlap, part_inside, polygon, without
from calculators.trade.corners.plane import Line, distance, root
from tests.trade.corners.cloths import as_shapely

ROUNDING = 1e-6


@st.composite
def shapes(draw):
    """A convex polygon: the hull of a few whole places."""
    number = st.integers(0, 60)
    hull = MultiPoint(draw(st.lists(st.tuples(number, number), min_size=3, max_size=7))).convex_hull
    if hull.geom_type != "Polygon":
        hull = hull.buffer(3, quad_segs=1).convex_hull
    return polygon([(float(x), float(y)) for x, y in list(hull.exterior.coords)[:-1]])


@given(shapes(), shapes())
def test_overlap_and_what_is_left(one, other):
    expected = as_shapely(one).intersection(as_shapely(other)).area
    assert float(area(overlap(one, other))) == pytest.approx(expected, abs=1e-5)
    rest = without(one, other)
    assert sum(float(area(part)) for part in rest) == pytest.approx(as_shapely(one).area - expected, abs=1e-5)
    assert all(as_shapely(part).intersection(as_shapely(other)).area < 1e-5 for part in rest)


@given(shapes(), shapes())
def test_outline_of_parts_side_by_side(one, other):
    rings = outlines([one, *without(other, one)])
    union = as_shapely(one).union(as_shapely(other)).area
    assert sum(float(area(ring)) for ring in rings) == pytest.approx(union, abs=1e-3)


@given(
    shapes(),
    st.tuples(st.integers(-10, 70), st.integers(-10, 70)),
    st.tuples(st.integers(-10, 70), st.integers(-10, 70)),
)
def test_part_of_a_line_inside(shape, start, end):
    assume(start != end)
    expected = as_shapely(shape).intersection(LineString([start, end])).length
    part = part_inside((start, end), shape)
    assert (float(distance(*part)) if part else 0) == pytest.approx(expected, abs=1e-4)


def test_a_cut_through_a_square_is_exact():
    square = polygon([(0, 0), (3, 0), (3, 3), (0, 3)])
    left, right = cut(square, Line((0, 1), (3, 1)))
    assert area(left) == Fraction(9, 2) and area(right) == Fraction(9, 2)
    assert (Fraction(3), Fraction(2)) in left
    assert holds(square, (3, 2)) and not holds(square, (4, 2))


def test_a_hole_runs_the_other_way():
    frame = without(polygon([(0, 0), (9, 0), (9, 9), (0, 9)]), polygon([(3, 3), (6, 3), (6, 6), (3, 6)]))
    assert sorted(float(area(ring)) for ring in outlines(frame)) == [-9, 81]


def test_shapes_that_meet_in_a_corner_keep_their_own_outlines():
    rings = outlines([polygon([(0, 0), (1, 0), (1, 1), (0, 1)]), polygon([(1, 1), (2, 1), (2, 2), (1, 2)])])
    assert [len(ring) for ring in rings] == [4, 4]


def test_corners_in_either_direction_but_only_convex():
    assert area(polygon([(0, 0), (0, 3), (3, 3)])) == Fraction(9, 2)
    for corners in ([(0, 0), (4, 0), (1, 1), (0, 4)], [(0, 0), (1, 0), (2, 0)]):
        with pytest.raises(ValueError):
            polygon(corners)


def test_lines_side_by_side_never_cross():
    with pytest.raises(ValueError):
        Line((0, 0), (1, 2)).meets(Line((5, 0), (2, 4)))


def test_a_root_is_exact_where_it_can_be():
    assert root(Fraction(9, 16)) == Fraction(3, 4)
    assert root(Fraction(2)) == pytest.approx(1.41421356237)
