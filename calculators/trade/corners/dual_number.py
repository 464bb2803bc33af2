"""Dual numbers (forward-mode automatic differentiation): exact first-order effects through any arithmetic, without a
formula written twice.

A number v with derivative s stands for v + s·e, where e is a small error; whatever is worked out from it carries the
right derivative by the rules of differentiation.
"""

from fractions import Fraction

Plain = float | Fraction


class DualNumber(float):
    """A number, and how fast it changes with one error: its derivative [mm/mm].

    It is compared by its value, and whatever asks for its float gets the value without the derivative.
    """

    derivative: float

    def __new__(cls, value: float, derivative: float = 0.0) -> "DualNumber":
        made = super().__new__(cls, value)
        made.derivative = derivative
        return made

    def __add__(self, other: Plain) -> "DualNumber":
        value, derivative = _parts(other)
        return DualNumber(float(self) + value, self.derivative + derivative)

    __radd__ = __add__

    def __neg__(self) -> "DualNumber":
        return DualNumber(-float(self), -self.derivative)

    def __sub__(self, other: Plain) -> "DualNumber":
        return self + -other

    def __rsub__(self, other: Plain) -> "DualNumber":
        return -self + other

    def __mul__(self, other: Plain) -> "DualNumber":
        value, derivative = _parts(other)
        return DualNumber(float(self) * value, self.derivative * value + float(self) * derivative)

    __rmul__ = __mul__

    def __truediv__(self, other: Plain) -> "DualNumber":
        value, derivative = _parts(other)
        return DualNumber(float(self) / value, (self.derivative * value - float(self) * derivative) / value**2)

    def __rtruediv__(self, other: Plain) -> "DualNumber":
        return DualNumber(*_parts(other)) / self

    def __pow__(self, power: Plain, mod: None = None) -> "DualNumber":
        return DualNumber(float(self) ** power, power * float(self) ** (power - 1) * self.derivative)

    def __abs__(self) -> "DualNumber":
        return self if self >= 0 else -self


def _parts(number: Plain) -> tuple[float, float]:
    return (float(number), number.derivative if isinstance(number, DualNumber) else 0.0)


def derivative_of(number: Plain) -> float:
    """How fast a result changes with the error.

    number: the result, with its slope if it knows of the error.
    Returns the slope [mm/mm]; 0 for one that does not know of the error.
    Source: derived, by the rules of sums, products and quotients for derivatives (`DualNumber`).
    """
    return _parts(number)[1]
