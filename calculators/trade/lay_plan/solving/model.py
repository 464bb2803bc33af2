"""What is asked of a lay plan: a cloth, pieces, and the rules of cutting, all in whole numbers.

`width` runs across the cloth, `length` along it. A cut *across* runs from selvedge to selvedge; a cut *along* runs
parallel to
the selvedge. Solvers know only these whole numbers; what one unit stands for is settled by `whole_units`.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction
from math import gcd, lcm


@dataclass(frozen=True)
class Piece:
    """One size of piece.

    Parameters:
        width, length: size on the cloth when not turned [units].
        quantity: how many, or None for as many as fit.
        value: what one piece counts; its area when None.
        may_turn: whether it may lie turned by 90°.
        name: what the maker calls it.
    """

    width: int
    length: int
    quantity: int | None = 1
    value: int | None = None
    may_turn: bool = False
    name: str = ""

    @property
    def worth(self) -> int:
        """What one piece counts."""
        return self.width * self.length if self.value is None else self.value

    def sizes(self) -> list[tuple[int, int, bool]]:
        """The ways it can lie: (width, length, turned)."""
        if self.may_turn and self.width != self.length:
            return [(self.width, self.length, False), (self.length, self.width, True)]
        return [(self.width, self.length, False)]


@dataclass(frozen=True)
class Task:
    """One rectangle of cloth and the pieces wanted from it.

    Parameters:
        width: usable width [units].
        length: usable length [units], or None when the whole order is to be cut from the shortest length.
        pieces: the sizes wanted.
        stages: how often the direction of the cuts may follow one another (2 = strips, then pieces), None for any
        number. A last
            cut that trims a piece to size comes on top.
        first_cut: "across", "along", or "any".
    """

    width: int
    length: int | None
    pieces: tuple[Piece, ...]
    stages: int | None = 2
    first_cut: str = "across"

    @property
    def fixed_length(self) -> int:
        """Usable length of a cloth that has one [units]; raises ValueError where the shortest is looked for."""
        if self.length is None:
            raise ValueError("A cloth of the shortest length has none before it is planned.")
        return self.length

    def quantity(self, piece: int) -> int:
        """The most copies of a piece that can come from the cloth."""
        wanted = self.pieces[piece].quantity
        if self.length is None:
            if wanted is None:
                raise ValueError("A piece without a quantity needs a cloth with a length.")
            return wanted
        size = self.pieces[piece]
        fit = (self.width * self.length) // (size.width * size.length)
        return fit if wanted is None else min(wanted, fit)

    def value_of_area(self) -> int:
        """A bound on the value of any plan: the pieces that count most for their area, until the area of the cloth is
        full."""
        area, value = self.width * self.fixed_length, Fraction(0)
        for number in self._by_density():
            used = min(area, self.quantity(number) * self._area(number))
            value += Fraction(used * self.pieces[number].worth, self._area(number))
            area -= used
        return int(value)

    def multipliers_of_area(self, scale: int) -> list[int]:
        """What a copy of each piece counts beyond the same area of the last piece that still finds room in
        `value_of_area`.

        At these multipliers no plan can be worth more than that bound says. Counted in 1/scale of a unit of value.
        """
        area, density = self.width * self.fixed_length, Fraction(0)
        for number in self._by_density():
            area -= self.quantity(number) * self._area(number)
            if area < 0:
                density = Fraction(self.pieces[number].worth, self._area(number))
                break
        return [max(0, int((piece.worth - density * self._area(n)) * scale)) for n, piece in enumerate(self.pieces)]

    def _by_density(self) -> list[int]:
        """The pieces, those that count most for their area first."""
        return sorted(range(len(self.pieces)), key=lambda n: -Fraction(self.pieces[n].worth, self._area(n)))

    def _area(self, number: int) -> int:
        return self.pieces[number].width * self.pieces[number].length

    def mirrored(self) -> "Task":
        """The same task with width and length changing places (for cuts along the cloth first)."""
        other = {"across": "along", "along": "across"}
        return Task(
            width=self.fixed_length,
            length=self.width,
            pieces=tuple(replace(p, width=p.length, length=p.width, value=p.worth) for p in self.pieces),
            stages=self.stages,
            first_cut=other.get(self.first_cut, self.first_cut),
        )


def whole_units(lengths: Iterable[Fraction | int]) -> Fraction:
    """The coarsest unit in which all these lengths are whole numbers.

    lengths: the lengths, exact [mm].
    Returns the unit [mm]; 1 mm when there is nothing to measure.
    Source: derived, the greatest common divisor of fractions over one denominator.
    """
    numerator, denominator = 0, 1
    for length in lengths:
        length = Fraction(length)
        if length == 0:
            continue
        shared = lcm(denominator, length.denominator)
        numerator = gcd(numerator * (shared // denominator), length.numerator * (shared // length.denominator))
        denominator = shared
    return Fraction(numerator, denominator) if numerator else Fraction(1)
