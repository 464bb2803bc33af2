"""Lay plans around flaws and with a repeat by trying every cut on a small grid: slow, and sharing nothing with the
solvers.

Places are whole numbers; a piece is as large as it is with its gap, on a cloth larger by one gap, and only what lies
under the piece itself must
be sound. Of every part, all the counts of pieces are kept that it can give, but for those that are fewer of each.
"""

from dataclasses import dataclass
from functools import cache

OTHER = {"across": "along", "along": "across"}


@dataclass(frozen=True)
class Size:
    """A piece wanted: width and length without the gap, how many, whether it may turn or must match, and what it
    counts."""

    width: int
    length: int
    count: int
    may_turn: bool = False
    matched: bool = False
    value: int = 1


@dataclass(frozen=True)
class Ground:
    """A cloth. flaws: x from, x to, y from, y to. repeat: distance and first start across, then along; distance 0 where
    there is none."""

    width: int
    length: int
    flaws: tuple[tuple[int, int, int, int], ...] = ()
    repeat: tuple[int, int, int, int] = (0, 0, 0, 0)
    gap: int = 0


def most_value(ground: Ground, sizes: tuple[Size, ...], strips: str) -> int:
    """The most value that any plan reaches, cut in strips "across" or "along", in "sections", or "free"."""
    gap, none = ground.gap, tuple(0 for _ in sizes)

    def sound(size: Size, x: int, y: int, width: int, length: int) -> bool:
        across, first_across, along, first_along = ground.repeat
        if size.matched and (across and (x - first_across) % across or along and (y - first_along) % along):
            return False
        return not any(
            left < x + width and x < right and low < y + length and y < high for left, right, low, high in ground.flaws
        )

    def single(x: int, y: int, width: int, length: int, trimmed_once: bool):
        for number, size in enumerate(sizes):
            for wide, long in {(size.width, size.length)} | ({(size.length, size.width)} if size.may_turn else set()):
                spare, over = width - wide - gap, length - long - gap
                if spare < 0 or over < 0 or trimmed_once and spare and over:
                    continue
                if any(sound(size, x + dx, y + dy, wide, long) for dx in range(spare + 1) for dy in range(over + 1)):
                    yield tuple(int(each == number) for each in range(len(sizes)))

    def both(one, other):
        return {
            tuple(min(a + b, size.count) for a, b, size in zip(first, second, sizes))
            for first in one
            for second in other
        }

    @cache
    def region(x: int, y: int, width: int, length: int, stages: int, direction: str):
        if stages == 0:
            return best({none, *single(x, y, width, length, True)})
        found = set(region(x, y, width, length, stages - 1, OTHER[direction]))
        for cut in range(1, length if direction == "across" else width):
            if direction == "across":
                found |= both(
                    region(x, y, width, cut, stages - 1, "along"),
                    region(x, y + cut, width, length - cut, stages, direction),
                )
            else:
                found |= both(
                    region(x, y, cut, length, stages - 1, "across"),
                    region(x + cut, y, width - cut, length, stages, direction),
                )
        return best(found)

    @cache
    def free(x: int, y: int, width: int, length: int):
        found = {none, *single(x, y, width, length, False)}
        for cut in range(1, length):
            found |= both(free(x, y, width, cut), free(x, y + cut, width, length - cut))
        for cut in range(1, width):
            found |= both(free(x, y, cut, length), free(x + cut, y, width - cut, length))
        return best(found)

    whole = (0, 0, ground.width + gap, ground.length + gap)
    given = {"free": lambda: free(*whole), "sections": lambda: region(*whole, 3, "across")}.get(
        strips, lambda: region(*whole, 2, strips)
    )()
    return max(sum(count * size.value for count, size in zip(counts, sizes)) for counts in given)


def best(found):
    """Those counts that no other holds all of."""
    return frozenset(
        one for one in found if not any(one != other and all(a <= b for a, b in zip(one, other)) for other in found)
    )
