"""Where not everything fits and nobody has said what can be spared, no kind of piece is left out that some plan
keeps."""

from fractions import Fraction as F

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st

from calculators.trade.lay_plan.order import CannotPlan, Cloth, Flaw, Order, Rules, Wanted
from calculators.trade.lay_plan.planning import plan_order
from calculators.trade.lay_plan.solving.model import Piece, Task
from tests.trade.lay_plan.brute_force import most_value
from tests.trade.lay_plan.lay_check import lay_faults

STAGES = {"across": (2, "across"), "along": (2, "along"), "free": (None, "any")}


def planned(cloths, pieces, **rules):
    *_, best = (each for each in plan_order(Order(tuple(cloths), tuple(pieces), Rules(**rules))) if each)
    return best


def by_trying_everything(width, length, pieces, strips):
    """The most kinds that any plan keeps, and the most pieces of a plan that keeps so many: a hundred for the first of
    a kind, one for each other."""
    parts = []
    for piece in pieces:
        parts.append(Piece(int(piece.width), int(piece.length), 1, 101, piece.may_turn))
        if piece.count > 1:
            parts.append(Piece(int(piece.width), int(piece.length), piece.count - 1, 1, piece.may_turn))
    return divmod(most_value(Task(width, length, tuple(parts), *STAGES[strips])), 100)


@st.composite
def orders(draw):
    width, length = draw(st.integers(2, 6)), draw(st.integers(2, 6))
    left, pieces = 5, []
    for name in "abc":
        count = draw(st.integers(1, 3))
        if count <= left:
            left -= count
            pieces.append(
                Wanted(
                    name, F(draw(st.integers(1, width))), F(draw(st.integers(1, length))), count, draw(st.booleans())
                )
            )
    return width, length, pieces


@settings(max_examples=150, deadline=None)
@given(orders(), st.sampled_from(sorted(STAGES)))
def test_no_kind_is_left_out_that_a_plan_keeps_and_no_piece_besides(order, strips):
    width, length, pieces = order
    try:
        best = planned([Cloth("c", F(width), F(length))], pieces, strips=strips)
    except CannotPlan:
        reject()
    assert lay_faults(best.lays[0]) == []
    kinds, count = by_trying_everything(width, length, pieces, strips)
    assert (sum(made > 0 for made in best.made), sum(best.made)) == (kinds, count)
    assert best.bound is None or best.bound >= count
    if best.instead:
        assert sum(best.instead.made) > sum(best.made) and not all(best.instead.made)


NAPKIN, PLACEMAT, RUNNER = (
    Wanted("Napkin", F(400), F(400), 10),
    Wanted("Placemat", F(350), F(480), 6),
    Wanted("Runner", F(420), F(1500), 1),
)
LINEN = Cloth("Linen", F(1400), F(3000))
LOSSES = {"selvedge": F(15), "end_loss": F(10), "skew": F(20)}


@pytest.mark.parametrize("aim", ["most", "shelf"])
@pytest.mark.parametrize("flaws", [(), (Flaw(F(100), F(600), F(40), F(40)),)])
@pytest.mark.parametrize("copies", [1, 2])
def test_the_largest_piece_is_not_the_first_to_go(aim, flaws, copies):
    cloth = Cloth("Linen", F(1400), F(3000), copies, flaws=flaws)
    pieces = [Wanted(each.name, each.width, each.length, each.count * copies) for each in (NAPKIN, PLACEMAT, RUNNER)]
    best = planned([cloth], pieces, aim=aim, **LOSSES)
    assert all(best.made) and best.missing
    for lay in best.lays:
        assert lay_faults(lay) == []


def test_what_is_said_to_count_more_is_kept_and_the_rest_may_go():
    counted = [
        Wanted(each.name, each.width, each.length, each.count, matters=matters)
        for each, matters in ((NAPKIN, 2), (PLACEMAT, 2), (RUNNER, 1))
    ]
    best = planned([LINEN], counted, **LOSSES)
    assert best.made == (10, 6, 0) and best.instead is None


def test_what_is_ordered_by_number_comes_before_what_is_cut_as_often_as_it_fits():
    """6 m take a tablecloth: a centre, and two sides of 47 cm with one napkin beside them; 6 m take 3 × 15 more.
    Napkins alone are 90."""
    table = Wanted("Tablecloth", F(2400), F(3000), 1, joined=True)
    best = planned([Cloth("Linen", F(1500), F(12_000))], [table, Wanted("Napkin", F(400), F(400), None)])
    assert best.made == (1, 46) and not best.missing and best.instead.made == (0, 90)


def test_one_of_each_is_kept_where_as_many_as_fit_of_both_are_cut():
    """In strips: one of 50 cm with one large and two small, and two of 25 cm with four small each."""
    best = planned(
        [Cloth("Linen", F(1000), F(1000))],
        [Wanted("Large", F(500), F(500), None), Wanted("Small", F(250), F(250), None)],
    )
    assert best.made == (1, 10) and best.instead.made == (0, 16)


def test_a_piece_that_no_plan_keeps_beside_the_others_is_not_forced_in():
    best = planned([Cloth("c", F(100), F(100))], [Wanted("whole", F(100), F(100), 1), Wanted("half", F(100), F(50), 2)])
    assert best.made == (0, 2) and best.missing == {0: 1}
