"""Distances that find a mitre's marks with a ruler laid down once, and how far off a mark is when the ruler has no such
division.

Places and names are those of `folding.mitre_marks`. The crossing of the creases C lies as far from the folded corner O
as from either mark
(folding the hem over its crease is a reflection), so one distance, half the mitre line, serves both edges.
"""

from dataclasses import dataclass
from math import asin, isclose, pi, sin, sqrt
from typing import Literal

from calculators.trade.corners.mitre_marks import MitreMarks
from calculators.trade.corners.plane import Number
from calculators.values.measure import Ruler

DistanceName = Literal["edge", "crossing", "line"]
_LEVEL = 1e-9


@dataclass(frozen=True)
class RulerDistance:
    """A distance to set a ruler to.

    name: what is measured. "edge": from O along the edge to the mark. "crossing": from C to the edge, along the mitre
    line.
    "line": from O straight to the mitre line.
    edges: the edges whose mark it finds.
    distance: as it should be [mm].
    """

    name: DistanceName
    edges: tuple[int, ...]
    distance: Number


def ways(marks: MitreMarks) -> list[RulerDistance]:
    """Every distance that finds a mark, those that serve both edges named once."""
    found = []
    every: tuple[tuple[DistanceName, tuple[Number, Number]], ...] = (
        ("edge", (marks.mark_1, marks.mark_2)),
        ("crossing", (marks.half_line, marks.half_line)),
        ("line", (marks.to_line_1, marks.to_line_2)),
    )
    for name, distances in every:
        if isclose(*distances, rel_tol=_LEVEL):
            found.append(RulerDistance(name, (1, 2), distances[0]))
        else:
            found += [RulerDistance(name, (edge,), distance) for edge, distance in enumerate(distances, 1)]
    return found


def layings(marks: MitreMarks, name: DistanceName) -> int:
    """How often a ruler is laid down at one corner until its line is drawn.

    Along the edges: once for each mark and once for every half of the line that is straight by itself. Otherwise once
    for each half.
    """
    halves = 1 if marks.angle == 90 else 2
    return halves + 2 if name == "edge" else halves


def off(marks: MitreMarks, way: RulerDistance, read: Number) -> float | None:
    """How far too far out a mark comes to lie when a ruler is read at a division that is not quite the distance.

    marks: the mitre's measures.
    way: what is measured.
    read: the division [mm].
    Returns the larger error of the edges the way serves [mm], less than 0 where the mark falls short; None where a
    ruler set so
    does not reach.
    Source: derived, as for `mark_found`.
    """
    errors = []
    for edge in way.edges:
        mark = mark_found(marks, way.name, edge, read)
        if mark is None:
            return None
        errors.append(mark - float(marks.mark_1 if edge == 1 else marks.mark_2))
    return max(errors, key=abs)


def mark_found(marks: MitreMarks, name: DistanceName, edge: int, read: Number) -> float | None:
    """Where the mark on an edge comes to lie when a ruler is read at a division.

    marks: the mitre's measures.
    name: what is measured.
    edge: 1 or 2, the edge whose mark is looked for.
    read: the division [mm].
    Returns the mark's distance from O [mm]; None where a ruler set so does not reach.
    Source: derived. Along the edge the mark lies at the division itself. From C it lies √(read² − hem²) beyond the foot
    of C. A
    ruler held on C and square to its distance from O meets the edge at read ÷ sin(α + φ), with α between edge and OC
    and sin φ =
    read ÷ OC. At a square corner with equal hems that line only touches; there it is laid so that both edges read
    alike, and
    the mark keeps its share of the distance.
    """
    hem, foot = (float(each) for each in ((marks.hem_1, marks.foot_1) if edge == 1 else (marks.hem_2, marks.foot_2)))
    read, half = float(read), float(marks.half_line)
    if name == "edge":
        return read
    if name == "crossing":
        return foot + sqrt(read**2 - hem**2) if read >= hem else None
    if marks.angle == 90 and marks.hem_1 == marks.hem_2:
        return read * 2 * foot / half
    if read > half:
        return None
    at_corner, at_crossing = asin(hem / half), asin(read / half)
    if at_corner < pi / 4:
        at_crossing = pi - at_crossing
    across = sin(at_corner + at_crossing)
    return read / across if across > _LEVEL else None


def nearest(marks: MitreMarks, way: RulerDistance, ruler: Ruler) -> tuple[Number, float | None]:
    """The division of a ruler nearest to a distance.

    marks: the mitre's measures.
    way: what is measured.
    ruler: the one in hand.
    Returns the division [mm] and how far out the mark then lies [mm], as for `off`.
    Source: derived, as for `mark_found`.
    """
    read = ruler.read(way.distance)
    return read, off(marks, way, read)
