"""The rows of stitches that are seen on a finished part, on the part itself."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from math import atan2, cos, hypot, pi, sin

from calculators.trade.articles.finishes import CASING, HEM
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.parts import ROUND, EdgeStretch, FlatPart

OnPart = tuple[float, float]  # [mm] from its lower left corner
_ROUND = 48  # corners that a curve is drawn with


@dataclass(frozen=True)
class SeenRow:
    """A row of stitches on a part. inset: how far inside an edge [mm]; None where it goes across."""

    places: list[OnPart]
    inset: float | None = None


def corners_of(part: FlatPart, inset: float = 0) -> list[OnPart]:
    """The corners of a part all round, or of the curve so far inside its edge [mm] where it is round; the last meets
    the first."""
    if part.is_round:
        across, up = float(part.width) / 2, float(part.length) / 2
        turns = (2 * pi * number / _ROUND for number in range(_ROUND + 1))
        return [(across + (across - inset) * sin(turn), up + (up - inset) * cos(turn)) for turn in turns]
    middle = float(part.width) / 2, float(part.length) / 2
    found = {(float(x), float(y)) for side in part.sides for x, y in part.ends_of(side)}
    ring = sorted(found, key=lambda corner: atan2(corner[1] - middle[1], corner[0] - middle[0]))
    return [*ring, ring[0]]


def rows_on(operations: Iterable[Operation], part: FlatPart) -> Iterator[SeenRow]:
    """Every row of stitches that operations leave to be seen on a part: of hems and casings along their inner fold, of
    bindings, of borders and of what is stitched across it. What is sewn by hand is sewn so as not to be seen."""
    for operation in operations:
        if operation.by_hand:
            continue
        insets = _insets(operation, part)
        for stretch, inset in insets.items():
            if stretch.side == ROUND:
                if 2 * inset < min(part.width, part.length):
                    yield SeenRow(corners_of(part, inset), inset)
            elif row := _inside(part, stretch, inset, {each.side: deep for each, deep in insets.items()}):
                yield SeenRow(row, inset)
        for across, high in operation.across:
            if across.name == part.name:
                yield SeenRow([(0.0, float(high)), (float(part.width), float(high))])


def _insets(operation: Operation, part: FlatPart) -> dict[EdgeStretch, float]:
    """Along which stretches of a part an operation leaves a row that is seen, and how far inside [mm]."""
    found = {}
    for finish in operation.finishes:
        if finish.stretch.part.name == part.name:
            found[finish.stretch] = float(finish.hem if finish.how in {HEM, CASING} else operation.inset)
    for stretch in operation.along if operation.inset else ():
        if stretch.part.name == part.name:
            found[stretch] = float(operation.inset)
    return {stretch: inset for stretch, inset in found.items() if inset}


def _inside(part: FlatPart, stretch: EdgeStretch, inset: float, insets: Mapping[str, float]) -> list[OnPart] | None:
    """The row so far inside a stretch of a straight side, as far as the rows of the sides beside it that are done at
    the same time, or the edge; None where nothing is left of it."""
    (x, y), way, inward = _line(part, stretch.side)
    start, end = sorted((float(stretch.start), float(stretch.end)))
    at = x + inset * inward[0], y + inset * inward[1]
    if not stretch.start and stretch.length == part.length_of(stretch.side):
        start, end = -1e6, 1e6  # to wherever the sides beside it stop it
    for side in part.sides:
        if side == stretch.side:
            continue
        (ox, oy), _, into = _line(part, side)
        # so far inside that side the row begins, and so much further in it is after each millimetre
        begins = (at[0] - ox) * into[0] + (at[1] - oy) * into[1] - insets.get(side, 0)
        gains = way[0] * into[0] + way[1] * into[1]
        if abs(gains) < 1e-9:
            if begins + insets.get(side, 0) < 0:  # beyond the opposite side
                return None
            continue
        if gains > 0:
            start = max(start, -begins / gains)
        else:
            end = min(end, -begins / gains)
    if end - start < 1e-6:
        return None
    return [(at[0] + along * way[0], at[1] + along * way[1]) for along in (start, end)]


def _line(part: FlatPart, side: str) -> tuple[OnPart, OnPart, OnPart]:
    """Where a straight side begins, which way it goes, and which way is inward."""
    (x1, y1), (x2, y2) = ((float(x), float(y)) for x, y in part.ends_of(side))
    length = hypot(x2 - x1, y2 - y1)
    way = (x2 - x1) / length, (y2 - y1) / length
    across = -way[1], way[0]
    to_middle = (float(part.width) / 2 - x1) * across[0] + (float(part.length) / 2 - y1) * across[1]
    return (x1, y1), way, across if to_middle > 0 else (-across[0], -across[1])
