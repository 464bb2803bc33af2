"""Plans for cloth with flaws or a pattern to match: strips laid one after another, stepping over what must stay free.

Where a strip begins decides which flaws it meets and whether matched pieces can start in it, so strips cannot be chosen
first
and stacked afterwards, as the solvers without flaws do. Here a beam search grows many part-made plans side by side from
the straight end; at each step only the most promising are kept. What comes out is a good plan, not a proven one.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from calculators.trade.lay_plan.solving.plan import Part

Placed = tuple[int, int, int, bool]  # x, piece, across, turned
Strip = tuple[int, int, tuple[Placed, ...]]  # from, height, pieces
Left = tuple[int, ...]  # copies of each kind still to be laid
Made = tuple[Strip, "Made"] | None  # the last strip, and those before it
State = tuple[float, int, int, Left, Made]  # score, how far along, worth so far, what is left, strips


@dataclass(frozen=True)
class Obstacles:
    """What strips must step over, in whole units.

    flaws: x from, x to, y from, y to. gap: free room that follows each piece and may lie over a flaw.
    along, across: distance and first start of the repeat, distance 0 where there is none.
    """

    flaws: tuple[tuple[int, int, int, int], ...]
    gap: int
    along: tuple[int, int] = (0, 0)
    across: tuple[int, int] = (0, 0)

    def mirrored(self) -> "Obstacles":
        """The same with width and length changing places."""
        return Obstacles(tuple((y, y2, x, x2) for x, x2, y, y2 in self.flaws), self.gap, self.across, self.along)

    def next_start(self, y: int) -> int | None:
        """The next place beyond y where something changes: a flaw ends, or the repeat starts again."""
        events = [end for _, _, _, end in self.flaws if end > y]
        distance, first = self.along
        if distance:
            events.append(y + distance - (y - first) % distance)
        return min(events, default=None)

    def matches(self, y: int) -> bool:
        """Whether a matched piece may start at y."""
        distance, first = self.along
        return not distance or (y - first) % distance == 0

    def covered(self, y: int, end: int, across: int) -> tuple[tuple[int, int], ...]:
        """Where a piece so wide from y to `end` along, its gap included, must not start across: between each first and
        second."""
        return tuple(
            sorted(
                (left - across + self.gap, right)
                for left, right, low, high in self.flaws
                if low < end - self.gap and y < high
            )
        )

    def free(self, x: int, across: int, covered: tuple[tuple[int, int], ...], matched: bool, width: int) -> int | None:
        """The first place from x on where a piece may start across, or None."""
        distance, first = self.across
        while x + across <= width:
            if matched and distance and (x - first) % distance:
                x += distance - (x - first) % distance
                continue
            hit = max((right for left, right in covered if left < x < right), default=None)
            if hit is None:
                return x
            x = hit
        return None

    def place(self, x: int, y: int, across: int, along: int, matched: bool, width: int) -> int | None:
        """The first place from x on where a piece can lie in a strip that starts at y, or None."""
        return self.free(x, across, self.covered(y, y + along, across), matched, width)


@dataclass(frozen=True)
class ItemType:
    """A size of piece, its gap included: ways it can lie as (across, along, turned); how many; what one counts."""

    ways: tuple[tuple[int, int, bool], ...]
    copies: int
    value: int
    matched: bool


class BeamAround:
    """A beam search for a plan on one cloth.

    width, length: of the cloth with one gap added [units]; length None when the whole order is to lie on the shortest.
    aimed_at: the most value, or the least length, that a plan could reach without flaws or repeat.
    """

    def __init__(self, width: int, length: int | None, kinds: list[ItemType], obstacles: Obstacles, aimed_at: int):
        self.width, self.length, self.kinds, self.obstacles = width, length, kinds, obstacles
        self.aimed_at = max(1, aimed_at)
        self.area = sum(kind.ways[0][0] * kind.ways[0][1] * kind.copies for kind in kinds)
        self.value = -1
        self.end: int | None = None
        self.strips: list[Strip] = []

    def run(self, beam_width: int) -> Iterator[None]:
        """Searches once, keeping `beam_width` part-made plans at a time; a moment to look up between two steps."""
        states: list[State] = [(0.0, 0, 0, tuple(kind.copies for kind in self.kinds), None)]
        while states:
            grown: dict[tuple[int, Left], State] = {}
            for _, y, worth, left, made in states:
                for then in self._next(y, worth, left, made):
                    key = (then[1], then[3])
                    if key not in grown or then[0] > grown[key][0]:
                        grown[key] = then
            states = sorted(grown.values(), key=lambda state: (-state[0], state[1], state[3]))[:beam_width]
            yield

    def cloth(self, gap_length: int) -> Part:
        """The best plan as a tree of cuts, on a cloth of that length [units]."""
        rows, y = [], 0
        for start, height, placed in self.strips:
            if start > y:
                rows.append(Part(0, y, self.width, start - y))
            rows.append(self._row(start, height, placed))
            y = start + height
        if y < gap_length:
            rows.append(Part(0, y, self.width, gap_length - y))
        return Part(0, 0, self.width, gap_length, "across" if rows else "", tuple(rows))

    def _row(self, y: int, height: int, placed: tuple[Placed, ...]) -> Part:
        parts, at = [], 0
        for x, kind, across, turned in placed:
            if x > at:
                parts.append(Part(at, y, x - at, height))
            parts.append(Part(x, y, across, height, piece=kind, turned=turned))
            at = x + across
        if at < self.width:
            parts.append(Part(at, y, self.width - at, height))
        return Part(0, y, self.width, height, "along", tuple(parts))

    def _next(self, y: int, worth: int, left: Left, made: Made) -> Iterator[State]:
        """The part-made plans that follow: each useful strip laid here, and stepping over to where something
        changes."""
        for lead, kind in enumerate(self.kinds):
            if not left[lead] or kind.matched and not self.obstacles.matches(y):
                continue
            for _, height, _ in kind.ways:
                if self.length is not None and y + height > self.length:
                    continue
                placed, rest, gained = self._filled(y, height, lead, left)
                if any(piece == lead for _, piece, _, _ in placed):
                    yield self._state(y + height, worth + gained, rest, ((y, height, placed), made))
        then = self.obstacles.next_start(y)
        if then is not None and (self.length is None or then < self.length):
            yield self._state(then, worth, left, made)

    def _filled(self, y: int, height: int, lead: int, left: Left) -> tuple[tuple[Placed, ...], Left, int]:
        """One strip: the leading piece as often as it goes, then the others, largest first."""
        others = sorted(
            (k for k in range(len(self.kinds)) if k != lead),
            key=lambda k: -self.kinds[k].ways[0][0] * self.kinds[k].ways[0][1],
        )
        rest, x, placed, gained = list(left), 0, [], 0
        for k in (lead, *others):
            kind = self.kinds[k]
            if kind.matched and not self.obstacles.matches(y):
                continue
            ways = sorted((way for way in kind.ways if way[1] <= height), key=lambda way: way[0])
            while rest[k] and ways:
                across, along, turned = ways[0]
                at = self.obstacles.place(x, y, across, along, kind.matched, self.width)
                if at is None:
                    break
                placed.append((at, k, across, turned))
                rest[k] -= 1
                gained += kind.value
                x = at + across
        return tuple(placed), tuple(rest), gained

    def _state(self, y: int, worth: int, left: Left, made: Made) -> State:
        if self.length is None:
            to_go = sum(kind.ways[0][0] * kind.ways[0][1] * count for kind, count in zip(self.kinds, left))
            score = (self.area - to_go) / self.area - y / self.aimed_at
            if not any(left) and (self.end is None or y < self.end):
                self.end = y
                self._keep(made)
        else:
            score = worth / self.aimed_at - y / self.length
            if worth > self.value:
                self.value = worth
                self._keep(made)
        return score, y, worth, left, made

    def _keep(self, made: Made) -> None:
        self.strips = []
        while made:
            strip, made = made
            self.strips.append(strip)
        self.strips.reverse()
