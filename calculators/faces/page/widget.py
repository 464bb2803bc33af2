"""A whole calculator on a page: what it asks and what it answers, complete before any script runs."""

import json
import xml.etree.ElementTree as ET
from collections.abc import Collection

from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import Calculator, InvalidInput
from calculators.batch.follows import takes_over
from calculators.batch.in_hand import known_as
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.form import form_html
from calculators.faces.page.markup import NOT_SEARCHED, element
from calculators.faces.page.plain import refusals

OLD_ANSWER = "This answer is from your last complete entry. Correct the marked box and it will update."


def widget(
    calculator: Calculator,
    asking: Asking,
    place: str,
    given: dict[str, str],
    level: int = 2,
    settled: Collection[str] = (),
) -> ET.Element:
    """A calculator with its answer.

    place: a word that keeps this widget's ids apart from others on the page.
    given: what the page itself fills in; kept on the element so that the browser can go back to it.
    level: of its heading. settled: choices among those given that the page makes and does not ask for.
    """
    try:
        in_answer = answer_html(calculator, answer(calculator, asking), asking)
    except InvalidInput as error:
        in_answer = unanswered(calculator, error, asking)
    made = section(calculator, asking, place, given, in_answer, settled=settled)
    made.insert(0, element(f"h{level}", {"class": "unseen", **NOT_SEARCHED}, calculator.title))
    return made


def unanswered(calculator: Calculator, error: InvalidInput, asking: Asking) -> list[ET.Element]:
    """What a built page says where a studio's own numbers have no answer: why, in the words that a blank would get.

    Raises InvalidInput where no studio settled them, since then the page is wrong.
    """
    if asking.method.is_example:
        raise error
    return [element("p", {"class": "trouble"}, each) for each in refusals(error, calculator, asking).values()]


def section(
    calculator: Calculator,
    asking: Asking,
    place: str,
    given: dict[str, str],
    in_answer: list[ET.Element],
    own: Collection[str] = (),
    settled: Collection[str] = (),
) -> ET.Element:
    """The frame of a calculator: its form, a place to say that an answer is an old one, and the answer.

    own: fields, beside those given, that hold no measure of the work in hand here. settled: choices that are not asked.
    """
    return element(
        "section",
        {
            "class": "calculator",
            "id": place,
            "data-calculator": calculator.name,
            "data-given": json.dumps(given),
            "data-in-hand": json.dumps(known_as(calculator, {*given, *own})),
            "aria-label": calculator.title,
            **({"data-takes-over": ""} if takes_over(calculator) else {}),
            **({"data-alone": ""} if calculator.alone else {}),
            **NOT_SEARCHED,
        },
        form_html(calculator, asking, place, settled),
        element("p", {"class": "old-answer", "hidden": True}, OLD_ANSWER),
        element("div", {"class": "answer"}, *in_answer),
    )
