"""Drawings of stitches, signs, work at the table and faults: what lies over what, how much is written, and that a sign
and a fault are seen for what they are."""

import xml.etree.ElementTree as ET
from collections.abc import Iterator
from fractions import Fraction as F
from math import dist

import pytest

from calculators.asking.answering import Asking, answer
from calculators.catalogue import catalogue
from calculators.drawing import lines
from calculators.drawing.at_the_table import WORKS
from calculators.drawing.faults import FAULTS, halves
from calculators.drawing.machine_row import ROWS
from calculators.drawing.picture import Picture
from calculators.drawing.signs import SIGNS, alone
from calculators.drawing.stitch import LABELS, stitch_on_cloth
from calculators.trade.stitches.hand import STITCHES
from calculators.values.measure import CENTIMETRES
from tests.pages.told_words import ROOT

WAYS = {"stitch-path": ("stitch", STITCHES), "machine-row": ("row", ROWS), "at-the-table": ("work", WORKS)}
PRESENTATION = {"stroke", "stroke-width", "stroke-dasharray", "style", "opacity", "color"}


def drawn() -> Iterator[tuple[str, Picture]]:
    for name, (field, ways) in WAYS.items():
        calculator = catalogue()[name]
        for way in ways:
            asking = Asking({field: way})
            assert calculator.drawing
            made = calculator.drawing(answer(calculator, asking).drawn_from, asking.ruler)
            assert isinstance(made, Picture)
            yield f"{name} {way}", made
    wash = catalogue()["wash-test"]
    assert wash.drawing
    yield "wash-test", wash.drawing(answer(wash, Asking({})).drawn_from, CENTIMETRES)
    yield from ((name, alone(name)) for name in SIGNS)
    yield from ((name, half) for name in FAULTS for half in halves(name))


def styles(svg: ET.Element) -> list[str]:
    return [each.get("class", "") for each in svg.iter() if each.tag in ("polyline", "polygon")]


def test_every_drawing_is_dressed_by_classes_tells_what_it_shows_and_has_few_labels():
    found = list(drawn())
    assert len(found) > 60
    for name, picture in found:
        assert picture.title and picture.description.endswith("."), name
        assert len(list(picture.svg.iter("text"))) <= LABELS, name
        for each in picture.svg.iter():
            assert not PRESENTATION & set(each.keys()), name
            assert each.get("fill", "url(").startswith("url("), name
        assert len(ET.tostring(picture.svg)) < 9_000, name


def test_every_style_has_its_look():
    dressed = "".join(file.read_text() for file in (ROOT / "docs/assets/stylesheets").glob("*.css"))
    for name, picture in drawn():
        for classes in styles(picture.svg):
            assert any(f".{style}" in dressed or f".{style}-ground" in dressed for style in classes.split()), name


@pytest.mark.parametrize("name", STITCHES)
def test_later_thread_lies_over_earlier_and_all_of_it_over_what_is_under_the_cloth(name: str):
    stitch = STITCHES[name]
    found = styles(stitch_on_cloth(stitch, F(6), CENTIMETRES).svg)
    threads = [each for each in found if each.startswith("thread")]
    over = threads.count(lines.THREAD_OVER)
    under = threads.count(lines.THREAD_UNDER)
    assert threads == [lines.THREAD_UNDER] * under + ["thread-halo", lines.THREAD_OVER] * over
    assert abs(over - under) <= 1 and over >= 2


@pytest.mark.parametrize("name", STITCHES)
def test_figures_stand_beside_the_places_of_the_needle_not_on_them(name: str):
    svg = stitch_on_cloth(STITCHES[name], F(6), CENTIMETRES).svg
    rings = [
        [tuple(map(float, spot.split(","))) for spot in each.get("points", "").split()]
        for each in svg.iter("polygon")
        if each.get("class") in ("sign-hollow", "sign-filled") and len(each.get("points", "").split()) == 12
    ]
    places = [(sum(x for x, _ in ring) / 12, sum(y for _, y in ring) / 12) for ring in rings]
    figures = [(float(each.get("x", "")), float(each.get("y", ""))) for each in svg.iter("text") if each.text in "1234"]
    assert len(figures) == 4
    assert min(dist(figure, place) for figure in figures for place in places) > 7


def test_a_thread_that_a_stitch_would_hide_is_bowed_aside():
    """Of back stitch every thread below runs under a stitch; of running stitch none does."""

    def bowed(name: str) -> int:
        svg = stitch_on_cloth(STITCHES[name], F(6), CENTIMETRES).svg
        below = [each for each in svg.iter("polyline") if each.get("class") == lines.THREAD_UNDER]
        return sum(len(each.get("points", "").split()) > 2 for each in below)

    assert bowed("back") >= 4 and bowed("running") == 0


def test_signs_differ_from_each_other():
    seen = {name: ET.tostring(alone(name).svg).partition(b"aria-label")[2].partition(b">")[2] for name in SIGNS}
    assert len(set(seen.values())) == len(seen)
    assert len({sign.title for sign in SIGNS.values()}) == len(SIGNS)


@pytest.mark.parametrize("name", FAULTS)
def test_a_fault_is_seen(name: str):
    should_be, as_is = (halves(name)[side].svg for side in (0, 1))
    before, after = (
        [(each.tag, each.get("class"), each.get("points")) for each in svg.iter()] for svg in (should_be, as_is)
    )
    assert before != after


def test_every_fault_that_is_drawn_stands_in_the_fault_finder_once():
    page = (ROOT / "docs/finish/faults.md").read_text("utf-8")
    assert {name: page.count(f"{{{{ fault {name} }}}} |") for name in FAULTS} == dict.fromkeys(FAULTS, 1)
