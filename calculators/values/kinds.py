"""The kinds of value a calculator asks for and answers with: how each is read, shown and passed on."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any, ClassVar

from calculators.values.measure import (
    NotALength,
    Ruler,
    Toward,
    parse_length,
    quote,
    show_exactly,
    show_length,
    write_units,
)
from calculators.values.numerals import NotANumber, numeral


class Refused(ValueError):
    """Raised with one sentence for the person: what is wrong with what she typed and what would be right."""


LONGEST_NUMBER = 60


def number_as_typed(text: str) -> str:
    """What was typed where a number is asked for, without spaces around it; raises Refused where it is longer than any
    number."""
    if len(text) > LONGEST_NUMBER:
        raise Refused(
            f"that is {len(text)} characters long, and a number has at most {LONGEST_NUMBER}. Write it in fewer, "
            "such as 12.5."
        )
    return text.strip()


@dataclass(frozen=True)
class Kind:
    """What every kind of value can do. `mode` names the on-screen keyboard that suits it."""

    mode: ClassVar[str] = "text"

    def parse(self, text: str, ruler: Ruler) -> Any:
        """Read what was typed; raises Refused with one sentence."""
        raise NotImplementedError

    def show(self, value: Any, ruler: Ruler) -> str:
        """The value as a maker reads it."""
        raise NotImplementedError

    def write(self, value: Any, ruler: Ruler) -> str:
        """The value as text for a blank: it reads back as what is shown."""
        return self.show(value, ruler)

    def carried(self, value: Any, ruler: Ruler) -> Any:
        """A value taken over from elsewhere, if it can stand here; raises Refused with one sentence."""
        return value

    def plain(self, value: Any) -> Any:
        """The value as JSON: lengths as numbers in millimetres."""
        return value

    def standing(self, text: str) -> str:
        """A text that fills a field, in the form in which a page puts it into the field's control."""
        return text

    def on_ruler(self, text: str, ruler: Ruler) -> str:
        """A text of the house method, as it stands in a blank on the ruler in hand; read is always the text itself."""
        return text

    def write_out(self, text: str, ruler: Ruler) -> str:
        """What was typed, with the unit it was read in added, so that it keeps its meaning on another ruler."""
        return text


@dataclass(frozen=True)
class Length(Kind):
    """A length. Fields refuse what lies outside least..most; shown, and carried into a blank, it rounds towards
    `toward`.

    on: the ruler it is always shown on, where that is not the one in hand.
    or_none: whether 0 may stand as well, where it means that there is none of it.
    """

    least: Fraction = Fraction(0)
    most: Fraction = Fraction(200_000)
    toward: Toward = "nearest"
    on: Ruler | None = None
    or_none: bool = False
    mode: ClassVar[str] = "text"  # a decimal keyboard has no letters, fraction stroke or inch sign

    def parse(self, text, ruler):
        try:
            value = parse_length(text, ruler.unit)
        except NotALength as problem:
            raise Refused(str(problem)) from None
        return self._within(value, text, ruler)

    def carried(self, value, ruler):
        return self._within(value, show_length(value, ruler), ruler)

    def _within(self, value: Fraction, text: str, ruler: Ruler) -> Fraction:
        if self.or_none and value == 0:
            return value
        if value < self.least:
            or_none = ", or 0 for none" if self.or_none else ""
            raise Refused(
                f"{quote(text)} is too small here. The least that works is "
                f"{show_length(self.least, ruler, 'up')}{or_none}."
            )
        if value > self.most:
            raise Refused(
                f"{quote(text)} is too much here. The most that works is {show_length(self.most, ruler, 'down')}."
            )
        return value

    def show(self, value, ruler):
        return show_length(value, self.on or ruler, self.toward)

    def write(self, value, ruler):
        on = (self.on or ruler).fine_enough_for(value)
        division = on.read(value, self.toward)
        is_shown = self.least <= division <= self.most and (division or not value)
        return show_length(division, on) if is_shown else show_exactly(value, on.unit)

    def plain(self, value):
        return plain_number(value)

    def write_out(self, text, ruler):
        return write_units(text, ruler.unit)


