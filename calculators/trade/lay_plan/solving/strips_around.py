"""Which strips can be cut where flaws or a repeat must be stepped over, and what each can hold.

Every plan can be pushed towards the corner without losing a piece: a strip then starts where the one before ends, and a
piece
in it at its start, at the end of a flaw, or where the repeat starts. Across, a piece follows the one before, the edge
of a
flaw, or the repeat. So few places need to be looked at, and none that matters is left out.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from calculators.trade.lay_plan.solving.beam_around import ItemType, Obstacles
from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.plan import Part

MOST_PLACES = 3_000  # along the cloth
MOST_CONTENTS = 400  # that are kept with the same number of pieces
FEWEST_CONTENTS = 6
MOST_WORK = 250_000  # places looked at for all contents together
PAUSE_EVERY = 15  # places along the cloth
PAUSE_AFTER = 3_000  # places looked at across it

Interval = tuple[int, int]
# One way of a kind in a strip: kind, width, length, turned, and for each place along where it may start what it may not
# cover across.
StripOrientation = tuple[int, int, int, bool, tuple[tuple[Interval, ...], ...]]
Signature = tuple[StripOrientation, ...]  # strips of the same signature hold the same
Edge = tuple[int, Signature]  # where a strip ends, and what it is like


# Where a content ends across, the content before its last piece, and that piece as (number of its way, place across,
# which of its places along).
Laid = tuple[int, int, tuple[int, int, int] | None]


@dataclass(frozen=True, slots=True)
class Content:
    """What a strip can hold: packed counts, the pieces that still fit beside (packed fields), and how it was laid.

    laid: where it ends across, the content before the last piece, and the last piece as (number of its way, place
    across, which of its
    places along).
    """

    packed: int
    could_add: int
    laid: Laid


class StripsAround:
    """The strips of one cloth, from every place along it that can be reached.

    length: of the cloth with one gap added [units]. complete: whether no content of any strip was left out.
    """

    def __init__(self, width: int, length: int, kinds: list[ItemType], obstacles: Obstacles):
        self.width, self.length, self.kinds, self.obstacles = width, length, kinds, obstacles
        self.copies = [kind.copies for kind in kinds]
        self.counts = PackedCounts(self.copies)
        self.complete = True
        self.edges: dict[int, list[Edge]] = {}
        self.places: list[int] = []
        self.starts = _starts(obstacles, length)
        self._flaw_ends = sorted({flaw[3] for flaw in obstacles.flaws if flaw[3] < length})
        self._ways = [
            (number, *way)
            for number, kind in enumerate(kinds)
            for way in kind.ways
            if kind.copies and way[0] <= width and way[1] <= length
        ]
        self._contents: dict[Signature, list[Content]] = {}
        self._laid: dict[Signature, dict[int, Laid]] = {}
        self._clear: dict[int, Signature] = {}

    def spread(self) -> Iterator[None]:
        """Finds every place where a strip can start and the strips from there, pausing often."""
        waiting = {0, *self.starts}
        while waiting:
            y = min(waiting)
            waiting.discard(y)
            self.edges[y] = list(self._from(y))
            waiting |= {end for end, _ in self.edges[y] if end < self.length and end not in self.edges}
            if len(self.edges) > MOST_PLACES:
                self.complete = False
                break
            if len(self.edges) % PAUSE_EVERY == 0:
                yield
        self.places = sorted(self.edges)

    def fill(self) -> Iterator[None]:
        """Finds what each strip can hold, the most promising where that is too much, pausing often; what takes too long
        is left out."""
        signatures = dict.fromkeys(signature for y in self.places for _, signature in self.edges[y])
        layers = max((self.width // min(way[1] for way in signature) for signature in signatures), default=1)
        ways = max(map(len, signatures), default=1)
        most = min(MOST_CONTENTS, MOST_WORK // max(1, len(signatures) * layers * ways))
        if most < FEWEST_CONTENTS:
            self.complete = False
            return
        looked = 0
        for signature in signatures:
            self._contents[signature] = self._listed(signature, most)
            looked += len(self._laid[signature]) * len(signature)
            if looked > PAUSE_AFTER:
                looked = 0
                yield

    def contents(self, signature: Signature) -> list[Content]:
        """Everything that a strip of this signature can hold, as far as it was found."""
        return self._contents.get(signature, [])

    def strip(self, y: int, end: int, signature: Signature, packed: int) -> Part:
        """A strip with its pieces."""
        laid, parts, right = self._laid[signature], [], self.width
        after, packed, last = laid[packed]
        while last is not None:
            number, x, place = last
            kind, across, along, turned, _ = signature[number]
            if after < right:
                parts.append(Part(after, y, right - after, end - y))
            parts.append(self._piece(x, y, end, kind, across, along, turned, place))
            right = x
            after, packed, last = laid[packed]
        if right > 0:
            parts.append(Part(0, y, right, end - y))
        return Part(0, y, self.width, end - y, "along", tuple(reversed(parts)))

    def _piece(self, x: int, y: int, end: int, kind: int, across: int, along: int, turned: bool, place: int) -> Part:
        """A piece in its strip; what is trimmed off before it is a part of its own."""
        at = self._places_along(self.kinds[kind].matched, y, end - along)[place]
        piece = Part(x, at, across, end - at, piece=kind, turned=turned)
        return piece if at == y else Part(x, y, across, end - y, "across", (Part(x, y, across, at - y), piece))

    def _from(self, y: int) -> Iterator[Edge]:
        """The strips that start at y, those left out that are like a lower one."""
        reach = y + max((along for kind, _, along, _ in self._ways if self._may_start(kind, y, y)), default=0)
        clear = not any(low < reach and y < high for _, _, low, high in self.obstacles.flaws) and not self._matters(y)
        if clear:
            for height in sorted({along for _, _, along, _ in self._ways}):
                if y + height <= self.length:
                    yield y + height, self._clear_signature(height)
            return
        ends = {y + along for kind, _, along, _ in self._ways if self._may_start(kind, y, y)}
        for start in self.starts:
            if start <= y:
                continue
            if start >= reach:
                break
            more = {start + along for kind, _, along, _ in self._ways if self._may_start(kind, y, start)}
            reach = max([reach, *more])
            ends |= more
        last: Signature = ()
        for end in sorted(ends):
            signature = self._signature(y, end) if end <= self.length else ()
            if signature and signature != last:
                yield end, signature
                last = signature

    def _matters(self, y: int) -> bool:
        """Whether a repeat along the cloth has to be minded."""
        return bool(self.obstacles.along[0]) and any(kind.matched for kind in self.kinds)

    def _may_start(self, kind: int, y: int, start: int) -> bool:
        """Whether a piece may have to start there in a strip from y."""
        if self.kinds[kind].matched and self.obstacles.along[0]:
            return self.obstacles.matches(start)
        return start == y or start in self._flaw_ends

    def _clear_signature(self, height: int) -> Signature:
        if height not in self._clear:
            self._clear[height] = tuple((*way, ((),)) for way in self._ways if way[2] <= height)
        return self._clear[height]

    def _signature(self, y: int, end: int) -> Signature:
        found = []
        for kind, across, along, turned in self._ways:
            places = []
            for at in self._places_along(self.kinds[kind].matched, y, end - along):
                places.append(self.obstacles.covered(at, at + along, across))
                if not places[-1]:
                    break
            if places:
                found.append((kind, across, along, turned, tuple(places)))
        return tuple(found)

    def _places_along(self, matched: bool, y: int, latest: int) -> list[int]:
        """Where a piece may start along the cloth in a strip from y."""
        if latest < y:
            return []
        if matched and self.obstacles.along[0]:
            distance, first = self.obstacles.along
            return list(range(y + (first - y) % distance, latest + 1, distance))
        return [y, *(end for end in self._flaw_ends if y < end <= latest)]

    def _place_across(self, way: StripOrientation, x: int) -> tuple[int, int] | None:
        """The first place across from x on, and which place along it is at."""
        kind, across, _, _, places = way
        matched, best = self.kinds[kind].matched, None
        for number, covered in enumerate(places):
            at = self.obstacles.free(x, across, covered, matched, self.width)
            if at is not None and (best is None or at < best[0]):
                best = at, number
        return best

    def _listed(self, signature: Signature, most: int) -> list[Content]:
        units = [self.counts.unit(way[0]) for way in signature]
        fields = [self.counts.field(way[0]) for way in signature]
        areas = [way[1] * way[2] for way in signature]
        full = [copies * unit for copies, unit in ((self.copies[way[0]], unit) for way, unit in zip(signature, units))]
        found: list[Content] = []
        everything: dict[int, Laid] = {}
        layer: dict[int, Laid] = {0: (0, 0, None)}
        filled = {0: 0}
        while layer:
            longer: dict[int, Laid] = {}
            for packed, laid in layer.items():
                for number, way in enumerate(signature):
                    if packed & fields[number] == full[number]:
                        continue
                    at = self._place_across(way, laid[0])
                    if at is None:
                        continue
                    then, end = packed + units[number], at[0] + way[1]
                    if then not in longer or end < longer[then][0]:
                        longer[then] = end, packed, (number, *at)
                        filled[then] = filled[packed] + areas[number]
            if len(longer) > most:
                self.complete = False
                tallest = max(way[2] for way in signature)
                kept = sorted(longer, key=lambda packed: (longer[packed][0] * tallest - filled[packed], packed))[:most]
                longer = {packed: longer[packed] for packed in kept}
            for packed, laid in layer.items():
                could = 0
                for unit, field in zip(units, fields):
                    if packed + unit in longer:
                        could |= field
                if packed:
                    found.append(Content(packed, could, laid))
            everything.update(layer)
            layer = longer
        self._laid[signature] = everything
        return found


def _starts(obstacles: Obstacles, length: int) -> list[int]:
    """Where something changes along the cloth: the end of a flaw, and each start of the repeat."""
    found = {flaw[3] for flaw in obstacles.flaws if flaw[3] < length}
    distance, first = obstacles.along
    if distance:
        found |= set(range(first % distance, length, distance))
    return sorted(found - {0})
