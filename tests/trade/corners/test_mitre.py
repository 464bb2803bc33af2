"""Mitres folded in the engine against the closed formulas, published figures, and what cloth can do."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import assume, given, reject, settings
from hypothesis import strategies as st

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.layers import cells
from calculators.trade.corners.mitre import folded_mitre, mitre_opened_flat, mitre_with_turn_folded
from calculators.trade.corners.mitre_lines import CreasesMiss, mitre_lines
from calculators.trade.corners.plane import Isometry, Line, distance
from calculators.trade.corners.turning_out import PokesOut, Sewing
from tests.trade.corners.checks import passings, tears, widest_gap

MAKINGS = [mitre_with_turn_folded, mitre_opened_flat, folded_mitre]
TRIMMINGS = ["left whole", "trimmed", "trimmed, point snipped"]
INCH = Fraction(254, 10)
SQUARE = Corner(Fraction(20), Fraction(20), Fraction(90), Fraction(10))
SEWING = Sewing(Fraction(6), Fraction(2))


def corners(least=30, most=150):
    hems, turns = st.integers(4, 60).map(Fraction), st.integers(0, 12).map(Fraction)
    return st.builds(Corner, hems, hems, st.integers(least, most).map(Fraction), turns, st.none() | turns)


@given(corners())
def test_the_mitre_line_runs_straight_on_to_both_raw_edges(corner):
    """Turn opened flat: raw mark, mark and crossing lie on one line, and the raw mark a turn's depth outside the
    edge."""
    try:
        lines = mitre_lines(corner)
    except CreasesMiss:
        reject()
    turn_2 = corner.turn if corner.turn_2 is None else corner.turn_2
    for edge, half, raw, turn in (
        (1, lines.line_1, lines.raw_mark_1, corner.turn),
        (2, lines.line_2, lines.raw_mark_2, turn_2),
    ):
        assert half.side(raw) == 0
        assert distance(corner.parallel(edge, 0).foot(raw), raw) == pytest.approx(float(turn), abs=1e-6)


@given(corners())
def test_both_halves_are_equal_and_the_inner_corner_is_twice_as_far(corner):
    try:
        lines = mitre_lines(corner)
    except CreasesMiss:
        reject()
    assert distance(lines.crossing, lines.mark_2) == pytest.approx(float(lines.half_line))
    assert distance(corner.at(0, 0), lines.inner) == pytest.approx(2 * float(distance(corner.at(0, 0), lines.crossing)))


def test_a_square_corner_is_exact():
    lines = mitre_lines(Corner(Fraction(20), Fraction(10), Fraction(90), Fraction(10)))
    assert lines.mark_1 == (20, 0) and lines.mark_2 == (0, 40)
    assert distance((-10, -10), lines.raw_mark_1) == 35  # derived by reflection: D2 + h2·D1/h1, not 40
    assert distance((-10, -10), lines.raw_mark_2) == 70  # and D1 + h1·D2/h2, not 60


def test_home_and_school_sewing():
    """*Home and School Sewing*, ch. XV: turn 1/4 in, hem 1 in, cut 1/4 in outside the diagonal at 1 1/4 in from both
    raw edges. The cut then meets the raw edge at 2.146 in (derived); *School Sewing* § 146, 1/8 in: 2.323 in."""
    for allowance, expected in ((Fraction(1, 4), 2.146), (Fraction(1, 8), 2.323)):
        corner = Corner(INCH, INCH, Fraction(90), INCH / 4)
        step = next(
            each
            for each in folded_mitre(corner, Sewing(allowance * INCH, Fraction(2)))
            if each.name == "Cut the corner"
        )
        raw_edge = [x for facet in step.stack.layers for x, y in facet.on_table if abs(y + corner.turn) < 1e-9]
        assert (min(raw_edge) + corner.turn) / INCH == pytest.approx(expected, abs=0.0005)


def test_hemstitching_thread():
    """*School Sewing*, § 115: draw the thread at twice the hem and the turn: hem 1 in, turn 1/4 in, 2 1/4 in from the
    edge.
    In the folded cloth that thread lies under the hem's inner edge."""
    corner = Corner(INCH, INCH, Fraction(90), INCH / 4)
    inner_edge = Isometry.folded_over(corner.crease(1)).place((50, 0))[1]
    assert (inner_edge + corner.turn) / INCH == Fraction(9, 4)


