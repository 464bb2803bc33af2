"""The corner of a piece, laid wrong side up: where its edges, creases and crossings lie.

The folded corner O is the origin once the first turn is folded in. Edge 1 runs along the x axis, edge 2 leaves O at the
inside angle. A place is found by its distances from the two folded edges; less than nothing lies outside them.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import cos, radians, sin

from calculators.folding.cloth import Cloth
from calculators.folding.convex import polygon
from calculators.folding.plane import Line, Number, Point, point


@dataclass(frozen=True)
class Corner:
    """Two hems that meet.

    hem_1, hem_2: hem depth on each edge [mm], more than 0.
    angle: inside angle of the corner [degrees], between 0 and 180.
    turn: first turn on both edges [mm]; 0 for a single turned hem.
    """

    hem_1: Number
    hem_2: Number
    angle: Number = Fraction(90)
    turn: Number = Fraction(0)

    @property
    def direction_1(self) -> Point:
        return point(1, 0)

    @property
    def direction_2(self) -> Point:
        """Unit direction of edge 2, away from the corner; exact at a square corner."""
        return point(0, 1) if self.angle == 90 else (cos(radians(self.angle)), sin(radians(self.angle)))

    def at(self, from_1: Number, from_2: Number) -> Point:
        """The place at these distances inside edge 1 and edge 2 [mm]."""
        cosine, sine = self.direction_2
        return point((from_2 + from_1 * cosine) / sine, from_1)

    def parallel(self, edge: int, inside: Number) -> Line:
        """The line parallel to an edge, a distance inside it [mm]; the rest of the cloth lies on its left."""
        if edge == 1:
            return Line(self.at(inside, 0), self.direction_1)
        return Line(self.at(0, inside), self.direction_2).reversed()

    @property
    def crossing(self) -> Point:
        """C, where the two creases cross: the finished corner."""
        return self.at(self.hem_1, self.hem_2)

    def crease(self, edge: int) -> Line:
        return self.parallel(edge, self.hem_1 if edge == 1 else self.hem_2)

    def cloth(self, reach: Number, name: str = "piece") -> Cloth:
        """The cloth around the corner, wrong side up, as far as reach from its raw corner along each edge [mm]."""
        raw = self.at(-self.turn, -self.turn)
        ends = [tuple(r + reach * d for r, d in zip(raw, way)) for way in (self.direction_1, self.direction_2)]
        far = (ends[0][0] + ends[1][0] - raw[0], ends[0][1] + ends[1][1] - raw[1])
        runs_on = ((ends[0], far), (far, ends[1]))
        return Cloth(name, (polygon((raw, ends[0], far, ends[1])),), runs_on=runs_on)

