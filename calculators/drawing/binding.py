"""Strips for a binding on the cloth they are cut from: straight across, on the bias, and round and round."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, part_within, rectangle, text_width
from calculators.values.measure import Ruler, show_length

_MOST = 12  # strips that are drawn; beyond that the cloth runs on
_ROOT = 2**0.5


@dataclass(frozen=True)
class StripsOnCloth:
    """Strips as they lie. cut: straight, bias or spiral. width, length: of the cloth or the piece they are cut from
    [mm]; strip: their cut width [mm]; count: of strips, or of rows."""

    cut: str
    width: Fraction
    length: Fraction
    strip: Fraction
    count: int


def strips_on_cloth(cloth: StripsOnCloth, ruler: Ruler) -> Picture:
    """The cloth with the lines to cut, its width across the sheet."""
    return _across(cloth, ruler) if cloth.cut == "straight" else _slanting(cloth, ruler)


def _strips(cloth: StripsOnCloth) -> str:
    return "One strip" if cloth.count == 1 else f"{cloth.count} strips"


def _across(cloth: StripsOnCloth, ruler: Ruler) -> Picture:
    drawn = min(cloth.count, _MOST)
    high = drawn * cloth.strip
    each, whole = show_length(cloth.strip, ruler, "up"), show_length(cloth.length, ruler, "up")
    sheet = Sheet((0, 0, cloth.width, high), margins=(23 + text_width(each), 20, 23 + text_width(whole), 40), down=True)
    sheet.area(lines.CLOTH_RIGHT, rectangle(0, 0, cloth.width, high))
    sheet.line(lines.EDGE, (0, high), (0, 0), (cloth.width, 0), (cloth.width, high))
    for row in range(1, drawn + (drawn == cloth.count)):
        sheet.line(lines.CUT, (0, row * cloth.strip), (cloth.width, row * cloth.strip))
    if drawn < cloth.count:
        sheet.cut_off((0, high), (cloth.width, high))
    sheet.dimension((0, cloth.strip), (0, 0), each, away=12)
    if drawn == cloth.count:
        sheet.dimension((cloth.width, 0), (cloth.width, high), whole, away=12)
    sheet.dimension((cloth.width, high), (0, high), show_length(cloth.width, ruler, "down"), away=14)
    return sheet.finish(
        "Strips across the cloth",
        f"{_strips(cloth)}, each {each} wide, one below the other across the cloth, which is "
        f"{show_length(cloth.width, ruler, 'down')} wide: {whole} of its length in all.",
        caption=f"{_strips(cloth)} across the cloth, to scale.",
    )


def _slanting(cloth: StripsOnCloth, ruler: Ruler) -> Picture:
    width, high = float(cloth.width), float(cloth.length)
    spiral = cloth.cut == "spiral"
    tall = show_length(cloth.length, ruler, "up")
    sheet = Sheet((0, 0, width, high), margins=(24, 24, 25 + text_width(tall), 42), tallest=330)
    sheet.area(lines.CLOTH_RIGHT, rectangle(0, 0, width, high))
    sheet.line(lines.EDGE, (0, 0), (width, 0), (width, high), (0, high), (0, 0))
    apart = float(cloth.strip) * _ROOT
    step = max(1, -(-cloth.count // 40))  # a line for each strip, but no more than can be told apart
    if spiral:
        short = min(width, high)
        sheet.line(lines.CUT, (0, 0), (short, short))
        places = [-apart * row for row in range(step, int(width / apart) + 1, step)]
        places += [
            width - apart * row for row in range(step, int(width / apart) + 1, step) if width - apart * row < high
        ]
        style = lines.PENCIL
    else:
        places, style = [-apart * row for row in range(0, cloth.count + 1, step)], lines.CUT
    for place in places:
        if line := part_within((-place, 0), (high - place, high), (0, 0, width, high)):
            sheet.line(style, *line, fine=style == lines.CUT and apart * sheet.scale < 12)
    if spiral:
        for start, end, name in (
            ((0, 0), (width, 0), "seam B"), ((0, high), (width, high), "seam B"),
            ((0, 0), (0, high), "seam A"), ((width, 0), (width, high), "seam A"),
        ):  # fmt: skip
            sheet.along(name, start, end)
    sheet.dimension((width, 0), (0, 0), show_length(cloth.width, ruler, "up" if spiral else "down"), away=16)
    sheet.dimension((width, high), (width, 0), tall, away=14)
    each = show_length(cloth.strip, ruler, "up")
    if spiral:
        return sheet.finish(
            "A strip cut round and round",
            f"A piece {show_length(cloth.width, ruler, 'up')} by {tall}, cut once from corner to corner at 45°, with "
            f"pencil lines {each} apart beside that cut. Seam A joins the two sides, seam B top and foot.",
            caption="Cut on the slant. Stitch seam A, then draw the lines. Stitch seam B with one edge a strip "
            "further along, and cut round and round.",
        )
    return sheet.finish(
        "Strips on the bias",
        f"{_strips(cloth)}, each {each} wide, side by side at 45° from one cut end of the cloth to the other.",
        caption=f"{_strips(cloth)} at 45°, to scale; the ends, along the grain, are joined.",
    )
