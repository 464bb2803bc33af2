"""Signs for what hands and tools do to the cloth: each declared once, drawn wherever it is needed, told in one key.

Signs of folding follow the open conventions of paper-folding diagrams: a valley fold goes over, a mountain fold under,
a hollow head unfolds, a loop turns over. The others are drawn as the tool looks on the table.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import atan2, cos, hypot, pi, sin
from typing import Literal

from calculators.drawing.picture import Picture, Sheet

Spot = tuple[float, float]
Kind = Literal["line", "filled", "hollow"]
_STYLES: Mapping[Kind, str] = {"line": "sign", "filled": "sign-filled", "hollow": "sign-hollow"}


@dataclass(frozen=True)
class Stroke:
    """A line or a closed shape of a sign [drawing units], y down, the sign's own place at 0, 0."""

    kind: Kind
    spots: tuple[Spot, ...]


@dataclass(frozen=True)
class Sign:
    """A sign. title: its name in the key; meaning: what the maker does, one sentence; strokes: what is drawn.

    spans: for one that is as long as what it is laid along: its strokes lie between 0 and `spans` and are stretched.
    """

    title: str
    meaning: str
    strokes: tuple[Stroke, ...]
    spans: float = 0


def _ring(x: float, y: float, radius: float, across: float = 1) -> tuple[Spot, ...]:
    return tuple((x + radius * cos(2 * pi * n / 12), y + across * radius * sin(2 * pi * n / 12)) for n in range(12))


def _arc(x: float, y: float, radius: float, start: float, end: float) -> tuple[Spot, ...]:
    """Part of a circle, clockwise from one turn to another [of a whole]."""
    steps = 16
    return tuple(
        (x + radius * cos(2 * pi * at), y + radius * sin(2 * pi * at))
        for at in (start + (end - start) * n / steps for n in range(steps + 1))
    )


_OVER = _arc(0, 12, 24, 0.56, 0.92)  # an arc from left to right, as the edge goes


def _head(kind: Kind, at: Spot, way: float, half: bool = False) -> Stroke:
    """The head of an arrow that points `way` [radians]."""
    wings = [(at[0] - 11 * cos(way + side), at[1] - 11 * sin(way + side)) for side in (0.45, -0.45)]
    if half:
        return Stroke("line", (wings[1], at))
    return Stroke(kind, (wings[0], at, wings[1]))


def _arrow(kind: Kind, half: bool = False) -> tuple[Stroke, ...]:
    (x1, y1), end = _OVER[-2:]
    return (Stroke("line", _OVER), _head(kind, end, atan2(end[1] - y1, end[0] - x1) + 0.15, half))


#: Every sign, by name.
SIGNS: Mapping[str, Sign] = {
    "fold-over": Sign("Fold over", "Lay the part over, the way of the arrow.", _arrow("filled")),
    "fold-under": Sign("Fold under", "Fold the part away, behind the cloth.", _arrow("line", half=True)),
    "unfold": Sign("Unfold", "Open the fold again; its crease stays.", _arrow("hollow")),
    "turn-over": Sign(
        "Turn over", "Turn the whole piece over.",
        (
            Stroke("line", ((-26, 8), (-8, 8), *_arc(0, 0, 8, 0.25, -0.75), (8, 8), (24, 8))),
            _head("filled", (27, 8), 0),
        ),
    ),
    "pull": Sign(
        "Pull", "Draw gently, the way of the arrow.",
        (Stroke("hollow", ((-18, -4), (4, -4), (4, -10), (20, 0), (4, 10), (4, 4), (-18, 4))),),
    ),
    "set-down": Sign(
        "Set down", "Put the iron down on this place.",
        (Stroke("line", ((0, -18), (0, 8))), _head("filled", (0, 10), pi / 2)),
    ),
    "lift": Sign(
        "Lift", "Lift it clear before it moves on.",
        (Stroke("line", ((0, 14), (0, -12))), _head("hollow", (0, -14), -pi / 2)),
    ),
    "iron": Sign(
        "Iron", "From the side, its point to the left.",
        (
            Stroke("hollow", ((-26, 0), (-18, -9), (-4, -14), (20, -14), (26, 0))),
            Stroke("line", ((-8, -14), (-4, -23), (14, -23), (18, -14))),
            Stroke("line", ((-26, 0), (26, 0))),
        ),
    ),
    "pin": Sign(
        "Pin", "The ring is its head: it lies on the side that you draw it out from.",
        (Stroke("line", ((-18, 0), (13, 0))), Stroke("hollow", _ring(16, 0, 3.6))),
    ),
    "scissors": Sign(
        "Scissors", "Cut along the heavy line, from here.",
        (
            Stroke("line", ((0, 0), (-15, 5.5))), Stroke("line", ((0, 0), (-15, -5.5))),
            Stroke("hollow", _ring(-19, 7, 4.6)), Stroke("hollow", _ring(-19, -7, 4.6)),
            Stroke("filled", ((0, 0), (15, -5.5), (15, -3))), Stroke("filled", ((0, 0), (15, 5.5), (15, 3))),
        ),
    ),
    "cutter": Sign(
        "Rotary cutter", "Its wheel runs along the line.",
        (
            Stroke("hollow", _ring(0, 0, 8)), Stroke("filled", _ring(0, 0, 1.8)),
            Stroke("hollow", ((-4, -5), (-22, -17), (-26, -12), (-7, 0))),
        ),
    ),
    "drawn-thread": Sign(
        "Drawn thread", "One thread of the weave, drawn out; its gap is the line to follow.",
        (
            Stroke("line", tuple((4.0 * n, -5.0 if n % 2 else 5.0) for n in range(10)) + ((64, 0),)),
        ),
        spans=64,
    ),
    "ruler": Sign(
        "Ruler", "Its zero lies at the end with the long tick.",
        (
            Stroke("hollow", ((0, 0), (100, 0), (100, 14), (0, 14))),
            *(Stroke("line", ((10.0 * n, 0), (10.0 * n, 9 if n == 0 else 5))) for n in range(10)),
        ),
        spans=100,
    ),
    "gauge": Sign(
        "Gauge", "A card with the measure marked on it; the fold comes to the mark.",
        (
            Stroke("hollow", ((0, 0), (100, 0), (100, 14), (0, 14))),
            Stroke("line", ((4, 4), (96, 4))),
        ),
        spans=100,
    ),
    "needle": Sign(
        "Needle", "It goes through at its point, the way it lies.",
        (
            Stroke("hollow", ((0, 0), (-12, -1.6), (-34, -2.6), (-38, 0), (-34, 2.6), (-12, 1.6))),
            Stroke("line", ((-34, 0), (-29, 0))),
        ),
    ),
    "foot": Sign(
        "Foot of the machine", "Seen from above; the point is the needle, and the open end looks at the maker.",
        (
            Stroke("hollow", ((-30, -12), (12, -12), (17, -5), (12, -3), (-8, -3), (-8, 3), (12, 3), (17, 5),
                              (12, 12), (-30, 12))),
            Stroke("filled", _ring(0, 0, 2.2)),
        ),
    ),
    "out": Sign("Needle out", "Here the needle comes up through the cloth.", (Stroke("hollow", _ring(0, 0, 3.2)),)),
    "in": Sign("Needle in", "Here it goes down.", (Stroke("filled", _ring(0, 0, 3.2)),)),
    "hand": Sign(
        "Hold", "A hand holds here, clear of blade and needle.",
        (
            Stroke("hollow", ((-22, 10), (-14, 10), (-6, 14), (10, 14), (12, 9), (3, 7), (20, 4), (21, -1), (4, -1),
                              (20, -5), (19, -10), (0, -9), (-10, -6), (-22, -6))),
        ),
    ),
}  # fmt: skip


