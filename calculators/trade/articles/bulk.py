"""How many layers of cloth lie over one another in an article that is made up, before anything is trimmed away."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from itertools import pairwise

from calculators.trade.articles.finishes import BOUND, CASING, HEM, SEAM, TURNED_UNDER, Finish
from calculators.trade.articles.made_up import INWARD, InSpace, made_up
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.parts import (
    BOTTOM_LEFT,
    BOTTOM_RIGHT,
    LEFT,
    TOP,
    TOP_LEFT,
    TOP_RIGHT,
    EdgeStretch,
    FlatPart,
    Place,
)
from calculators.trade.articles.work import MakingUp
from calculators.trade.sections.edges import EDGES

_OF_A_STRAP = 4  # folded in four, or a tube with its seam
_OF_PIPING = 2  # the strip folded over its cord, beside it
_PRESSED_OPEN = {"", "plain", "neatened", "zip", "piped"}

_TOUCHING = 1e-6  # [mm], more than the places of a slant lose by rounding
#: From each side into its part. From a slanting one it goes level: the strip along it is as deep across.
_INTO = {**INWARD, TOP_LEFT: (1, 0), BOTTOM_LEFT: (1, 0), TOP_RIGHT: (-1, 0), BOTTOM_RIGHT: (-1, 0)}

Interval = tuple[Fraction, Fraction] | tuple[float, float]


@dataclass(frozen=True)
class ArticleBulk:
    """Layers of cloth over one another where most of them lie. along: an edge; crossing: two edges that cross, each
    folded as if the other were not there."""

    along: int
    crossing: int


@dataclass(frozen=True)
class _Cover:
    """Cloth on a stretch of one plane. ring: its corners there, in turn [mm]; part: whose it is; is_whole: whether it
    is all of that; times: how many times it makes that part's layers; adds: how many layers it is by itself; edge:
    whether it lies along an edge."""

    ring: tuple[Place, ...]
    part: str = ""
    is_whole: bool = False
    times: int = 1
    adds: int = 0
    edge: bool = False

    @property
    def across(self) -> tuple[Fraction, Fraction]:
        return min(x for x, _ in self.ring), max(x for x, _ in self.ring)

    @property
    def up(self) -> tuple[Fraction, Fraction]:
        return min(y for _, y in self.ring), max(y for _, y in self.ring)

    @property
    def slants(self) -> bool:
        return any(x1 != x2 and y1 != y2 for (x1, y1), (x2, y2) in self._edges)

    @property
    def _edges(self) -> list[tuple[Place, Place]]:
        return list(pairwise((*self.ring, self.ring[0])))

    @cached_property
    def lines(self) -> list[tuple[float, float, float, float]]:
        """Its edges that do not stand upright: from where to where across, how high at 0 and how steep."""
        found = []
        for (x1, y1), (x2, y2) in self._edges:
            if x1 != x2:
                steep = float((y2 - y1) / (x2 - x1))
                found.append((float(min(x1, x2)), float(max(x1, x2)), float(y1) - steep * float(x1), steep))
        return found

    def up_at(self, x: float) -> tuple[float, float]:
        """From where to where it lies on an upright line [mm]; nowhere, twice the same."""
        found = [high + steep * x for start, end, high, steep in self.lines if start < x < end]
        return (min(found), max(found)) if found else (0.0, 0.0)


def bulk(work: MakingUp) -> ArticleBulk:
    """The most layers that lie over one another.

    work: the making up of the article.
    Returns them [layers].
    Source: derived: each part lies where its seams hold it, and an edge makes of its layers as many as its section
    shows. Two edges that cross multiply. What is sewn round lies in no plane with its neighbour, so that each part
    counts by itself. Heading tape, zip tape, cord and elastic are no layers.
    """
    hung = [strap.part for strap in work.hung]
    parts = [each for each in work.parts if each not in hung]
    if any(each.is_round for each in parts) or (len(parts) == 1 and parts[0].slants):
        found = [_of_one_part(work, each) for each in parts]
        return ArticleBulk(max(each.along for each in found), max(each.crossing for each in found))
    placed = made_up(work)
    planes: dict[tuple[int, Fraction], list[_Cover]] = defaultdict(list)
    for each in placed.values():
        planes[_plane(each)].append(_Cover(_ring(each, _corners(each.part)), each.part.name, is_whole=True))
    for operation in work.operations:
        for laid, cover in _covers(operation, placed):
            planes[_plane(laid)].append(cover)
    for laid, cover in _straps(work, placed):
        planes[_plane(laid)].append(cover)
    counts = [count for covers in planes.values() for count in _counts(covers)]
    along = max((layers for layers, crosses in counts if not crosses), default=1)
    return ArticleBulk(along, max((layers for layers, _ in counts), default=1))


def _of_one_part(work: MakingUp, part: FlatPart) -> ArticleBulk:
    """Round one part, which is hemmed: side by side, and where two sides meet."""
    layers = dict.fromkeys(part.sides, 1)
    for operation in work.operations:
        for finish in operation.finishes:
            if finish.stretch.part == part:
                layers[finish.stretch.side] *= _times(operation, finish, None) or 1
    caught = [edge for strap in work.hung for edge in strap.ends]
    sides = {edge.side for edge in caught}
    along = max(layers[side] + _OF_A_STRAP * (side in sides) for side in part.sides)
    if part.is_round:
        return ArticleBulk(along, along)
    turned = [*part.sides[1:], part.sides[0]]
    crossing = max(
        layers[one] * layers[other]
        + _OF_A_STRAP * sum(_reaches(edge, shared) for edge in caught for shared in _shared(part, one, other))
        for one, other in zip(part.sides, turned)
    )
    return ArticleBulk(along, max(along, crossing))


def _shared(part: FlatPart, one: str, other: str) -> set[Place]:
    """The corner where two sides of a part meet."""
    return {*part.ends_of(one)} & {*part.ends_of(other)}


def _reaches(edge: EdgeStretch, place: Place) -> bool:
    return place in (edge.part.place_on(edge.side, edge.start), edge.part.place_on(edge.side, edge.end))


def _plane(laid: InSpace) -> tuple[int, Fraction]:
    axis = next(number for number, each in enumerate(laid.inside) if each)
    return axis, laid.corner[axis]


def _covers(operation: Operation, placed: Mapping[str, InSpace]) -> Iterator[tuple[InSpace, _Cover]]:
    """What an operation adds, each with the part whose plane it lies in."""
    bound: dict[tuple[int, Fraction], EdgeStretch] = {}
    flat = {end.part.name: end is glue.other for glue in operation.glues if not glue.angle for end in (glue.one,
        glue.other)}  # fmt: skip
    for finish in operation.finishes:
        laid = placed.get(finish.stretch.part.name)
        if laid is None:
            continue
        if finish.how == BOUND:
            if bound.setdefault(_plane(laid), finish.stretch).part == finish.stretch.part:
                width = operation.lengths["width"]
                yield laid, _cover(laid, finish.stretch, width, adds=EDGES["bound"].layers - 1, edge=True)
        elif times := _times(operation, finish, flat.get(finish.stretch.part.name)):
            depth = finish.hem or finish.takes
            yield laid, _cover(laid, finish.stretch, depth, laid.part.name, times, edge=True)
    if operation.verb == "piping":
        for edge in operation.along:
            laid = placed[edge.part.name]
            yield laid, _cover(laid, edge, operation.lengths["allowance"], adds=_OF_PIPING, edge=True)


def _times(operation: Operation, finish: Finish, lies_over: bool | None) -> int:
    """How many times an edge makes the layers of its part; 0 where it leaves them as they are. lies_over: of two parts
    joined flat, whether this is the one that the allowances are pressed over; None where they are not joined flat."""
    if finish.how in (HEM, CASING):
        return 3 if finish.takes > finish.hem else 2
    if finish.how == TURNED_UNDER:
        return 2
    if finish.how != SEAM:
        return 0
    if operation.section in _PRESSED_OPEN:
        return 2
    over = EDGES[operation.section].layers - 1
    return 1 + over // 2 if lies_over is None else (1 + over) * lies_over


def _straps(work: MakingUp, placed: Mapping[str, InSpace]) -> Iterator[tuple[InSpace, _Cover]]:
    caught = {each.stretch.part.name: each.takes for each in work.finishes if each.stretch.side == TOP}
    for strap in work.hung:
        for edge in strap.ends:
            laid = placed[edge.part.name]
            yield laid, _cover(laid, edge, caught[strap.part.name], adds=_OF_A_STRAP)


def _cover(
    laid: InSpace, along: EdgeStretch, depth: Fraction, part: str = "", times: int = 1, adds: int = 0,
    edge: bool = False,
) -> _Cover:  # fmt: skip
    """A strip of a part so deep along an edge [mm], where it lies in its plane; the rest as of a cover."""
    x, y = _INTO[along.side]
    ends = [along.part.place_on(along.side, place) for place in (along.start, along.end)]
    inner = [(end[0] + x * depth, end[1] + y * depth) for end in reversed(ends)]
    return _Cover(_ring(laid, [*ends, *inner]), part, False, times, adds, edge)


def _corners(part: FlatPart) -> list[Place]:
    return list(dict.fromkeys(place for side in part.sides for place in _clockwise(part, side)))


def _clockwise(part: FlatPart, side: str) -> tuple[Place, Place]:
    one, other = part.ends_of(side)
    return (one, other) if side in (TOP, TOP_LEFT, LEFT, BOTTOM_LEFT) else (other, one)


def _ring(laid: InSpace, places: Sequence[Place]) -> tuple[Place, ...]:
    """Places of a part in the plane that it lies in."""
    axis, _ = _plane(laid)
    spots = [laid.at(*place) for place in places]
    first, second = (number for number in range(3) if number != axis)
    return tuple((spot[first], spot[second]) for spot in spots)


def _counts(covers: Sequence[_Cover]) -> Iterator[tuple[int, bool]]:
    """The layers of every field between the edges of one plane, and whether two edges of a part cross there."""
    for there in set(_fields(covers)):
        here = [each for number, each in enumerate(covers) if there >> number & 1]
        lying = {each.part for each in here if each.is_whole}
        layers: dict[str, int] = dict.fromkeys(lying, 1)
        edges: dict[str, int] = defaultdict(int)
        adds = 0
        for each in here:
            if each.part and each.part not in lying:
                continue  # a strip along an edge is no wider than its part, which a slant cuts off
            if each.part:
                layers[each.part] *= each.times
            edges[each.part] += each.edge
            adds += each.adds
        yield sum(layers.values()) + adds, max(edges.values(), default=0) > 1


def _fields(covers: Sequence[_Cover]) -> Iterator[int]:
    """Which of the covers lie on each field, a bit for each."""
    if not any(each.slants for each in covers):
        columns, rows = _lying([each.across for each in covers]), _lying([each.up for each in covers])
        yield from (column & row for column in columns for row in rows)
        return
    ends = sorted({float(x) for each in covers for x, _ in each.ring})
    for start, end in pairwise(ends):
        if end - start > _TOUCHING:
            yield from _lying([each.up_at((start + end) / 2) for each in covers])


def _lying(intervals: Sequence[Interval]) -> set[int]:
    """Which of the intervals hold what lies between one bound and the next, a bit for each."""
    bounds = sorted({each for interval in intervals for each in interval})
    return {
        sum(1 << number for number, (low, high) in enumerate(intervals) if low <= start and end <= high)
        for start, end in pairwise(bounds)
        if end - start > _TOUCHING
    }
