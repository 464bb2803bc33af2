"""Lengths as a workroom writes them: exact inside, rounded only when shown.

Inside the calculators a length is a number of millimetres: a ``Fraction`` where the arithmetic is exact, a ``float``
only
where geometry makes it irrational. The inch is 25.4 mm and the yard 0.9144 m exactly (NBS, agreement of 1 July 1959).
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property, lru_cache
from typing import Literal

from calculators.values.numerals import VULGAR, InvalidNumber, Numeral, decimal, mixed, numeral_at_start, two_ways

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
    "mm": "mm",
    "millimetre": "mm",
    "millimetres": "mm",
    "millimeter": "mm",
    "millimeters": "mm",
    "cm": "cm",
    "centimetre": "cm",
    "centimetres": "cm",
    "centimeter": "cm",
    "centimeters": "cm",
    "m": "m",
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
    "in": "in",
    "in.": "in",
    "inch": "in",
    "inches": "in",
    '"': "in",
    "″": "in",
    "”": "in",
    "“": "in",
    "''": "in",
    "ft": "ft",
    "ft.": "ft",
    "foot": "ft",
    "feet": "ft",
    "'": "ft",
    "′": "ft",
    "’": "ft",
    "‘": "ft",
    "yd": "yd",
    "yd.": "yd",
    "yds": "yd",
    "yard": "yd",
    "yards": "yd",
}
_UNIT = re.compile(r"''|[\"″”“'′’‘]|[a-z]+(?:\.(?!\d))?", re.ASCII)
_SMALLER = {"yd": "in", "ft": "in", "m": "cm"}  # the unit that goes without saying after these: 1 yd 4, 2'6, 1 m 20
_ENDING_IN_0 = re.compile(r"[1-9]\d{0,2}\.\d\d0")
_TWO_LENGTHS = re.compile(r"[1-9][^x×*]*?(?:[x×*]|\bby\b)\s*\d", re.ASCII)  # 40 x 40
_DIGIT_AFTER_FRACTION = re.compile(rf"([{''.join(VULGAR)}])\d", re.ASCII)
_LONGEST_TEXT = 60
_A_HAIR = Fraction(1, 10**6)
_FEW = 4  # divisions; read to the nearest, fewer would be an eighth of the length off, or more
_TENTHS = tuple(Fraction(1, parts) for parts in (2, 10, 20, 100, 200))
#: What is read between the divisions of a ruler, by eye or by a finer ruler: half tenths of a millimetre and
#: sixty-fourths at most.
_BETWEEN = {
    "cm": _TENTHS,
    "mm": tuple(10 * step for step in _TENTHS),
    "in": tuple(Fraction(1, parts) for parts in (2, 4, 8, 16, 32, 64)),
    "m": tuple(Fraction(1, parts) for parts in (10, 100, 1000)),
    "yd": tuple(Fraction(1, parts) for parts in (10, 100, 1000)),
}

Toward = Literal["nearest", "down", "up"]


class InvalidLength(InvalidNumber):
    """Raised with one sentence that says what is wrong with a typed length and what would be right."""


@dataclass(frozen=True)
class Ruler:
    """The ruler in hand: the unit it is read in and its smallest division.

    unit: "cm", "mm" or "in".
    step: smallest division, in that unit (0.1 for a cm ruler divided in mm, 1/16 for an inch ruler).
    money: the sign or name that stands beside amounts where this ruler is in hand; empty where none is settled.
    """

    unit: str
    step: Fraction
    money: str = ""

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

    def fine_enough_for(self, mm: Fraction | float) -> "Ruler":
        """This ruler, or one with finer divisions for a length [mm] that falls between the first few of its own."""
        for ruler in (self, *self._finer):
            top, bottom = ruler._share(mm)
            if abs(top) >= _FEW * bottom or _is_on(top, bottom, _count(top, bottom, "nearest"), ruler):
                return ruler
        return ruler

    @cached_property
    def _finer(self) -> "tuple[Ruler, ...]":
        return tuple(Ruler(self.unit, step) for step in _BETWEEN.get(self.unit, ()) if step < self.step)

    def _share(self, mm: Fraction | float) -> tuple[int, int]:
        """A length in divisions of this ruler, as numerator and denominator: every length on a page comes through here,
        and a Fraction is slow."""
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
    """Read a length as typed: ``36 cm``, ``360mm``, ``14 1/4 in``, ``14¼"``, ``1 yd 4``, ``2'6"``, ``35,7``, ``38 +
    20``.

    text: what the person typed.
    bare_unit: the unit of a number that stands alone.
    Returns the exact length [mm], never negative.
    Raises InvalidLength with a sentence for the person.
    """
    return sum((term.number.value * MM_IN[term.unit] for term in _read(text, bare_unit)), Fraction(0))


def write_units(text: str, bare_unit: str) -> str:
    """A length as typed, with the units that go without saying written out, so that it means the same on every ruler.

    Raises InvalidLength as parse_length does.
    """
    terms = _read(text, bare_unit)
    if not any(term.is_unsaid for term in terms):
        return text
    if len(terms) > 1 and "+" not in text.strip().removeprefix("+"):
        return f"{text.strip()} {terms[-1].unit}"
    return show_exactly(
        parse_length(text, bare_unit), next((term.unit for term in terms if not term.is_unsaid), bare_unit)
    )


def system_of(text: str) -> str:
    """The ruler a length was written for: "cm" for metric units, "in" for inches and yards, "" for a bare number.

    Raises InvalidLength as parse_length does.
    """
    said = [term.unit for term in _read(text, "in") if not term.is_unsaid]
    return "" if not said else "cm" if said[0] in METRIC else "in"


@dataclass(frozen=True)
class _Term:
    """A number and its unit. is_unsaid: whether the unit goes without saying."""

    number: Numeral
    unit: str
    is_unsaid: bool = False


@lru_cache(maxsize=1024)  # the house's own texts are read at every answer
def _read(text: str, bare_unit: str) -> tuple[_Term, ...]:
    """Every number of a length as typed, with its unit."""
    if not text.strip():
        raise InvalidLength("Nothing is written here yet. Write a length, such as 36 cm or 14 1/4 in.")
    if len(text) > _LONGEST_TEXT:
        raise InvalidLength(f"That is {len(text)} characters long. Write one length, such as 36 cm or 14 1/4 in.")
    tidy = _tidy(text)
    added = [_terms(part.strip(), text.strip()) for part in tidy.split("+")]
    said = {unit for terms in added for _, unit in terms if unit}
    bare = [number for terms in added for number, unit in terms if len(terms) == 1 and not unit]
    if bare and (len(said) > 1 or any(len(terms) > 1 for terms in added)):
        raise InvalidLength(
            f"The {bare[-1].written} in “{quote(text)}” has no unit. Write one with each of the numbers that are added."
        )
    terms = tuple(term for terms in added for term in _with_units(terms, text, *(said or {bare_unit})))
    for term in terms:
        _refuse_two_ways(term, is_bare=not said)
    return terms


def _with_units(terms: list[tuple[Numeral, str]], typed: str, *units: str) -> list[_Term]:
    """The numbers of one length, the larger unit first; a last one without its unit gets the one that goes without
    saying.

    units: the units said anywhere in what was typed; of a number that stands alone, the only one.
    """
    if len(terms) == 1:
        number, unit = terms[0]
        return [_Term(number, unit or units[0], not unit)]
    *before, (last, unit) = terms
    larger = before[-1][1]
    made = [
        *(_Term(number, each) for number, each in before),
        _Term(last, unit or _unit_after(larger, before[-1][0], last, typed), not unit),
    ]
    system = METRIC if made[0].unit in METRIC else INCH
    places = [system.index(term.unit) if term.unit in system else -1 for term in made]
    if -1 in places or any(later <= earlier for earlier, later in zip(places, places[1:])):
        raise InvalidLength(
            f"“{quote(typed)}” does not read as one length: name each unit once, the larger first, such as 1 yd 4 in "
            "or 1 m 20 cm."
        )
    return made


def _unit_after(larger: str, before: Numeral, last: Numeral, typed: str) -> str:
    """The unit of a number that follows a larger unit and has none of its own: 1 yd 4, 2'6, 1 m 20."""
    smaller = _SMALLER.get(larger)
    if not smaller or last.value * MM_IN[smaller] >= MM_IN[larger]:
        like = f"1 {larger} 4 {smaller}" if smaller else f"36 {larger}"
        raise InvalidLength(
            f"“{quote(typed)}” is not a length yet: the {last.written} has no unit. Write it too, or leave the "
            f"number out, such as {like}."
        )
    if not before.written.isdecimal():
        return smaller
    either = f"{before.written} {larger} {last.written} {smaller}"
    if 0 < last.value < 1:
        joined = f"{before.written} {last.written}" if last.is_fraction else decimal(before.value + last.value, 6)
        raise InvalidLength(f"“{quote(typed)}” can be read two ways. Write {either}, or {joined} {larger}.")
    if (
        larger == "m" and last.value and re.fullmatch(r"\d", last.written)
    ):  # one metre five is 1.05 m to one, 1.5 m to another
        raise InvalidLength(
            f"“{quote(typed)}” can be read two ways. Write {either}, or {before.written}.{last.written} m."
        )
    return smaller


