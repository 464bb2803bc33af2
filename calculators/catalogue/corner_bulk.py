"""Bulk of a corner: how many layers each way of making it piles up, and where."""

from collections.abc import Iterator
from math import sqrt
from types import SimpleNamespace
from typing import Any

from calculators.asking.corner_questions import FIELDS, corner_steps, measures
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.drawing.bulk import bulk_map
from calculators.trade.corners.bulk import Bulk
from calculators.trade.corners.comparison import VARIANTS, ComparedCorner, compared
from calculators.values.kinds import Choice, Column, Count, Length, Table, Text
from calculators.values.phrase import say

_ASKED = (
    "hem_1",
    "hem_2",
    "angle",
    "turn",
    "turn_2",
    "seam_allowance",
    "facing_seam",
    "edge_stitch",
    "cloth_thickness",
)
_SHOWN = Field(
    "shown",
    "Corner drawn",
    Choice(options={name: title.lower() for name, (title, _, _) in VARIANTS.items()}),
    "Which corner to draw the map of.",
    fixed="mitre-snipped",
)


def _work(given: SimpleNamespace) -> Iterator[Answer | None]:
    given.trimming, given.pressed, given.pleats = "snipped", "open", "opposite"
    made_with = measures(given)
    corner_steps("folded-corner", made_with)
    ways = []
    for way in compared(made_with):
        ways.append(way)
        yield None
    possible = {each.name: each.bulk for each in ways if each.bulk}
    if given.shown not in possible:
        raise invalid_input("shown", "With these measures this corner cannot be made so. Choose another to draw.")
    thickness = float(given.cloth_thickness)
    best = min((found.thickest for name, found in possible.items() if name.startswith("mitre")), default=None)
    chosen = possible[given.shown]
    results = {
        "ways": [_row(each, thickness) for each in ways],
        "layers": chosen.thickest,
        "thickness": chosen.thickness(thickness),
        "patch": _side_of(chosen),
        "folded": possible["folded-corner"].thickest,
        "mitred": best,
    }
    folded = possible["folded-corner"].thickest
    spoken = (
        say(
            "**{folded:layer|layers} folded, {best:layer|layers} mitred**, where the corner is thickest.",
            folded=folded,
            best=best,
        )
        if best
        else say("**{folded:layer|layers} folded**, where the corner is thickest.", folded=folded)
    )
    notes = (say("A needle and a presser foot feel the thickest place: stitch around it, or take a thicker needle."),)
    working = (
        say(
            "Each corner is folded step by step, and its layers are counted over every point; a place counts once it "
            "is larger than a stitch hole."
        ),
    )
    yield Answer(results, spoken, notes, working, drawn_from=(ways, given.shown))


def _side_of(found: Bulk) -> float:
    """The side of a square as large as the thickest place [mm], to a nanometre: what lies beyond is the machine's, not
    the corner's."""
    return round(sqrt(found.thickest_area), 6)


def _row(way: ComparedCorner, thickness: float) -> dict[str, Any]:
    if way.bulk is None:
        return {"way": f"{way.title}: not with these measures", "layers": None, "thickness": None, "patch": None}
    return {
        "way": way.title,
        "layers": way.bulk.thickest,
        "thickness": way.bulk.thickness(thickness),
        "patch": _side_of(way.bulk),
    }


CALCULATOR = Calculator(
    name="corner-bulk",
    title="Bulk of a corner",
    purpose="How many layers pile up in a corner, for every way to make it, and where.",
    fields=(*(FIELDS[name] for name in _ASKED), _SHOWN),
    question="Hems of {hem_1} and {hem_2}, first turn {turn}, at a corner of {angle}. Draw: {shown}.",
    results=(
        Result("folded", "Layers, folded without a mitre", Count(), "Where the folded corner is thickest."),
        Result("mitred", "Layers, mitred the best way", Count(), "Where the thinnest of the mitres is thickest."),
        Result("layers", "Layers in the corner drawn", Count(), "Where it is thickest."),
        Result("thickness", "Thickness there", Length(), "Layers times the thickness of one, pressed flat."),
        Result(
            "patch", "The thickest patch is as large as a square of", Length(), "Its area, as the side of a square."
        ),
        Result(
            "ways",
            "Ways to make it",
            Table(
                columns=(
                    Column("way", "Way", Text()),
                    Column("layers", "Layers", Count()),
                    Column("thickness", "Thick", Length()),
                    Column("patch", "Over a square of", Length()),
                )
            ),
            "Each at its thickest place.",
        ),
    ),
    work=_work,
    drawing=lambda drawn_from, ruler: bulk_map(*drawn_from),
    examples=(
        Example(
            {"hem_1": "2 cm", "hem_2": "2 cm", "turn": "1 cm", "seam_allowance": "6 mm"},
            {"folded": 9, "mitred": 5},
            "derived: three layers across three; the piece, hem and turn, and the allowance of both",
        ),
    ),
)
