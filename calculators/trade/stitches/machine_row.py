"""A row of machine stitches: where the needle goes through, how long the last ones are, and where its threads lock."""

from fractions import Fraction
from math import ceil

SHORT = 6  # stitches before a point


def needle_places(length: Fraction, stitch: Fraction, short: Fraction | None = None) -> list[Fraction]:
    """Where the needle goes through along a row, the first at its beginning, the last just at its end.

    length: of the row [mm]. stitch: one of its stitches [mm]. short: one of the last `SHORT` stitches [mm], where those
    are shortened.
    Returns the places from the beginning on [mm]; the stitch that reaches the end, or the short ones, is made to fit.
    Source: derived, a dial gives one length, and the last stitch is placed by hand at the end of the row.
    """
    last = min(short_part(short), length) if short else Fraction(0)
    whole = int((length - last) / stitch)
    places = [stitch * number for number in range(whole + 1)]
    if not short and places[-1] < length:
        places = [*(places[:-1] if len(places) > 1 and length - places[-1] < stitch / 3 else places), length]
    if short:
        count = max(ceil((length - places[-1]) / short), 1)
        step = (length - places[-1]) / count
        places += [places[-1] + step * number for number in range(1, count + 1)] if step else []
    return places


def short_part(short: Fraction) -> Fraction:
    """How far before a point the stitches are made short.

    short: one short stitch [mm].
    Returns the length of all of them [mm].
    Source: derived, so many stitches one after the other.
    """
    return SHORT * short


def stitches_in(length: Fraction, stitch: Fraction) -> int:
    """How many stitches it takes to cover a length at least.

    length: to be covered [mm]. stitch: one stitch [mm].
    Returns whole stitches.
    Source: derived, rounded up to a whole stitch.
    """
    return ceil(length / stitch)


def tension_of(lock: Fraction) -> str:
    """What a sample shows by where its two threads lock.

    lock: from 0 at the underside of the cloth to 1 at its upper side [of-thick].
    Returns ``balanced``, ``tight above`` or ``tight below``.
    Source: derived, the tighter thread lies straight and draws the other one to its side of the cloth.
    """
    if Fraction(1, 4) <= lock <= Fraction(3, 4):
        return "balanced"
    return "tight above" if lock > Fraction(1, 2) else "tight below"
