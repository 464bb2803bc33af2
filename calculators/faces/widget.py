"""A whole calculator on a page: what it asks and what it answers, complete before any script runs."""

import json
import xml.etree.ElementTree as ET

from calculators.answering import Asking, answer
from calculators.declaration import Calculator
from calculators.faces.answered import answered
from calculators.faces.asked import asked_form
from calculators.faces.markup import add, element
from calculators.measure import Ruler


def widget(calculator: Calculator, asking: Asking, place: str, given: dict[str, str]) -> ET.Element:
    """A calculator with its answer.

    place: a word that keeps this widget's ids apart from others on the page.
    given: what the page itself fills in; kept on the element so that the browser can go back to it.
    """
    reply = answer(calculator, asking)
    section = element(
        "section",
        {"class": "calculator", "id": place, "data-calculator": calculator.name, "data-given": json.dumps(given), "aria-label": calculator.title},
        asked_form(calculator, asking, place),
    )
    add(section, element("div", {"class": "answer"}, *answered(calculator, reply, asking.ruler, other_ruler(asking))))
    return section


def other_ruler(asking: Asking) -> Ruler:
    """The ruler shown beside the one in hand."""
    return asking.method.rulers["cm" if asking.ruler.unit == "in" else "in"]
