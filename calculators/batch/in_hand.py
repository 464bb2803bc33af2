"""The work in hand: measures that every page knows, each under what it measures, and where they stand."""

from collections.abc import Container, Mapping
from functools import cache
from typing import Any

from calculators.asking.answering import Asking
from calculators.asking.declaration import Calculator, Field
from calculators.batch.walk import Walk, WalkStep
from calculators.catalogue import calculator_named, catalogue
from calculators.values.phrase import Phrase

#: Every measure of the work in hand, by the name that fields are known as, in the order of the work: what it is called.
MEASURES: Mapping[str, str] = {
    "pieces": "Pieces",
    "bundle": "Pieces in a bundle",
    "cloth_width": "Cloth width",
    "unwashed_width": "Width before the wash",
    "cloth_length": "Length before the wash",
    "measured": "Width measured",
    "selvedge": "Selvedge trimmed off each side",
    "before_length": "Marks along the length, before the wash",
    "after_length": "Marks along the length, after it",
    "before_width": "Marks across the width, before the wash",
    "after_width": "Marks across the width, after it",
    "change_length": "Change in the wash, along",
    "change_width": "Change in the wash, across",
    "needed_length": "Length needed after the wash",
    "needed_width": "Width needed after the wash",
    "folded_length": "Length of one layer",
    "layers": "Layers",
    "extra_length": "What hangs over",
    "end_loss": "Cut off each end",
    "skew": "Slant of one end",
    "usable_length": "Usable length",
    "cut_width": "Cut width",
    "cut_length": "Cut length",
    "finished_width": "Finished width",
    "finished_length": "Finished length",
    "table_width": "Width of the table",
    "table_length": "Length of the table",
    "table_drop": "Drop of a tablecloth",
    "tablecloth_turn": "First turn of a tablecloth",
    "tablecloth_hem": "Hem of a tablecloth",
    "runner_turn": "First turn of a runner",
    "runner_hem": "Hem of a runner",
    "placemat_turn": "First turn of a placemat",
    "placemat_hem": "Hem of a placemat",
    "tea_towel_turn": "First turn of a tea towel",
    "tea_towel_hem": "Hem of a tea towel",
    "pad_width": "Width of the pad",
    "pad_length": "Height of the pad",
    "mattress_width": "Width of the mattress",
    "mattress_length": "Length of the mattress",
    "mattress_depth": "Depth of the mattress",
    "rod": "Rod or track",
    "curtain_drop": "Drop of a curtain",
    "curtains": "Curtains on a rod",
    "fullness": "Fullness",
    "side_return": "Return at each end of a rod",
    "curtain_overlap": "Overlap where two curtains meet",
    "gathered": "Returns and overlap",
    "widths_in": "Widths in a curtain",
    "turn": "First turn",
    "turn/2": "First turn on edge 2",
    "hem": "Hem",
    "hem/2": "Hem on edge 2",
    "hem/top": "Hem at the top",
    "hem/bottom": "Hem at the bottom",
    "hem/left": "Hem on the left",
    "hem/right": "Hem on the right",
    "angle": "Angle of the corner",
    "mitre_allowance": "Left at a mitre when trimmed",
    "facing_allowance": "Seam of a facing or border",
    "seam": "Seam of a join",
    "join_allowance": "Seam allowance of a join",
    "edge_stitch": "Edge stitch",
    "stitch_hem": "Stitch length",
    "cloth_thickness": "Thickness of one layer",
    "seam_thickness": "Thickness stitched through",
    "thread_end": "Thread end left at a seam",
    "spool": "Thread on a reel",
    "bobbin": "Thread on a full bobbin",
}


def measured(calculator: Calculator, asking: Asking, names: Mapping[str, Any]) -> dict[str, str]:
    """Which measure in hand stands in each field that has one and was not typed into: field name → its name there.

    names: those of the measures in hand.
    """
    found = {}
    for field in calculator.fields:
        if field.name not in asking.typed and (name := _first(field, calculator, asking, names)):
            found[field.name] = name
    return found


def known_as(calculator: Calculator, own: Container[str]) -> dict[str, tuple[str, ...]]:
    """What the fields of a calculator are known as, by their names. own: those that hold something of the page's."""
    return {
        field.name: field.names_in_hand for field in calculator.fields if field.names_in_hand and field.name not in own
    }


def own_in_walk(step: WalkStep) -> set[str]:
    """Fields of a step that hold no measure in hand: what earlier steps give, and what the walk begins with."""
    return {*step.taken, *step.settled, *step.own}


def known_as_in(walk: Walk) -> dict[str, dict[str, tuple[str, ...]]]:
    """What the fields of a walk are known as: calculator → field → its names."""
    return {step.calculator: known_as(calculator_named(step.calculator), own_in_walk(step)) for step in walk.steps}


def begun_with(walk: Walk, typed: Mapping[str, Mapping[str, str]]) -> dict[str, tuple[str, str] | None]:
    """Measures that a walk may begin with in place of those it takes over, such as the finished size: name → calculator
    and field, None while it does not."""
    found: dict[str, tuple[str, str] | None] = {}
    for step in walk.steps:
        back = step.given_back
        if back is None:
            continue
        calculator, own = calculator_named(step.calculator), {**step.settled, **typed.get(step.calculator, {})}
        name, text = back.when
        begins = Asking({name: text})
        for field in (calculator.field(each) for each in step.taken):
            for known_as in field.names_in_hand[:1]:
                place = (step.calculator, field.name) if back.applies(own) else None
                found[_named(known_as, calculator, begins)] = place
    return found


def field_of(name: str) -> Field:
    """A field that asks for a measure in hand, by its name there. Raises KeyError for a name that no field has."""
    return _fields()[name]


@cache
def _fields() -> dict[str, Field]:
    found: dict[str, Field] = {}
    for calculator in catalogue().values():
        for field in calculator.fields:
            for template in field.names_in_hand:
                for name in _names(template, calculator):
                    found.setdefault(name, field)
    return found


def _names(template: str, calculator: Calculator) -> list[str]:
    """Every name that a field may be known as, whatever the other fields say."""
    names = [template]
    for blank in Phrase(template).blanks():
        choices = calculator.field(blank).kind.choices
        names = [name.replace(f"{{{blank}}}", option) for name in names for option in choices]
    return names


def _first(field: Field, calculator: Calculator, asking: Asking, names: Mapping[str, Any]) -> str:
    known_as = (_named(each, calculator, asking) for each in field.names_in_hand)
    return next((name for name in known_as if name in names), "")


def _named(template: str, calculator: Calculator, asking: Asking) -> str:
    """The name with what other fields say in it, such as whether a size is cut or finished."""
    said = {blank: asking.text(calculator.field(blank)) for blank in Phrase(template).blanks()}
    return template.format(**said)
