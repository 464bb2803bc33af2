"""The checker refuses broken plans."""

from dataclasses import replace

import pytest

from calculators.trade.lay_plan.solving.model import Piece, Task
from calculators.trade.lay_plan.solving.plan import Part, Plan
from tests.trade.lay_plan.checker import faults, stages_needed

NAPKIN = Piece(40, 40, 4)
RUNNER = Piece(30, 90, 1, may_turn=True)
TASK = Task(100, 100, (NAPKIN, RUNNER))


def sound() -> Plan:
    """Two strips: two napkins and an offcut, then a runner turned."""
    first = Part(
        0, 0, 100, 40, "along", (Part(0, 0, 40, 40, piece=0), Part(40, 0, 40, 40, piece=0), Part(80, 0, 20, 40))
    )
    second = Part(0, 40, 100, 30, "along", (Part(0, 40, 90, 30, piece=1, turned=True), Part(90, 40, 10, 30)))
    return Plan(TASK, Part(0, 0, 100, 100, "across", (first, second, Part(0, 70, 100, 30))))


def test_a_sound_plan_has_no_faults():
    assert faults(sound()) == []
    assert sound().counts() == {0: 2, 1: 1}


def strips(plan: Plan, *changed: Part) -> Plan:
    """The plan with other strips."""
    return Plan(plan.task, replace(plan.cloth, parts=changed))


FIRST, SECOND, REST = sound().cloth.parts
BROKEN = {
    "outside the cloth": (strips(sound(), FIRST, SECOND, replace(REST, length=40)), "add up"),
    "overlapping strips": (strips(sound(), FIRST, SECOND.moved(0, -10), REST), "continue"),
    "a gap between strips": (strips(sound(), FIRST, SECOND.moved(0, 1), REST), "continue"),
    "a cut that stops short": (strips(sound(), replace(FIRST, width=90), SECOND, REST), "edge to edge"),
    "a piece larger than its part": (
        strips(sound(), replace(FIRST, parts=(replace(FIRST.parts[0], width=39), *FIRST.parts[1:])), SECOND, REST),
        "larger",
    ),
    "a piece trimmed twice": (
        strips(
            sound(),
            FIRST,
            replace(SECOND, length=60, parts=(Part(0, 40, 100, 60, piece=0),)),
        ),
        "one trimming",
    ),
    "too many napkins": (
        Plan(replace(TASK, pieces=(replace(NAPKIN, quantity=1), RUNNER)), sound().cloth),
        "only 1",
    ),
    "a runner turned that may not": (
        Plan(replace(TASK, pieces=(NAPKIN, replace(RUNNER, may_turn=False))), sound().cloth),
        "may not",
    ),
    "first cuts the wrong way": (Plan(replace(TASK, first_cut="along"), sound().cloth), "stages"),
    "too many stages": (Plan(replace(TASK, stages=1), sound().cloth), "stages"),
    "a cloth of another size": (Plan(replace(TASK, length=200), sound().cloth), "200"),
    "pieces missing from an order": (Plan(replace(TASK, length=None), sound().cloth), "ordered"),
}


@pytest.mark.parametrize("name", BROKEN)
def test_broken_plans_are_refused(name):
    plan, word = BROKEN[name]
    assert any(word in fault for fault in faults(plan)), faults(plan)


def test_overlap_is_seen_even_where_the_tree_hides_it():
    """Two pieces laid in one another by parts that do not match."""
    part = Part(0, 0, 40, 40, piece=0)
    plan = Plan(TASK, Part(0, 0, 100, 100, "across", (part, part)))
    assert any("overlap" in fault for fault in faults(plan))


def test_a_pinwheel_never_comes_apart():
    """Five rectangles around a middle one: the known smallest pattern without an edge-to-edge cut."""
    pinwheel = [(0, 2, 0, 1), (2, 3, 0, 2), (1, 3, 2, 3), (0, 1, 1, 3), (1, 2, 1, 2)]
    assert float("inf") == stages_needed(pinwheel, "across") == stages_needed(pinwheel, "along")


def test_stages_are_counted_from_the_first_direction():
    """Two pieces side by side need one stage along, two when the first stage must run across."""
    pair = [(0, 1, 0, 1), (1, 2, 0, 1)]
    assert stages_needed(pair, "along") == 1
    assert stages_needed(pair, "across") == 2
