"""Folded, faced, bordered, bound and self-bound corners: what cloth can do, and layers added up."""

from fractions import Fraction

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st

from calculators.trade.corners.binding import mitred_binding
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.faced import SHARPEST, applied_border, faced_corner
from calculators.trade.corners.folded_corner import folded_corner
from calculators.trade.corners.layers import cells, seen_from_above
from calculators.trade.corners.mitre_lines import CreasesMiss
from calculators.trade.corners.plane import distance
from calculators.trade.corners.self_bound import self_bound_edge
from calculators.trade.corners.turning_out import PokesOut, Sewing
from tests.trade.corners.checks import passings, tears, widest_gap

FEW = settings(max_examples=10)
DEPTH = st.integers(8, 50).map(Fraction)
SMALL = st.integers(2, 7).map(Fraction)


def angles(least):
    return st.integers(least, 150).map(Fraction)


def cloth_can_do_it(steps):
    for step in steps:
        assert tears(step.stack) == [], step.name
        assert passings(step.stack.in_floats()) == [], step.name
    finished = steps[-1].stack
    assert [gap for seam in finished.seams if (gap := widest_gap(finished, seam)) > 1e-4] == []


def layers(steps):
    return {cell.count for cell in cells(steps[-1].stack.in_floats())}


@FEW
@given(DEPTH, DEPTH, angles(30), SMALL, st.none() | SMALL)
def test_folded_corners(hem_1, hem_2, angle, turn, turn_2):
    cloth_can_do_it(folded_corner(Corner(hem_1, hem_2, angle, turn, turn_2), Fraction(1)))


@FEW
@given(DEPTH, angles(SHARPEST), SMALL, st.none() | st.just(Fraction(1)))
def test_faced_corners(width, angle, allowance, clearance):
    cloth_can_do_it(faced_corner(Corner(width, width, angle, allowance), clearance, Fraction(1)))


@FEW
@given(DEPTH, angles(SHARPEST), SMALL, SMALL, st.none() | st.just(Fraction(1)))
def test_applied_borders(width, angle, allowance, inner_turn, clearance):
    cloth_can_do_it(applied_border(Corner(width, width, angle, allowance), inner_turn, clearance, Fraction(1)))


def test_a_border_at_a_very_open_corner():
    """Once no cloth was found to hold here: the place was looked for beyond the strips' ends."""
    cloth_can_do_it(
        applied_border(Corner(Fraction(8), Fraction(8), Fraction(138), Fraction(3)), Fraction(2), None, Fraction(1))
    )


@FEW
@given(SMALL, angles(90), st.sampled_from(["opposite ways", "the same way"]))
def test_bindings(width, angle, pleats):
    cloth_can_do_it(mitred_binding(width, angle, pleats))


@FEW
@given(DEPTH, DEPTH, angles(35), SMALL, st.none() | SMALL)
def test_self_bound_edges(hem_1, hem_2, angle, turn, turn_2):
    sewing = Sewing(Fraction(2), Fraction(1), "trimmed, point snipped")
    try:
        steps = self_bound_edge(Corner(hem_1, hem_2, angle, turn, turn_2), sewing)
    except (CreasesMiss, PokesOut):
        reject()
    cloth_can_do_it(steps)


def test_too_sharp():
    with pytest.raises(PokesOut):
        faced_corner(Corner(Fraction(30), Fraction(30), Fraction(SHARPEST - 1), Fraction(8)), Fraction(2), Fraction(2))
    with pytest.raises(PokesOut):
        mitred_binding(Fraction(10), Fraction(89))


def test_a_folded_corner_is_three_times_three():
    """A double hem is three layers; folded across another it makes nine. A single turned one: two times two."""
    assert max(layers(folded_corner(Corner(Fraction(20), Fraction(20), turn=Fraction(10)), Fraction(2)))) == 9
    assert max(layers(folded_corner(Corner(Fraction(20), Fraction(20)), Fraction(2)))) == 4


def test_layers_of_a_faced_corner():
    """Piece and facing with both their allowances between; the point folded in lies three deep on either cloth."""
    piece, facing = 1, 1
    found = layers(faced_corner(Corner(Fraction(30), Fraction(30), turn=Fraction(8)), None, Fraction(2)))
    assert piece + facing in found and 2 * (piece + facing) in found
    assert max(found) == piece + facing + 3 * (piece + facing)


def test_layers_of_a_binding():
    """Along the edge: allowance, front, piece, back, turn. A pleat adds two layers in each of the four bands; laid to
    opposite sides, half of them lie in each half of the corner."""
    along_edge, pleat = 5, 4
    assert layers(mitred_binding(Fraction(10), Fraction(90), "the same way")) == {1, along_edge, along_edge + 2 * pleat}
    assert layers(mitred_binding(Fraction(10), Fraction(90), "opposite ways")) == {1, along_edge, along_edge + pleat}


def test_the_binding_takes_no_more_strip_than_edge():
    """From one stop to the other the strip is as long as the raw edge around the corner, at any angle."""
    for angle in (90, 120, 135):
        steps = mitred_binding(Fraction(10), Fraction(angle))
        stop = float(steps[1].lengths["stop"])
        strip = next(facet.cloth for facet in steps[0].stack.layers if facet.cloth.name == "binding")
        finished = steps[-1].stack
        crossing = Corner(Fraction(10), Fraction(10), Fraction(angle)).crossing
        for x in (stop, -stop):
            assert distance(finished.places(strip.name, (x, Fraction(10)))[0], crossing) == pytest.approx(0, abs=1e-6)


def test_the_border_shows_its_right_side_on_the_right_side():
    finished = applied_border(
        Corner(Fraction(30), Fraction(30), turn=Fraction(8)), Fraction(6), Fraction(2), Fraction(2)
    )[-1]
    assert finished.from_below
    seen = seen_from_above(finished.stack.turned_over().in_floats())
    assert {each.facet.cloth.name for each in seen} == {"strip 1", "strip 2", "piece"}
    assert all(each.facet.right_side_up for each in seen)


def test_strips_of_a_border():
    """Strip beyond the finished side at each end, at a square corner: allowance·(1 + √2), by hand."""
    steps = applied_border(Corner(Fraction(30), Fraction(30), turn=Fraction(10)), Fraction(6), Fraction(2), Fraction(2))
    assert steps[0].lengths["beyond_corner"] == pytest.approx(10 * (1 + 2**0.5))
    assert steps[0].lengths["strip_width"] == 46
    assert steps[0].lengths["mitre_seam"] == pytest.approx(30 * 2**0.5)


def test_a_self_bound_edge_has_the_top_cloth_between():
    steps = self_bound_edge(Corner(Fraction(15), Fraction(15), turn=Fraction(5)), Sewing(Fraction(4), Fraction(2)))
    assert min(layers(steps)) == 2
    assert steps[0].lengths == {"margin_1": 20, "margin_2": 20}
