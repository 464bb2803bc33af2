"""Drawings are to scale: measured on the sheet, every line is where the numbers say."""

import math
import re
from dataclasses import replace
from fractions import Fraction as F
from pathlib import Path

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.articles.hemmed import hemmed_from_cut
from calculators.drawing import lines
from calculators.drawing.cloth import cloth_with_pieces
from calculators.drawing.corner import mitre_corner
from calculators.drawing.curtain import curtain_laid_flat
from calculators.drawing.picture import Sheet, fillings, thinned
from calculators.drawing.piece import hemmed_piece
from calculators.drawing.usable import cloth_in_hand
from calculators.trade.cloth import usable_cloth
from calculators.trade.corners.mitre_lines import CreasesMiss
from calculators.trade.corners.mitre_marks import mitre_marks
from calculators.trade.curtains import Drop, Hem, JoinedWidths
from calculators.trade.hems import Hems
from calculators.trade.pieces import pieces_from_cloth
from calculators.values.measure import CENTIMETRES, SIXTEENTHS

LINE = 0.11  # [drawing units] coordinates are rounded to a tenth


def polylines(picture, style):
    """Every line of a style as its points."""
    found = [node for node in picture.svg if node.tag == "polyline" and node.get("class") == style]
    return [[tuple(map(float, pair.split(","))) for pair in node.get("points").split()] for node in found]


def polygon(picture, style):
    (node,) = [node for node in picture.svg if node.tag == "polygon" and node.get("class") == style]
    return [tuple(map(float, pair.split(","))) for pair in node.get("points").split()]


def texts(picture):
    return [node.text for node in picture.svg.iter("text")]


@given(st.integers(200, 3000), st.integers(200, 6000), st.integers(60, 1000), st.integers(60, 1000))
def test_cuts_lie_at_the_marks(cloth_width, cloth_length, width, length):
    grid = pieces_from_cloth(F(cloth_width), F(cloth_length), F(width), F(length), True)
    assume(grid.count and cloth_length <= 6 * cloth_width)
    picture = cloth_with_pieces(grid, CENTIMETRES)
    (left, top), (right, _), (_, low), _ = polygon(picture, "cloth-right")
    scale = max(right - left, low - top) / max(
        cloth_length, cloth_width
    )  # measured on the longer side, for the sake of precision
    assert (right - left, low - top) == pytest.approx((cloth_length * scale, cloth_width * scale), abs=2 * LINE)
    upright = sorted(points[0][0] for points in polylines(picture, lines.CUT) if points[0][0] == points[1][0])
    level = sorted(points[0][1] for points in polylines(picture, lines.CUT) if points[0][1] == points[1][1])
    assert upright == pytest.approx([left + float(mark) * scale for mark in grid.marks_along], abs=2 * LINE)
    assert level == pytest.approx(
        [top + float(mark) * scale for mark in grid.marks_across if mark < cloth_width], abs=2 * LINE
    )


@given(
    st.fractions(min_value=5, max_value=60, max_denominator=8),
    st.fractions(min_value=5, max_value=60, max_denominator=8),
    st.integers(30, 150), st.fractions(min_value=1, max_value=4, max_denominator=8),
)  # fmt: skip
def test_a_corner_has_its_angle_its_marks_and_its_creases(hem_1, hem_2, angle, allowance):
    try:
        marks = mitre_marks(hem_1, hem_2, F(angle), F(3), allowance)
    except CreasesMiss:
        assume(False)
    assume(allowance < min(marks.to_line_1, marks.to_line_2))
    picture = mitre_corner(marks, SIXTEENTHS)
    ((end_1, corner, end_2),) = polylines(picture, lines.EDGE)
    ((mark_1, crossing, mark_2),) = polylines(picture, lines.STITCH)
    ((trim_1, *_, trim_2),) = polylines(picture, lines.CUT)
    scale = math.dist(mark_1, crossing) / float(marks.half_line)
    near = 4 * LINE
    assert math.dist(corner, mark_1) == pytest.approx(float(marks.mark_1) * scale, abs=near)
    assert math.dist(corner, mark_2) == pytest.approx(float(marks.mark_2) * scale, abs=near)
    assert math.dist(corner, trim_1) == pytest.approx(marks.trim_1 * scale, abs=near)
    assert math.dist(corner, trim_2) == pytest.approx(marks.trim_2 * scale, abs=near)
    way_1, way_2 = (math.atan2(corner[1] - end[1], end[0] - corner[0]) for end in (end_1, end_2))
    assert math.degrees(way_2 - way_1) == pytest.approx(angle, abs=1)
    for fold in polylines(picture, lines.FOLD):
        assert min(math.dist(point, crossing) for point in fold) <= near


