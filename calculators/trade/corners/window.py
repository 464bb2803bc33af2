"""The window that a series of drawings is seen through: chosen once, so that a fold moves cloth and never the place
where a drawing stops.

Cloth is made AMPLE times as long as the window reaches, so that no fold brings its far end into sight.
"""

from fractions import Fraction
from functools import reduce

from calculators.trade.corners.convex import Edge, Polygon, cut, edges, overlap
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.plane import TOUCHING, Number, absolute, along, minus
from calculators.trade.corners.stack import Stack

AMPLE = 4
_BESIDE = Fraction(1, 3)  # of the reach: how far outside the raw edges cloth is shown that was folded or laid there


def window(corner: Corner, reach: Number) -> Polygon:
    """What the drawings of a corner show of the table [mm].

    reach: how far along each edge, from the raw corner [mm]. Each edge is cut off square there.
    """
    beside = [corner.parallel(edge, -turn - reach * _BESIDE) for edge, turn in zip((1, 2), corner.turns)]
    far = 100 * reach
    everything: Polygon = ((-far, -far), (far, -far), (far, far), (-far, far))
    ring = reduce(
        lambda shape, line: cut(shape, line)[0], (*beside, *corner.far_sides(corner.raw, (reach, reach))), everything
    )
    return tuple((float(x), float(y)) for x, y in ring)


def seen_through(stack: Stack, ring: Polygon) -> Stack:
    """The part of a stack that lies in a window, in floats."""
    layers = (
        f if shape is f.on_table else f.part(shape)
        for f in stack.in_floats().layers
        if (shape := overlap(f.on_table, ring))
    )
    return Stack(tuple(layers), stack.lines, stack.seams)


def along_sides(shape: Polygon, ring: Polygon) -> list[tuple[Edge, Edge]]:
    """The edges of a shape that lie along sides of a window: each side with the edge."""
    found = []
    for side in edges(ring):
        (x, y), (dx, dy) = side[0], minus(side[1], side[0])
        touching = TOUCHING * max(absolute(dx), absolute(dy))
        on_it = [absolute(dx * (b - y) - dy * (a - x)) < touching for a, b in shape]
        if sum(on_it) > 1:
            found += [
                (side, edge) for edge, here, next_ in zip(edges(shape), on_it, (*on_it[1:], on_it[0])) if here and next_
            ]
    return found


def cut_off(stack: Stack, ring: Polygon) -> list[Edge]:
    """Where a window cuts off cloth that goes on: parts of its sides, as long as they can be."""
    parts: dict[Edge, list[tuple[Number, Number]]] = {}
    for facet in stack.layers:
        for side, edge in along_sides(facet.on_table, ring):
            parts.setdefault(side, []).append(_share(side, edge))
    found = []
    for side, shares in parts.items():
        reached: list[list[Number]] = []
        for low, high in sorted(shares):
            if reached and low <= reached[-1][1] + 1e-6:
                reached[-1][1] = max(reached[-1][1], high)
            else:
                reached.append([low, high])
        found += [(along(*side, low), along(*side, high)) for low, high in reached]
    return found


def _share(side: Edge, edge: Edge) -> tuple[Number, Number]:
    """From where to where an edge lies along a side, as shares of the side."""
    axis = 0 if absolute(side[1][0] - side[0][0]) >= absolute(side[1][1] - side[0][1]) else 1
    low, high = sorted((end[axis] - side[0][axis]) / (side[1][axis] - side[0][axis]) for end in edge)
    return low, high
