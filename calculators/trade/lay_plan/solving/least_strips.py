"""How many strips of each height any plan needs at least, from widths alone.

A piece lies in a strip at least as high as itself. So the pieces at least h high need as many strips at least h high as
bins
as wide as the cloth, and any lower bound for bins counts: their widths rounded up (the area of the cloth rounded up
once for
every height), after widths were sharpened by a dual feasible function (`fekete-schepers-2001`).
"""

from collections.abc import Callable, Sequence
from functools import lru_cache

from calculators.trade.lay_plan.solving.strip_table import StripShapes

SHARES = 12


def least_strips(shapes: StripShapes, copies: Sequence[int]) -> list[int]:
    """For each height class of `shapes` how many strips of that height or a greater one these copies need at least."""
    shares, wholes = _shares(shapes)
    by_class: dict[int, list[int]] = {}
    for piece, count in enumerate(copies):
        if count:
            by_class.setdefault(shapes.class_of[shapes.lowest[piece]], []).append(piece)
    used = [0] * len(wholes)
    number, above = 0, len(shapes.heights)
    least = [0] * above
    for height_class in sorted(by_class, reverse=True):
        for piece in by_class[height_class]:
            count = copies[piece]
            used = [amount + share * count for amount, share in zip(used, shares[piece])]
        least[height_class + 1 : above] = [number] * (above - height_class - 1)
        number = least[height_class] = max([-(-amount // whole) for amount, whole in zip(used, wholes)])
        above = height_class
    least[:above] = [number] * above
    return least


@lru_cache(maxsize=4)
def _shares(shapes: StripShapes) -> tuple[list[list[int]], list[int]]:
    """What a copy of each piece counts in the several ways, and what the whole width then is."""
    width = shapes.positions.points[-1]
    ways = [_as_it_is(width), *(_in_shares(width, parts) for parts in range(1, SHARES + 1))]
    narrowest = [min(across for _, across in own) for own in shapes.own_heights]
    return [[share(across) for share, _ in ways] for across in narrowest], [whole for _, whole in ways]


def _as_it_is(width: int) -> tuple[Callable[[int], int], int]:
    return (lambda across: across), width


def _in_shares(width: int, parts: int) -> tuple[Callable[[int], int], int]:
    """A piece counts as so many of `parts` shares of the width; one that falls on a share exactly counts as its
    width."""

    def share(across: int) -> int:
        times = (parts + 1) * across
        return across * parts if times % width == 0 else times // width * width

    return share, width * parts
