"""No two words of a drawing lie on each other, none leaves its sheet: measures as lopsided as chance makes them."""

import os
import xml.etree.ElementTree as ET

import pytest
from hypothesis import HealthCheck, Phase, assume, given, settings
from hypothesis import strategies as st

from calculators.articles import articles
from calculators.asking.answering import Asking, answer, read
from calculators.asking.declaration import InvalidInput
from calculators.catalogue import calculator_named, catalogue
from calculators.drawing.at_the_table import WORKS
from calculators.drawing.machine_row import ROWS
from calculators.drawing.picture import SIZES, Picture, PictureSeries
from calculators.trade.corners.comparison import VARIANTS
from calculators.trade.corners.constructions import CONSTRUCTIONS
from calculators.trade.sections.edges import EDGES
from calculators.trade.stitches.hand import STITCHES
from calculators.values.kinds import Length
from tests.drawing.words import faults

#: How many measures are tried for each drawing: few in the whole run, ``MEASURES=200`` for a long one.
MEASURES = int(os.environ.get("MEASURES", "20"))
WORDS, OF_A_STEP = 13.3, 16.5  # [drawing units] letters at their largest, on a narrow phone and in a narrow column
ENLARGED, PRINTED = 12.5, 12.5  # the same where a drawing can be enlarged, and of a gauge


def lengths(least: float, most: float) -> st.SearchStrategy[str]:
    """Lengths [cm] as they are typed, in millimetres or in eighths of an inch."""
    metric = st.integers(round(10 * least), round(10 * most)).map(lambda tenths: f"{tenths} mm")
    inches = st.integers(round(least / 2.54 * 8) + 1, round(most / 2.54 * 8)).map(lambda n: f"{n // 8} {n % 8}/8 in")
    return metric | inches


