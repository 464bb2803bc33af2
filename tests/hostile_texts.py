"""Texts by chance that nobody means: cut, doubled and mixed ones of what a blank takes, parts over and over, marks and
units in any order, any characters at all, up to a million of them."""

import json
from collections.abc import Callable
from random import Random

from calculators.asking.rows import LONGEST_TABLE, rows_of
from calculators.values.kind import LONGEST_NUMBER, Kind, units
from tests.bad_values import BEYOND_LIMITS, EMPTY, OTHER_KINDS, REFUSED_EVERYWHERE

MILLION = 1_000_000
PARTS = ["1", "x", " ", "\n", ";", "|", "½", "1/", "1,", "1 min ", "[", "€", "-", ' "', '["1"],', "1 | 2;"]
LISTED = [*REFUSED_EVERYWHERE, *EMPTY, *(text for _, _, text in (*BEYOND_LIMITS, *OTHER_KINDS))]
TOKENS = [
    *units(), *"0123456789½¼⅝⅓", *"+-−–±*/=.,:;|'\"″′“”()[]{}<>%°€$£#&\\_~ \t\n\u00a0\u2009\u202f\u3000",
    "1/2", "3/4", "12.5", "1,000", "1e9", "0x1", "per", " a ", "yes", "no", "inf", "nan", "[[", '","', "]]",
    "\u200b", "\u202e", "\u0301", "\u00ad", "\x00", "\ud800", "\udc00", "🧵", "٣", "３", "Ⅻ", "²", "İ", "ß", "ﬁ",
]  # fmt: skip
EDITS, LONG, MANY = 8, 2_000, 60


def filled(start: str, part: str, end: str, length: int) -> str:
    """A part over and over, so that with start and end it has this length."""
    return (start + part * length)[: length - len(end)] + end


def hostile_text(kind: Kind, chance: Random) -> tuple[str, str]:
    """A text for a blank of this kind, and what it was made by."""
    rows_kind = rows_of(kind)
    columns = rows_kind.columns if rows_kind else ()
    if columns and chance.random() < 0.3:
        row = [chance.choice([column.kind.samples(chance)[0], ""]) for column in columns]
        place = chance.randrange(len(columns))
        made_by, row[place] = hostile_text(columns[place].kind, chance)
        times = chance.choice([1, 1, 2, 50])
        rows = [row] * min(times, max(1, MILLION // len(row[place] or "-")))  # as a blank alone: at most a million
        in_a_line = "; ".join(" | ".join(each) for each in rows)
        return f"{made_by}, in a cell", in_a_line if chance.random() < 0.3 else json.dumps(rows, ensure_ascii=False)
    made_by = chance.choices(list(SHAPES), [1, 1, 4, 2, 2])[0]
    return made_by, SHAPES[made_by](kind, chance)


def _listed(_: Kind, chance: Random) -> str:
    return chance.choice(LISTED)


def _repeated(_: Kind, chance: Random) -> str:
    start, end = chance.choice([("", ""), ("1", "1"), ('[["', '"]]'), ("[", "]"), ("1 cm", "cm")])
    at_a_limit = chance.choice([LONGEST_NUMBER, LONGEST_TABLE]) + chance.randint(-1, 1)
    length = at_a_limit if chance.random() < 0.3 else int(10 ** chance.uniform(1, 6))
    return filled(start, chance.choice(PARTS), end, length)


def _spoilt(kind: Kind, chance: Random) -> str:
    """One that the kind takes, or refuses, with some edits."""
    text = chance.choice((kind.samples if chance.random() < 0.7 else kind.invalid_samples)(chance))
    for _ in range(chance.randint(1, EDITS)):
        start, end = sorted(chance.randint(0, len(text)) for _ in range(2))
        if chance.random() < 0.7:
            end = min(end, start + chance.randint(0, 3))
        cut = text[start:end]
        more = ["", cut * 2, cut[::-1], chance.choice(TOKENS), _letter(chance), chance.choice(kind.samples(chance))]
        text = text[:start] + chance.choice(more) + text[end:]
    return text


def _of_marks(_: Kind, chance: Random) -> str:
    return "".join(chance.choices(TOKENS, k=chance.randint(1, MANY)))


def _of_any_letters(_: Kind, chance: Random) -> str:
    return "".join(_letter(chance) for _ in range(int(LONG ** chance.random())))


def _letter(chance: Random) -> str:
    return chr(chance.randrange(chance.choice([0x80, 0x250, 0x3100, 0x110000])))


SHAPES: dict[str, Callable[[Kind, Random], str]] = {
    "listed": _listed,
    "repeated": _repeated,
    "spoilt": _spoilt,
    "marks and units": _of_marks,
    "any letters": _of_any_letters,
}
