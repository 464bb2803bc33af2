"""Numbers inside sentences of the handbook: a calculator's result, or a value taken from a source."""

import re
from dataclasses import replace
from typing import Mapping

from calculators.answering import Asking, answer, read
from calculators.catalogue import calculator_named
from calculators.declaration import ask_again
from calculators.measure import METRIC, NotALength, parse_length, show_length

_UNIT = re.compile(r"[a-z'\"″”’′]")
_RANGE = re.compile(r"\s*–\s*")


def number_text(calculator_name: str, wanted: str, given: Mapping[str, str], asking: Asking) -> str:
    """One result, or one field, of one calculator as it stands in a sentence.

    given: field name → text, filled in by the page or by the reader; the rest comes from the house method.
    Raises AskAgain when the values given cannot be used, or have no such result.
    """
    calculator = calculator_named(calculator_name)
    asking = replace(asking, typed=given)
    values = {**read(calculator, asking), **answer(calculator, asking).results}
    if values[wanted] is None:
        raise ask_again(wanted, "There is no such number here: it comes only with other values.")
    return calculator.kinds[wanted].show(values[wanted], asking.ruler)


def value_text(text: str, asking: Asking) -> str:
    """A value as its source prints it, and, if it is a length or a range of lengths, on the ruler in hand as well.

    A length names its unit: a needle’s 80/12 or a ticket’s 75 is no length and stays as it is.
    """
    ruler = asking.ruler
    unit = text.rpartition(" ")[2]
    if not _UNIT.search(unit):
        return text
    if unit in METRIC and ruler.unit in METRIC:
        return text
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