@dataclass(frozen=True)
class LongLength(Length):
    """A length of thread and the like, read and shown in metres, or in yards on an inch ruler."""

    def parse(self, text, ruler):
        return super().parse(text, _long_ruler(ruler))

    def carried(self, value, ruler):
        return super().carried(value, _long_ruler(ruler))

    def show(self, value, ruler):
        return super().show(value, _long_ruler(ruler))

    def write(self, value, ruler):
        return super().write(value, _long_ruler(ruler))

    def write_out(self, text, ruler):
        return super().write_out(text, _long_ruler(ruler))


def _long_ruler(ruler: Ruler) -> Ruler:
    return Ruler("yd" if ruler.unit == "in" else "m", Fraction(1, 10))


@dataclass(frozen=True)
class Lengths(Kind):
    """Several lengths in order, such as the marks along an edge."""

    def show(self, value, ruler):
        return " · ".join(show_length(each, ruler) for each in value)

    def plain(self, value):
        return [plain_number(each) for each in value]


@dataclass(frozen=True)
class Number(Kind):
    """A plain number with a sign after it, such as % or °. words: what may be written in place of the sign."""

    least: Fraction = Fraction(0)
    most: Fraction = Fraction(100)
    sign: str = ""
    sample: str = "3.5"
    places: int = 1
    words: ClassVar[tuple[str, ...]] = ()
    mode: ClassVar[str] = "decimal"

    def parse(self, text, ruler):
        value = self._read(text)
        if not self.least <= value <= self.most:
            raise Refused(
                f"{quote(text)} is outside what works here: from {self.show(self.least, ruler)} to "
                f"{self.show(self.most, ruler)}."
            )
        return value

    def _read(self, text: str) -> Fraction:
        tidy = number_as_typed(text).lower()
        behind = next((each for each in (self.sign.strip(), *self.words) if each and tidy.endswith(each)), "")
        size = tidy.removesuffix(behind).strip().replace("−", "-").replace("–", "-")
        below = size.startswith("-")
        try:
            found = numeral(size[1:] if below or size.startswith("+") else size)
        except NotANumber as problem:
            raise Refused(str(problem)) from None
        if not found or (found.value >= 1 and re.match(r"\d+/", found.written)):  # 90/2 may be 45, or 90 1/2 gone wrong
            raise Refused(
                f"“{quote(text)}” is not a number to work with. Write it in digits, such as {self.sample}{self.sign}."
            )
        return -found.value if below else found.value

    def show(self, value, ruler):
        text = f"{float(value):.{self.places}f}".replace("-", "−")
        text = text.rstrip("0").rstrip(".") if "." in text else text
        return f"{'0' if text == '−0' else text}{self.sign}"

    def plain(self, value):
        return plain_number(value)


@dataclass(frozen=True)
class Percent(Number):
    sign: str = " %"
    words: ClassVar[tuple[str, ...]] = ("per cent", "percent")


@dataclass(frozen=True)
class Change(Percent):
    """A dimensional change, negative for shrinkage (ISO 5077). Its sign is written: most who write a bare 4 mean a
    cloth that loses 4 %."""

    mode: ClassVar[str] = "text"  # a decimal keyboard has no sign

    def parse(self, text, ruler):
        value = super().parse(text, ruler)
        if value > 0 and not text.lstrip().startswith("+"):
            bare = text.strip().removesuffix("%").strip()
            raise Refused(
                f"does it shrink by {quote(bare)} %, or grow? Write −{quote(bare)} if it shrinks, +{quote(bare)} if "
                "it grows."
            )
        return value


