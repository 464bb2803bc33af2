"""Curtains: how many widths of cloth they take, how long each is cut, and the fullness that comes of it."""

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from calculators.trade.cloth import cloth_to_start_from

HALF = Fraction(1, 2)


@dataclass(frozen=True)
class Window:
    """What the curtains of one rod or track cover: the rod itself, a return at each end, an overlap wherever two meet
    [mm].

    gathered: whether the fullness goes into returns and overlaps too, or they are added flat; both ways of counting are
    in use.
    """

    rod: Fraction
    curtains: int
    side_return: Fraction
    overlap: Fraction
    gathered: bool

    @property
    def beyond_the_rod(self) -> Fraction:
        """Returns and overlaps of all curtains together [mm].

        Source: derived, a return at each end and an overlap wherever two curtains meet.
        """
        return 2 * self.side_return + (self.curtains - 1) * self.overlap

    def flat_width(self, fullness: Fraction) -> Fraction:
        """The finished width of all curtains together, laid flat [mm].

        Source: ufgs-12-22-00 for fullness times the rod; it does not say whether returns are multiplied, so both are
        here.
        """
        if self.gathered:
            return (self.rod + self.beyond_the_rod) * fullness
        return self.rod * fullness + self.beyond_the_rod

    def fullness(self, flat_width: Fraction) -> Fraction:
        """The fullness that curtains of so much finished width give [ratio]; less than 1 where they do not cover
        the rod.

        Source: derived, `flat_width` solved for the fullness.
        """
        if self.gathered:
            return flat_width / (self.rod + self.beyond_the_rod)
        return (flat_width - self.beyond_the_rod) / self.rod


@dataclass(frozen=True)
class Hem:
    """A hem folded twice: its depth, and the first turn inside it [mm]. A depth of 0 is an edge left as it is."""

    depth: Fraction
    turn: Fraction

    @property
    def taken_up(self) -> Fraction:
        """Cloth it takes up beyond the finished edge [mm].

        Source: derived, the hem and the turn hidden in it.
        """
        return self.depth + self.turn if self.depth else Fraction(0)


@dataclass(frozen=True)
class JoinedWidths:
    """Widths of cloth joined into one curtain [mm]: how many, the last of them perhaps half a width, and what joins and
    side hems take."""

    number: Fraction
    cloth_width: Fraction
    seam_allowance: Fraction
    side: Hem

    @property
    def joins(self) -> int:
        return ceil(self.number) - 1

    @property
    def cut(self) -> Fraction:
        """Across the joined widths, before the sides are hemmed [mm].

        Source: derived, whole widths less two allowances at each join.
        """
        return self.number * self.cloth_width - 2 * self.joins * self.seam_allowance

    @property
    def finished(self) -> Fraction:
        """Across the finished curtain, laid flat [mm].

        Source: derived, what is cut less a hem at each side.
        """
        return self.cut - 2 * self.side.taken_up

    @property
    def places_of_joins(self) -> list[Fraction]:
        """Where the joins lie, from the left edge of the joined widths; a half width lies at the left [mm].

        Source: derived, each width adds its own less what the seams before it took.
        """
        first = self.number - self.joins
        return [(first + n) * self.cloth_width - (2 * n + 1) * self.seam_allowance for n in range(self.joins)]


def widths_for(
    finished: Fraction, cloth_width: Fraction, seam_allowance: Fraction, side: Hem, halves: bool
) -> JoinedWidths:
    """The fewest widths that make a curtain at least so wide.

    finished: the curtain laid flat, hemmed [mm]; cloth_width: what can be used of the cloth [mm].
    seam_allowance: on each of two joined edges [mm], less than a quarter of the width; side: the hem of each side.
    halves: whether a curtain may take half a width.
    Returns the widths joined [mm].
    Source: derived: each further width adds its own less two allowances. UFGS 12 22 00 has whole or half widths.
    """
    wanted = finished + 2 * side.taken_up - 2 * seam_allowance
    whole = max(1, ceil(wanted / (cloth_width - 2 * seam_allowance)))
    fewer = JoinedWidths(whole - HALF, cloth_width, seam_allowance, side)
    return (
        fewer
        if halves and fewer.finished >= finished
        else JoinedWidths(Fraction(whole), cloth_width, seam_allowance, side)
    )


