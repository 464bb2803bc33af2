"""Where cloth runs on beyond a drawing of a corner, a break line says so: it is never drawn as an edge of the cloth."""

import json
import math
import re
import xml.etree.ElementTree as ET

import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st

from calculators.drawing import lines
from calculators.drawing.corner import distances_at_corner, mitre_corner
from calculators.drawing.folding import corner_step_by_step
from calculators.faces.browser import replies
from calculators.trade.corners import binding, faced, folded_corner, mitre, self_bound
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.corners.convex import edges, holds
from calculators.trade.corners.mitre_lines import CreasesMiss
from calculators.trade.corners.mitre_marks import mitre_marks
from calculators.trade.corners.window import AMPLE, cut_off
from calculators.values.measure import CENTIMETRES

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
    return all(
        -NEAR <= x <= width + NEAR and -NEAR <= y <= height + NEAR for points in drawn(svg, style) for x, y in points
    )


@settings(max_examples=60, deadline=None)
@given(st.integers(30, 150), st.integers(8, 40), st.integers(8, 40))
def test_a_corner_to_mitre_ends_in_break_lines_square_to_its_edges(angle, hem_1, hem_2):
    try:
        marks = mitre_marks(hem_1, hem_2, angle, 4, 3)
    except CreasesMiss:
        assume(False)
    for picture in (mitre_corner(marks, CENTIMETRES), distances_at_corner(marks, CENTIMETRES)):
        breaks = [ends(points) for points in drawn(picture.svg, lines.BREAK)]
        (edge,) = drawn(picture.svg, lines.EDGE)
        (outline,) = [node for node in picture.svg.iter("polygon") if node.get("class") == lines.CLOTH_WRONG]
        ring = [tuple(map(float, pair.split(","))) for pair in outline.get("points").split()]
        sides = list(zip(ring[1:], ring[2:]))
        assert breaks == sides and ring[1] == edge[0] and ring[-1] == edge[-1]
        assert not any(lies_on(part, side) for part in zip(edge, edge[1:]) for side in sides)
        for (corner, end), (foot, head) in (((edge[1], edge[0]), sides[0]), ((edge[1], edge[2]), sides[-1][::-1])):
            turn = (end[0] - corner[0]) * (head[0] - foot[0]) + (end[1] - corner[1]) * (head[1] - foot[1])
            assert abs(turn) < 0.02 * math.dist(corner, end) * math.dist(foot, head) + 2 * math.dist(corner, end) * 0.1
        assert "cloth runs on" in [node.text for node in picture.key.iter("text")]
        assert inside(picture.svg, lines.BREAK) and inside(picture.svg, lines.FOLD)


def lopsided(angle, hem_1, hem_2):
    return Measures(float(hem_1), float(hem_2), float(angle), 4.0, 3.0)


def steps_or_none(way, measures):
    try:
        return CONSTRUCTIONS[way].steps(measures)
    except ValueError:  # this corner cannot be made so
        return None


each_way = pytest.mark.parametrize("way", CONSTRUCTIONS)
angles, hems = st.integers(20, 170), st.integers(8, 60)
many = settings(max_examples=5, phases=[Phase.generate], suppress_health_check=[HealthCheck.filter_too_much])


@each_way
@many
@given(angles, hems, hems)
def test_a_break_line_stands_where_the_one_window_cuts_cloth_that_goes_on(way, angle, hem_1, hem_2):
    steps = steps_or_none(way, lopsided(angle, hem_1, hem_2))
    assume(steps)
    assert len({step.window for step in steps}) == 1
    for step in steps:
        breaks = cut_off(step.seen, step.window)
        assert breaks, step.name
        whole, broken = step.stack.in_floats(), 0.0
        for (ax, ay), (bx, by) in edges(step.window):
            length = math.dist((ax, ay), (bx, by))
            out = ((by - ay) / length * 0.01, (ax - bx) / length * 0.01)
            for n in range(1, 64):
                place = ax + (bx - ax) * n / 64, ay + (by - ay) * n / 64
                goes_on = [
                    any(holds(facet.on_table, (place[0] + k * out[0], place[1] + k * out[1])) for facet in whole.layers)
                    for k in (-1, 1)
                ]
                if goes_on[0] == goes_on[1]:  # a place nearer than that to the end of cloth tells nothing
                    assert any(lies_over(place, each) for each in breaks) == goes_on[0], (step.name, place)
                    broken += goes_on[0]
        assert broken, step.name


