"""Time as a kind of value: how long work takes, in minutes."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from random import Random
from typing import Any, ClassVar

from calculators.values.kind import InvalidValue, Kind, number_as_typed, plain_number
from calculators.values.measure import Ruler, quote
from calculators.values.numerals import InvalidNumber, numeral, numeral_at_start

_CLOCK = re.compile(r"(\d{1,4}):([0-5]\d)", re.ASCII)
_UNIT = re.compile(
    r"\s*(?:(?P<h>h|hrs?|hours?)|(?P<min>m|mins?|minutes?)|(?P<s>s|secs?|seconds?))(?![a-z])\.?\s*", re.I
)
_HOUR = 60
_COUNTS = {"h": Fraction(_HOUR), "min": Fraction(1), "s": Fraction(1, 60)}


@dataclass(frozen=True)
class Minutes(Kind):
    """A time in minutes, read as ``80``, ``80 min``, ``12 1/2``, ``1 h 20``, ``1:20`` (hours and minutes) or ``8 min
    30 s``."""

    least: Fraction = Fraction(0)
    most: Fraction = Fraction(100_000)
    mode: ClassVar[str] = "text"  # a decimal keyboard has no letters
    units: ClassVar[Mapping[str, Fraction]] = {"min": Fraction(1), "h": Fraction(_HOUR)}
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"minutes": {}}

    def parse(self, text: str, ruler: Ruler) -> Fraction:
        value = _read(text)
        if not self.least <= value <= self.most:
            raise InvalidValue(
                f"{quote(text)} is outside what works here: from {self.show(self.least, ruler)} to "
                f"{self.show(self.most, ruler)}."
            )
        return value

    def show(self, value: Fraction, ruler: Ruler) -> str:
        return _shown(value)

    def plain(self, value: Fraction) -> int | float:
        return plain_number(value)

    def write_out(self, text: str, ruler: Ruler) -> str:
        return (
            f"{text.strip()} min"
            if numeral(text.strip())
            else _shown(_read(text))
            if _CLOCK.fullmatch(text.strip())
            else text
        )

    def samples(self, chance: Random, near: str = "") -> list[str]:
        low, high = -(-self.least // 1), self.most // 1
        few = chance.randint(low, min(high, low + 500))
        texts = [
            *(str(low), f"{high} min", f"{few}", f"{few} min", f"{few // _HOUR}:{few % _HOUR:02}"),
            *(f"{few // _HOUR} h {few % _HOUR} min", f"{few}.5 minutes", f"{few} min 30 s"),
        ]
        return [each for each in texts if self.least <= _read(each) <= self.most]

    def invalid_samples(self, chance: Random) -> list[str]:
        below = [_shown(self.least - 1)] if self.least >= 1 else []
        return [*below, f"{self.most // 1 + 1} min", "soon", "1:80", "1 h 80", "-5", "20 cm", "nan", "9" * 61]


def _shown(value: Fraction) -> str:
    if value < _HOUR:
        return f"{_one_decimal(value)} min"
    hours, minutes = divmod((2 * value + 1) // 2, _HOUR)
    return f"{hours} h {minutes} min" if minutes else f"{hours} h"


def _one_decimal(value: Fraction) -> str:
    tenths = (2 * 10 * value + 1) // 2
    return f"{tenths // 10}.{tenths % 10}".removesuffix(".0")


def _read(text: str) -> Fraction:
    """A time as typed [min]; raises InvalidValue with one sentence."""
    tidy = number_as_typed(text)
    if clock := _CLOCK.fullmatch(tidy):
        return Fraction(int(clock.group(1)) * _HOUR + int(clock.group(2)))
    try:
        parts = _parts(tidy)
    except InvalidNumber as problem:
        raise InvalidValue(str(problem)) from None
    if not parts or any(value * _COUNTS[unit] >= _COUNTS[before] for (_, before), (value, unit) in pairwise(parts)):
        raise InvalidValue(
            f"“{quote(text)}” is not a time to work with. Write minutes, such as 8.5 min, or hours and minutes, such "
            "as 1 h 20 min."
        )
    return sum((value * _COUNTS[unit] for value, unit in parts), Fraction(0))


def _parts(text: str) -> list[tuple[Fraction, str]]:
    """Each number of a time with its unit, larger ones first; none where the text is no time."""
    parts: list[tuple[Fraction, str]] = []
    while text:
        found = numeral_at_start(text)
        if not found or found[0].is_top_heavy:
            return []
        number, text = found
        unit = _UNIT.match(text)
        before = parts[-1][1] if parts else ""
        name = unit.lastgroup if unit else "min" if not text and before in ("", "h") else None
        if not name or before and _COUNTS[name] >= _COUNTS[before]:
            return []
        parts.append((number.value, name))
        text = text[unit.end() :] if unit else ""
    return parts
