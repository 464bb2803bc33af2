"""A row of machine stitches where something is done: begun, shortened, turned, lapped; and its threads in section.

Along the row all is to scale, from the maker's own stitch.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import hypot, pi

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, rectangle
from calculators.drawing.signs import Spot, panel, put
from calculators.trade.stitches.machine_row import SHORT, needle_places, short_part, tension_of
from calculators.trade.trade_rules import brief
from calculators.values.measure import Ruler
from calculators.values.small_lengths import show_small

WIDE = 360.0
GAP = 1.6  # [drawing units] left at either end of a stitch
SHORTEST = 7.0  # as short as a stitch is drawn


@dataclass(frozen=True)
class RowMeasures:
    """What a row is sewn with [mm]. seam, hem_stitch: one stitch of a seam, of a hem. short: one before a point.
    edge: from the row to the inner fold. lap: sewn over at the end."""

    seam: Fraction
    hem_stitch: Fraction
    short: Fraction
    edge: Fraction
    lap: Fraction


def _stitches(sheet: Sheet, spots: Sequence[Spot]) -> None:
    """Stitches from hole to hole."""
    for (x1, y1), (x2, y2) in zip(spots, spots[1:]):
        length = hypot(x2 - x1, y2 - y1) or 1
        gap = min(GAP, length / 5) / length
        ends = [(x1 + (x2 - x1) * at, y1 + (y2 - y1) * at) for at in (gap, 1 - gap)]
        sheet.line("thread-halo", *ends)
        sheet.line(lines.THREAD_OVER, *ends)


def _size(mm: Fraction, scale: float, least: float = SHORTEST, most: float = 40) -> float:
    """How long something is drawn: to scale, but never too small to be seen nor too large for its place."""
    return min(max(float(mm) * scale, least), most)


def _begun(with_: RowMeasures, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 96, margins=(0, 16, 0, 38))
    edge, row = 122.0, 52.0
    sheet.area(lines.CLOTH_WRONG, rectangle(edge, 8, WIDE, 96), pattern=True)
    sheet.line(lines.EDGE, (WIDE, 8), (edge, 8), (edge, 96))
    first, stitch = edge + 22, _size(with_.seam, 9)
    spots = [(first + stitch * number, row) for number in range(int((WIDE - 60 - first) / stitch) + 1)]
    for bow in (-7, 7):
        sheet.line(lines.THREAD_OVER, (first, row), (first - 30, row + bow), (44, row + bow / 2))
    _stitches(sheet, spots)
    put(sheet, "hand", (26, row), 0)
    put(sheet, "foot", spots[-1])
    sheet.words("edge", (edge - 4, 22), anchor="end")
    sheet.words("first stitch inside the edge", (first, 30), anchor="start")
    sheet.line("leader", (first, 34), (first, row - 5))
    sheet.words("both threads held", (8, 90), anchor="start")
    sheet.dimension((spots[1][0], 96), (spots[0][0], 96), show_small(with_.seam, ruler), away=12)
    return sheet.finish(
        "Beginning a seam",
        "The first stitch lies inside the edge of the cloth, and a hand at the left has hold of two threads.",
        with_key=False,
        caption=f"Begin inside the edge. {brief('start-seam')}",
    )


def _to_the_point(with_: RowMeasures, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 84, margins=(0, 30, 0, 38))
    fold, row = 318.0, 42.0
    length = short_part(with_.short) + 5 * with_.seam
    scale = 250 / float(length)
    sheet.area(lines.CLOTH_WRONG, rectangle(0, 0, fold, 84), pattern=True)
    sheet.line(lines.EDGE, (fold, 0), (fold, 84))
    places = needle_places(length, with_.seam, with_.short)
    spots = [(fold + (float(place) - float(length)) * scale, row) for place in places]
    _stitches(sheet, spots)
    starts = spots[-1 - SHORT][0] if len(spots) > SHORT else spots[0][0]
    sheet.words("fold", (fold + 5, 16), anchor="start")
    sheet.words(f"{SHORT} short stitches", ((starts + fold) / 2, -2))
    sheet.line("leader", (starts, 6), (starts, row - 5))
    sheet.dimension((fold, 84), (starts, 84), show_small(short_part(with_.short), ruler), away=12)
    sheet.dimension((spots[1][0], 84), (spots[0][0], 84), show_small(with_.seam, ruler), away=12)
    return sheet.finish(
        "Short stitches before a point",
        f"A seam runs to a fold; its last {SHORT} stitches are shorter than those before them.",
        with_key=False,
        caption="Short stitches before the point.",
    )


def _turned(with_: RowMeasures, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 168, margins=(0, 6, 0, 26))
    deep = 72.0  # of the hem on the sheet
    right, low = 330.0, 168.0
    inner = (right - deep, low - deep)
    away, stitch = _size(with_.edge, 5, 8), _size(with_.hem_stitch, 6)
    corner = (inner[0] + away, inner[1] + away)
    sheet.area(lines.CLOTH_RIGHT, rectangle(0, 0, right, low))
    sheet.area(lines.CLOTH_WRONG, rectangle(0, 0, *inner), pattern=True)
    sheet.line(lines.EDGE, (0, low), (right, low), (right, 0))
    sheet.line(lines.LANDS, (0, inner[1]), inner, (inner[0], 0))
    sheet.line(lines.LANDS, inner, (right, low))
    _stitches(sheet, [(corner[0] - stitch * n, corner[1]) for n in range(int(corner[0] / stitch), -1, -1)])
    _stitches(sheet, [(corner[0], corner[1] - stitch * n) for n in range(int((corner[1] - 20) / stitch) + 1)])
    put(sheet, "in", corner)
    put(sheet, "fold-over", (corner[0] + 26, corner[1] + 20), -pi / 4, flipped=True)
    sheet.words("stop here, then turn", (corner[0] - 12, corner[1] + 32), anchor="end")
    sheet.line("leader", (corner[0] - 10, corner[1] + 24), (corner[0] - 3, corner[1] + 4))
    sheet.words("wrong side", (20, 40), anchor="start")
    sheet.words(f"{show_small(with_.edge, ruler)} from the inner fold", (20, inner[1] - 8), anchor="start")
    return sheet.finish(
        "Turning at a corner",
        "Seen from the wrong side. A row runs on the hem beside its inner fold as far as the mitre seam; there the "
        "needle is down, and the row goes on along the next side at the same distance.",
        with_key=False,
        caption=brief("needle-stop"),
    )  # fmt: skip


def _lapped(with_: RowMeasures, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 74, margins=(0, 22, 0, 36))
    scale = min(150 / float(with_.lap), 12.0)
    begin, row = 130.0, 34.0
    end = begin + float(with_.lap) * scale
    sheet.area(lines.CLOTH_RIGHT, rectangle(0, 0, WIDE, 74))
    sheet.line(lines.LANDS, (0, 14), (WIDE, 14))
    sheet.line(lines.EDGE, (0, 74), (WIDE, 74))
    stitch = _size(with_.hem_stitch, scale)
    _stitches(sheet, [(begin + stitch * n, row - 3) for n in range(int((WIDE - begin) / stitch) + 1)])
    _stitches(sheet, [(end - stitch * n, row + 3) for n in range(int(end / stitch) + 1)][::-1])
    sheet.words("begun here", (begin, -6))
    sheet.line("leader", (begin, 0), (begin, row - 7))
    sheet.words("ended here", (end + 8, row + 24), anchor="start")
    sheet.line("leader", (end, row + 7), (end + 6, row + 18))
    sheet.dimension((end, 74), (begin, 74), show_small(with_.lap, ruler), away=12)
    return sheet.finish(
        "Lap at the end of a round",
        "The row comes round to where it was begun and goes on over its first stitches.",
        with_key=False,
        caption="The row goes on over its beginning.",
    )


_CLOTH = 18.0  # [drawing units] thickness of the cloth in a section
TENSIONS = (Fraction(1, 2), Fraction(1), Fraction(0))
_SHOWN = {"balanced": "balanced: they lock inside the cloth", "tight above": "upper tight: the lower is drawn up",
          "tight below": "upper loose: it is drawn down, in loops"}  # fmt: skip


def section_of_threads(sheet: Sheet, lock: Fraction, top: float, left: float, right: float, stitch: float) -> None:
    """The cloth cut through along a row, its upper side at `top`; lock: see `tension_of`."""
    foot = top + _CLOTH
    sheet.area(lines.CLOTH_WRONG, rectangle(left, top, right, foot), pattern=True)
    for y in (top, foot):
        sheet.line(lines.EDGE, (left, y), (right, y))
    at = foot - float(lock) * _CLOTH
    holes = [left + stitch * (n + 0.5) for n in range(int((right - left) / stitch))]
    above = [spot for x in holes for spot in ((x - 4, top - 3), (x - 1.5, at - 1), (x + 1.5, at - 1), (x + 4, top - 3))]
    below = [
        spot for x in holes for spot in ((x - 4, foot + 3), (x - 1.5, at + 1), (x + 1.5, at + 1), (x + 4, foot + 3))
    ]
    sheet.line(lines.THREAD_LOWER, (left, foot + 3), *below, (right, foot + 3))
    sheet.line(lines.THREAD_OVER, (left, top - 3), *above, (right, top - 3))


def _dip(x: float, outside: float, inside: float) -> list[Spot]:
    """A thread that goes into a hole as far as where it locks, and out again."""
    return [(x - 4, outside), (x - 1.5, inside), (x + 1.5, inside), (x + 4, outside)]


def _tension(with_: RowMeasures, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 190)
    for number, lock in enumerate(TENSIONS):
        top = 34 + 62.0 * number
        sheet.words(_SHOWN[tension_of(lock)], (6, top - 12), anchor="start")
        section_of_threads(sheet, lock, top, 6, WIDE - 6, 42)
    return sheet.finish(
        "Tension, cut through along the row",
        "Balanced: upper and lower thread lock inside the cloth. Upper tight: it lies straight on the cloth, and the "
        "lower comes up to it. Upper loose: it reaches down to the underside, where the lower lies straight.",
        with_key=False,
        caption="The upper thread solid, the lower dashed; the cloth cut through along the row.",
    )


#: What can be drawn, by name: its title, and its drawing.
ROWS: Mapping[str, tuple[str, Callable[[RowMeasures, Ruler], Picture]]] = {
    "begin": ("beginning a seam", _begun),
    "point": ("short stitches before a point", _to_the_point),
    "corner": ("turning at a corner", _turned),
    "lap": ("lap at the end of a round", _lapped),
    "tension": ("tension", _tension),
}


def machine_row(name: str, with_: RowMeasures, ruler: Ruler) -> Picture:
    """One of `ROWS`, drawn."""
    return ROWS[name][1](with_, ruler)
