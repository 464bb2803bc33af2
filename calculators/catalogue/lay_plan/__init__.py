"""Lay plan: any mix of pieces on any cloths, the cuts in working order, and whether another plan could do better."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, File
from calculators.catalogue.lay_plan.answer import RESULTS, answer_of
from calculators.catalogue.lay_plan.fields import FIELDS, as_invalid_input, order_from
from calculators.drawing.lay_plan import lay_plan
from calculators.drawing.true_scale import true_scale
from calculators.trade.lay_plan.advice import advised
from calculators.trade.lay_plan.csv_lists import cuts_listed, marks_listed, pieces_listed
from calculators.trade.lay_plan.order import CannotPlan, Order
from calculators.trade.lay_plan.planning import PlannedOrder, plan_order
from calculators.values.measure import Ruler, show_length


def _work(given: SimpleNamespace) -> Iterator[Answer | None]:
    try:
        yield from _plans(order_from(given), given)
    except CannotPlan as problem:
        raise as_invalid_input(problem) from problem


def _plans(order: Order, given: SimpleNamespace) -> Iterator[Answer | None]:
    best: PlannedOrder | None = None
    for outcome in plan_order(order):
        if outcome is None:
            yield None
            continue
        better = best is None or (outcome.result, outcome.counts) != (best.result, best.counts)
        best = outcome
        yield answer_of(best, given) if better else None
    assert best, "a plan is found, or CannotPlan is raised"
    advice = yield from advised(best, given.ruler)
    yield answer_of(best, given, advice)


def _as_read(mark: Fraction, ruler: Ruler) -> str:
    """The division of the ruler that a mark is read at; its exact place stands beside it in a file."""
    return show_length(mark, ruler).removeprefix("about ")


def _marking_file(outcome: PlannedOrder, ruler: Ruler) -> str:
    return marks_listed(outcome.lays, lambda mark: _as_read(mark, ruler))


def _cuts_file(outcome: PlannedOrder, ruler: Ruler) -> str:
    return cuts_listed(
        outcome.lays, outcome.order.rules, lambda mark: _as_read(mark, ruler).removesuffix(f" {ruler.unit}"), ruler.unit
    )


def _pieces_file(outcome: PlannedOrder, ruler: Ruler) -> str:
    return pieces_listed(outcome.lays)


CALCULATOR = Calculator(
    name="lay-plan",
    title="Lay plan",
    purpose="Where every piece of a mixed order lies on the cloths there are, the cuts in working order, and whether "
        "another plan could do better.",
    fields=FIELDS,
    question="Plan {aim}, cut {strips}, from {sizes}.",
    results=RESULTS,
    work=_work,
    drawing=lay_plan,
    files=(
        File("lay-plan.svg", "Save the drawing at true scale (SVG)", "image/svg+xml", true_scale),
        File("marking-table.csv", "Save the marking table (CSV)", "text/csv", _marking_file),
        File("cuts.csv", "Save the cuts in working order (CSV)", "text/csv", _cuts_file),
        File("pieces.csv", "Save the place of every piece (CSV)", "text/csv", _pieces_file),
    ),
    examples=(
        Example(
            {
                "cloths": "Linen | 110 cm | 252 cm | 1 | no", "pieces": "Napkin | 36 cm | 36 cm | | no",
                "selvedge": "0", "end_loss": "0", "skew": "0", "change_length": "0", "change_width": "0",
            },
            {"count": 21, "most_pieces": 21},
            "arithmetic: 110 ÷ 36 → 3 across; 4 × 63 cm → 7 of 36 cm",
        ),
        Example(
            {
                "cloths": "Linen | 150 cm | | 1 | no", "pieces": "Tablecloth | 240 cm | 300 cm | 1 | no | joined",
                "aim": "buy", "selvedge": "0",
                "end_loss": "0", "skew": "0", "change_length": "0", "seam_allowance": "1 cm", "change_width": "0",
            },
            {"to_start_from": 6000, "count": 3},
            "arithmetic: one centre of 150 cm and two sides of 47 cm, 240 = 148 + 2 × 46; the sides lie side by "
                "side, so two lengths of 300 cm",
        ),
    ),
)  # fmt: skip
