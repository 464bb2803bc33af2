"""Where care pays: against independent uncertainty propagation, against the folding engine, and against the trade's
experience."""

from dataclasses import fields
from fractions import Fraction
from itertools import islice
from statistics import pstdev

import pytest
from hypothesis import assume, example, given, reject, settings
from hypothesis import strategies as st
from uncertainties import ufloat

from calculators.trade.corners.care import EFFECTS, STEPS, CornerOutcome, Errors, derivatives, effects, made, pieces
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.dual_number import DualNumber, derivative_of
from calculators.trade.corners.mitre_lines import CreasesMiss, mitre_lines
from calculators.trade.corners.plane import Line, distance
from calculators.trade.corners.stack import Stack

SQUARE = Corner(20.0, 20.0, 90, 10.0)
ALIKE = dict.fromkeys(STEPS, 1.0)
OUTCOMES = [each.name for each in fields(CornerOutcome)]

errors = st.builds(Errors, *[st.floats(-1.5, 1.5) for _ in fields(Errors)])
corners = st.builds(
    Corner, st.integers(10, 40).map(float), st.integers(10, 40).map(float), st.integers(50, 140), st.just(8.0)
)


def test_nothing_wrong_nothing_missed():
    for corner in (SQUARE, Corner(30.0, 12.0, 90, 8.0), Corner(20.0, 15.0, 60, 8.0), Corner(20.0, 20.0, 135, 8.0)):
        outcome = made(corner, Errors())
        assert [float(getattr(outcome, name)) for name in OUTCOMES] == pytest.approx([0] * len(OUTCOMES), abs=1e-9)


def test_the_first_turn_leaves_the_mitre_right():
    """Common practice, no source: a first turn 2 mm too deep moves the finished edge 2 mm and leaves the mitre
    right."""
    outcome = made(SQUARE, Errors(turn_1=2.0))
    assert outcome.edge_1 == pytest.approx(2)
    for name in ("inner_across", "inner_along", "outer_across", "outer_along", "depth_1", "depth_2"):
        assert getattr(outcome, name) == pytest.approx(0, abs=1e-9)


def test_the_second_fold_spoils_it():
    """Common practice, no source: a second fold that is off does spoil the mitre."""
    outcome = made(SQUARE, Errors(hem_1=2.0))
    assert (outcome.inner_across**2 + outcome.inner_along**2) ** 0.5 > 2
    assert (outcome.depth_1, outcome.edge_1) == (2, pytest.approx(2))


@settings(max_examples=40)
@given(corners, errors)
def test_slopes_are_what_small_errors_do(corner, amounts):
    """Exact slopes against the outcome of a thousandth of the errors."""
    try:
        found, small = derivatives(corner), 1e-4
        outcome = made(corner, Errors(*(getattr(amounts, each.name) * small for each in fields(Errors))))
    except CreasesMiss:
        reject()
    assume(all(abs(getattr(slope, name)) < 50 for slope in found.values() for name in OUTCOMES))
    for name in OUTCOMES:
        expected = sum(getattr(amounts, error) * getattr(slope, name) for error, slope in found.items()) * small
        assert getattr(outcome, name) == pytest.approx(expected, abs=1e-5)


def test_against_uncertainties():
    """A square corner with unequal hems, written out by hand in coordinates and propagated by the uncertainties
    library."""
    h1, h2, spread = 30.0, 12.0, {"turn": 1.0, "hem": 0.8, "marks": 0.5, "alignment": 0.6}
    corner = Corner(h1, h2, 90, 8.0)
    t1, t2 = ufloat(0, spread["turn"]), ufloat(0, spread["turn"])
    e1, e2 = ufloat(0, spread["hem"]), ufloat(0, spread["hem"])
    m1 = (t2 + 2 * h2 + ufloat(0, spread["marks"]), t1)
    m2 = (t2, t1 + 2 * h1 + ufloat(0, spread["marks"]))
    target = (m1[0] + ufloat(0, spread["alignment"]), m1[1])
    run = (target[0] - m2[0], target[1] - m2[1])
    half = ((m2[0] + target[0]) / 2, (m2[1] + target[1]) / 2)
    beyond = ((m1[0] - half[0]) * run[0] + (m1[1] - half[1]) * run[1]) / (run[0] ** 2 + run[1] ** 2)
    sewn_2 = (m1[0] - 2 * beyond * run[0], m1[1] - 2 * beyond * run[1])
    inner_1 = (m1[0], 2 * (t1 + h1 + e1) - m1[1])
    inner_2 = (2 * (t2 + h2 + e2) - sewn_2[0], sewn_2[1])
    expected = ((inner_1[0] - inner_2[0]).std_dev ** 2 + (inner_1[1] - inner_2[1]).std_dev ** 2) ** 0.5
    ours = effects(corner, spread | {"stitching": 0.0})
    assert sum(effect["inner"] ** 2 for effect in ours.values()) ** 0.5 == pytest.approx(expected, rel=1e-9)
    assert ours["turn"]["inner"] == pytest.approx(0, abs=1e-9)
    assert ours["hem"]["edge"] == pytest.approx((e1.std_dev**2 + e2.std_dev**2) ** 0.5)


@settings(max_examples=15)
@given(corners, errors)
@example(Corner(18.0, 10.0, 119, 8.0), Errors(turn_2=1.0, hem_2=1.0, stitch_outer=1.0))
def test_the_same_corner_folded_in_cloth(corner, wrong):
    compare(corner, wrong)


