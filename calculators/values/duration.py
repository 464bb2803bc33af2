"""Time as a kind of value: how long work takes, in minutes."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from random import Random
from typing import Any, ClassVar

from calculators.values.kind import InvalidValue, Kind, number_as_typed, plain_number
from calculators.values.measure import Ruler, quote

_NUMBER = r"\d{1,6}(?:[.,]\d{1,2})?"
_CLOCK = re.compile(r"(\d{1,4}):([0-5]\d)", re.ASCII)
_PARTS = re.compile(
    rf"(?:(?P<h>{_NUMBER})\s*(?:h|hrs?|hours?)\.?)?\s*(?:(?P<min>{_NUMBER})(?![\d.,])\s*(?P<unit>m|mins?|minutes?)?\.?)?\s*(?:(?P<s>{_NUMBER})\s*(?:s|secs?|seconds?)\.?)?",
    re.ASCII | re.IGNORECASE,
)
_HOUR = 60


@dataclass(frozen=True)
class Minutes(Kind):
    """A time in minutes, read as ``80``, ``80 min``, ``1 h 20``, ``1:20`` (hours and minutes) or ``8 min 30 s``."""

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
            if re.fullmatch(_NUMBER, text.strip(), re.ASCII)
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
    parts = _PARTS.fullmatch(tidy)
    hours, minutes, seconds = (
        (_number(parts.group(name)) for name in ("h", "min", "s")) if parts and tidy else (None, None, None)
    )
    too_many = hours is not None and (minutes or 0) >= _HOUR or minutes is not None and (seconds or 0) >= 60
    loose = seconds is not None and minutes is not None and not (parts and parts.group("unit"))
    if hours is minutes is seconds is None or too_many or loose:
        raise InvalidValue(
            f"“{quote(text)}” is not a time to work with. Write minutes, such as 8.5 min, or hours and minutes, such "
            "as 1 h 20 min."
        )
    return (hours or 0) * _HOUR + (minutes or 0) + (seconds or Fraction(0)) / 60


def _number(digits: str | None) -> Fraction | None:
    return None if digits is None else Fraction(digits.replace(",", "."))
