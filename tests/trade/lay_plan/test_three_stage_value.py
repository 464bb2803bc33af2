"""Three stages: against trying everything."""

from dataclasses import replace
from itertools import islice, product

import pytest
from hypothesis import given, settings

from calculators.trade.lay_plan.solving import three_stage_value
from calculators.trade.lay_plan.solving.model import Piece, Task
from tests.trade.lay_plan.brute_force import most_value
from tests.trade.lay_plan.checker import faults
from tests.trade.lay_plan.small_tasks import small_tasks


@settings(max_examples=30)
@given(small_tasks(stages=(3,)))
def test_proven_plans_are_best_and_bounds_hold(task):
    """No small task where trying everything beats "proven" or the bound."""
    task = replace(task, length=min(task.length, 5), width=min(task.width, 5))
    *_, progress = three_stage_value.solve(task)
    best = most_value(task)
    assert progress.finished
    assert faults(progress.plan) == []
    assert progress.plan.value == progress.result <= best <= progress.bound
    assert not progress.proven or best == progress.result


@pytest.mark.parametrize("counts", list(product(range(1, 5), repeat=3)))
def test_a_strip_left_empty_beside_others_is_waste(counts):
    """The passes with counts leave strips empty for these orders; such a plan is as sound as any."""
    sizes = ((4, 4), (4, 8), (10, 4))
    task = Task(
        18, 18, tuple(Piece(width, length, count, 1) for (width, length), count in zip(sizes, counts)), 3, "across"
    )
    *_, progress = islice(three_stage_value.solve(task), 400)
    assert faults(progress.plan) == []
    assert progress.plan.value == progress.result <= sum(counts)