@given(
    st.integers(150, 2000),
    st.integers(150, 2000),
    st.integers(0, 30),
    st.integers(0, 30),
    st.integers(0, 30),
    st.integers(0, 30),
    st.integers(0, 10),
)
def test_a_hemmed_piece_folds_where_its_hems_say(width, length, top, bottom, left, right, turn):
    hems = Hems(F(turn), F(top), F(bottom), F(left), F(right))
    piece = hemmed_from_cut(F(width), F(length), hems)
    picture = hemmed_piece(piece, CENTIMETRES)
    (cut,) = polylines(picture, lines.CUT)
    if width >= length:  # the longer side tells the scale the better, since places are written to a tenth of a unit
        scale = (max(x for x, _ in cut) - min(x for x, _ in cut)) / width
    else:
        scale = (max(y for _, y in cut) - min(y for _, y in cut)) / length
    finished = polylines(picture, lines.FOLD)[-1]
    assert max(x for x, _ in finished) - min(x for x, _ in finished) == pytest.approx(
        float(piece.finished_width) * scale, abs=2 * LINE
    )
    assert max(y for _, y in finished) - min(y for _, y in finished) == pytest.approx(
        float(piece.finished_length) * scale, abs=2 * LINE
    )
    assert min(x for x, _ in finished) - min(x for x, _ in cut) == pytest.approx(
        float(hems.taken_up(F(left))) * scale, abs=2 * LINE
    )


