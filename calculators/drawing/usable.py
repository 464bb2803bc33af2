"""A cloth as it lies, with what is cut away at its selvedges and ends."""

from calculators.cloth import UsableCloth
from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, rectangle
from calculators.measure import Ruler, show_length

_LONGEST = 6  # cloth widths of length that are drawn; beyond that the middle is left out


def cloth_in_hand(cloth: UsableCloth, ruler: Ruler) -> Picture:
    """The whole cloth, its length lying across the sheet, with the part that can be used.

    cloth: the cloth and its losses; ruler: the one sizes are read on.
    """
    ends = 2 * cloth.end_loss + cloth.skew
    drawn = min(cloth.whole_length, max(_LONGEST * cloth.full_width, ends + cloth.full_width))
    low, high = cloth.selvedge, cloth.full_width - cloth.selvedge
    start, end = cloth.end_loss, drawn - cloth.end_loss
    sheet = Sheet((0, 0, drawn, cloth.full_width), margins=(24, 34, 76, 52), down=True)
    sheet.area(lines.REMNANT, rectangle(0, 0, drawn, cloth.full_width), pattern=True)
    sheet.area("cloth-right", [(start, low), (end - cloth.skew, low), (end, high), (start + cloth.skew, high)])
    for at in (start, end - cloth.skew):
        sheet.line(lines.CUT, (at, low), (at + cloth.skew, high))
    for at in (low, high):
        if cloth.selvedge:
            sheet.line(lines.CUT, (0, at), (drawn, at))
            sheet.along("cut", (0, at), (drawn, at))
    sheet.line(lines.EDGE, *rectangle(0, 0, drawn, cloth.full_width), (0, 0))
    sheet.grain(((start + end) / 2, (low + high) / 2), along_x=True)
    sheet.dimension((start, low), (end - cloth.skew, low), f"usable {show_length(cloth.length, ruler, 'down')}", away=16)
    sheet.dimension((end, low), (end, high), show_length(cloth.width, ruler, "down"), away=14)
    whole = f"whole cloth {show_length(cloth.whole_length, ruler, 'down')} by {show_length(cloth.full_width, ruler, 'down')}"
    sheet.words(f"{whole}; not all of its length is drawn" if drawn < cloth.whole_length else whole, (0, cloth.full_width), anchor="start", shift=(0, 20))
    return sheet.finish("The cloth and what can be used of it", _in_words(cloth, ruler))


def _in_words(cloth: UsableCloth, ruler: Ruler) -> str:
    return (
        f"Of a cloth {show_length(cloth.whole_length, ruler, 'down')} long and {show_length(cloth.full_width, ruler, 'down')} wide, "
        f"{show_length(cloth.length, ruler, 'down')} by {show_length(cloth.width, ruler, 'down')} can be used. Cut away: "
        f"{show_length(cloth.end_loss, ruler)} at each end, {show_length(cloth.selvedge, ruler)} at each selvedge; both ends slant by "
        f"{show_length(cloth.skew, ruler)}."
    )
