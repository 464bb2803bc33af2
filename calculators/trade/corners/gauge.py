"""Gauges to cut from card: the lines to press and mark against, in their true places."""

from dataclasses import dataclass
from math import sqrt
from typing import Literal

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.mitre_lines import mitre_lines, trim_line
from calculators.trade.corners.plane import Number, Point, onward

LineKind = Literal["cut", "fold", "stitch", "mark", "trim"]
TICK = 4.0  # [mm] a mark's length
BEYOND_CROSSING = 0.62  # share of a crease, where no other line comes near
NEXT_TO_IT = 0.3  # share of the line to press against, where the words of the first line have ended
BEYOND = 12.0  # [mm] card beyond the last line to press against, to hold it by
BESIDE = 30.0  # [mm] card beyond the last mark, where its measure is written


@dataclass(frozen=True)
class GaugeLine:
    """A line on a gauge, with the name of the measure written on it, if any.

    start, end: on the gauge [mm]. named_at: which share of the way from its start the measure stands.
    """

    kind: LineKind
    start: Point
    end: Point
    name: str = ""
    named_at: float = 0.0


@dataclass(frozen=True)
class Gauge:
    """A gauge's lines [mm], and the measures written on it by name [mm]."""

    lines: tuple[GaugeLine, ...]
    measures: dict[str, Number]

    @property
    def box(self) -> tuple[float, float, float, float]:
        """What it covers: left, lowest, right, highest [mm].

        Source: derived, the least and the greatest of its lines' ends.
        """
        xs, ys = zip(*((float(x), float(y)) for line in self.lines for x, y in (line.start, line.end)))
        return min(xs), min(ys), max(xs), max(ys)


def hem_gauge(turn: Number, hem: Number, length: Number = 140.0) -> Gauge:
    """A straight card to press against: its lower edge is the fold, its lines are where the cloth's edge must come to
    lie.

    turn, hem: first turn and hem depth [mm]; no line for a turn of 0. length: of the card [mm].
    """
    top = max(turn, hem) + BEYOND
    ends = ((0.0, 0.0), (length, 0.0), (length, top), (0.0, top))
    cut = tuple(GaugeLine("cut", a, b) for a, b in zip(ends, ends[1:] + ends[:1]))
    steps = [("turn", turn), ("hem", hem)] if turn else [("hem", hem)]
    return Gauge(
        (
            *cut,
            *(
                GaugeLine("fold", (0.0, depth), (length, depth), name, n * NEXT_TO_IT)
                for n, (name, depth) in enumerate(steps)
            ),
        ),
        dict(steps),
    )


def mitre_gauge(corner: Corner, seam_allowance: Number) -> Gauge:
    """A card for one corner: laid into the folded corner it shows creases, marks, the line to stitch and the line to
    trim.

    seam_allowance: what trimming leaves [mm].
    Raises CreasesMiss when no mitre joins these hems.
    """
    lines = mitre_lines(corner)
    origin = corner.at(0, 0)
    reach = {edge: _along(mark) + BESIDE for edge, mark in ((1, lines.mark_1), (2, lines.mark_2))}
    ends = {edge: onward(origin, way, reach[edge]) for edge, way in ((1, corner.direction_1), (2, corner.direction_2))}
    far = (ends[1][0] + ends[2][0], ends[1][1] + ends[2][1])
    border = (origin, ends[1], far, ends[2])
    creases = [
        (corner.at(corner.hem_1, 0), corner.direction_1, reach[1]),
        (corner.at(0, corner.hem_2), corner.direction_2, reach[2]),
    ]
    trims = trim_line(corner, lines, seam_allowance)
    drawn = (
        *(GaugeLine("cut", a, b) for a, b in zip(border, border[1:] + border[:1])),
        *(
            GaugeLine("fold", start, onward(start, way, by), f"hem_{n}", BEYOND_CROSSING)
            for n, (start, way, by) in enumerate(creases, 1)
        ),
        GaugeLine("stitch", lines.mark_1, lines.crossing),
        GaugeLine("stitch", lines.mark_2, lines.crossing),
        GaugeLine("mark", lines.mark_1, onward(lines.mark_1, _inwards(corner, 1), TICK), "mark_1"),
        GaugeLine("mark", lines.mark_2, onward(lines.mark_2, _inwards(corner, 2), TICK), "mark_2"),
        *(GaugeLine("trim", a, b) for a, b in zip(trims, trims[1:])),
    )
    measures = {
        "hem_1": corner.hem_1,
        "hem_2": corner.hem_2,
        "mark_1": _along(lines.mark_1),
        "mark_2": _along(lines.mark_2),
    }
    return Gauge(drawn, measures)


def _inwards(corner: Corner, edge: int) -> Point:
    """The direction square to an edge, into the cloth."""
    dx, dy = corner.direction_1 if edge == 1 else corner.direction_2
    return (-dy, dx) if edge == 1 else (dy, -dx)


def _along(place: Point) -> float:
    return sqrt(float(place[0]) ** 2 + float(place[1]) ** 2)
