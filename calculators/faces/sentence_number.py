"""Numbers inside sentences of the handbook: a calculator's result, or a value taken from a source."""

import re
from typing import Mapping

from calculators.answering import Asking, answer
from calculators.catalogue import calculator_named
from calculators.measure import NotALength, parse_length, show_length

_RANGE = re.compile(r"\s*–\s*")


def number_text(calculator_name: str, result_name: str, given: Mapping[str, str], asking: Asking) -> str:
    """One result of one calculator as it stands in a sentence.

    given: field name → text, what the page fills in; the rest comes from the house method.
    """
    calculator = calculator_named(calculator_name)
    reply = answer(calculator, Asking(given, method=asking.method, wanted_ruler=asking.wanted_ruler))
    return calculator.result(result_name).kind.show(reply.results[result_name], asking.ruler)


def value_text(text: str, asking: Asking) -> str:
    """A value as its source prints it, and, if it is a length or a range of lengths, on the ruler in hand as well."""
    ruler = asking.ruler
    unit = text.rpartition(" ")[2]
    try:
        lengths = [parse_length(part if part.endswith(unit) else f"{part} {unit}") for part in _RANGE.split(text)]
    except NotALength:
        return text
    if unit == ruler.unit:
        return text
    shown = [show_length(length, ruler) for length in lengths]
    about = "about " if any(part.startswith("about ") for part in shown) else ""
    bare = [part.removeprefix("about ").removesuffix(f" {ruler.unit}") for part in shown]
    return f"{text} ({about}{'–'.join(bare)} {ruler.unit})"
