"""Strips for a binding: what is cut is enough, and no more than is needed; counted another way."""

from fractions import Fraction as F
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon, box

from calculators.trade.binding import slanting_strips, spiral, square_for, straight_strips, strip_width

CM = st.integers(5, 200).map(lambda tenths: F(tenths, 2) * 10)


@given(st.integers(100, 90_000).map(F), st.integers(300, 3000).map(F), st.integers(0, 200).map(F))
def test_joined_one_by_one_the_strips_are_just_enough(length, cloth, join):
    count = straight_strips(length, cloth, join)
    joined = [cloth]
    while len(joined) < count:
        joined.append(cloth - join)
    assert sum(joined) >= length
    assert count == 1 or sum(joined[:-1]) < length


def test_a_join_as_long_as_a_strip_is_refused():
    with pytest.raises(ValueError, match="as much as a strip"):
        straight_strips(F(1000), F(100), F(100))


@given(st.integers(100, 9000).map(F), st.integers(20, 200).map(F), st.integers(400, 3000).map(F), st.integers(0, 20))
def test_strips_on_the_bias_lie_on_the_cloth_and_are_as_long_as_is_needed(length, strip, cloth, allowance):
    found = slanting_strips(length, strip, cloth, F(allowance))
    if found is None:
        assert float(length) / sqrt(2) + float(strip) * sqrt(2) > float(cloth), "one strip would do"
    count, high = found or (0, F(1))
    piece = box(0, 0, float(cloth), float(high)).buffer(0.01)
    across = float(strip) * sqrt(2)
    area = 0.0
    for number in range(count):
        left = number * across
        shape = Polygon(
            [
                (left, 0),
                (left + across, 0),
                (left + across + float(high), float(high)),
                (left + float(high), float(high)),
            ]
        )
        assert piece.contains(shape)
        area += shape.area
    joins = max(0, count - 1) * 2 * sqrt(2) * allowance
    assert area / float(strip) - joins == pytest.approx(float(length) if found else 0, abs=0.01)


@given(CM, CM, st.integers(20, 150).map(F), st.integers(0, 12).map(F))
def test_rows_round_a_piece_are_those_that_lines_on_it_would_mark(width, length, strip, allowance):
    """The parallelogram that the seams leave, cut by lines one strip apart."""
    shorter, longer = sorted(max(0.0, float(each - 2 * allowance)) for each in (width, length))
    rows, gives = spiral(width, length, strip, allowance)
    left = Polygon([(0, 0), (longer, 0), (longer + shorter, shorter), (shorter, shorter)])
    across = float(strip) * sqrt(2)
    marked = 0
    while (marked + 1) * across <= longer + 1e-6 and shorter:
        marked += 1
    lines = [LineString([(row * across - 1, -1), (row * across + shorter + 1, shorter + 1)]) for row in range(marked)]
    assert gives == pytest.approx(sum(line.intersection(left.buffer(1e-9)).length for line in lines), abs=0.01)
    assert not shorter or rows == marked


@given(st.integers(200, 60_000).map(F), st.integers(20, 150).map(F), st.integers(0, 12).map(F))
def test_the_square_gives_what_is_needed_and_a_smaller_one_does_not(length, strip, allowance):
    _, side = square_for(length, strip, allowance)
    assert spiral(side + F(1, 1000), side + F(1, 1000), strip, allowance)[1] >= float(length) - 0.01
    assert spiral(side - F(1, 100), side - F(1, 100), strip, allowance)[1] < float(length)


@pytest.mark.parametrize("double, bands", [(False, 4), (True, 6)])
def test_a_seam_as_wide_as_the_binding_makes_four_bands_or_six(double, bands):
    assert strip_width(F(10), F(10), F(0), double) == bands * 10
