"""Gauges: their lines where the mitre has them, and whole when cut into sheets."""

import xml.etree.ElementTree as ET

import pytest

from calculators.drawing.gauge import EDGE, GLUED, JOIN, OVERLAP, PAPERS, PX, gauge_sheets
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.gauge import hem_gauge, mitre_gauge
from calculators.values.measure import CENTIMETRES
from tests.trade.corners.closed_formulas import closed_marks


@pytest.mark.parametrize(
    "hem_1, hem_2, angle", [(20.0, 20.0, 90.0), (50.0, 20.0, 90.0), (20.0, 15.0, 120.0), (15.0, 15.0, 60.0)]
)
def test_marks_and_trim_agree_with_the_closed_formulas(hem_1, hem_2, angle):
    gauge = mitre_gauge(Corner(hem_1, hem_2, angle), 5.0)
    closed = closed_marks(hem_1, hem_2, angle, 0, 5, 0)
    assert (gauge.measures["mark_1"], gauge.measures["mark_2"]) == pytest.approx((closed.mark_1, closed.mark_2))
    trims = [line for line in gauge.lines if line.kind == "trim"]
    assert (trims[0].start[0] ** 2 + trims[0].start[1] ** 2) ** 0.5 == pytest.approx(closed.trim_1)
    assert (trims[-1].end[0] ** 2 + trims[-1].end[1] ** 2) ** 0.5 == pytest.approx(closed.trim_2)


def test_a_hem_gauge_has_a_line_for_turn_and_hem():
    gauge = hem_gauge(10.0, 25.0)
    assert [line.start[1] for line in gauge.lines if line.kind == "fold"] == [10, 25]
    assert [line.start[1] for line in hem_gauge(0.0, 25.0).lines if line.kind == "fold"] == [25]


@pytest.mark.parametrize("paper", PAPERS)
def test_a_large_gauge_is_cut_into_sheets_that_overlap(paper):
    """Every sheet fits its paper, has its check bars, and repeats a strip of the one beside it."""
    gauge = mitre_gauge(Corner(120.0, 80.0, 90.0), 6.0)
    left, low, right, high = gauge.box
    sheets = gauge_sheets(gauge, paper, CENTIMETRES).pictures
    width, height = PAPERS[paper]
    across, up = (-(-(size - OVERLAP) // (of - OVERLAP)) for size, of in ((right - left, width), (high - low, height)))
    assert len(sheets) == across * up > 1
    for sheet in sheets:
        bars = [
            (float(node.get("x2")) - float(node.get("x1"))) / PX
            for node in sheet.svg.iter("line")
            if node.get("class") == "check" and node.get("y1") == node.get("y2")
        ]
        assert bars == pytest.approx([100, 101.6], abs=0.01)
        assert float(sheet.svg.get("viewBox").split()[2]) / PX == pytest.approx(
            float(sheet.svg.get("width").removesuffix("mm")), abs=0.01
        )
        assert len(ET.tostring(sheet.svg)) < 15_000


@pytest.mark.parametrize("paper", PAPERS)
def test_sheets_are_joined_on_lines_that_lie_on_one_another(paper):
    """Four sheets: the thin upright lines of the left and the right one are the same place of the gauge."""
    width, _ = PAPERS[paper]
    left, right, *above = gauge_sheets(mitre_gauge(Corner(150.0, 90.0, 90.0), 6.0), paper, CENTIMETRES).pictures
    assert len(above) == 2
    ((on_left,), (on_right,)) = (
        [
            float(node.get("x1")) / PX - EDGE
            for node in sheet.svg.iter("line")
            if node.get("class") == JOIN and node.get("x1") == node.get("x2")
        ]
        for sheet in (left, right)
    )
    assert on_left == pytest.approx(on_right + width - OVERLAP, abs=0.01)
    assert left.caption == GLUED
    (alone,) = gauge_sheets(mitre_gauge(Corner(20.0, 20.0, 90.0), 6.0), paper, CENTIMETRES).pictures
    assert alone.caption != GLUED and not [node for node in alone.svg.iter("line") if node.get("class") == JOIN]
