"""Bulk: how many layers lie on one another, and where the most."""

from dataclasses import dataclass
from functools import cached_property
from math import fsum

from calculators.trade.corners.convex import Polygon, area, centre, largest_first
from calculators.trade.corners.layers import cells, count_shapes
from calculators.trade.corners.plane import Point, steady
from calculators.trade.corners.stack import Stack

SPOT = 0.5  # [mm²], the least area that counts as a place and not as a point where folds meet


@dataclass(frozen=True)
class Bulk:
    """The layers of folded cloth.

    thickest: the most layers that lie over one another.
    thickest_area: over how much of the table they do [mm²].
    thickest_at: a place in the middle of the largest such part; of several as large, of the one farthest left.
    patches: convex parts of the table, each with its number of layers.
    """

    thickest: int
    thickest_area: float
    thickest_at: Point
    patches: list[tuple[Polygon, int]]

    @cached_property
    def shapes(self) -> dict[int, list[Polygon]]:
        """For each number of layers the borders of the places where so many lie, the fewest first."""
        return count_shapes(self.patches)

    def thickness(self, cloth_thickness: float) -> float:
        """The thickest place, pressed flat [mm]; cloth_thickness: of one layer [mm].

        Source: derived, layers counted at the thickest place, times one layer.
        """
        return self.thickest * cloth_thickness


def bulk(stack: Stack) -> Bulk:
    """Count the layers of a stack everywhere. Places smaller than SPOT are left out."""
    patches = [(cell.shape, cell.count) for cell in cells(stack.in_floats())]
    by_count: dict[int, list[Polygon]] = {}
    for shape, count in patches:
        by_count.setdefault(count, []).append(shape)
    areas = {count: fsum(float(area(shape)) for shape in alike) for count, alike in by_count.items()}
    thickest = max(count for count, size in areas.items() if steady(size) > steady(SPOT))
    largest = min(by_count[thickest], key=largest_first)
    return Bulk(thickest, areas[thickest], centre(largest), patches)
