"""Binding: how wide and how long its strip is, and the cloth it is cut from, straight or on the bias."""

from fractions import Fraction
from math import ceil, floor, sqrt

_ROOT = sqrt(2)
_HAIR = 1e-9  # of a strip: so much that a float's last digit decides over no whole strip


def strip_width(width: Fraction, seam: Fraction, thickness: Fraction, double: bool) -> Fraction:
    """How wide a strip is cut.

    width: of the finished binding, seen on one side [mm]; seam: from its edge [mm]; thickness: added for the thickness
    of what is bound [mm]. double: whether the strip is folded in half before it is stitched on.
    Returns the width to cut [mm].
    Source: derived: a single strip has front, back and a seam allowance at either edge, a double one both twice but for
    its seam, where two edges lie together.
    """
    return (4 * width if double else 2 * width) + 2 * seam + thickness


def straight_strips(length: Fraction, cloth: Fraction, join: Fraction) -> int:
    """How many strips cut straight across a cloth are as long as is needed when they are joined.

    length: needed [mm]; cloth: its usable width [mm]; join: what one join takes out of the length [mm].
    Returns whole strips.
    Source: derived: one join fewer than there are strips.
    Raises ValueError where a join takes as much as a strip is long.
    """
    if join >= cloth:
        raise ValueError("a join takes as much as a strip is long")
    return max(1, ceil((length - join) / (cloth - join)))


def slanting_strips(
    length: Fraction, strip: Fraction, cloth: Fraction, allowance: Fraction
) -> tuple[int, Fraction] | None:
    """The fewest whole strips on the true bias that lie side by side across a cloth, and the length to cut of it.

    length: needed [mm]; strip: its cut width [mm]; cloth: its usable width [mm]; allowance: of the joins [mm].
    Returns strips and the length of cloth [mm]; None where they do not all lie side by side.
    Source: derived: a strip from one cut end of the cloth to the other is √2 times as long as the cloth and takes √2
    times its own width across; a join along the grain takes 2√2 times its allowance.
    """
    across = float(strip) * _ROOT
    for count in range(1, floor(float(cloth) / across) + 1):
        high = (float(length) / _ROOT + (count - 1) * 2 * float(allowance)) / count
        if high + count * across <= float(cloth):
            return count, Fraction(high).limit_denominator(10**6)
    return None


def spiral(width: Fraction, length: Fraction, strip: Fraction, allowance: Fraction) -> tuple[int, float]:
    """The strip that one piece of cloth gives, cut round and round on the true bias.

    width, length: of the piece [mm]; strip: its cut width [mm]; allowance: of the two seams [mm].
    Returns whole rows, and what they come to [mm].
    Source: derived: what the seams leave is a parallelogram whose bias edges are √2 times its shorter side long and
    its longer side ÷ √2 apart; a row narrower than the strip is left over.
    """
    shorter, longer = (max(0.0, float(each - 2 * allowance)) for each in sorted((width, length)))
    rows = floor(longer / (_ROOT * float(strip)) + _HAIR)
    return rows, rows * shorter * _ROOT


def by_area(width: Fraction, length: Fraction, strip: Fraction, allowance: Fraction) -> Fraction:
    """The same as books reckon it, where every thread of the cloth goes into the strip.

    width, length: of the piece [mm]; strip: its cut width [mm]; allowance: of the two seams [mm].
    Returns the length of strip [mm].
    Source: derived: the seams take their allowance off all four sides; bias-square-page has the sum.
    """
    return max(Fraction(0), width - 2 * allowance) * max(Fraction(0), length - 2 * allowance) / strip


def square_for(length: Fraction, strip: Fraction, allowance: Fraction) -> tuple[int, Fraction]:
    """The smallest square that gives a strip as long as is needed, cut round and round.

    length: needed [mm]; strip: its cut width [mm]; allowance: of the two seams [mm].
    Returns whole rows, and the side of the square [mm].
    Source: derived: as for `spiral`, the smallest side over all numbers of rows.
    """
    near = max(1, floor(sqrt(float(length) / float(strip) / 2)))
    rows, side = min(
        ((rows, max(rows * _ROOT * float(strip), float(length) / (rows * _ROOT))) for rows in (near, near + 1)),
        key=lambda each: each[1],
    )
    return rows, Fraction(side).limit_denominator(10**6) + 2 * allowance


def square_by_area(length: Fraction, strip: Fraction, allowance: Fraction) -> float:
    """The side of that square as books reckon it.

    length: needed [mm]; strip: its cut width [mm]; allowance: of the two seams [mm].
    Returns the side [mm].
    Source: derived: the root of length times width, and the allowance at either side; bias-square-page has the sum.
    """
    return sqrt(length * strip) + 2 * float(allowance)
