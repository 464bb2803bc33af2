"""An order of several articles: cloth to buy, cutting list, work list, time, thread and cost, all at once."""

from collections.abc import Iterator
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example
from calculators.catalogue.whole_order.answer import RESULTS, answer_of
from calculators.catalogue.whole_order.cloths import gathered, planned
from calculators.catalogue.whole_order.fields import FIELDS, QUESTION
from calculators.catalogue.whole_order.lines import lines_of
from calculators.drawing.lay_plan import lay_plan
from calculators.drawing.picture import Picture
from calculators.trade.lay_plan.planning import PlannedOrder
from calculators.values.measure import Ruler


def _work(given: SimpleNamespace) -> Iterator[Answer | None]:
    lines = lines_of(given)
    cloths = []
    for place, pieces in sorted(gathered(lines, given).items()):
        row = next(each for each in given.cloths if each.place == place)
        cloths.append((yield from planned(row, pieces, given)))
    yield answer_of(lines, cloths, given)


def _drawing(plans: tuple[PlannedOrder, ...], ruler: Ruler) -> Picture | tuple[Picture, ...]:
    drawn = tuple(lay_plan(plan, ruler) for plan in plans)
    return drawn if len(drawn) > 1 else drawn[0]


CALCULATOR = Calculator(
    name="whole-order",
    title="An order of several articles",
    purpose="What cloth several articles together take, what to cut, the work list, time, thread and cost.",
    fields=FIELDS,
    question=QUESTION,
    results=RESULTS,
    work=_work,
    drawing=_drawing,
    examples=(
        Example(
            {
                "lines": "napkin | 6 | 40 cm | 40 cm | | First turn 1 cm, Hem depth 1 cm; "
                    "placemat | 3 | 45 cm | 35 cm | | First turn 1 cm, Hem depth 1.5 cm",
                "cloths": "Linen | 150 cm | 20.00 per m", "selvedge": "0", "end_loss": "0", "skew": "0",
                "change_length": "0", "change_width": "0", "minutes_batch": "30 min", "rate": "0",
                "price_spool": "0", "bought_besides": "8.00",
            },
            {"articles": 9, "pieces_to_cut": 9, "cost_cloth": 25.6, "total": 33.6, "stitching": 14_400},
            "worked by hand: 44 × 44 and 50 × 40 cm cut, so 3 napkins lie across 150 cm, and 3 placemats: 2 × 44 + 40 "
                "= 128 cm of 20.00 a metre is 25.60, and 8.00; stitched 6 × 160 + 3 × 160 cm",
        ),
    ),
)  # fmt: skip
