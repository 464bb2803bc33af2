"""All strips good enough to be part of a better plan.

Piece values from a bound (multipliers or linear programme) tell how much every strip falls short of the best one. A strip
that falls short by more than the gap between bound and target cannot be in any plan that reaches the target, so the few
that remain can be listed whole, and a search over them that drops nothing is a proof.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from calculators.layplan.counts import PackedCounts
from calculators.layplan.strip_table import Filled, StripShapes


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip content.

    worth: sum of the piece values it was listed with.
    packed: its pieces as packed counts.
    could_add: packed fields of the pieces that would still fit beside.
    """

    worth: int
    packed: int
    could_add: int


class TooManyStrips(Exception):
    """More strips lie within the gap than may be listed."""


def list_strips(
    shapes: StripShapes,
    counts: PackedCounts,
    copies: Sequence[int],
    height_class: int,
    filled: Filled,
    least_worth: int,
    most: int,
) -> list[Strip]:
    """Every strip of one height class worth at least `least_worth`, best first; each holds a piece of the strip's height.

    Parameters:
        copies: how many of each piece there are.
        filled: the finished table of this class.
        most: how many strips may be listed.

    Raises: TooManyStrips when there are more.
    """
    height = shapes.heights[height_class]
    wanted = sum(counts.field(way.piece) for way in shapes.ways_in[height_class] if way.height == height)
    floor = shapes.widths.floor
    if filled.value < least_worth:
        return []
    layers = [
        (before, width, min(limit, copies[piece]), value, counts.unit(piece))
        for before, width, limit, value, piece in filled.entries
        if copies[piece]
    ]
    still_wanted = [0] * (len(layers) + 1)
    for index in range(len(layers) - 1, -1, -1):
        still_wanted[index] = still_wanted[index + 1] | (layers[index][4] & wanted)
    widths = [*(layer[1] for layer in layers), 0]
    found = []
    depth = len(layers)
    stack = [(0, shapes.width, 0, 0)]
    while stack:
        index, space, worth, packed = stack.pop()
        while True:
            while widths[index] > space:
                index += 1
            if not (packed & wanted or still_wanted[index]):
                break
            if index == depth:
                found.append((worth, packed, space))
                if len(found) > most:
                    raise TooManyStrips
                break
            before, piece_width, limit, value, unit = layers[index]
            index += 1
            with_some, space_then, worth_then = packed, space, worth
            for _ in range(limit):
                space_then -= piece_width
                if space_then < 0:
                    break
                worth_then += value
                with_some += unit
                if worth_then + before[floor[space_then]] >= least_worth:
                    stack.append((index, space_then, worth_then, with_some))
            if worth + before[floor[space]] < least_worth:
                break
    found.sort(reverse=True)
    masks = _could_add(counts, shapes.ways_in[height_class], found)
    return [Strip(worth, packed, mask) for (worth, packed, _), mask in zip(found, masks)]


def _could_add(counts: PackedCounts, ways, found) -> list[int]:
    """For each found strip the fields of the pieces narrow enough for what is left of its width."""
    by_width = sorted((way.width, counts.field(way.piece)) for way in ways)
    masks = []
    for _, _, space in found:
        mask = 0
        for width, field in by_width:
            if width > space:
                break
            mask |= field
        masks.append(mask)
    return masks
