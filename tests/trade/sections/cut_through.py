"""Folded cloth of a corner cut through along a line: the same section that a hem made by itself has there."""

from dataclasses import dataclass
from fractions import Fraction
from math import hypot

from calculators.trade.corners.convex import part_inside
from calculators.trade.corners.plane import Number, Point, same_place
from calculators.trade.corners.stack import Stack
from calculators.trade.sections.section import AMPLE, CrossSection, Run

SHORTEST = 1e-6  # [mm] of a cut that is more than a touch


@dataclass(frozen=True)
class Crossed:
    """A facet that the line crosses: its number in the stack, which of its sides is up, where along the line it begins
    and ends [mm], and those two places in the flat cloth."""

    number: int
    cloth: str
    right_side_up: bool
    along: tuple[Fraction, Fraction]
    flat: tuple[Point, Point]

    @property
    def length(self) -> Fraction:
        return self.along[1] - self.along[0]


def cut_through(stack: Stack, start: Point, end: Point) -> CrossSection:
    """The section along a line from outside the cloth to a place inside it, where all cloth is said to run on.

    A cloth that is crossed in several strips, as when a corner is folded over, has a number after its name from the
    second on, the one whose raw edge lies lowest being the first.
    """
    length = hypot(float(end[0] - start[0]), float(end[1] - start[1]))
    crossed = [each for number in range(len(stack.layers)) for each in _crossed(stack, number, start, end)]
    runs: dict[int, Run] = {}
    named: dict[str, int] = {}
    for strip in _strips(crossed, _exact(length)):
        cloth = strip[0][0].cloth
        named[cloth] = named.get(cloth, 0) + 1
        name = cloth if named[cloth] == 1 else f"{cloth} {named[cloth]}"
        low = Fraction(0)
        for facet, way in strip:
            begin, far = facet.along if way > 0 else facet.along[::-1]
            runs_on = far == _exact(length)
            high = AMPLE if runs_on else low + facet.length
            runs[facet.number] = Run(name, low, high, begin - way * low, way, facet.right_side_up)
            low += facet.length
    return CrossSection(tuple(runs[number] for number in sorted(runs)))


def _crossed(stack: Stack, number: int, start: Point, end: Point) -> list[Crossed]:
    facet = stack.layers[number]
    part = part_inside((start, end), facet.on_table)
    if not part:
        return []
    back = facet.lay.undone()
    begin, far = (_exact(hypot(float(x - start[0]), float(y - start[1]))) for x, y in part)
    if far - begin < SHORTEST:
        return []
    flat = back.place(part[0]), back.place(part[1])
    return [Crossed(number, facet.cloth.name, facet.right_side_up, (begin, far), flat)]


def _strips(crossed: list[Crossed], length: Fraction) -> list[list[tuple[Crossed, int]]]:
    """What hangs together in the cut, each strip from its raw edge on, with the way that it runs."""
    strips = []
    left = list(crossed)
    while left:
        raw = next((facet, end) for facet in left for end in (0, 1) if _is_raw(facet, end, crossed, length))
        strip, (facet, end) = [], raw
        while True:
            left.remove(facet)
            strip.append((facet, 1 if end == 0 else -1))
            far = facet.flat[1 - end]
            following = next(
                ((each, side) for each in left for side in (0, 1)
                 if each.cloth == facet.cloth and same_place(each.flat[side], far)),
                None,
            )  # fmt: skip
            if following is None:
                break
            facet, end = following
        strips.append(strip)
    return strips


def _is_raw(facet: Crossed, end: int, crossed: list[Crossed], length: Fraction) -> bool:
    if facet.along[end] == length:
        return False
    return not any(
        each is not facet and each.cloth == facet.cloth and same_place(place, facet.flat[end])
        for each in crossed
        for place in each.flat
    )


def _exact(length: Number) -> Fraction:
    return Fraction(round(float(length) * 1_000_000), 1_000_000)
