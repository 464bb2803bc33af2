"""A whole calculator on a page: what it asks and what it answers, complete before any script runs."""

import json
import xml.etree.ElementTree as ET

from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import Calculator
from calculators.faces.page.answered import answered
from calculators.faces.page.asked import asked_form
from calculators.faces.page.markup import NOT_SEARCHED, element

OLD_ANSWER = "This answer is from your last complete entry. Correct the marked box and it will update."


def widget(calculator: Calculator, asking: Asking, place: str, given: dict[str, str]) -> ET.Element:
    """A calculator with its answer.

    place: a word that keeps this widget's ids apart from others on the page.
    given: what the page itself fills in; kept on the element so that the browser can go back to it.
    """
    return section(calculator, asking, place, given, answered(calculator, answer(calculator, asking), asking))


def section(
    calculator: Calculator, asking: Asking, place: str, given: dict[str, str], in_answer: list[ET.Element]
) -> ET.Element:
    """The frame of a calculator: its form, a place to say that an answer is an old one, and the answer."""
    return element(
        "section",
        {
            "class": "calculator",
            "id": place,
            "data-calculator": calculator.name,
            "data-given": json.dumps(given),
            "aria-label": calculator.title,
            **NOT_SEARCHED,
        },
        asked_form(calculator, asking, place),
        element("p", {"class": "old-answer", "role": "status", "hidden": True}, OLD_ANSWER),
        element("div", {"class": "answer"}, *in_answer),
    )