@pytest.mark.parametrize("trimming", TRIMMINGS)
@pytest.mark.parametrize("pressed", ["open", "to one side"])
@pytest.mark.parametrize("making", MAKINGS)
@settings(max_examples=12)
@given(corner=corners())
def test_cloth_can_do_it(making, pressed, trimming, corner):
    """No step tears cloth or passes a layer through a fold; the mitre seam lies closed in the finished corner."""
    assume(all(turn < hem for turn, hem in zip(corner.turns, (corner.hem_1, corner.hem_2))))
    try:
        steps = making(corner, Sewing(Fraction(2), Fraction(1), trimming, pressed))
    except CreasesMiss:
        reject()
    except PokesOut:
        assert corner.angle < 90 and trimming != "trimmed, point snipped"
        reject()
    for step in steps:
        assert tears(step.stack) == [], step.name
        assert passings(step.stack.in_floats()) == [], step.name
    finished = steps[-1].stack
    assert [gap for seam in finished.seams if (gap := widest_gap(finished, seam)) > 1e-4] == []


@pytest.mark.parametrize(("turn", "turn_2", "said"), [
    (100, 25, "Turn {turn} under on edge 1 and {turn_2} on edge 2, and press"),
    (0, 25, "Turn {turn_2} under on edge 2 and press"),
    (100, 0, "Turn {turn} under on edge 1 and press"),
    (25, 25, "Turn {turn} under on every side and press"),
])  # fmt: skip
def test_equal_folds_at_the_foot_of_a_curtain(turn, turn_2, said):
    """Each edge is turned in by its own first turn, as the step says, and the cloth reaches so far beyond its hem."""
    corner = Corner(Fraction(100), Fraction(25), Fraction(90), Fraction(turn), Fraction(turn_2))
    steps = {step.name: step for step in folded_mitre(corner, Sewing(Fraction(6), Fraction(2), "left whole"))}
    first = steps["First turn"]
    assert first.do == said and set(first.lengths) == {name for name in ("turn", "turn_2") if f"{{{name}}}" in said}
    (flat,) = (facet.on_table for facet in steps["Cut"].stack.layers)
    assert (min(x for x, _ in flat), min(y for _, y in flat)) == (-turn_2, -turn)
    assert min(x for facet in first.stack.layers for x, _ in facet.on_table) == pytest.approx(0, abs=1e-9)
    assert tears(steps["Right side"].stack) == []


@pytest.mark.parametrize("making", MAKINGS)
def test_the_finished_corner_is_square_and_clean(making):
    """From the right side the finished corner shows the right side only, its corner where the creases crossed."""
    finished = making(SQUARE, SEWING)[-1].stack
    for cell in cells(finished):
        assert cell.facets[0].right_side_up is False  # seen from below: the right side
        assert all(x >= 20 - 1e-6 and y >= 20 - 1e-6 for x, y in cell.shape)


def test_a_seam_to_the_raw_edge_would_gape():
    """Why the seam of a mitre opened flat stops at the crease of the turn."""
    lines = mitre_lines(SQUARE)
    steps = {step.name: step.stack for step in mitre_opened_flat(SQUARE, SEWING)}
    too_far = steps["Right sides together"].stitch(lines.mark_1, lines.raw_mark_1)
    finished = steps["Turn out"]
    assert widest_gap(finished, steps["Stitch"].seams[0]) == pytest.approx(0, abs=1e-6)
    assert widest_gap(replace(finished, seams=too_far.seams), too_far.seams[-1]) > 1


def thickest(steps):
    return max(cell.count for cell in cells(steps[-1].stack.in_floats()))


def test_layers_added_up():
    """The thickest places of hem 20, turn 10, allowance 6 mm, added up layer by layer."""
    body, hem, turn = 1, 1, 1
    single = replace(SQUARE, turn=Fraction(0))
    point_squashed, point_snipped = SEWING, replace(SEWING, trimming="trimmed, point snipped")
    allowance = hem + turn
    folded_tip = 2 * (hem + turn)  # both edges' turns lie crosswise in the corner that is folded in
    assert thickest(mitre_with_turn_folded(SQUARE, SEWING)) == body + hem + turn + allowance
    assert thickest(mitre_with_turn_folded(SQUARE, replace(SEWING, trimming="left whole"))) == body + folded_tip + 2 * (
        hem + turn
    )
    assert thickest(mitre_with_turn_folded(single, point_snipped)) == body + hem + hem
    assert thickest(mitre_with_turn_folded(single, point_squashed)) == body + hem + 2 * hem


def test_a_sharp_point_left_whole_pokes_out():
    with pytest.raises(PokesOut):
        mitre_with_turn_folded(replace(SQUARE, angle=Fraction(60)), SEWING)


def test_creases_that_miss():
    with pytest.raises(CreasesMiss):
        mitre_with_turn_folded(Corner(Fraction(10), Fraction(60), Fraction(150), Fraction(5)), SEWING)


def test_the_fold_line_of_the_matching_carries_mark_to_mark():
    corner = Corner(Fraction(30), Fraction(12), Fraction(90), Fraction(6))
    lines = mitre_lines(corner)
    assert Isometry.folded_over(lines.matching_fold).place(lines.mark_2) == lines.mark_1
    assert Line.through(lines.mark_1, lines.mark_2).side(lines.crossing) == 0  # one straight line at a square corner