@dataclass(frozen=True)
class Angle(Number):
    sign: str = "°"
    sample: str = "90"
    words: ClassVar[tuple[str, ...]] = ("º", "degrees", "degree", "deg.", "deg")


_COUNT = re.compile(r"\+?(\d{1,9}|[1-9]\d{0,2}(?:,\d{3})+)|(half a|a|one|\d{1,7})\s*(?:dozen|doz\.?)", re.ASCII)
_IN_WORDS = {"half a": 6, "a": 12, "one": 12}


@dataclass(frozen=True)
class Count(Kind):
    """A whole number of things, also by the dozen: 24 is ``2 dozen``, 6 ``half a dozen``."""

    least: int = 0
    most: int = 10_000
    mode: ClassVar[str] = "numeric"

    def parse(self, text, ruler):
        found = _COUNT.fullmatch(number_as_typed(text).lower())
        if not found:
            raise Refused(f"“{quote(text)}” is not a count. Write a whole number, such as {max(self.least, 4)}.")
        plain, dozens = found.groups()
        count = int(plain.replace(",", "")) if plain else _IN_WORDS.get(dozens) or 12 * int(dozens)
        if not self.least <= count <= self.most:
            raise Refused(f"{quote(text)} is outside what works here: from {self.least} to {self.most}.")
        return count

    def show(self, value, ruler):
        return f"{value:,}"

    def write(self, value, ruler):
        return str(value)


@dataclass(frozen=True)
class Choice(Kind):
    """One of a few answers, each with the words shown for it."""

    options: Mapping[str, str] = field(default_factory=dict)

    def parse(self, text, ruler):
        key = text.strip().lower()
        if key not in self.options:
            raise Refused(f"“{quote(text)}” is not one of the choices: {', '.join(self.options)}.")
        return key

    def show(self, value, ruler):
        return self.options[value]

    def write(self, value, ruler):
        return value


YES_NO_WORDS = {"yes": True, "no": False}


@dataclass(frozen=True)
class YesNo(Kind):
    def parse(self, text, ruler):
        if text.strip().lower() not in YES_NO_WORDS:
            raise Refused(f"“{quote(text)}” is neither yes nor no. Write yes or no.")
        return YES_NO_WORDS[text.strip().lower()]

    def show(self, value, ruler):
        return "yes" if value else "no"


@dataclass(frozen=True)
class Text(Kind):
    longest: int = 80

    def parse(self, text, ruler):
        if len(text) > self.longest:
            raise Refused(f"That is {len(text)} characters long. Keep it to {self.longest}.")
        return text.strip()

    def show(self, value, ruler):
        return value


@dataclass(frozen=True)
class Column:
    """One column of a table result. as_data: only in plain data, where another column says it in words."""

    name: str
    label: str
    kind: Kind
    as_data: bool = False


@dataclass(frozen=True)
class Table(Kind):
    """Rows of named values; each row is a mapping from column name to value, None where there is none."""

    columns: tuple[Column, ...] = ()

    @property
    def read(self) -> tuple[Column, ...]:
        """The columns that a maker reads."""
        return tuple(column for column in self.columns if not column.as_data)

    def show(self, value, ruler):
        return "; ".join(", ".join(shown for shown in self.cells(row, ruler) if shown) for row in value)

    def cells(self, row: Mapping[str, Any], ruler: Ruler) -> list[str]:
        return ["" if row[c.name] is None else c.kind.show(row[c.name], ruler) for c in self.read]

    def plain(self, value):
        return [
            {c.name: None if row[c.name] is None else c.kind.plain(row[c.name]) for c in self.columns} for row in value
        ]


def plain_number(value: Fraction | float | int) -> int | float:
    """A number for JSON: whole where it is whole, without the noise in the last bits that differs between machines."""
    if isinstance(value, float):
        value = float(f"{value:.12g}")
    number = float(value)
    if not math.isfinite(number):
        raise ValueError(f"{value} is not a finite number")
    return int(number) if number == int(number) else number
