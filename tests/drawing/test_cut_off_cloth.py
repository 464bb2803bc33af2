"""Where cloth runs on beyond a drawing of a corner, a break line says so: it is never drawn as an edge of the cloth."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.drawing import lines
from calculators.drawing.corner import distances_at_corner, mitre_corner
from calculators.drawing.folding import corner_step_by_step
from calculators.folding.constructions import CONSTRUCTIONS, Measures
from calculators.folding.mitre_lines import CreasesMiss
from calculators.folding.mitre_marks import mitre_marks
from calculators.measure import CENTIMETRES

NEAR = 0.3  # drawing units: coordinates are rounded to a tenth


def drawn(svg, style):
    found = [node.get("points").split() for node in svg.iter("polyline") if node.get("class") == style]
    return [[tuple(map(float, pair.split(","))) for pair in points] for points in found]


def ends(points):
    return points[0], points[-1]


def lies_on(edge, side):
    """Whether more than a touch of an edge lies along a side."""
    (ax, ay), (bx, by) = side
    length = math.dist(*side)
    along = [((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length for x, y in edge]
    off = [abs((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length for x, y in edge]
    return max(off) < NEAR and min(max(along), length) - max(min(along), 0) > 4 * NEAR


def inside(svg, style):
    _, _, width, height = map(float, svg.get("viewBox").split())
    return all(-NEAR <= x <= width + NEAR and -NEAR <= y <= height + NEAR for points in drawn(svg, style) for x, y in points)


@settings(max_examples=60, deadline=None)
@given(st.integers(30, 150), st.integers(8, 40), st.integers(8, 40))
def test_a_corner_to_mitre_ends_in_break_lines_square_to_its_edges(angle, hem_1, hem_2):
    try:
        marks = mitre_marks(hem_1, hem_2, angle, 4, 3)
    except CreasesMiss:
        assume(False)
    for picture in (mitre_corner(marks, CENTIMETRES), distances_at_corner(marks, CENTIMETRES)):
        *breaks, _sample = [ends(points) for points in drawn(picture.svg, lines.BREAK)]
        edge, *_ = drawn(picture.svg, lines.EDGE)
        (outline,) = [node for node in picture.svg.iter("polygon") if node.get("class") == lines.CLOTH_WRONG]
        ring = [tuple(map(float, pair.split(","))) for pair in outline.get("points").split()]
        sides = list(zip(ring[1:], ring[2:]))
        assert breaks == sides and ring[1] == edge[0] and ring[-1] == edge[-1]
        assert not any(lies_on(part, side) for part in zip(edge, edge[1:]) for side in sides)
        for (corner, end), (foot, head) in (((edge[1], edge[0]), sides[0]), ((edge[1], edge[2]), sides[-1][::-1])):
            turn = (end[0] - corner[0]) * (head[0] - foot[0]) + (end[1] - corner[1]) * (head[1] - foot[1])
            assert abs(turn) < 0.02 * math.dist(corner, end) * math.dist(foot, head) + 2 * math.dist(corner, end) * 0.1
        assert "cloth runs on" in [node.text for node in picture.svg.iter("text")]
        assert inside(picture.svg, lines.BREAK) and inside(picture.svg, lines.FOLD)


@pytest.mark.parametrize("way", CONSTRUCTIONS)
@settings(max_examples=8, deadline=None)
@given(angle=st.integers(30, 150), hem_1=st.integers(10, 30), hem_2=st.integers(10, 30))
def test_no_edge_is_drawn_where_the_cloth_runs_on(way, angle, hem_1, hem_2):
    try:
        steps = CONSTRUCTIONS[way].steps(Measures(float(hem_1), float(hem_2), float(angle), 4.0, 3.0))
    except ValueError:
        assume(False)
    series = corner_step_by_step(steps, CENTIMETRES)
    for picture in series.pictures:
        assert drawn(picture.svg, lines.BREAK), picture.title
        assert all(inside(picture.svg, style) for style in (lines.BREAK, lines.EDGE, lines.FOLD))
    assert "cloth runs on" in [node.text for node in series.key.svg.iter("text")]


@pytest.mark.parametrize("angle", range(30, 151, 10))
def test_a_hem_turned_along_an_edge_ends_level_with_its_cloth(angle):
    """From the first turn to the finished hem nothing juts out beyond a cut-off side."""
    steps = CONSTRUCTIONS["mitre"].steps(Measures(20.0, 20.0, float(angle), 8.0, 3.0))
    first, *others = [step.stack for step in steps if not step.from_below]
    sides = first.layers[0].cloth.runs_on
    assert len(sides) == (3 if angle > 90 else 2)
    for stack in others:
        for facet in stack.layers:
            for x, y in facet.on_table:
                for (ax, ay), (bx, by) in sides:
                    off = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / math.dist((ax, ay), (bx, by))
                    assert off > -1e-6
