"""A corner that is played: at its ends, what stays and the flap painted together are the drawings of the two steps."""

import xml.etree.ElementTree as ET
from copy import deepcopy
from itertools import pairwise, product

import pytest
from shapely import affinity, unary_union
from shapely.geometry import Polygon

from calculators.asking.answering import Asking, answer
from calculators.catalogue import calculator_named
from calculators.drawing.action_marks import action
from calculators.drawing.folding import box_of, state_drawn
from calculators.drawing.played_corner import played_corner
from calculators.faces.page.answer_html import figure
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.corners.plane import Isometry
from calculators.trade.corners.single_folds import single_folds
from calculators.values.measure import CENTIMETRES

SQUARE, UNEQUAL = Measures(20.0, 20.0, 90.0, 8.0), Measures(30.0, 15.0, 90.0, 8.0)
BLUNT = Measures(20.0, 20.0, 105.0, 8.0)
CANNOT = {"Turn out", "Turn", "Wrap", "Fold in"}
ROUNDED = 60  # [square drawing units] that two drawings of the same may differ by, since places are rounded
SMALL = 45_000  # [bytes]

each_corner = pytest.mark.parametrize(("way", "job"), list(product(CONSTRUCTIONS, (SQUARE, UNEQUAL, BLUNT))))


def painted(*groups, down=0.0):
    """What is left to be seen of each style's areas once all are painted in order: style → shape."""
    seen = {}
    for path in (each for group in groups for each in group.iter("path") if each.get("fill-rule")):
        rings = [
            [tuple(map(float, pair.split(","))) for pair in ring.removeprefix("M").split()]
            for ring in path.get("d").rstrip("Z").split("Z")
        ]
        shape = affinity.translate(unary_union([Polygon(ring) for ring in rings]), 0, down)
        seen = {style: each.difference(shape) for style, each in seen.items()}
        seen[path.get("class")] = seen.get(path.get("class"), Polygon()).union(shape)
    return seen


def states(steps):
    """The cloth as each step leaves it, at the scale of all."""
    box = box_of([step.seen for step in steps])
    return [state_drawn(step, frozenset(step.stack.lines), box, CENTIMETRES)[0] for step in steps]


def differ(one, other):
    """By how much what is painted differs, in all styles together."""
    return sum(
        one.get(style, Polygon()).symmetric_difference(other.get(style, Polygon())).area for style in {*one, *other}
    )


def ends(flap):
    """What is painted of a fold at its beginning and at its end."""
    faces = ("rear", "front") if "data-opens" in flap.attrib else ("front", "rear")
    return [painted(*(part for part in flap if part.get("class") in ("stays", face))) for face in faces]


def moves(svg):
    """For each step what arrives at it, and its own group."""
    waiting = []
    for each in svg:
        if each.get("class") == "step":
            yield waiting, each
            waiting = []
        else:
            waiting.append(each)


def faults(svg, pictures):
    """Where what is played does not begin, go on or end as the steps are drawn."""
    found = []
    steps = list(moves(svg))
    for n, ((_, last), (folds, step)) in enumerate(pairwise(steps)):
        if not folds or folds[0].get("class") != "flap":
            continue
        shown = [
            painted(picture.svg, down=float(each.get("data-down")))
            for picture, each in zip(pictures[n : n + 2], (last, step))
        ]
        own = painted(step, down=float(step.get("data-down")))
        if "data-drawn" in step.attrib and differ(own, shown[1]) > ROUNDED:
            found.append(step.get("data-name"))
        seen = [shown[0], *(end for flap in folds for end in ends(flap)), shown[1]]
        found += [step.get("data-name") for one, other in zip(seen[::2], seen[1::2]) if differ(one, other) > ROUNDED]
    return found


@each_corner
def test_played_folds_begin_and_end_as_the_steps_are_drawn(way, job):
    steps = CONSTRUCTIONS[way].steps(job)
    svg = played_corner(steps)
    assert [each.get("data-name") for _, each in moves(svg)] == [step.name for step in steps]
    assert faults(svg, states(steps)) == []


def test_a_flap_on_the_wrong_side_or_at_the_wrong_place_is_found():
    steps = CONSTRUCTIONS["mitre"].steps(SQUARE)
    pictures, svg = states(steps), played_corner(steps)
    flap = svg.find("g[@class='flap']")
    under = deepcopy(svg)
    parts = under.find("g[@class='flap']")
    parts[:] = [parts[1], parts[2], parts[0]]
    assert faults(under, pictures) == ["First turn"]
    front, rear = flap[1], flap[2]
    front.set("class", "rear")
    rear.set("class", "front")
    assert "First turn" in faults(svg, pictures)


def test_all_is_played_that_moves_but_what_is_turned_out_or_wrapped():
    found = {
        (way, other.name): single_folds(one.stack, other.stack)
        for way, each in CONSTRUCTIONS.items()
        for one, other in pairwise(each.steps(SQUARE))
    }
    assert {name for (_, name), folds in found.items() if folds is None} < CANNOT
    assert sum(folds is None for folds in found.values()) == 5
    assert sum(bool(folds) for folds in found.values()) == 25


@pytest.mark.parametrize("way", CONSTRUCTIONS)
def test_a_step_whose_own_drawing_shows_how_it_lies_before_has_another_here(way):
    steps = CONSTRUCTIONS[way].steps(SQUARE)
    found = [step.get("data-name") for _, step in moves(played_corner(steps)) if "data-drawn" in step.attrib]
    assert found == [step.name for last, step in pairwise(steps) if action(last, step)]


@each_corner
def test_a_flap_folded_is_the_flap_turned_about_its_line(way, job):
    for one, other in pairwise(CONSTRUCTIONS[way].steps(job)):
        for fold in single_folds(one.stack, other.stack) or ():
            about = Isometry.folded_over(fold.line)
            turned = unary_union([Polygon(facet.moved(about).on_table) for facet in fold.front.layers])
            folded = unary_union([Polygon(facet.on_table) for facet in fold.rear.layers])
            assert turned.symmetric_difference(folded).area < 0.01
            assert all(fold.line.side(place) >= 0 for facet in fold.rear.layers for place in facet.on_table)


@pytest.mark.parametrize("way", CONSTRUCTIONS)
def test_the_player_waits_for_its_script_and_is_small(way):
    steps = calculator_named("corner-steps")
    reply = answer(steps, Asking({"way": way}))
    player = figure(steps, reply, CENTIMETRES).find("details[@class='played']")
    assert player.get("hidden") is not None
    slider = player.find(".//label/input")
    count = len(reply.drawn_from[0])
    assert (slider.get("type"), slider.get("min"), slider.get("max")) == ("range", "0", str(count - 1))
    assert player.find(".//button").text == "Play"
    svg = player.find(".//svg")
    assert len(svg.findall("g[@class='step']")) == count
    assert len(ET.tostring(svg)) < SMALL
