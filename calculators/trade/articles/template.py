"""Parts that are no rectangle as lines to print in true size: where they are cut, and where they are folded or
stitched."""

from collections.abc import Iterator
from math import cos, pi, sin

from calculators.trade.articles.cutting import ArticlePiece, LaidPart
from calculators.trade.articles.finishes import CASING, HEM, SEAM, TURNED_UNDER
from calculators.trade.articles.parts import ROUND
from calculators.trade.articles.work import MakingUp
from calculators.trade.corners.gauge import TICK, Gauge, GaugeLine, LineKind

_OF_A_QUARTER = 45  # straight lines that a quarter of a curve is drawn with
_INNER: dict[str, LineKind] = {SEAM: "stitch", HEM: "fold", CASING: "fold", TURNED_UNDER: "fold"}

Spot = tuple[float, float]


def template_of(piece: ArticlePiece, work: MakingUp, whole: bool) -> Gauge:
    """A part in its true size.

    piece: of one part alone. whole: of a round part all of it with its quarters marked, else a quarter to lay on cloth
    folded in four.
    Returns its lines and its cut width and length, of a quarter half of each [mm].
    Source: derived, the cut edge and the finished edge of the piece.
    """
    (laid,) = piece.parts
    if piece.is_round:
        return _round(piece, laid, _kind(work, laid, ROUND), whole)
    cut = piece.cut_sides(laid)
    lines = [GaugeLine("cut", *ends, *_named(side)) for side, ends in cut.items()]
    for side in cut:
        kind = _kind(work, laid, side)
        if kind and piece.takes.get((laid.part.name, side)):
            lines.append(GaugeLine(kind, *laid.side(side)))
    return Gauge(tuple(lines), {"width": piece.width, "length": piece.length})


def _named(side: str) -> tuple[str, float]:
    """What is written on a side, and where along it."""
    return {"bottom": ("width", 0.4), "left": ("length", 0.4)}.get(side, ("", 0.0))


def _kind(work: MakingUp, laid: LaidPart, side: str) -> LineKind | None:
    """What the finished edge of a side is: a fold, a row of stitches, or nothing that is drawn."""
    ways = (each.how for each in work.finishes if (each.stretch.part.name, each.stretch.side) == (laid.part.name, side))
    return next((_INNER[how] for how in ways if how in _INNER), None)


def _round(piece: ArticlePiece, laid: LaidPart, inner: LineKind | None, whole: bool) -> Gauge:
    left, low, right, high = (float(each) for each in laid.finished)
    middle, reach = ((left + right) / 2, (low + high) / 2), ((right - left) / 2, (high - low) / 2)
    takes = float(piece.takes.get((laid.part.name, ROUND), 0))
    cut = reach[0] + takes, reach[1] + takes
    quarters = 4 if whole else 1
    lines = [*_curve("cut", middle, cut, quarters)]
    if inner and takes:
        lines += _curve(inner, middle, reach, quarters)
    if whole:
        lines += (
            GaugeLine("mark", (middle[0] + x * cut[0], middle[1] + y * cut[1]),
                (middle[0] + x * (cut[0] - TICK), middle[1] + y * (cut[1] - TICK)))
            for x, y in ((1, 0), (0, 1), (-1, 0), (0, -1))
        )  # fmt: skip
        return Gauge(tuple(lines), {"width": piece.width, "length": piece.length})
    lines += [
        GaugeLine("fold", middle, (middle[0] + cut[0], middle[1]), "width", 0.4),
        GaugeLine("fold", middle, (middle[0], middle[1] + cut[1]), "length", 0.4),
    ]
    return Gauge(tuple(lines), {"width": piece.width / 2, "length": piece.length / 2})


def _curve(kind: LineKind, middle: Spot, reach: Spot, quarters: int) -> Iterator[GaugeLine]:
    """A circle or an ellipse about its middle, or its first quarters."""
    steps = quarters * _OF_A_QUARTER
    turns = [pi / 2 * number / _OF_A_QUARTER for number in range(steps + 1)]
    places = [(middle[0] + reach[0] * cos(turn), middle[1] + reach[1] * sin(turn)) for turn in turns]
    yield from (GaugeLine(kind, start, end) for start, end in zip(places, places[1:]))
