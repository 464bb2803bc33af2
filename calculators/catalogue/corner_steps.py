"""A corner step by step: every construction drawn with the maker's own numbers."""

from dataclasses import replace
from types import SimpleNamespace

from calculators.asking.corner_questions import FIELDS, WITHOUT, corner_steps, measures
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.drawing.folding import Box, box_of, corner_step, corner_step_by_step
from calculators.drawing.in_step import InStep
from calculators.drawing.picture import Picture, PictureSeries
from calculators.drawing.played_corner import played_corner
from calculators.trade.articles.work import listed
from calculators.trade.corners.bulk import bulk
from calculators.trade.corners.constructions import CONSTRUCTIONS
from calculators.trade.corners.steps import CornerStep
from calculators.values.kinds import Count, Length
from calculators.values.measure import Ruler
from calculators.values.phrase import say


def _work(given: SimpleNamespace) -> Answer:
    steps = corner_steps(given.way, measures(given))
    if given.step and given.step > len(steps):
        raise invalid_input(
            "step",
            "This corner has {count:count} steps. Ask for one of them, or leave the blank empty to see all.",
            count=len(steps),
        )
    found = bulk(steps[-1].seen)
    results = {
        "steps": len(steps),
        "layers": found.thickest,
        "thickness": found.thickness(float(given.cloth_thickness)),
    }
    spoken = say(
        "**{steps:step|steps}**; where it is thickest, the corner is {layers:layer|layers} thick.",
        steps=len(steps),
        layers=found.thickest,
    )
    idle = [name for name in WITHOUT.get(given.way, ()) if getattr(given, name) is not None]
    unused = listed([f"“{FIELDS[name].label}”" for name in idle]) if idle else ""
    notes = (
        *([say(f"What stands under {unused} changes nothing here.")] if unused else []),
        say(
            "Pressed flat, {layers:layer|layers} of this cloth are {thickness:length}.",
            layers=found.thickest,
            thickness=results["thickness"],
        ),
    )
    working = (
        say(
            "{title:text}: every step is worked out by folding the cloth along straight lines and keeping count of "
            "its layers.",
            title=CONSTRUCTIONS[given.way].title,
        ),
    )
    return Answer(results, spoken, notes, working, drawn_from=(steps, given.step))


def _drawing(drawn_from: tuple[list[CornerStep], int | None], ruler: Ruler) -> Picture | PictureSeries:
    steps, number = drawn_from
    if number:
        return corner_step(steps, number, ruler)
    return _played(steps, ruler)


def _played(steps: list[CornerStep], ruler: Ruler, box: Box | None = None) -> PictureSeries:
    return replace(corner_step_by_step(steps, ruler, box), played=played_corner(steps, box))


def _beside(
    one: tuple[list[CornerStep], int | None], other: tuple[list[CornerStep], int | None], ruler: Ruler
) -> InStep:
    box = box_of([step.seen for steps, _ in (one, other) for step in steps])
    return InStep(*(_played(steps, ruler, box) for steps, _ in (one, other)))


CALCULATOR = Calculator(
    name="corner-steps",
    title="A corner step by step",
    purpose="Every step of a corner, drawn to scale with your own hems, turn and angle.",
    fields=(
        *FIELDS.values(),
        Field(
            "step", "Step to show", Count(least=1, most=20), "One step alone; leave it empty to see all.", optional=True
        ),
    ),
    question="{way}: hems of {hem_1} and {hem_2}, first turn {turn}, at a corner of {angle}.",
    results=(
        Result("steps", "Steps", Count(), "How many steps the corner takes."),
        Result("layers", "Layers at the thickest place", Count(), "Counted in the finished corner."),
        Result("thickness", "Thickness there", Length(), "Layers times the thickness of one, pressed flat."),
    ),
    work=_work,
    drawing=_drawing,
    beside=_beside,
    examples=(
        Example(
            {"way": "folded-corner", "hem_1": "2 cm", "hem_2": "2 cm", "turn": "1 cm"},
            {"layers": 9},
            "derived: a double hem is three layers, and three times three are nine",
        ),
        Example(
            {
                "way": "mitre",
                "hem_1": "2 cm",
                "hem_2": "2 cm",
                "turn": "1 cm",
                "seam_allowance": "6 mm",
                "cloth_thickness": "0.4 mm",
            },
            {"layers": 5, "thickness": 2},
            "derived: the piece, hem and turn, and the allowance of both",
        ),
    ),
)
