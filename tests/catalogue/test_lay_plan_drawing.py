"""A lay plan as it is drawn: pieces where they lie, marks that can be read, stretches that a screen can show."""

import re

import pytest
from shapely import unary_union
from shapely.geometry import box

from calculators.asking.answering import answer
from calculators.drawing import lines as line_styles
from calculators.drawing.lay_plan import bare, lay_plan, letter
from calculators.values.measure import CENTIMETRES
from tests.catalogue.lay_plans import LARGE, LAY, RUNNERS, of_washed_cloth


def test_a_piece_that_is_pointed_at_tells_where_its_edges_lie_on_the_ruler_in_hand():
    typed = {"cloths": "Linen | 92 cm | 46 cm", "pieces": "Napkin | 46 cm | 46 cm | 2", "end_loss": "0", "skew": "0"}
    asking = of_washed_cloth({**typed, "selvedge": "0"}, wanted_ruler="in")
    told = [
        node.get("data-words")
        for node in lay_plan(answer(LAY, asking).drawn_from, asking.ruler).svg.iter("g")
        if node.get("class") == "pointed-at"
    ]
    assert [words.replace("\u00a0", " ") for words in told] == [
        "A Napkin, strip 1: from the straight end 0 in to about 18 1/8 in, from the selvedge 0 in to about 18 1/8 in.",
        "A Napkin, strip 1: from the straight end 0 in to about 18 1/8 in, from the selvedge about 18 1/8 in to "
        "about 36 1/4 in.",
    ]  # 46 cm = 18.11 in and 92 cm = 36.22 in


def test_a_drawing_of_a_long_cloth_is_split_into_stretches_that_a_phone_can_show():
    reply = answer(LAY, of_washed_cloth({"cloths": "Linen | 150 cm | 30 m", "pieces": "Napkin | 46 cm | 46 cm | 180"}))
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    words = [node.text for node in svg.iter("text")]
    assert sum("from" in word and "on" in word for word in words) >= 3
    for size in "124":
        shown = [node.text for node in svg.iter("text") if size in node.get("data-at", "1 2 4")]
        assert shown.count("A Napkin") + shown.count("A") == 180


@pytest.mark.parametrize("length", [236, 240, 244, 248, 252])
def test_every_piece_says_which_it_is_where_its_name_only_just_has_room_or_only_just_has_none(length):
    pieces = "Napkin | 46 cm | 46 cm | 6; Runner | 45 cm | 140 cm | 2"
    reply = answer(LAY, of_washed_cloth({"cloths": f"Linen | 150 cm | {length} cm", "pieces": pieces}))
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    for size in "124":
        shown = [node.text for node in svg.iter("text") if size in node.get("data-at", "1 2 4")]
        on_cloth = [word for word in shown if word in ("A", "A Napkin")]
        assert len(on_cloth) >= 6, (size, shown)


@pytest.mark.parametrize("name", ["Linen", "White two-layer cotton, row 2"])
def test_the_name_of_a_cloth_takes_one_line_over_its_marks(name):
    """A second line would lie on the marks. The first stretch tells the grain and the unit, the others where they
    begin."""
    asking = of_washed_cloth(
        {"cloths": f"{name} | 132 cm | 4.6 m", "pieces": "Napkin | 46 cm | 46 cm | 18"}, wanted_ruler="in"
    )
    words = [node.text for node in lay_plan(answer(LAY, asking).drawn_from, asking.ruler).svg.iter("text")]
    named = [word for word in words if word.startswith(name[:5])]
    assert (
        named[0].endswith("; grain ↔; marks in inches")
        and all(word.endswith(" on") for word in named[1:])
        and len(named) >= 2
    )
    assert not {"grain ↔", "marks in inches"} & set(words)


@pytest.mark.parametrize("ruler", ["cm", "in"])
@pytest.mark.parametrize("size", [1, 2, 4])
@pytest.mark.parametrize("layout", ["svg", "wide"])
def test_no_two_marks_of_a_drawing_run_into_one_another(size, ruler, layout):
    asking = of_washed_cloth(LARGE, wanted_ruler=ruler)
    svg = getattr(lay_plan(answer(LAY, asking).drawn_from, asking.ruler), layout)
    lines: dict[str, list[tuple[float, float]]] = {}
    for node in svg.iter("text"):
        if (
            node.get("class") == "dimension-text"
            and str(size) in node.get("data-at", "1 2 4")
            and node.text[0].isdigit()
        ):
            wide, x = 6.2 * len(node.text), float(node.get("x")) * size
            share = {"start": 0, "middle": 0.5, "end": 1}[node.get("text-anchor")]
            lines.setdefault(node.get("y"), []).append((x - wide * share, x + wide * (1 - share)))
    assert len(lines) > 3
    for reach in lines.values():
        assert all(before[1] < after[0] for before, after in zip(sorted(reach), sorted(reach)[1:]))


