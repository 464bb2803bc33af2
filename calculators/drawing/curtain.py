"""One curtain as it is cut, laid flat, with its joins and its hems."""

from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import MIDDLE, Picture, Point, Sheet, rectangle, text_width
from calculators.trade.curtains import Drop, Hem, JoinedWidths
from calculators.values.measure import Ruler, show_length
from calculators.values.numerals import mixed

_MARGINS, _TALLEST = (74, 40, 64, 56), 300  # drawing units
_WIDEST = 3  # lengths of width that are drawn, or its side hem twice; beyond that cloth runs on
_ROOM_FOR_A_NUMBER = 34  # [drawing units]
_HALF_A_WIDTH = Fraction(1, 2)
_GRAIN = 38  # [drawing units] the arrow and its word beside it


def curtain_laid_flat(cut: tuple[JoinedWidths, Drop], ruler: Ruler) -> Picture:
    """The joined widths, wrong side up, head upwards, on washed cloth.

    cut: the widths of one curtain and the length of each; ruler: the one sizes are read on.
    """
    widths, drop = cut
    needed, whole = drop.needed, drop.cut
    side, foot, head = widths.side.taken_up, drop.lower.taken_up, needed - drop.heading
    drawn = min(widths.cut, max(_WIDEST * whole, 2 * side))
    runs_on = drawn < widths.cut
    finished = f"finished {show_length(drop.finished, ruler)}"
    left, above, right, below = _MARGINS
    scale = Sheet((0, 0, drawn, whole), margins=_MARGINS, tallest=_TALLEST).scale
    half, middle = text_width(finished) / 2, float(foot + head) / 2  # such words stand along the side
    margins = (left, max(above, half - (float(whole) - middle) * scale), right, max(below, half - middle * scale))
    sheet = Sheet((0, 0, drawn, whole), margins=margins, tallest=_TALLEST)
    sheet.area(lines.CLOTH_WRONG, rectangle(0, 0, drawn, needed), pattern=True)
    if whole > needed:
        sheet.area(lines.REMNANT, rectangle(0, needed, drawn, whole), pattern=True)
        sheet.line(lines.CUT, (0, needed), (drawn, needed))
        sheet.along("cut", (0, needed), (drawn, needed))
    around: list[Point] = [(drawn, 0), (0, 0), (0, whole), (drawn, whole)]
    sheet.line(lines.CUT, *around, *(around[:1] if not runs_on else ()))
    if runs_on:
        sheet.cut_off(around[0], around[-1])
    for at in widths.places_of_joins:
        if at < drawn:
            sheet.line(lines.STITCH, (at, 0), (at, whole))
    _folds(sheet, widths, drop, drawn)
    _numbers(sheet, widths, needed, drawn)
    sheet.dimension((0, whole), (drawn, whole), f"cut {show_length(widths.cut, ruler)}", away=14)
    sheet.dimension((drawn, whole), (drawn, 0), f"cut {show_length(whole, ruler, 'up')}", away=12)
    sheet.dimension(
        (drawn if runs_on else drawn - side, foot),
        (side, foot),
        f"finished {show_length(widths.finished, ruler, 'down')}",
        away=14 + float(foot) * sheet.scale,
    )
    sheet.dimension((side, foot), (side, head), finished, away=14 + float(side) * sheet.scale)
    joins = " The stitched lines are its joins." if widths.joins else ""
    not_all = " Not all of its widths are drawn." if runs_on else ""
    return sheet.finish(
        "One curtain, laid flat", _in_words(widths, drop, ruler) + not_all,
        caption=f"One curtain as it is cut of washed cloth, laid flat, wrong side up, to scale.{joins}{not_all}",
    )  # fmt: skip


def _folds(sheet: Sheet, widths: JoinedWidths, drop: Drop, drawn: Fraction) -> None:
    """Where sides, foot and heading are folded, each turn and each hem."""
    for at in _creases(widths.side):
        for place in (at, widths.cut - at):
            if place < drawn:
                sheet.line(lines.FOLD, (place, 0), (place, drop.needed))
    for place in (*_creases(drop.lower), drop.needed - drop.heading):
        if place < drop.needed:
            sheet.line(lines.FOLD, (0, place), (drawn, place))


def _creases(hem: Hem) -> list[Fraction]:
    return sorted({hem.turn, hem.taken_up} - {0}) if hem.depth else []


def _numbers(sheet: Sheet, widths: JoinedWidths, needed: Fraction, drawn: Fraction) -> None:
    """The number of each whole width, where there is room, and the grain in the widest that is drawn."""
    edges = [Fraction(0), *(at for at in widths.places_of_joins if at < drawn), drawn]
    first = 1 if widths.number == widths.number // 1 else 0
    for number, (left, right) in enumerate(zip(edges, edges[1:]), first):
        if (right - left) * sheet.scale >= _ROOM_FOR_A_NUMBER:
            sheet.words(
                mixed(Fraction(number or _HALF_A_WIDTH)), ((left + right) / 2, needed * 2 / 3), style=f"label {MIDDLE}"
            )
    left, right = max(zip(edges, edges[1:]), key=lambda piece: piece[1] - piece[0])
    indent = max(6, (float(right - left) * sheet.scale - _GRAIN) / 2) / sheet.scale
    sheet.grain((float(left) + indent, needed / 3), along_x=False)


def _in_words(widths: JoinedWidths, drop: Drop, ruler: Ruler) -> str:
    joined = (
        f"{float(widths.number):g} widths joined"
        if widths.number > 1
        else "one width"
        if widths.number == 1
        else "half a width"
    )
    trimmed = (
        f" {show_length(drop.cut - drop.needed, ruler, 'down')} are trimmed off at the top, so that the pattern "
        "matches."
        if drop.cut > drop.needed
        else ""
    )
    return (
        f"{joined.capitalize()}: {show_length(widths.cut, ruler)} across and {show_length(drop.cut, ruler, 'up')} "
        "long as cut; "
        f"{show_length(widths.finished, ruler, 'down')} by {show_length(drop.finished, ruler)} finished.{trimmed}"
    )
