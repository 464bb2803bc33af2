"""What a label says: no fibre lost on the way, and no part treated more severely than it bears."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.labels import CARE, after_the_wash, by_weight, mildest

SHARES = st.lists(st.tuples(st.sampled_from(["linen", "Linen", "cotton", "silk", "wool"]), st.integers(1, 50).map(F)))


@given(SHARES)
def test_the_largest_share_stands_first_and_all_of_them_make_as_much_as_before(shares):
    told = by_weight(shares)
    assert [share for _, share in told] == sorted((share for _, share in told), reverse=True)
    assert sum(share for _, share in told) == sum(share for _, share in shares)
    assert {name.lower() for name, _ in told} == {name.lower() for name, _ in shares}
    assert len(told) == len({name.lower() for name, _ in told})


@pytest.mark.parametrize("treatment", CARE)
def test_one_part_that_bears_nothing_decides_for_the_whole_piece(treatment):
    first = next(iter(CARE[treatment]))
    assert mildest(treatment, [first, first]) == first
    assert mildest(treatment, [first, "not", first]) == "not"


@pytest.mark.parametrize(
    "treatment, degrees", [("wash", [95, 60, 40, 30]), ("dry", [80, 60]), ("iron", [200, 150, 110])]
)
def test_heat_falls_from_one_choice_to_the_next(treatment, degrees):
    said = [words for words in CARE[treatment].values() if "°C" in words and "mild" not in words]
    assert [int(words.split(" °C")[0].split()[-1]) for words in said] == degrees
    for words, celsius in zip(said, degrees):
        assert f"({round(celsius * 9 / 5 + 32)} °F)" in words


def test_a_loss_and_a_growth():
    assert (after_the_wash(F(400), F(-5)), after_the_wash(F(400), F(5))) == (380, 420)
