"""Normal patterns: where a cut can usefully fall, the sums that pieces laid side by side can reach.

Every plan can be pushed towards one corner without losing a piece, so only sums of piece sizes matter as positions
(`herz-1972`; `christofides-whitlock-1977`). Tables indexed by these sums instead of by
every unit of length stay small when sizes are large numbers and few.
"""

from collections.abc import Callable, Iterable, Sequence
from functools import cache
from operator import itemgetter

Table = list[int]
Shift = tuple[int, Callable[[Sequence[int]], Sequence[int]] | None]


def reachable_sums(sizes: Iterable[tuple[int, int]], limit: int) -> list[int]:
    """All sums up to `limit` of sizes used at most so often.

    Parameters:
        sizes: pairs (size, most copies).
        limit: largest sum wanted.

    Returns: the sums, rising, starting with 0.
    """
    reached = 1
    mask = (1 << (limit + 1)) - 1
    for size, copies in sizes:
        if size > limit:
            continue
        for count in doublings(min(copies, limit // size)):
            reached |= (reached << (size * count)) & mask
    digits = bin(reached)[:1:-1]
    return [position for position, digit in enumerate(digits) if digit == "1"]


@cache
def doublings(copies: int) -> tuple[int, ...]:
    """Group sizes 1, 2, 4, … and a rest whose sub-sums give every number from 0 to `copies`."""
    groups = []
    size = 1
    while copies > 0:
        group = min(size, copies)
        groups.append(group)
        copies -= group
        size *= 2
    return tuple(groups)


class NormalPatterns:
    """The reachable sums in one direction, with the index arithmetic that knapsack tables need.

    A table over positions holds, at index i, the best value within the length `points[i]`.
    """

    def __init__(self, sizes: Iterable[tuple[int, int]], limit: int):
        self.points = reachable_sums(sizes, limit)
        self.last = len(self.points) - 1
        self.floor = _floor_indices(self.points, limit)
        self._shifts: dict[int, Shift] = {}

    def reduced(self) -> "NormalPatterns":
        """Only the positions that some rest of the whole can use: enough when copies are unlimited, not when they are
        limited.

        Source: terno-scheithauer, the reduced raster points.
        """
        fewer = NormalPatterns([], len(self.floor) - 1)
        limit = len(self.floor) - 1
        fewer.points = sorted({self.points[self.floor[limit - point]] for point in self.points} | {0})
        fewer.last = len(fewer.points) - 1
        fewer.floor = _floor_indices(fewer.points, limit)
        return fewer

    def empty_table(self) -> Table:
        """A table that holds nothing yet."""
        return [0] * len(self.points)

    def shift(self, size: int) -> Shift:
        """First index where `size` fits, and a getter of the table values that much further back."""
        known = self._shifts.get(size)
        if known is None:
            first = self.floor[size - 1] + 1 if size - 1 < len(self.floor) else len(self.points)
            back = [self.floor[point - size] for point in self.points[first:]]
            if not back:
                known = (first, None)
            elif len(back) == 1:
                known = (first, itemgetter(slice(back[0], back[0] + 1)))
            else:
                known = (first, itemgetter(*back))
            self._shifts[size] = known
        return known

    def with_item(self, table: Table, size: int, value: int, copies: int) -> Table:
        """The knapsack table after up to `copies` of an item may be added to what `table` holds."""
        for count in doublings(copies):
            first, back = self.shift(size * count)
            if back is None:
                continue
            gain = value * count
            table = table[:first] + [
                without if without > (added := behind + gain) else added
                for without, behind in zip(table[first:], back(table))
            ]
        return table


def _floor_indices(points: list[int], limit: int) -> list[int]:
    """For each length 0…limit the index of the largest point that is not longer."""
    floor = []
    for index, point in enumerate(points):
        following = points[index + 1] if index + 1 < len(points) else limit + 1
        floor.extend([index] * (following - point))
    return floor
