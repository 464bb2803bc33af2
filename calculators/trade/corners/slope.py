"""Numbers that carry their slope along: exact first-order effects through any arithmetic, without a formula written
twice.

A number v with slope s stands for v + s·e, where e is a small error; whatever is worked out from it carries the right
slope by the rules of differentiation.
"""

from dataclasses import dataclass
from fractions import Fraction

Plain = int | float | Fraction


@dataclass(frozen=True)
class Sloping:
    """A value, and how fast it changes with one error: its slope [mm/mm]."""

    value: float
    slope: float = 0.0

    def __add__(self, other):
        value, slope = _parts(other)
        return Sloping(self.value + value, self.slope + slope)

    __radd__ = __add__

    def __neg__(self):
        return Sloping(-self.value, -self.slope)

    def __sub__(self, other):
        return self + -other

    def __rsub__(self, other):
        return -self + other

    def __mul__(self, other):
        value, slope = _parts(other)
        return Sloping(self.value * value, self.slope * value + self.value * slope)

    __rmul__ = __mul__

    def __truediv__(self, other):
        value, slope = _parts(other)
        return Sloping(self.value / value, (self.slope * value - self.value * slope) / value**2)

    def __rtruediv__(self, other):
        return Sloping(*_parts(other)) / self

    def __pow__(self, power: Plain):
        return Sloping(self.value**power, power * self.value ** (power - 1) * self.slope)

    def __abs__(self):
        return self if self.value >= 0 else -self

    def __float__(self):
        return self.value

    def __lt__(self, other):
        return self.value < _parts(other)[0]

    def __le__(self, other):
        return self.value <= _parts(other)[0]

    def __gt__(self, other):
        return self.value > _parts(other)[0]

    def __ge__(self, other):
        return self.value >= _parts(other)[0]


def _parts(number: "Sloping | Plain") -> tuple[float, float]:
    return (number.value, number.slope) if isinstance(number, Sloping) else (float(number), 0.0)


def slope_of(number: "Sloping | Plain") -> float:
    """How fast a result changes with the error.

    number: the result, with its slope if it knows of the error.
    Returns the slope [mm/mm]; 0 for one that does not know of the error.
    Source: derived, by the rules of sums, products and quotients for derivatives (`Sloping`).
    """
    return _parts(number)[1]
