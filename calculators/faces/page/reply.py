"""What the browser is told once a calculator has answered, or has a value to ask for again."""

from contextlib import suppress
from typing import Any

from calculators.asking.answering import Asking, written
from calculators.asking.declaration import Answer, Calculator, InvalidInput
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.markup import html
from calculators.faces.page.plain import refusals
from calculators.values.kind import InvalidValue


def answer_reply(calculator: Calculator, answer: Answer, asking: Asking) -> dict[str, Any]:
    """``answer``: its HTML; ``texts``, ``written`` as below."""
    return {
        "answer": "".join(html(part) for part in answer_html(calculator, answer, asking)),
        "texts": standing(calculator, asking),
        "written": written(calculator, asking),
    }


def invalid_reply(calculator: Calculator, error: InvalidInput, asking: Asking) -> dict[str, Any]:
    """``refusals``: a sentence for each field in error; ``instead``: what a button beside one puts there; ``texts``,
    ``written`` as below."""
    return {
        "refusals": refusals(error, calculator, asking),
        "instead": _instead(error, calculator, asking),
        "texts": standing(calculator, asking),
        "written": written(calculator, asking),
    }


def _instead(error: InvalidInput, calculator: Calculator, asking: Asking) -> dict[str, str]:
    """What the kind of a field in trouble offers instead, such as an amount under the house's money."""
    fields = (field for field in calculator.fields if field.name in error.sentences)
    return {field.name: text for field in fields if (text := field.kind.instead(asking.text(field), asking.ruler))}


def standing(calculator: Calculator, asking: Asking) -> dict[str, str]:
    """What now stands in every field that can be read at all."""
    texts = {}
    for field in calculator.fields:
        with suppress(InvalidValue):
            texts[field.name] = field.kind.standing(asking.text(field))
    return texts
