"""Money as a kind of value: amounts and prices of cloth, with the house's sign of money beside them."""

import re
import unicodedata
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from fractions import Fraction
from random import Random
from typing import Any, ClassVar

from calculators.values.kind import InvalidValue, Kind, number_as_typed, plain_number
from calculators.values.measure import MM_IN, Ruler, quote

_AMOUNT = re.compile(r"\d{1,9}(?:[.,]\d{1,2}|\.)?|[.,]\d{1,2}", re.ASCII)
_GROUPED = re.compile(
    r"[1-9]\d{0,2}(?:(?:,\d{3})+\.\d\d|(?:\.\d{3})+,\d\d|(?:,\d{3}){2,}|(?:\.\d{3}){2,})", re.ASCII
)  # 1,250.00
_THOUSANDS = re.compile(r"([1-9]\d{0,2})[.,](\d{3})", re.ASCII)
# a currency sign, letters before it or none; or three capitals, as ISO 4217 writes a money
_SIGN = r"[^\W\d_]{0,11}[^\w\s.,:;=+\-−–/*%]|[A-Z]{3}"
_BEFORE, _BEHIND = re.compile(rf"({_SIGN})\s*(?=[\d.,])"), re.compile(rf"(?<=\d)\s*({_SIGN})$")
_NO_BREAK = "\N{NO-BREAK SPACE}"
CODES = {
    "€": ("EUR",), "£": ("GBP",), "$": ("USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN"), "¥": ("JPY", "CNY"),
    "₹": ("INR",), "kr": ("SEK", "NOK", "DKK"), "zł": ("PLN",), "Kč": ("CZK",),
    "Ft": ("HUF",), "₺": ("TRY",), "₴": ("UAH",), "₪": ("ILS",), "R": ("ZAR",), "R$": ("BRL",),
}  # fmt: skip
"""Sign → the codes of ISO 4217 that are written with it at home, as the CLDR has them: a house that writes either is
understood in both."""
_PER = re.compile(r"(.+?)\s*(?:/|\b(?:per|an?)\b)\s*(m|metres?|meters?|yds?|yards?)\.?", re.IGNORECASE | re.DOTALL)


