"""A mitre's measures, every one taken on the places that folding gives."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.mitre_lines import MitreLines, mitre_lines, trim_line
from calculators.trade.corners.plane import Number, Point, distance, dot, minus


@dataclass(frozen=True)
class MitreMarks:
    """A mitre's measures [mm]; 1 and 2 name the edge.

    corner: its hems, angle and turn. lines: its places, found by folding. seam_allowance: what trimming leaves.
    """

    corner: Corner
    lines: MitreLines
    seam_allowance: Number

    @property
    def hem_1(self) -> Number:
        return self.corner.hem_1

    @property
    def hem_2(self) -> Number:
        return self.corner.hem_2

    @property
    def angle(self) -> Number:
        """Inside angle of the corner [degrees]."""
        return self.corner.angle

    @property
    def turns(self) -> tuple[Number, Number]:
        """The first turn on each edge [mm]."""
        return self.corner.turns

    @cached_property
    def foot_1(self) -> Number:
        """From the folded corner along edge 1 to beside the crossing of the creases."""
        return self._along(1, self.lines.crossing)

    @cached_property
    def foot_2(self) -> Number:
        return self._along(2, self.lines.crossing)

    @cached_property
    def mark_1(self) -> Number:
        """From the folded corner along edge 1 to the end of the mitre line."""
        return self._along(1, self.lines.mark_1)

    @cached_property
    def mark_2(self) -> Number:
        return self._along(2, self.lines.mark_2)

    @cached_property
    def half_line(self) -> Number:
        """From the crossing of the creases to either mark."""
        return self.lines.half_line

    @cached_property
    def to_line_1(self) -> Number:
        """From the folded corner straight to the half of the mitre line that ends on edge 1."""
        return distance(self._origin, self.lines.line_1.foot(self._origin))

    @cached_property
    def to_line_2(self) -> Number:
        return distance(self._origin, self.lines.line_2.foot(self._origin))

    @cached_property
    def raw_mark_1(self) -> Number:
        """From the raw corner along raw edge 1 to the mitre line, the turn opened flat."""
        return self._along(1, self.lines.raw_mark_1, self.corner.raw)

    @cached_property
    def raw_mark_2(self) -> Number:
        return self._along(2, self.lines.raw_mark_2, self.corner.raw)

    @cached_property
    def trim_line(self) -> tuple[Point, ...]:
        """The line to trim along, from edge 1 to edge 2, bent where the mitre line bends."""
        return trim_line(self.corner, self.lines, self.seam_allowance)

    @cached_property
    def trim_1(self) -> Number:
        """From the folded corner along edge 1 to the line to trim along; below 0 where that line misses the cloth."""
        return self._along(1, self.trim_line[0])

    @cached_property
    def trim_2(self) -> Number:
        return self._along(2, self.trim_line[-1])

    @cached_property
    def _origin(self) -> Point:
        return self.corner.at(0, 0)

    def _along(self, edge: int, place: Point, start: Point | None = None) -> Number:
        return dot(
            minus(place, start or self._origin), self.corner.direction_1 if edge == 1 else self.corner.direction_2
        )


def mitre_marks(
    hem_1: Fraction,
    hem_2: Fraction,
    angle: Fraction,
    turn: Fraction,
    seam_allowance: Fraction,
    turn_2: Fraction | None = None,
) -> MitreMarks:
    """Fold a corner's hems over and take the measures of its mitre.

    hem_1, hem_2: hem depth on each edge [mm], more than 0.
    angle: inside angle of the corner [degrees], between 0 and 180.
    turn: first turn [mm]; it moves only the marks taken from the raw edge. turn_2: that on edge 2, if it is another
    [mm].
    seam_allowance: cloth left beyond the stitched line when trimming [mm].
    Returns the measures [mm]; marks are exact where the corner is square.
    Source: derived, measured on `mitre_lines`, which finds the places by reflection.
    Raises CreasesMiss when the deeper hem's crease passes outside the other.
    """
    corner = Corner(hem_1, hem_2, angle, turn, turn_2)
    return MitreMarks(corner, mitre_lines(corner), seam_allowance)
