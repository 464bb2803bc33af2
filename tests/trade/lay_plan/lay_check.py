"""Checks a finished plan against the rules of textiles, apart from how it was made; cutting itself is checked by
`checker`."""

from collections.abc import Iterator

from calculators.trade.lay_plan.laid import LaidPiece, Lay, Rectangle
from tests.trade.lay_plan.checker import faults


def lay_faults(lay: Lay) -> list[str]:
    """Everything wrong with a plan, one sentence each; an empty list for a sound one."""
    return [*faults(lay.plan), *_outside(lay), *_too_close(lay), *_on_flaws(lay), *_turned(lay), *_unmatched(lay)]


def _name(lay: Lay, placed: LaidPiece) -> str:
    return f"{lay.pieces[placed.piece].name or 'a piece'} at {float(placed.box.x):g}, {float(placed.box.y):g}"


def _outside(lay: Lay) -> Iterator[str]:
    for placed in lay.placed:
        box = placed.box
        if (
            box.x < 0
            or box.y < 0
            or box.right > lay.cloth.width
            or lay.cloth.length is not None
            and box.end > lay.cloth.length
        ):
            yield f"{_name(lay, placed)} reaches beyond the usable cloth."


def _too_close(lay: Lay) -> Iterator[str]:
    current: list[LaidPiece] = []
    for placed in sorted(lay.placed, key=lambda each: each.box.y):
        current = [other for other in current if other.box.end + lay.gap > placed.box.y]
        for other in current:
            if other.box.x < placed.box.right + lay.gap and placed.box.x < other.box.right + lay.gap:
                yield f"{_name(lay, placed)} lies too close to {_name(lay, other)}."
        current.append(placed)


def _on_flaws(lay: Lay) -> Iterator[str]:
    for placed in lay.placed:
        for flaw in lay.cloth.flaws:
            if _overlap(placed.box, Rectangle(flaw.from_selvedge, flaw.from_end, flaw.width, flaw.length)):
                yield f"{_name(lay, placed)} lies over a flaw."


def _overlap(one: Rectangle, other: Rectangle) -> bool:
    return one.x < other.right and other.x < one.right and one.y < other.end and other.y < one.end


def _turned(lay: Lay) -> Iterator[str]:
    for placed in lay.placed:
        if placed.turned and (lay.cloth.cloth.one_way or not lay.pieces[placed.piece].may_turn):
            yield f"{_name(lay, placed)} lies turned but may not."


def _unmatched(lay: Lay) -> Iterator[str]:
    repeat = lay.cloth.repeat
    for placed in lay.placed if repeat else ():
        if not lay.pieces[placed.piece].matched:
            continue
        off_along = repeat.along and (placed.box.y - repeat.first_along) % repeat.along
        off_across = repeat.across and (placed.box.x - repeat.first_across) % repeat.across
        if off_along or off_across or placed.turned:
            yield f"{_name(lay, placed)} does not start where the repeat starts."
