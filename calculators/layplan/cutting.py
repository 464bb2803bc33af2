"""From a plan to the table: the cuts in working order, every mark from the same end, threads to draw, remnants to keep."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from calculators.layplan.laid import Box, Lay
from calculators.layplan.plan import Part


@dataclass(frozen=True)
class Cut:
    """Cuts made in one go, edge to edge of what is in hand.

    across: whether they run from side to side, else along the cloth. part: where what is in hand lies.
    marks: where they are, all from the straight end (across) or all from the first long edge (along) [mm].
    length: of each cut [mm]. first, last: numbers of the strips they are made in, 0 when the whole cloth is in hand.
    trims: whether they only cut pieces to their size.
    """

    across: bool
    part: Box
    marks: tuple[Fraction, ...]
    length: Fraction
    first: int = 0
    last: int = 0
    trims: bool = False

    @property
    def how_often(self) -> int:
        """How many single cuts these are."""
        return len(self.marks) * (self.last - self.first + 1)


@dataclass(frozen=True)
class Strip:
    """One strip, or waste between two.

    box: where it lies [mm]; number: from 1, 0 for waste; pieces: number of the piece and how often.
    marks: where it is cut into pieces, from the first long edge, or from the straight end when strips run along [mm].
    """

    box: Box
    number: int
    pieces: tuple[tuple[int, int], ...]
    marks: tuple[Fraction, ...]


def strips(lay: Lay) -> list[Strip]:
    """The strips of a plan in order, waste among them."""
    found, number = [], 0
    for part in lay.strips:
        held = sorted(leaf.piece for leaf in part.leaves() if leaf.piece is not None)
        number += bool(held)
        counted = tuple((piece, len(list(same))) for piece, same in groupby(held))
        found.append(Strip(lay.extent(part), number if held else 0, counted, _marks(lay, part)))
    return found


def cuts(lay: Lay) -> list[Cut]:
    """Every cut of a plan in working order: first the strips, then strip after strip; strips that are cut alike are joined in one row."""
    root = lay.plan.cloth
    made = [Cut(root.cut == "across", lay.extent(root), marks, _run(lay, root)) for marks in [_marks(lay, root)] if marks] if root.parts else []
    number = 0
    for part in lay.strips:
        if any(leaf.piece is not None for leaf in part.leaves()):
            number += 1
            made += _joined(made, list(_within(lay, part, number)))
    return made


def _joined(made: list[Cut], new: list[Cut]) -> list[Cut]:
    """New cuts, or nothing when the strip before was cut just the same: it then stands for this one too."""
    if not new:
        return []
    tail = made[-len(new):]
    same = len(tail) == len(new) and all(
        (a.across, a.trims, a.length, a.marks) == (b.across, b.trims, b.length, b.marks) and a.last == b.last - 1 for a, b in zip(tail, new)
    )
    if not same:
        return new
    made[-len(new):] = [Cut(a.across, a.part, a.marks, a.length, a.first, b.last, a.trims) for a, b in zip(tail, new)]
    return []


def _within(lay: Lay, part: Part, number: int) -> Iterator[Cut]:
    marks = _marks(lay, part)
    if part.parts and marks:
        yield Cut(part.cut == "across", lay.extent(part), marks, _run(lay, part), number, number)
    for inner in part.parts:
        yield from _within(lay, inner, number)
    if part.piece is not None:
        yield from _trim(lay, part, number)


def _run(lay: Lay, part: Part) -> Fraction:
    box = lay.extent(part)
    return box.width if part.cut == "across" else box.length


def _marks(lay: Lay, part: Part) -> tuple[Fraction, ...]:
    """Where a part is cut: the end of each inner part, and the start of the next where something is lost between."""
    across = part.cut == "across"
    box = lay.extent(part)
    start, end = (box.y, box.end) if across else (box.x, box.right)
    found = set()
    for inner in part.parts:
        held = lay.extent(inner)
        found |= {held.y, held.end} if across else {held.x, held.right}
    return tuple(sorted(mark for mark in found if start < mark < end))


def _trim(lay: Lay, part: Part, number: int) -> Iterator[Cut]:
    wanted = lay.pieces[part.piece]
    width, length = (wanted.length, wanted.width) if part.turned else (wanted.width, wanted.length)
    box = lay.extent(part)
    if length < box.length:
        yield Cut(True, box, (box.y + length,), box.width, number, number, True)
    if width < box.width:
        yield Cut(False, box, (box.x + width,), box.length, number, number, True)


def remnants(lay: Lay, keep: Fraction) -> list[Box]:
    """What is left over and large enough to be kept, largest first.

    lay: the plan of one cloth. keep: least length and width worth keeping [mm].
    Returns rectangles on the usable cloth [mm]; what a flaw lies in is not among them.
    Source: derived.
    """
    found = []
    for leaf in lay.plan.cloth.leaves():
        box = lay.extent(leaf)
        if leaf.piece is None:
            found.append(box)
            continue
        wanted = lay.pieces[leaf.piece]
        width, length = (wanted.length, wanted.width) if leaf.turned else (wanted.width, wanted.length)
        found.append(Box(box.x + width + lay.gap, box.y, box.width - width - lay.gap, box.length))
        found.append(Box(box.x, box.y + length + lay.gap, box.width, box.length - length - lay.gap))
    kept = [box for box in found if box.width >= keep and box.length >= keep and not any(_meets(box, flaw) for flaw in lay.cloth.flaws)]
    return sorted(kept, key=lambda box: (-box.width * box.length, box.y, box.x))


def _meets(box: Box, flaw) -> bool:
    return box.x < flaw.from_selvedge + flaw.width and flaw.from_selvedge < box.right and box.y < flaw.from_end + flaw.length and flaw.from_end < box.end
