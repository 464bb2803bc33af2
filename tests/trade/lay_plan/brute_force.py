"""Lay plans by trying everything: slow, short, and sharing nothing with the solvers."""

from functools import cache

from calculators.trade.lay_plan.solving.model import Task


def most_value(task: Task) -> int:
    """The most value that any plan of a small task reaches."""
    kinds = [(piece.sizes(), piece.worth) for piece in task.pieces]

    @cache
    def single(width: int, length: int, have: tuple[int, ...], trimmed_once: bool) -> int:
        best = 0
        for (sizes, worth), count in zip(kinds, have):
            for x, y, _ in sizes if count else ():
                if x <= width and y <= length and (not trimmed_once or x == width or y == length):
                    best = max(best, worth)
        return best

    @cache
    def region(width: int, length: int, have: tuple[int, ...], stages: int, direction: str) -> int:
        if not any(have):
            return 0
        if stages == 0:
            return single(width, length, have, True)
        other = "along" if direction == "across" else "across"
        best = region(width, length, have, stages - 1, other)
        extent = length if direction == "across" else width
        for cut in range(1, extent):
            for taken in _shares(have):
                rest = tuple(h - t for h, t in zip(have, taken))
                if direction == "across":
                    value = region(width, cut, taken, stages - 1, other) + region(
                        width, length - cut, rest, stages, direction
                    )
                else:
                    value = region(cut, length, taken, stages - 1, other) + region(
                        width - cut, length, rest, stages, direction
                    )
                best = max(best, value)
        return best

    have = tuple(task.quantity(number) for number in range(len(task.pieces)))
    stages = task.width + task.length if task.stages is None else task.stages
    first = ["across", "along"] if task.first_cut == "any" else [task.first_cut]
    return max(region(task.width, task.length, have, stages, direction) for direction in first)


def shortest_length(task: Task) -> int:
    """The least length of cloth for a small order."""
    counted = tuple(type(p)(p.width, p.length, p.quantity, 1, p.may_turn) for p in task.pieces)
    everything = sum(piece.quantity for piece in task.pieces)
    length = 1
    while most_value(Task(task.width, length, counted, task.stages, task.first_cut)) < everything:
        length += 1
    return length


@cache
def _shares(have: tuple[int, ...]) -> tuple[tuple[int, ...], ...]:
    shares: list[tuple[int, ...]] = [()]
    for count in have:
        shares = [(*share, taken) for share in shares for taken in range(count + 1)]
    return tuple(shares)
