"""Two ways that are taken step by step together: neither leaves a step out, what both do they do at once, and both are
drawn at one scale."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer
from calculators.catalogue import calculator_named
from calculators.drawing.in_step import InStep, together

NAMES = st.lists(st.sampled_from(["Cut", "Turn", "Fold", "Stitch", "Trim"]), min_size=1, max_size=6)


def faults(one, other, stops):
    """What is wrong with the places where two ways are said to stand together."""
    found = []
    if stops[0] != (0, 0) or stops[-1] != (len(one) - 1, len(other) - 1):
        found.append("begins or ends elsewhere")
    for (a, b), (c, d) in pairwise(stops):
        if (c - a, d - b) not in ((1, 0), (0, 1), (1, 1)):
            found.append(f"from {a, b} to {c, d}")
    for n, name in enumerate(one):
        meets = any(stop == (n, other.index(name)) for stop in stops) if name in other else True
        if one.count(name) == other.count(name) == 1 and set(one) & set(other) == {name} and not meets:
            found.append(f"{name} not at once")
    return found


@given(one=NAMES, other=NAMES)
def test_every_step_of_both_has_its_turn(one, other):
    stops = together(one, other)
    assert faults(one, other, stops) == []
    assert len(stops) <= len(one) + len(other)


def test_a_step_that_is_left_out_is_found():
    one, other = ["Turn", "Fold", "Stitch"], ["Cut", "Fold"]
    stops = together(one, other)
    assert faults(one, other, stops) == []
    assert faults(one, other, stops[:1] + stops[2:])
    assert "Fold not at once" in faults(one, other, [(0, 0), (1, 0), (2, 1)])


def test_the_way_with_less_to_do_waits_first():
    single, double = ["Neatened", "Folded", "Stitched"], ["Laid flat", "First turn", "Second fold", "Stitched"]
    assert together(single, double) == [(0, 0), (0, 1), (1, 2), (2, 3)]


def in_step(name: str, field: str, *ways: str) -> InStep:
    calculator = calculator_named(name)
    answers = [answer(calculator, Asking({field: way})).drawn_from for way in ways]
    return calculator.beside(*answers, Asking({}).ruler)


@pytest.mark.parametrize(
    "name, field, ways, alike",
    [
        ("edge-steps", "edge", ("double", "single"), ""),
        ("edge-steps", "edge", ("plain", "to-one-side"), "Stitched"),
        ("corner-steps", "way", ("mitre", "folded-mitre"), "Second fold"),
        ("corner-steps", "trimming", ("whole", "snipped"), "Stitch"),
        ("corner-steps", "way", ("faced", "mitre"), ""),
    ],
)
def test_it_is_told_how_far_both_are_alike(name, field, ways, alike):
    assert in_step(name, field, *ways).alike == alike


def test_both_are_drawn_at_one_scale():
    """A corner that is cut alike is drawn alike, though what comes of it is of another size."""
    alone = calculator_named("corner-steps")
    small, large = (answer(alone, Asking({"hem_1": hem, "hem_2": hem})).drawn_from for hem in ("1 cm", "4 cm"))
    drawn = alone.beside(small, large, Asking({}).ruler)
    widths = [series.pictures[0].crop[2] for series in (drawn.one, drawn.other)]
    assert widths[0] == widths[1]
    alone_small = alone.drawing(small, Asking({}).ruler).pictures[3]
    beside = drawn.one.pictures[3]
    assert turn_of(beside) < 0.5 * turn_of(alone_small)


def turn_of(picture):
    """How far across the sheet the cloth reaches [drawing units]."""
    xs = [float(each.split(",")[0]) for line in picture.svg.iter("polyline") for each in line.get("points").split()]
    return max(xs) - min(xs)
