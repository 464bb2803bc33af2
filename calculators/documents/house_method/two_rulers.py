"""One measure on two rulers: written for one of them the other follows it, rounded; two figures may stand only where
they mean the same."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

from calculators.asking.house_method import HouseMethod, Written
from calculators.documents.house_method.sections import Entry, entries, tables
from calculators.values.kind import InvalidValue, Kind
from calculators.values.measure import METRIC, Ruler

SIDES = ("cm", "in")
RULER_NAMES = {"cm": "centimetre ruler", "in": "inch ruler"}
_BARE = {"cm": Ruler("cm", Fraction(1, 10)), "in": Ruler("in", Fraction(1, 16))}
_LONG = 100  # [mm] from here on a round figure lies nearer to what it stands for
_NARROW = 16  # [mm] up to here round figures lie further apart: 1 cm stands for 1/2 in at the end of a cloth


def agree(one: Fraction, other: Fraction, roughly: bool = False) -> bool:
    """Whether two lengths [mm] may be round figures of one measure: within 6 parts of a hundred of the larger, 2 from
    10 cm on.

    roughly: up to 16 mm a quarter is let pass as well, as between 2 mm and 1/16 in.
    Source: the pairs of the handbook's own method, which all pass when taken roughly.
    """
    larger = max(one, other)
    part = Fraction(1, 4) if roughly and larger <= _NARROW else Fraction(6, 100) if larger < _LONG else Fraction(2, 100)
    return abs(one - other) <= part * larger


def rewritten(old: Written, text: str, kind: Kind) -> Written:
    """A measure once its text for one ruler is written anew: the other ruler's figure follows it from then on.

    That figure stays where this one means what it did before; and a round figure written where one followed stands
    beside the
    one it followed, if they agree. old: what stood there. text: with its unit.
    """
    if not kind.two_figures or not old or not text:
        return text
    side, new = _side(text, kind), _length(text, kind)
    if isinstance(old, str):
        other = _side(old, kind)
        return text if other == side or not agree(new, _length(old, kind)) else {other: old, side: text}
    is_same = new == _length(old[side], kind) and _differ(old, kind) is None
    return {**old, side: text} if is_same else text


def reading(value: Fraction, kind: Kind, ruler: Ruler) -> str:
    """A length [mm] as it is read off a ruler; finer than that is divided, where rounding would make another measure of
    it."""
    for finer in (ruler, *_finer(ruler)):
        text = kind.write(value, finer)
        if agree(value, _length(text, kind)):
            return text
    return kind.write_exactly(value, ruler)


def with_both_rulers(method: HouseMethod) -> HouseMethod:
    """The method with a figure for each ruler wherever a length is written for one only, and what follows told in
    `follows`."""
    follows: dict[str, str] = {}

    def both(path: str, entry: Entry | None, written: Written) -> Written:
        if entry is None or not entry.kind.two_figures or not isinstance(written, str) or not written:
            return written
        side = _side(written, entry.kind)
        other = SIDES[1 - SIDES.index(side)]
        follows[path] = other
        return {side: written, other: reading(_length(written, entry.kind), entry.kind, method.rulers[other])}

    measures = {name: both(f"measures.{name}", entries().get(name), each) for name, each in method.measures.items()}
    made = {
        table.name: tuple(
            {
                **line,
                **{
                    column.name: both(f"tables.{table.name}.{number}.{column.name}", column, line[column.name])
                    for column in table.columns
                    if column.name in line
                },
            }
            for number, line in enumerate(method.tables[table.name])
        )
        for table in tables().values()
        if table.name in method.tables
    }
    return replace(
        method,
        measures=measures,
        tables={**method.tables, **made},
        follows=follows,
        clashing=dict(_clashing(measures, made)),
    )


def clashes(document: Mapping[str, Any]) -> dict[str, tuple[str, str]]:
    """Every entry of a method's document whose two figures differ by more than rounding: its path → both, as they are
    written."""
    return dict(_clashing(document.get("measures", {}), document.get("tables", {})))


def clash_sentence(cm: str, inch: str) -> str:
    """What is wrong where two measures stand under one name, and what can be done."""
    return (
        f"Two measures stand under this one name: {cm} for the centimetre ruler and {inch} for the inch ruler. "
        "Keep "
        "one, and the other ruler follows it."
    )


def clashes_told(document: Mapping[str, Any]) -> list[str]:
    """The same of a whole document, a sentence for each entry, which it names."""
    return [f"{_label(path, document)}: {clash_sentence(*figures)}" for path, figures in clashes(document).items()]


def side_of(ruler: Ruler) -> str:
    """The side of a pair that a ruler reads."""
    return "in" if ruler.unit == "in" else "cm"


def _label(path: str, document: Mapping[str, Any]) -> str:
    place, name, *rest = path.split(".")
    if place == "measures":
        return entries()[name].label
    first, *_ = tables()[name].columns
    column = next(each for each in tables()[name].columns if each.name == rest[1])
    return f"{document['tables'][name][int(rest[0])].get(first.name, '')}, {column.label.lower()}"


def _clashing(measures: Mapping[str, Any], lines: Mapping[str, Any]) -> Iterator[tuple[str, tuple[str, str]]]:
    for name, written in measures.items():
        value = written.get("value", written) if isinstance(written, Mapping) else written
        if name in entries() and (differing := _differ(value, entries()[name].kind)):
            yield f"measures.{name}", differing
    for table in tables().values():
        for number, line in enumerate(lines.get(table.name, ())):
            for column in table.columns:
                if differing := _differ(line.get(column.name, ""), column.kind):
                    yield f"tables.{table.name}.{number}.{column.name}", differing


def _differ(written: Written, kind: Kind) -> tuple[str, str] | None:
    """The two figures of a length where they are two measures."""
    if isinstance(written, str) or not kind.two_figures or not set(SIDES) <= set(written):
        return None
    try:
        one, other = (kind.parse(written[side], _BARE[side]) for side in SIDES)
    except InvalidValue:
        return None
    return None if agree(one, other, roughly=True) else (written["cm"], written["in"])


def _side(text: str, kind: Kind) -> str:
    """The ruler a text of a method is written for; a bare number, such as 0, counts as metric."""
    return kind.system(text) or "cm"


def _length(text: str, kind: Kind) -> Fraction:
    length: Fraction = kind.parse(text, _BARE[_side(text, kind)])
    return length


def _finer(ruler: Ruler) -> Iterator[Ruler]:
    """Rulers of the same system with finer divisions."""
    unit, steps = (
        ("mm", (Fraction(1, 2), Fraction(1, 10), Fraction(1, 100)))
        if ruler.unit in METRIC
        else ("in", (Fraction(1, 32), Fraction(1, 64), Fraction(1, 128)))
    )
    yield from (finer for step in steps if (finer := Ruler(unit, step)).step_mm < ruler.step_mm)
