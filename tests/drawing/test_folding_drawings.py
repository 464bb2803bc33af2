"""Drawings of folded corners: to scale, small, said in words, every line style in the key."""

import re
import xml.etree.ElementTree as ET
from collections import Counter
from itertools import pairwise, product
from pathlib import Path

import pytest
from shapely import unary_union
from shapely.geometry import Polygon

from calculators.drawing import lines
from calculators.drawing.action_marks import action
from calculators.drawing.bulk import bulk_map
from calculators.drawing.folding import AS_BEFORE, corner_step, corner_step_by_step, instruction, side_style
from calculators.drawing.picture import fillings
from calculators.trade.corners.comparison import VARIANTS, compared
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.corners.convex import area
from calculators.trade.corners.layers import seen_from_above
from calculators.trade.corners.plane import unit
from calculators.values.measure import CENTIMETRES, SIXTEENTHS

SQUARE = Measures(20.0, 20.0, 90.0, 8.0)
UNEQUAL = Measures(30.0, 15.0, 105.0, 8.0)
SMALL = 15_000  # [bytes]

each_way = pytest.mark.parametrize("way", CONSTRUCTIONS)
each_job = pytest.mark.parametrize("job", [SQUARE, UNEQUAL], ids=["square", "unequal"])
each_ruler = pytest.mark.parametrize("ruler", [CENTIMETRES, SIXTEENTHS], ids=lambda ruler: ruler.unit)


def styles(picture):
    found = {node.get("class", "").split(" ")[0] for node in picture.svg.iter()}
    return found & set(lines.WORDS)


def areas_seen(svg):
    """What is left to be seen of each style's areas once all are painted, by shapely [square drawing units]."""
    seen = {}
    for path in svg.iter("path"):
        if not path.get("fill-rule"):
            continue
        rings = [
            [tuple(map(float, pair.split(","))) for pair in ring.removeprefix("M").split()]
            for ring in path.get("d").rstrip("Z").split("Z")
        ]
        shape = unary_union([Polygon(ring) for ring in rings])
        seen = {style: each.difference(shape) for style, each in seen.items()}
        seen[path.get("class")] = seen.get(path.get("class"), Polygon()).union(shape)
    return {style: each.area for style, each in seen.items() if each.area > 30}


@each_way
@each_job
@each_ruler
def test_every_step_is_small_and_said_in_words(way, job, ruler):
    steps = CONSTRUCTIONS[way].steps(job)
    series = corner_step_by_step(steps, ruler)
    assert len(series.pictures) == len(steps)
    for step, picture in zip(steps, series.pictures):
        assert len(ET.tostring(picture.svg)) < SMALL
        assert picture.svg.get("aria-label") == f"{step.name}. {picture.description}"
        assert picture.caption == instruction(step, ruler) and "{" not in picture.caption
        assert not re.search(r"\d cm" if ruler.unit == "in" else r"\d in\b", picture.caption)


@each_way
def test_one_key_names_every_style_of_the_steps(way):
    series = corner_step_by_step(CONSTRUCTIONS[way].steps(SQUARE), CENTIMETRES)
    used = set().union(*(styles(picture) for picture in series.pictures))
    assert styles(series.key) == used
    assert {node.text for node in series.key.svg.iter("text")} == {lines.WORDS[style] for style in used}


@each_way
def test_a_step_alone_has_its_own_key(way):
    steps = CONSTRUCTIONS[way].steps(SQUARE)
    picture = corner_step(steps, len(steps), CENTIMETRES)
    keyed = {node.text for node in picture.key.iter("text")}
    on_lines = {node.text for node in picture.svg.iter("text") if "on-line" in node.get("class")}
    assert keyed == {
        words for style in styles(picture) if (words := lines.WORDS[style]).removeprefix("✂ ") not in on_lines
    }
    assert len(ET.tostring(picture.svg)) < SMALL


@each_way
def test_every_filling_pointed_to_is_there(way):
    made = {node.get("id") for node in fillings().iter("pattern")}
    pictures = corner_step_by_step(CONSTRUCTIONS[way].steps(SQUARE), CENTIMETRES).pictures
    wanted = {
        match
        for each in pictures
        for node in each.svg.iter()
        for match in re.findall(r"url\(#(.*?)\)", node.get("fill", ""))
    }
    assert wanted and wanted <= made


