"""The pointed end of a runner: how sharp its corners are, from measures that a maker has."""

from dataclasses import dataclass
from fractions import Fraction
from math import atan2, degrees, hypot


@dataclass(frozen=True)
class PointedEnd:
    """An end that comes to a point in the middle; width and point [mm], both finished or both cut."""

    width: Fraction
    point: Fraction

    @property
    def tip(self) -> float:
        """Inside angle at the point [°].

        Source: derived: each half of the point is a right triangle, half the width across and the point along.
        """
        return 2 * degrees(atan2(self.width / 2, self.point))

    @property
    def side(self) -> float:
        """Inside angle at each of the two corners where the point begins [°].

        Source: derived: the five angles of the end, with two square ones, make 540°.
        """
        return 180 - self.tip / 2

    @property
    def slant(self) -> float:
        """Length of each slanting edge [mm]; by Pythagoras.

        Source: derived, by Pythagoras from half the width and the point.
        """
        return hypot(self.width / 2, self.point)