def cloth_drawn(svg, number=0):
    """Left, top, right and lowest of a stretch of cloth as drawn."""
    found = [node for node in svg.iter("polygon") if node.get("class") == "cloth"][number]
    xs, ys = zip(*(map(float, pair.split(",")) for pair in found.get("points").split()))
    return min(xs), min(ys), max(xs), max(ys)


def stretches(svg):
    return 1 + sum("from" in node.text and node.text.endswith("on") for node in svg.iter("text"))


def test_a_screen_shows_a_long_cloth_in_fewer_stretches_and_as_many_pieces():
    picture = lay_plan(answer(LAY, of_washed_cloth(RUNNERS)).drawn_from, CENTIMETRES)
    assert (stretches(picture.svg), stretches(picture.wide)) == (2, 1)
    boxes = [
        node
        for node in picture.wide.iter("polyline")
        if node.get("class").startswith("cut") and len(node.get("points").split()) == 5
    ]
    places = sorted(tuple(map(float, node.get("points").split()[0].split(","))) for node in boxes)
    left, _, right, _ = cloth_drawn(picture.wide)
    assert right > 570
    scale = (right - left) / 6120
    wanted = [(left + 2040 * n * scale, 46 + 500 * m * scale) for n in range(3) for m in range(3)]
    assert [each for place in places for each in place] == pytest.approx(
        [each for place in wanted for each in place], abs=0.1
    )


def test_a_cloth_that_a_phone_shows_whole_is_not_drawn_twice():
    assert lay_plan(answer(LAY, of_washed_cloth({})).drawn_from, CENTIMETRES).wide is None


def test_pieces_are_drawn_where_they_lie():
    reply = answer(LAY, of_washed_cloth({"cloths": "Linen | 150 cm | 320 cm"}))
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    (lay,) = reply.drawn_from.lays
    left, top, right, _ = cloth_drawn(svg)
    assert right > 340
    scale = (right - left) / float(lay.length)
    boxes = [
        node
        for node in svg.iter("polyline")
        if node.get("class").startswith("cut") and len(node.get("points").split()) == 5
    ]
    drawn = [tuple(map(float, node.get("points").split()[0].split(","))) for node in boxes]
    assert len(drawn) == len(lay.placed)
    for (x, y), placed in zip(drawn, lay.placed):
        assert (x, y) == pytest.approx((left + float(placed.box.y) * scale, top + float(placed.box.x) * scale), abs=0.2)


MIXED = {
    "cloths": "Linen | 150 cm | 280 cm",
    "pieces": "Napkin | 46 cm | 46 cm | 4; Placemat | 35 cm | 48 cm | 4 | yes; Runner | 45 cm | 140 cm | 1",
}


def upright_boxes(svg, style):
    """The rectangles hatched in a style: left, top, right, lowest."""
    for path in svg.iter("path"):
        if path.get("class") == style:
            for left, top, right, low in re.findall(r"M([\d.]+) ([\d.]+)H([\d.]+)V([\d.]+)H", path.get("d")):
                yield tuple(map(float, (left, top, right, low)))


@pytest.mark.parametrize("strips", ["across", "along", "free"])
def test_a_hatch_means_a_kind_of_piece_and_has_no_other_sense(strips):
    """Every piece lies in the hatch of its kind, nothing else does, and the key names that kind as pieces and caption
    do."""
    reply = answer(LAY, of_washed_cloth({**MIXED, "strips": strips}))
    picture = lay_plan(reply.drawn_from, CENTIMETRES)
    (lay,) = reply.drawn_from.lays
    left, top, right, _ = cloth_drawn(picture.svg)
    scale = (right - left) / float(lay.length)
    hatches = {}
    for number, piece in enumerate(reply.drawn_from.pieces):
        drawn = unary_union([box(*each) for each in upright_boxes(picture.svg, line_styles.kind(number))])
        placed = [each.box for each in lay.placed if each.piece == number]
        wanted = unary_union(
            [
                box(
                    left + float(p.y) * scale,
                    top + float(p.x) * scale,
                    left + float(p.end) * scale,
                    top + float(p.right) * scale,
                )
                for p in placed
            ]
        )
        assert placed and drawn.symmetric_difference(wanted).area < 0.01 * wanted.area
        name = f"{letter(number)} {piece.name}"
        nodes = list(picture.key)
        (keyed,) = (at for at, node in enumerate(nodes) if node.text == name and node.get("class") == "keyed in-middle")
        assert nodes[keyed - 2].get("fill") == f"url(#filling-{line_styles.kind(number)})"
        assert name in picture.caption
        hatches[line_styles.KINDS[line_styles.kind(number)]] = name
        inside = [
            node.text
            for node in picture.svg.iter("text")
            if node.get("class") == "label in-middle" and node.text[0] == letter(number)
        ]
        assert set(inside) <= {name, letter(number)}
    assert len(hatches) == 3  # told apart by the hatch itself, not by its tint


def test_kinds_of_piece_differ_in_their_hatch_from_each_other_and_from_what_is_left_over():
    hatches = [*line_styles.KINDS.values(), *line_styles.HATCHES.values()]
    assert len(hatches) == len(set(hatches))


