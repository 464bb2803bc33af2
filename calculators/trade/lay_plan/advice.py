"""What a maker is advised once her order is planned: one change with which everything fits, else what to buy; and near
misses."""

from collections.abc import Generator
from dataclasses import dataclass, replace
from fractions import Fraction

from calculators.trade.lay_plan.one_change import OrderChange, change_that_fits, cut_otherwise, lacks
from calculators.trade.lay_plan.order import Order
from calculators.trade.lay_plan.planning import PlannedOrder
from calculators.trade.lay_plan.what_if import WhatIf, best_in_few_steps, what_ifs
from calculators.values.measure import Ruler


@dataclass(frozen=True)
class Advice:
    """What to do next.

    change: the one change with which the whole order fits. better: without one, the way of cutting that gives more
    pieces, and how many. rest: without a change that takes all, a plan for what did not fit, on cloth
    bought anew.
    longer: by how much one cloth would have to be longer to take the whole order [mm]; 0 where that is not known.
    what_ifs: what else a small change would bring.
    """

    change: OrderChange | None = None
    better: tuple[OrderChange, int] | None = None
    rest: PlannedOrder | None = None
    longer: Fraction = Fraction(0)
    what_ifs: tuple[WhatIf, ...] = ()


def advised(outcome: PlannedOrder, ruler: Ruler) -> Generator[None, None, Advice]:
    """Looks for advice; a moment to look up between two steps.

    outcome: the order as planned. ruler: the one in hand, which near misses must be read on.
    Returns the Advice.
    Source: derived; everything in it is planned anew, not estimated.
    """
    if lacks(outcome) and (change := (yield from change_that_fits(outcome))):
        return Advice(change)
    better = yield from _more_pieces(outcome)
    rest = yield from _for_the_rest(outcome)
    longer = (yield from _longer(outcome)) if rest else Fraction(0)
    found = []
    for each in what_ifs(outcome, ruler):
        found += [each] if each else []
        yield None
    return Advice(None, better, rest, longer, tuple(found))


def _more_pieces(outcome: PlannedOrder) -> Generator[None, None, tuple[OrderChange, int] | None]:
    """The other way of cutting that gives the most, where it gives more than what was asked for."""
    if not outcome.missing or outcome.order.rules.aim != "most":
        return None
    best, most = None, outcome.result
    for change in cut_otherwise(outcome.order):
        found = yield from best_in_few_steps(change.order)
        if found and found.result > most and sum(found.made) > sum(outcome.made):
            best, most = (change, sum(found.made)), found.result
    return best


def _for_the_rest(outcome: PlannedOrder) -> Generator[None, None, PlannedOrder | None]:
    """A plan for what did not fit, on the first cloth that takes it, bought anew."""
    if not outcome.missing:
        return None
    order = outcome.order
    pieces = tuple(replace(outcome.pieces[number], count=count) for number, count in outcome.missing.items())
    return (yield from best_in_few_steps(Order(order.cloths, pieces, replace(order.rules, aim="buy", strips="across"))))


def _longer(outcome: PlannedOrder) -> Generator[None, None, Fraction]:
    """By how much the only cloth there is falls short of the whole order [mm]; 0 where there are several, or that is
    not known."""
    order, length = outcome.order, outcome.order.cloths[0].length
    if len(order.cloths) > 1 or order.cloths[0].how_many > 1 or length is None:
        return Fraction(0)
    found = yield from best_in_few_steps(replace(order, rules=replace(order.rules, aim="shortest", strips="across")))
    return max(Fraction(0), found.to_start_from - length) if found else Fraction(0)
