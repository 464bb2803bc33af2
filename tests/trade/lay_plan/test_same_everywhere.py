"""Every Python finds the same plan: those since 3.12 round sums of floats once, those before at every step."""

import builtins
from fractions import Fraction as F
from math import fsum

from calculators.trade.lay_plan.order import Cloth, Order, Rules, Wanted
from calculators.trade.lay_plan.planning import plan_order


def _step_by_step(numbers, start=0):
    for each in numbers:
        start = start + each
    return start


def _at_once(numbers, start=0):
    numbers = [start, *numbers]
    return fsum(numbers) if any(isinstance(each, float) for each in numbers) else _step_by_step(numbers)


#: An order among five hundred by chance that came out otherwise in the browser's Python.
ORDER = Order(
    (Cloth("Linen", F(2860)),),
    (
        Wanted("Placemat", F("519.25"), F("364.125"), 29),
        Wanted("Tea towel", F("475.0625"), F("697.875"), 9),
        Wanted("Its loop", F(80), F(124), 9),
        Wanted("Bread cloth", F("397.3125"), F("420.1875"), 22),
    ),
    Rules("buy", "across", F(0), F(15), F(10), F(20), F("-4.8"), F("-2.4"), keep=F(100)),
)


def test_the_same_plan_however_sums_are_rounded(monkeypatch):
    found = []
    for way in (_step_by_step, _at_once):
        monkeypatch.setattr(builtins, "sum", way)
        found.append([plan and [(each.box, each.piece) for each in plan.lays[0].placed] for plan in plan_order(ORDER)])
    assert found[0] == found[1] and any(found[0])
