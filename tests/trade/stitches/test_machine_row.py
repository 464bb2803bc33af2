"""Where the needle goes through along a row: no stitch longer than the dial says by more than a third, the last one
just at the end."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.stitches.machine_row import SHORT, needle_places, short_part, stitches_in, tension_of

TENTHS = st.integers(5, 60).map(lambda n: F(n, 10))


@given(length=st.integers(50, 3000).map(lambda n: F(n, 10)), stitch=TENTHS, short=st.none() | TENTHS)
def test_a_row_ends_just_where_it_must(length: F, stitch: F, short: F | None):
    short = short and min(short, stitch)
    places = needle_places(length, stitch, short)
    steps = [after - before for before, after in zip(places, places[1:])]
    assert places[0] == 0 and places[-1] == length
    assert all(0 < step <= stitch * F(4, 3) for step in steps if length >= stitch)
    if short and length > short_part(short) + stitch:
        assert all(step <= short for step in steps[-SHORT:])


def test_places_by_hand():
    assert needle_places(F(10), F(5, 2)) == [0, F(5, 2), 5, F(15, 2), 10]
    assert needle_places(F(8), F(3)) == [0, 3, 6, 8]
    assert needle_places(F(13, 2), F(3)) == [0, 3, F(13, 2)], "half a millimetre is no stitch"
    assert needle_places(F(10), F(5, 2), F(5, 4)) == [0, F(5, 2), *(F(5, 2) + F(5, 4) * n for n in range(1, 7))]
    assert stitches_in(F(13), F(3)) == 5 and stitches_in(F(12), F(3)) == 4


@pytest.mark.parametrize(("lock", "said"), [(F(1, 2), "balanced"), (F(1), "tight above"), (F(0), "tight below")])
def test_where_the_threads_lock_tells_the_tension(lock: F, said: str):
    assert tension_of(lock) == said
