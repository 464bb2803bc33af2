"""Bulk: how many layers lie on one another, and where the most."""

from dataclasses import dataclass

from calculators.folding.convex import Polygon, centre
from calculators.folding.layers import Cell, cells, count_shapes
from calculators.folding.plane import Point
from calculators.folding.stack import Stack

SPOT = 0.5  # [mm²], the least area that counts as a place and not as a point where folds meet


@dataclass(frozen=True)
class Bulk:
    """The layers of folded cloth.

    thickest: the most layers that lie over one another.
    thickest_area: over how much of the table they do [mm²].
    thickest_at: a place in the middle of the largest such part.
    shapes: for each number of layers the borders of the places where so many lie, the fewest first.
    patches: convex parts of the table, each with its number of layers.
    """

    thickest: int
    thickest_area: float
    thickest_at: Point
    shapes: dict[int, list[Polygon]]
    patches: list[tuple[Polygon, int]]

    def thickness(self, cloth_thickness: float) -> float:
        """The thickest place, pressed flat [mm]; cloth_thickness: of one layer [mm]."""
        return self.thickest * cloth_thickness


def bulk(stack: Stack) -> Bulk:
    """Count the layers of a stack everywhere. Places smaller than SPOT are left out."""
    found = cells(stack.in_floats())
    by_count: dict[int, list[Cell]] = {}
    for cell in found:
        by_count.setdefault(cell.count, []).append(cell)
    thickest = max(count for count, alike in by_count.items() if sum(cell.area for cell in alike) > SPOT)
    there = by_count[thickest]
    largest = max(there, key=lambda cell: cell.area)
    return Bulk(thickest, float(sum(cell.area for cell in there)), centre(largest.shape), count_shapes(found), [(c.shape, c.count) for c in found])
