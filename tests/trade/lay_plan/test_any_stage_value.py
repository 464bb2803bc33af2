"""Any number of stages with limited quantities: against trying everything."""

from dataclasses import replace

from hypothesis import HealthCheck, given, settings

from calculators.trade.lay_plan.solving import any_stage_value
from tests.trade.lay_plan.brute_force import most_value
from tests.trade.lay_plan.checker import faults
from tests.trade.lay_plan.small_tasks import small_tasks


@settings(max_examples=30)
@given(small_tasks(stages=(None,), first_cuts=("any",)))
def test_proven_plans_are_best(task):
    """No small task where trying everything beats "proven"."""
    task = replace(task, length=min(task.length, 5), width=min(task.width, 5))
    for progress in any_stage_value.solve(task):
        assert progress.plan is None or progress.bound is None or progress.result <= progress.bound
    assert progress.finished and progress.proven
    assert faults(progress.plan) == []
    assert most_value(task) == progress.result == progress.plan.value


@settings(max_examples=20, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(small_tasks(stages=(None,), first_cuts=("any",)))
def test_a_cloth_too_fine_for_the_tables_is_planned_in_two_stages_with_an_honest_bound(monkeypatch, task):
    task = replace(task, length=min(task.length, 5), width=min(task.width, 5))
    monkeypatch.setattr(any_stage_value, "MOST_POSITIONS", 0)
    *_, last = any_stage_value.solve(task)
    assert last.finished and faults(last.plan) == []
    assert last.result == last.plan.value <= most_value(task) <= last.bound
