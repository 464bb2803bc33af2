"""What must hold of the operations of any article: each finds what nobody could do, or would do for nothing."""

from collections.abc import Iterator
from fractions import Fraction

from calculators.trade.articles.finishes import CASING, HEM
from calculators.trade.articles.made_up import made_up
from calculators.trade.articles.parts import EdgeStretch
from calculators.trade.articles.work import CLOSE_GAP, MakingUp

_COSINES = {0: 1, 90: 0, 180: -1}


def turned_through_another_opening(work: MakingUp) -> list[Fraction]:
    """Zips, and gaps that are closed at the end, that are not the opening it is turned out through [mm]."""
    zips = [each.length for each in work.to_buy if each.thing == "zip"]
    gaps = [glue.one.length for each in work.operations if each.verb == CLOSE_GAP for glue in each.glues]
    return [each for each in (*zips, *gaps) if each != work.opening]


def buttoned_where_no_hem_is(work: MakingUp) -> list[str]:
    """Edges with buttons that are not hemmed before."""
    found, hemmed = [], []
    for each in work.operations:
        hemmed += [finish.stretch for finish in each.finishes if finish.how in (HEM, CASING)]
        if each.verb == "buttons":
            found += [
                f"{edge.part.name} {edge.side}" for edge in each.along if not any(_within(edge, h) for h in hemmed)
            ]
    return found


def _within(edge: EdgeStretch, hem: EdgeStretch) -> bool:
    return (edge.part, edge.side) == (hem.part, hem.side) and hem.start <= edge.start <= edge.end <= hem.end


def idle(work: MakingUp) -> list[str]:
    """Operations at no edge and with no row of stitches, but for turning out."""
    return [
        each.verb
        for each in work.operations
        if not (each.edges or each.glues or each.across or each.stitched) and each.verb != "turn out"
    ]


def less_than_nothing(work: MakingUp) -> Iterator[str]:
    """Operations with a length, a number of rows or cloth taken up that is below 0."""
    for each in work.operations:
        numbers = (*each.lengths.values(), each.rows, each.stitched)
        if min(*numbers, *(number for finish in each.finishes for number in (finish.takes, finish.hem)), 0) < 0:
            yield each.verb


def joined_at_no_angle(work: MakingUp, is_bent: bool = False) -> list[str]:
    """What is joined neither flat, nor square, nor folded over, and what lies otherwise once it is made up. is_bent: of
    what lies in no plane only the former is looked at."""
    placed = {} if is_bent else made_up(work)
    found = []
    for glue in work.glues:
        names = [end.part.name for end in (glue.one, glue.other)]
        one, other = (placed.get(name) for name in names)
        if glue.angle not in _COSINES:
            found.append(" and ".join(names))
        elif one and other:
            facing = -1 if glue.over else 1
            cosine = facing * sum(here * there for here, there in zip(one.inside, other.inside))
            if abs(cosine - _COSINES[glue.angle]) > 1e-6:
                found.append(" and ".join(names))
    return found


def amiss(work: MakingUp, is_bent: bool = False) -> list[str]:
    """All that these checks find, in words."""
    return [
        *(f"turned out through another opening than {each} mm" for each in turned_through_another_opening(work)),
        *(f"{each} is buttoned and not hemmed" for each in buttoned_where_no_hem_is(work)),
        *(f"{each} does nothing" for each in idle(work)),
        *(f"{each} has less than nothing" for each in less_than_nothing(work)),
        *(f"{each} are joined at no such angle" for each in joined_at_no_angle(work, is_bent)),
    ]
