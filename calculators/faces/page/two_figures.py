"""A measure that has a figure for each ruler: how the two stand beside each other, and what is said where they are two
measures."""

import xml.etree.ElementTree as ET
from collections.abc import Iterator

from calculators.asking.answering import Asking
from calculators.asking.declaration import Calculator
from calculators.asking.house_method import HouseMethod, Written, on_ruler
from calculators.documents.house_method.two_rulers import RULER_NAMES, SIDES, clash_sentence, side_of
from calculators.faces.page.markup import Content, element
from calculators.values.kind import Kind
from calculators.values.measure import Ruler
from calculators.values.phrase import Phrase, say


def in_both(written: Written, kind: Kind, ruler: Ruler, follows: str = "") -> list[Content]:
    """A measure for the ruler in hand, and small beside it what it is on the other one.

    follows: the side whose figure only follows the other.
    """
    text = kind.house_text(on_ruler(written, ruler), ruler)
    if not kind.two_figures or isinstance(written, str) or written["cm"] == written["in"]:
        return [text]
    here, other = side_of(ruler), _other(ruler)
    beside = (
        f"follows {written[other]}"
        if follows == here
        else f"{written[other]} follows"
        if follows == other
        else written[other]
    )
    return [text, " ", element("small", None, beside)]


def beside_blank(path: str, kind: Kind, ruler: Ruler, method: HouseMethod, written: Written) -> str:
    """What is said under the blank of an entry of the method's own, of the ruler that is not in hand; empty where
    nothing is to be said."""
    if not kind.two_figures or isinstance(written, str) or path in method.clashing:
        return ""
    here, other = side_of(ruler), _other(ruler)
    if method.follows.get(path) == here:
        return (
            f"Follows {written[other]}, written for the {RULER_NAMES[other]}. Write over it for a round figure on "
            "this one."
        )
    return f"On the {RULER_NAMES[other]}: {written[other]}{', which follows it' if path in method.follows else ''}."


def clash_told(path: str, method: HouseMethod) -> ET.Element | None:
    """One sentence where two measures stand under one name, with a button for each that keeps it; None where one stands
    there."""
    if path not in method.clashing:
        return None
    figures = method.clashing[path]
    buttons = (
        element("button", {"type": "button", "data-keep-figure": path, "data-figure-text": text}, f"Keep {text}")
        for text in figures
    )
    return element(
        "div",
        {"class": "trouble clash"},
        element("p", None, clash_sentence(*figures)),
        element("p", None, *(each for button in buttons for each in (button, " "))),
    )


def clash_notes(calculator: Calculator, asking: Asking) -> Iterator[Phrase]:
    """A note for every blank left alone that begins with a measure of which the method has two."""
    for field in calculator.fields:
        figures = asking.method.clashing.get(f"measures.{field.default}")
        if figures and field.name not in asking.taken and not asking.typed.get(field.name, "").strip():
            yield say(
                "{label:text}: two measures stand under this name in “{method:text}”, {cm:text} and {inch:text}. "
                    "Keep one of them there before you cut.",
                label=field.label, method=asking.method.name, cm=figures[0], inch=figures[1],
            )  # fmt: skip


def _other(ruler: Ruler) -> str:
    return SIDES[1 - SIDES.index(side_of(ruler))]
