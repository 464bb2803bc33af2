"""The ruler in hand, to choose at the top of a page; it shows itself once a script can act on it."""

import xml.etree.ElementTree as ET

from calculators.answering import Asking
from calculators.faces.markup import element
from calculators.house_method import RULER_STEPS

_UNITS = {"cm": "cm", "in": "inches"}
_STEP_WORDS = {"1/10": "to 1 mm", "1/20": "to half a mm", "1/2": "to 5 mm"}


def ruler_choice(asking: Asking) -> ET.Element:
    """A choice of ruler, the one in hand chosen."""
    now = asking.ruler
    options = [
        element("option", {"value": f"{unit} {step}", "selected": unit == now.unit and step == f"{now.step}"}, _words(unit, step))
        for unit, steps in RULER_STEPS.items()
        for step in steps
    ]
    return element(
        "p", {"class": "ruler-choice", "hidden": True}, element("label", None, "Ruler in hand ", element("select", {"name": "ruler"}, *options))
    )


def _words(unit: str, step: str) -> str:
    return f"{_UNITS[unit]}, {_STEP_WORDS[step] if unit == 'cm' else f'to {step} in'}"
