"""Where a mitre's marks lie, found by folding: fold both hems over, see where their inner edges cross, open again."""

from dataclasses import dataclass

from calculators.corners import CreasesMiss
from calculators.folding.corner import Corner
from calculators.folding.plane import Lay, Line, Number, Point, distance


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
    def matching_fold(self) -> Line:
        """The line that folds mark 2 onto mark 1; the cloth of mark 1 lies on its left."""
        (x1, y1), (x2, y2) = self.mark_1, self.mark_2
        return Line(self.crossing, (y2 - y1, x1 - x2)).towards(self.mark_1)


def mitre_lines(corner: Corner) -> MitreLines:
    """Find a mitre's places by reflection.

    Raises CreasesMiss when the deeper hem's crease passes outside the other.
    """
    hem_over = {edge: Lay.folded_over(corner.crease(edge)) for edge in (1, 2)}
    inner_edges = [
        Line(hem_over[edge].place(corner.parallel(edge, 0).point), corner.parallel(edge, 0).direction) for edge in (1, 2)
    ]
    inner = inner_edges[0].meets(inner_edges[1])
    marks = [hem_over[edge].place(inner) for edge in (1, 2)]
    origin = corner.at(0, 0)
    if any(_behind(mark, origin, way) for mark, way in zip(marks, (corner.direction_1, corner.direction_2))):
        raise CreasesMiss("the creases cross outside the corner")
    raw = [
        Line.through(corner.crossing, mark).meets(corner.parallel(edge, -corner.turn)) for edge, mark in zip((1, 2), marks)
    ]
    return MitreLines(corner.crossing, inner, *marks, *raw)


def _behind(mark: Point, origin: Point, way: Point) -> bool:
    return (mark[0] - origin[0]) * way[0] + (mark[1] - origin[1]) * way[1] <= 0
