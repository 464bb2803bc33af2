"""The pointed end of a runner, with its measures and its angles."""

from calculators.drawing import lines
from calculators.drawing.picture import MIDDLE, Picture, Sheet
from calculators.trade.pointed_end import PointedEnd
from calculators.values.measure import Ruler, show_length

_RUNS_ON = 0.4  # of the width: how much of the runner is drawn below its point


def pointed_end(end: PointedEnd, ruler: Ruler) -> Picture:
    """The end with its point upwards.

    end: the runner's end; ruler: the one its measures are read on.
    """
    width, begins = float(end.width), float(end.width) * _RUNS_ON
    top = begins + float(end.point)
    tip, side = (_degrees(each) for each in (end.tip, end.side))
    sheet = Sheet((0, 0, width, top), margins=(112, 30, 60, 44), tallest=300)
    outline = [(0, 0), (0, begins), (width / 2, top), (width, begins), (width, 0)]
    sheet.area(lines.CLOTH_RIGHT, outline)
    sheet.line(lines.EDGE, *outline)
    sheet.cut_off(outline[-1], outline[0])
    sheet.words(tip, (width / 2, top), shift=(0, -8))
    sheet.words(side, (width, begins), style=f"label {MIDDLE}", anchor="start", shift=(6, 0))
    sheet.dimension((0, begins), (0, top), show_length(end.point, ruler), away=14)
    sheet.dimension((width, 0), (0, 0), show_length(end.width, ruler), away=14)
    return sheet.finish(
        "The pointed end",
        f"A runner {show_length(end.width, ruler)} wide with a point {show_length(end.point, ruler)} long: {tip} at "
        f"the point, {side} at each of the two corners beside it.",
        caption=f"The pointed end, to scale. The two corners where the point begins are alike, {side} each.",
    )


def _degrees(angle: float) -> str:
    return f"{f'{angle:.1f}'.removesuffix('.0')}°"