def _refuse_two_ways(term: _Term, is_bare: bool) -> None:
    """Refuse what one maker means in one way and another in another: 3/4 on a centimetre ruler, 1.500 for a thousand or
    so."""
    number, unit = term.number, term.unit
    if is_bare and unit in METRIC and number.is_fraction and number.value < 1:
        raise InvalidLength(
            f"{number.written} can be read two ways. Write {number.written} in, or {decimal(number.value, 3)} {unit}."
        )
    if unit in ("cm", "mm") and _ENDING_IN_0.fullmatch(number.written):
        raise InvalidLength(str(two_ways(number.written)))


def _tidy(text: str) -> str:
    text = re.sub(r"\s+", " ", text.replace("⁄", "/")).strip()
    if text[:1] in ("-", "−", "–"):
        raise InvalidLength("A length is never less than nothing. Write it without the minus sign.")
    if text.endswith("+") and len(text) > 1:
        raise InvalidLength(
            f"The sum in “{quote(text)}” is not finished. Write what is added as well, such as 38 + 20 cm."
        )
    return text.removeprefix("+").strip().lower()


def _terms(rest: str, typed: str) -> list[tuple[Numeral, str]]:
    """Each number of one length and its unit, which is empty where it has none."""
    if re.search(r"/\s*(?!\s*\d)", rest):
        raise InvalidLength(f"The fraction in “{quote(typed)}” is not finished. Write it whole, such as 14 1/4 in.")
    terms = []
    while rest:
        try:
            found = numeral_at_start(rest)
        except InvalidNumber as problem:
            raise InvalidLength(str(problem)) from None
        if not found:
            raise _not_a_length(typed)
        number, rest = found[0], found[1].lstrip()
        unit = _UNIT.match(rest)
        if unit and unit.group() not in _SPELLINGS or (not unit and rest):
            raise _not_a_length(typed)
        terms.append((number, _SPELLINGS[unit.group()] if unit else ""))
        rest = rest[unit.end() :].lstrip() if unit else ""
        if unit and rest.startswith("."):
            raise _not_a_length(typed)
    if not terms:
        raise _not_a_length(typed)
    return terms


