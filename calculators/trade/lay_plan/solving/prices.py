"""Moves the prices on limited pieces so that a bound comes down (Lagrange multipliers, subgradient steps).

Any recursion that ignores quantities gives a bound once every copy has a price: its best value at values less prices,
plus the price of all copies. Prices follow copies used less copies there are, with the step length of `polyak-1969`.
"""

from collections.abc import Callable, Generator, Iterator, Sequence
from typing import Protocol, TypeVar


class Priced(Protocol):
    """What a relaxed recursion tells: its bound, the prices it holds for, and how many copies its plan uses."""

    bound: int
    prices: Sequence[int]
    used: Sequence[int]


Found = TypeVar("Found", bound=Priced)


def price_steps(
    relaxed: Callable[[Sequence[int]], Generator[None, None, Found]],
    copies: Sequence[int],
    known: Callable[[], int],
    start: Sequence[int],
    steps: int,
    patience: int = 6,
    drift: float = 0.0,
    pace: float = 1.0,
) -> Iterator[Found | None]:
    """Yields the relaxed plan at ever better prices, and None where work pauses; the caller stops when it likes.

    relaxed: the recursion at given prices, pausing as often as it likes.
    copies: copies there are of each piece.
    known: value of the best plan in hand, in the same units as the bound; aimed at by the step length.
    start: prices to begin with.
    steps: at most so many. patience: steps without progress before the pace is halved.
    drift: how much of the last direction is kept [share].
    pace: how much of Polyak's step to begin with [share].
    Returns an iterator of relaxed plans.
    Source: polyak-1969 for the length of a step; the direction derived, copies used less copies there are.
    """
    prices = list(start)
    best: Found | None = None
    stalled = 0
    last = [0.0] * len(copies)
    for _ in range(steps):
        now = yield from relaxed(prices)
        if best is None or now.bound < best.bound:
            stalled = stalled + 1 if best and best.bound - now.bound < best.bound // 2000 else 0
            best = now
        else:
            stalled += 1
        yield now
        if stalled >= patience:
            pace /= 2
            stalled = 0
            now = best
            if pace < 0.02:
                return
        slope = [
            0 if price <= 0 and used <= there else used - there
            for price, used, there in zip(now.prices, now.used, copies)
        ]
        slope = last = [s + drift * d for s, d in zip(slope, last)]
        square = sum(s * s for s in slope)
        if square == 0:
            return
        step = pace * max(1, now.bound - known()) / square
        prices = [max(0, int(price + step * s)) for price, s in zip(now.prices, slope)]


def without_pause(relaxed: Callable[[Sequence[int]], Found]) -> Callable[[Sequence[int]], Generator[None, None, Found]]:
    """A recursion so short that it needs no pause, in the form that `price_steps` takes."""

    def working(prices: Sequence[int]) -> Generator[None, None, Found]:
        yield from ()
        return relaxed(prices)

    return working