@dataclass(frozen=True)
class Drop:
    """The length of one width: finished, heading and lower hem [mm], all as they are to be once the cloth is washed.

    change: dimensional change still to come [%]; cloth that grows is counted as if it did not. repeat: of the pattern,
    unwashed [mm]; 0 for plain cloth.
    """

    finished: Fraction
    heading: Fraction
    lower: Hem
    change: Fraction
    repeat: Fraction

    @property
    def shrinkage(self) -> Fraction:
        """The change as it is counted [%].

        Source: derived, the change where the cloth shrinks; where it grows, none is counted.
        """
        return min(self.change, Fraction(0))

    @property
    def needed(self) -> Fraction:
        """Finished drop with heading and hem, washed [mm].

        Source: derived, heading, finished drop and lower hem one below another.
        """
        return self.finished + self.heading + self.lower.taken_up

    @property
    def needed_unwashed(self) -> Fraction:
        """The same before the wash [mm].

        Source: derived, what is needed taken back through the wash by `cloth_to_start_from`.
        """
        return cloth_to_start_from(self.needed, self.shrinkage)

    @property
    def cut_unwashed(self) -> Fraction:
        """The same of unwashed cloth, up to a whole number of repeats, so that every width begins at the same place of
        the pattern [mm].

        Source: derived, the next whole number of repeats.
        """
        return ceil(self.needed_unwashed / self.repeat) * self.repeat if self.repeat else self.needed_unwashed

    @property
    def cut(self) -> Fraction:
        """What each width is cut of washed cloth [mm].

        Source: derived, what is cut unwashed, changed by the wash as in iso-5077.
        """
        return self.cut_unwashed * (1 + self.shrinkage / 100)


def cloth_for(widths: int, drop: Drop, spare_repeats: int, off_the_ends: Fraction) -> Fraction:
    """The unwashed cloth that so many widths take.

    widths: how many are cut, one after another; drop: the length of one.
    spare_repeats: repeats more, so that the pattern may begin where it is wanted; off_the_ends: cut off both ends and
    lost to their slant, of washed cloth [mm].
    Returns the length [mm].
    Source: derived: with a pattern every width but one goes up to whole repeats; the last ends where it is long enough.
    """
    return (
        (widths - 1) * drop.cut_unwashed
        + drop.needed_unwashed
        + spare_repeats * drop.repeat
        + cloth_to_start_from(off_the_ends, drop.shrinkage)
    )


def widths_from(cloth: Fraction, drop: Drop, spare_repeats: int, off_the_ends: Fraction) -> int:
    """How many widths a length of unwashed cloth gives.

    cloth: the length in hand [mm]; drop: the length of one width.
    spare_repeats: repeats more, so that the pattern may begin where it is wanted; off_the_ends: cut off both ends and
    lost to their slant, of washed cloth [mm].
    Returns a whole number, 0 where the cloth is too short for one.
    Source: derived, the other way round from `cloth_for`.
    """
    over = cloth - cloth_for(1, drop, spare_repeats, off_the_ends)
    return 0 if over < 0 else over // drop.cut_unwashed + 1


def each_curtain_of(widths: int, curtains: int, halves: bool) -> Fraction:
    """What each of several curtains gets of so many widths, all alike.

    widths: in all; curtains: how many; halves: whether a width may be parted between two.
    Returns widths a curtain [widths].
    Source: derived, rounded down to whole or half widths.
    """
    return Fraction(2 * widths // curtains, 2) if halves else Fraction(widths // curtains)


def whole_steps(length: Fraction, step: Fraction) -> Fraction:
    """A length rounded up to what a shop cuts.

    length: needed [mm]; step: the shortest length it sells by [mm].
    Returns the length bought [mm].
    Source: derived, the next whole number of steps.
    """
    return ceil(length / step) * step
