"""Numbers inside sentences of the handbook: a calculator's result, or a value taken from a source."""

import re
from collections.abc import Mapping
from dataclasses import replace

from calculators.asking.answering import Asking, answer, read
from calculators.asking.declaration import invalid_input
from calculators.catalogue import calculator_named
from calculators.values.measure import METRIC, InvalidLength, parse_length, show_length

_UNIT = re.compile(r"[a-z'\"″”’′]")
_RANGE = re.compile(r"\s*–\s*")


NONE = "(none with these numbers)"
HOUSE = "house method"  # in place of a calculator: its own measures are the results


def worked(calculator_name: str, given: Mapping[str, str], asking: Asking) -> dict[str, str]:
    """Every result and every field of one calculator as it stands in a sentence: numbers of one calculation.

    calculator_name: HOUSE for what the house method settles. given: field name → text, filled in by the page or by the
    reader; the rest comes from the house method.
    Raises InvalidInput when the values given cannot be used.
    """
    if calculator_name == HOUSE:
        return {name: asking.method.measure(name, asking.ruler) for name in asking.method.measures}
    calculator = calculator_named(calculator_name)
    asking = replace(asking, typed=given)
    values = {**read(calculator, asking), **answer(calculator, asking).results}
    return {
        name: NONE if value is None else calculator.kinds[name].show(value, asking.ruler)
        for name, value in values.items()
    }


def number_text(calculator_name: str, wanted: str, given: Mapping[str, str], asking: Asking) -> str:
    """One of them. Raises InvalidInput as `worked` does, or where there is no such result with these values."""
    text = worked(calculator_name, given, asking)[wanted]
    if text == NONE:
        raise invalid_input(wanted, "There is no such number here: it comes only with other values.")
    return text


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
    except InvalidLength:
        return text
    if unit == ruler.unit:
        return text
    shown = [show_length(length, ruler) for length in lengths]
    about = "about " if any(part.startswith("about ") for part in shown) else ""
    bare = [part.removeprefix("about ").removesuffix(f" {ruler.unit}") for part in shown]
    return f"{text} ({about}{'–'.join(bare)} {ruler.unit})"
