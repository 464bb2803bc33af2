"""Dual numbers (forward-mode automatic differentiation): exact first-order effects through any arithmetic, without a
formula written twice.

A number v with derivative s stands for v + s·e, where e is a small error; whatever is worked out from it carries the
right derivative by the rules of differentiation.
"""

from dataclasses import dataclass
from fractions import Fraction

Plain = int | float | Fraction


@dataclass(frozen=True)
class DualNumber:
    """A value, and how fast it changes with one error: its derivative [mm/mm]."""

    value: float
    derivative: float = 0.0

    def __add__(self, other):
        value, derivative = _parts(other)
        return DualNumber(self.value + value, self.derivative + derivative)

    __radd__ = __add__

    def __neg__(self):
        return DualNumber(-self.value, -self.derivative)

    def __sub__(self, other):
        return self + -other

    def __rsub__(self, other):
        return -self + other

    def __mul__(self, other):
        value, derivative = _parts(other)
        return DualNumber(self.value * value, self.derivative * value + self.value * derivative)

    __rmul__ = __mul__

    def __truediv__(self, other):
        value, derivative = _parts(other)
        return DualNumber(self.value / value, (self.derivative * value - self.value * derivative) / value**2)

    def __rtruediv__(self, other):
        return DualNumber(*_parts(other)) / self

    def __pow__(self, power: Plain):
        return DualNumber(self.value**power, power * self.value ** (power - 1) * self.derivative)

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


def _parts(number: "DualNumber | Plain") -> tuple[float, float]:
    return (number.value, number.derivative) if isinstance(number, DualNumber) else (float(number), 0.0)


def derivative_of(number: "DualNumber | Plain") -> float:
    """How fast a result changes with the error.

    number: the result, with its slope if it knows of the error.
    Returns the slope [mm/mm]; 0 for one that does not know of the error.
    Source: derived, by the rules of sums, products and quotients for derivatives (`DualNumber`).
    """
    return _parts(number)[1]
