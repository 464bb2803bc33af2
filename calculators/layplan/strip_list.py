"""All strips good enough to be part of a better plan.

Piece values from a bound (multipliers or linear programme) tell how much every strip falls short of the best one. A strip
that falls short by more than the gap between bound and target cannot be in any plan that reaches the target, so the few
that remain can be listed whole, and a search over them that drops nothing is a proof.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.layplan.counts import PackedCounts
from calculators.layplan.strip_contents import contents, layers_of
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
    strips, sure = list_best_strips(shapes, counts, copies, height_class, filled, least_worth, most, all_or_none=True)
    if sure > least_worth:
        raise TooManyStrips
    return strips


def list_best_strips(
    shapes: StripShapes,
    counts: PackedCounts,
    copies: Sequence[int],
    height_class: int,
    filled: Filled,
    least_worth: int,
    most: int,
    all_or_none: bool = False,
) -> tuple[list[Strip], int]:
    """The same, but the best ones when there are more; and from which worth on all are there.

    all_or_none: to give up as soon as there are more.
    """
    height = shapes.heights[height_class]
    ways = [way for way in shapes.ways_in[height_class] if copies[way.piece]]
    wanted = sum([counts.field(way.piece) for way in ways if way.height == height])
    if filled.value < least_worth:
        return [], least_worth
    layers = layers_of(filled, copies, counts)
    found, sure = contents(layers, shapes.widths.floor, shapes.width, least_worth, most, wanted=wanted, all_or_none=all_or_none)
    widths, masks = _could_add(counts, ways)
    return [Strip(worth, packed, masks[bisect_right(widths, space)]) for worth, packed, space in found], sure


def _could_add(counts: PackedCounts, ways) -> tuple[list[int], list[int]]:
    """The widths of these ways, rising, and the fields of the pieces as narrow as the first so many."""
    rising = sorted([(way.width, counts.field(way.piece)) for way in ways])
    masks = [0]
    for _, field in rising:
        masks.append(masks[-1] | field)
    return [width for width, _ in rising], masks
