"""How many layers of cloth lie over one another in an article that is made up, before anything is trimmed away."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.articles.finishes import BOUND, CASING, HEM, SEAM, TURNED_UNDER, Finish
from calculators.trade.articles.made_up import InSpace, made_up
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.parts import BOTTOM, LEFT, TOP, EdgeStretch, FlatPart, Place
from calculators.trade.articles.work import MakingUp
from calculators.trade.sections.edges import EDGES

_OF_A_STRAP = 4  # folded in four, or a tube with its seam
_OF_PIPING = 2  # the strip folded over its cord, beside it
_PRESSED_OPEN = {"", "plain", "neatened", "zip", "piped"}

Interval = tuple[Fraction, Fraction]


@dataclass(frozen=True)
class ArticleBulk:
    """Layers of cloth over one another where most of them lie. along: an edge; crossing: two edges that cross, each
    folded as if the other were not there."""

    along: int
    crossing: int


@dataclass(frozen=True)
class _Cover:
    """Cloth on a level or upright stretch of one plane. part: whose it is; times: how many times it makes that part's
    layers; adds: how many layers it is by itself; edge: whether it lies along an edge."""

    across: Interval
    up: Interval
    part: str = ""
    times: int = 1
    adds: int = 0
    edge: bool = False


def bulk(work: MakingUp) -> ArticleBulk | None:
    """The most layers that lie over one another.

    work: the making up of the article.
    Returns them [layers]; None where one of several parts is round or slanted, so that edges do not lie level and
    upright.
    Source: derived: each part lies where its seams hold it, and an edge makes of its layers as many as its section
    shows. Two edges that cross multiply. Heading tape, zip tape, cord and elastic are no layers.
    """
    if any(each.is_round or each.slants for each in work.parts):
        hung = [strap.part for strap in work.hung]
        parts = [each for each in work.parts if each not in hung]
        return _of_one_part(work, parts[0]) if len(parts) == 1 else None
    placed = made_up(work)
    planes: dict[tuple[int, Fraction], list[_Cover]] = defaultdict(list)
    for each in placed.values():
        planes[_plane(each)].append(_cover(each, part=each.part.name))
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
    laid: InSpace, along: EdgeStretch | None = None, depth: Fraction = Fraction(0), part: str = "", times: int = 1,
    adds: int = 0, edge: bool = False,
) -> _Cover:  # fmt: skip
    """A part, or a strip of it so deep along an edge [mm], where it lies in its plane; the rest as of a cover."""
    x, y = (Fraction(0), laid.part.width), (Fraction(0), laid.part.length)
    if along is not None:
        stretch = min(along.start, along.end), max(along.start, along.end)
        if along.side in (TOP, BOTTOM):
            x, y = stretch, ((y[1] - depth, y[1]) if along.side == TOP else (y[0], depth))
        else:
            x, y = ((x[0], depth) if along.side == LEFT else (x[1] - depth, x[1])), stretch
    one, other = laid.at(x[0], y[0]), laid.at(x[1], y[1])
    axis, _ = _plane(laid)
    across, up = ((min(ends), max(ends)) for number, ends in enumerate(zip(one, other)) if number != axis)
    return _Cover(across, up, part, times, adds, edge)


def _counts(covers: Sequence[_Cover]) -> Iterator[tuple[int, bool]]:
    """The layers of every field between the edges of one plane, and whether two edges of a part cross there."""
    columns, rows = (_lying(covers, [each.across for each in covers]), _lying(covers, [each.up for each in covers]))
    for there in {column & row for column in columns for row in rows}:
        here = [each for number, each in enumerate(covers) if there >> number & 1]
        layers: dict[str, int] = {}
        edges: dict[str, int] = defaultdict(int)
        for each in here:
            if each.part:
                layers[each.part] = layers.get(each.part, 1) * each.times
            edges[each.part] += each.edge
        yield sum(layers.values()) + sum(each.adds for each in here), max(edges.values(), default=0) > 1


def _lying(covers: Sequence[_Cover], intervals: Sequence[Interval]) -> set[int]:
    """Which of the covers lie between one bound and the next, a bit for each."""
    bounds = sorted({each for interval in intervals for each in interval})
    return {
        sum(1 << number for number, (low, high) in enumerate(intervals) if low <= start and end <= high)
        for start, end in zip(bounds, bounds[1:])
    }
