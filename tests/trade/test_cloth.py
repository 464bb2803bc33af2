"""Cloth before it is planned on: the wash, and the usable rectangle."""

from fractions import Fraction as F

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import Polygon, box
from shapely.affinity import translate

from calculators.trade.cloth import after_the_wash, cloth_to_start_from, dimensional_change, usable_cloth

LENGTHS = st.fractions(min_value=10, max_value=10_000, max_denominator=100)
CHANGES = st.fractions(min_value=-25, max_value=25, max_denominator=100)


def test_shrinkage_is_negative():
    """Source: ISO 5077, restated: 350 → 339.5 is −3.0 %."""
    assert dimensional_change(F(350), F("339.5")) == -3


@given(LENGTHS, CHANGES)
def test_what_is_needed_is_left_after_the_wash(needed, change):
    assert after_the_wash(cloth_to_start_from(needed, change), change) == needed


@given(LENGTHS, CHANGES)
def test_a_change_measured_is_the_change_that_happened(before, change):
    assert dimensional_change(before, after_the_wash(before, change)) == change


def test_five_hundred_left_at_three_percent_takes_more_than_three_percent_added():
    """Derived from ISO 5077: 500 ÷ 0.97 = 515.46, not 515.0."""
    assert float(cloth_to_start_from(F(500), F(-3))) == pytest.approx(515.46, abs=0.005)


def test_usable_cloth_of_a_folded_length():
    cloth = usable_cloth(4, F(800), F(120), F(1500), F(15), F(10), F(12))
    assert (cloth.whole_length, cloth.length, cloth.width, cloth.skew_percent) == (3320, 3288, 1470, F(8, 10))


def test_skew_as_a_share_of_the_width():
    """Source: GOST 14067-91, 100·d/w (the formula from context): 15 mm on 1500 mm is 1.0 %."""
    assert usable_cloth(1, F(1000), F(0), F(1500), F(0), F(0), F(15)).skew_percent == 1


@given(
    length=st.integers(300, 5000), width=st.integers(200, 3000), skew=st.integers(0, 200), end_loss=st.integers(0, 40)
)
def test_the_loss_to_skew_is_what_geometry_says(length, width, skew, end_loss):
    """Of a cloth whose ends were cut square, only what lies between two slanted threads can be kept; pulled square,
    that
    parallelogram is as long as its side. Of a cloth whose ends follow the thread, the longest square rectangle is as
    long."""
    usable = usable_cloth(1, F(length), F(0), F(width), F(0), F(end_loss), F(skew))
    rectangle = box(end_loss, 0, length - end_loss, width)
    thread = Polygon(
        [(0, 0), (skew, width), (skew + 2 * length, width), (2 * length, 0)]
    )  # all that lies beyond one thread
    kept = (
        rectangle
        & translate(thread, end_loss)
        & translate(Polygon([(0, 0), (skew, width), (-2 * length, width), (-2 * length, 0)]), length - end_loss - skew)
    )
    assert kept.area == pytest.approx(float(usable.length) * width)
    slanted = Polygon([(0, 0), (skew, width), (skew + length - 2 * end_loss, width), (length - 2 * end_loss, 0)])
    square = box(skew, 0, length - 2 * end_loss, width)
    assert slanted.buffer(1e-6).contains(square) and square.bounds[2] - square.bounds[0] == usable.length


@given(
    length=st.integers(2500, 5000),
    width=st.integers(200, 1500),
    selvedge=st.integers(0, 50),
    skew=st.integers(1, 600),
    slack=st.floats(1e-3, 50),
)
def test_left_slanted_only_the_upright_rectangle_lies_in_it(length, width, selvedge, skew, slack):
    """The strip's own slant over the usable width, by shapely: the upright rectangle lies in it, and none longer
    does."""
    cloth = usable_cloth(1, F(length), F(0), F(width), F(selvedge), F(0), F(skew))
    slant = skew * (width - 2 * selvedge) / width
    strip = Polygon(
        [
            (0, 0),
            (slant, float(cloth.width)),
            (slant + float(cloth.length), float(cloth.width)),
            (float(cloth.length), 0),
        ]
    )
    upright = float(cloth.upright_length)
    assert strip.buffer(1e-6).contains(box(slant, 0, slant + upright, float(cloth.width)))
    assert not any(
        strip.buffer(1e-6).contains(box(at, 0, at + upright + slack, float(cloth.width)))
        for at in (slant - slack, slant - slack / 2, slant)
    )


@given(
    st.integers(1, 20),
    st.integers(10, 1000),
    st.integers(0, 1000),
    st.integers(10, 3000),
    st.integers(0, 100),
    st.integers(0, 100),
    st.integers(0, 200),
)
def test_nothing_usable_is_larger_than_what_is_there(layers, folded, extra, width, selvedge, end_loss, skew):
    assume(layers * folded + extra > 2 * end_loss + skew and width > 2 * selvedge)
    cloth = usable_cloth(layers, F(folded), F(extra), F(width), F(selvedge), F(end_loss), F(skew))
    assert 0 < cloth.length <= layers * folded + extra
    assert 0 < cloth.width <= width


@pytest.mark.parametrize(("selvedge", "end_loss"), [(500, 0), (0, 500), (600, 0), (0, 600)])
def test_cloth_that_is_all_waste_is_refused(selvedge, end_loss):
    with pytest.raises(ValueError, match="nothing is left"):
        usable_cloth(1, F(1000), F(0), F(1000), F(selvedge), F(end_loss), F(0))