@pytest.mark.parametrize("strips", ["across", "along"])
def test_a_bar_counts_the_strips_as_the_marking_table_does(strips):
    reply = answer(LAY, of_washed_cloth({**MIXED, "strips": strips}))
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    (lay,) = reply.drawn_from.lays
    left, top, right, low = cloth_drawn(svg)
    scale = (right - left) / float(lay.length)
    axis = 0 if lay.first_cut == "across" else 1
    begins = (left, top)[axis]
    numbers = [node for node in svg.iter("text") if node.get("class") == "label in-middle" and node.text.isdigit()]
    assert [int(node.text) for node in numbers] == sorted({placed.strip for placed in lay.placed}) and len(numbers) > 1
    for node in numbers:
        x, y = float(node.get("x")), float(node.get("y"))
        assert (y > low) if axis == 0 else (x > right)
        of_strip = [placed.box for placed in lay.placed if placed.strip == int(node.text)]
        from_, to = (
            (min(box.y for box in of_strip), max(box.end for box in of_strip)),
            (min(box.x for box in of_strip), max(box.right for box in of_strip)),
        )[axis]
        assert begins + float(from_) * scale < (x, y)[axis] < begins + float(to) * scale


@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_marks_are_read_from_the_long_edge_too(ruler):
    asking = of_washed_cloth(MIXED, wanted_ruler=ruler)
    reply = answer(LAY, asking)
    svg = lay_plan(reply.drawn_from, asking.ruler).svg
    (lay,) = reply.drawn_from.lays
    left, top, right, _ = cloth_drawn(svg)
    scale = (right - left) / float(lay.length)
    beside = [
        node
        for node in svg.iter("text")
        if node.get("class") == "dimension-text in-middle" and float(node.get("x")) < left
    ]
    first = [placed.box for placed in lay.placed if placed.strip == 1 and placed.box.y == 0]
    expected = {bare(box.right, asking.ruler): top + float(box.right) * scale for box in first}
    seen = {node.text: float(node.get("y")) for node in beside}
    assert seen == {text: pytest.approx(at, abs=0.2) for text, at in expected.items()}
    other = {
        bare(placed.box.right, asking.ruler)
        for placed in lay.placed
        if placed.strip == 3 and placed.box.right < lay.cloth.width
    }
    within = {node.text for node in svg.iter("text") if node.get("class") == "dimension-text in-middle"}
    assert other - set(expected) <= within


def test_the_lines_of_a_repeat_are_drawn_where_it_starts():
    typed = {
        "pieces": "Napkin | 46 cm | 46 cm | 6 | no | matched",
        "cloths": "Damask | 150 cm | 260 cm",
        "repeats": "64 cm | 50 cm | 5 cm | 0 cm | Damask",
    }
    reply = answer(LAY, of_washed_cloth(typed))
    picture = lay_plan(reply.drawn_from, CENTIMETRES)
    svg = picture.svg
    (lay,) = reply.drawn_from.lays
    left, top, right, _ = cloth_drawn(svg)
    scale = (right - left) / float(lay.length)
    repeat = lay.cloth.repeat
    drawn = [
        [tuple(map(float, pair.split(","))) for pair in node.get("points").split()]
        for node in svg.iter("polyline")
        if node.get("class") == "repeat"
    ]
    upright = [points[0][0] for points in drawn if points[0][0] == points[1][0]]
    level = [points[0][1] for points in drawn if points[0][1] == points[1][1]]
    along = [at for n in range(9) if (at := repeat.first_along + n * repeat.along) < lay.length]
    across = [at for n in range(9) if (at := repeat.first_across + n * repeat.across) < lay.cloth.width]
    assert upright == pytest.approx([left + float(at) * scale for at in along], abs=0.2)
    assert level == pytest.approx([top + float(at) * scale for at in across], abs=0.2)
    for placed in lay.placed:
        assert any(abs(float(placed.box.y - at)) < 1e-6 for at in along) and any(
            abs(float(placed.box.x - at)) < 1e-6 for at in across
        )
    assert lines_in_key(picture.key, "repeat starts") and not lines_in_key(
        lay_plan(answer(LAY, of_washed_cloth(MIXED)).drawn_from, CENTIMETRES).key, "repeat starts"
    )


def lines_in_key(svg, words):
    return [node for node in svg.iter("text") if node.text == words]


def test_a_repeat_too_fine_to_be_seen_is_not_drawn():
    """60 m of cloth with a pattern of a tenth of a millimetre would be 600,000 lines."""
    typed = {"cloths": "Ticking | 150 cm | 60 m", "pieces": "Runner | 45 cm | 150 cm | 2 | no | matched"}
    fine, coarse = (
        lay_plan(
            answer(LAY, of_washed_cloth({**typed, "repeats": f"{each} |  |  |  | Ticking"})).drawn_from, CENTIMETRES
        )
        for each in ("0.1 mm", "30 cm")
    )
    drawn = [sum(node.get("class") == "repeat" for node in each.svg.iter("polyline")) for each in (fine, coarse)]
    assert drawn[0] == 0 and drawn[1] > 100
