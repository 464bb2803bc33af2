"""Lagrange multipliers on limited pieces, moved in subgradient steps so that a bound comes down.

Any recursion that ignores quantities gives a bound once every copy has a multiplier: its best value at values less
multipliers, plus the multiplier of all copies. Multipliers follow copies used less copies there are, with the step
length of `polyak-1969`.
"""

from collections.abc import Callable, Generator, Iterator, Sequence
from math import fsum
from typing import Protocol, TypeVar


class Relaxation(Protocol):
    """What a relaxed recursion tells: its bound, the multipliers it holds for, and how many copies its plan uses."""

    @property
    def bound(self) -> int: ...
    @property
    def multipliers(self) -> Sequence[int]: ...
    @property
    def used(self) -> Sequence[int]: ...


Found = TypeVar("Found", bound=Relaxation)


def subgradient_steps(
    relaxed: Callable[[Sequence[int]], Generator[None, None, Found]],
    copies: Sequence[int],
    known: Callable[[], int],
    start: Sequence[int],
    steps: int,
    patience: int = 6,
    momentum: float = 0.0,
    step_factor: float = 1.0,
) -> Iterator[Found | None]:
    """Yields the relaxed plan at ever better multipliers, and None where work pauses; the caller stops when it likes.

    relaxed: the recursion at given multipliers, pausing as often as it likes.
    copies: copies there are of each piece.
    known: value of the best plan in hand, in the same units as the bound; aimed at by the step length.
    start: multipliers to begin with.
    steps: at most so many. patience: steps without progress before the step factor is halved.
    momentum: how much of the last direction is kept [share].
    step_factor: how much of Polyak's step to begin with [share].
    Returns an iterator of relaxed plans.
    Source: polyak-1969 for the length of a step; the direction derived, copies used less copies there are.
    """
    multipliers = list(start)
    best: Found | None = None
    stalled = 0
    last = [0.0] * len(copies)
    for _ in range(steps):
        now = yield from relaxed(multipliers)
        if best is None or now.bound < best.bound:
            stalled = stalled + 1 if best and best.bound - now.bound < best.bound // 2000 else 0
            best = now
        else:
            stalled += 1
        yield now
        if stalled >= patience:
            step_factor /= 2
            stalled = 0
            now = best
            if step_factor < 0.02:
                return
        over = [
            0 if multiplier <= 0 and used <= there else used - there
            for multiplier, used, there in zip(now.multipliers, now.used, copies)
        ]
        subgradient = last = [s + momentum * d for s, d in zip(over, last)]
        square = fsum(s * s for s in subgradient)
        if square == 0:
            return
        step = step_factor * max(1, now.bound - known()) / square
        multipliers = [max(0, int(multiplier + step * s)) for multiplier, s in zip(now.multipliers, subgradient)]


def without_pause(relaxed: Callable[[Sequence[int]], Found]) -> Callable[[Sequence[int]], Generator[None, None, Found]]:
    """A recursion so short that it needs no pause, in the form that `subgradient_steps` takes."""

    def working(multipliers: Sequence[int]) -> Generator[None, None, Found]:
        yield from ()
        return relaxed(multipliers)

    return working
