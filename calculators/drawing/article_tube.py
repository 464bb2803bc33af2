"""An article whose one part lies round, with round ends, such as a bolster: it is drawn as a tube seen at a slant."""

from dataclasses import replace
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.article_rows import corners_of
from calculators.drawing.picture import WIDTH, Picture, Sheet, text_width
from calculators.trade.articles.parts import ROUND, FlatPart
from calculators.trade.articles.work import MakingUp
from calculators.values.measure import Ruler, show_length

_TALLEST, _OVER, _LOWEST = 110.0, 28.0, 64.0  # [drawing units] the tube; over it, for its length; the sheet at least
_SLANT = Fraction(35, 100)  # how wide a round end is seen, as a share of its height
_BESIDE = 2.5  # [drawing units] a zip's row beside its seam


def is_tube(work: MakingUp) -> bool:
    """Whether a straight side is sewn round a round part."""
    return any(ROUND in (glue.one.side, glue.other.side) for glue in work.glues)


def tube(work: MakingUp, size: tuple[Fraction, Fraction], ruler: Ruler) -> Picture:
    """The tube with its length and what it measures across.

    work: what is put down of it. size: its length and its diameter [mm]. ruler: the one sizes are read on.
    """
    length, across = (float(each) for each in size)
    told = [show_length(each, ruler) for each in size]
    left, end = text_width(told[1]) + 34, float(_SLANT) * across
    scale = min((WIDTH - left - 8) / (length + end), _TALLEST / across)
    left = left + (WIDTH - left - 8 - (length + end) * scale) / 2
    sheet = Sheet((0, 0, WIDTH, max(_OVER + across * scale + 6, _LOWEST)), margins=(0, 0, 0, 0), down=True, tallest=1e6)
    near, far = left + end * scale / 2, left + (end / 2 + length) * scale
    top, foot = _OVER, _OVER + across * scale
    whole = FlatPart("end", _SLANT * size[1], size[1], is_round=True)
    ring = [(x * scale, foot - y * scale) for x, y in corners_of(whole)]
    middle = len(ring) // 2
    right = [(left + length * scale + x, y) for x, y in ring]
    hidden = [(left + x, y) for x, y in ring[middle:]]
    body = [(near, top), *right[: middle + 1], (near, foot), *hidden]
    sheet.area(lines.CLOTH_RIGHT, body)
    sheet.line(lines.EDGE, *body, body[0], fine=True)
    sheet.line(lines.EDGE, *right[middle:], fine=True)
    for zipped in (each for each in work.operations if each.verb == "zip"):
        shut = (length - float(zipped.lengths["length"])) / 2 * scale
        for beside in (-_BESIDE, _BESIDE):
            high = top + (foot - top) / 2 + beside
            sheet.line(lines.STITCH, (left + shut, high), (left + length * scale - shut, high), fine=True)
    sheet.dimension((near, top), (far, top), told[0], away=10)
    sheet.dimension((left, foot), (left, top), told[1], away=10)
    crop = (left - 4, top - 4, (length + end) * scale + 8, foot - top + 8)
    made = sheet.finish("Made up", f"{told[0]} long, {told[1]} across its ends.", with_key=False)
    return replace(made, crop=crop)
