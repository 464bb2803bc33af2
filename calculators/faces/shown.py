"""What the browser is told once a calculator has answered, or has a value to ask for again."""

from typing import Any

from calculators.answering import Asking
from calculators.declaration import Answer, AskAgain, Calculator
from calculators.faces.answered import answered
from calculators.faces.markup import html
from calculators.faces.plain import refusals


def shown(calculator: Calculator, answer: Answer, asking: Asking) -> dict[str, Any]:
    """``answer``: its HTML; ``texts``: what now stands in every field; ``written``: typed values with their unit added."""
    return {
        "answer": "".join(html(part) for part in answered(calculator, answer, asking)),
        "texts": {field.name: asking.text(field) for field in calculator.fields},
        "written": {
            name: calculator.field(name).kind.write_out(text, asking.ruler) for name, text in asking.typed.items() if text.strip()
        },
    }


def refused(calculator: Calculator, trouble: AskAgain, asking: Asking) -> dict[str, Any]:
    """``refusals``: a sentence for each field in trouble."""
    return {"refusals": refusals(trouble, calculator, asking)}