def compare(corner, wrong):
    """Cloth folded, marked, matched and stitched by the engine with the same errors: once each hem is turned over, the
    two
    sides of the seam miss each other, halfway along it, by what was worked out."""
    try:
        lines, outcome = mitre_lines(corner), made(corner, wrong)
    except CreasesMiss:
        reject()
    reach = (
        3
        * (distance((0, 0), lines.mark_1) + distance((0, 0), lines.mark_2) + corner.hem_1 + corner.hem_2)
        / corner.direction_2[1]
    )
    edges = [corner.parallel(1, wrong.turn_1), corner.parallel(2, wrong.turn_2)]
    depths = (wrong.turn_1 + corner.hem_1 + wrong.hem_1, wrong.turn_2 + corner.hem_2 + wrong.hem_2)
    creases = [corner.parallel(edge, depth) for edge, depth in zip((1, 2), depths)]
    start, crossing = edges[0].meets(edges[1]), creases[0].meets(creases[1])
    mark_1 = onward(start, corner.direction_1, distance((0, 0), lines.mark_1) + wrong.mark_1)
    mark_2 = onward(start, corner.direction_2, distance((0, 0), lines.mark_2) + wrong.mark_2)
    target = onward(mark_1, corner.direction_1, wrong.alignment)
    halfway = ((mark_2[0] + target[0]) / 2, (mark_2[1] + target[1]) / 2)
    fold = Line(halfway, (mark_2[1] - target[1], target[0] - mark_2[0])).towards(target)
    seam = Line.through(mark_1, crossing).towards(
        onward(mark_1, corner.direction_1, 1)
    )  # the hem goes on away from the corner
    sewn = seam.shifted(wrong.stitch_inner).foot(mark_1), seam.shifted(wrong.stitch_outer).foot(crossing)
    turned = Stack.flat(corner.cloth(reach)).fold(edges[0]).fold(edges[1])
    opened = turned.fold(fold, over=False).stitch(*sewn).unfold()
    middle = ((sewn[0][0] + sewn[1][0]) / 2, (sewn[0][1] + sewn[1][1]) / 2)
    sides = ([], [])
    for thread in opened.seams[0].threads:
        if (flat := thread.at(0.5)) is not None:
            (lies,) = opened.places(thread.cloth, flat)
            sides[0 if distance(lies, middle) < 1e-6 else 1].append((thread.cloth, flat))
    assume(sides[0] and sides[1])
    over = [opened.fold(crease) for crease in creases]
    ends = [[place for cloth, flat in side for place in stack.places(cloth, flat)] for side, stack in zip(sides, over)]
    assert all(distance(one[0], other) < 1e-6 for one in ends for other in one)
    across, along = (
        (getattr(outcome, f"inner_{way}") + getattr(outcome, f"outer_{way}")) / 2 for way in ("across", "along")
    )
    assert distance(ends[0][0], ends[1][0]) == pytest.approx((across**2 + along**2) ** 0.5, abs=1e-6)


def onward(place, way, by):
    return (place[0] + way[0] * by, place[1] + way[1] * by)


def test_chance_agrees_with_first_order():
    """The spread of many seeded pieces against the effects added as squares."""
    likely = {"turn": 0.8, "hem": 0.5, "marks": 0.4, "alignment": 0.3, "stitching": 0.3}
    batch = list(islice(pieces(SQUARE, likely), 1500))
    first_order = effects(SQUARE, likely)
    one_edge = sum((effect["edge"] ** 2) / 2 for effect in first_order.values())  # of the two edges, one
    assert pstdev(piece.width for piece in batch) == pytest.approx((2 * one_edge) ** 0.5, rel=0.06)
    one_corner = sum(effect["diagonal"] ** 2 for effect in first_order.values())
    assert pstdev(piece.diagonals for piece in batch) == pytest.approx((4 * one_corner) ** 0.5, rel=0.06)


def test_chance_is_the_same_for_the_same_seed():
    once, again, other = (list(islice(pieces(SQUARE, ALIKE, seed), 20)) for seed in (7, 7, 8))
    assert once == again != other


def test_with_equal_errors_the_second_fold_matters_most():
    found = effects(SQUARE, ALIKE)
    assert max(found, key=lambda step: found[step]["inner"]) == "hem"
    assert min(found, key=lambda step: found[step]["inner"]) == "turn"
    assert set(found["hem"]) == set(EFFECTS)


@given(st.floats(0.5, 9), st.floats(0.5, 9))
def test_sloping_numbers_follow_the_rules(x, y):
    a, step = DualNumber(x, 1.0), 1e-6
    for rule in (
        lambda v: v * y + 3 / v,
        lambda v: (v - y) / (v + y),
        lambda v: (v * v + y) ** 0.5,
        lambda v: abs(-v) - Fraction(1, 3) * v,
        lambda v: y - v,
    ):
        numeric = (float(rule(x + step)) - float(rule(x - step))) / (2 * step)
        assert derivative_of(rule(a)) == pytest.approx(numeric, rel=1e-4, abs=1e-6)
        assert float(rule(a)) == pytest.approx(float(rule(x)))
    assert derivative_of(5) == 0 and a > 0.1 and a >= 0.5 and a < 10 and a <= 9
