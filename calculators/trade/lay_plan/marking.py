"""The marking table: where every part of the cloth begins and ends and where it is cut, level after level, all from the
same two edges."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from calculators.trade.lay_plan.cutting import holds_pieces, inner_marks, trim_marks, waste_between
from calculators.trade.lay_plan.laid import LaidPiece, Lay
from calculators.trade.lay_plan.solving.plan import Part


@dataclass(frozen=True)
class Marked:
    """One line of the marking table: a strip, waste between two, or parts within a strip that are cut once more.

    strip: its number from 1, 0 for what is left over. within: which parts of the strip, such as "2" or "3 to 5" or
    "2.1", "" for
        the strip itself.
    along: whether start and end are measured along the cloth from the straight end; else across it, from the first long
    edge.
        Marks are measured the other way.
    start, end: of the strip or of the parts [mm]. marks: where they are cut [mm].
    pieces: number of each piece and how often. waste: from which mark to which nothing is cut out, though pieces follow
    [mm].
    is_waste: whether the whole of it is waste before other strips.
    """

    strip: int
    within: str
    along: bool
    start: Fraction
    end: Fraction
    marks: tuple[Fraction, ...]
    pieces: tuple[tuple[int, int], ...]
    waste: tuple[tuple[Fraction, Fraction], ...] = ()
    is_waste: bool = False


def marked(lay: Lay) -> Iterator[Marked]:
    """Every mark of a plan in working order: each strip, then the parts of it that are cut further.

    lay: the plan of one cloth.
    Returns the lines of its marking table.
    Source: derived.
    """
    along, number = lay.first_cut == "across", 0
    last = max((place for place, part in enumerate(lay.strips) if holds_pieces(part)), default=0)
    for place, part in enumerate(lay.strips):
        held = holds_pieces(part)
        number += held
        strip = number if held else 0
        whole = part.piece is not None
        line = _line(lay, strip, "", along, part, part, _trims(lay, part) if whole else inner_marks(lay, part))
        yield replace(line, is_waste=not held and place < last)
        if held and not whole:
            yield from _within(lay, strip, "", part)


def piece_marks(placed: LaidPiece) -> tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]]:
    """Where the edges of a piece lie.

    placed: a piece of a plan.
    Returns two marks from the straight end and two from the first long edge [mm].
    Source: derived, the four sides of where the piece lies.
    """
    box = placed.box
    return (box.y, box.end), (box.x, box.right)


def _within(lay: Lay, strip: int, path: str, whole: Part) -> Iterator[Marked]:
    """The parts of a strip (or of a part of one) that are cut further; neighbours that are cut alike stand in one
    line."""
    along = whole.cut == "across"
    waiting: list[tuple[int, Part]] = []
    for number, part in enumerate((each for each in whole.parts if holds_pieces(each)), start=1):
        if waiting and (part.piece is None or _trims(lay, part) != _trims(lay, waiting[-1][1])):
            yield from _alike(lay, strip, path, along, waiting)
            waiting = []
        if part.piece is not None:
            waiting = [*waiting, (number, part)] if _trims(lay, part) else []
        else:
            yield _line(lay, strip, f"{path}{number}", along, part, part, inner_marks(lay, part))
            yield from _within(lay, strip, f"{path}{number}.", part)
    yield from _alike(lay, strip, path, along, waiting)


def _alike(lay: Lay, strip: int, path: str, along: bool, parts: list[tuple[int, Part]]) -> Iterator[Marked]:
    if parts:
        (first, start), (last, end) = parts[0], parts[-1]
        name = f"{path}{first}" if first == last else f"{path}{first} to {path}{last}"
        yield _line(lay, strip, name, along, start, end, _trims(lay, start), [part for _, part in parts])


def _line(
    lay: Lay,
    strip: int,
    within: str,
    along: bool,
    first: Part,
    last: Part,
    marks: tuple[Fraction, ...],
    parts: list[Part] | None = None,
) -> Marked:
    low, high = lay.extent(first), lay.extent(last)
    counts = Counter(piece for part in parts or [first] for piece, _ in part.held())
    start, end = (low.y, high.end) if along else (low.x, high.right)
    waste = waste_between(lay, first) if parts is None else ()
    return Marked(strip, within, along, start, end, marks, tuple(sorted(counts.items())), waste)


def _trims(lay: Lay, part: Part) -> tuple[Fraction, ...]:
    """Where a part with a single piece is trimmed."""
    return tuple(mark for _, mark in trim_marks(lay, part)) if part.piece is not None else ()
