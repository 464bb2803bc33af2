"""All strips good enough to be part of a better plan.

Piece values from a bound (multipliers or linear programme) tell how much every strip falls short of the best one. A
strip
that falls short by more than the gap between bound and target cannot be in any plan that reaches the target, so the few
that remain can be listed whole, and a search over them whose beam width drops nothing is a proof.
"""

from bisect import bisect_right
from collections.abc import Generator, Sequence
from dataclasses import dataclass

from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.strip_contents import Content, contents, contents_in_steps, layers_of
from calculators.trade.lay_plan.solving.strip_table import KnapsackTable, Orientation, StripShapes


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
    filled: KnapsackTable,
    least_worth: int,
    most: int,
) -> Generator[None, None, list[Strip]]:
    """Every strip of one height class worth at least `least_worth`, best first; each holds a piece of the strip's
    height. Pauses often.

    Parameters:
        copies: how many of each piece there are.
        filled: the finished table of this class.
        most: how many strips may be listed.

    Raises: TooManyStrips when there are more.
    """
    if filled.value < least_worth:
        return []
    ways, wanted = _ways(shapes, counts, copies, height_class)
    layers = layers_of(filled, copies, counts)
    found, sure = yield from contents_in_steps(
        layers, shapes.widths.floor, shapes.width, least_worth, most, wanted=wanted, all_or_none=True
    )
    if sure > least_worth:
        raise TooManyStrips
    return _as_strips(found, counts, ways)


def list_best_strips(
    shapes: StripShapes,
    counts: PackedCounts,
    copies: Sequence[int],
    height_class: int,
    filled: KnapsackTable,
    least_worth: int,
    most: int,
) -> tuple[list[Strip], int]:
    """The same in one go, but the best ones when there are more; and from which worth on all are there."""
    if filled.value < least_worth:
        return [], least_worth
    ways, wanted = _ways(shapes, counts, copies, height_class)
    found, sure = contents(
        layers_of(filled, copies, counts), shapes.widths.floor, shapes.width, least_worth, most, wanted=wanted
    )
    return _as_strips(found, counts, ways), sure


def _ways(
    shapes: StripShapes, counts: PackedCounts, copies: Sequence[int], height_class: int
) -> tuple[list[Orientation], int]:
    """The ways in which pieces lie in strips of a height, and the fields of those that are as high."""
    ways = [way for way in shapes.ways_in[height_class] if copies[way.piece]]
    return ways, sum([counts.field(way.piece) for way in ways if way.height == shapes.heights[height_class]])


def _as_strips(found: list[Content], counts: PackedCounts, ways: list[Orientation]) -> list[Strip]:
    widths, masks = _could_add(counts, ways)
    return [Strip(worth, packed, masks[bisect_right(widths, space)]) for worth, packed, space in found]


def _could_add(counts: PackedCounts, ways: list[Orientation]) -> tuple[list[int], list[int]]:
    """The widths of these ways, rising, and the fields of the pieces as narrow as the first so many."""
    rising = sorted([(way.width, counts.field(way.piece)) for way in ways])
    masks = [0]
    for _, field in rising:
        masks.append(masks[-1] | field)
    return [width for width, _ in rising], masks
