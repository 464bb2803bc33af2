"""Small lengths, such as a slip or a tolerance, in the words of the ironing board."""

from calculators.measure import MM_IN, Ruler, show_length


def show_small(mm, ruler: Ruler) -> str:
    """A length of a few millimetres: told in millimetres on a metric ruler, as it is on an inch ruler.

    mm: the length [mm].
    """
    fine = ruler if ruler.unit == "in" else Ruler("mm", ruler.step_mm / MM_IN["mm"])
    return show_length(mm, fine)
