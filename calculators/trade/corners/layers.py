"""What one sees of folded cloth, and how many layers lie everywhere."""

from collections.abc import Iterable
from dataclasses import dataclass

from calculators.trade.corners.cloth import Facet
from calculators.trade.corners.convex import Polygon, area, outlines, overlap, without
from calculators.trade.corners.plane import Number
from calculators.trade.corners.stack import Stack


@dataclass(frozen=True)
class Cell:
    """A part of the table over which the same facets lie, the lowest first."""

    shape: Polygon
    facets: tuple[Facet, ...]

    @property
    def count(self) -> int:
        return len(self.facets)

    @property
    def area(self) -> Number:
        """Area [mm²]."""
        return area(self.shape)


@dataclass(frozen=True)
class Seen:
    """What can be seen of a facet from above: convex parts."""

    facet: Facet
    parts: tuple[Polygon, ...]


def cells(stack: Stack) -> list[Cell]:
    """The table divided so that the same facets lie over every point of a cell.

    Facets are laid down one by one; each divides the cells it reaches and adds a new one where it is the first.
    """
    laid: list[Cell] = []
    for facet in stack.layers:
        bare = [facet.on_table]
        divided: list[Cell] = []
        for cell in laid:
            shared = overlap(cell.shape, facet.on_table)
            if not shared:
                divided.append(cell)
                continue
            divided.append(Cell(shared, (*cell.facets, facet)))
            divided += [Cell(rest, cell.facets) for rest in without(cell.shape, facet.on_table)]
            bare = [rest for part in bare for rest in without(part, cell.shape)]
        laid = divided + [Cell(part, (facet,)) for part in bare]
    return laid


def seen_from_above(stack: Stack) -> list[Seen]:
    """The visible parts of every facet that can be seen, the lowest first."""
    seen = []
    for i, facet in enumerate(stack.layers):
        parts = [facet.on_table]
        for above in stack.layers[i + 1 :]:
            parts = [rest for part in parts for rest in without(part, above.on_table)]
        if parts:
            seen.append(Seen(facet, tuple(parts)))
    return seen


def outline(stack: Stack) -> list[Polygon]:
    """The border of everything on the table."""
    return outlines(cell.shape for cell in cells(stack))


def count_shapes(patches: Iterable[tuple[Polygon, int]]) -> dict[int, list[Polygon]]:
    """For each number of layers the borders of the places where so many lie over one another, the fewest first.

    patches: parts of the table that do not overlap, each with its number of layers.
    """
    by_count: dict[int, list[Polygon]] = {}
    for shape, count in patches:
        by_count.setdefault(count, []).append(shape)
    return {count: outlines(shapes) for count, shapes in sorted(by_count.items())}
