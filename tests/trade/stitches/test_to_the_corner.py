"""Stitches to a corner: laid one after another they end there, and no other number comes nearer to the stitch set."""

from fractions import Fraction as F

from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.stitches.to_the_corner import SHORTENED, RowToCorner

ROWS = st.builds(
    RowToCorner, st.integers(20, 40_000).map(lambda n: F(n, 10)), st.integers(5, 80).map(lambda n: F(n, 10))
)


@given(ROWS)
def test_the_last_stitch_lands_in_the_corner_and_no_other_number_is_nearer(row):
    assert sum([row.adjusted] * row.count) == row.length
    about = int(row.length / row.stitch)
    others = [abs(row.length / count - row.stitch) for count in range(max(1, about - 3), about + 4)]
    assert abs(row.adjusted - row.stitch) == min(others)


@given(ROWS)
def test_shortened_at_the_end_it_lands_there_too(row):
    from_corner, short = row.shorten
    kept, more = divmod(row.length - from_corner, row.stitch)
    assert more == 0
    if from_corner:
        assert short == min(SHORTENED, row.length // row.stitch + 1)
        assert F(0) < from_corner / short < row.stitch
    else:
        assert kept * row.stitch == row.length
