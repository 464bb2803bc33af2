"""What hands and tools do at the table, drawn with signs: each drawing one small function, from the maker's numbers."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import cos, pi, sin

from calculators.drawing import lines
from calculators.drawing.picture import Picture, rectangle, text_width
from calculators.drawing.signs import Spot, lay, panel, put
from calculators.trade.pieces import diagonal
from calculators.trade.trade_rules import brief
from calculators.values.measure import Ruler, show_length

WIDE = 360.0
MOST_LAYERS = 7  # drawn of a stack; their number is told


@dataclass(frozen=True)
class OnTheTable:
    """What lies there [mm]. layers, folded, over: of a folded cloth. width, skew: of a cloth laid flat. hem: being
    pressed. piece: width and length of one that is cut."""

    layers: int
    folded: Fraction
    over: Fraction
    width: Fraction
    skew: Fraction
    hem: Fraction
    piece: tuple[Fraction, Fraction]

    @property
    def diagonal(self) -> float:
        """From corner to corner of the piece [mm]."""
        return diagonal(*self.piece)


def _frayed(left: float, right: float, y: float, dips: float) -> list[Spot]:
    """A frayed end: it lies farthest in a little to the right of its middle."""
    steps = 24
    return [
        (left + (right - left) * n / steps, y + dips * sin(pi * n / steps) ** 2 + (2.5 if n % 2 else -2.5))
        for n in range(steps + 1)
    ]


def _drawn_thread(_: OnTheTable, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 132, margins=(0, 20, 0, 8))
    for left, right in ((40.0, 168.0), (214.0, 342.0)):
        end = _frayed(left, right, 10, 16)
        sheet.area(lines.CLOTH_RIGHT, [*end, (right, 132), (left, 132)])
        sheet.line("raw-edge", *end)
        sheet.line(lines.EDGE, (left, end[0][1]), (left, 132))
        sheet.line(lines.EDGE, (right, end[-1][1]), (right, 132))
        sheet.cut_off((left, 132), (right, 132))
    at = 44.0
    lay(sheet, "drawn-thread", (118, at), (40, at))
    sheet.line("standing", (118, at), (168, at))
    put(sheet, "pull", (20, at), pi)
    sheet.line(lines.CUT, (40, at + 4), (48, at + 4))
    sheet.words("snip", (54, at + 18), anchor="start")
    sheet.words("one thread", (100, 80))
    sheet.line("leader", (100, 68), (88, at + 6))
    sheet.line(lines.CUT, (232, at), (342, at))
    put(sheet, "scissors", (222, at))
    sheet.words("cut along its gap", (278, 80))
    sheet.line("leader", (278, 68), (290, at + 3))
    sheet.words("1", (104, -4))
    sheet.words("2", (278, -4))
    return sheet.finish(
        "Straightening by a drawn thread",
        "Two pictures. In the first the selvedge is snipped just inside the lowest place of a frayed end; one thread "
        "is drawn out there, and the cloth gathers along it. In the second the cloth is cut along the gap it left.",
        with_key=False,
        caption="Draw one thread, then cut along the gap that it leaves.",
    )


def _layers(on: OnTheTable, ruler: Ruler) -> Picture:
    shown = min(on.layers, MOST_LAYERS)
    pitch, left = 13.0, 40.0
    total = float(on.folded + on.over)
    hangs = min(max(float(on.over) / total * 250, 26.0), 110.0) if on.over else 0.0
    right = 320.0 - hangs
    high = pitch * shown + 6
    sheet = panel(WIDE, high, margins=(0, 40, 0, 42))
    ribbon: list[Spot] = []
    for layer in range(shown):
        y = high - 6 - pitch * layer
        ends = (left, right) if layer % 2 == (shown - 1) % 2 else (right, left)
        ribbon += [(ends[0], y), (ends[1], y)]
        if layer + 1 < shown:
            side = 1 if ends[1] == right else -1
            ribbon += [
                (ends[1] + side * pitch / 2 * sin(pi * n / 6), y - pitch / 2 * (1 - cos(pi * n / 6)))
                for n in range(1, 6)
            ]
    if on.over:
        ribbon += [(right + hangs * 0.7, ribbon[-1][1]), (right + hangs, ribbon[-1][1] + 4)]
    sheet.line(lines.EDGE, *ribbon)
    sheet.line("dimension", (0, high), (WIDE, high))
    count = f"{on.layers} layers" if on.layers > 1 else "1 layer"
    sheet.words(count if shown == on.layers else f"{count}, not all drawn", (left, -24), anchor="start")
    sheet.dimension((right, high), (left, high), show_length(on.folded, ruler), away=12)
    if on.over:
        top = ribbon[-2][1]
        sheet.dimension((right, top), (right + hangs, top), show_length(on.over, ruler), away=14)
    return sheet.finish(
        "A folded cloth from the side",
        f"{count}, folded to and fro, each {show_length(on.folded, ruler)} long; {show_length(on.over, ruler)} hangs "
        "over beyond the last fold.",
        with_key=False,
        caption="Measure one layer, count the layers, and add what hangs over.",
    )


def _skew(on: OnTheTable, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 130, margins=(0, 30, 0, 30))
    slant = min(max(float(on.skew) / float(on.width) * 130, 22.0), 60.0) if on.skew else 0.0
    left, right = 92.0, 176.0
    end = [(left, 0.0), (left + slant, 130.0)]
    sheet.area(lines.CLOTH_RIGHT, [*end, (right, 130), (right, 0)])
    sheet.line(lines.EDGE, (right, 0), *end, (right, 130))
    sheet.cut_off((right, 0), (right, 130))
    lay(sheet, "ruler", (left, 0), (left, 130))
    sheet.dimension((left, 130), (left, 0), show_length(on.width, ruler), away=24)
    if on.skew:
        sheet.dimension((left + slant, 130), (left, 130), show_length(on.skew, ruler), away=10)
    sheet.words("skew", ((left + right) / 2, -14))
    left, right, deep = 248.0, 342.0, 26.0
    curve = [(left + deep * sin(pi * n / 16), 130 * n / 16) for n in range(17)]
    sheet.area(lines.CLOTH_RIGHT, [*curve, (right, 130), (right, 0)])
    sheet.line(lines.EDGE, (right, 0), *curve, (right, 130))
    sheet.cut_off((right, 0), (right, 130))
    sheet.line("ghost", (left, 0), (left, 130))
    sheet.words("bow", ((left + right) / 2, -14))
    sheet.line("dimension", (left, 65), (left + deep, 65))
    sheet.words("gap", (left - 6, 69), anchor="end")
    return sheet.finish(
        "Skew and bow",
        f"Two ends of cloth. Skew: the end slants from selvedge to selvedge, {show_length(on.skew, ruler)} on a width "
        f"of {show_length(on.width, ruler)}. Bow: both selvedges are level, and the end curves in between them.",
        with_key=False,
        caption="Skew slants from one selvedge to the other; bow curves in between them.",
    )  # fmt: skip


def _pressed(on: OnTheTable, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 128, margins=(0, 24, 0, 10))
    fold, inner, left, right = 104.0, 62.0, 50.0, 290.0
    sheet.area(lines.CLOTH_WRONG, rectangle(left, 0, right, inner), pattern=True)
    sheet.area(lines.CLOTH_RIGHT, rectangle(left, inner, right, fold))
    sheet.line(lines.EDGE, (right, fold), (left, fold), (left, 0))
    sheet.line(lines.LANDS, (left, inner), (right, inner))
    lay(sheet, "gauge", (20, fold - 12), (76, fold - 12))
    sheet.line("thread-under", (76, fold - 12), (right, fold - 12))
    sheet.cut_off((right, 0), (right, fold))
    for number, x in enumerate((106.0, 180.0, 254.0), 1):
        put(sheet, "iron", (x, inner + 20))
        put(sheet, "set-down" if number != 2 else "lift", (x, inner - 30))
        sheet.words(("press", "lift", "set down")[number - 1], (x, -8))
    sheet.dimension((right, inner), (right, fold), show_length(on.hem, ruler), away=12)
    sheet.words("gauge under the fold", (left, 124), anchor="start")
    sheet.line("leader", (58, 112), (58, fold - 4))
    return sheet.finish(
        "Pressing over a gauge",
        f"A hem of {show_length(on.hem, ruler)}, wrong side up, with a gauge lying inside its fold. The iron stands at "
        "three places one after the other: pressed, lifted, set down a little farther on.",
        with_key=False,
        caption=brief("press"),
    )


def _ruled(_: OnTheTable, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 130, margins=(0, 4, 0, 4))
    at = 78.0
    sheet.area(lines.CLOTH_RIGHT, rectangle(0, 0, WIDE, at))
    sheet.area(lines.REMNANT, rectangle(0, at, WIDE, 130), pattern=True)
    lay(sheet, "ruler", (WIDE - 10, at), (10, at), flipped=False)
    put(sheet, "hand", (84, at - 21), flipped=True)  # behind the blade, which rolls away from it
    sheet.line(lines.CUT, (10, at + 2), (150, at + 2))
    put(sheet, "cutter", (166, at + 4))
    put(sheet, "pull", (206, at + 22))
    sheet.words("fingers back from the edge", (12, 24), anchor="start")
    sheet.words("waste", (12, 118), anchor="start")
    sheet.words("the piece you keep", (WIDE - 10, 24), anchor="end")
    return sheet.finish(
        "The ruler lies on the piece you keep",
        "A ruler along the line, on the side of the piece; the cutter runs along it on the side of the waste, away "
        "from the maker; the hand that holds the ruler lies behind the blade, well back from the edge.",
        with_key=False,
        caption="The ruler lies on the piece you keep, the blade runs in the waste.",
    )


def _diagonals(on: OnTheTable, ruler: Ruler) -> Picture:
    width, length = (float(side) for side in on.piece)
    scale = min(128 / width, 96 / length)
    wide, high = max(width * scale, 40.0), max(length * scale, 40.0)
    sheet = panel(WIDE, high, margins=(0, 24, 0, 26))
    lean = min(16.0, wide / 4)
    told = show_length(on.diagonal, ruler)
    for middle, slant, words in ((92.0, 0.0, "square"), (268.0, lean, "not square")):
        left, right = middle - wide / 2, middle + wide / 2
        ring = [(left + slant, 0.0), (right + slant, 0.0), (right - slant, high), (left - slant, high)]
        sheet.area(lines.CLOTH_RIGHT, ring)
        sheet.line(lines.EDGE, *ring, ring[0])
        for one, other in ((0, 2), (1, 3)):
            sheet.line("dimension", ring[one], ring[other])
        sheet.words(words, (middle, -8))
    sheet.words(f"both {told}", (92, high + 20))
    sheet.words("one longer", (268, high + 20))
    return sheet.finish(
        "Two diagonals",
        f"Two pieces. The square one measures {told} from corner to corner, both ways; the other leans, and one of its "
        "diagonals is longer.",
        with_key=False,
        caption="Alike from corner to corner, both ways: then it is square.",
    )


def _napery(_: OnTheTable, ruler: Ruler) -> Picture:
    sheet = panel(WIDE, 84, margins=(0, 22, 0, 6))
    hem = ((0, 0), (-58, 0), (-64, -3), (-66, -8), (-64, -13), (-58, -16), (-6, -16), (-1, -12), (-6, -8), (-36, -8))
    for at, body in ((84, ((34, 0),)), (206, ((5, 3), (6, 8), (4, 13), (-2, 16), (-86, 16))), (306, ((44, 0),))):
        sheet.line(lines.EDGE, *((at + x, 48 + y) for x, y in (*body[::-1], *hem)))
    put(sheet, "fold-under", (235, 54), pi)
    sheet.line(lines.THREAD_OVER, (196, 28), (208, 31), (217, 44), (216, 58), (206, 69), (195, 69))
    put(sheet, "needle", (199, 27), pi - 0.35)
    put(sheet, "unfold", (326, 24))
    sheet.line(lines.THREAD_OVER, (301, 30), (308, 35), (308, 44), (302, 51))
    for number, (x, words) in enumerate(((12.0, "turn and hem"), (124.0, "fold back, sew"), (268.0, "open")), 1):
        sheet.words(f"{number}  {words}", (x, -4), anchor="start")
    return sheet.finish(
        "Napery hem",
        "Three sections. A narrow hem turned and hemmed; the cloth folded back under it, so that the fold of the cloth "
        "and the inner fold of the hem lie side by side, with a thread sewn over both; and the cloth opened flat.",
        with_key=False,
        caption="Sew over the two folds, small and close, one thread of each.",
    )


#: What is drawn, by name: its title, and its drawing.
WORKS: Mapping[str, tuple[str, Callable[[OnTheTable, Ruler], Picture]]] = {
    "drawn-thread": ("straightening by a drawn thread", _drawn_thread),
    "napery": ("a napery hem, cut through", _napery),
    "layers": ("a folded cloth from the side", _layers),
    "skew": ("skew and bow", _skew),
    "press": ("pressing over a gauge", _pressed),
    "ruler": ("the ruler on the piece you keep", _ruled),
    "diagonals": ("two diagonals", _diagonals),
}


def at_the_table(name: str, on: OnTheTable, ruler: Ruler) -> Picture:
    """One of `WORKS`, drawn."""
    return WORKS[name][1](on, ruler)


def wash_marks(marked: tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]], ruler: Ruler) -> Picture:
    """The square of a wash test before and after. marked: between its marks along and across [mm], each before and
    after."""
    (long, long_after), (wide, wide_after) = marked
    told = [show_length(each, ruler) for each in (long, wide, long_after, wide_after)]
    margin = max(map(text_width, told)) + 18
    sheet = panel(WIDE, 130, margins=(0, 24, 0, 34))
    room = WIDE / 2 - margin - 32
    scale = min(room / float(max(long, long_after)), 100 / float(max(wide, wide_after)))
    for number, (along, across) in enumerate(((long, wide), (long_after, wide_after))):
        left = 12 + number * WIDE / 2
        middle = (left + 10 + float(long) * scale / 2, 65.0)
        half = (float(along) * scale / 2, float(across) * scale / 2)
        ring = _ring_around(middle, half[0] + 10, half[1] + 12)
        if number:
            before = _ring_around(middle, float(long) * scale / 2 + 10, float(wide) * scale / 2 + 12)
            sheet.line("ghost", *before, before[0])
        sheet.area(lines.CLOTH_RIGHT, ring)
        sheet.line(lines.EDGE, *ring, ring[0])
        for way in (-1, 1):
            sheet.tick((middle[0] + way * half[0], middle[1]), (0, 5))
            sheet.tick((middle[0], middle[1] + way * half[1]), (5, 0))
        low, right = ring[2][1], ring[2][0]
        sheet.dimension((middle[0] + half[0], low), (middle[0] - half[0], low), told[2 * number], away=10)
        sheet.dimension((right, middle[1] - half[1]), (right, middle[1] + half[1]), told[2 * number + 1], away=9)
        sheet.words("after the wash" if number else "before", (middle[0], ring[0][1] - 7))
    return sheet.finish(
        "The test square before and after the wash",
        f"Four sewn marks, two along and two across. Along: {told[0]} before, {told[2]} after. Across: {told[1]} "
        f"before, {told[3]} after.",
        with_key=False,
        caption="Measure between the same marks, along and across.",
    )


def _ring_around(middle: Spot, half_wide: float, half_high: float) -> list[Spot]:
    x, y = middle
    return [
        (x - half_wide, y - half_high),
        (x + half_wide, y - half_high),
        (x + half_wide, y + half_high),
        (x - half_wide, y + half_high),
    ]
