"""A hand stitch on the face of the cloth: thread over it solid, under it dashed, the needle's way in figures.

What is sewn later lies over what is earlier, with a halo; a thread under the cloth that a stitch would hide is bowed
aside. Along the work it is to scale; what lies across is drawn large enough to be seen.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from math import atan2, hypot

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, rectangle
from calculators.drawing.signs import Spot, panel, put
from calculators.trade.stitches.stitch import Band, Place, Stitch, ThreadPart, in_words
from calculators.values.measure import Ruler, show_length
from calculators.values.small_lengths import show_small

WIDE, END = 360.0, 34.0  # [drawing units] of the sheet; left free at its sides
LONGEST = 58.0  # as long as one stitch is drawn at most
LABELS = 7  # words and figures on a drawing at most
NUMBERED = 4  # places with a figure
ABOVE, NAME = 22.0, 16.0  # [drawing units] for the figures beside the thread; for the name of a band
NEAR = 22.0  # [drawing units] as near as a thread can be in the way of a figure
SMALL = 10  # [mm] told in millimetres below this
BOWED = 8.0  # how far a hidden thread is drawn aside
_LOOKS = {"right": lines.CLOTH_RIGHT, "wrong": lines.CLOTH_WRONG}


class _Laid:
    """A stitch laid out on the sheet: where each place of it lies [drawing units]."""

    def __init__(self, stitch: Stitch) -> None:
        self.stitch = stitch
        self.times = max(2, round(Fraction(9, 2) / stitch.advance) - (len(stitch.bands) > 2))
        self.following = stitch.once[0].moved(stitch.advance * self.times)
        places = [*stitch.places(self.times), *([] if stitch.end else [self.following])]
        alongs, acrosses = ([float(getattr(each, name)) for each in places] for name in ("along", "across"))
        self.first, last = min(alongs), max(alongs)
        self.unit = min((WIDE - 2 * END - 20) / (last - self.first), LONGEST)
        self.start = (WIDE - (last - self.first) * self.unit) / 2
        self.top, low = max(acrosses) * self.unit + ABOVE + NAME, min(acrosses) * self.unit - ABOVE - NAME
        self.high = self.top - low

    def at(self, place: Place) -> Spot:
        x = self.start + (float(place.along) - self.first) * self.unit
        return (WIDE - x if self.stitch.leftwards else x), self.y(float(place.across))

    def y(self, across: float) -> float:
        return self.top - across * self.unit


def stitch_on_cloth(stitch: Stitch, length: Fraction, ruler: Ruler) -> Picture:
    """Several stitches in a row. length: of one stitch [mm]."""
    laid = _Laid(stitch)
    sheet = panel(WIDE, laid.high, margins=(0, 2, 0, 36))
    for band, low, high in _bands(laid):
        _band(sheet, band, low, high)
    for text, place, anchor in _names(laid):
        sheet.words(text, place, anchor=anchor)
    parts = stitch.threads(laid.times)
    if not stitch.end:
        parts.append(ThreadPart(False, (_last(parts), laid.following)))
    _threads(sheet, laid, parts)
    if stitch.end:
        x, y = laid.at(_last(parts))
        put(sheet, "scissors", (x + (-24 if stitch.leftwards else 24), y), 0 if stitch.leftwards else 3.1416)
    else:
        (x1, y1), (x2, y2) = laid.at(_last(parts[:-1])), laid.at(laid.following)
        way = atan2(y2 - y1, x2 - x1)
        put(sheet, "needle", (x2 + 38 * _cos(x1, y1, x2, y2), y2 + 38 * _sin(x1, y1, x2, y2)), way)
    _figures(sheet, laid, parts)
    told = show_small(length, ruler) if length < SMALL else show_length(length, ruler)
    begin, end = laid.at(stitch.once[0])[0], laid.at(stitch.once[0].moved(Fraction(1)))[0]
    right, left = max(begin, end), min(begin, end)
    sheet.dimension((right, laid.high), (left, laid.high), told, away=12)
    way_told = "right to left" if stitch.leftwards else "left to right"
    return sheet.finish(
        stitch.title, in_words(stitch), with_key=False, caption=f"{stitch.title}, {way_told}. {stitch.do}."
    )


def _cos(x1: float, y1: float, x2: float, y2: float) -> float:
    return (x2 - x1) / (hypot(x2 - x1, y2 - y1) or 1)


def _sin(x1: float, y1: float, x2: float, y2: float) -> float:
    return (y2 - y1) / (hypot(x2 - x1, y2 - y1) or 1)


def _last(parts: Sequence[ThreadPart]) -> Place:
    return parts[-1].places[-1]


def _bands(laid: _Laid) -> Iterator[tuple[Band, float, float]]:
    """Each band with its lower and upper line on the sheet; what runs on ends with the sheet."""
    low = laid.high
    for band in laid.stitch.bands:
        high = 0.0 if band.high is None else laid.y(float(band.high))
        yield band, low, high
        low = high


def _band(sheet: Sheet, band: Band, low: float, high: float) -> None:
    if band.look in _LOOKS:
        sheet.area(_LOOKS[band.look], rectangle(0, high, WIDE, low), pattern=band.look == "wrong")
    if band.look == "threads":
        for number in range(1, round(WIDE / 6)):
            sheet.line("standing", (6 * number, high), (6 * number, low))
    if band.high is not None:
        sheet.line(lines.EDGE, (0, high), (WIDE, high))


def _names(laid: _Laid) -> Iterator[tuple[str, Spot, str]]:
    """The names of the bands, from the farthest on, as many as there is room for."""
    named = [(band, low, high) for band, low, high in _bands(laid) if band.name and len(laid.stitch.bands) > 1]
    side, anchor = (WIDE - 6, "end") if laid.stitch.leftwards else (6.0, "start")
    for band, low, high in named[::-1][: LABELS - NUMBERED - 1]:
        if high > 0 and low < laid.high:  # in the middle, where the thread has not come yet
            yield band.name, (WIDE - side, (low + high) / 2 + 5), "start" if anchor == "end" else "end"
        else:
            yield band.name, (side, 13 if high == 0 else low - 5), anchor


def _threads(sheet: Sheet, laid: _Laid, parts: Sequence[ThreadPart]) -> None:
    """First what lies under the cloth, then what lies over it, in the order of sewing."""
    over = [part for part in parts if part.over]
    for part in parts:
        if not part.over:
            sheet.line(lines.THREAD_UNDER, *_bowed(laid, part, over))
    for part in over:
        path = [laid.at(place) for place in part.places]
        sheet.line("thread-halo", *path)
        sheet.line(lines.THREAD_OVER, *path)
    ends = [("out" if part.over else "in", part.places[0]) for part in parts]
    ends += [("in", _last(parts))] if parts[-1].over else []
    for name, spot in dict.fromkeys((name, laid.at(place)) for name, place in ends):
        put(sheet, name, spot)


def _bowed(laid: _Laid, part: ThreadPart, over: Sequence[ThreadPart]) -> list[Spot]:
    """A thread under the cloth, drawn aside where a stitch lies over it."""
    (x1, y1), (x2, y2) = (laid.at(place) for place in part.places)
    if not any(_hides(laid, each, (x1, y1), (x2, y2)) for each in over):
        return [(x1, y1), (x2, y2)]
    length = hypot(x2 - x1, y2 - y1)
    side = 1 if x2 > x1 or (x1 == x2 and y2 > y1) else -1
    across = (-(y2 - y1) / length * BOWED * side, (x2 - x1) / length * BOWED * side)
    return [
        (x1 + (x2 - x1) * at + across[0] * 4 * at * (1 - at), y1 + (y2 - y1) * at + across[1] * 4 * at * (1 - at))
        for at in (number / 8 for number in range(9))
    ]


def _hides(laid: _Laid, over: ThreadPart, start: Spot, end: Spot) -> bool:
    """Whether a stitch lies along a thread under the cloth: the middle of either is on the other."""
    (x1, y1), (x2, y2) = (laid.at(place) for place in (over.places[0], over.places[-1]))
    middles = (((x1 + x2) / 2, (y1 + y2) / 2), ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2))
    return _is_on(middles[0], start, end) or _is_on(middles[1], (x1, y1), (x2, y2))


def _is_on(spot: Spot, start: Spot, end: Spot) -> bool:
    length = hypot(end[0] - start[0], end[1] - start[1])
    there = hypot(spot[0] - start[0], spot[1] - start[1]) + hypot(end[0] - spot[0], end[1] - spot[1])
    return there < length + 1.5


def _keep_clear(sheet: Sheet, laid: _Laid, parts: Sequence[ThreadPart], spot: Spot) -> None:
    """A figure stands beside the thread and the places of the needle near it, not on them."""
    taken = []
    for part in parts:
        for (x1, y1), (x2, y2) in pairwise(map(laid.at, part.places)) if part.over else ():
            steps = max(round(hypot(x2 - x1, y2 - y1) / 6), 1)
            taken += [((x1 + (x2 - x1) * n / steps, y1 + (y2 - y1) * n / steps), 2) for n in range(steps + 1)]
        taken.append((laid.at(part.places[0]), 4))
    sheet.written += [
        _around((x, y), half) for (x, y), half in taken if abs(x - spot[0]) < NEAR and abs(y - spot[1]) < NEAR
    ]


def _around(spot: Spot, half: float) -> list[Spot]:
    """A small square that words keep out of."""
    x, y = spot
    return [(x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half)]


def _figures(sheet: Sheet, laid: _Laid, parts: Sequence[ThreadPart]) -> None:
    """The order in which the needle goes through the first places, or the last where those are shown."""
    places = [place for place in laid.stitch.places(laid.times) if place.goes_through]
    through = places[-NUMBERED:] if laid.stitch.end else places[:NUMBERED]
    middle = sum(laid.at(place)[1] for place in through) / len(through)
    for number, place in enumerate(through, 1):
        x, y = laid.at(place)
        others = [*sheet.written]
        _keep_clear(sheet, laid, parts, (x, y))
        side = -1 if y <= middle else 1
        beside = [(x + aside, y + way * 13) for way in (side, -side) for aside in (0.0, 7.0, -7.0)]
        sheet.first_clear(str(number), [*beside, (x + 11, y), (x - 11, y)])
        sheet.written = [*others, sheet.written[-1]]
