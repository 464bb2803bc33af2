"""The search for strips that step over flaws or a repeat, strip after strip from the straight end.

What is left to be cut says what was gained, so of all rows of strips that leave the same only the shortest is kept: it
can always go
on as a longer one does. Rows that cannot reach the target, by `bound_around`, are pruned. A pass whose beam width
dropped none besides is a proof.
"""

from collections.abc import Generator, Iterator
from dataclasses import dataclass, field

from calculators.trade.lay_plan.solving.bound_around import BoundAround, RelaxedRow
from calculators.trade.lay_plan.solving.plan import Part, row_of_parts
from calculators.trade.lay_plan.solving.strips_around import Signature, StripsAround

PAUSE_EVERY = 4_000  # contents looked at
BEAM_WIDTHS = (60, 600, 6_000)
MOST_GAP = 8  # part of the gap that a first target leaves open

# Strips that follow one another: where they end, the multiplier of what is left and the value so far, the row before,
# and the last strip as (start, end, its signature, packed counts).
Row = tuple[int, int, int, "Row | None", tuple[int, int, Signature, int] | None]
# A content of a strip: what it is worth at some multipliers, packed counts, what could be added, and its value.
Listed = tuple[int, int, int, int]


@dataclass
class SearchAround:
    """The best plan in strips across, around flaws and with a repeat.

    known: value of a plan in hand; limit: a bound that is known.
    value, bound: of the best plan found, -1 while none is, and no plan can be worth more.
    """

    strips: StripsAround
    values: list[int]
    known: int
    limit: int | None = None
    value: int = -1
    best: Row | None = None
    bounds: BoundAround = field(init=False)
    bound: int = field(init=False)

    def __post_init__(self) -> None:
        self.bounds = BoundAround(self.strips, self.values)
        self.bound = self.bounds.total if self.limit is None else min(self.limit, self.bounds.total)

    def run(self) -> Iterator[None]:
        """All of the search, pausing often, until the plan is proven or nothing is left to try."""
        yield from self.strips.spread()
        if not self.strips.complete:
            return
        yield from self.strips.fill()
        relaxed: RelaxedRow | None = None
        for now in self.bounds.improving(self.known):
            if now is None:
                yield
                continue
            first = relaxed is None
            if relaxed is None or now.bound < relaxed.bound:
                relaxed = now
                self._lowered(now.bound // self.bounds.scale)
            if first and not self._closed():
                yield from self._pass(now, self.bound, BEAM_WIDTHS[0])
            if self._closed():
                return
            yield
        if relaxed is None:
            return
        gap = 1 + (self.bound - self._have()) // MOST_GAP
        for beam_width in BEAM_WIDTHS:
            complete = True
            while complete and not self._closed():
                target = max(self._have() + 1, self.bound - gap + 1)
                complete = yield from self._pass(relaxed, target, beam_width)
                gap *= 2 if complete else 1

    def cloth(self, whole: bool = True) -> Part:
        """The best plan as a tree of cuts; whole: of all the cloth, else of what it reaches to."""
        strips, row = [], self.best
        while row is not None and row[4] is not None:
            strips.append(row[4])
            row = row[3]
        parts, y = [], 0
        for start, end, signature, packed in reversed(strips):
            if start > y:
                parts.append(Part(0, y, self.strips.width, start - y))
            parts.append(self.strips.strip(start, end, signature, packed))
            y = end
        return row_of_parts(0, 0, self.strips.width, self.strips.length if whole else y, "across", parts)

    def _have(self) -> int:
        return max(self.known, self.value)

    def _closed(self) -> bool:
        return self._have() >= self.bound

    def _lowered(self, bound: int) -> None:
        if self.strips.complete:
            self.bound = min(self.bound, max(bound, self._have()))

    def _pass(self, relaxed: RelaxedRow, target: int, beam_width: int) -> Generator[None, None, bool]:
        """One pass for a target; returns whether the beam width dropped nothing, so that the bound comes down."""
        need = target * self.bounds.scale
        tail, guards, clear = relaxed.tail, self.strips.counts.guards, ~self.strips.counts.guards
        everything = self.strips.counts.all
        shortest = {everything: 0}
        layer: dict[int, Row] = {everything: (0, relaxed.multiplier_of_all, 0, None, None)}
        listed: dict[Signature, list[Listed]] = {}
        complete, looked = True, 0
        while layer:
            longer: dict[int, Row] = {}
            for left, row in layer.items():
                if shortest[left] < row[0]:
                    continue
                guarded = left | guards
                for start in self._starts(row[0], need - row[1], tail):
                    for end, signature in self.strips.edges[start]:
                        looked += 2
                        least = need - row[1] - tail.get(end, 0)
                        if signature not in listed:
                            listed[signature] = self._listed(signature, relaxed)
                        for worth, packed, could_add, gain in listed[signature]:
                            looked += 1
                            if worth < least:
                                break
                            after = guarded - packed
                            if after & guards != guards:
                                continue
                            after &= clear
                            if after & could_add or shortest.get(after, end + 1) <= end:
                                continue
                            shortest[after] = end
                            longer[after] = then = (
                                end,
                                row[1] + worth,
                                row[2] + gain,
                                row,
                                (start, end, signature, packed),
                            )
                            if then[2] > self.value:
                                self.value, self.best = then[2], then
                    if looked > PAUSE_EVERY:
                        looked = 0
                        yield
                if self._closed():
                    return True
            if len(longer) > beam_width:
                complete = False
                kept = sorted(longer, key=lambda left: (-longer[left][1] - tail.get(longer[left][0], 0), left))[
                    :beam_width
                ]
                longer = {left: longer[left] for left in kept}
            layer = longer
            yield
        if complete:
            self._lowered(max(self._have(), target - 1))
        return complete and self.strips.complete

    def _starts(self, y: int, least: int, tail: dict[int, int]) -> Iterator[int]:
        """Where the next strip may start: at once, or after waste where something changes."""
        if y in tail and tail[y] >= least:
            yield y
        for start in self.strips.starts:
            if start > y:
                if tail[start] < least:
                    return
                yield start

    def _listed(self, signature: Signature, relaxed: RelaxedRow) -> list[Listed]:
        """The contents of a strip with their worth at these multipliers and their value, those worth most first."""
        counts = self.strips.counts
        found = []
        for content in self.strips.contents(signature):
            pairs = counts.pairs(content.packed)
            worth = sum(relaxed.worth[kind] * count for kind, count in pairs)
            found.append(
                (worth, content.packed, content.could_add, sum(self.values[kind] * count for kind, count in pairs))
            )
        found.sort(key=lambda each: (-each[0], each[1]))
        return found
