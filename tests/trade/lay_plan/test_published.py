"""Published instances: values reached, bounds that hold, and plans that the checker passes.

Steps, not seconds, limit each run, so that the same is found on every machine. Sources stand in the instance files.
"""

from itertools import islice
from pathlib import Path

import pytest

from calculators.trade.lay_plan.solving.solvers import solve
from scripts.plan_cases.cases import Case, read
from tests.trade.lay_plan.checker import faults

INSTANCES = Path(__file__).parent / "instances"
EXACT = ("two_stage_knapsack", "two_stage_turned", "unlimited_copies")
MANY_STEPS = 6_000
SOME_STEPS = 2_000
FEW_STEPS = 300


def cases(*files: str) -> list:
    """The cases of some instance files, named for the test report."""
    return [
        pytest.param(case, id=f"{case.name} {case.rule}")
        for file in files
        for case in read((INSTANCES / f"{file}.json").read_text())
    ]


def last(case: Case, steps: int | None):
    """The last word of the solver after so many steps, its plan checked."""
    *_, progress = islice(solve(case.task), steps)
    assert faults(progress.plan) == []
    reached = progress.plan.used_length if case.task.length is None else progress.plan.value
    assert reached == progress.result
    return progress


@pytest.mark.parametrize("case", cases(*EXACT))
def test_known_values_are_reached_and_proven(case):
    progress = last(case, None)
    assert case.best_known == progress.result
    assert progress.proven


@pytest.mark.parametrize("case", cases("any_stage_knapsack"))
def test_any_stages_come_within_a_thousandth(case):
    """All of these are listed as proven, so no bound may lie below them."""
    progress = last(case, MANY_STEPS)
    assert progress.result <= case.best_known <= progress.bound
    assert progress.result >= 0.999 * case.best_known


@pytest.mark.parametrize("case", cases("two_stage_shortest_length", "two_stage_shortest_length_turned"))
def test_shortest_lengths_come_within_a_fiftieth_early(case):
    """Listed lengths may be beaten; a bound above one of them would be wrong."""
    progress = last(case, FEW_STEPS)
    assert progress.bound <= min(progress.result, case.best_known)
    assert progress.result <= 1.02 * case.best_known


@pytest.mark.parametrize("case", cases("three_stage_knapsack"))
def test_three_stages_come_within_a_thousandth(case):
    """Listed values may be beaten; a bound below one of them would be wrong."""
    progress = last(case, SOME_STEPS)
    assert max(progress.result, case.best_known) <= progress.bound
    assert progress.result >= 0.999 * case.best_known
