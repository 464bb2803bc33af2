"""Nothing is to be bought while one change to the cutting, or turning, would fit the order; and a change that is
advised does."""

from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st

from calculators.trade.lay_plan.advice import advised
from calculators.trade.lay_plan.order import CannotPlan, Cloth, Flaw, Order, Rules, Wanted
from calculators.trade.lay_plan.planning import plan_order
from calculators.trade.lay_plan.solving.in_one_go import in_one_go
from calculators.values.measure import CENTIMETRES

WAYS = ("across", "along", "either", "sections", "free")


def planned(order):
    *_, best = (each for each in plan_order(order) if each)
    return best


def advice_for(order):
    best = planned(order)
    return best, in_one_go(advised)(best, CENTIMETRES)


def fits(order):
    try:
        best = planned(order)
    except CannotPlan:
        return False
    return not best.missing and not best.short_by


def single_changes(order):
    """Every other way, every piece turned by itself, and all of them: written down apart from the code that advises."""
    for way in WAYS:
        yield replace(
            order,
            rules=replace(order.rules, strips=way, aim="most" if order.rules.aim == "shortest" else order.rules.aim),
        )
    for turned in (*({number} for number in range(len(order.pieces))), set(range(len(order.pieces)))):
        yield replace(
            order,
            pieces=tuple(
                replace(piece, may_turn=piece.may_turn or number in turned and not piece.matched)
                for number, piece in enumerate(order.pieces)
            ),
        )


SIZES = st.integers(2, 8).map(lambda n: F(n * 100))
PIECES = st.lists(
    st.builds(Wanted, st.sampled_from("abc"), SIZES, SIZES, st.integers(1, 3), st.sampled_from([False, False, True])),
    min_size=1,
    max_size=3,
)
FLAWS = st.lists(
    st.builds(Flaw, st.integers(0, 700).map(F), st.integers(0, 500).map(F), st.just(F(35)), st.just(F(35))), max_size=1
)


@settings(max_examples=150, deadline=None)
@given(
    st.integers(6, 12), st.integers(6, 18), PIECES, st.sampled_from(WAYS),
    st.sampled_from(["most", "most", "shelf", "shortest"]),
    st.sampled_from([1, 1, 2]), FLAWS, st.sampled_from([False, False, True]),
)  # fmt: skip
def test_nothing_is_bought_while_one_change_would_do(width, length, pieces, way, aim, copies, flaws, one_way):
    way = "across" if aim == "shortest" else way
    order = Order(
        (Cloth("c", F(width * 100), F(length * 100), copies, one_way, flaws=tuple(flaws)),),
        tuple(pieces),
        Rules(aim=aim, strips=way),
    )
    try:
        best, advice = advice_for(order)
    except CannotPlan:
        reject()
    lacks = bool(best.missing) or best.short_by > 0
    if advice.change:
        assert lacks and fits(advice.change.order)
        assert advice.rest is None and not advice.what_ifs and not advice.longer, "one advice, not two"
    elif lacks:
        assert not [changed for changed in single_changes(order) if fits(changed)]
    if best.missing and not advice.change:
        assert advice.rest or any(piece.width > F(width * 100) for piece in best.pieces)
        assert not any(each.kind == "more cloth" for each in advice.what_ifs)


NAPKINS = (
    Wanted("Napkin", F(400), F(400), 10),
    Wanted("Placemat", F(350), F(480), 6),
    Wanted("Runner", F(420), F(1500), 1),
)
LOSSES = {"selvedge": F(15), "end_loss": F(10), "skew": F(20)}


@pytest.mark.parametrize("aim", ["most", "shelf", "shortest"])
def test_strips_along_the_cloth_take_the_order_that_strips_across_do_not(aim):
    """Strips of 40, 42 and 40 cm: five napkins and two placemats beside them in each outer one, the runner and two
    placemats in the middle."""
    best, advice = advice_for(Order((Cloth("Linen", F(1400), F(3000)),), NAPKINS, Rules(aim=aim, **LOSSES)))
    assert advice.change.strips == "along" and advice.change.order.rules.aim == ("most" if aim == "shortest" else aim)
    assert planned(advice.change.order).made == (10, 6, 1)


def test_the_one_piece_that_must_turn_is_named():
    """100 × 60 cm: two of 60 × 30 lie across it only when turned."""
    pieces = (
        Wanted("Square", F(300), F(300), 2),
        Wanted("Band", F(1000), F(300), 1),
        Wanted("Towel", F(300), F(400), 1),
    )
    _, advice = advice_for(Order((Cloth("Linen", F(1000), F(600)),), pieces, Rules()))
    assert advice.change.turned == (2,) and not advice.change.strips


def test_on_one_way_cloth_nothing_is_advised_to_turn():
    pieces = (
        Wanted("Square", F(300), F(300), 2),
        Wanted("Band", F(1000), F(300), 1),
        Wanted("Towel", F(300), F(400), 1),
    )
    _, advice = advice_for(Order((Cloth("Velvet", F(1000), F(600), one_way=True),), pieces, Rules()))
    assert advice.change is None and advice.rest


def test_what_is_bought_is_told_once_with_what_would_do_in_one_length():
    _, advice = advice_for(Order((Cloth("Linen", F(1000), F(1000)),), (Wanted("Napkin", F(500), F(450), 6),), Rules()))
    assert advice.rest.to_start_from == 450 and advice.longer == 350
    assert [each.kind for each in advice.what_ifs if each.kind == "more cloth"] == []


def test_before_part_of_an_order_is_bought_another_way_that_gives_more_of_it_is_told():
    """Worked with a pencil: on 1440 mm by 2606 mm, less 25 mm across and 44 mm along, strips along of 381, 432 and 432
    mm stand beside one another; the first takes the runner and a placemat, each other five of 432 mm along: 12."""
    order = Order(
        (Cloth("Linen", F(1440), F(2606), 1, False, flaws=(Flaw(F(967), F(497), F(48), F(50)),)),),
        (
            Wanted("Napkin", F(4318, 10), F(4318, 10), 8),
            Wanted("Placemat", F(3556, 10), F(4826, 10), 6),
            Wanted("Runner", F(381), F(18288, 10), 1),
        ),
        Rules(selvedge=F(127, 10), end_loss=F(127, 10), skew=F(19)),
    )
    best, advice = advice_for(order)
    assert advice.change is None and advice.better is not None
    change, made = advice.better
    assert sum(best.made) < made and made >= 12
    assert made <= sum(planned(change.order).made), "all the work gives no less than a little"
    along = replace(order, rules=replace(order.rules, strips=change.strips))
    assert advice_for(along)[1].better is None or advice_for(along)[1].better[1] > made
