"""Two stages, most value: against trying everything."""

from hypothesis import given, settings

from calculators.trade.lay_plan.solving import two_stage_value
from calculators.trade.lay_plan.solving.model import Piece, Task
from tests.trade.lay_plan.brute_force import most_value
from tests.trade.lay_plan.checker import faults
from tests.trade.lay_plan.small_tasks import small_tasks


@settings(max_examples=150)
@given(small_tasks())
def test_proven_plans_are_best(task):
    """No small task where trying everything beats "proven", and every small task is proven."""
    for progress in two_stage_value.solve(task):
        assert progress.plan is None or progress.bound is None or progress.result <= progress.bound
    assert progress.finished
    assert faults(progress.plan) == []
    assert progress.plan.value == progress.result
    assert progress.proven
    assert most_value(task) == progress.result


def test_low_strips_that_run_out_do_not_hide_higher_ones():
    """Strips as good as a lower one count for the bound as soon as there are not enough of the lower."""
    task = Task(2, 6, tuple(Piece(2, length, 1, 1) for length in (1, 2, 3)), 2, "across")
    results = list(two_stage_value.solve(task))
    assert all(progress.bound is None or progress.bound >= 3 for progress in results)
    assert 3 == results[-1].result == results[-1].bound
