"""How much value can strips reach that step over flaws or a repeat? A bound that sees them, from multipliers on the
pieces.

As in `value_bound`, a Lagrange multiplier on every copy lets quantities be ignored: the best strip between two places
along the cloth, and the best row of such strips from each place to the end, are then found at once; with the multiplier
of all copies that is a limit.
"""

from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass

from calculators.trade.lay_plan.solving.strips_around import Content, Edge, Signature, StripsAround
from calculators.trade.lay_plan.solving.subgradient import subgradient_steps

PRECISION = 1 << 24
STEPS, STEP_FACTOR = 24, 0.5
PAUSE_EVERY = 4_000  # strips and contents
# What the best row does at a place: a strip with its content, or only the next place to go on from.
Taken = tuple[Edge, Content] | int | None


@dataclass(frozen=True)
class RelaxedRow:
    """The best row of strips at given multipliers.

    bound: most value of any plan, in 1/scale units; multipliers: those it holds for; worth: value less multiplier of
    each piece.
    tail: what the cloth from a place on can be worth at these multipliers; used: copies in the best row;
    multiplier_of_all: of all copies.
    """

    bound: int
    multipliers: list[int]
    worth: list[int]
    tail: dict[int, int]
    used: list[int]
    multiplier_of_all: int


class BoundAround:
    """The bound for the strips of one cloth."""

    def __init__(self, strips: StripsAround, values: Sequence[int]):
        self.strips, self.values, self.copies = strips, list(values), strips.copies
        self.total = sum(value * copies for value, copies in zip(values, self.copies))
        self.scale = max(4, PRECISION // max(1, self.total))
        self._pairs: dict[Signature, list[tuple[Content, tuple[tuple[int, int], ...]]]] = {}

    def improving(self, known: int) -> Iterator[RelaxedRow | None]:
        """Relaxed plans at ever better multipliers, the first at those of the area alone; None where the work pauses.
        known: value of a plan in hand."""
        kinds = self.strips.kinds
        areas = [kind.ways[0][0] * kind.ways[0][1] for kind in kinds]
        dense = min(
            ((value * self.scale, area) for value, area in zip(self.values, areas)), key=lambda pair: pair[0] / pair[1]
        )
        multipliers = [value * self.scale - dense[0] * area // dense[1] for value, area in zip(self.values, areas)]
        return subgradient_steps(
            self._relaxed,
            self.copies,
            lambda: known * self.scale,
            multipliers,
            STEPS,
            patience=3,
            momentum=0.3,
            step_factor=STEP_FACTOR,
        )

    def pairs(self, signature: Signature) -> list[tuple[Content, tuple[tuple[int, int], ...]]]:
        """The contents to which nothing can be added, with their pieces as pairs (kind, count)."""
        if signature not in self._pairs:
            counts = self.strips.counts
            self._pairs[signature] = [
                (each, counts.pairs(each.packed)) for each in self.strips.contents(signature) if not each.could_add
            ]
        return self._pairs[signature]

    def _relaxed(self, multipliers: Sequence[int]) -> Generator[None, None, RelaxedRow]:
        worth = [max(1, value * self.scale - multiplier) for value, multiplier in zip(self.values, multipliers)]
        held = [max(0, value * self.scale - each) for value, each in zip(self.values, worth)]
        best: dict[Signature, tuple[int, Content | None]] = {}
        tail: dict[int, int] = {}
        taken: dict[int, Taken] = {}
        edges, starts = self.strips.edges, [*self.strips.starts]
        after, looked = None, 0
        for y in reversed(self.strips.places):
            while starts and starts[-1] > y:
                after = starts.pop()
            most = 0 if after is None else tail[after]
            how: Taken = after
            for edge in edges[y]:
                end, signature = edge
                looked += 1
                if signature not in best:
                    best[signature] = self._best(signature, worth)
                    looked += len(self._pairs[signature])
                worth_of, content = best[signature]
                if content and worth_of + tail.get(end, 0) > most:
                    most, how = worth_of + tail.get(end, 0), (edge, content)
            tail[y], taken[y] = most, how
            if looked > PAUSE_EVERY:
                looked = 0
                yield
        multiplier_of_all = sum(multiplier * copies for multiplier, copies in zip(held, self.copies))
        return RelaxedRow(tail[0] + multiplier_of_all, held, worth, tail, self._used(taken), multiplier_of_all)

    def _best(self, signature: Signature, worth: list[int]) -> tuple[int, Content | None]:
        return max(
            ((sum(worth[kind] * count for kind, count in pairs), each) for each, pairs in self.pairs(signature)),
            key=lambda found: found[0],
            default=(0, None),
        )

    def _used(self, taken: dict[int, Taken]) -> list[int]:
        used = [0] * len(self.copies)
        at: int | None = 0
        while at is not None:
            how = taken.get(at)
            if how is None or isinstance(how, int):
                at = how
                continue
            edge, content = how
            at = edge[0]
            for kind, count in self.strips.counts.pairs(content.packed):
                used[kind] += count
        return used
