"""Things that come out even along an edge: buttons, rings and hooks, pleats and tabs, gathers."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import floor

_NEAR = 3  # counts tried on either side of the one that the wanted space comes to


@dataclass(frozen=True)
class Spacing:
    """Equal things along an edge.

    edge: its length [mm]. width: of each thing along it, 0 for what has a middle only [mm]. from_end: from either end
    to the first thing [mm]; None for half a space.
    """

    edge: Fraction
    width: Fraction
    from_end: Fraction | None

    def space(self, count: int) -> Fraction | None:
        """From one thing to the next, where there are so many; None where there is no next one.

        count: of things. Returns the space, less than 0 where they have no room [mm].
        Source: derived: what things and ends leave, in equal parts.
        """
        if self.from_end is None:
            return self.edge / count - self.width
        if count == 1:
            return None
        return (self.edge - 2 * self.from_end - count * self.width) / (count - 1)

    def fits(self, count: int) -> bool:
        """Whether so many have room beside one another."""
        space = self.space(count)
        if space is None:
            return self.width + 2 * (self.from_end or 0) <= self.edge
        return space >= 0 if self.width else space > 0

    def begins(self, count: int) -> list[Fraction]:
        """Where each thing begins, or its middle lies, from one end; count: of things.

        Returns running distances [mm].
        Source: derived: every place is reckoned from the end, so that no error adds to the next.
        """
        space = self.space(count)
        if space is None:
            return [(self.edge - self.width) / 2]
        first = space / 2 if self.from_end is None else self.from_end
        return [first + place * (self.width + space) for place in range(count)]

    def nearest(self, space: Fraction, allowed: Sequence[int]) -> int | None:
        """How many come nearest to a wanted space; of two as near, the more.

        space: wanted [mm]; allowed: remainders by 2 that a count may leave. Returns the count, None where none fits.
        Source: derived: counts on both sides of the one that the space comes to.
        """
        room = self.edge + space - 2 * self.from_end if self.from_end is not None else self.edge
        about = floor(room / (self.width + space))
        tried = range(max(1, about - _NEAR), about + _NEAR + 1)
        fitting = [
            (abs(apart - space), -count)
            for count in tried
            if count % 2 in allowed and self.fits(count) and (apart := self.space(count)) is not None
        ]
        if fitting:
            return -min(fitting)[1]
        return 1 if 1 in allowed and self.fits(1) else None


def divided(edge: Fraction, parts: int) -> list[Fraction]:
    """Where an edge is marked to lie in equal parts.

    edge: its length [mm]; parts: how many.
    Returns running distances from one end [mm].
    Source: derived: each mark reckoned from the end.
    """
    return [edge * part / parts for part in range(1, parts)]
