"""The gauge finder: which distance on an ordinary ruler finds the marks of many corners without measuring twice."""

from collections.abc import Callable, Iterator
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from calculators.asking.corner_questions import FIELDS, creases_that_meet
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.asking.house_method import HouseMethod
from calculators.drawing.corner import distances_at_corner
from calculators.trade.corners.mitre_marks import MitreMarks, mitre_marks
from calculators.trade.corners.ruler_gauge import RulerDistance, layings, nearest, ways
from calculators.values.kinds import Choice, Column, Count, Length, Number, Table, Text
from calculators.values.measure import MM_IN, Ruler
from calculators.values.phrase import Phrase, say

CM_DIVISIONS = {"1/2": "half centimetres", "1/10": "millimetres", "1/20": "half millimetres"}
INCH_DIVISIONS = {"1/2": "halves", "1/4": "quarters", "1/8": "eighths", "1/16": "sixteenths", "1/32": "thirty-seconds"}
_FINEST_CM, _FINEST_INCH, _SLIGHT = (
    Ruler("cm", Fraction(1, 20)),
    Ruler("in", Fraction(1, 32)),
    Ruler("in", Fraction(1, 64)),
)

MEASURED = {
    "edge": "corner to mark, along the edge",
    "crossing": "crossing to edge, along the line",
    "line": "corner straight to the line",
}
QUICK = ("crossing", "line")

_EXACT = 1e-6  # [mm] what floats leave where nothing is off


class OffInMillimetres(Number):
    """How far off a mark is; where it is not, that is said."""

    def show(self, value: Fraction | float, ruler: Ruler) -> str:
        if value < _EXACT:
            return "exact"
        return (
            super().show(value, ruler)
            if round(value, self.places)
            else f"under {super().show(Fraction(1, 10**self.places), ruler)}"
        )


class OffOnInches(Length):
    """How far off a mark is, in parts of an inch; where it is not, that is said."""

    def show(self, value: Fraction | float, ruler: Ruler) -> str:
        return "exact" if value < _EXACT else super().show(value, ruler)


def _division(unit: str) -> Callable[[HouseMethod, Ruler], str]:
    """How the ruler in hand is divided where it is of this unit's system, else the house's own of that system; empty
    for a division not offered."""
    offered = INCH_DIVISIONS if unit == "in" else CM_DIVISIONS

    def text(method: HouseMethod, ruler: Ruler) -> str:
        in_hand = [ruler] if (ruler.unit == "in") == (unit == "in") else []
        divisions = (f"{each.step_mm / MM_IN[unit]}" for each in (*in_hand, method.rulers[unit]))
        return next((each for each in divisions if each in offered), "")

    return text


def _work(given: SimpleNamespace) -> Answer:
    with creases_that_meet():
        marks = mitre_marks(given.hem_1, given.hem_2, given.angle, Fraction(0), Fraction(0))
    rulers = {"cm": Ruler("cm", Fraction(given.cm_division)), "in": Ruler("in", Fraction(given.inch_division))}
    corners = given.pieces * given.corners_each
    rows = [_row(marks, way, rulers) for way in ways(marks)]
    usual, quick = (corners * layings(marks, name) for name in ("edge", "crossing"))
    results = {
        "half_line": marks.half_line,
        "to_line_1": marks.to_line_1,
        "to_line_2": marks.to_line_2,
        "usual": usual,
        "quick": quick,
        "best_cm": _best(marks, rulers["cm"]),
        "best_in": _best(marks, rulers["in"]),
        "ways": rows,
    }
    spoken = say(
        "**{half_line}** from the crossing of the creases to each edge, along the line: one distance for all "
        "{marks:mark|marks}.",
        half_line=marks.half_line,
        marks=2 * corners,
    )
    return Answer(results, spoken, tuple(_notes(marks, usual, quick)), tuple(_working(marks)), drawn_from=marks)


def _row(marks: MitreMarks, way: RulerDistance, rulers: dict[str, Ruler]) -> dict[str, Any]:
    (on_cm, off_cm), (on_in, off_in) = (nearest(marks, way, ruler) for ruler in rulers.values())
    edge = "" if len(way.edges) == 2 else f", edge {way.edges[0]}"
    return {
        "way": f"{MEASURED[way.name].capitalize()}{edge}",
        "on_cm": on_cm if off_cm is not None else None,
        "off_cm": off_cm if off_cm is None else abs(off_cm),
        "on_in": on_in if off_in is not None else None,
        "off_in": off_in if off_in is None else abs(off_in),
    }


def _best(marks: MitreMarks, ruler: Ruler) -> str:
    """The quick way whose marks lie nearest, each way judged by its worse mark; the crossing where both are alike."""
    worst = {
        name: max(_size(nearest(marks, way, ruler)[1]) for way in ways(marks) if way.name == name) for name in QUICK
    }
    return MEASURED[min(QUICK, key=lambda name: round(worst[name], 1))]


