"""What a little more cloth, a slightly smaller piece, or one rule less would change. Each is planned anew, not
estimated."""

from collections.abc import Generator, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from calculators.trade.lay_plan.order import CannotPlan, Order
from calculators.trade.lay_plan.planning import FEW_STEPS, PlannedOrder, plan_order
from calculators.values.measure import Ruler

SMALL_CHANGE = Fraction(5, 100)
MOST_TRIED = 3


@dataclass(frozen=True)
class WhatIf:
    """One change and what it gives.

    kind: "more cloth", "shorter", "narrower", "grain", "one-way" or "repeat".
    pieces: more pieces that fit. saved: less length needed [mm]. by: how much more cloth, or less piece [mm], so that
    what is then
        laid out is a division of the ruler in hand.
    piece: number of the piece made smaller. none: whether it is proven to change nothing.
    """

    kind: str
    pieces: int = 0
    saved: Fraction = Fraction(0)
    by: Fraction = Fraction(0)
    piece: int = 0
    none: bool = False


def what_ifs(outcome: PlannedOrder, ruler: Ruler) -> Iterator[WhatIf | None]:
    """Changes worth telling, one after another, as far as the ruler in hand can measure them; None for a moment to look
    up.

    Where pieces are missing, more cloth is not among them, since what to buy is advised, and smaller pieces are if then
    nothing is missing.
    """
    could_be_better = outcome.open_ended or outcome.missing or any(piece.count is None for piece in outcome.pieces)
    if not could_be_better:
        return
    yield from _without_a_rule(outcome)
    if (
        outcome.joins
        or len(outcome.lays) != 1
        or len(outcome.order.cloths) != 1
        or outcome.order.cloths[0].how_many != 1
    ):
        return
    if not outcome.open_ended and not outcome.missing:
        yield from _more_cloth(outcome, ruler)
    yield from _smaller_pieces(outcome, ruler)


def _without_a_rule(outcome: PlannedOrder) -> Iterator[WhatIf | None]:
    order = outcome.order
    rigid = any(not piece.may_turn and not piece.matched and piece.width != piece.length for piece in order.pieces)
    one_way = any(cloth.one_way for cloth in order.cloths)
    if one_way and any(piece.may_turn and piece.width != piece.length for piece in order.pieces):
        yield from _changed(
            outcome, "one-way", replace(order, cloths=tuple(replace(cloth, one_way=False) for cloth in order.cloths))
        )
    elif rigid and not one_way:
        yield from _changed(
            outcome,
            "grain",
            replace(order, pieces=tuple(replace(piece, may_turn=not piece.joined) for piece in order.pieces)),
        )
    if any(cloth.repeat for cloth in order.cloths) and any(piece.matched for piece in order.pieces):
        yield from _changed(
            outcome, "repeat", replace(order, cloths=tuple(replace(cloth, repeat=None) for cloth in order.cloths))
        )


def _more_cloth(outcome: PlannedOrder, ruler: Ruler) -> Iterator[WhatIf | None]:
    lay, (cloth,) = outcome.lays[0], outcome.order.cloths
    if lay.first_cut != "across" or cloth.length is None:
        return
    left = lay.length - lay.used_length - lay.gap
    sizes = {size for piece in outcome.pieces for size in (piece.length, *([piece.width] if piece.may_turn else []))}
    extra = sorted(size - left for size in sizes if 0 < size - left <= cloth.length / 4)
    for by in extra[:MOST_TRIED]:
        before_wash = ruler.read(by / (1 + outcome.order.rules.change_length / 100), "up")
        found = yield from _gain(
            outcome, replace(outcome.order, cloths=(replace(cloth, length=cloth.length + before_wash),))
        )
        if found and found.pieces > 0:
            yield WhatIf("more cloth", found.pieces, by=before_wash)
            return


def _smaller_pieces(outcome: PlannedOrder, ruler: Ruler) -> Iterator[WhatIf | None]:
    lay = outcome.lays[0]
    tried = 0
    for kind, room in (("shorter", lay.cloth.length), ("narrower", lay.cloth.width)):
        for number, piece in enumerate(outcome.order.pieces):
            size = piece.length if kind == "shorter" else piece.width
            if room is None or tried >= MOST_TRIED or size > room:
                continue
            fit = (room + lay.gap) // (size + lay.gap)
            smaller = ruler.read((room + lay.gap) / (fit + 1) - lay.gap, "down")
            if not 0 < size - smaller <= size * SMALL_CHANGE:
                continue
            tried += 1
            changed = replace(piece, length=smaller) if kind == "shorter" else replace(piece, width=smaller)
            pieces = tuple(changed if other is piece else other for other in outcome.order.pieces)
            found = yield from _gain(outcome, replace(outcome.order, pieces=pieces))
            if found and (found.saved > 0 or found.pieces > 0 and found.pieces >= sum(outcome.missing.values())):
                yield WhatIf(kind, found.pieces, found.saved, size - smaller, number)


def _changed(outcome: PlannedOrder, kind: str, order: Order) -> Iterator[WhatIf | None]:
    found = yield from _gain(outcome, order)
    if found:
        yield replace(found, kind=kind)


def best_in_few_steps(order: Order) -> Generator[None, None, PlannedOrder | None]:
    """Plans an order with little work; returns the best outcome, or None where it cannot be planned."""
    best: PlannedOrder | None = None
    try:
        for found in plan_order(order, FEW_STEPS):
            best = found or best
            yield None
    except CannotPlan:
        return None
    return best


def _gain(outcome: PlannedOrder, order: Order) -> Generator[None, None, WhatIf | None]:
    """Plans a changed order; returns what it gives, or None when nothing can be said."""
    best = yield from best_in_few_steps(order)
    if best is None:
        return None
    none = best.bound is not None and (
        best.bound >= outcome.result if outcome.open_ended else best.bound <= outcome.result
    )
    if outcome.open_ended:
        return WhatIf("", saved=max(Fraction(0), outcome.result - best.result), none=none)
    return WhatIf("", max(0, sum(best.counts.values()) - sum(outcome.counts.values())), none=none)
