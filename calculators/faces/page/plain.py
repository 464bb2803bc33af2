"""A calculator's answer as plain data, for a terminal or a test: lengths as numbers in millimetres."""

from collections.abc import Mapping
from typing import Any

from calculators.asking.answering import Asking, answer, filled, read
from calculators.asking.declaration import Calculator, InvalidInput


def plain_answer(calculator: Calculator, asking: Asking) -> dict[str, Any]:
    """``{"calculator", "inputs", "results", "notes"}``; raises InvalidInput when values cannot be used."""
    values = read(calculator, asking)
    reply = answer(calculator, asking)
    return {
        "calculator": calculator.name,
        "inputs": _plain(calculator, values),
        "results": _plain(calculator, reply.results),
        "notes": [filled(note, calculator, asking.ruler) for note in reply.notes],
    }


def refusals(error: InvalidInput, calculator: Calculator, asking: Asking) -> dict[str, str]:
    """The sentence for each field in trouble."""
    return {name: filled(sentence, calculator, asking.ruler) for name, sentence in error.sentences.items()}


def _plain(calculator: Calculator, values: Mapping[str, Any]) -> dict[str, Any]:
    return {name: None if value is None else calculator.kinds[name].plain(value) for name, value in values.items()}
