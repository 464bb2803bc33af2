"""Mass as a kind of value: what cloth weighs, in grams or ounces, and what a square metre or a square yard of it
weighs."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from random import Random
from typing import Any, ClassVar

from calculators.values.kind import InvalidValue, Kind, number_as_typed, plain_number
from calculators.values.measure import MM_IN, Ruler, quote
from calculators.values.numerals import InvalidNumber, decimal, mixed, numeral, numeral_at_start

_POUND = Fraction(45_359_237, 100_000)  # [g] exactly (NBS, agreement of 1 July 1959)
_OUNCE = _POUND / 16
_SQUARE_YARD = (MM_IN["yd"] / MM_IN["m"]) ** 2  # [m²]


@dataclass(frozen=True)
class Mass(Kind):
    """A mass in grams, read as ``724 g``, ``1.2 kg``, ``9 oz`` or ``1 lb 4 oz``; a bare number is grams on a metric
    ruler, ounces on an inch ruler."""

    least: Fraction = Fraction(0)
    most: Fraction = Fraction(1_000_000)
    mode: ClassVar[str] = "text"  # a decimal keyboard has no letters
    units: ClassVar[Mapping[str, Fraction]] = {
        "g": Fraction(1),
        "kg": Fraction(1000),
        "oz": _OUNCE,
        "lb": _POUND,
    }
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"mass": {}}
    bare: ClassVar[tuple[str, str]] = ("g", "oz")
    spellings: ClassVar[Mapping[str, str]] = {"lbs": "lb", "oz.": "oz", "lb.": "lb", "grams": "g", "ounces": "oz"}
    like: ClassVar[str] = "a weight in g, kg, oz or lb, such as 50 g or 2 oz"

    def parse(self, text: str, ruler: Ruler) -> Fraction:
        value = self._read(text, ruler)
        if not self.least <= value <= self.most:
            raise InvalidValue(
                f"{quote(text)} is outside what works here: from {self.show(self.least, ruler)} to "
                f"{self.show(self.most, ruler)}."
            )
        return value

    def _read(self, text: str, ruler: Ruler) -> Fraction:
        rest = number_as_typed(text).lower()
        terms: list[tuple[Fraction, str]] = []
        try:
            while found := numeral_at_start(rest):
                number, behind = found[0], found[1].lstrip()
                name = behind.split(" ")[0] if len(self.bare[0]) == 1 else behind
                terms.append((number.value, self.spellings.get(name, name)))
                rest = behind[len(name) :].lstrip()
        except InvalidNumber as problem:
            raise InvalidValue(str(problem)) from None
        named = [unit or self._bare(ruler) for _, unit in terms]
        pounds = len(terms) == 2 and [unit for _, unit in terms] == ["lb", "oz"] and terms[1][0] < 16
        if rest or not (len(terms) == 1 or pounds) or any(unit not in self.units for unit in named):
            raise InvalidValue(f"“{quote(text)}” does not read here. Write {self.like}.")
        return sum((number * self.units[unit] for (number, _), unit in zip(terms, named)), Fraction(0))

    def _bare(self, ruler: Ruler) -> str:
        return self.bare[ruler.unit == "in"]

    def show(self, value: Fraction, ruler: Ruler) -> str:
        if ruler.unit != "in":
            return f"{_rounded(value)} g" if value < 1000 else f"{decimal(Fraction(value) / 1000, 2)} kg"
        tenths = round(10 * value / _OUNCE)
        if tenths < 160:
            return f"{_rounded(value / _OUNCE, 1)} oz"
        pounds, ounces = divmod(round(value / _OUNCE), 16)
        return f"{pounds} lb {ounces} oz" if ounces else f"{pounds} lb"

    def write(self, value: Fraction, ruler: Ruler) -> str:
        shown = self.show(value, ruler)
        return shown if self.least <= self._read(shown, ruler) <= self.most else f"{mixed(value)} {self.bare[0]}"

    def plain(self, value: Fraction) -> int | float:
        return plain_number(value)

    def write_out(self, text: str, ruler: Ruler) -> str:
        return f"{text.strip()} {self._bare(ruler)}" if numeral(text.strip()) else text

    def samples(self, chance: Random, near: str = "") -> list[str]:
        metric, inch = self.bare
        low, high = -(-self.least // 1), self.most // 1
        few = chance.randint(low, min(high, 20 * low + 1000))
        ounces = Fraction(few) / self.units[inch]
        in_ounces = (
            [f"{mixed(Fraction(ounces.__ceil__()))} {inch}"] if ounces.__ceil__() * self.units[inch] < high else []
        )
        return [*(f"{each} {metric}" for each in (low, few, high)), f"{few}{metric}", *in_ounces]

    def invalid_samples(self, chance: Random) -> list[str]:
        metric, inch = self.bare
        below = [f"{mixed(self.least / 2)} {metric}"] if self.least else []
        return [
            *below,
            f"{self.most // 1 + 1} {metric}",
            "heavy",
            f"-5 {inch}",
            "20 cm",
            f"1 {inch} 2",
            "nan",
            "9" * 61,
        ]


@dataclass(frozen=True)
class MassPerArea(Mass):
    """What a square metre of cloth weighs, in grams, or a square yard, in ounces; inside, in g/m².

    Source: the ounce per square yard is 3.390 575 × 10⁻² kg/m² (NIST SP 811, appendix B.8), here exactly, from the
    pound and the yard.
    """

    least: Fraction = Fraction(10)
    most: Fraction = Fraction(2_000)
    units: ClassVar[Mapping[str, Fraction]] = {"g/m²": Fraction(1), "oz/yd²": _OUNCE / _SQUARE_YARD}
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"mass_per_area": {}}
    bare: ClassVar[tuple[str, str]] = ("g/m²", "oz/yd²")
    spellings: ClassVar[Mapping[str, str]] = {
        **dict.fromkeys(("g/m2", "gsm", "g per m²", "g per square metre"), "g/m²"),
        **dict.fromkeys(("oz/yd2", "oz/sq yd", "oz per sq yd", "oz per square yard"), "oz/yd²"),
    }
    like: ClassVar[str] = "g/m² or oz/yd² with the number, such as 170 g/m² or 5 oz/yd²"

    def show(self, value: Fraction, ruler: Ruler) -> str:
        unit = self._bare(ruler)
        return f"{_rounded(value / self.units[unit], 1 if unit == 'oz/yd²' else 0)} {unit}"


def _rounded(number: Fraction, places: int = 0) -> str:
    """A number with so many decimals, more of them where it is small, so that nothing is rounded to nothing."""
    return decimal(number, places if number >= 10 else places + 1 if number >= 1 else 4)