@dataclass(frozen=True)
class Amount(Kind):
    """An amount, exact inside and shown with two decimals beside the house's money, which may be typed with it; another
    money is refused."""

    least: Fraction = Fraction(0)
    most: Fraction = Fraction(1_000_000)
    mode: ClassVar[str] = "decimal"
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"amount": {}}

    def parse(self, text: str, ruler: Ruler) -> Fraction:
        return self._within(_read(text, ruler.money), text, ruler)

    def _within(self, value: Fraction, text: str, ruler: Ruler) -> Fraction:
        if not self.least <= value <= self.most:
            raise InvalidValue(
                f"{quote(text)} is outside what works here: from "
                f"{self.show(self.least, ruler).partition(' per ')[0]} to "
                f"{self.show(self.most, ruler)}."
            )
        return value

    def show(self, value: Fraction, ruler: Ruler) -> str:
        return self._signed(value, ruler)

    def write(self, value: Fraction, ruler: Ruler) -> str:
        return self.show(value, ruler).replace(",", "")

    def write_out(self, text: str, ruler: Ruler) -> str:
        tidy = text.strip()
        return with_sign(tidy, ruler.money) if _AMOUNT.fullmatch(tidy) else text

    def instead(self, text: str, ruler: Ruler) -> str:
        """A text that is refused for its money alone, with the same figure under the house's; empty for every other
        text."""
        try:
            self.parse(text, ruler)
        except InvalidValue:
            with suppress(InvalidValue):
                self.parse(text, replace(ruler, money=""))
                return self.write_out(self._figure(text), ruler)
        return ""

    def _figure(self, text: str) -> str:
        return _without_sign(text.strip(), "")

    def samples(self, chance: Random, near: str = "") -> list[str]:
        least, most = -(-100 * self.least // 1), 100 * self.most // 1
        hundredths = (least, most, chance.randint(least, most), chance.randint(least, min(most, least + 5_000)))
        points = chance.choice([".", ","])
        return [f"{each // 100}{points}{each % 100:02d}" for each in hundredths]

    def invalid_samples(self, chance: Random) -> list[str]:
        beyond = [two_decimals(self.most + Fraction(1, 100)), *([two_decimals(self.least / 2)] if self.least else [])]
        return [*beyond, "dear", "-3", "1,250", "12.345,6", "12 cm", "1e2", "nan", "9" * 61]

    def _signed(self, value: Fraction, ruler: Ruler) -> str:
        return with_sign(two_decimals(value), ruler.money)

    def plain(self, value: Fraction) -> int | float:
        return plain_number(value)


@dataclass(frozen=True)
class PriceOfLength(Amount):
    """What a metre costs, or a yard: a bare number is for the metre on a metric ruler, for the yard on an inch ruler.
    Inside, for a metre."""

    mode: ClassVar[str] = "text"  # a decimal keyboard cannot write "per yd"
    format_specs: ClassVar[Mapping[str, Mapping[str, Any]]] = {"price": {}}

    def parse(self, text: str, ruler: Ruler) -> Fraction:
        priced = _PER.fullmatch(number_as_typed(text))
        amount = _read(priced.group(1) if priced else text, ruler.money)
        unit = ("yd" if priced.group(2).lower().startswith("y") else "m") if priced else _long_unit(ruler)
        return self._within(amount * MM_IN["m"] / MM_IN[unit], text, ruler)

    def _figure(self, text: str) -> str:
        priced = _PER.fullmatch(text.strip())
        return (
            f"{_without_sign(priced.group(1), '')}{text.strip()[len(priced.group(1)) :]}"
            if priced
            else super()._figure(text)
        )

    def show(self, value: Fraction, ruler: Ruler) -> str:
        unit = _long_unit(ruler)
        return f"{self._signed(value * MM_IN[unit] / MM_IN['m'], ruler)} per {unit}"

    def on_ruler(self, text: str, ruler: Ruler) -> str:
        return self.write(self.parse(text, ruler), ruler) if text else text

    def write_out(self, text: str, ruler: Ruler) -> str:
        priced = _PER.fullmatch(text.strip())
        amount = super().write_out(priced.group(1) if priced else text.strip(), ruler)
        return f"{amount}{text.strip()[len(priced.group(1)) :]}" if priced else f"{amount} per {_long_unit(ruler)}"

    def samples(self, chance: Random, near: str = "") -> list[str]:
        amounts = super().samples(chance, near)
        by_yards = chance.randint(0, 90 * (self.most // 1)) + 100 * self.least
        a_yard = f"{two_decimals(by_yards / 100).replace(',', '')}/yd" if self.least <= self.most / 20 else ""
        return [*(f"{each}{chance.choice([' per m', ' a metre'])}" for each in amounts), *([a_yard] if a_yard else [])]

    def invalid_samples(self, chance: Random) -> list[str]:
        return [*super().invalid_samples(chance), "18 per cm", "per m"]


@dataclass(frozen=True)
class ListedPrice(Amount):
    """A price in the house's own list, kept without its sign: the money is settled once beside the list, and all prices
    follow it."""

    def write_out(self, text: str, ruler: Ruler) -> str:
        return _without_sign(text.strip(), ruler.money)

    def house_text(self, text: str, ruler: Ruler) -> str:
        return with_sign(text, ruler.money)


def with_sign(amount: str, money: str) -> str:
    """An amount beside its money: a sign closed up before it, a code of three capitals before it, any other name behind
    it.

    Source: the European Union's interinstitutional style guide for English, 7.3.3, from memory.
    """
    if not money:
        return amount
    if unicodedata.category(money[-1]) == "Sc":
        return f"{money}{amount}"
    return f"{money}{_NO_BREAK}{amount}" if re.fullmatch("[A-Z]{3}", money) else f"{amount}{_NO_BREAK}{money}"


def two_decimals(value: Fraction) -> str:
    """An amount to the nearest hundredth, half a hundredth upward."""
    hundredths = (2 * 100 * value + 1) // 2
    return f"{hundredths // 100:,}.{hundredths % 100:02d}"


def _long_unit(ruler: Ruler) -> str:
    return "yd" if ruler.unit == "in" else "m"


def _also_written(money: str) -> tuple[str, ...]:
    """Every way to write a money, the house's own first."""
    signs = (sign for sign, codes in CODES.items() if money.upper() in codes)
    return (money, *CODES.get(money, ()), *signs) if money else ()


def _without_sign(text: str, money: str) -> str:
    """An amount as typed, without the house's money beside it; raises InvalidValue where another money stands there.
    Without a money of the house any is passed over."""
    for sign in _also_written(money):
        if text.casefold().startswith(sign.casefold()):
            return text[len(sign) :].strip()
        if text.casefold().endswith(sign.casefold()):
            return text[: -len(sign)].strip()
    found = _BEFORE.match(text) or _BEHIND.search(text)
    if not found or not _is_money(found.group(1)):
        return text
    amount = f"{text[: found.start()]}{text[found.end() :]}".strip()
    if money and _AMOUNT.fullmatch(amount):
        raise InvalidValue(
            f"“{quote(text)}” is in {found.group(1)}, but the house’s money is {money}. Write how many {money} it "
            "is, or settle another money in the house method."
        )
    return amount


def _is_money(sign: str) -> bool:
    return len(sign) == 3 and sign.isupper() or unicodedata.category(sign[-1]) == "Sc"


def _read(text: str, money: str) -> Fraction:
    """An amount as typed; raises InvalidValue with one sentence."""
    tidy = number_as_typed(_without_sign(number_as_typed(text), money))
    if _AMOUNT.fullmatch(tidy):
        return Fraction(tidy.replace(",", "."))
    if _GROUPED.fullmatch(tidy) and (parts := re.fullmatch(r"(.*?)(?:([.,])(\d\d?))?", tidy)):
        whole, point, rest = parts.groups()
        return Fraction(re.sub("[.,]", "", whole) + (f".{rest}" if point else ""))
    if two_ways := _THOUSANDS.fullmatch(tidy):
        whole, rest = two_ways.groups()
        raise InvalidValue(
            f"{tidy} can be read two ways. Write {whole}{rest} or {whole}.{rest[:2]}, whichever you mean."
        )
    if tidy[:1] in ("-", "−", "–") and _AMOUNT.fullmatch(tidy[1:].strip()):
        raise InvalidValue("an amount is never less than nothing. Write it without the minus sign.")
    raise InvalidValue(
        f"“{quote(text)}” is not an amount. Write it in digits with at most two decimals, such as 12.50."
    )
