"""Where a mitre's marks lie, found by folding: fold both hems over, see where their inner edges cross, open again."""

from dataclasses import dataclass

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.plane import Isometry, Line, Number, Point, distance, dot, minus

_HAIR = 2e-9  # of the deeper hem: what floats leave where creases and edge meet in one point


class CreasesMiss(ValueError):
    """Raised when two creases do not cross inside the corner, so that no mitre joins these hems."""


@dataclass(frozen=True)
class MitreLines:
    """Places of a mitre [mm], on the cloth wrong side up with the turn folded in, unless said otherwise.

    crossing: where the creases cross; it becomes the finished corner.
    inner: where the two hems' inner edges meet once the hems are folded.
    mark_1, mark_2: the inner corner as it lies on each folded edge when the hems are opened.
    raw_mark_1, raw_mark_2: the ends of the mitre line on the raw edges when the turn is opened too.
    """

    crossing: Point
    inner: Point
    mark_1: Point
    mark_2: Point
    raw_mark_1: Point
    raw_mark_2: Point

    @property
    def half_line(self) -> Number:
        """From the crossing to either mark [mm]."""
        return distance(self.crossing, self.mark_1)

    @property
    def line_1(self) -> Line:
        """The half of the mitre line that ends on edge 1."""
        return Line.through(self.mark_1, self.crossing)

    @property
    def line_2(self) -> Line:
        """The half of the mitre line that ends on edge 2."""
        return Line.through(self.mark_2, self.crossing)

    @property
    def matching_fold(self) -> Line:
        """The line that folds mark 2 onto mark 1; the cloth of mark 1 lies on its left."""
        (x1, y1), (x2, y2) = self.mark_1, self.mark_2
        return Line(self.crossing, (y2 - y1, x1 - x2)).towards(self.mark_1)


def mitre_lines(corner: Corner) -> MitreLines:
    """Find a mitre's places by reflection.

    Raises CreasesMiss when the deeper hem's crease passes outside the other.
    """
    hem_over = {edge: Isometry.folded_over(corner.crease(edge)) for edge in (1, 2)}
    inner_edges = [
        Line(hem_over[edge].place(corner.parallel(edge, 0).point), corner.parallel(edge, 0).direction)
        for edge in (1, 2)
    ]
    inner = inner_edges[0].meets(inner_edges[1])
    marks = [hem_over[edge].place(inner) for edge in (1, 2)]
    origin, ways = corner.at(0, 0), (corner.direction_1, corner.direction_2)
    if min(dot(minus(mark, origin), way) for mark, way in zip(marks, ways)) <= _HAIR * max(corner.hem_1, corner.hem_2):
        raise CreasesMiss("the creases cross outside the corner")
    raw = [Line.through(corner.crossing, mark).meets(corner.raw_edge(edge)) for edge, mark in zip((1, 2), marks)]
    return MitreLines(corner.crossing, inner, *marks, *raw)


def trim_line(corner: Corner, lines: MitreLines, seam_allowance: Number) -> tuple[Point, ...]:
    """The line to trim along: from edge 1 to edge 2, parallel to both halves of the line to stitch, bent where they
    bend.

    lines: the corner's. seam_allowance: cloth left beyond the line to stitch [mm].
    """
    halves = [half.towards(lines.inner).shifted(-seam_allowance) for half in (lines.line_1, lines.line_2)]
    start, end = (half.meets(corner.parallel(edge, 0)) for edge, half in zip((1, 2), halves))
    return (start, end) if corner.angle == 90 else (start, halves[0].meets(halves[1]), end)
