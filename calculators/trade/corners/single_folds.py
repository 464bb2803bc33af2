"""The single folds between two steps of a corner, so that they can be played: what stays, the flap that turns, and the
line that it turns about.

A flap lies wholly above or wholly below what stays, at every moment. What moves otherwise (a corner that is turned out,
a binding that is wrapped) is no sequence of single folds.
"""

from dataclasses import dataclass, replace
from itertools import pairwise

from calculators.trade.corners.cloth import Facet
from calculators.trade.corners.convex import centre, overlap
from calculators.trade.corners.plane import Isometry, Line, Point, same_place, unit
from calculators.trade.corners.stack import Stack


@dataclass(frozen=True)
class SingleFold:
    """One flap that turns about one line.

    stays: what does not move. front: the flap before it is folded. rear: the flap folded. line: the one it turns about;
    the flap lies to its right before. over: whether it goes over what stays, or else under it. opens: whether it is
    played from folded to flat.
    """

    stays: Stack
    front: Stack
    rear: Stack
    line: Line
    over: bool
    opens: bool


def single_folds(earlier: Stack, later: Stack) -> tuple[SingleFold, ...] | None:
    """The folds that lead from one step's cloth to the next's, in order.

    earlier, later: the cloth of both steps.
    Returns no fold where nothing moves, None where what moves is no sequence of single folds.
    Source: derived, both stacks know what they were folded from: first the folds that they do not share are opened, the
    latest first, then the new ones are made.
    """
    if _lies_alike(earlier, later):
        return ()
    shared = next(
        (n for n, (one, other) in enumerate(zip(earlier.before, later.before)) if one is not other),
        min(len(earlier.before), len(later.before)),
    )
    if _cloths(earlier) != _cloths(later):
        return None
    opened = [earlier]
    for state in reversed(earlier.before[shared:]):
        opened.append(earlier.lie_as(state))
    made = [*later.before[shared:], later]
    if not _lies_alike(opened[-1], made[0]):
        return None
    folds = [
        *(_fold(after, before, opens=True) for before, after in pairwise(opened)),
        *(_fold(after.lie_as(before), after, opens=False) for before, after in pairwise(made)),
    ]
    found = tuple(each for each in folds if each)
    return found if len(found) == len(folds) else None


def _cloths(stack: Stack) -> set[str]:
    return {facet.cloth.name for facet in stack.layers}


def _lies_alike(one: Stack, other: Stack) -> bool:
    """Whether cloth lies as other cloth, but for what is cut off of either, creases and stitches."""
    return all(
        facet.lay.same_as(there.lay)
        for facet in one.layers
        for there in other.layers
        if facet.cloth == there.cloth and overlap(facet.flat, there.flat)
    )


def _fold(flat: Stack, folded: Stack, opens: bool) -> SingleFold | None:
    """The one fold between two ways in which the same facets lie; None where it is none."""
    pairs = [(_same(flat, facet), facet) for facet in folded.layers]
    moving = [(before, after) for before, after in pairs if not before.lay.same_as(after.lay)]
    if not moving:
        return None
    movements = [before.lay.undone().then(after.lay) for before, after in moving]
    line = _turned_about(movements[0])
    if line is None or not all(each.same_as(movements[0]) for each in movements):
        return None
    moved = {id(after) for _, after in moving}
    staying = [after for _, after in pairs if id(after) not in moved]
    rear = [after for _, after in moving]
    front = [facet for facet in flat.layers if any(facet is before for before, _ in moving)]
    over = folded.layers[-1] in rear
    if not _wholly(rear, folded.layers, over) or not _wholly(front, flat.layers, over):
        return None
    return SingleFold(
        replace(folded, layers=tuple(staying)),
        replace(flat, layers=tuple(front)),
        replace(folded, layers=tuple(rear)),
        line.towards(_middle(rear)),
        over,
        opens,
    )


def _same(stack: Stack, facet: Facet) -> Facet:
    """The facet of the same cloth at the same place."""
    return next(
        each for each in stack.layers if each.cloth == facet.cloth and same_place(centre(each.flat), centre(facet.flat))
    )


def _turned_about(movement: Isometry) -> Line | None:
    """The line that a movement folds cloth over about; None where it is no fold."""
    if not movement.turned_over or not movement.then(movement).same_as(Isometry()):
        return None
    across, up = movement.a, movement.b
    way = (1 + across, up) if across > 0 else (up, 1 - across)
    return Line((movement.e / 2, movement.f / 2), unit((float(way[0]), float(way[1]))))


def _wholly(flap: list[Facet], layers: tuple[Facet, ...], over: bool) -> bool:
    """Whether a flap lies above all else that it lies on, or below all else that lies on it."""
    order = layers if over else layers[::-1]
    beneath: list[Facet] = []
    for facet in order:
        if any(facet is each for each in flap):
            beneath.append(facet)
        elif any(overlap(facet.on_table, each.on_table) for each in beneath):
            return False
    return True


def _middle(facets: list[Facet]) -> Point:
    """A place of a flap that does not lie on the line it turns about."""
    places = [centre(facet.on_table) for facet in facets]
    return sum(x for x, _ in places) / len(places), sum(y for _, y in places) / len(places)
