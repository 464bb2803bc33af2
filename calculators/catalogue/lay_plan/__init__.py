"""Lay plan: any mix of pieces on any cloths, the cuts in working order, and whether another plan could do better."""

from collections.abc import Iterator
from dataclasses import replace
from types import SimpleNamespace

from calculators.catalogue.lay_plan.answered import RESULTS, answered
from calculators.catalogue.lay_plan.asked import FIELDS, asked_again, order_from
from calculators.declaration import Answer, Calculator, Example, File
from calculators.drawing.lay_plan import lay_plan
from calculators.drawing.true_scale import true_scale
from calculators.layplan.listed import marks_listed, pieces_listed
from calculators.layplan.order import CannotPlan, Order
from calculators.layplan.planning import FEW_STEPS, Outcome, plan_order
from calculators.layplan.what_if import what_ifs
from calculators.measure import Ruler, show_length


def _work(given: SimpleNamespace) -> Iterator[Answer | None]:
    try:
        yield from _plans(order_from(given), given)
    except CannotPlan as problem:
        raise asked_again(problem) from problem


def _plans(order: Order, given: SimpleNamespace) -> Iterator[Answer | None]:
    best: Outcome | None = None
    for outcome in plan_order(order):
        better = outcome and (best is None or outcome.result != best.result)
        best = outcome or best
        yield answered(best, given, (), None, working=True) if better else None
    rest = yield from _for_the_rest(best)
    changes = []
    for change in what_ifs(best, given.ruler):
        changes += [change] if change else []
        yield None
    yield answered(best, given, tuple(changes), rest, working=False)


def _for_the_rest(outcome: Outcome) -> Iterator[None]:
    """A plan for what did not fit, on the first cloth that takes it, bought anew."""
    if not outcome.missing:
        return None
    order = outcome.order
    pieces = tuple(replace(outcome.pieces[number], count=count) for number, count in outcome.missing.items())
    rules = replace(order.rules, aim="buy", strips="across")
    best: Outcome | None = None
    try:
        for found in plan_order(Order(order.cloths, pieces, rules), FEW_STEPS):
            best = found or best
            yield None
    except CannotPlan:
        return None
    return best


def _marking_file(outcome: Outcome, ruler: Ruler) -> str:
    return marks_listed(outcome.lays, lambda mark: show_length(mark, ruler))


def _pieces_file(outcome: Outcome, ruler: Ruler) -> str:
    return pieces_listed(outcome.lays)


CALCULATOR = Calculator(
    name="lay-plan",
    title="Lay plan",
    purpose="Where every piece of a mixed order lies on the cloths there are, the cuts in working order, and whether another plan could do better.",
    fields=FIELDS,
    asked="Plan {aim}, cut {strips}.",
    results=RESULTS,
    work=_work,
    drawing=lay_plan,
    files=(
        File("lay-plan.svg", "Save the drawing at true scale (SVG)", "image/svg+xml", true_scale),
        File("marking-table.csv", "Save the marking table (CSV)", "text/csv", _marking_file),
        File("pieces.csv", "Save the place of every piece (CSV)", "text/csv", _pieces_file),
    ),
    examples=(
        Example(
            {
                "cloths": "Linen | 110 cm | 252 cm | 1 | no", "pieces": "Napkin | 36 cm | 36 cm | | no", "selvedge": "0", "end_loss": "0", "skew": "0",
            },
            {"count": 21, "most_pieces": 21},
            "arithmetic: 110 ÷ 36 → 3 across; 4 × 63 cm → 7 of 36 cm",
        ),
        Example(
            {
                "cloths": "Linen | 150 cm | | 1 | no", "pieces": "Tablecloth | 240 cm | 300 cm | 1 | no | joined", "aim": "buy", "selvedge": "0",
                "end_loss": "0", "skew": "0", "seam_allowance": "1 cm",
            },
            {"to_start_from": 6000, "count": 3},
            "arithmetic: one centre of 150 cm and two sides of 47 cm, 240 = 148 + 2 × 46; the sides lie side by side, so two lengths of 300 cm",
        ),
    ),
)  # fmt: skip
