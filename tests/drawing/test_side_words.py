"""Words on the cloth of a corner stand on the side that they name, whole, and no line goes through them."""

import pytest
from shapely.geometry import LineString, Polygon, box
from shapely.ops import unary_union

from calculators.asking.answering import Asking, answer
from calculators.catalogue import calculator_named
from calculators.drawing import lines
from calculators.drawing.folding import READABLE, SMALL, box_of, corner_step_by_step, state_drawn
from calculators.drawing.folding_words import side_style
from calculators.trade.corners.constructions import CONSTRUCTIONS
from calculators.values.measure import CENTIMETRES
from tests.drawing.words import HIGH, width

JOBS = (
    {},
    {"hem_1": "3.4 cm", "hem_2": "2.1 cm", "turn": "7 mm"},
    {"hem_1": "1.2 cm", "hem_2": "1.2 cm", "angle": "120"},
)
CROSSED = (lines.STITCH, lines.PENCIL, lines.CUT, "dimension")
ROUNDED = 0.6  # [drawing units]


def steps_of(way, job):
    return answer(calculator_named("corner-steps"), Asking({**job, "way": way})).drawn_from[0]


def written(svg):
    """The words on the cloth, with the place that they take [drawing units]."""
    for node in svg.iter("text"):
        if "on-cloth" in node.get("class").split():
            x, y, letters = (float(node.get(name)) for name in ("x", "y", "font-size"))
            half, high = width(node.text) * letters / 2, HIGH * letters / 2
            yield node.text, box(x - half, y - high, x + half, y + high)


def faults(sheet, lay):
    """Which words do not stand on their side alone."""
    for words, place in written(sheet.svg):
        sides = [
            Polygon([sheet.at(corner) for corner in part])
            for facet, part in lay.seen
            if lines.WORDS[side_style(facet)].endswith(words)
        ]
        if not unary_union(sides).buffer(ROUNDED).covers(place):
            yield f"{words} beside it"
        for line in sheet.svg.iter("polyline"):
            if line.get("class").split()[0] in CROSSED:
                drawn = LineString([tuple(map(float, each.split(","))) for each in line.get("points").split()])
                if drawn.intersects(place):
                    yield f"{words} on a line"


@pytest.mark.parametrize("way", CONSTRUCTIONS)
def test_words_stand_on_their_side(way):
    found = 0
    for job in JOBS:
        steps = steps_of(way, job)
        whole = box_of([step.seen for step in steps])
        for step in steps:
            sheet, lay = state_drawn(step, frozenset(), whole, CENTIMETRES, is_small=True)
            assert list(faults(sheet, lay)) == [], step.name
            found += len(list(written(sheet.svg)))
    assert found


def test_words_elsewhere_are_found():
    steps = steps_of("binding", {})
    sheet, lay = state_drawn(steps[1], frozenset(), box_of([step.seen for step in steps]), CENTIMETRES)
    for node in sheet.svg.iter("text"):
        node.set("x", str(float(node.get("x")) - 90))
    assert list(faults(sheet, lay))


def test_words_can_be_read_where_the_drawing_is_small():
    for picture in corner_step_by_step(steps_of("mitre", {}), CENTIMETRES).pictures:
        for node in picture.svg.iter("text"):
            if picture.crop and "on-cloth" in node.get("class"):
                assert float(node.get("font-size")) * SMALL / picture.crop[2] >= READABLE - 0.1