def put(sheet: Sheet, name: str, at: Spot, turned: float = 0, flipped: bool = False) -> None:
    """Draw a sign at a place of the sheet. turned: clockwise [radians]; flipped: about its own line, before that."""
    side = -1 if flipped else 1
    _drawn(sheet, SIGNS[name].strokes, at, turned, 1, side)


def put_large(sheet: Sheet, name: str, at: Spot, turned: float, large: float) -> None:
    """Draw a sign so many times as large on a sheet with a scale of its own. at: in drawing units; turned: clockwise
    [radians]."""
    across, down = large * cos(turned), large * sin(turned)
    for stroke in SIGNS[name].strokes:
        spots = [sheet.back((at[0] + x * across - y * down, at[1] + x * down + y * across)) for x, y in stroke.spots]
        if stroke.kind == "line":
            sheet.line(_STYLES[stroke.kind], *spots)
        else:
            sheet.area(_STYLES[stroke.kind], spots)


def lay(sheet: Sheet, name: str, start: Spot, end: Spot, flipped: bool = False) -> None:
    """Draw a sign along a line from start to end; flipped: on its other side."""
    sign = SIGNS[name]
    way = atan2(end[1] - start[1], end[0] - start[0])
    _drawn(sheet, sign.strokes, start, way, hypot(end[0] - start[0], end[1] - start[1]) / sign.spans,
           -1 if flipped else 1)  # fmt: skip


def _drawn(sheet: Sheet, strokes: Sequence[Stroke], at: Spot, turned: float, stretch: float, side: int) -> None:
    for stroke in strokes:
        spots = [
            (
                at[0] + stretch * x * cos(turned) - side * y * sin(turned),
                at[1] + stretch * x * sin(turned) + side * y * cos(turned),
            )
            for x, y in stroke.spots
        ]
        if stroke.kind == "line":
            sheet.line(_STYLES[stroke.kind], *spots)
        else:
            sheet.area(_STYLES[stroke.kind], spots)


def panel(width: float, height: float, margins: tuple[float, float, float, float] = (0, 0, 0, 0)) -> Sheet:
    """A sheet of drawing units, y down, to put signs on."""
    left, _, right, _ = margins
    return Sheet((0, 0, width, height), margins=margins, down=True, tallest=height, width=round(width + left + right))


def alone(name: str) -> Picture:
    """A sign by itself, for the key."""
    sign = SIGNS[name]
    xs, ys = zip(*(spot for stroke in sign.strokes for spot in stroke.spots))
    sheet = panel(72, 52)
    at = (36 - (min(xs) + max(xs)) / 2, 26 - (min(ys) + max(ys)) / 2)
    if sign.spans:
        lay(sheet, name, (4, at[1]), (68, at[1]))
    else:
        put(sheet, name, at)
    return sheet.finish(sign.title, sign.meaning, with_key=False)