def _size(error: float | None) -> float:
    return float("inf") if error is None else abs(error)


def _notes(marks: MitreMarks, usual: int, quick: int) -> Iterator[Phrase]:
    if marks.angle == 90:
        yield say(
            "Turn the ruler on the crossing until both edges read alike: then it lies on the line, whatever its "
            "divisions."
        )
    else:
        yield say(
            "Turn the ruler on the crossing until the edge lies at this division, and rule the half line at once; "
            "then do the other half."
        )
    yield say(
        "The ruler is laid down {quick:time|times}, not {usual:time|times} as with a mark on every edge and a line "
        "ruled after.",
        quick=quick,
        usual=usual,
    )


def _working(marks: MitreMarks) -> Iterator[Phrase]:
    yield say(
        "The crossing lies as far from either mark as from the folded corner: √({foot:length}² + {hem:length}²) = "
            "{half:length}.",
        foot=marks.foot_1, hem=marks.hem_1, half=marks.half_line,
    )  # fmt: skip
    yield say(
        "Each ruler is read at its nearest division. How far off the mark then is follows from the ruler being held "
        "on the crossing, or on the corner, and set to that division."
    )
    if marks.angle == 90 and marks.hem_1 == marks.hem_2:
        yield say("With equal hems at a square corner the line is laid across so that both edges read alike.")


CALCULATOR = Calculator(
    name="gauge-finder",
    title="Gauge finder",
    purpose="Which distance on an ordinary ruler finds the marks of many corners without measuring twice.",
    fields=(
        *(FIELDS[name] for name in ("hem_1", "hem_2", "angle")),
        Field(
            "pieces",
            "Pieces ahead",
            Count(least=1, most=100_000),
            "How many are wanted of this batch.",
            fixed="18",
            known_as=("pieces",),
        ),
        Field("corners_each", "Corners of each piece", Count(least=1, most=100), "Four for a napkin.", fixed="4"),
        Field(
            "cm_division",
            "Centimetre ruler divided in",
            Choice(options=CM_DIVISIONS),
            "The finest lines of the metric ruler.",
            fixed="1/10",
            from_method=_division("cm"),
        ),
        Field(
            "inch_division",
            "Inch ruler divided in",
            Choice(options=INCH_DIVISIONS),
            "The finest lines of the inch ruler.",
            fixed="1/16",
            from_method=_division("in"),
        ),
    ),
    question="Hems of {hem_1} and {hem_2} at a corner of {angle}, on {pieces} pieces.",
    results=(
        Result(
            "half_line",
            "Crossing of the creases to each edge",
            Length(),
            "Along the line to stitch; the same on both sides.",
        ),
        Result(
            "to_line_1",
            "Corner straight to the line, at edge 1",
            Length(),
            "At a right angle to the half that ends on edge 1.",
        ),
        Result(
            "to_line_2",
            "Corner straight to the line, at edge 2",
            Length(),
            "At a right angle to the half that ends on edge 2.",
        ),
        Result("best_cm", "Nearest on the centimetre ruler", Text(), "The quick distance whose marks are least off."),
        Result("best_in", "Nearest on the inch ruler", Text(), "The quick distance whose marks are least off."),
        Result("quick", "Ruler laid down, from the crossing", Count(), "For the whole batch."),
        Result("usual", "Ruler laid down, a mark on every edge", Count(), "For the whole batch, the line ruled after."),
        Result(
            "ways",
            "On an ordinary ruler",
            Table(
                columns=(
                    Column("way", "From … to …", Text()),
                    Column("on_cm", "cm ruler", Length(on=_FINEST_CM)),
                    Column("off_cm", "Mark off by", OffInMillimetres(places=1, sign=" mm")),
                    Column("on_in", "inch ruler", Length(on=_FINEST_INCH)),
                    Column("off_in", "Off by", OffOnInches(on=_SLIGHT)),
                )
            ),
            "The nearest division, and what it does to the mark.",
        ),
    ),
    work=_work,
    drawing=distances_at_corner,
    examples=(
        Example(
            {"hem_1": "2.5 cm", "hem_2": "2.5 cm", "pieces": "20"},
            {"half_line": 35, "to_line_1": 35, "quick": 80, "usual": 240},
            "common practice, no source: 2.5 cm hem → about 3.5 cm from the crossing to each edge and from the "
            "corner to the line",
            tolerance=0.5,
        ),
        Example(
            {"hem_1": "4 cm", "hem_2": "3 cm"},
            {"half_line": 50, "to_line_1": 48},
            "derived: the triangle of 3, 4 and 5",
        ),
    ),
)
