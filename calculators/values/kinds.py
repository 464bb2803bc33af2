"""The kinds of value that most calculators ask for and answer with: lengths, numbers, counts, choices, words and
tables."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from random import Random
from typing import Any, ClassVar

from calculators.values.kind import Control, InColumns, InvalidValue, Kind, Layout, number_as_typed, plain_number
from calculators.values.measure import (
    MM_IN,
    InvalidLength,
    Ruler,
    Toward,
    parse_length,
    quote,
    show_exactly,
    show_length,
    system_of,
    write_units,
)
from calculators.values.numerals import InvalidNumber, decimal, mixed, numeral


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
    mode: ClassVar[str] = "decimal"
    keys: ClassVar[str] = "length"  # fraction stroke, space and units
    two_figures: ClassVar[bool] = True
    in_one_row: ClassVar[bool] = True
    units: ClassVar[Mapping[str, Fraction]] = MM_IN
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {
        "length": {},
        "length_up": {"toward": "up"},
        "length_down": {"toward": "down"},
    }

    def parse(self, text: str, ruler: Ruler) -> Fraction:
        try:
            value = parse_length(text, ruler.unit)
        except InvalidLength as problem:
            raise InvalidValue(str(problem)) from None
        return self._within(value, text, ruler)

    def carried(self, value: Fraction, ruler: Ruler) -> Fraction:
        return self._within(value, show_length(value, ruler), ruler)

    def _within(self, value: Fraction, text: str, ruler: Ruler) -> Fraction:
        if self.or_none and value == 0:
            return value
        if value < self.least:
            or_none = ", or 0 for none" if self.or_none else ""
            raise InvalidValue(
                f"{quote(text)} is too small here. The least that works is "
                f"{show_length(self.least, ruler, 'up')}{or_none}."
            )
        if value > self.most:
            raise InvalidValue(
                f"{quote(text)} is too much here. The most that works is {show_length(self.most, ruler, 'down')}."
            )
        return value

    def show(self, value: Fraction | float, ruler: Ruler) -> str:
        return show_length(value, self.on or ruler, self.toward)

    def write(self, value: Fraction | float, ruler: Ruler) -> str:
        on = (self.on or ruler).fine_enough_for(value)
        division = on.read(value, self.toward)
        is_shown = self.least <= division <= self.most and (division or not value)
        return show_length(division, on) if is_shown else show_exactly(value, on.unit)

    def plain(self, value: Fraction | float) -> int | float:
        return plain_number(value)

    def write_out(self, text: str, ruler: Ruler) -> str:
        return write_units(text, ruler.unit)

    def write_exactly(self, value: Fraction, ruler: Ruler) -> str:
        return show_exactly(value, ruler.unit)

    def system(self, text: str) -> str:
        return system_of(text)

    def samples(self, chance: Random, near: str = "") -> list[str]:
        share = Fraction(chance.uniform(0.9, 1.1)).limit_denominator(chance.choice([1, 10, 16, 97]))
        close = [share * parse_length(near)] if near else []
        sixteenths = [Fraction(chance.randint(0, 16 * part), 16) for part in (40, 400, int(self.most - self.least))]
        within = [each for each in (*close, *(self.least + each for each in sixteenths)) if self._takes(each)]
        none = [Fraction(0)] if self.or_none else []
        return [
            show_exactly(each, chance.choice(["mm", "cm", "m", "in"]))
            for each in (*within, self.least, self.most, *none)
        ]

    def invalid_samples(self, chance: Random) -> list[str]:
        beyond = [self.most + Fraction(1, 1000), *([self.least / 2] if self.least else [])]
        return [
            *(show_exactly(each, chance.choice(["mm", "cm", "in"])) for each in beyond),
            *("banana", "36 kg", "-36 cm", "36 x 36 cm", "1,100 mm", "nan", "1/0 in", "9" * 61),
        ]

    def _takes(self, value: Fraction) -> bool:
        return self.least <= value <= self.most


@dataclass(frozen=True)
class LongLength(Length):
    """A length of thread and the like, read and shown in metres, or in yards on an inch ruler."""

    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"long": {}}

    def parse(self, text: str, ruler: Ruler) -> Fraction:
        return super().parse(text, _long_ruler(ruler))

    def carried(self, value: Fraction, ruler: Ruler) -> Fraction:
        return super().carried(value, _long_ruler(ruler))

    def show(self, value: Fraction | float, ruler: Ruler) -> str:
        return super().show(value, _long_ruler(ruler))

    def write(self, value: Fraction | float, ruler: Ruler) -> str:
        return super().write(value, _long_ruler(ruler))

    def write_out(self, text: str, ruler: Ruler) -> str:
        return super().write_out(text, _long_ruler(ruler))


def _long_ruler(ruler: Ruler) -> Ruler:
    return Ruler("yd" if ruler.unit == "in" else "m", Fraction(1, 10))


@dataclass(frozen=True)
class Lengths(Kind):
    """Several lengths in order, such as the marks along an edge."""

    layout: ClassVar[Layout] = "marks"

    def show(self, value: Sequence[Fraction | float], ruler: Ruler) -> str:
        return " · ".join(self.marks(value, ruler))

    def marks(self, value: Sequence[Fraction | float], ruler: Ruler) -> list[str]:
        return [show_length(each, ruler) for each in value]

    def plain(self, value: Sequence[Fraction | float]) -> list[int | float]:
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
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"number": {"places": 3}}

    def parse(self, text: str, ruler: Ruler) -> Fraction:
        value = self._read(text)
        if not self.least <= value <= self.most:
            raise InvalidValue(
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
        except InvalidNumber as problem:
            raise InvalidValue(str(problem)) from None
        if not found or found.is_top_heavy:
            raise InvalidValue(
                f"“{quote(text)}” is not a number to work with. Write it in digits, such as {self.sample}{self.sign}."
            )
        return -found.value if below else found.value

    def show(self, value: Fraction | float, ruler: Ruler) -> str:
        text = f"{float(value):.{self.places}f}".replace("-", "−")
        text = text.rstrip("0").rstrip(".") if "." in text else text
        return f"{'0' if text == '−0' else text}{self.sign}"

    def plain(self, value: Fraction | float) -> int | float:
        return plain_number(value)

    def samples(self, chance: Random, near: str = "") -> list[str]:
        room = self.most - self.least
        within = [self.least + room * Fraction(chance.randint(0, parts), parts) for parts in (8, 100, 1000)]
        signs = ["", "", self.sign, *(f" {word}" for word in self.words)]
        return [f"{_in_digits(each)}{chance.choice(signs)}" for each in (*within, self.least, self.most)]

    def invalid_samples(self, chance: Random) -> list[str]:
        beyond = (self.most + Fraction(1, 100), self.least - Fraction(1, 100))
        return [*map(_in_digits, beyond), "banana", "1e2", "90 90", "1.2.3", "1,100", "nan", "36 cm", "9" * 61]


def _in_digits(value: Fraction) -> str:
    """A number so that it reads back as itself: as a decimal if that ends, else as a fraction."""
    return f"{'−' if value < 0 else ''}{decimal(abs(value), 4)}" if 10**4 % value.denominator == 0 else mixed(value)


@dataclass(frozen=True)
class Percent(Number):
    sign: str = " %"
    units: ClassVar[Mapping[str, Fraction]] = {"%": Fraction(1)}
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"percent": {}}
    words: ClassVar[tuple[str, ...]] = ("per cent", "percent")


@dataclass(frozen=True)
class DimensionalChange(Percent):
    """A dimensional change, negative for shrinkage (ISO 5077). Its sign is written: most who write a bare 4 mean a
    cloth that loses 4 %."""

    mode: ClassVar[str] = "text"  # a decimal keyboard has no sign

    def parse(self, text: str, ruler: Ruler) -> Fraction:
        value = super().parse(text, ruler)
        if value > 0 and not text.lstrip().startswith("+"):
            bare = text.strip().removesuffix("%").strip()
            raise InvalidValue(
                f"does it shrink by {quote(bare)} %, or grow? Write −{quote(bare)} if it shrinks, +{quote(bare)} if "
                "it grows."
            )
        return value

    def write(self, value: Fraction, ruler: Ruler) -> str:
        shown = self.show(value, ruler)
        return f"+{shown}" if value > 0 and self._read(shown) else shown

    def samples(self, chance: Random, near: str = "") -> list[str]:
        return [f"+{each}" if self._read(each) > 0 else each for each in super().samples(chance, near)]

    def invalid_samples(self, chance: Random) -> list[str]:
        return [*super().invalid_samples(chance), "4", "4 %"]


@dataclass(frozen=True)
class Angle(Number):
    sign: str = "°"
    sample: str = "90"
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"angle": {}}
    words: ClassVar[tuple[str, ...]] = ("º", "degrees", "degree", "deg.", "deg")


_COUNT = re.compile(r"\+?(\d{1,9}|[1-9]\d{0,2}(?:,\d{3})+)|(half a|a|one|\d{1,7})\s*(?:dozen|doz\.?)", re.ASCII)
_IN_WORDS = {"half a": 6, "a": 12, "one": 12}


@dataclass(frozen=True)
class Count(Kind):
    """A whole number of things, also by the dozen: 24 is ``2 dozen``, 6 ``half a dozen``."""

    least: int = 0
    most: int = 10_000
    mode: ClassVar[str] = "numeric"
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"count": {}}

    def parse(self, text: str, ruler: Ruler) -> int:
        found = _COUNT.fullmatch(number_as_typed(text).lower())
        if not found:
            raise InvalidValue(f"“{quote(text)}” is not a count. Write a whole number, such as {max(self.least, 4)}.")
        plain, dozens = found.groups()
        count = int(plain.replace(",", "")) if plain else _IN_WORDS.get(dozens) or 12 * int(dozens)
        if not self.least <= count <= self.most:
            raise InvalidValue(f"{quote(text)} is outside what works here: from {self.least} to {self.most}.")
        return count

    def show(self, value: int, ruler: Ruler) -> str:
        return f"{value:,}"

    def write(self, value: int, ruler: Ruler) -> str:
        return str(value)

    def samples(self, chance: Random, near: str = "") -> list[str]:
        few, any_number = min(self.most, self.least + 30), chance.randint(self.least, self.most)
        dozens = chance.randint(-(-self.least // 12), max(few, 12) // 12)
        return [
            *map(str, (self.least, chance.randint(self.least, few), any_number, self.most)),
            f"{any_number:,}",
            *([f"{dozens} dozen"] if self.least <= 12 * dozens <= self.most else []),
        ]

    def invalid_samples(self, chance: Random) -> list[str]:
        below = [str(self.least - 1)] if self.least else []
        return [*below, str(self.most + 1), "-1", "2.5", "many", "1e2", "36 cm", "1/2", "nan", "9" * 61]


_MOST_NAMED = 12  # choices that a sentence names


@dataclass(frozen=True)
class Choice(Kind):
    """One of a few answers, each with the words shown for it."""

    options: Mapping[str, str] = field(default_factory=dict)
    control: ClassVar[Control] = "list"

    @property
    def choices(self) -> Mapping[str, str]:
        return self.options

    def parse(self, text: str, ruler: Ruler) -> str:
        key = text.strip().lower()
        if key not in self.options:
            named = [*filter(None, self.options)]
            more = f" and {len(named) - _MOST_NAMED} more" if len(named) > _MOST_NAMED else ""
            raise InvalidValue(f"“{quote(text)}” is not one of the choices: {', '.join(named[:_MOST_NAMED])}{more}.")
        return key

    def show(self, value: str, ruler: Ruler) -> str:
        return self.options[value]

    def write(self, value: str, ruler: Ruler) -> str:
        return value

    def house_text(self, text: str, ruler: Ruler) -> str:
        return self.options.get(text, text)

    def samples(self, chance: Random, near: str = "") -> list[str]:
        options = [each for each in self.options if each]
        return [*options, f" {chance.choice(sorted(options)).upper()} "]

    def invalid_samples(self, chance: Random) -> list[str]:
        return ["none of these", f"{chance.choice(sorted(self.options))} and more", "🧵"]


YES_NO_WORDS = {"yes": True, "no": False}


@dataclass(frozen=True)
class YesNo(Kind):
    control: ClassVar[Control] = "list"

    @property
    def choices(self) -> Mapping[str, str]:
        return {word: word for word in YES_NO_WORDS}

    def parse(self, text: str, ruler: Ruler) -> bool:
        if text.strip().lower() not in YES_NO_WORDS:
            raise InvalidValue(f"“{quote(text)}” is neither yes nor no. Write yes or no.")
        return YES_NO_WORDS[text.strip().lower()]

    def show(self, value: bool, ruler: Ruler) -> str:
        return "yes" if value else "no"

    def samples(self, chance: Random, near: str = "") -> list[str]:
        return [*YES_NO_WORDS, chance.choice([" Yes", "NO"])]

    def invalid_samples(self, chance: Random) -> list[str]:
        return ["perhaps", "1", "true", "ye", "yes no", "🧵"]


@dataclass(frozen=True)
class Text(Kind):
    longest: int = 80
    in_words: ClassVar[bool] = True
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"text": {}}

    def parse(self, text: str, ruler: Ruler) -> str:
        if len(text) > self.longest:
            raise InvalidValue(f"That is {len(text)} characters long. Keep it to {self.longest}.")
        return text.strip()

    def show(self, value: str, ruler: Ruler) -> str:
        """As it was written, with a dot for every letter that cannot be seen."""
        return value if value.isprintable() else "".join(each if each.isprintable() else "·" for each in value)

    def samples(self, chance: Random, near: str = "") -> list[str]:
        marks = [
            "<b>&amp;</b>",
            "{size:length}",
            "**36**",
            "50 % | 3; “4”",
            "ärmel 袖 🧵",
            "[1, 2]",
            "x",
            "=1+1",
            "'\"\\",
        ]
        several = " ".join(chance.choices(marks, k=chance.randint(1, 6)))
        return [each[: self.longest].strip() for each in (*marks, several, "Linen napkin", "n" * self.longest)]

    def invalid_samples(self, chance: Random) -> list[str]:
        return ["n" * (self.longest + 1)]


@dataclass(frozen=True)
class NamedMeasures(Text):
    """Measures in one text, each behind its name, such as “Overlap 12 cm, Hem depth 2 cm”: read by whoever knows the
    names."""

    longest: int = 600

    def parse(self, text: str, ruler: Ruler) -> str:
        for part in self.parts(super().parse(text, ruler)):
            if not part[0].isalpha():
                raise InvalidValue(
                    f"“{quote(part)}” does not begin with the name of a measure. Write the name, then the value, such "
                    "as “Hem depth 2 cm”."
                )
        return text.strip()

    @staticmethod
    def parts(text: str) -> list[str]:
        """Each name with its value. A comma parts two of them where a space follows; alone it may stand in a number."""
        return [part for each in re.split(r"[,;]\s+|[;\n]", text) if (part := each.strip())]

    def samples(self, chance: Random, near: str = "") -> list[str]:
        return ["Minutes for each 20 min", "minutes for each: 1 h"]

    def invalid_samples(self, chance: Random) -> list[str]:
        return [*super().invalid_samples(chance), "36 cm", "Hem depth 2 cm, 36 cm"]


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
    layout: ClassVar[Layout] = "table"

    @property
    def table(self) -> InColumns:
        return self

    @property
    def read(self) -> tuple[Column, ...]:
        """The columns that a maker reads."""
        return tuple(column for column in self.columns if not column.as_data)

    def show(self, value: Sequence[Mapping[str, Any]], ruler: Ruler) -> str:
        return "; ".join(", ".join(shown for shown in self.cells(row, ruler) if shown) for row in value)

    def cells(self, row: Mapping[str, Any], ruler: Ruler) -> list[str]:
        return ["" if row[c.name] is None else c.kind.show(row[c.name], ruler) for c in self.read]

    def plain(self, value: Sequence[Mapping[str, Any]]) -> list[dict[str, Any]]:
        return [
            {c.name: None if row[c.name] is None else c.kind.plain(row[c.name]) for c in self.columns} for row in value
        ]
