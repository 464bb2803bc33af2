"""Curtains, held to a brute count of widths, to cloth cut up piece by piece, and to what is published."""

from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.curtains import (
    Drop,
    Hem,
    JoinedWidths,
    Window,
    cloth_for,
    each_curtain_of,
    whole_steps,
    widths_for,
    widths_from,
)

INCH = F(254, 10)
WINDOW = Window(F(2000), 2, F(100), F(80), False)
lengths = st.fractions(min_value=1, max_value=4000, max_denominator=8)


@pytest.mark.parametrize(
    ("fullness", "flat", "gathered"), [(F(2), 211, 222), (F(5, 2), 261, F("277.5")), (F(3), 311, 333)]
)
def test_fullness_of_a_rod_plus_overlap_and_returns(fullness, flat, gathered):
    """UFGS 12 22 00: 200, 250 and 300 percent of the rod plus overlaps and returns, read both ways: 100 in, 2 × 4 in
    and 3 in."""
    window = Window(100 * INCH, 2, 4 * INCH, 3 * INCH, False)
    assert window.flat_width(fullness) / INCH == flat
    assert replace(window, gathered=True).flat_width(fullness) / INCH == gathered


@given(st.fractions(min_value=1, max_value=5, max_denominator=100), st.integers(1, 12), st.booleans())
def test_the_fullness_of_the_width_wanted_is_the_fullness_wanted(fullness, curtains, gathered):
    window = replace(WINDOW, curtains=curtains, gathered=gathered)
    assert window.fullness(window.flat_width(fullness)) == fullness
    assert window.beyond_the_rod == 200 + 80 * (curtains - 1)  # n curtains meet n − 1 times


@given(lengths, st.integers(200, 3000), st.integers(0, 24), st.integers(0, 100), st.integers(0, 100), st.booleans())
def test_no_fewer_widths_would_do(finished, cloth, seam, depth, turn, halves):
    """Counted one step after another: cloth laid edge to edge, two allowances less at each join, two hems less at the
    sides."""
    made = widths_for(finished, F(cloth), F(seam), Hem(F(depth), F(turn)), halves)
    step = F(1, 2) if halves else F(1)

    def finished_from(count):
        pieces = [F(cloth)] * int(count) + ([F(cloth, 2)] if count % 1 else [])
        return sum(pieces) - 2 * seam * (len(pieces) - 1) - 2 * (depth + turn if depth else 0)

    count = step
    while finished_from(count) < finished:
        count += step
    assert (made.number, made.finished) == (count, finished_from(count))


def test_a_school_lesson_comes_to_five_widths():
    """A window of 72 in, fullness 3, two curtains, cloth of 54 in: 5 widths. 3 × 72 = 216 = 4 × 54, so that any hem at
    all takes half a width more in each."""
    window = Window(72 * INCH, 2, F(0), F(0), False)
    for hem, seam in ((Hem(INCH, INCH), INCH / 2), (Hem(INCH / 8, F(0)), F(0))):
        each = widths_for(window.flat_width(F(3)) / 2, 54 * INCH, seam, hem, True)
        assert 2 * each.number == 5
    assert widths_for(window.flat_width(F(3)) / 2, 54 * INCH, F(0), Hem(F(0), F(0)), True).number == 2


def test_joins_lie_where_the_widths_end():
    """150 cm with 1 cm allowances: half a width shows 74, the next 148, the last 149 to its edge."""
    joined = JoinedWidths(F(5, 2), F(1500), F(10), Hem(F(20), F(20)))
    assert joined.places_of_joins == [740, 2220] and (joined.cut, joined.finished) == (3710, 3630)
    assert JoinedWidths(F(1, 2), F(1500), F(10), Hem(F(20), F(20))).places_of_joins == []


def test_a_width_goes_up_to_whole_repeats():
    """240 + 5 + 2 × 10 = 265 cm; 64 cm go 4.14 times into it, so 5 × 64 = 320."""
    drop = Drop(F(2400), F(50), Hem(F(100), F(100)), F(0), F(640))
    assert (drop.needed, drop.cut) == (2650, 3200)
    assert (
        replace(drop, repeat=F(0)).cut == 2650
        and replace(drop, repeat=F(2650)).cut == 2650
        and replace(drop, repeat=F(2651, 2)).cut == 2651
    )


def test_shrinkage_is_taken_by_length_and_growth_is_not_counted_on():
    """ISO 5077, derived: 265 ÷ 0.95 = 278.947 cm unwashed; with repeats of 64 unwashed, 320, which the wash makes
    304."""
    drop = Drop(F(2400), F(50), Hem(F(100), F(100)), F(-5), F(0))
    assert float(drop.cut_unwashed) == pytest.approx(2789.4737, abs=1e-4) and drop.cut == 2650
    matched = replace(drop, repeat=F(640))
    assert (matched.cut_unwashed, matched.cut) == (3200, 3040)
    assert replace(drop, change=F(3)).cut_unwashed == 2650


@given(
    st.integers(1, 30),
    st.integers(500, 5000),
    st.sampled_from([0, 1, 64, 640, 1000]),
    st.integers(0, 3),
    st.integers(0, 50),
    st.integers(0, 640),
)
def test_the_cloth_can_be_cut_wherever_the_pattern_begins(widths, needed, repeat, spare, end_loss, begins):
    """Cut one width after another from the first place where the pattern begins, each at the same place of it."""
    drop = Drop(F(needed), F(0), Hem(F(0), F(0)), F(0), F(repeat))
    length = cloth_for(widths, drop, spare, F(2 * end_loss))
    at = F(end_loss) + (begins % repeat if repeat and spare else 0)
    for _ in range(widths):
        start, end = at, at + needed
        at = start + -(-needed // repeat) * repeat if repeat else end
    assert end <= length - end_loss
    assert (
        widths_from(length, drop, spare, F(2 * end_loss)) == widths
        and widths_from(length - F(1, 8), drop, spare, F(2 * end_loss)) == widths - 1
    )


@pytest.mark.parametrize(
    ("widths", "curtains", "halves", "each"),
    [
        (5, 2, True, F(5, 2)),
        (5, 2, False, 2),
        (1, 2, True, F(1, 2)),
        (1, 2, False, 0),
        (4, 3, True, 1),
        (12, 1, True, 12),
    ],
)
def test_widths_are_shared_out_alike(widths, curtains, halves, each):
    assert each_curtain_of(widths, curtains, halves) == each


def test_a_shop_sells_whole_steps():
    assert (whole_steps(F(12_910), F(100)), whole_steps(F(13_000), F(100)), whole_steps(F(1), F(100))) == (
        13_000,
        13_000,
        100,
    )
