"""What a batch costs, against sums written out by hand."""

from fractions import Fraction as F

from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.costing import CLOTH, OTHER, THREAD, TIME, costs_of


def batch(pieces=12, cloth=F(20), thread=F(4), hour=F(30), other=F(1, 2)):
    """12 pieces of 3 m of cloth, 2 spools (a quarter of a spool for one more), 20 min once and 10 min a piece."""
    time = F(20) + pieces * F(10)
    return costs_of(pieces, (F(3000), pieces, cloth), (2, F(1, 4), thread), (time, F(10), hour), other)


def test_a_batch_worked_by_hand():
    """3 m × 20 = 60; 2 × 4 = 8; 20 + 12 × 10 = 140 min at 30 an hour = 70; 12 × 0.50 = 6; together 144, 12 a piece.

    One more: 60 ÷ 12 = 5 of cloth, 1 of thread, 5 for ten minutes, 0.50: 11.50.
    """
    costs = batch()
    assert dict(costs.parts) == {CLOTH: 60, THREAD: 8, TIME: 70, OTHER: 6}
    assert (costs.total, costs.each, costs.one_more, costs.largest, costs.without_price) == (
        144,
        12,
        F("11.5"),
        TIME,
        (),
    )


def test_what_has_no_price_is_not_in_the_sum_and_is_named():
    costs = batch(cloth=None, hour=None)
    assert (costs.total, costs.one_more, costs.largest) == (8 + 6, F("1.5"), THREAD)
    assert costs.without_price == (CLOTH, TIME)


def test_nothing_is_the_largest_part_of_nothing():
    assert batch(cloth=F(0), thread=None, hour=None, other=F(0)).largest == ""


@given(st.integers(1, 1000), st.fractions(0, 100), st.fractions(0, 100))
def test_the_pieces_together_cost_what_the_batch_does(pieces, cloth, other):
    costs = batch(pieces, cloth=cloth, other=other)
    assert costs.each * pieces == costs.total == sum(costs.parts.values())
    assert costs.parts[costs.largest] == max(costs.parts.values())