def _not_a_length(typed: str) -> InvalidLength:
    if sign := _DIGIT_AFTER_FRACTION.search(typed):
        return InvalidLength(
            f"“{quote(typed)}” has a digit after {sign.group(1)}, so it is no number. Write it again, such as 14 1/4 "
            "in."
        )
    if _TWO_LENGTHS.search(typed.lower()):
        return InvalidLength(
            f"“{quote(typed)}” is not a length but two. Write one of them here, the other in a blank of its own."
        )
    return InvalidLength(
        f"“{quote(typed)}” is not a length. Write a number with cm, mm, m, in or yd, such as 36 cm or 14 1/4 in."
    )


_MORE_THAN_IS_QUOTED = 500


def quote(text: str, longest: int = 24) -> str:
    """What was typed, cut short enough to stand inside a sentence, with a dot for every letter that cannot be seen."""
    text = " ".join(text[:_MORE_THAN_IS_QUOTED].split())
    text = "".join(letter if letter.isprintable() else "·" for letter in text)
    return text if len(text) <= longest else text[: longest - 1] + "…"


def show_length(mm: Fraction | float, ruler: Ruler, toward: Toward = "nearest") -> str:
    """A length as it is read off a ruler: ``35.7 cm``, ``357 mm``, ``14 1/16 in``.

    Starts with ``about`` when the ruler cannot show the length exactly. A length of few divisions is read between them,
    so that
    nothing is ever rounded to nothing: 2 mm are 0.2 cm on a ruler of whole centimetres.
    """
    return show_divisions(mm, ruler.fine_enough_for(mm), toward)


def show_divisions(mm: Fraction | float, ruler: Ruler, toward: Toward = "nearest") -> str:
    """A length in divisions of a ruler and no finer, as a shop cuts it; less than one of them as ``under 1/64 in``."""
    top, bottom = ruler._share(mm)
    divisions = _count(top, bottom, toward)
    if _is_on(top, bottom, divisions, ruler):
        return f"{_digits(divisions, ruler)} {ruler.unit}"
    return f"about {_digits(divisions, ruler)} {ruler.unit}" if divisions else f"under {_digits(1, ruler)} {ruler.unit}"


def _is_on(top: int, bottom: int, divisions: int, ruler: Ruler) -> bool:
    """Whether a length, as a share of a ruler's division, lies on one of its divisions."""
    off = abs(top - divisions * bottom)
    return not off or Fraction(off, bottom) * ruler.step_mm <= _A_HAIR


def show_exactly(mm: Fraction | float, unit: str) -> str:
    """A length written so that reading it back gives the same length: as a decimal if it ends, else as a fraction."""
    value = Fraction(mm) / MM_IN[unit]
    if unit != "in" and 10**6 % value.denominator == 0:
        return f"{decimal(value, 6)} {unit}"
    return f"{mixed(value)} {unit}"


def _digits(divisions: int, ruler: Ruler) -> str:
    step = ruler.step
    if ruler.unit == "in" or (ruler.unit == "yd" and step == _EIGHTH):
        return mixed(divisions * step)
    return decimal(divisions * step.numerator / step.denominator, ruler.places)
