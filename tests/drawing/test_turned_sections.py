"""A step that turns the whole work over shows the sign for it, beside cloth and words."""

import re
from fractions import Fraction

import pytest
from shapely.geometry import LineString
from shapely.ops import unary_union

from calculators.drawing.section import edge_step_by_step
from calculators.trade.sections.edge import EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.values.measure import CENTIMETRES
from tests.drawing.test_words_apart import OF_A_STEP
from tests.drawing.words import words

MEASURES = (
    EdgeMeasures(Fraction(10), Fraction(40), Fraction(2), Fraction(12)),
    EdgeMeasures(Fraction(4), Fraction(9), Fraction(1), Fraction(8)),
)
SEEN_FROM = re.compile(r"seen from|open, wrong side up")
HALF = 4.75  # [drawing units] of a layer

each_job = pytest.mark.parametrize("with_", MEASURES, ids=["usual", "small"])


def drawn(name, with_):
    return edge_step_by_step(EDGES[name].steps(with_), CENTIMETRES).pictures


def lines(picture, style):
    return [
        LineString([tuple(map(float, place.split(","))) for place in each.get("points").split()])
        for each in picture.svg.iter()
        if (each.get("class") or "").startswith(style)
    ]


def faults(picture):
    """What the sign lies on."""
    sign = unary_union(lines(picture, "sign")).envelope
    cloth = [each.buffer(HALF) for each in lines(picture, "layer-edge")]
    written = [place for _, place in words(picture.svg, OF_A_STEP)]
    return [each for each in (*cloth, *written) if sign.intersects(each)]


@pytest.mark.parametrize("name", EDGES)
@each_job
def test_a_step_that_says_so_shows_the_sign(name, with_):
    told = [step.name for step in EDGES[name].steps(with_)[1:] if SEEN_FROM.search(step.do)]
    assert [each.title for each in drawn(name, with_) if lines(each, "sign")] == told


@each_job
def test_the_sign_lies_on_no_word_and_no_cloth(with_):
    turned = [each for name in EDGES for each in drawn(name, with_) if lines(each, "sign")]
    assert len(turned) == 4
    assert [each.title for each in turned if faults(each)] == []
    assert all("turned over" in each.description for each in turned)


def test_a_sign_on_the_cloth_is_found():
    picture = next(each for each in drawn("bound", MEASURES[0]) if lines(each, "sign"))
    for each in picture.svg.iter():
        if (each.get("class") or "").startswith("sign"):
            places = (place.split(",") for place in each.get("points").split())
            each.set("points", " ".join(f"{float(x) + 60},{y}" for x, y in places))
    assert faults(picture)
