"""Unlimited copies with any number of stages: against trying everything."""

from dataclasses import replace

from hypothesis import given, settings

from calculators.trade.lay_plan.solving import unconstrained
from tests.trade.lay_plan.brute_force import most_value
from tests.trade.lay_plan.checker import faults
from tests.trade.lay_plan.small_tasks import small_tasks


@settings(max_examples=30)
@given(small_tasks(stages=(None,), first_cuts=("any",)))
def test_best_of_all_plans(task):
    task = replace(task, length=min(task.length, 4), width=min(task.width, 5))
    task = replace(
        task,
        pieces=tuple(
            replace(p, quantity=None, width=max(2, p.width), length=max(2, p.length)) for p in task.pieces[:2]
        ),
    )
    *_, last = unconstrained.solve(task)
    assert last.proven and last.finished
    assert faults(last.plan) == []
    assert most_value(task) == last.result == last.plan.value
