"""Hemmed pieces: cut to finished and back."""

from fractions import Fraction as F

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import box

from calculators.articles.hemmed import hemmed_from_cut, hemmed_from_finished
from calculators.trade.hems import Hems, HemsMeet

INCH = F(254, 10)
DEPTHS = st.fractions(min_value=0, max_value=80, max_denominator=32)
SIZES = st.fractions(min_value=300, max_value=3000, max_denominator=32)


def equal(turn, hem):
    return Hems(turn, hem, hem, hem, hem)


def test_eighteen_inches_finished_with_quarter_inch_turn_and_hem_is_nineteen_cut():
    """Derived: finished + 2·(hem + turn)."""
    piece = hemmed_from_finished(18 * INCH, 18 * INCH, equal(INCH / 4, INCH / 4))
    assert (piece.cut_width, piece.cut_length) == (19 * INCH, 19 * INCH)


@given(SIZES, SIZES, DEPTHS, DEPTHS, DEPTHS, DEPTHS, st.fractions(min_value=0, max_value=20, max_denominator=32))
def test_cut_from_finished_from_cut_is_the_same_piece(width, length, top, bottom, left, right, turn):
    hems = Hems(turn, top, bottom, left, right)
    assume(left + right < width and top + bottom < length)
    piece = hemmed_from_finished(width, length, hems)
    assert hemmed_from_cut(piece.cut_width, piece.cut_length, hems) == piece
    assert (piece.finished_width, piece.finished_length) == (width, length)


@given(SIZES, SIZES, DEPTHS, DEPTHS, DEPTHS, DEPTHS)
def test_the_border_is_the_share_that_geometry_says(width, length, top, bottom, left, right):
    assume(left + right < width and top + bottom < length)
    piece = hemmed_from_finished(width, length, Hems(F(5), top, bottom, left, right))
    whole = box(0, 0, float(width), float(length))
    border = whole - box(float(left), float(bottom), float(width - right), float(length - top))
    assert float(piece.border_share) == pytest.approx(100 * border.area / whole.area)


def test_a_side_without_a_hem_takes_up_nothing():
    piece = hemmed_from_cut(F(460), F(460), Hems(F(10), F(20), F(20), F(0), F(0)))
    assert (piece.finished_width, piece.finished_length) == (460, 400)


@pytest.mark.parametrize(("width", "length", "sides"), [(100, 500, ("left", "right")), (500, 100, ("top", "bottom"))])
def test_hems_that_meet_leave_no_piece(width, length, sides):
    for hemmed, depth in ((hemmed_from_cut, F(25)), (hemmed_from_finished, F(50))):
        with pytest.raises(HemsMeet) as meeting:
            hemmed(F(width), F(length), equal(F(0), depth))
        assert meeting.value.sides == sides
