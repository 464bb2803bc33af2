"""Cloth before it is planned on: what washing does to it, and what of it can be used."""

from dataclasses import dataclass
from fractions import Fraction


def dimensional_change(before: Fraction, after: Fraction) -> Fraction:
    """How much a length of cloth changed in the wash.

    before: distance between the marks before washing [mm].
    after: the same distance after washing and drying [mm].
    Returns the change [%], negative when the cloth shrank.
    Source: ISO 5077, (after − before) ÷ before, as restated by other publications.
    """
    return 100 * (after - before) / before


def cloth_to_start_from(needed: Fraction, change: Fraction) -> Fraction:
    """Unwashed length that leaves what is needed once it has changed.

    needed: length wanted after the wash [mm].
    change: dimensional change [%], negative for shrinkage, more than −100.
    Returns the length before the wash [mm].
    Source: derived from ISO 5077: needed ÷ (1 + change/100), not needed × (1 − change/100).
    """
    return needed / (1 + change / 100)


def after_the_wash(unwashed: Fraction, change: Fraction) -> Fraction:
    """What an unwashed length becomes.

    unwashed: length before the wash [mm].
    change: dimensional change [%], negative for shrinkage.
    Returns the length after the wash [mm].
    Source: derived from ISO 5077.
    """
    return unwashed * (1 + change / 100)


@dataclass(frozen=True)
class UsableCloth:
    """The straight-edged rectangle that is left of a cloth: whole length [mm], usable length and width [mm], skew [%]."""

    whole_length: Fraction
    length: Fraction
    width: Fraction
    skew_percent: Fraction


def usable_cloth(
    layers: int,
    folded_length: Fraction,
    extra_length: Fraction,
    full_width: Fraction,
    selvedge: Fraction,
    end_loss: Fraction,
    skew: Fraction,
) -> UsableCloth:
    """What can be used of a cloth measured folded in layers.

    layers: layers lying on one another.
    folded_length: length of one layer [mm]; extra_length: what hangs over beyond the last full layer [mm].
    full_width: selvedge to selvedge, no tension [mm] (ASTM D3774); selvedge: trimmed off at each side [mm].
    end_loss: cut off each end to reach clean cloth [mm].
    skew: how far a weft thread that starts at one corner is off at the other selvedge [mm].
    Returns the usable rectangle [mm] and the skew as a share of the width [%] (formula as in GOST 14067-91: 100·d/w).
    Straightening both ends to a thread costs the skew once along the length: the two slanted ends are parallel. Derived.
    Raises ValueError when nothing is left.
    """
    whole = layers * folded_length + extra_length
    length = whole - 2 * end_loss - skew
    width = full_width - 2 * selvedge
    if length <= 0 or width <= 0:
        raise ValueError("nothing is left of the cloth")
    return UsableCloth(whole, length, width, 100 * skew / full_width)
