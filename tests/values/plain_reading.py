"""What characters say, read a second way: the judge of every kind that reads numbers.

Whatever stands unbroken by a space, a unit or a plus is one figure, and is a number only as a whole. Nothing here is
taken from the
calculators but the length of a yard.
"""

import re
import unicodedata
from fractions import Fraction

MM = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction("25.4"),
    "ft": Fraction("304.8"),
    "yd": Fraction("914.4"),
}
LARGE_TO_SMALL = ["m", "cm", "mm"], ["yd", "ft", "in"]
UNITS = {
    **dict.fromkeys(["mm"], "mm"), **dict.fromkeys(["cm"], "cm"), **dict.fromkeys(["m"], "m"),
    **dict.fromkeys(["in", "in.", '"', "''", "″", "”"], "in"), **dict.fromkeys(["ft", "ft.", "'", "′", "’"], "ft"),
    **dict.fromkeys(["yd", "yd.", "yds"], "yd"),
}  # fmt: skip
FRACTION_SIGNS = "¼½¾⅛⅜⅝⅞⅓⅔⅙⅚⅕⅖⅗⅘⅐⅑⅒"
_FIGURE = rf"[0-9.,/{FRACTION_SIGNS}]+"


def figure(run: str) -> Fraction | None:
    """The value of an unbroken run of digits, points, commas, strokes and fraction signs; None where it is no
    number."""
    if re.fullmatch(r"[0-9]+\.?", run):
        return Fraction(int(run.strip(".")))
    if re.fullmatch(r"[0-9]*[.,][0-9]+", run):
        whole, part = re.split("[.,]", run)
        return int(whole or 0) + Fraction(int(part), 10 ** len(part))
    if re.fullmatch(r"[0-9]+/[0-9]+", run):
        top, bottom = map(int, run.split("/"))
        return Fraction(top, bottom) if bottom else None
    if run and run[-1] in FRACTION_SIGNS and not re.search(r"[^0-9]", run[:-1]):
        return int(run[:-1] or 0) + Fraction(unicodedata.numeric(run[-1])).limit_denominator(20)
    return None


def number(text: str) -> Fraction | None:
    """The value of one figure, or of a whole number and a fraction with a space or a hyphen between them."""
    text = re.sub(r" ?[/⁄] ?", "/", " ".join(text.split()))
    parts = re.split(r"[ -](?=.)", text)
    values = [figure(part) for part in parts]
    if None in values or len(values) > 2 or "-" in text and text.startswith("-"):
        return None
    if len(values) == 1:
        return values[0]
    is_mixed = parts[0].isdecimal() and (parts[1][-1] in FRACTION_SIGNS or "/" in parts[1]) and values[1] < 1
    return sum(values) if is_mixed and len(parts[1]) < 12 else None


def length(text: str, bare_unit: str) -> Fraction | None:
    """The length that characters say [mm]; None where they say none."""
    tidy = re.sub(r" ?[/⁄] ?", "/", " ".join(text.split())).lower().removeprefix("+").strip()
    added = [_one_length(part.strip()) for part in tidy.split("+")]
    if None in added:
        return None
    units = {unit for pairs in added for _, unit in pairs if unit}
    alone = next(iter(units)) if len(units) == 1 else bare_unit
    return sum(value * MM[unit or alone] for pairs in added for value, unit in pairs)


def _one_length(text: str) -> list[tuple[Fraction, str | None]] | None:
    pairs = []
    for shown in re.finditer(rf"({_FIGURE}(?:[ -]{_FIGURE})?) ?([a-z]+\.?|''|[\"″”'′’])? ?|(.)", text):
        digits, unit, stray = shown.groups()
        value = None if stray else number(digits)
        if value is None or (unit and unit not in UNITS):
            return None
        pairs.append((value, UNITS.get(unit)))
    units = [unit for _, unit in pairs]
    if not pairs or None in units[:-1]:
        return None
    if len(units) > 1:
        pairs[-1] = (pairs[-1][0], units[-1] or ("cm" if units[-2] == "m" else "in"))
        system = next(each for each in LARGE_TO_SMALL if units[0] in each)
        places = [system.index(unit) if unit in system else -1 for _, unit in pairs]
        if places != sorted(set(places)) or -1 in places:
            return None
    return pairs


def plain(text: str, signs: tuple[str, ...] = ()) -> Fraction | None:
    """A number with its sign before it and one of these behind it."""
    tidy = text.strip().lower().replace("−", "-").replace("–", "-")
    for sign in signs:
        if tidy.endswith(sign):
            tidy = tidy.removesuffix(sign).strip()
            break
    way = -1 if tidy.startswith("-") else 1
    value = number(tidy[1:].strip() if tidy[:1] in "+-" else tidy)
    return None if value is None else way * value


def count(text: str) -> int | None:
    tidy = text.strip().lower().removeprefix("+")
    if dozens := re.fullmatch(r"([0-9]+|a|one|half a) *(dozen|doz|doz\.)", tidy):
        return {"a": 12, "one": 12, "half a": 6}.get(dozens[1]) or 12 * int(dozens[1])
    return int(tidy.replace(",", "")) if re.fullmatch(r"[0-9]+|[0-9]{1,3}(,[0-9]{3})+", tidy) else None


def amount(text: str) -> Fraction | None:
    """An amount without its sign of money: the last point or comma begins the decimals, of which there are one or
    two."""
    tidy = re.sub(r"^[$€£] ?| ?[$€£]$", "", text.strip())
    parts = re.split(r"[.,]", tidy)
    marks = re.findall(r"[.,]", tidy)
    if not all(part.isdecimal() for part in parts[1:-1]) or not re.fullmatch(r"[0-9.,]*[0-9][0-9.,]*", tidy):
        return None
    has_decimals = len(marks) == 1 or len(set(marks)) == 2 and marks[-1] not in marks[:-1]
    *whole, last = parts if has_decimals else [*parts, ""]
    if any(len(part) != 3 for part in whole[1:]) or len(last) > 2:
        return None
    return int("".join(whole) or 0) + (Fraction(int(last), 10 ** len(last)) if last else 0)


def minutes(text: str) -> Fraction | None:
    """Hours, minutes and seconds, in that order."""
    tidy = " ".join(text.split()).lower()
    if clock := re.fullmatch(r"([0-9]+):([0-5][0-9])", tidy):
        return Fraction(int(clock[1]) * 60 + int(clock[2]))
    found, size = Fraction(0), {"h": Fraction(60), "m": Fraction(1), "s": Fraction(1, 60)}
    before = "m"  # what a number alone counts
    tidy = re.sub(r" ?[/⁄] ?", "/", tidy)
    for at, shown in enumerate(re.finditer(rf"({_FIGURE}(?:[ -]{_FIGURE})?) ?([a-z]+\.?)? ?|(.)", tidy)):
        digits, unit, stray = shown.groups()
        value = None if stray else number(digits)
        if value is None:
            return None
        counted = unit[0] if unit else "m" if at == 0 or before == "h" else None
        if counted not in size or at and size[counted] >= size[before]:
            return None
        found, before = found + value * size[counted], counted
    return found
