"""Money as a kind of value: amounts and prices of cloth, plain numbers whose money is never named."""

import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar

from calculators.kinds import Kind, Refused, number_as_typed, plain_number
from calculators.measure import MM_IN, Ruler, quote

_AMOUNT = re.compile(r"\d{1,9}(?:[.,]\d{1,2}|\.)?|[.,]\d{1,2}", re.ASCII)
_GROUPED = re.compile(r"[1-9]\d{0,2}(?:(?:,\d{3})+\.\d\d|(?:\.\d{3})+,\d\d|(?:,\d{3}){2,}|(?:\.\d{3}){2,})", re.ASCII)  # 1,250.00
_THOUSANDS = re.compile(r"([1-9]\d{0,2})[.,](\d{3})", re.ASCII)
_CODE = re.compile(r"^[A-Z]{3}\s*|\s*[A-Z]{3}$")  # three capitals before or behind, as ISO 4217 writes a money
_PER = re.compile(r"(.+?)\s*(?:/|\b(?:per|an?)\b)\s*(m|metres?|meters?|yds?|yards?)\.?", re.IGNORECASE | re.DOTALL)


@dataclass(frozen=True)
class Amount(Kind):
    """An amount, exact inside and shown with two decimals. A sign of money beside it is allowed and left out."""

    least: Fraction = Fraction(0)
    most: Fraction = Fraction(1_000_000)
    mode: ClassVar[str] = "decimal"

    def parse(self, text, ruler):
        value = _read(text)
        if not self.least <= value <= self.most:
            raise Refused(f"{quote(text)} is outside what works here: from {two_decimals(self.least)} to {two_decimals(self.most)}.")
        return value

    def show(self, value, ruler):
        return two_decimals(value)

    def write(self, value, ruler):
        return two_decimals(value).replace(",", "")

    def plain(self, value):
        return plain_number(value)


@dataclass(frozen=True)
class PriceOfLength(Amount):
    """What a metre costs, or a yard: a bare number is for the metre on a metric ruler, for the yard on an inch ruler. Inside, for a metre."""

    mode: ClassVar[str] = "text"  # a decimal keyboard cannot write "per yd"

    def parse(self, text, ruler):
        priced = _PER.fullmatch(number_as_typed(text))
        amount = super().parse(priced.group(1) if priced else text, ruler)
        unit = ("yd" if priced.group(2).lower().startswith("y") else "m") if priced else _long_unit(ruler)
        return amount * MM_IN["m"] / MM_IN[unit]

    def show(self, value, ruler):
        unit = _long_unit(ruler)
        return f"{two_decimals(value * MM_IN[unit] / MM_IN['m'])} per {unit}"

    def write(self, value, ruler):
        return self.show(value, ruler).replace(",", "")

    def on_ruler(self, text, ruler):
        return self.write(self.parse(text, ruler), ruler) if text else text

    def write_out(self, text, ruler):
        return text if _PER.fullmatch(text.strip()) else f"{text.strip()} per {_long_unit(ruler)}"


def two_decimals(value: Fraction) -> str:
    """An amount to the nearest hundredth, half a hundredth upward."""
    hundredths = (2 * 100 * value + 1) // 2
    return f"{hundredths // 100:,}.{hundredths % 100:02d}"


def _long_unit(ruler: Ruler) -> str:
    return "yd" if ruler.unit == "in" else "m"


def _read(text: str) -> Fraction:
    """An amount as typed; raises Refused with one sentence."""
    tidy = _CODE.sub("", number_as_typed(text), count=1)
    signs = [letter for letter in tidy if unicodedata.category(letter) == "Sc"]
    if len(signs) == 1 and (tidy.startswith(signs[0]) or tidy.endswith(signs[0])):
        tidy = tidy.strip(signs[0]).strip()
    if _AMOUNT.fullmatch(tidy):
        return Fraction(tidy.replace(",", "."))
    if _GROUPED.fullmatch(tidy):
        whole, point, rest = re.fullmatch(r"(.*?)(?:([.,])(\d\d?))?", tidy).groups()
        return Fraction(re.sub("[.,]", "", whole) + (f".{rest}" if point else ""))
    if two_ways := _THOUSANDS.fullmatch(tidy):
        whole, rest = two_ways.groups()
        raise Refused(f"{tidy} can be read two ways. Write {whole}{rest} or {whole}.{rest[:2]}, whichever you mean.")
    if tidy[:1] in ("-", "−", "–") and _AMOUNT.fullmatch(tidy[1:].strip()):
        raise Refused("an amount is never less than nothing. Write it without the minus sign.")
    raise Refused(f"“{quote(text)}” is not an amount. Write it in digits with at most two decimals, such as 12.50.")
