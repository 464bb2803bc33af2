"""A quantity made of a calculator's results, such as ``raw_mark_1 - mark_1`` or ``64 * mark_1 / half_line``; and a
value as a source prints it."""

import re
from collections.abc import Mapping
from fractions import Fraction
from math import pi

from calculators.catalogue import catalogue
from calculators.values.kind import units as units_of_kinds

#: What one of each unit is that no kind is written in, in the units that plain answers are in.
_ONLY_PRINTED = {
    "": 1.0,
    "cm²": 100.0,
    "sq ft": 304.8**2,
    "°": 1.0,
    "rad": 180 / pi,
    "times": 1.0,
    "pieces": 1.0,
    "rows": 1.0,
    "boxes": 1.0,
    "buses": 1.0,
    "widths": 1.0,
    "layers": 1.0,
    "left over": 1.0,
}
_TOKEN = re.compile(r"\s*(?:(\d+(?:\.\d+)?)|([a-z]\w*)|([-+*/]))")
_PRINTED = re.compile(r"([−-]?)(?:(\d+) )?(\d+)(?:/(\d+)|\.(\d+))?(?: (\D.*)|(%|°))?")


def units() -> dict[str, float]:
    """What one of each unit is in the units that plain answers are in: mm, degrees, minutes, percent, pieces, money."""
    catalogue()  # a kind is known once a calculator has it
    return {**_ONLY_PRINTED, **{unit: float(size) for unit, size in units_of_kinds().items()}}


def printed_value(text: str) -> tuple[Fraction, str]:
    """A value as a source prints it and its unit: ``29.44 in``, ``3 2/3 yd``, ``−3.0 %``.

    text: number, perhaps with a fraction, then the unit. Returns the number and a key of `units`.
    Raises ValueError where it is neither.
    """
    found = _PRINTED.fullmatch(text)
    if not found:
        raise ValueError(f"{text!r} is no printed value")
    minus, whole, number, below, decimals, unit, sign = found.groups()
    size = Fraction(int(number), int(below)) if below else Fraction(f"{number}.{decimals or 0}")
    if whole and not below:
        raise ValueError(f"{text!r} has two numbers")
    unit = unit or sign or ""
    if unit not in units():
        raise ValueError(f"{unit!r} is no unit: {', '.join(filter(None, units()))}")
    size += int(whole or 0)
    return (-size if minus else size), unit


def quantity(text: str, results: Mapping[str, float]) -> float:
    """What a sum of products of results comes to; multiplying goes before adding, and everything from left to right.

    text: names of results and numbers with + − * / between them. results: by name, in the units of a plain answer.
    Raises ValueError where the text is no such sum, KeyError for a result that is not there.
    """
    tokens = [(found[1], found[2], found[3]) for found in _TOKEN.finditer(text)]
    if "".join(part or "" for found in tokens for part in found) != text.replace(" ", "") or len(tokens) % 2 == 0:
        raise ValueError(f"{text!r} is no sum of results")
    total, product = 0.0, _factor(tokens[0], results)
    for (*_, sign), factor in zip(tokens[1::2], tokens[2::2], strict=True):
        value = _factor(factor, results)
        if sign == "*":
            product *= value
        elif sign == "/":
            product /= value
        elif sign in ("+", "-"):
            total, product = total + product, value if sign == "+" else -value
        else:
            raise ValueError(f"{text!r} is no sum of results")
    return total + product


def _factor(token: tuple[str | None, str | None, str | None], results: Mapping[str, float]) -> float:
    number, name, _ = token
    if number is not None:
        return float(number)
    if name is not None:
        return results[name]
    raise ValueError("a sign stands where a result is due")