def lies_over(place, edge):
    (ax, ay), (bx, by) = edge
    length = math.dist(*edge)
    along = ((place[0] - ax) * (bx - ax) + (place[1] - ay) * (by - ay)) / length
    off = abs((place[0] - ax) * (by - ay) - (place[1] - ay) * (bx - ax)) / length
    return off < 1e-6 and -1e-6 <= along <= length + 1e-6


def places(svg):
    """All corners of what is drawn, whichever a shape begins with."""
    return sorted(re.findall(r"[-\d.]+,[-\d.]+", ET.tostring(svg, encoding="unicode")))


@each_way
@many
@given(angles, hems, hems)
def test_longer_cloth_makes_the_same_drawings(way, angle, hem_1, hem_2):
    """The far end of the cloth, where the engine stops and a maker's cloth does not, is never in sight, however it is
    folded."""
    made = []
    for ample in (AMPLE, 3 * AMPLE):
        with pytest.MonkeyPatch.context() as patch:
            for maker in (binding, faced, folded_corner, mitre, self_bound):
                patch.setattr(maker, "AMPLE", ample)
            steps = steps_or_none(way, lopsided(angle, hem_1, hem_2))
            assume(steps)
            made.append([places(picture.svg) for picture in corner_step_by_step(steps, CENTIMETRES).pictures])
    assert made[0] == made[1]


@each_way
@many
@given(angles, hems, hems)
def test_no_edge_is_drawn_where_the_cloth_runs_on(way, angle, hem_1, hem_2):
    steps = steps_or_none(way, lopsided(angle, hem_1, hem_2))
    assume(steps)
    series = corner_step_by_step(steps, CENTIMETRES)
    for picture in series.pictures:
        breaks = [ends(points) for points in drawn(picture.svg, lines.BREAK)]
        assert breaks, picture.title
        assert all(inside(picture.svg, style) for style in (lines.BREAK, lines.EDGE, lines.FOLD))
        assert not any(
            lies_on(edge, each) for edge in drawn(picture.svg, lines.EDGE) for each in breaks if math.dist(*each) > 4
        ), picture.title
    assert "cloth runs on" in [node.text for node in series.key.svg.iter("text")]


@pytest.mark.parametrize("angle", range(20, 171, 10))
def test_a_hem_turned_along_an_edge_ends_level_with_its_cloth(angle):
    """At the end of each edge all layers that run on are cut off by one line, square to the edge."""
    measures = lopsided(angle, 20, 20)
    for step in steps_or_none("mitre", measures) or CONSTRUCTIONS["folded-corner"].steps(measures):
        ax = max(start[0] for start, end in edges(step.window) if abs(start[0] - end[0]) < 1e-6)
        assert max(x for facet in step.seen.layers for x, _ in facet.on_table) == pytest.approx(ax)
        (one,) = [
            each
            for each in cut_off(step.seen, step.window)
            if abs(each[0][0] - ax) < 1e-6 and abs(each[1][0] - ax) < 1e-6
        ]
        reaching = [y for facet in step.seen.layers for x, y in facet.on_table if abs(x - ax) < 1e-6]
        assert (min(reaching), max(reaching)) == pytest.approx(sorted(y for _, y in one))


PARTLY_DRAWN = [
    ("pointed-end", {}),
    ("curtains", {"rod": "9 m", "curtains": "1", "drop": "60 cm"}),
    ("usable-cloth", {"layers": "60"}),
    ("pieces-from-cloth", {"cloth_length": "60 m"}),
    ("finished-size", {"width": "150 cm", "length": "3 m"}),
]


@pytest.mark.parametrize(("name", "typed"), PARTLY_DRAWN, ids=[name for name, _ in PARTLY_DRAWN])
def test_every_drawing_that_stops_before_its_cloth_says_so(name, typed):
    """A zigzag in the line, as the key shows it, and no edge and no cut along it."""
    reply = json.loads(
        list(replies(json.dumps({"ask": "calculator", "calculator": name, "given": {}, "typed": typed, "ruler": ""})))[
            -1
        ]
    )
    svg, key = (
        ET.fromstring(found.replace(' xmlns="http://www.w3.org/2000/svg"', ""))
        for found in re.findall(r"<svg.*?</svg>", reply["answer"], re.DOTALL)
    )
    breaks, (sample,) = drawn(svg, lines.BREAK), drawn(key, lines.BREAK)
    assert breaks and "cloth runs on" in [node.text for node in key.iter("text")]
    assert all(len(points) == 6 for points in (*breaks, sample))
    for style in (lines.EDGE, lines.CUT):
        for points in drawn(svg, style):
            assert not any(lies_on(part, ends(each)) for part in zip(points, points[1:]) for each in breaks)
