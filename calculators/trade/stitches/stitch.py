"""A stitch is one list: the places where the needle goes through, out and in by turns, in the order of sewing.

All else follows from it: the thread lies over the cloth from where it comes out to where it goes in, and under it from
there to where it comes out again. Places are told in lengths of one stitch, so that a stitch is declared once for any.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import pairwise
from math import fsum, hypot
from typing import Literal

Look = Literal["right", "wrong", "nothing", "threads"]
Real = Fraction | float


@dataclass(frozen=True)
class Band:
    """A band of what is sewn, beside the line of work. name: as it is called in the workroom, "" for what has none.

    look: its side that is seen; standing threads; or nothing, where there is no cloth. high: where it ends, away from
    the maker [stitches]; None where it runs on. Each begins where the one before it ends.
    """

    name: str
    look: Look
    high: Fraction | None = None


@dataclass(frozen=True)
class Place:
    """A place of the thread. along: in the direction of work; across: away from the maker [stitches].

    goes_through: whether the needle does; where not, the thread is only held there, in the loop of the next stitch.
    """

    along: Fraction
    across: Fraction
    goes_through: bool = True

    def moved(self, along: Fraction) -> "Place":
        """It, so much farther on [stitches]."""
        return Place(self.along + along, self.across, self.goes_through)


@dataclass(frozen=True)
class ThreadPart:
    """A stretch of thread between two places of the needle. over: whether it lies over the cloth."""

    over: bool
    places: tuple[Place, ...]


@dataclass(frozen=True)
class Stitch:
    """A kind of stitch.

    title: its name. do: how it is worked, one command without its full stop. bands: what is sewn, nearest first.
    once: the places of one stitch, the first coming out. advance: how far on the next begins [stitches].
    holds: the bands it promises to hold. below: no thread under the cloth is longer than this [stitches].
    usual: how long one stitch is, for each ruler. leftwards: whether a right-handed maker works to the left.
    begin, end: places before the first stitch and after the last.
    """

    title: str
    do: str
    bands: tuple[Band, ...]
    once: tuple[Place, ...]
    advance: Fraction
    holds: tuple[str, ...]
    below: Fraction
    usual: Mapping[str, str] = field(default_factory=lambda: {"cm": "6 mm", "in": "1/4 in"})
    leftwards: bool = True
    begin: tuple[Place, ...] = ()
    end: tuple[Place, ...] = ()

    def places(self, times: int) -> list[Place]:
        """Every place of the thread, in order, of so many stitches."""
        worked = [place.moved(self.advance * each) for each in range(times) for place in self.once]
        return [*self.begin, *worked, *(place.moved(self.advance * (times - 1)) for place in self.end)]

    def threads(self, times: int) -> list[ThreadPart]:
        """Every stretch of thread, over and under by turns, in the order of sewing."""
        places = self.places(times)
        through = [at for at, place in enumerate(places) if place.goes_through]
        return [
            ThreadPart(number % 2 == 0, tuple(places[first : last + 1]))
            for number, (first, last) in enumerate(pairwise(through))
        ]

    def thread_for_each_length(self) -> Fraction:
        """Thread of the stitch for each length of its row, laid flat.

        Returns how many times the row's length goes into it [mm/mm].
        Source: derived, from place to place of one stitch and on to the next; what it takes through the thickness of
        the cloth, its beginning and its end are left out.
        """
        around = pairwise([*self.once, self.once[0].moved(self.advance)])
        once = fsum(hypot(to.along - at.along, to.across - at.across) for at, to in around)
        return Fraction(once / float(self.advance)).limit_denominator(1_000)

    def band_at(self, across: Fraction) -> Band:
        """The band at a place across [stitches]; on a line between two of them, the farther one."""
        return next(band for band in self.bands if band.high is None or across < band.high)


def places(*told: tuple[Real, Real]) -> tuple[Place, ...]:
    """Places of the needle from pairs of along and across."""
    return tuple(Place(Fraction(str(along)), Fraction(str(across))) for along, across in told)


def held(along: Real, across: Real) -> Place:
    """A place where the thread is only held."""
    return Place(Fraction(str(along)), Fraction(str(across)), goes_through=False)


def in_words(stitch: Stitch) -> str:
    """Where the needle comes out and goes in, for who does not see it: the places with figures and the next."""
    way = "left" if stitch.leftwards else "right"
    shown = _first_or_last(stitch)
    told = "; ".join(_told(stitch, number, shown) for number in range(len(shown)))
    return f"Worked to the {way}. The needle {told}{'' if stitch.end else ', and so on'}."


def _first_or_last(stitch: Stitch) -> list[Place]:
    """What is told of a stitch: its beginning and one stitch more, or else its end."""
    if stitch.end:
        return list(stitch.end)
    through = [place for place in stitch.places(2) if place.goes_through]
    return through[: len([place for place in (*stitch.begin, *stitch.once) if place.goes_through]) + 1]


_AT = {"nothing": ("from behind the edge", "round the edge"), "threads": ("between the threads",) * 2}


def _told(stitch: Stitch, number: int, shown: list[Place]) -> str:
    place = shown[number]
    band = stitch.band_at(place.across)
    goes_in = bool(number % 2)
    of_cloth = (f"of the {band.name}", f"through the {band.name}")
    where = _AT.get(band.look, of_cloth)[goes_in]
    does = f"{number + 1} {'goes in' if goes_in else 'comes out'} {where}"
    return f"{does}{_way(place.along - shown[number - 1].along)}" if number else does


def _way(moved: Fraction) -> str:
    """How far on or back, in words."""
    if not moved:
        return ", straight across"
    far = abs(moved)
    rounded = "a little" if far < Fraction(3, 8) else "half a stitch" if far < Fraction(3, 4) else "a stitch"
    if far > Fraction(3, 2):
        rounded = f"{round(far)} stitches"
    return f", {rounded} {'on' if moved > 0 else 'back'}"
