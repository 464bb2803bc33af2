"""Mitre marks: where to mark, stitch and trim a mitred corner of any angle, with equal or unequal hems."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.corner_questions import FIELDS, check_trim, check_turns, creases_that_meet, room_to_trim
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.asking.house_measures import ALLOWANCE, HEM, TURN
from calculators.drawing.corner import mitre_corner
from calculators.trade.corners.mitre_marks import MitreMarks, mitre_marks
from calculators.values.kinds import Angle, Length
from calculators.values.phrase import Phrase, say

_INCH = 25.4


def _work(given: SimpleNamespace) -> Answer:
    with creases_that_meet():
        marks = mitre_marks(given.hem_1, given.hem_2, given.angle, given.turn, given.seam_allowance, given.turn_2)
    check_turns(given.hem_1, given.hem_2, given.turn, given.turn_2)
    check_trim(given.seam_allowance, room_to_trim(min(marks.to_line_1, marks.to_line_2), marks.half_line))
    results = {
        name: getattr(marks, name)
        for name in ("mark_1", "mark_2", "half_line", "trim_1", "trim_2", "raw_mark_1", "raw_mark_2")
    }
    results |= {
        "corner_to_line": marks.to_line_1,
        "corner_to_line_2": marks.to_line_2,
        "mitre_line": 2 * marks.half_line,
        "seam_length": marks.half_line,
    }
    same = given.hem_1 == given.hem_2
    spoken = (
        "**Mark {mark_1}** from the folded corner on both edges."
        if same
        else "**Mark {mark_1} on edge 1 and {mark_2} on edge 2**, from the folded corner."
    )
    return Answer(
        results, say(spoken, **results), notes=tuple(_notes(marks)), working=tuple(_working(marks)), drawn_from=marks
    )


def _notes(marks: MitreMarks) -> Iterator[Phrase]:
    yield say(
        "Stitch from the mark to the crossing of the creases, and check: it must measure {half:length} on both sides.",
        half=marks.half_line,
    )
    if marks.angle != 90:
        yield say(
            "On the flat cloth the line bends at the crossing of the creases; it is straight once the corner is "
            "folded right sides together."
        )
    yield say(
        "Take the marks from the folded edge, not from the raw one: then a turn that is a little off does not spoil "
        "the mitre."
    )


def _working(marks: MitreMarks) -> Iterator[Phrase]:
    if marks.angle == 90:
        yield say(
            "At a square corner the mark on edge 1 is twice the hem on edge 2: 2 × {hem:length} = {mark:length}.",
            hem=marks.hem_2,
            mark=marks.mark_1,
        )
    else:
        yield say(
            "Mark 1 = 2 × (hem 2 + hem 1 × cos {angle:angle}) ÷ sin {angle:angle} = {mark:length}.",
            angle=marks.angle,
            mark=marks.mark_1,
        )
    yield say(
        "Trimmed {allowance:length} outside the line, the cut meets edge 1 at {trim:length}.",
        allowance=marks.seam_allowance,
        trim=marks.trim_1,
    )


CALCULATOR = Calculator(
    name="mitre-marks",
    title="Mitre marks",
    purpose="Where to mark, stitch and trim a mitred corner, at any angle and with unequal hems.",
    fields=(
        Field("hem_1", "Hem on edge 1", HEM, "Hem depth along the first edge.", "hem", known_as=("hem", "hem/2")),
        Field("hem_2", "Hem on edge 2", HEM, "Hem depth along the other edge.", "hem", known_as=("hem/2", "hem")),
        Field(
            "angle",
            "Angle of the corner",
            Angle(least=Fraction(20), most=Fraction(160)),
            "Inside angle; 90 for a square corner.",
            fixed="90",
            known_as=("angle",),
        ),
        Field(
            "turn", "First turn", TURN, "Hidden first fold; it moves only the marks taken from the raw edge.", "turn"
        ),
        FIELDS["turn_2"],
        Field(
            "seam_allowance",
            "Left when trimmed",
            ALLOWANCE,
            "Cloth left beyond the stitched line when the corner is trimmed.",
            "mitre_allowance",
        ),
    ),
    question="Hems of {hem_1} and {hem_2} meet at a corner of {angle}.",
    results=(
        Result("mark_1", "Mark on edge 1", Length(), "From the folded corner along edge 1."),
        Result("mark_2", "Mark on edge 2", Length(), "From the folded corner along edge 2."),
        Result("half_line", "Crossing of the creases to a mark", Length(), "The same on both sides."),
        Result("mitre_line", "Whole mitre line", Length(), "From mark to mark through the crossing, on flat cloth."),
        Result("seam_length", "Seam to stitch", Length(), "Once the corner is folded right sides together."),
        Result(
            "corner_to_line",
            "Corner straight to the line, at edge 1",
            Length(),
            "At a right angle to the half that ends on edge 1.",
        ),
        Result(
            "corner_to_line_2",
            "Corner straight to the line, at edge 2",
            Length(),
            "At a right angle to the half that ends on edge 2.",
        ),
        Result("trim_1", "Trim meets edge 1", Length(), "From the folded corner, the allowance left on."),
        Result("trim_2", "Trim meets edge 2", Length(), "From the folded corner, the allowance left on."),
        Result("raw_mark_1", "Mark on raw edge 1", Length(), "From the raw corner, the turn opened flat."),
        Result("raw_mark_2", "Mark on raw edge 2", Length(), "From the raw corner, the turn opened flat."),
    ),
    work=_work,
    drawing=mitre_corner,
    examples=(
        Example(
            {"hem_1": "2.5 cm", "hem_2": "2.5 cm", "turn": "1 cm"},
            {"mark_1": 50, "mark_2": 50, "half_line": 35},
            "common practice, no source: 2.5 cm hem → 5 cm marks, about 3.5 cm from the crossing to each edge",
            tolerance=0.5,
        ),
        Example(
            {"hem_1": "1 in", "hem_2": "1 in"},
            {"mark_1": 2 * _INCH, "mark_2": 2 * _INCH},
            "common practice, no source: 1 in hem → 2 in marks",
        ),
        Example(
            {"hem_1": "20 mm", "hem_2": "10 mm", "turn": "10 mm", "seam_allowance": "2 mm"},
            {"raw_mark_1": 35, "raw_mark_2": 70},
            "derived by reflection: D2 + h2·D1/h1 and D1 + h1·D2/h2, not 60 and 40",
        ),
        Example(
            {"hem_1": "1 in", "hem_2": "1 in", "turn": "1/4 in", "seam_allowance": "1/4 in"},
            {"raw_mark_1": 2.5 * _INCH},
            "Home and School Sewing, ch. XV: turn 1/4 in, crease 1 in further; both marks together at twice 1 1/4 in "
            "(derived)",
        ),
    ),
    sources=("home-and-school-sewing", "school-sewing"),
)