@given(
    st.integers(1, 24),
    st.integers(300, 2000),
    st.integers(0, 20),
    st.integers(0, 40),
    st.integers(110, 4000),
    st.integers(0, 100),
    st.sampled_from([0, 640]),
)
def test_a_curtain_is_joined_and_folded_where_the_numbers_say(halves, cloth, seam, depth, finished, heading, repeat):
    widths = JoinedWidths(F(halves, 2), F(cloth), F(seam), Hem(F(depth), F(depth // 2)))
    drop = Drop(F(finished), F(heading), Hem(F(100), F(100)), F(0), F(repeat))
    assume(widths.finished > 0)
    picture = curtain_laid_flat((widths, drop), CENTIMETRES)
    drawn = min(widths.cut, 3 * drop.cut)
    (*across, whole) = polylines(picture, lines.CUT)
    left, low = min(x for x, _ in whole), max(y for _, y in whole)
    wide, high = max(x for x, _ in whole) - left, low - min(y for _, y in whole)
    scale = max(wide, high) / float(max(drawn, drop.cut))
    assert (wide, high) == pytest.approx((float(drawn) * scale, float(drop.cut) * scale), abs=3 * LINE)
    assert (
        ("Not all of its widths" in picture.caption)
        == bool(polylines(picture, lines.BREAK))
        == (len(whole) == 4)
        == (drawn < widths.cut)
    )
    assert len(across) == (drop.cut > drop.needed)
    for line in across:
        assert [low - y for _, y in line] == pytest.approx([float(drop.needed) * scale] * 2, abs=3 * LINE)
    joins = [points[0][0] - left for points in polylines(picture, lines.STITCH)]
    assert joins == pytest.approx([float(at) * scale for at in widths.places_of_joins if at < drawn], abs=3 * LINE)
    folds = polylines(picture, lines.FOLD)
    upright = sorted(points[0][0] - left for points in folds if points[0][0] == points[1][0])
    level = sorted(low - points[0][1] for points in folds if points[0][0] != points[1][0])
    turns = [at for at in sorted({depth // 2, depth + depth // 2}) if at] if depth else []
    assert upright == pytest.approx(
        sorted(float(place) * scale for at in turns for place in (at, widths.cut - at) if place < drawn), abs=3 * LINE
    )
    assert level == pytest.approx(
        [place * scale for place in (100, 200, *([float(drop.needed) - heading] if heading else []))], abs=3 * LINE
    )


PICTURES = {
    "usable": lambda ruler: cloth_in_hand(usable_cloth(1, F(3200), F(0), F(1500), F(15), F(10), F(20)), ruler),
    "cloth": lambda ruler: cloth_with_pieces(pieces_from_cloth(F(1100), F(2500), F(360), F(360), False), ruler),
    "long cloth": lambda ruler: cloth_with_pieces(pieces_from_cloth(F(300), F(9000), F(140), F(360), False), ruler),
    "many pieces": lambda ruler: cloth_with_pieces(pieces_from_cloth(F(1500), F(3000), F(30), F(30), False), ruler),
    "corner": lambda ruler: mitre_corner(mitre_marks(F(20), F(30), F(90), F(10), F(6)), ruler),
    "open corner": lambda ruler: mitre_corner(mitre_marks(F(20), F(20), F(135), F(10), F(2)), ruler),
    "curtain": lambda ruler: curtain_laid_flat(
        (
            JoinedWidths(F(5, 2), F(1470), F(6), Hem(F(20), F(20))),
            Drop(F(2200), F(50), Hem(F(100), F(100)), F(-5), F(640)),
        ),
        ruler,
    ),
    "piece": lambda ruler: hemmed_piece(
        hemmed_from_cut(F(360), F(360), Hems(F(10), F(25), F(25), F(25), F(25))), ruler
    ),
}
each_picture = pytest.mark.parametrize("name", PICTURES)
each_ruler = pytest.mark.parametrize("ruler", [CENTIMETRES, SIXTEENTHS], ids=lambda ruler: ruler.unit)


@each_picture
@each_ruler
def test_says_in_words_what_it_shows(name, ruler):
    picture = PICTURES[name](ruler)
    assert picture.svg.get("role") == "img"
    assert picture.svg.get("aria-label") == f"{picture.title}. {picture.description}"
    assert f" {ruler.unit}" in picture.description and picture.description.endswith(".")


@each_picture
@each_ruler
def test_every_line_style_it_uses_is_named_once_on_its_line_or_in_its_key(name, ruler):
    picture = PICTURES[name](ruler)
    used = {node.get("class") for node in picture.svg.iter() if node.get("class") in lines.WORDS}
    on_lines = [node.text for node in picture.svg.iter("text") if "on-line" in node.get("class")]
    keyed = [node.text for node in picture.key.iter("text")]
    assert used
    for style, words in lines.WORDS.items():
        bare = words.removeprefix("✂ ")
        assert (bare in on_lines) + keyed.count(words) == (style in used), style


@each_picture
@each_ruler
def test_every_filling_it_points_to_is_there_and_ids_are_nobody_s_but_the_page_s(name, ruler):
    picture = PICTURES[name](ruler)
    made = [node.get("id") for node in fillings().iter("pattern")]
    nodes = [*picture.svg.iter(), *picture.key.iter()]
    wanted = {match for node in nodes for match in re.findall(r"url\(#(.*?)\)", node.get("fill", ""))}
    assert wanted <= set(made) and len(set(made)) == len(made)
    assert not any(node.get("id") for node in picture.svg.iter())


def test_a_cloth_says_where_its_drawing_stops():
    assert any("drawn to 180 cm" in text for text in texts(PICTURES["long cloth"](CENTIMETRES)) if text)


def test_every_piece_is_numbered_where_there_is_room():
    numbers = [text for text in texts(PICTURES["cloth"](CENTIMETRES)) if text and text.isdigit()]
    assert {str(number) for number in range(1, 19)} <= set(numbers)


@given(st.lists(st.integers(0, 3000), max_size=60, unique=True).map(sorted), st.floats(0.05, 2), st.integers(10, 60))
def test_labels_that_are_kept_have_room_and_the_last_is_kept(places, scale, room):
    kept = thinned([F(place) for place in places], scale, room)
    assert kept == sorted(set(kept))
    assert all((places[after] - places[before]) * scale >= room - 1e-9 for before, after in zip(kept, kept[1:]))
    assert (not places and not kept) or kept[-1] == len(places) - 1


def test_a_place_is_put_to_scale_and_up_is_up():
    up, down = (Sheet((0, 0, 100, 50), margins=(10, 10, 10, 10), down=down) for down in (False, True))
    assert up.scale == down.scale == 3.4
    assert up.at((0, 0)) == (10, 10 + 50 * 3.4) and down.at((0, 0)) == (10, 10)
    assert up.at((100, 50)) == (350, 10)


@pytest.mark.parametrize("turn", [3, 10, 20])
@pytest.mark.parametrize("angle", [60, 90, 135])
def test_a_turn_folded_in_shows_its_right_side_as_far_as_its_raw_edge(turn, angle):
    """Between the folded edge and the raw edge lies the right side, drawn plain over the weave of the wrong side."""
    picture = mitre_corner(mitre_marks(F(20), F(25), F(angle), F(turn), F(4)), CENTIMETRES)
    areas = [node for node in picture.svg if node.tag == "polygon"]
    assert [node.get("class") for node in areas] == [lines.CLOTH_WRONG, lines.CLOTH_RIGHT] and areas[1].get(
        "fill"
    ) is None
    strip = polygon(picture, lines.CLOTH_RIGHT)
    ((end_1, corner, end_2),) = polylines(picture, lines.EDGE)
    (raw,) = polylines(picture, lines.RAW_EDGE)
    assert math.dist(strip[0], corner) < LINE and math.dist(strip[-1], end_2) < LINE
    assert all(min(math.dist(place, other) for other in strip) < 4 * LINE for place in (*raw, corner, end_1, end_2))
    scale = math.dist(polylines(picture, lines.STITCH)[0][0], corner) / float(
        mitre_marks(F(20), F(25), F(angle), F(turn), F(4)).mark_1
    )
    assert corner[1] - raw[0][1] == pytest.approx(turn * scale, abs=4 * LINE)
    assert "right side up" in picture.description and "right side" in [node.text for node in picture.key.iter("text")]


def test_without_a_turn_there_is_no_strip_and_no_raw_edge():
    picture = mitre_corner(mitre_marks(F(20), F(25), F(90), F(0), F(4)), CENTIMETRES)
    assert not {lines.CLOTH_RIGHT, lines.RAW_EDGE} & {node.get("class") for node in picture.svg}


def deep(picture, style):
    """Every line of a style, in the enlarged corner where there is one."""
    inside = next((node for node in picture.svg if node.get("class") == "enlarged"), None)
    found = [
        node
        for node in (picture.svg if inside is None else inside)
        if node.tag == "polyline" and node.get("class") == style
    ]
    return [[tuple(map(float, pair.split(","))) for pair in node.get("points").split()] for node in found]


@given(
    st.integers(200, 3000),
    st.integers(200, 3000),
    st.integers(4, 40),
    st.integers(0, 20),
    st.fractions(min_value=1, max_value=4, max_denominator=2),
)
def test_stitches_run_at_their_distance_outside_the_inner_folded_edge(width, length, depth, turn, edge_stitch):
    """On any piece, a tablecloth too: every line of a hem has its place, and no two lie on each other."""
    assume(turn <= depth and 2 * (turn + depth) + 2 * depth < min(width, length) and (turn == 0 or turn >= 3))
    piece = replace(hemmed_from_cut(F(width), F(length), Hems(F(turn), *[F(depth)] * 4)), edge_stitch=edge_stitch)
    picture = hemmed_piece(piece, CENTIMETRES)
    left = min(x for points in deep(picture, lines.CUT) for x, _ in points)
    lands, stitched = (
        min(x for points in deep(picture, style) for x, _ in points if points[0][0] == points[1][0] or len(points) > 2)
        - left
        for style in (lines.LANDS, lines.STITCH)
    )
    inset = turn + 2 * depth
    scale = lands / inset
    assert stitched == pytest.approx((inset - float(edge_stitch)) * scale, abs=3 * LINE)
    assert depth * scale >= 11 - LINE
    folds = {round(points[0][0] - left, 1) for points in deep(picture, lines.FOLD) if points[0][0] == points[1][0]}
    assert any(abs(fold - (turn + depth) * scale) < 3 * LINE for fold in folds) or any(
        len(points) > 2 for points in deep(picture, lines.FOLD)
    )
    said = [text for text in texts(picture) if text and text[0] in "cf" and text[-1] == "m"]
    assert sorted(text.split()[0] for text in said) == ["cut", "cut", "finished", "finished"]


def test_a_tablecloth_has_one_corner_enlarged_and_a_napkin_shows_its_hems_as_they_are():
    hems = Hems(F(5), F(25), F(25), F(25), F(25))
    assert "one corner, enlarged" in texts(hemmed_piece(hemmed_from_cut(F(2400), F(3000), hems), CENTIMETRES))
    assert "one corner, enlarged" not in texts(hemmed_piece(hemmed_from_cut(F(360), F(360), hems), CENTIMETRES))


def test_a_cut_is_more_than_half_as_heavy_again_as_an_edge_and_solid():
    css = (Path(__file__).parents[2] / "docs/assets/stylesheets/drawing.css").read_text()
    rules = {
        style: re.search(rf"\.to-scale \.{style} \{{(.*?)\}}", css, re.DOTALL)[1] for style in (lines.EDGE, lines.CUT)
    }
    width = {style: float(re.search(r"stroke-width: ([\d.]+)", rule)[1]) for style, rule in rules.items()}
    assert (
        width[lines.EDGE] == 1.5 and width[lines.CUT] >= 2 * width[lines.EDGE] and "dasharray" not in rules[lines.CUT]
    )


@pytest.mark.parametrize("name", ["corner", "open corner", "piece", "curtain", "usable"])
def test_a_cut_bears_its_word(name):
    words = [text for text in texts(PICTURES[name](CENTIMETRES)) if text and "✂" not in text]
    assert any(text == "cut" or text.startswith("cut ") for text in words)