@each_way
@each_job
def test_what_is_painted_is_what_is_seen(way, job):
    """In every step the painted areas of each side are, at scale, what the engine says can be seen of it: before it is
    folded, where that is all there is to the step."""
    steps = CONSTRUCTIONS[way].steps(job)
    shown = [steps[0], *(last if action(last, step) else step for last, step in pairwise(steps))]
    for step, picture in zip(shown, corner_step_by_step(steps, CENTIMETRES).pictures):
        scale = scale_of(picture, steps)
        stack = step.seen.turned_over() if step.from_below else step.seen
        expected = Counter()
        for seen in seen_from_above(stack):
            expected[side_style(seen.facet)] += sum(area(part) for part in seen.parts) * scale**2
        painted = areas_seen(picture.svg)
        assert painted == pytest.approx(
            {style: each for style, each in expected.items() if style in painted}, rel=0.05, abs=40
        ), step.name
        assert all(each < 80 for style, each in expected.items() if style not in painted), step.name


def scale_of(picture, steps):
    """Drawing units in a millimetre: all steps share one frame between the margins."""
    xs = [x for step in steps for facet in step.seen.layers for x, _ in facet.on_table]
    ys = [y for step in steps for facet in step.seen.layers for _, y in facet.on_table]
    return min((360 - 82) / (max(xs) - min(xs)), 236 / (max(ys) - min(ys)))


def test_marks_are_drawn_where_they_lie():
    """The pencil line of a square corner: from one mark to the other, each 40 mm from the folded corner."""
    steps = CONSTRUCTIONS["mitre"].steps(SQUARE)
    number = next(n for n, step in enumerate(steps) if step.name == "Mark")
    picture = corner_step_by_step(steps, CENTIMETRES).pictures[number]
    scale = scale_of(picture, steps)
    places = [
        tuple(map(float, pair.split(",")))
        for node in picture.svg.iter("polyline")
        if node.get("class") == lines.PENCIL
        for pair in node.get("points").split()
    ]
    assert max(x for x, _ in places) - min(x for x, _ in places) == pytest.approx(40 * scale, abs=0.3)
    assert max(y for _, y in places) - min(y for _, y in places) == pytest.approx(40 * scale, abs=0.3)
    texts = {node.text for node in picture.svg.iter("text")}
    assert "4 cm" in texts and "about 2.8 cm" in texts


def test_a_cut_is_drawn_once_and_pencil_goes_under_stitches():
    steps = CONSTRUCTIONS["mitre"].steps(SQUARE)
    drawn = [styles(picture) for picture in corner_step_by_step(steps, CENTIMETRES).pictures]
    names = [step.name for step in steps]
    assert [name for name, used in zip(names, drawn) if lines.CUT in used] == ["Trim"]
    assert (
        lines.PENCIL in drawn[names.index("Right sides together")] and lines.PENCIL not in drawn[names.index("Stitch")]
    )
    assert lines.STITCH not in drawn[names.index("Turn out")]  # the seam lies inside the fold


def test_the_finished_corner_shows_only_its_right_side_from_the_front():
    steps = CONSTRUCTIONS["mitre"].steps(SQUARE)
    last = corner_step_by_step(steps, CENTIMETRES).pictures[-1]
    assert lines.CLOTH_RIGHT in styles(last) and lines.CLOTH_WRONG not in styles(last)
    assert all(seen.facet.right_side_up for seen in seen_from_above(steps[-1].stack.turned_over()))


@pytest.mark.parametrize("name", VARIANTS)
def test_bulk_maps_name_every_number_of_layers_that_has_room(name):
    ways = list(compared(SQUARE))
    picture = bulk_map(ways, name)
    found = next(way.bulk for way in ways if way.name == name)
    written = [int(node.text) for node in picture.svg.iter("text") if node.text.isdigit()]
    assert set(written) <= set(found.shapes)
    assert found.thickest in written or found.thickest_area < 40
    assert str(found.thickest) in picture.description
    assert len(ET.tostring(picture.svg)) < SMALL


def shades(picture):
    """Number of layers → tone, by the numbers that stand in the map."""
    paths = [node for node in picture.svg.iter("path") if node.get("class") == "shade"]
    return [float(node.get("fill-opacity")) for node in paths]


def test_a_number_of_layers_has_one_shade_in_every_map_and_more_layers_are_darker():
    seen = {}
    for job in (SQUARE, UNEQUAL):
        ways = [way for way in compared(job) if way.bulk]
        for way in ways:
            for count, tone in zip(way.bulk.shapes, shades(bulk_map(ways, way.name)), strict=True):
                assert seen.setdefault(count, tone) == tone
    tones = [tone for _, tone in sorted(seen.items())]
    assert len(tones) > 8 and tones == sorted(set(tones))


@pytest.mark.parametrize("name", VARIANTS)
@each_job
def test_the_thickest_place_bears_its_number_and_a_heavy_outline(name, job):
    ways = list(compared(job))
    way = next(each for each in ways if each.name == name)
    if way.bulk is None:
        pytest.skip("this corner cannot be made that way")
    picture = bulk_map(ways, name)
    assert str(way.bulk.thickest) in [node.text for node in picture.svg.iter("text")]
    outlined = [node for node in picture.svg.iter("polyline") if node.get("class") == lines.THICKEST]
    assert len(outlined) == len(way.bulk.shapes[way.bulk.thickest])
    assert "darkest" not in picture.description


