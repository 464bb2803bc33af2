"""The one change with which a whole order fits, or more of it, as an offer that can be taken up where it is read."""

from types import SimpleNamespace

from calculators.asking.declaration import FieldText, Offer
from calculators.catalogue.lay_plan.fields import STRIPS
from calculators.trade.lay_plan.one_change import OrderChange
from calculators.trade.lay_plan.planning import PlannedOrder


def change_offered(outcome: PlannedOrder, change: OrderChange, given: SimpleNamespace) -> Offer:
    """What to change, that everything then fits, and the button that does it.

    outcome: the order as planned without it. given: what was asked, whose rows tell where each piece is written.
    """
    if change.strips:
        what = f"cut {STRIPS[change.strips]}"
        aim = (FieldText("aim", change.order.rules.aim),) if change.order.rules.aim != outcome.order.rules.aim else ()
        sets = (*aim, FieldText("strips", change.strips))
    else:
        what = (
            "let every piece turn"
            if len(change.turned) > 1
            else f"let “{outcome.order.pieces[change.turned[0]].name}” turn"
        )
        sets = tuple(FieldText("pieces", "yes", given.pieces[number].place, "may_turn") for number in change.turned)
    counts = [piece.count for piece in outcome.order.pieces]
    fits = "everything ordered by number fits" if None in counts else "all {total:count} fit"
    return Offer(
        f"{{what:text}}: {fits}.",
        {"what": what[0].upper() + what[1:], "total": sum(count or 0 for count in counts)},
        does=what,
        sets=sets,
    )


def more_offered(change: OrderChange, made: int) -> Offer:
    """Another way of cutting that gives more pieces, though not all, and the button that chooses it."""
    what = f"cut {STRIPS[change.strips]}"
    return Offer(
        "{what:text}: {made:piece|pieces} of those ordered can be cut.",
        {"what": what[0].upper() + what[1:], "made": made},
        does=what,
        sets=(FieldText("strips", change.strips),),
    )
