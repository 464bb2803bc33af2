"""A piece of cloth with its two sides, and the flat parts it has once it is creased."""

from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from calculators.trade.corners.convex import Edge, Polygon, moved, part_inside
from calculators.trade.corners.plane import Isometry, Point

LineKind = Literal["crease", "stitch", "mark", "cut"]


@dataclass(frozen=True)
class FlatCloth:
    """One piece of cloth, flat.

    name: what the maker calls it, such as "napkin" or "border strip".
    shape: convex parts that lie side by side and make up its whole [mm].
    right_side_up: which side faces up while it lies flat and not turned over.
    """

    name: str
    shape: tuple[Polygon, ...]
    right_side_up: bool = False


@dataclass(frozen=True)
class Facet:
    """A convex part of a cloth that lies flat, and how it lies on the table. `flat` is its place in the flat cloth
    [mm]."""

    cloth: FlatCloth
    flat: Polygon
    lay: Isometry = Isometry()

    @cached_property
    def on_table(self) -> Polygon:
        """Its shape on the table [mm], counterclockwise as seen from above."""
        return moved(self.flat, self.lay)

    @property
    def right_side_up(self) -> bool:
        return self.cloth.right_side_up != self.lay.turned_over

    def moved(self, movement: Isometry) -> "Facet":
        return Facet(self.cloth, self.flat, self.lay.then(movement))

    def part(self, on_table: Polygon) -> "Facet":
        """The part of this facet that lies over a polygon inside it."""
        return Facet(self.cloth, moved(on_table, self.lay.undone()), self.lay)


@dataclass(frozen=True)
class ClothLine:
    """A line a maker has put on a cloth: a crease, stitches, a pencil mark, a cut. Ends are places in the flat cloth.

    on_right_side: the side it can be seen on; None for both.
    """

    kind: LineKind
    cloth: str
    start: Point
    end: Point
    on_right_side: bool | None = None

    def over(self, facet: Facet) -> Edge | None:
        """Where the part of this line that runs over a facet lies on the table."""
        if facet.cloth.name != self.cloth:
            return None
        part = part_inside((self.start, self.end), facet.flat)
        return part and (facet.lay.place(part[0]), facet.lay.place(part[1]))
