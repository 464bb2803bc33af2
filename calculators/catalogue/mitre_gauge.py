"""Gauges for hems and mitres, in true size to print and cut from card."""

from collections.abc import Iterator
from types import SimpleNamespace

from calculators.asking.corner_questions import FIELDS, check_trim, check_turn, creases_that_meet, room_to_trim
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.drawing.gauge import PAPER_NAMES, gauge_sheets
from calculators.drawing.picture import PictureSeries
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.gauge import Gauge, hem_gauge, mitre_gauge
from calculators.trade.corners.mitre_marks import mitre_marks
from calculators.values.kinds import Choice, Count, Length
from calculators.values.measure import MILLIMETRES, Ruler
from calculators.values.phrase import Phrase, say

PAPER = Field("paper", "Paper", Choice(options=PAPER_NAMES), "The paper in the printer.", fixed="a4")
KINDS = {"mitre": "mitre gauge", "hem": "hem gauge"}
LARGEST = 1200  # [mm] beyond it a card is no longer a gauge


def _work(given: SimpleNamespace) -> Answer:
    gauge = _mitre_gauge(given) if given.gauge == "mitre" else _hem_gauge(given)
    left, low, right, high = gauge.box
    if max(right - left, high - low) > LARGEST:
        raise invalid_input(
            "hem_1",
            "This gauge would be {size:length} long. Take a narrower hem or a wider angle, and mark with a ruler.",
            size=max(right - left, high - low),
        )
    sheets = gauge_sheets(gauge, given.paper, MILLIMETRES)
    results = {
        "width": right - left,
        "height": high - low,
        "sheets": len(sheets.pictures),
        "mark_1": gauge.measures.get("mark_1"),
        "mark_2": gauge.measures.get("mark_2"),
    }
    spoken = say(
        "**{sheets:sheet|sheets}** of {paper:text}, to print at full size.",
        sheets=len(sheets.pictures),
        paper=PAPER_NAMES[given.paper],
    )
    return Answer(results, spoken, tuple(_notes(given)), drawn_from=(gauge, given.paper))


def _mitre_gauge(given: SimpleNamespace) -> Gauge:
    with creases_that_meet():
        marks = mitre_marks(given.hem_1, given.hem_2, given.angle, given.turn, given.seam_allowance)
    check_turn(given.turn, min(given.hem_1, given.hem_2))
    check_trim(given.seam_allowance, room_to_trim(min(marks.to_line_1, marks.to_line_2), marks.half_line))
    return mitre_gauge(Corner(*map(float, (given.hem_1, given.hem_2, given.angle))), float(given.seam_allowance))


def _hem_gauge(given: SimpleNamespace) -> Gauge:
    check_turn(given.turn, given.hem_1)
    return hem_gauge(float(given.turn), float(given.hem_1))


def _notes(given: SimpleNamespace) -> Iterator[Phrase]:
    made = "corner" if given.gauge == "mitre" else "hem"
    yield say(
        "Print at full size, not fitted to the page. Measure both check bars before you cut: a bar that is off "
        f"makes every {made} wrong."
    )
    yield say(
        "Glue the paper to card and cut along the edge, or prick the lines through onto plain card. Only plain card "
        "goes under the iron."
    )
    if given.gauge == "hem" and given.hem_1 != given.hem_2:
        yield say(
            "This card is for the hem of {hem_1} on edge 1. Print another for the {hem_2} on edge 2, and write on "
            "each which it is.",
            hem_1=given.hem_1,
            hem_2=given.hem_2,
        )


def _drawing(drawn_from: tuple[Gauge, str], ruler: Ruler) -> PictureSeries:
    gauge, paper = drawn_from
    return gauge_sheets(gauge, paper, ruler)


CALCULATOR = Calculator(
    name="mitre-gauge",
    title="Gauges to print",
    purpose="A hem gauge or a mitre gauge in true size, to print and cut from card.",
    fields=(
        Field(
            "gauge",
            "Gauge",
            Choice(options=KINDS),
            "A card for the corner, or a straight one for turn and hem.",
            fixed="mitre",
        ),
        *(FIELDS[name] for name in ("hem_1", "hem_2", "angle", "turn", "seam_allowance")),
        PAPER,
    ),
    question="A {gauge} for hems of {hem_1} and {hem_2} at a corner of {angle}, on {paper}.",
    results=(
        Result("width", "Gauge across", Length(), "Cut out."),
        Result("height", "Gauge upwards", Length(), "Cut out."),
        Result("sheets", "Sheets of paper", Count(), "More than one overlap and are glued together."),
        Result("mark_1", "Mark on edge 1", Length(), "From the folded corner; a mitre gauge only."),
        Result("mark_2", "Mark on edge 2", Length(), "From the folded corner; a mitre gauge only."),
    ),
    work=_work,
    drawing=_drawing,
    examples=(
        Example(
            {"hem_1": "2.5 cm", "hem_2": "2.5 cm"},
            {"mark_1": 50, "mark_2": 50, "sheets": 1},
            "common practice, no source: twice the hem on both edges",
            tolerance=1e-6,
        ),
    ),
)
