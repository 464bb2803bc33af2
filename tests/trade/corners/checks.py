"""What cloth cannot do: tear without scissors, pass through itself, or let go of a seam."""

from calculators.trade.corners.cloth import Facet
from calculators.trade.corners.convex import Edge, holds
from calculators.trade.corners.plane import Line, along, distance, same_place
from calculators.trade.corners.seam import Seam
from calculators.trade.corners.stack import Stack, common_edge, hinges

ALONG_A_SEAM = (0.02, 0.25, 0.5, 0.75, 0.98)


def widest_gap(stack: Stack, seam: Seam) -> float:
    """How far apart the layers of a seam lie where they are farthest apart [mm]; 0 when the seam lies closed."""
    widest = 0.0
    for share in ALONG_A_SEAM:
        flat = [(thread.cloth, thread.at(share)) for thread in seam.threads]
        places = [place for cloth, spot in flat if spot for place in stack.places(cloth, spot)]
        widest = max([widest, *(float(distance(places[0], other)) for other in places[1:])])
    return widest


def tears(stack: Stack) -> list[Edge]:
    """Flat edges at which neighbours in one cloth no longer lie together."""
    return [
        shared
        for i, j, shared in hinges(stack.layers)
        if not all(same_place(stack.layers[i].lay.place(end), stack.layers[j].lay.place(end)) for end in shared)
    ]


def passings(stack: Stack) -> list[tuple[int, int, int]]:
    """Places where a layer would have to pass through a fold: (lower layer of the fold, upper layer, the layer
    between).

    A layer may end at a fold or lie wholly to one side of it, but it cannot lie between the two halves of a fold and
    stick out beyond the fold line; nor may two folds on one line be interlocked.
    """
    found = []
    folds = [(i, j, edge) for i, j, edge in _folded_hinges(stack)]
    for low, high, edge in folds:
        for between in range(low + 1, high):
            if _sticks_out(stack.layers[between], edge, stack.layers[low]):
                found.append((low, high, between))
        for other_low, other_high, other_edge in folds:
            if low < other_low < high < other_high and _same_way(stack, low, other_low, edge, other_edge):
                found.append((low, high, other_low))
    return found


def _folded_hinges(stack: Stack) -> list[tuple[int, int, Edge]]:
    """Folds as (lower layer, upper layer, fold line on the table)."""
    lays = [facet.lay for facet in stack.layers]
    return [
        (i, j, (lays[i].place(shared[0]), lays[i].place(shared[1])))
        for i, j, shared in hinges(stack.layers)
        if lays[i].turned_over != lays[j].turned_over
    ]


def _sticks_out(facet: Facet, fold: Edge, half: Facet) -> bool:
    """Whether a facet lies over both sides of a fold line somewhere along it."""
    line = Line.through(*fold)
    reach = 1e-3 / float(distance(*fold))  # a hundredth of a thread to each side of the fold
    for share in (0.1, 0.3, 0.5, 0.7, 0.9):
        spot = along(*fold, share)
        across = (-line.direction[1] * reach, line.direction[0] * reach)
        over = [holds(facet.on_table, (spot[0] + k * across[0], spot[1] + k * across[1])) for k in (1, -1)]
        if all(over):
            return True
    return False


def _same_way(stack: Stack, one: int, other: int, edge: Edge, other_edge: Edge) -> bool:
    """Whether two folds lie on one line with their cloth on the same side."""
    shared = common_edge(edge, other_edge)
    return bool(shared) and _side(stack.layers[one], edge) == _side(stack.layers[other], edge)


def _side(facet: Facet, edge: Edge) -> int:
    line = Line.through(*edge)
    return next((side for corner in facet.on_table if (side := line.side(corner))), 0)
