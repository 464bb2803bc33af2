"""How work grows quicker: held against printed tables of the cumulative average curve, and against what must hold."""

from fractions import Fraction as F

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.trade.learning import time_with_learning


def test_the_second_block_of_a_run():
    """The reference of a statistics package of a military college, for Wright's curve: the first unit takes 75 h, the
    rate is 85 %; units 201 to 250 take 806.772 h."""
    whole, first = (time_with_learning(units, 1, F(75), F(85)) for units in (250, 200))
    assert float(whole - first) == pytest.approx(806.772, abs=5e-4)


def test_a_late_unit():
    """The same reference: the first unit takes 110 h, the rate is 88.5 %; unit 2,200 takes 23.34001 h."""
    with_it, without = (time_with_learning(units, 1, F(110), F("88.5")) for units in (2200, 2199))
    assert float(with_it - without) == pytest.approx(23.34001, abs=2e-3)


@pytest.mark.parametrize(("units", "total"), [(1, "100"), (2, "160"), (4, "256"), (8, "409.6"), (16, "655.36")])
def test_a_table_of_doublings(units, total):
    """A textbook of management accounting: 100 h for the first, 80 %."""
    assert time_with_learning(units, 1, F(100), F(80)) == F(total)


pieces, minutes = st.integers(1, 5_000), st.integers(1, 6_000).map(F)
rates = st.integers(100, 200).map(lambda half: F(half, 2))


@given(pieces, pieces, minutes, rates)
def test_the_pieces_timed_take_what_they_took_and_more_take_more_but_no_more_a_piece(made, timed, took, rate):
    assume(timed < made)
    whole = time_with_learning(made, timed, took, rate)
    assert time_with_learning(timed, timed, took, rate) == took < whole or rate == 50
    assert whole / made <= took / timed * (1 + F(1, 10**6))


@given(pieces, pieces, minutes)
def test_without_learning_each_takes_as_long(made, timed, took):
    assert time_with_learning(made, timed, took, F(100)) == took * made / timed


@given(st.integers(1, 300), st.integers(1, 6), minutes, rates)
def test_twice_as_many_take_the_rate_of_it_a_piece(timed, doublings, took, rate):
    made = timed * 2**doublings
    expected = float(took / timed) * (float(rate) / 100) ** doublings
    assert float(time_with_learning(made, timed, took, rate) / made) == pytest.approx(expected, rel=1e-6)
