"""Two stages, shortest length: against trying everything."""

from itertools import islice

from hypothesis import given, settings

from calculators.trade.lay_plan.solving import two_stage_length
from tests.trade.lay_plan.brute_force import shortest_length
from tests.trade.lay_plan.checker import faults
from tests.trade.lay_plan.small_tasks import small_tasks


@settings(max_examples=80)
@given(small_tasks(first_cuts=("across",), with_length=False))
def test_proven_plans_are_shortest(task):
    """No small task where trying everything beats "proven"; no bound lies above the best plan."""
    best = shortest_length(task)
    for progress in islice(two_stage_length.solve(task), 400):
        assert progress.bound <= best <= progress.result
    assert faults(progress.plan) == []
    assert progress.plan.used_length == progress.result
    assert best == progress.result
