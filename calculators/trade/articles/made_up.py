"""Where the parts of an article lie once it is made up: in space, and which of them lies over which."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.articles.finishes import Glue
from calculators.trade.articles.parts import BOTTOM, LEFT, RIGHT, TOP, EdgeStretch, FlatPart
from calculators.trade.articles.work import MakingUp

Vector = tuple[Fraction, Fraction, Fraction]
INWARD = {TOP: (0, -1), BOTTOM: (0, 1), LEFT: (1, 0), RIGHT: (-1, 0)}
_ZERO, _ONE = Fraction(0), Fraction(1)


@dataclass(frozen=True)
class InSpace:
    """Where a part lies in space [mm]: its lower left corner, where its width and its length go, and which way its
    wrong side looks, which is the inside of the article."""

    part: FlatPart
    corner: Vector
    across: Vector
    up: Vector
    inside: Vector

    def at(self, x: Fraction, y: Fraction) -> Vector:
        """A place of the part, counted from its lower left corner [mm], in space.

        Source: derived, so far along its width and so far along its length.
        """
        return total(self.corner, times(x, self.across), times(y, self.up))

    def along(self, stretch: EdgeStretch, place: Fraction) -> Vector:
        """A place so far along the side that a stretch is of [mm], in space.

        Source: derived, the place on the part where the part lies.
        """
        return self.at(*self.part.place_on(stretch.side, place))

    def inward(self, side: str) -> Vector:
        """The way from a side into the part, one millimetre long [mm].

        Source: derived, straight across the part from that side.
        """
        x, y = INWARD[side]
        return total(times(Fraction(x), self.across), times(Fraction(y), self.up))


@dataclass(frozen=True)
class _Arrival:
    """How a part comes to lie where it does: the part it is joined to, both edges, and whether it is sewn on inside
    out, so that what is sewn on there later comes to lie within it."""

    here: str
    one: EdgeStretch
    other: EdgeStretch
    glue: Glue
    inset: Fraction
    within: bool


def made_up(work: MakingUp) -> dict[str, InSpace]:
    """Every part where it lies once the article is made up, from its first part on, which looks forward.

    Returns part name → its place [mm]; a part that is joined to nothing is not among them.
    Source: derived, each part turned over the line it is joined along.
    """
    first = work.parts[0]
    zero, across, up, back = ((_ZERO, _ZERO, _ZERO), (_ONE, _ZERO, _ZERO), (_ZERO, _ONE, _ZERO), (_ZERO, _ZERO, -_ONE))
    placed = {first.name: InSpace(first, zero, across, up, back)}
    for each in _arrivals(work):
        placed[each.other.part.name] = _placed(placed[each.here], each)
    return placed


def layers_from_the_back(work: MakingUp, placed: Mapping[str, InSpace]) -> list[list[str]]:
    """The parts of an article that lies flat, by name, layer by layer, the hindmost first.

    placed: where each part lies once it is made up [mm].
    Returns their names, layer by layer.
    Source: derived. Of parts that are sewn to one right sides together the last lies innermost; of those that are laid
    on, tacked or turned to its right side the last lies outermost; what is joined edge to edge lies beside.
    """
    layers = [[work.parts[0].name]]
    laid_on: dict[str, int] = {}
    for each in _arrivals(work):
        name = each.other.part.name
        at = next(number for number, layer in enumerate(layers) if each.here in layer)
        if not each.glue.angle:
            layers[at].append(name)
            continue
        forward = (placed[each.here].inside[2] > 0) != each.glue.over
        beyond = laid_on.get(each.here, 0)
        laid_on[each.here] = beyond + (not each.within)
        layers.insert(at + 1 + beyond if forward else at - beyond, [name])
    return layers


def _arrivals(work: MakingUp) -> Iterator[_Arrival]:
    joins = [(glue, True) for glue in work.folds]
    joins += [(glue, each.verb in {"seam", "zip"} and not glue.over) for each in work.operations for glue in each.glues]
    arrived, waiting = {work.parts[0].name}, [work.parts[0].name]
    while waiting:
        here = waiting.pop(0)
        for glue, within in joins:
            for one, other, inset in ((glue.one, glue.other, glue.inset), (glue.other, glue.one, -glue.inset)):
                if one.part.name == here and other.part.name not in arrived:
                    arrived.add(other.part.name)
                    waiting.append(other.part.name)
                    yield _Arrival(here, one, other, glue, inset, within)


def _placed(here: InSpace, arrival: _Arrival) -> InSpace:
    one, other = arrival.one, arrival.other
    cosine, sine = {0: (1, 0), 90: (0, 1), 180: (-1, 0)}[arrival.glue.angle]
    inward, inside = here.inward(one.side), here.inside
    goes_in = total(times(Fraction(-cosine), inward), times(Fraction(sine), inside))
    its_inside = total(times(Fraction(sine), inward), times(Fraction(cosine), inside))
    if arrival.glue.over:
        its_inside = times(-_ONE, its_inside)
    start, end = (total(here.along(one, place), times(arrival.inset, inward)) for place in (one.start, one.end))
    way = times(1 / one.length, total(end, times(-_ONE, start)))
    sign = Fraction(1 if other.end > other.start else -1)
    x, y = INWARD[other.side]
    across, up = (
        (times(sign, way), times(Fraction(y), goes_in)) if y else (times(Fraction(x), goes_in), times(sign, way))
    )
    along, high = other.part.place_on(other.side, other.start)
    corner = total(start, times(-along, across), times(-high, up))
    return InSpace(other.part, corner, across, up, its_inside)


def total(*vectors: Vector) -> Vector:
    """Vectors added up [mm].

    Source: derived, coordinate by coordinate.
    """
    x, y, z = (sum(each) for each in zip(*vectors))
    return x, y, z


def times(number: Fraction, vector: Vector) -> Vector:
    """A vector so many times as long.

    number: how many times [1]; less than 0 turns it round. vector: the one to stretch [mm].
    Returns the longer one [mm].
    Source: derived, coordinate by coordinate.
    """
    return number * vector[0], number * vector[1], number * vector[2]
