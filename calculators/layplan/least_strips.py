"""How many strips of each height any plan needs at least, from widths alone.

A piece lies in a strip at least as high as itself. So the pieces at least h high need as many strips at least h high as bins
as wide as the cloth, and any lower bound for bins counts: their widths rounded up (the area of the cloth rounded up once for
every height), after widths were sharpened by a dual feasible function (Fekete and Schepers 2001; from memory).
"""

from collections.abc import Callable, Sequence

from calculators.layplan.strip_table import StripShapes

SHARES = 12


def least_strips(shapes: StripShapes, copies: Sequence[int]) -> list[int]:
    """For each height class of `shapes` how many strips of that height or a greater one these copies need at least."""
    width = shapes.positions.points[-1]
    sharpened = [_as_it_is(width), *(_in_shares(width, parts) for parts in range(1, SHARES + 1))]
    used = [0] * len(sharpened)
    least = [0] * len(shapes.heights)
    by_class: list[list[tuple[int, int]]] = [[] for _ in shapes.heights]
    for piece, count in enumerate(copies):
        if count:
            narrowest = min(across for _, across in shapes.own_heights[piece])
            by_class[shapes.class_of[shapes.lowest[piece]]].append((narrowest, count))
    for height_class in reversed(range(len(least))):
        for across, count in by_class[height_class]:
            for number, (share, _) in enumerate(sharpened):
                used[number] += share(across) * count
        least[height_class] = max(-(-amount // whole) for amount, (_, whole) in zip(used, sharpened))
    return least


def _as_it_is(width: int) -> tuple[Callable[[int], int], int]:
    return (lambda across: across), width


def _in_shares(width: int, parts: int) -> tuple[Callable[[int], int], int]:
    """A piece counts as so many of `parts` shares of the width; one that falls on a share exactly counts as its width."""

    def share(across: int) -> int:
        times = (parts + 1) * across
        return across * parts if times % width == 0 else times // width * width

    return share, width * parts