def test_more_layers_are_darker_in_both_schemes():
    """The tone is laid over one layer's colour: it must be the darker of the two, also where the ink is light."""
    palette = (Path(__file__).parents[2] / "docs/assets/stylesheets/palette.css").read_text()
    found = re.findall(r"--one-layer: #(\w{6});\s*--layers: #(\w{6});", palette)
    assert len(found) == 2 and all(int(tone[:2], 16) + 60 < int(ground[:2], 16) for ground, tone in found)


@pytest.mark.parametrize(
    ("way", "angle"),
    [case for case in product(CONSTRUCTIONS, (60.0, 75.0, 90.0, 120.0)) if case[0] != "binding" or case[1] >= 90],
)
def test_a_point_is_eased_square_only_where_it_is_square(way, angle):
    steps = CONSTRUCTIONS[way].steps(Measures(20.0, 20.0, angle, 4.0, 3.0))
    square = [step for step in steps if re.search(r"point square|square corner", step.instruction)]
    assert steps and (not square or angle == 90)


def test_a_self_bound_edge_is_marked_and_cut_before_anything_is_folded():
    """Its marks are measured on the backing laid flat, from the raw corner, and every fold comes after the cut."""
    steps = CONSTRUCTIONS["self-bound"].steps(SQUARE)
    names = [step.name for step in steps]
    assert names[:3] == ["Lay together", "Mark", "Cut the corner"]
    marking = steps[1]
    backing = [facet for facet in marking.stack.layers if facet.cloth.name == "backing"]
    assert len(backing) == 1 and not backing[0].lay.turned_over
    raw = min(backing[0].on_table)
    assert marking.measured[0].start == pytest.approx(raw) and marking.measured[1].start == pytest.approx(raw)
    picture = corner_step_by_step(steps, CENTIMETRES).pictures[1]
    assert lines.PENCIL in styles(picture) and "5.6 cm" in " ".join(node.text for node in picture.svg.iter("text"))


@each_way
@each_job
def test_every_fold_has_its_arrow_before_it_and_its_result_after_it(way, job):
    """One sign for each fold: across its line, over, under or opening, and one for all that is opened along an edge;
    none where something else is done."""
    steps = CONSTRUCTIONS[way].steps(job)
    pictures = corner_step_by_step(steps, CENTIMETRES).pictures
    for last, step, picture in zip(steps, steps[1:], pictures[1:]):
        folds = action(last, step)
        signs = [node.get("class") for node in picture.svg.iter() if node.get("class", "").startswith("sign")]
        heads = {"sign-filled": sum(fold.over and not fold.opens for fold in folds)}
        opened = [unit(fold.line.direction) for fold in folds if fold.opens]
        heads["sign-hollow"] = len({(round(float(x), 6) + 0.0, round(float(y), 6) + 0.0) for x, y in opened})
        turned = last.from_below != step.from_below
        assert signs.count("sign-filled") == heads["sign-filled"] + turned, step.name
        assert signs.count("sign-hollow") == heads["sign-hollow"], step.name
        assert picture.description.endswith(AS_BEFORE) == bool(folds)
    assert not action(steps[-2], steps[-1]), "the last drawing shows what is made"


def test_an_arrow_crosses_its_fold_the_way_the_flap_goes():
    """The first turn of a square corner: from the raw edge in, across the line of the turn."""
    steps = CONSTRUCTIONS["mitre"].steps(SQUARE)
    picture = corner_step_by_step(steps, CENTIMETRES).pictures[1]
    scale = scale_of(picture, steps)
    arcs = [
        [tuple(map(float, pair.split(","))) for pair in node.get("points").split()]
        for node in picture.svg.iter("polyline")
        if node.get("class") == "sign"
    ]
    raw = max(y for node in picture.svg.iter("polyline") if node.get("class") == lines.EDGE
              for _, y in (map(float, pair.split(",")) for pair in node.get("points").split()))  # fmt: skip
    (upright,) = [arc for arc in arcs if abs(arc[0][1] - arc[-1][1]) > 40]
    assert raw - 8 * scale < upright[0][1] < raw and upright[-1][1] < raw - 8 * scale


def test_what_is_opened_along_one_edge_has_one_arrow():
    """Turn and hem of both edges are opened flat: four folds, two arrows."""
    steps = CONSTRUCTIONS["folded-mitre"].steps(SQUARE)
    number = next(number for number, step in enumerate(steps) if step.name == "Open flat")
    assert len(action(steps[number - 1], steps[number])) == 4
    picture = corner_step_by_step(steps, CENTIMETRES).pictures[number]
    assert [node.get("class") for node in picture.svg.iter()].count("sign-hollow") == 2
