"""A cloth as it lies, with what is cut away at its selvedges and ends."""

from collections.abc import Sequence
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, rectangle, text_width
from calculators.trade.cloth import UsableCloth
from calculators.values.measure import Ruler, show_length

_LEFT_OUT = 8  # [drawing units] between the two break lines where the middle is left out
_LONGEST = 6  # cloth widths of length that are drawn; beyond that the middle is left out


def cloth_in_hand(cloth: UsableCloth, ruler: Ruler) -> Picture:
    """The whole cloth, its length lying across the sheet, with the part that can be used.

    cloth: the cloth and its losses; ruler: the one sizes are read on.
    """
    slanted = 2 * (cloth.end_loss + cloth.skew)
    drawn = min(cloth.whole_length, max(_LONGEST * cloth.full_width, slanted + cloth.full_width))
    low, high = cloth.selvedge, cloth.full_width - cloth.selvedge
    start, end = cloth.end_loss, drawn - cloth.end_loss
    across = show_length(cloth.width, ruler, "down")
    sheet = Sheet((0, 0, drawn, cloth.full_width), margins=(24, 34, 36 + text_width(across), 58), down=True)
    whole, out = drawn == cloth.whole_length, _LEFT_OUT / Fraction(sheet.scale)
    nought = Fraction(0)
    parts = [(nought, drawn)] if whole else [(nought, (drawn - out) / 2), ((drawn + out) / 2, drawn)]
    for left, right in parts:
        sheet.area(lines.REMNANT, rectangle(left, 0, right, cloth.full_width), pattern=True)
        starts = (left, left) if left else (start, start + cloth.skew)
        stops = (end - cloth.skew, end) if right == drawn else (right, right)
        sheet.area(lines.CLOTH_RIGHT, [(starts[0], low), (stops[0], low), (stops[1], high), (starts[1], high)])
    for at in (start, end - cloth.skew):
        sheet.line(lines.CUT, (at, low), (at + cloth.skew, high))
    for at in (low, high):
        if cloth.selvedge:
            for left, right in parts:
                sheet.line(lines.CUT, (left, at), (right, at))
    _outline(sheet, parts, cloth.full_width)
    sheet.grain(((start + end) / 2 if whole else sum(parts[-1]) / 2, (low + high) / 2), along_x=True)
    for at in (low, high) if cloth.selvedge else ():
        sheet.along("cut", (parts[0][0], at), (parts[0][1], at))
    sheet.dimension(
        (start, low), (end - cloth.skew, low), f"usable {show_length(cloth.length, ruler, 'down')}", away=16
    )
    sheet.dimension((end, low), (end, high), across, away=14)
    size = (
        f"whole cloth {show_length(cloth.whole_length, ruler, 'down')} by "
        f"{show_length(cloth.full_width, ruler, 'down')}"
    )
    sheet.words(
        size if whole else f"{size}; not all of its length is drawn",
        (0, cloth.full_width),
        anchor="start",
        shift=(0, 20),
    )
    return sheet.finish("The cloth and what can be used of it", _in_words(cloth, ruler))


def _outline(sheet: Sheet, parts: Sequence[tuple[Fraction, Fraction]], width: Fraction) -> None:
    """The edges of the cloth, and break lines where its middle is left out."""
    first, last = parts[0], parts[-1]
    if first == last:
        sheet.line(lines.EDGE, *rectangle(0, 0, first[1], width), (0, 0))
        return
    sheet.line(lines.EDGE, (first[1], 0), (0, 0), (0, width), (first[1], width))
    sheet.line(lines.EDGE, (last[0], 0), (last[1], 0), (last[1], width), (last[0], width))
    for at in (first[1], last[0]):
        sheet.cut_off((at, 0), (at, width))


def _in_words(cloth: UsableCloth, ruler: Ruler) -> str:
    return (
        f"Of a cloth {show_length(cloth.whole_length, ruler, 'down')} long and "
        f"{show_length(cloth.full_width, ruler, 'down')} wide, "
        f"{show_length(cloth.length, ruler, 'down')} by {show_length(cloth.width, ruler, 'down')} can be used. Cut "
        "away: "
        f"{show_length(cloth.end_loss, ruler)} at each end, {show_length(cloth.selvedge, ruler)} at each selvedge; "
        "both ends slant by "
        f"{show_length(cloth.skew, ruler)}."
    )
