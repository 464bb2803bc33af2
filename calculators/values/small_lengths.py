"""Small lengths, such as a slip or a tolerance, in the words of the ironing board."""

from fractions import Fraction

from calculators.values.measure import MM_IN, Ruler, show_length

_TOLD = {"in": MM_IN["in"] / 16}  # [mm] the least slip that is told of, whatever the ruler: 1 mm, or 1/16 in


def is_slight(mm: Fraction | float, ruler: Ruler) -> bool:
    """Whether a difference is too small to tell of: less than half a division, or half a millimetre on a coarse ruler.

    mm: the difference [mm], either way.
    """
    told = min(ruler.step_mm, _TOLD.get(ruler.unit, Fraction(1)))
    return -told < 2 * mm < told


def show_small(mm: Fraction | float, ruler: Ruler) -> str:
    """A length of a few millimetres: told in millimetres on a metric ruler, as it is on an inch ruler.

    mm: the length [mm].
    """
    fine = ruler if ruler.unit == "in" else Ruler("mm", ruler.step_mm / MM_IN["mm"])
    return show_length(mm, fine)
