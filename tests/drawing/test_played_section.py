"""An edge that is played: at its ends each strip lies as the two steps are drawn, and on its way none passes through
another."""

import xml.etree.ElementTree as ET
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, pairwise

import pytest
from shapely.geometry import LineString

from calculators.drawing.played_section import BentStrip, bent, played_edge
from calculators.drawing.section import edge_step_by_step, frame_of
from calculators.drawing.section_layout import PITCH
from calculators.trade.sections.edge import EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.trade.sections.strip_folds import strip_folds
from calculators.values.measure import CENTIMETRES

MEASURES = (
    EdgeMeasures(Fraction(10), Fraction(40), Fraction(2), Fraction(12)),
    EdgeMeasures(Fraction(4), Fraction(9), Fraction(1), Fraction(8)),
)
CANNOT = {("faced", "Turned"), ("bound", "Wrapped"), ("zip", "Pressed open")}  # folded and turned over in one step
ON_ITS_WAY = (0.1, 0.3, 0.5, 0.7, 0.9)
NEAR = 0.3  # [drawing units] that places are rounded by
SMALL = 12_000  # [bytes]

each_edge = pytest.mark.parametrize("name", EDGES)
each_job = pytest.mark.parametrize("with_", MEASURES, ids=["usual", "small"])


def drawn_paths(picture):
    """The middle of every strip in a drawing, from its lowest layer as the table [drawing units]."""
    table = float(picture.svg.get("data-table"))
    lines = [each for each in picture.svg.iter("polyline") if each.get("class") == "layer-edge"]
    return [
        LineString([(x, y - table) for x, y in (map(float, each.split(",")) for each in line.get("points").split())])
        for line in lines
    ]


def apart(places, line):
    """How far two paths lie from each other at most [drawing units]."""
    return LineString(places).hausdorff_distance(line)


def ends_apart(name, with_, changed=lambda strips: strips):
    """Where what is played does not begin or end as the steps are drawn."""
    steps = EDGES[name].steps(with_)
    frame = frame_of([step.section for step in steps])
    paths = [drawn_paths(picture) for picture in edge_step_by_step(steps, CENTIMETRES).pictures]
    found = []
    for n, (one, other) in enumerate(pairwise(steps)):
        folds = strip_folds(one.section, other.section)
        if not folds:
            continue
        for fold, share, drawn in ((folds[0], 0, paths[n]), (folds[-1], 1, paths[n + 1])):
            strips = changed(bent(fold, frame))
            order = (one if share == 0 else other).section.strips
            shown = {strip.name: strip.on_its_way(share) for strip in strips}
            found += [(other.name, name) for name, line in zip(order, drawn) if apart(shown[name], line) > NEAR]
        for first, then in pairwise(folds):
            begun = {strip.name: strip.on_its_way(0) for strip in bent(then, frame)}
            found += [
                (other.name, strip.name)
                for strip in bent(first, frame)
                if apart(strip.on_its_way(1), LineString(begun[strip.name])) > NEAR
            ]
    return found


def crossings(name, with_, changed=lambda strips: strips):
    """Where one strip passes through another, or through itself, on its way."""
    steps = EDGES[name].steps(with_)
    frame = frame_of([step.section for step in steps])
    found = []
    for one, other in pairwise(steps):
        for fold in strip_folds(one.section, other.section) or ():
            strips = changed(bent(fold, frame))
            for share in ON_ITS_WAY:
                lines = [LineString(strip.on_its_way(share)) for strip in strips]
                if not all(line.is_simple for line in lines) or any(a.crosses(b) for a, b in combinations(lines, 2)):
                    found.append((other.name, share))
    return found


@each_edge
@each_job
def test_strips_begin_and_end_as_the_steps_are_drawn(name, with_):
    assert ends_apart(name, with_) == []


@each_edge
@each_job
def test_no_strip_passes_through_another_on_its_way(name, with_):
    assert crossings(name, with_) == []


def test_a_strip_at_the_wrong_place_or_turned_the_wrong_way_is_found():
    def lifted(strips: list[BentStrip]) -> list[BentStrip]:
        return [replace(each, after=tuple((x, y - PITCH / 2) for x, y in each.after)) for each in strips]

    def turned_back(strips: list[BentStrip]) -> list[BentStrip]:
        return [
            replace(
                each,
                before=tuple((x, -y) for x, y in each.before),
                after=tuple((x, -y) for x, y in each.after),
            )
            if number
            else each
            for number, each in enumerate(strips)
        ]

    assert ends_apart("french", MEASURES[0], lifted)
    assert crossings("french", MEASURES[0], turned_back)


def test_all_is_played_that_moves_but_what_is_folded_and_turned_over_at_once():
    found = {
        (name, other.name): strip_folds(one.section, other.section)
        for name, edge in EDGES.items()
        for one, other in pairwise(edge.steps(MEASURES[0]))
    }
    assert {each for each, folds in found.items() if folds is None} == CANNOT
    assert sum(len(folds) for folds in found.values() if folds) == 21


@pytest.mark.parametrize("name", [name for name in EDGES if name != "zip"])
def test_a_played_edge_is_small_and_has_every_step(name):
    steps = EDGES[name].steps(MEASURES[0])
    svg = played_edge(steps, edge_step_by_step(steps, CENTIMETRES).pictures)
    assert len(ET.tostring(svg)) < SMALL
    names = [each.get("data-name") for each in svg.iterfind("g[@class='step']")]
    assert names[-len(steps) :] == [step.name for step in steps]
    assert len(names) - len(steps) == bool(steps[0].section.before)


def test_an_edge_of_which_nothing_can_be_played_has_no_player():
    steps = EDGES["zip"].steps(MEASURES[0])
    assert played_edge(steps, edge_step_by_step(steps, CENTIMETRES).pictures) is None
