"""The corner of a piece, laid wrong side up: where its edges, creases and crossings lie.

The folded corner O is the origin once the first turn is folded in. Edge 1 runs along the x axis, edge 2 leaves O at the
inside angle. A place is found by its distances from the two folded edges; less than nothing lies outside them.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import cos, radians, sin, sqrt

from calculators.trade.corners.cloth import FlatCloth
from calculators.trade.corners.convex import polygon
from calculators.trade.corners.plane import Line, Number, Point, point


@dataclass(frozen=True)
class Corner:
    """Two hems that meet.

    hem_1, hem_2: hem depth on each edge [mm], more than 0.
    angle: inside angle of the corner [degrees], between 0 and 180.
    turn: first turn on both edges [mm]; 0 for a single turned hem.
    turn_2: that on edge 2 where it is another [mm].
    """

    hem_1: Number
    hem_2: Number
    angle: Number = Fraction(90)
    turn: Number = Fraction(0)
    turn_2: Number | None = None

    @property
    def turns(self) -> tuple[Number, Number]:
        """The first turn on edge 1 and on edge 2 [mm].

        Source: derived, edge 2 has that of edge 1 unless it has its own.
        """
        return self.turn, self.turn if self.turn_2 is None else self.turn_2

    @property
    def has_even_edges(self) -> bool:
        """Whether both edges have the same hem and the same turn."""
        return self.hem_1 == self.hem_2 and self.turns[0] == self.turns[1]

    @cached_property
    def direction_1(self) -> Point:
        """Unit direction of edge 1, away from the corner."""
        return (1.0, 0.0) if isinstance(self.hem_1, float) else point(1, 0)

    @cached_property
    def direction_2(self) -> Point:
        """Unit direction of edge 2, away from the corner; exact at a square corner whose measures are."""
        if self.angle == 90:
            return self.direction_1[1], self.direction_1[0]
        return cos(radians(self.angle)), sin(radians(self.angle))

    def at(self, from_1: Number, from_2: Number) -> Point:
        """The place at these distances inside edge 1 and edge 2 [mm]."""
        cosine, sine = self.direction_2
        return (
            (from_2 + from_1 * cosine) / sine,
            from_1 + self.direction_1[1],
        )  # adding its 0 makes a fraction or a float of a whole number

    def parallel(self, edge: int, inside: Number) -> Line:
        """The line parallel to an edge, a distance inside it [mm]; the rest of the cloth lies on its left."""
        if edge == 1:
            return Line(self.at(inside, 0), self.direction_1)
        return Line(self.at(0, inside), (-self.direction_2[0], -self.direction_2[1]))

    @property
    def crossing(self) -> Point:
        """C, where the two creases cross: the finished corner."""
        return self.at(self.hem_1, self.hem_2)

    @property
    def raw(self) -> Point:
        """The raw corner, the turns opened flat [mm]."""
        return self.at(-self.turns[0], -self.turns[1])

    @property
    def lean(self) -> Number:
        """How much farther from a sharp corner the folded hems reach along its edges than at a square one [mm]."""
        return 2 * (max(self.hem_1, self.hem_2) + max(self.turns)) * max(self.direction_2[0], 0) / self.direction_2[1]

    def crease(self, edge: int) -> Line:
        return self.parallel(edge, self.hem_1 if edge == 1 else self.hem_2)

    def raw_edge(self, edge: int) -> Line:
        return self.parallel(edge, -self.turns[edge - 1])

    def cloth(
        self,
        reach: Number,
        name: str = "piece",
        inside: tuple[Number, Number] | None = None,
        right_side_up: bool = False,
    ) -> FlatCloth:
        """A cloth with its corner here that goes as far as reach from the raw corner along each edge [mm].

        inside: how far its own edges lie inside the folded edges; as far outside as the turn is deep, if not given.
        """
        from_1, from_2 = inside or (-self.turns[0], -self.turns[1])
        return FlatCloth(
            name,
            (polygon(self.shown(self.raw, (reach, reach), self.parallel(1, from_1), self.parallel(2, from_2))),),
            right_side_up,
        )

    def shown(self, raw: Point, reaches: tuple[Number, Number], edge_1: Line, edge_2: Line) -> tuple[Point, ...]:
        """The corners of the cloth that is drawn: where its edges meet, then from the end of edge 1 round to the end of
        edge 2."""
        lines = (edge_1, *self.far_sides(raw, reaches), edge_2)
        return (edge_1.meets(edge_2), *(one.meets(next_) for one, next_ in zip(lines, lines[1:])))

    def far_sides(self, raw: Point, reaches: tuple[Number, Number]) -> tuple[Line, ...]:
        """The lines at which a drawing stops, from edge 1 round to edge 2, what it shows on their left.

        Each edge is cut off square at its reach from the raw corner, so that a hem turned along it ends level with its
        cloth; at a blunt
        corner what lies far inside is cut off as well.
        """
        side_1, side_2 = self.sides(raw, reaches)
        if self.angle <= 90:
            return side_1, side_2
        (x1, y1), (x2, y2) = self.direction_1, self.direction_2
        halfway = float(self.angle) / 2
        deep = float(max(reaches)) * sqrt(2) / (2 * cos(radians(halfway)))
        return side_1, Line((raw[0] + (x1 + x2) * deep, raw[1] + (y1 + y2) * deep), (x2 - x1, y2 - y1)), side_2

    def sides(self, raw: Point, reaches: tuple[Number, Number]) -> tuple[Line, Line]:
        """The lines square to each edge at its reach from the raw corner, the corner on their left."""
        ways = (self.direction_1, self.direction_2)
        ends = [(raw[0] + reach * way[0], raw[1] + reach * way[1]) for reach, way in zip(reaches, ways)]
        side_1, side_2 = (Line(end, (-way[1], way[0])) for end, way in zip(ends, ways))
        return side_1, side_2

    def frame(self, reach: Number, name: str) -> FlatCloth:
        """A cloth that lies along both edges, from the raw edges to the hem depths, in one piece."""
        raw, inner = self.raw, self.crossing
        side_1, side_2 = self.sides(raw, (reach, reach))
        end_1, end_2 = self.raw_edge(1).meets(side_1), self.raw_edge(2).meets(side_2)
        inner_1, inner_2 = self.crease(1).meets(side_1), self.crease(2).meets(side_2)
        arms = (polygon((raw, end_1, inner_1, inner)), polygon((raw, inner, inner_2, end_2)))
        return FlatCloth(name, arms)
