"""Before anything is bought: the one change to the way of cutting, or to what may turn, with which the whole order
fits."""

from collections.abc import Generator
from dataclasses import dataclass, replace
from fractions import Fraction

from calculators.trade.lay_plan.order import CannotPlan, Order
from calculators.trade.lay_plan.planning import PlannedOrder, plan_order
from calculators.trade.lay_plan.usable import usable_part

WAYS = ("across", "along", "either", "sections", "free")  # the fewest turns of the cloth first


@dataclass(frozen=True)
class OrderChange:
    """One change to an order.

    order: with the change. strips: the way of cutting that was chosen, "" where it stays. turned: numbers of the pieces
    that may turn now.
    """

    order: Order
    strips: str = ""
    turned: tuple[int, ...] = ()


def cut_otherwise(order: Order) -> list[OrderChange]:
    """Every other way of cutting an order, in the sequence in which they are advised.

    order: as it was written.
    Returns the changed orders. The least length is looked for in strips across only: other ways are then for the most
    pieces.
    Source: derived.
    """
    aim = "most" if order.rules.aim == "shortest" else order.rules.aim
    return [
        OrderChange(replace(order, rules=replace(order.rules, aim=aim, strips=strips)), strips)
        for strips in WAYS
        if strips != order.rules.strips
    ]


def turned_otherwise(order: Order) -> list[OrderChange]:
    """An order with one more piece that may turn, each in its turn, and last of all with every piece that could.

    order: as it was written.
    Returns the changed orders; none for one-way cloth.
    Source: derived.
    """
    if all(cloth.one_way for cloth in order.cloths):
        return []
    numbers = [
        number
        for number, piece in enumerate(order.pieces)
        if not piece.may_turn and piece.width != piece.length and not piece.matched
    ]
    return [
        _turned(order, each)
        for each in [*((number,) for number in numbers), *([tuple(numbers)] if len(numbers) > 1 else [])]
    ]


def change_that_fits(outcome: PlannedOrder) -> Generator[None, None, OrderChange | None]:
    """Tries other ways of cutting, then turning, until the whole order fits; a moment to look up between two steps.

    outcome: the order as planned. Returns the change, or None where none was found. A piece that is turned has its warp
    the other way, so
    cutting otherwise is advised first.
    Source: derived; each is planned anew, with all the work that a plan is given.
    """
    if cannot_hold(outcome.order):
        return None
    for change in cut_otherwise(outcome.order):
        if (yield from _fits(change)):
            return change
    turned = turned_otherwise(outcome.order)
    if not turned:
        return None
    *single, every = turned
    fits = yield from _fits(every)
    for change in single if fits is not False else ():
        if (yield from _fits(change)):
            return change
    return every if fits else None


def cannot_hold(order: Order) -> bool:
    """Whether the pieces ordered by number have a larger area than all the cloths.

    order: any. Returns True where no plan of any kind can take them.
    Source: derived.
    """
    have = sum(usable_part(cloth, order.rules).area * cloth.how_many for cloth in order.cloths)
    return sum((piece.count or 0) * piece.width * piece.length for piece in order.pieces) > have


def lacks(outcome: PlannedOrder) -> bool:
    """Whether a plan does not take the whole order from the cloth there is.

    outcome: any plan. Returns False for an order whose cloth is still to be bought.
    Source: derived.
    """
    return outcome.short_by > 0 if outcome.open_ended else bool(outcome.missing)


def _turned(order: Order, numbers: tuple[int, ...]) -> OrderChange:
    pieces = tuple(
        replace(piece, may_turn=piece.may_turn or number in numbers) for number, piece in enumerate(order.pieces)
    )
    return OrderChange(replace(order, pieces=pieces), turned=numbers)


def _fits(change: OrderChange) -> Generator[None, None, bool | None]:
    """Whether the whole order fits with a change; False where that is proven not to be, None where it was not found."""
    try:
        for found in plan_order(change.order, keeping=False):
            if found and not lacks(found):
                return True
            if found and _never(found):
                return False
            yield None
    except CannotPlan:
        pass
    return None


def _never(found: PlannedOrder) -> bool:
    """Whether it is proven by now that an order does not fit its cloth."""
    rules = found.order.rules
    if found.bound is None:
        return False
    if found.open_ended:
        return found.result - found.short_by < found.bound
    if rules.aim != "most":
        return False
    wanted = Fraction(0)
    for piece in found.pieces:
        if piece.count is None:
            return False
        wanted += piece.count * piece.matters
    return found.bound < wanted
