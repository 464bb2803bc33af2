"""Mitred corners: where two hems meet at any angle, the marks, the line to stitch and the line to trim.

The corner lies at the origin O after the first turn is folded in. Edge 1 runs along the x axis, edge 2 leaves O at the
inside angle. Creases run parallel to the edges, each a hem depth inside; they cross at C, which becomes the finished
corner. Folding a flap back along its crease is a reflection that keeps the place along the edge, so the mark on an edge
is twice as far from O as the foot of C on it. All formulas are derived from that reflection.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import cos, hypot, radians, sin

Measure = Fraction | float
_HAIR = Fraction(1, 10**9)  # what floats leave where creases and edge meet in one point


@dataclass(frozen=True)
class MitreMarks:
    """A mitre's measures [mm]; 1 and 2 name the edge. Angle in degrees.

    foot: from O along the edge to beside the crossing of the creases.
    half_line: from the crossing of the creases to either mark; both halves are equal.
    to_line: from O straight to each half of the stitched line.
    raw_mark: the mark from the raw corner when the turn is opened flat.
    """

    hem_1: Fraction
    hem_2: Fraction
    angle: Fraction
    turn: Fraction
    seam_allowance: Fraction
    foot_1: Measure
    foot_2: Measure
    half_line: Measure
    raw_corner: Measure

    @property
    def mark_1(self) -> Measure:
        return 2 * self.foot_1

    @property
    def mark_2(self) -> Measure:
        return 2 * self.foot_2

    @property
    def to_line_1(self) -> float:
        return float(self.mark_1 * self.hem_1) / float(self.half_line)

    @property
    def to_line_2(self) -> float:
        return float(self.mark_2 * self.hem_2) / float(self.half_line)

    @property
    def raw_mark_1(self) -> Measure:
        return self.mark_1 + self.foot_1 * self.turn / self.hem_1 + self.raw_corner

    @property
    def raw_mark_2(self) -> Measure:
        return self.mark_2 + self.foot_2 * self.turn / self.hem_2 + self.raw_corner

    @property
    def trim_1(self) -> float:
        return float(self.mark_1) - float(self.seam_allowance * self.half_line) / float(self.hem_1)

    @property
    def trim_2(self) -> float:
        return float(self.mark_2) - float(self.seam_allowance * self.half_line) / float(self.hem_2)


class CreasesMiss(ValueError):
    """Raised when two creases do not cross inside the corner, so that no mitre joins these hems."""


def mitre_marks(hem_1: Fraction, hem_2: Fraction, angle: Fraction, turn: Fraction, seam_allowance: Fraction) -> MitreMarks:
    """The measures of a mitre.

    hem_1, hem_2: hem depth on each edge [mm], more than 0.
    angle: inside angle of the corner [degrees], between 0 and 180.
    turn: first turn [mm]; it moves only the marks taken from the raw edge.
    seam_allowance: cloth left beyond the stitched line when trimming [mm].
    Returns the marks and lines [mm], exact where the corner is square.
    Source: derived by reflection. At 90° mark 1 = 2·hem 2; with equal hems mark = 2·hem·cot(angle/2).
    Raises CreasesMiss when the deeper hem's crease passes outside the other.
    """
    if angle == 90:
        sine, cosine = Fraction(1), Fraction(0)
    else:
        sine, cosine = sin(radians(angle)), cos(radians(angle))
    foot_1 = (hem_2 + hem_1 * cosine) / sine
    foot_2 = (hem_1 + hem_2 * cosine) / sine
    if min(foot_1, foot_2) <= max(hem_1, hem_2) * _HAIR:
        raise CreasesMiss("the creases cross outside the corner")
    return MitreMarks(
        hem_1, hem_2, angle, turn, seam_allowance, foot_1, foot_2, hypot(foot_1, hem_1), turn * (1 + cosine) / sine
    )