def rows(*fields: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    return st.tuples(*fields).map(" | ".join)


HEMS = {
    "hem_1": lengths(0.8, 6),
    "hem_2": lengths(0.8, 6),
    "angle": st.just("90") | st.integers(30, 150).map(str),
    "turn": lengths(0, 1.2),
}
PIECE, COUNT, TURNS = lengths(6, 150), st.integers(1, 9).map(str), st.sampled_from(["yes", "no"])
LOPSIDED = {
    "at-the-table": {
        "work": st.sampled_from(list(WORKS)),
        "piece_width": lengths(2, 300),
        "piece_length": lengths(2, 300),
        "layers": st.integers(1, 60).map(str),
        "folded_length": lengths(30, 500),
        "extra_length": lengths(0, 90),
        "full_width": lengths(60, 320),
        "skew": lengths(0, 12),
        "hem": lengths(0.8, 12),
    },
    "binding": {
        "bound_edge": lengths(20, 900),
        "binding_width": lengths(0.4, 5),
        "layers": st.sampled_from(["single", "double"]),
        "cut": st.sampled_from(["straight", "bias", "spiral"]),
        "cloth_width": lengths(60, 300),
        "piece_width": st.just("") | lengths(30, 200),
    },
    "corner-bulk": {**HEMS, "shown": st.sampled_from(list(VARIANTS))},
    "corner-steps": {**HEMS, "way": st.sampled_from(list(CONSTRUCTIONS))},
    "curtains": {
        "rod": lengths(30, 900),
        "drop": lengths(30, 400),
        "curtains": st.sampled_from("123"),
        "cloth_width": lengths(90, 300),
        "side_hem": lengths(0, 8),
        "lower_hem": lengths(0, 30),
        "pattern_repeat": lengths(0, 90),
    },
    "edge-steps": {
        "edge": st.sampled_from(list(EDGES)),
        "hem": lengths(0.8, 6),
        "turn": lengths(0, 1.2),
        "edge_stitch": lengths(0.1, 0.5),
        "seam_allowance": lengths(0.3, 3),
    },
    "even-spacing": {
        "things": st.sampled_from(["points", "bands", "gathers"]),
        "marked_edge": lengths(20, 900),
        "about_apart": lengths(1, 40),
        "at_ends": st.sampled_from(["distance", "half"]),
        "each_width": lengths(0.4, 12),
        "gathered_to": lengths(20, 400),
    },
    "finished-size": {
        "width": lengths(15, 320),
        "length": lengths(15, 320),
        "turn": lengths(0, 1.2),
        **{f"hem_{side}": lengths(0, 6) for side in ("top", "bottom", "left", "right")},
    },
    "gauge-finder": {name: each for name, each in HEMS.items() if name != "turn"},
    "label-text": {
        "fibres": st.sampled_from(["linen | 100", "half-bleached Irish linen yarn | 55.5; cotton | 44.5"]),
        "parts": rows(st.just("cloth"), st.sampled_from(["95", "hand", "not"])),
        "finished_width": lengths(9, 300),
        "change_width": st.integers(-9, 0).map(str),
    },
    "lay-plan": {
        "cloths": rows(st.sampled_from(["Linen", "Half linen, undyed"]), lengths(60, 190), lengths(60, 900)),
        "pieces": st.lists(
            rows(st.sampled_from(["Napkin", "Mat", "Runner"]), PIECE, PIECE, COUNT, TURNS),
            min_size=1,
            max_size=3,
            unique_by=lambda row: row.split()[0],
        ).map("; ".join),
        "flaws": st.just("") | rows(lengths(5, 60), lengths(5, 60), lengths(1, 8), lengths(1, 8)),
        "strips": st.sampled_from(["across", "along"]),
    },
    "machine-row": {
        "row": st.sampled_from(list(ROWS)),
        "stitch_seam": lengths(0.1, 0.6),
        "stitch_hem": lengths(0.1, 0.6),
        "edge_stitch": lengths(0.1, 1),
        "short_stitch": lengths(0.1, 0.4),
        "lap": lengths(0.5, 3),
    },
    "mitre-gauge": {**HEMS, "gauge": st.sampled_from(["mitre", "hem"])},
    "mitre-marks": HEMS,
    "pieces-from-cloth": {
        "cloth_width": lengths(60, 300),
        "cloth_length": lengths(40, 2500),
        "piece_width": lengths(6, 80),
        "piece_length": lengths(6, 200),
    },
    "pointed-end": {"runner_width": lengths(8, 80), "point_length": lengths(3, 150)},
    "stitch-count": {
        "finished_width": lengths(9, 300),
        "finished_length": lengths(9, 300),
        "stitch_hem": lengths(0.1, 0.6),
        "row_in": lengths(0, 4),
    },
    "stitch-path": {"stitch": st.sampled_from(list(STITCHES)), "stitch_length": lengths(0.1, 4)},
    "template": {
        "article": st.sampled_from(["bolster", "mat-bordered", "tablecloth-round", "apron"]),
        "size": lengths(12, 60),
        "by": lengths(12, 60),
        "paper": st.sampled_from(["a4", "letter"]),
    },
    "thread-and-needle": {
        "thread_number": st.integers(9, 200).map(str),
        "system": st.sampled_from(["tex", "den", "nm", "ne", "ticket"]),
        "cloth_kind": st.sampled_from(["light", "medium", "heavy"]),
    },
    "usable-cloth": {
        "layers": st.integers(1, 60).map(str),
        "folded_length": lengths(30, 500),
        "full_width": lengths(60, 320),
        "skew": lengths(0, 6),
    },
    "wash-test": {
        "before_length": st.integers(50, 300).map(lambda cm: f"{cm} cm"),
        "after_length": st.just("50 cm"),
        "before_width": lengths(30, 60),
        "after_width": lengths(30, 60),
    },
    "whole-order": {
        "lines": st.lists(
            rows(st.sampled_from(["napkin", "runner", "cushion-piped", "curtain-lined"]), COUNT, PIECE, PIECE),
            min_size=1,
            max_size=3,
        ).map("; ".join),
        "cloths": rows(st.just("Linen"), lengths(90, 320)).map(lambda row: f"{row}; Lining | 140 cm"),
    },
}


def of_an_article(name: str) -> dict[str, st.SearchStrategy[str]]:
    """Its lengths, from a quarter of the usual ones to four times as much."""
    usual = read(calculator_named(name), Asking({}))
    kinds = {field.name: field.kind for field in articles()[name].fields}
    return {
        each: lengths(max(float(usual[each]) / 40, 0.1), float(usual[each] or 20) * 4 / 10)
        for each, kind in kinds.items()
        if isinstance(kind, Length)
    }


def sheets(picture: Picture | PictureSeries) -> list[tuple[ET.Element, float]]:
    """Every drawing with the size that its letters can have."""
    if isinstance(picture, PictureSeries):
        gauges = any("true-size" in each.svg.get("class").split() for each in picture.pictures)
        letters = PRINTED if gauges else OF_A_STEP
        return [*((each.svg, letters) for each in picture.pictures), (picture.key.svg, WORDS)]
    letters = ENLARGED if picture.hint else WORDS
    drawn = [(each, letters) for each in (picture.svg, picture.wide) if each is not None]
    return drawn if picture.key is None else [*drawn, (picture.key, WORDS)]


@pytest.mark.parametrize("name", [each.name for each in catalogue().values() if each.drawing])
@settings(max_examples=MEASURES, deadline=None, suppress_health_check=list(HealthCheck), phases=[Phase.generate])
@given(data=st.data())
def test_words_of_a_drawing_stand_apart_and_on_their_sheet(name, data):
    calculator = catalogue()[name]
    asking = Asking(
        data.draw(st.fixed_dictionaries(LOPSIDED.get(name) or of_an_article(name))),
        wanted_ruler=data.draw(st.sampled_from(["cm", "in"])),
    )
    try:
        answered = answer(calculator, asking)
    except InvalidInput:
        assume(False)
    drawn = calculator.drawing(answered.drawn_from, asking.ruler)
    for picture in drawn if isinstance(drawn, tuple) else (drawn,):
        for svg, letters in sheets(picture):
            is_enlarged = isinstance(picture, Picture) and picture.hint and svg is not picture.key
            for size in SIZES if is_enlarged else (1,):
                assert faults(svg, letters, size) == [], size


def test_words_that_lie_on_each_other_or_leave_their_sheet_are_found():
    def drawn(*places: tuple[str, str]) -> ET.Element:
        svg = ET.Element("svg", {"viewBox": "0 0 360 200"})
        for x, y in places:
            ET.SubElement(svg, "text", {"class": "label", "x": x, "y": y}).text = "64.5"
        return svg

    assert faults(drawn(("20", "30"), ("60", "30")), WORDS) == []
    assert faults(drawn(("20", "30"), ("40", "34")), WORDS) == ["“64.5” lies on “64.5”"]
    assert faults(drawn(("350", "30")), WORDS) == ["“64.5” leaves its sheet"]


@pytest.mark.parametrize("ways", [("double", "single"), ("plain", "to-one-side"), ("felled", "french")])
@settings(max_examples=MEASURES // 4, deadline=None, suppress_health_check=list(HealthCheck), phases=[Phase.generate])
@given(data=st.data())
def test_words_stand_apart_where_two_edges_are_drawn_at_one_scale(ways, data):
    calculator = catalogue()["edge-steps"]
    measures = {name: each for name, each in LOPSIDED["edge-steps"].items() if name != "edge"}
    asked = data.draw(st.fixed_dictionaries(measures))
    try:
        one, other = (answer(calculator, Asking({**asked, "edge": edge})).drawn_from for edge in ways)
    except InvalidInput:
        assume(False)
    drawn = calculator.beside(one, other, Asking({}).ruler)
    for series in (drawn.one, drawn.other):
        for svg, letters in sheets(series):
            assert faults(svg, letters) == []
