"""One number as people write it: ``12``, ``12.5``, ``12,5``, ``.5``, ``90.``, ``45 1/2``, ``45½``.

Every kind of value that a number stands in reads it here, so that the same signs mean the same everywhere. A number is
read to its
last digit or not at all: nothing that belongs to it is left over, so ``1½0`` and ``31/20 1`` are no numbers.
"""

import re
from dataclasses import dataclass
from fractions import Fraction

VULGAR = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
    "⅙": "1/6", "⅚": "5/6", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10",
}  # fmt: skip
_SIGNS = "".join(VULGAR)
_STROKE = r"\s*[/⁄]\s*"
_FRACTION = rf"\d+{_STROKE}\d+"
_NUMERAL = re.compile(
    rf"(?:\d+(?:\s+|-){_FRACTION}|\d+(?:\s*|-)[{_SIGNS}]|{_FRACTION}|[{_SIGNS}]|\d+[.,]\d+|[.,]\d+|\d+\.?)(?![\d.,/⁄{_SIGNS}])",
    re.ASCII,
)
_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}", re.ASCII)


class InvalidNumber(ValueError):
    """Raised with one sentence that says what is wrong with a number as written and what would be right."""


@dataclass(frozen=True)
class Numeral:
    """A number and how it was written, a fraction sign as top and bottom with a stroke between them."""

    value: Fraction
    written: str

    @property
    def is_fraction(self) -> bool:
        return "/" in self.written

    @property
    def is_top_heavy(self) -> bool:
        """A fraction that is one or more: 90/2 may be 45, or 90 1/2 gone wrong."""
        return self.is_fraction and " " not in self.written and self.value >= 1


def numeral_at_start(text: str) -> tuple[Numeral, str] | None:
    """The number that a text begins with, and the rest of the text; None where it begins with none.

    Raises InvalidNumber where it begins with something that can be read two ways, or with a fraction that is none.
    """
    found = _NUMERAL.match(text)
    if not found:
        return None
    written = _plainly(found.group())
    return Numeral(_value(written), written), text[found.end() :]


def numeral(text: str) -> Numeral | None:
    """The number that is all there is of a text; None where that is not so. Raises as `numeral_at_start` does."""
    found = numeral_at_start(text)
    return found[0] if found and not found[1] else None


def decimal(value: Fraction | float, places: int) -> str:
    """A number with at most so many decimals."""
    text = f"{float(value):.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def mixed(value: Fraction) -> str:
    """A number as a whole and a fraction: 14 1/4."""
    sign, value = ("−" if value < 0 else ""), abs(value)
    whole, part = divmod(value, 1)
    if not part:
        return f"{sign}{whole}"
    fraction = f"{part.numerator}/{part.denominator}"
    return f"{sign}{whole} {fraction}" if whole else f"{sign}{fraction}"


def two_ways(written: str) -> InvalidNumber:
    """The refusal of a number whose point or comma may part thousands or begin decimals."""
    plain, value = re.sub("[.,]", "", written), decimal(Fraction(written.replace(",", ".")), 3)
    return InvalidNumber(f"{written} can be read two ways. Write {plain} or {value}, whichever you mean.")


def _plainly(written: str) -> str:
    """Whole, one space, top, stroke, bottom."""
    for sign, plain in VULGAR.items() if not written.isascii() else ():
        written = written.replace(sign, f" {plain}")
    return re.sub(r"\s*[/⁄]\s*", "/", re.sub(r"[\s-]+", " ", written).strip())


def _value(written: str) -> Fraction:
    if "/" not in written:
        if _THOUSANDS.fullmatch(written):
            raise two_ways(written)
        return Fraction(written.replace(",", "."))
    whole, _, fraction = written.rpartition(" ")
    top, bottom = (int(part) for part in fraction.split("/"))
    if bottom == 0:
        raise InvalidNumber("Nothing can be divided into 0 parts. Write a fraction such as 1/4.")
    if whole and top >= bottom:
        raise InvalidNumber(f"After a whole number the fraction must be less than one. Write “{written}” another way.")
    if top > bottom and (apart := _run_together(fraction)):
        either = mixed(Fraction(top, bottom))
        raise InvalidNumber(f"{fraction} can be read two ways. Write {apart} or {either}, whichever you mean.")
    return int(whole or 0) + Fraction(top, bottom)


def _run_together(fraction: str) -> str:
    """What a top-heavy fraction is with the space put back that may be missing, 3 1/2 for 31/2; empty where none can
    be."""
    top, bottom = fraction.split("/")
    for cut in range(1, len(top)):
        whole, part = top[:cut], top[cut:]
        if int(whole) and part[0] != "0" and int(part) < int(bottom):
            return f"{whole} {part}/{bottom}"
    return ""
