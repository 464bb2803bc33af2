"""A cloth with flaws or a repeat cut in two, each part then in strips of its own: what strips through the whole cloth
cannot give."""

from collections import Counter
from collections.abc import Generator, Iterator
from dataclasses import dataclass, field, replace
from itertools import islice

from calculators.trade.lay_plan.solving.beam_around import ItemType, Obstacles
from calculators.trade.lay_plan.solving.plan import Part
from calculators.trade.lay_plan.solving.search_around import SearchAround
from calculators.trade.lay_plan.solving.strips_around import StripsAround

MOST_CUTS = 48  # places that are tried for the cut in two
MOST_IN_A_ROW = 3  # pieces whose lengths together lead to such a place

Found = tuple[int, Part] | None


@dataclass
class DividedAround:
    """The best plan of one cut across and strips, across or along, in each of the two parts.

    width, length: of the cloth with one gap added [units]; known: value of a plan in hand; steps: of each search.
    value, best: of the best plan found, if it betters the one in hand.
    """

    width: int
    length: int
    kinds: list[ItemType]
    obstacles: Obstacles
    known: int
    steps: int
    value: int = field(init=False)
    best: Part | None = None

    def __post_init__(self) -> None:
        self.value = self.known

    def run(self) -> Iterator[None]:
        """Try each place for the cut, the part before it first and the part beyond it first; pausing often."""
        for cut in self._cuts():
            for upper in (False, True):
                yield from self._divided(cut, upper)

    def _divided(self, cut: int, upper: bool) -> Iterator[None]:
        """One cut; upper: whether the part beyond it takes what it will before the other does."""
        parts = [(0, cut), (cut, self.length)]
        left, value, cloth = self.kinds, 0, {}
        for start, end in reversed(parts) if upper else parts:
            found = yield from self._in_strips(start, end, left)
            if found is None:
                cloth[start] = Part(0, start, self.width, end - start)
                continue
            value += found[0]
            cloth[start] = found[1].moved(0, start)
            taken = Counter(piece for piece, _ in found[1].held())
            left = [replace(kind, copies=kind.copies - taken[number]) for number, kind in enumerate(left)]
        if value > self.value:
            rows = [part for start, _ in parts for part in _across(cloth[start])]
            self.value, self.best = value, Part(0, 0, self.width, self.length, "across", tuple(rows))

    def _in_strips(self, start: int, end: int, kinds: list[ItemType]) -> Generator[None, None, Found]:
        """The best of a part in strips across and along, with as many of each kind as are left."""
        numbers = [number for number, kind in enumerate(kinds) if kind.copies > 0]
        obstacles = self._within(start, end)
        best: Found = None
        for along in (False, True):
            width, length = (end - start, self.width) if along else (self.width, end - start)
            there = [_mirrored(kinds[number]) if along else kinds[number] for number in numbers]
            strips = StripsAround(width, length, there, obstacles.mirrored() if along else obstacles)
            search = SearchAround(strips, [kind.value for kind in there], 0)
            for _ in islice(search.run(), self.steps):
                yield None
            if search.best and (best is None or search.value > best[0]):
                cloth = _renumbered(search.cloth(), numbers)
                best = search.value, cloth.mirrored() if along else cloth
        return best

    def _within(self, start: int, end: int) -> Obstacles:
        """What is in the way between two places along the cloth, from the first of them."""
        flaws = tuple(
            (left, right, max(low, start) - start, min(high, end) - start)
            for left, right, low, high in self.obstacles.flaws
            if low < end and high > start
        )
        distance, first = self.obstacles.along
        return replace(self.obstacles, flaws=flaws, along=(distance, first - start) if distance else (0, 0))

    def _cuts(self) -> list[int]:
        """Places where pieces can end that start at the straight end, or before or behind what is in the way."""
        begins = {0, *(place for _, _, low, high in self.obstacles.flaws for place in (low, high))}
        distance, first = self.obstacles.along
        if distance:
            begins |= set(range(first, self.length, distance))
        lengths = sorted({way[1] for kind in self.kinds for way in kind.ways})
        places = set(begins)
        for _ in range(MOST_IN_A_ROW):
            places |= {place + length for place in places for length in lengths if place + length < self.length}
        return sorted(place for place in places if 0 < place < self.length)[:MOST_CUTS]


def _across(part: Part) -> tuple[Part, ...]:
    return part.parts if part.cut == "across" else (part,)


def _mirrored(kind: ItemType) -> ItemType:
    return replace(kind, ways=tuple((along, across, turned) for across, along, turned in kind.ways))


def _renumbered(part: Part, numbers: list[int]) -> Part:
    piece = None if part.piece is None else numbers[part.piece]
    return replace(part, piece=piece, parts=tuple(_renumbered(each, numbers) for each in part.parts))
