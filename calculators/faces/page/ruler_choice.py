"""The ruler in hand, to choose at the top of a page; it shows itself once a script can act on it."""

import xml.etree.ElementTree as ET

from calculators.asking.answering import Asking
from calculators.asking.house_method import RULER_STEPS
from calculators.faces.page.markup import NOT_SEARCHED, element

_WORDS = {"cm 1/10": "cm, to 1 mm", "cm 1/2": "cm, to 5 mm", "mm 1": "mm", "mm 1/2": "mm, to half a mm"}


def ruler_choice(asking: Asking) -> ET.Element:
    """A choice of ruler, the one in hand chosen."""
    now = asking.ruler
    options = [
        element(
            "option",
            {"value": f"{unit} {step}", "selected": unit == now.unit and step == f"{now.step}"},
            _words(unit, step),
        )
        for unit, steps in RULER_STEPS.items()
        for step in steps
    ]
    return element(
        "div",
        {"class": "ruler-choice", "hidden": True, **NOT_SEARCHED},
        element("label", None, element("span", None, "Ruler in hand "), element("select", {"name": "ruler"}, *options)),
    )


def _words(unit: str, step: str) -> str:
    return _WORDS.get(f"{unit} {step}", f"inches, to {step} in")
