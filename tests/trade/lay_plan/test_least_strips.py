"""How many strips any plan needs: against plans, and against cases small enough to see."""

from itertools import islice

import pytest
from hypothesis import assume, given, settings

from calculators.trade.lay_plan.solving import two_stage_length
from calculators.trade.lay_plan.solving.item_types import ItemTypes
from calculators.trade.lay_plan.solving.least_strips import least_strips
from calculators.trade.lay_plan.solving.model import Piece, Task
from tests.trade.lay_plan.small_tasks import small_tasks


def least(task: Task) -> list[int]:
    """The least numbers of strips for an order, from the lowest height to the highest."""
    kinds = ItemTypes(task)
    return least_strips(kinds.shapes, kinds.copies)


@pytest.mark.parametrize(
    ("width", "pieces", "wanted"),
    [
        (10, [(6, 5, 3)], [3]),  # no two lie side by side
        (10, [(4, 5, 5)], [3]),  # two in each, though the widths alone would go into two strips
        (12, [(4, 5, 3), (7, 2, 1)], [2, 1]),  # three thirds fill the high strip
        (10, [(3, 5, 1), (10, 3, 2), (2, 1, 1)], [3, 3, 1]),  # the lowest piece finds room beside the highest
    ],
)
def test_strips_that_no_plan_does_without(width, pieces, wanted):
    assert wanted == least(Task(width, None, tuple(Piece(*size) for size in pieces)))


@settings(max_examples=60)
@given(small_tasks(first_cuts=("across",), with_length=False))
def test_no_plan_has_fewer(task):
    assume(task.pieces)
    *_, progress = islice(two_stage_length.solve(task), 60)
    strips = (
        [part.length for part in progress.plan.cloth.parts]
        if progress.plan.cloth.cut == "across"
        else [progress.plan.cloth.length]
    )
    for height, number in zip(ItemTypes(task).shapes.heights, least(task)):
        assert number <= sum(strip >= height for strip in strips)
