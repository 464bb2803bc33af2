"""One curtain as it is cut, laid flat, with its joins and its hems."""

from calculators.curtains import Drop, JoinedWidths
from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, rectangle
from calculators.measure import Ruler, show_length

_ROOM_FOR_A_NUMBER = 34  # [drawing units]


def curtain_laid_flat(cut: tuple[JoinedWidths, Drop], ruler: Ruler) -> Picture:
    """The joined widths, wrong side up, head upwards, on washed cloth.

    cut: the widths of one curtain and the length of each; ruler: the one sizes are read on.
    """
    widths, drop = cut
    across, needed, whole = widths.cut, drop.needed, drop.cut
    side, foot, head = widths.side.taken_up, drop.lower.taken_up, needed - drop.heading
    sheet = Sheet((0, 0, across, whole), margins=(74, 40, 64, 56), tallest=300)
    sheet.area(lines.CLOTH_WRONG, rectangle(0, 0, across, needed), pattern=True)
    if whole > needed:
        sheet.area(lines.REMNANT, rectangle(0, needed, across, whole), pattern=True)
        sheet.line(lines.CUT, (0, needed), (across, needed))
    sheet.line(lines.CUT, *rectangle(0, 0, across, whole), (0, 0))
    for at in widths.places_of_joins:
        sheet.line(lines.STITCH, (at, 0), (at, whole))
    _folds(sheet, widths, drop)
    _numbers(sheet, widths, needed)
    sheet.dimension((0, whole), (across, whole), f"cut {show_length(across, ruler)}", away=14)
    sheet.dimension((across, whole), (across, 0), show_length(whole, ruler, "up"), away=12)
    sheet.dimension((across - side, foot), (side, foot), f"finished {show_length(widths.finished, ruler, 'down')}", away=14 + float(foot) * sheet.scale)
    sheet.dimension((side, foot), (side, head), show_length(drop.finished, ruler), away=14 + float(side) * sheet.scale)
    return sheet.finish("One curtain, laid flat", _in_words(widths, drop, ruler), caption="One curtain as it is cut of washed cloth, laid flat, wrong side up, to scale. The stitched lines are its joins.")


def _folds(sheet: Sheet, widths: JoinedWidths, drop: Drop) -> None:
    """Where sides, foot and heading are folded, each turn and each hem."""
    across, needed = widths.cut, drop.needed
    for hem, fold in ((widths.side, lambda at: (((at, 0), (at, needed)), ((across - at, 0), (across - at, needed)))), (drop.lower, lambda at: (((0, at), (across, at)),))):
        if hem.depth:
            for at in {hem.turn, hem.taken_up} - {0}:
                for ends in fold(at):
                    sheet.line(lines.FOLD, *ends)
    if drop.heading:
        sheet.line(lines.FOLD, (0, needed - drop.heading), (across, needed - drop.heading))


def _numbers(sheet: Sheet, widths: JoinedWidths, needed) -> None:
    """The number of each width, where there is room, and the grain in the last."""
    edges = [0, *widths.places_of_joins, widths.cut]
    for number, (left, right) in enumerate(zip(edges, edges[1:]), 1):
        half = number == 1 and widths.number != widths.number // 1
        if (right - left) * sheet.scale >= _ROOM_FOR_A_NUMBER:
            sheet.words("½" if half else str(number), ((left + right) / 2, needed * 2 / 3), shift=(0, 4))
    sheet.grain(((edges[-2] + edges[-1]) / 2, needed / 3), along_x=False)


def _in_words(widths: JoinedWidths, drop: Drop, ruler: Ruler) -> str:
    joined = f"{float(widths.number):g} widths joined" if widths.number > 1 else "one width" if widths.number == 1 else "half a width"
    trimmed = f" {show_length(drop.cut - drop.needed, ruler, 'down')} are trimmed off at the top, so that the pattern matches." if drop.cut > drop.needed else ""
    return (
        f"{joined.capitalize()}: {show_length(widths.cut, ruler)} across and {show_length(drop.cut, ruler, 'up')} long as cut; "
        f"{show_length(widths.finished, ruler, 'down')} by {show_length(drop.finished, ruler)} finished.{trimmed}"
    )
