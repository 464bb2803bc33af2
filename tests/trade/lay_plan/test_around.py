"""Plans around flaws and with a repeat: no plan is missed that trying everything finds, and nothing that fits by
construction is lost."""

from dataclasses import replace

import pytest

from calculators.trade.lay_plan.order import CannotPlan
from calculators.trade.lay_plan.planning import plan_order
from tests.trade.lay_plan.brute_force_around import Ground, Size, most_value
from tests.trade.lay_plan.flawed_orders import fitting_by_construction, in_millimetres, small
from tests.trade.lay_plan.lay_check import lay_faults


def planned(order):
    best = None
    try:
        for found in plan_order(order, keeping=False):
            best = found or best
    except CannotPlan:
        return None
    for lay in best.lays:
        assert lay_faults(lay) == []
    return best


@pytest.mark.parametrize("strips", ["across", "along"])
@pytest.mark.parametrize("hundred", range(5))
def test_no_plan_in_strips_is_missed_and_each_is_proven(strips, hundred):
    for seed in range(100 * hundred, 100 * hundred + 100):
        ground, sizes = small(seed)
        best = planned(in_millimetres(ground, sizes, strips))
        most = most_value(ground, sizes, strips)
        assert (best.result if best else 0) == most, seed
        assert best is None or best.bound == most, seed


@pytest.mark.parametrize(
    ("strips", "hundred"),
    [*(("sections", hundred) for hundred in range(6)), *(("free", hundred) for hundred in range(15))],
)
def test_no_plan_with_other_cuts_is_missed_and_none_is_said_to_be_proven_less(strips, hundred):
    for seed in range(100 * hundred, 100 * hundred + 100):
        ground, sizes = small(seed)
        best, most = planned(in_millimetres(ground, sizes, strips)), most_value(ground, sizes, strips)
        assert (best.result if best else 0) == most, seed
        assert best is None or best.bound is None or best.bound >= most, seed


def test_no_shorter_cloth_than_found_takes_the_whole_order():
    for seed in range(150):
        ground, sizes = small(seed, 6)
        order = in_millimetres(ground, sizes, "across", "shortest")
        best = planned(replace(order, cloths=(replace(order.cloths[0], length=None),)))
        if best is None:
            continue
        everything = sum(size.value * size.count for size in sizes)
        assert (
            best.proven and most_value(replace(ground, length=int(best.result / 10)), sizes, "across") == everything
        ), seed
        assert most_value(replace(ground, length=int(best.result / 10) - 1), sizes, "across") < everything, seed


def test_trying_everything_sees_flaws_the_repeat_the_gap_and_the_stages():
    square = Size(2, 2, 4)
    assert most_value(Ground(4, 4), (square,), "across") == 4
    assert most_value(Ground(4, 4, ((1, 2, 1, 2),)), (square,), "across") == 3
    assert most_value(Ground(4, 4, gap=1), (square,), "across") == 1
    assert most_value(Ground(4, 4, repeat=(3, 1, 0, 0)), (Size(2, 2, 4, matched=True),), "across") == 2
    tall, low, small_one = Size(3, 6, 1), Size(4, 4, 1), Size(2, 2, 2)
    assert most_value(Ground(7, 6), (tall, low, small_one), "across") == 3
    assert most_value(Ground(7, 6), (tall, low, small_one), "free") == 4


@pytest.mark.parametrize("strips", ["across", "along"])
@pytest.mark.parametrize(("flaws", "repeat"), [(1, False), (2, False), (0, True), (1, True)])
def test_nothing_is_lost_of_what_fits_by_construction(strips, flaws, repeat):
    lost = []
    for seed in range(150):
        order = fitting_by_construction(seed, strips, flaws, repeat)
        if order and sum(planned(order).counts.values()) < sum(piece.count for piece in order.pieces):
            lost.append(seed)
    assert lost == []
