"""How work grows quicker with every piece: the time of a whole batch from that of its first pieces."""

from fractions import Fraction
from math import log2

_FINEST = 10**6  # a power is no exact number; so fine, it is the same on every machine


def time_with_learning(pieces: int, timed: int, minutes: Fraction, rate: Fraction) -> Fraction:
    """The time that pieces made one after another take, where the first of them were timed.

    pieces: how many are made in all. timed: how many of them were timed, from the first on. minutes: what those took
    together [min]. rate: what share of the time a piece takes on average once twice as many are made [%]; 100 for work
    that grows no quicker.
    Returns the time for all of them, those that were timed included [min].
    Source: wright-1936, the average over x pieces is the time of the first times x^log2(rate ÷ 100), and so the total
    over that of those timed is (pieces ÷ timed)^(1 + log2(rate ÷ 100)).
    """
    if rate == 100:
        return minutes * pieces / timed
    grown = (pieces / timed) ** (1 + log2(rate / 100))
    return minutes * Fraction(grown).limit_denominator(_FINEST)
