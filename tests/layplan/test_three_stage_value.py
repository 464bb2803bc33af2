"""Three stages: against trying everything."""

from dataclasses import replace

from hypothesis import given, settings

from calculators.layplan import three_stage_value
from calculators.layplan.checker import faults
from tests.layplan.brute_force import most_value
from tests.layplan.small_tasks import small_tasks


@settings(max_examples=30)
@given(small_tasks(stages=(3,)))
def test_proven_plans_are_best_and_bounds_hold(task):
    """No small task where trying everything beats "proven" or the bound."""
    task = replace(task, length=min(task.length, 5), width=min(task.width, 5))
    *_, progress = three_stage_value.solve(task)
    best = most_value(task)
    assert progress.finished
    assert [] == faults(progress.plan)
    assert progress.plan.value == progress.result <= best <= progress.bound
    assert not progress.proven or best == progress.result
