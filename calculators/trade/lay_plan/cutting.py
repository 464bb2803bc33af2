"""From a plan to the table: the cuts in working order, every mark from the same end, threads to draw, remnants to
keep."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from calculators.trade.lay_plan.laid import Lay, Rectangle
from calculators.trade.lay_plan.order import Flaw
from calculators.trade.lay_plan.solving.plan import Part


@dataclass(frozen=True)
class Cut:
    """Cuts made in one go, edge to edge of what is in hand.

    across: whether they run from side to side, else along the cloth. part: where what is in hand lies.
    marks: where they are, all from the straight end (across) or all from the first long edge (along) [mm].
    length: of each cut [mm]. first, last: numbers of the strips they are made in, 0 when the whole cloth is in hand.
    within: which part of the strip is in hand, such as "2" or "2.1", "" for the whole strip.
    trims: whether they only cut pieces to their size. waste: from which mark to which nothing is cut out, though pieces
    follow [mm].
    """

    across: bool
    part: Rectangle
    marks: tuple[Fraction, ...]
    length: Fraction
    first: int = 0
    last: int = 0
    within: str = ""
    trims: bool = False
    waste: tuple[tuple[Fraction, Fraction], ...] = ()

    @property
    def how_often(self) -> int:
        """How many single cuts these are."""
        return len(self.marks) * (self.last - self.first + 1)


def cuts(lay: Lay) -> list[Cut]:
    """Every cut of a plan in working order: first the strips, then strip after strip; strips that are cut alike are
    joined in one row."""
    root = lay.plan.cloth
    made = (
        [
            Cut(root.cut == "across", lay.extent(root), marks, _run(lay, root), waste=waste_between(lay, root))
            for marks in [inner_marks(lay, root)]
            if marks
        ]
        if root.parts
        else []
    )
    number = 0
    for part in lay.strips:
        if holds_pieces(part):
            number += 1
            made += _joined(made, list(_within(lay, part, number, "")))
    return made


def _joined(made: list[Cut], new: list[Cut]) -> list[Cut]:
    """New cuts, or nothing when the strip before was cut just the same: it then stands for this one too."""
    if not new:
        return []
    tail = made[-len(new) :]
    same = len(tail) == len(new) and all(
        (a.across, a.trims, a.within, a.length, a.marks, a.waste)
        == (b.across, b.trims, b.within, b.length, b.marks, b.waste)
        and a.last == b.last - 1
        for a, b in zip(tail, new)
    )
    if not same:
        return new
    made[-len(new) :] = [replace(a, last=b.last) for a, b in zip(tail, new)]
    return []


def _within(lay: Lay, part: Part, number: int, path: str) -> Iterator[Cut]:
    marks = inner_marks(lay, part)
    if part.parts and marks:
        yield Cut(
            part.cut == "across",
            lay.extent(part),
            marks,
            _run(lay, part),
            number,
            number,
            path,
            waste=waste_between(lay, part),
        )
    before = f"{path}." if path else ""
    for count, inner in enumerate((each for each in part.parts if holds_pieces(each)), start=1):
        yield from _within(lay, inner, number, f"{before}{count}")
    for across, mark in trim_marks(lay, part):
        box = lay.extent(part)
        yield Cut(across, box, (mark,), box.width if across else box.length, number, number, path, True)


def holds_pieces(part: Part) -> bool:
    """Whether any piece lies in a part.

    part: of a plan. Returns False for waste.
    Source: derived.
    """
    return any(leaf.piece is not None for leaf in part.leaves())


def waste_boxes(lay: Lay, part: Part) -> Iterator[Rectangle]:
    """What is left free before pieces that follow it in a part or further in, such as the room of a flaw.

    lay: the plan of one cloth. part: of it.
    Returns rectangles of cloth that look like a piece by their marks, and are none.
    Source: derived.
    """
    yield from _free(lay, part)
    for inner in part.parts:
        yield from waste_boxes(lay, inner)


def waste_between(lay: Lay, part: Part) -> tuple[tuple[Fraction, Fraction], ...]:
    """From which mark to which a part is cut into waste, although pieces follow.

    lay: the plan of one cloth. part: of it.
    Returns pairs of marks along the way in which the part is divided [mm].
    Source: derived, the free places before a later piece, seen along the way of the cuts.
    """
    return tuple((box.y, box.end) if part.cut == "across" else (box.x, box.right) for box in _free(lay, part))


def _free(lay: Lay, part: Part) -> Iterator[Rectangle]:
    last = max((number for number, inner in enumerate(part.parts) if holds_pieces(inner)), default=0)
    for inner in part.parts[:last]:
        if not holds_pieces(inner):
            yield lay.extent(inner)


def _run(lay: Lay, part: Part) -> Fraction:
    box = lay.extent(part)
    return box.width if part.cut == "across" else box.length


def inner_marks(lay: Lay, part: Part) -> tuple[Fraction, ...]:
    """Where a part is cut: the end of each inner part, and the start of the next where something is lost between.

    lay: the plan of one cloth. part: of it.
    Returns the marks in order [mm].
    Source: derived, the ends of all inner parts, without the two of the part itself.
    """
    across = part.cut == "across"
    box = lay.extent(part)
    start, end = (box.y, box.end) if across else (box.x, box.right)
    found = set()
    for inner in part.parts:
        held = lay.extent(inner)
        found |= {held.y, held.end} if across else {held.x, held.right}
    return tuple(sorted(mark for mark in found if start < mark < end))


def trim_marks(lay: Lay, part: Part) -> Iterator[tuple[bool, Fraction]]:
    """Where a part is cut to the size of its single piece.

    lay: the plan of one cloth. part: of it.
    Returns for each cut whether it runs across, and its mark [mm].
    Source: derived, a cut wherever the part is larger than its piece.
    """
    if part.piece is None:
        return
    wanted = lay.pieces[part.piece]
    width, length = (wanted.length, wanted.width) if part.turned else (wanted.width, wanted.length)
    box = lay.extent(part)
    if length < box.length:
        yield True, box.y + length
    if width < box.width:
        yield False, box.x + width


def remnants(lay: Lay, keep: Fraction) -> list[Rectangle]:
    """What is left over and large enough to be kept, largest first.

    lay: the plan of one cloth. keep: least length and width worth keeping [mm].
    Returns rectangles on the usable cloth [mm]; what a flaw lies in is not among them.
    Source: derived, empty parts, and what lies beside and beyond a piece that is smaller than its part.
    """
    found = []
    for leaf in lay.plan.cloth.leaves():
        box = lay.extent(leaf)
        if leaf.piece is None:
            found.append(box)
            continue
        wanted = lay.pieces[leaf.piece]
        width, length = (wanted.length, wanted.width) if leaf.turned else (wanted.width, wanted.length)
        found.append(Rectangle(box.x + width + lay.gap, box.y, box.width - width - lay.gap, box.length))
        found.append(Rectangle(box.x, box.y + length + lay.gap, box.width, box.length - length - lay.gap))
    kept = [
        box
        for box in found
        if box.width >= keep and box.length >= keep and not any(_meets(box, flaw) for flaw in lay.cloth.flaws)
    ]
    return sorted(kept, key=lambda box: (-box.width * box.length, box.y, box.x))


def _meets(box: Rectangle, flaw: Flaw) -> bool:
    return (
        box.x < flaw.from_selvedge + flaw.width
        and flaw.from_selvedge < box.right
        and box.y < flaw.from_end + flaw.length
        and flaw.from_end < box.end
    )
