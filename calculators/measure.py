"""Lengths as a workroom writes them: exact inside, rounded only when shown.

Inside the calculators a length is a number of millimetres: a ``Fraction`` where the arithmetic is exact, a ``float`` only
where geometry makes it irrational. The inch is 25.4 mm and the yard 0.9144 m exactly (NBS, agreement of 1 July 1959).
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import Literal

MM_IN = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction(254, 10),
    "ft": Fraction(3048, 10),
    "yd": Fraction(9144, 10),
}
METRIC, INCH = ("m", "cm", "mm"), ("yd", "ft", "in")
_EIGHTH = Fraction(1, 8)  # shops sell yards in eighths

_SPELLINGS = {
    "mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "in": "in", "in.": "in", "inch": "in", "inches": "in", '"': "in", "″": "in", "”": "in", "“": "in", "''": "in",
    "ft": "ft", "ft.": "ft", "foot": "ft", "feet": "ft", "'": "ft", "′": "ft", "’": "ft", "‘": "ft",
    "yd": "yd", "yd.": "yd", "yds": "yd", "yard": "yd", "yards": "yd",
}
VULGAR = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
    "⅙": "1/6", "⅚": "5/6", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
}
_NUMBER = re.compile(r"\d+[.,]\d+|[.,]\d+|\d+(?:(?:\s+|-)\d+\s*/\s*\d+|\s*/\s*\d+)?", re.ASCII)
_UNIT = re.compile(r"''|[\"″”“'′’‘]|[a-z]+\.?", re.ASCII)
_ENDING_IN_0 = re.compile(r"[1-9]\d{0,2}\.\d\d0")
_TWO_LENGTHS = re.compile(r"[1-9][^x×*]*?(?:[x×*]|\bby\b)\s*\d", re.ASCII)  # 40 x 40
_LONGEST_TEXT = 60
_A_HAIR = Fraction(1, 10**6)

Toward = Literal["nearest", "down", "up"]


class NotALength(ValueError):
    """Raised with one sentence that says what is wrong with a typed length and what would be right."""


@dataclass(frozen=True)
class Ruler:
    """The ruler in hand: the unit it is read in and its smallest division.

    unit: "cm", "mm" or "in".
    step: smallest division, in that unit (0.1 for a cm ruler divided in mm, 1/16 for an inch ruler).
    """

    unit: str
    step: Fraction

    @property
    def unit_to_read(self) -> str:
        """The unit behind the word in, where "in in" could not be read."""
        return "inches" if self.unit == "in" else self.unit

    @cached_property
    def step_mm(self) -> Fraction:
        return MM_IN[self.unit] * self.step

    @cached_property
    def places(self) -> int:
        """The decimal places that show every division."""
        return next(places for places in range(7) if 10**places % self.step.denominator == 0)

    def read(self, mm: Fraction | float, toward: Toward = "nearest") -> Fraction:
        """The division of this ruler that a length falls on [mm]: the nearest, or the next one down or up."""
        return self.count(mm, toward) * self.step_mm

    def count(self, mm: Fraction | float, toward: Toward = "nearest") -> int:
        """How many divisions of this ruler a length takes: the nearest whole number, or the next one down or up."""
        return _count(*self._share(mm), toward)

    def _share(self, mm: Fraction | float) -> tuple[int, int]:
        """A length in divisions of this ruler, as numerator and denominator: every length on a page comes through here, and a Fraction is slow."""
        length, step = mm if isinstance(mm, Fraction) else Fraction(mm), self.step_mm
        return length.numerator * step.denominator, length.denominator * step.numerator


def _count(top: int, bottom: int, toward: Toward) -> int:
    nearest = (2 * top + bottom) // (2 * bottom)
    if toward == "nearest" or abs(top - nearest * bottom) * 10**6 < bottom:
        return nearest  # a float a hair off a division is on it
    return top // bottom if toward == "down" else -(-top // bottom)


CENTIMETRES = Ruler("cm", Fraction(1, 10))
MILLIMETRES = Ruler("mm", Fraction(1))
SIXTEENTHS = Ruler("in", Fraction(1, 16))


def parse_length(text: str, bare_unit: str = "cm") -> Fraction:
    """Read a length as typed: ``36 cm``, ``360mm``, ``14 1/4 in``, ``14¼"``, ``1 yd 4 in``, ``2'6"``, ``35,7``.

    text: what the person typed.
    bare_unit: the unit of a number that stands alone.
    Returns the exact length [mm], never negative.
    Raises NotALength with a sentence for the person.
    """
    if not text.strip():
        raise NotALength("Nothing is written here yet. Write a length, such as 36 cm or 14 1/4 in.")
    if len(text) > _LONGEST_TEXT:
        raise NotALength(f"That is {len(text)} characters long. Write one length, such as 36 cm or 14 1/4 in.")
    terms = _terms(_tidy(text), text.strip())
    if len(terms) == 1:
        number, unit, digits = terms[0]
        _refuse_two_ways(number, unit, digits, bare_unit)
        return number * MM_IN[unit or bare_unit]
    units = [unit for _, unit, _ in terms]
    system = METRIC if units[0] in METRIC else INCH
    places = [system.index(unit) if unit in system else -1 for unit in units]
    if -1 in places or any(later <= earlier for earlier, later in zip(places, places[1:])):
        raise NotALength(
            f"“{quote(text)}” does not read as one length: name each unit once, the larger first, such as 1 yd 4 in or 1 m 20 cm."
        )
    return sum((number * MM_IN[unit] for number, unit, _ in terms), Fraction(0))


def system_of(text: str) -> str:
    """The ruler a length was written for: "cm" for metric units, "in" for inches and yards, "" for a bare number.

    Raises NotALength as parse_length does.
    """
    unit = _terms(_tidy(text), text.strip())[0][1]
    return "" if unit is None else "cm" if unit in METRIC else "in"


def _refuse_two_ways(number: Fraction, unit: str | None, digits: str, bare_unit: str) -> None:
    """Refuse what one maker means in one way and another in another: 3/4 on a centimetre ruler, 1.500 for a thousand or so."""
    if unit is None and bare_unit in METRIC and "/" in digits and number < 1:
        raise NotALength(f"{digits} can be read two ways. Write {digits} in, or {_decimal(number, 3)} {bare_unit}.")
    if (unit or bare_unit) in ("cm", "mm") and _ENDING_IN_0.fullmatch(digits):
        raise _two_ways(digits)


def _two_ways(digits: str) -> NotALength:
    plain, decimal = re.sub("[.,]", "", digits), _decimal(Fraction(digits.replace(",", ".")), 3)
    return NotALength(f"{digits} can be read two ways. Write {plain} or {decimal}, whichever you mean.")


def _tidy(text: str) -> str:
    text = re.sub(f"(?<=[0-9])-(?=[{''.join(VULGAR)}])", " ", text)
    for vulgar, plain in VULGAR.items():
        text = text.replace(vulgar, f" {plain}")
    text = re.sub(r"\s+", " ", text.replace("⁄", "/")).strip()
    if text[:1] in ("-", "−", "–"):
        raise NotALength("A length is never less than nothing. Write it without the minus sign.")
    return text.removeprefix("+").strip().lower()


def _terms(rest: str, typed: str) -> list[tuple[Fraction, str | None, str]]:
    """Each number, its unit if it has one, and its digits as written."""
    if re.search(r"/\s*(?!\s*\d)", rest):
        raise NotALength(f"The fraction in “{quote(typed)}” is not finished. Write it whole, such as 14 1/4 in.")
    terms = []
    while rest:
        number = _NUMBER.match(rest)
        if not number:
            raise _not_a_length(typed)
        value, rest = _number(number.group(), typed), rest[number.end():].lstrip()
        unit = _UNIT.match(rest)
        if unit and unit.group() not in _SPELLINGS:
            raise _not_a_length(typed)
        if not unit and (rest or terms):
            raise _not_a_length(typed)
        terms.append((value, _SPELLINGS[unit.group()] if unit else None, number.group()))
        rest = rest[unit.end():].lstrip() if unit else ""
    if not terms:
        raise _not_a_length(typed)
    return terms


def _number(digits: str, typed: str) -> Fraction:
    if "/" in digits:
        whole, _, fraction = re.sub(r"\s*/\s*", "/", digits.replace("-", " ")).rpartition(" ")
        top, bottom = (int(part) for part in fraction.split("/"))
        if bottom == 0:
            raise NotALength("Nothing can be divided into 0 parts. Write a fraction such as 1/4.")
        if whole.strip() and top >= bottom:
            raise NotALength(f"After a whole number the fraction must be less than one. Write “{quote(typed)}” another way.")
        if top > bottom and not whole.strip() and (run_together := _run_together(fraction)):
            raise NotALength(f"{fraction} can be read two ways. Write {run_together} or {_mixed(Fraction(top, bottom))}, whichever you mean.")
        return int(whole or 0) + Fraction(top, bottom)
    if re.fullmatch(r"[1-9]\d{0,2},\d{3}", digits):
        raise _two_ways(digits)
    return Fraction(digits.replace(",", "."))


def _run_together(fraction: str) -> str:
    """What a top-heavy fraction is with the space put back that may be missing, 3 1/2 for 31/2; empty where none can be."""
    top, bottom = fraction.split("/")
    for cut in range(1, len(top)):
        whole, part = top[:cut], top[cut:]
        if int(whole) and part[0] != "0" and int(part) < int(bottom):
            return f"{whole} {part}/{bottom}"
    return ""


def _not_a_length(typed: str) -> NotALength:
    if _TWO_LENGTHS.search(typed.lower()):
        return NotALength(f"“{quote(typed)}” is not a length but two. Write one of them here, the other in a blank of its own.")
    return NotALength(f"“{quote(typed)}” is not a length. Write a number with cm, mm, m, in or yd, such as 36 cm or 14 1/4 in.")


def quote(text: str, longest: int = 24) -> str:
    """What was typed, cut short enough to stand inside a sentence, with a dot for every letter that cannot be seen."""
    text = "".join(letter if letter.isprintable() else "·" for letter in " ".join(text.split()))
    return text if len(text) <= longest else text[: longest - 1] + "…"


def show_length(mm: Fraction | float, ruler: Ruler, toward: Toward = "nearest") -> str:
    """A length as it is read off a ruler: ``35.7 cm``, ``357 mm``, ``14 1/16 in``.

    Starts with ``about`` when the ruler cannot show the length exactly.
    """
    top, bottom = ruler._share(mm)
    divisions = _count(top, bottom, toward)
    off = abs(top - divisions * bottom)
    about = "about " if off and Fraction(off, bottom) * ruler.step_mm > _A_HAIR else ""
    return f"{about}{_digits(divisions, ruler)} {ruler.unit}"


def show_exactly(mm: Fraction, unit: str) -> str:
    """A length written so that reading it back gives the same length: as a decimal if it ends, else as a fraction."""
    value = Fraction(mm) / MM_IN[unit]
    if unit != "in" and 10**6 % value.denominator == 0:
        return f"{_decimal(value, 6)} {unit}"
    return f"{_mixed(value)} {unit}"


def _digits(divisions: int, ruler: Ruler) -> str:
    step = ruler.step
    if ruler.unit == "in" or (ruler.unit == "yd" and step == _EIGHTH):
        return _mixed(divisions * step)
    return _decimal(divisions * step.numerator / step.denominator, ruler.places)


def _decimal(value: Fraction | float, places: int) -> str:
    text = f"{float(value):.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _mixed(value: Fraction) -> str:
    sign, value = ("−" if value < 0 else ""), abs(value)
    whole, part = divmod(value, 1)
    if not part:
        return f"{sign}{whole}"
    fraction = f"{part.numerator}/{part.denominator}"
    return f"{sign}{whole} {fraction}" if whole else f"{sign}{fraction}"
