"""What the borders of folded facets are: an edge of the cloth, the edge of a fold, or a crease lying open."""

from collections.abc import Iterable
from typing import Literal

from calculators.trade.corners.cloth import ClothLine, Facet
from calculators.trade.corners.convex import Edge, Polygon, edges
from calculators.trade.corners.plane import TOUCHING, Line, Number, Point, absolute, along, middle
from calculators.trade.corners.stack import Stack, common_edge, hinges
from calculators.trade.corners.window import along_sides

BorderKind = Literal["edge", "fold", "crease"]


def borders(stack: Stack, window: Polygon = ()) -> list[list[tuple[BorderKind, Edge]]]:
    """For every facet, lowest first, its borders as they lie on the table.

    A crease lying open is listed with the upper of its two facets. Where two facets lie flat side by side and
    uncreased,
    there is no border.

    window: what the stack is seen through; along its sides only the drawing ends.
    """
    found: list[list[tuple[BorderKind, Edge]]] = [[] for _ in stack.layers]
    joined: list[list[Edge]] = [_cut_off(facet, window) for facet in stack.layers]
    for i, j, shared in hinges(stack.layers):
        joined[i].append(shared)
        joined[j].append(shared)
        lower, upper = stack.layers[i], stack.layers[j]
        if lower.lay.turned_over != upper.lay.turned_over:
            found[i].append(("fold", _on_table(lower, shared)))
            found[j].append(("fold", _on_table(upper, shared)))
        elif _creased(stack.lines, upper, shared):
            found[j].append(("crease", _on_table(upper, shared)))
    for facet, inner, listed in zip(stack.layers, joined, found):
        listed += [("edge", _on_table(facet, part)) for edge in edges(facet.flat) for part in _outside(edge, inner)]
    return found


def _cut_off(facet: Facet, window: Polygon) -> list[Edge]:
    """The parts of a facet's flat edges at which a window cuts it off."""
    back = facet.lay.undone()
    return [(back.place(start), back.place(end)) for _, (start, end) in along_sides(facet.on_table, window)]


def _on_table(facet: Facet, edge: Edge) -> Edge:
    return facet.lay.place(edge[0]), facet.lay.place(edge[1])


def _creased(lines: Iterable[ClothLine], facet: Facet, edge: Edge) -> bool:
    spot = middle(*edge)
    return any(
        line.kind == "crease" and line.cloth == facet.cloth.name and _lies_on(spot, (line.start, line.end))
        for line in lines
    )


def _lies_on(spot: Point, edge: Edge) -> bool:
    line = Line.through(*edge)
    if line.side(spot) != 0:
        return False
    axis = 0 if absolute(line.direction[0]) >= absolute(line.direction[1]) else 1
    low, high = sorted((edge[0][axis], edge[1][axis]))
    return low - TOUCHING <= spot[axis] <= high + TOUCHING


def _outside(edge: Edge, inner: list[Edge]) -> list[Edge]:
    """The parts of a flat edge that belong to none of the inner edges."""
    axis = 0 if absolute(edge[1][0] - edge[0][0]) >= absolute(edge[1][1] - edge[0][1]) else 1
    run = edge[1][axis] - edge[0][axis]
    taken = sorted(
        tuple((end[axis] - edge[0][axis]) / run for end in shared)
        for other in inner
        if (shared := common_edge(edge, other))
    )
    parts: list[Edge] = []
    reached: Number = 0
    for low, high in [*taken, (1, 1)]:
        if low - reached > 1e-6:
            parts.append((along(*edge, reached), along(*edge, low)))
        reached = max(reached, high)
    return parts
