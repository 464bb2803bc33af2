"""How fine a thread is, in every number it is sold by, and the needles that suit it."""

from collections.abc import Mapping
from fractions import Fraction

_POUND, _HANK = Fraction("453.59237"), 840 * Fraction("0.9144")  # [g], [m]
#: One thread of Ne 1 weighs so much: a hank of 840 yd a pound [tex].
_OF_ONE_HANK = 1000 * _POUND / _HANK
_STRANDS_OF_A_TICKET = 3  # a ticket number is of three strands, whatever the thread has

#: Systems in which a larger number is a thicker thread: what 1 of them is [tex].
DIRECT: Mapping[str, Fraction] = {"tex": Fraction(1), "dtex": Fraction(1, 10), "den": Fraction(1, 9)}
#: Systems in which a larger number is a finer thread: what number 1 is [tex].
INDIRECT: Mapping[str, Fraction] = {
    "nm": Fraction(1000),
    "ne": _OF_ONE_HANK,
    "ticket": Fraction(1000 * _STRANDS_OF_A_TICKET),
    "cotton": _OF_ONE_HANK * _STRANDS_OF_A_TICKET,
}

#: Needles by their metric number: the older number.
NEEDLES: Mapping[int, int] = {60: 8, 65: 9, 70: 10, 75: 11, 80: 12, 90: 14, 100: 16, 110: 18, 120: 19}
_OF_THREAD = (
    (18, (60, 75)), (25, (65, 80)), (35, (70, 90)), (45, (80, 100)), (65, (90, 110)), (105, (100, 120)),
)  # fmt: skip
_OF_CLOTH: Mapping[str, tuple[int, int]] = {"light": (65, 75), "medium": (75, 90), "heavy": (90, 100)}
CLOTHS = tuple(_OF_CLOTH)


def tex_of(number: Fraction, system: str, strands: int) -> Fraction:
    """The fineness of a whole thread.

    number: as sold [of-system]; system: a name of `DIRECT` or `INDIRECT`; strands: how many of that
    number are twisted together.
    Returns grams of 1000 m [tex].
    Source: thread-count-text; the pound and the yard are exact by nbs-1959.
    """
    return strands * (number * DIRECT[system] if system in DIRECT else INDIRECT[system] / number)


def number_of(tex: Fraction, system: str) -> Fraction:
    """A thread's number in another system.

    tex: grams of 1000 m of the whole thread [tex]; system: a name of `DIRECT` or `INDIRECT`.
    Returns the number [of-system].
    Source: thread-count-text.
    """
    return tex / DIRECT[system] if system in DIRECT else INDIRECT[system] / tex


def needles_for(tex: Fraction, cloth: str) -> tuple[int, int, bool] | None:
    """The finest and the thickest needle for a thread in a cloth, by their metric numbers.

    tex: grams of 1000 m of the thread [tex]; cloth: one of `CLOTHS`.
    Returns both, and whether they suit the cloth too; None where no needle of a household machine takes the thread.
    Source: machine-manual-needles for the cloth; for the thread common practice.
    """
    of_thread = next((needles for most, needles in _OF_THREAD if tex <= most), None)
    if of_thread is None:
        return None
    of_cloth = _OF_CLOTH[cloth]
    finest, thickest = max(of_thread[0], of_cloth[0]), min(of_thread[1], of_cloth[1])
    return (finest, thickest, True) if finest <= thickest else (*of_thread, False)
