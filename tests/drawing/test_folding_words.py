"""A drawn step says to those who do not see it what has changed and how the cloth lies now."""

import re
from itertools import product

import pytest

from calculators.drawing.folding import AS_BEFORE, corner_step, corner_step_by_step
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.values.measure import CENTIMETRES

JOBS = {
    "square": Measures(20.0, 20.0, 90.0, 8.0),
    "unequal": Measures(30.0, 15.0, 105.0, 8.0),
    "without a turn": Measures(20.0, 20.0, 90.0),
}
each_corner = pytest.mark.parametrize(
    ("way", "job"), [case for case in product(CONSTRUCTIONS, JOBS) if case != ("applied-border", "without a turn")]
)


def words(way, job):
    steps = CONSTRUCTIONS[way].steps(JOBS[job])
    return steps, [picture.description for picture in corner_step_by_step(steps, CENTIMETRES).pictures]


@each_corner
def test_every_step_but_the_first_says_what_changed_and_every_one_how_it_lies(way, job):
    _, told = words(way, job)
    assert [each for each in told[1:] if not re.match(r"Since the last drawing \w.*\. \w", each)] == []
    assert [each for each in told if " now: the " not in each] == []


@each_corner
def test_no_two_steps_say_the_same(way, job):
    _, told = words(way, job)
    assert len(set(told)) == len(told)


@each_corner
def test_what_is_sewn_cut_ruled_and_turned_over_is_said_at_its_step_and_at_no_other(way, job):
    steps, told = words(way, job)
    for last, step, said in zip(steps, steps[1:], told[1:]):
        change = said.partition(". ")[0]
        new = {line.kind for line in set(step.stack.lines) - set(last.stack.lines)}
        for kind, phrase in (("stitch", "stitches is sewn"), ("cut", "cut away"), ("mark", "line is ruled")):
            assert (phrase in change) == (kind in new), (step.name, said)
        assert ("turned over" in change) == (step.from_below != last.from_below), (step.name, said)


def test_a_step_shown_alone_is_told_like_the_same_step_in_its_list():
    steps, told = words("mitre", "square")
    alone = [corner_step(steps, n, CENTIMETRES).description for n in range(1, len(steps) + 1)]
    assert alone == [each.removesuffix(AS_BEFORE) for each in told] != told


def test_sides_are_named_by_how_much_of_them_shows():
    _, told = words("mitre", "square")
    assert "the wrong side is up; the right side shows on about " in told[1]
    assert "the right side is up; the wrong side shows on about " in told[2]
