"""Seams: what each kind takes up, as the house method has it, and what is told of it."""

from collections.abc import Mapping
from fractions import Fraction

from calculators.asking.declaration import Field
from calculators.asking.house_measures import ALLOWANCE_OR_NONE
from calculators.asking.house_method import HouseMethod
from calculators.values.kinds import Choice
from calculators.values.measure import Ruler

SEAMS: Mapping[str, str] = {
    "plain": "plain seam",
    "felled": "felled seam",
    "french": "French seam",
    "zip": "seam at a zip",
    "selvedges": "selvedge to selvedge",
}
JOINS = ("plain", "felled", "french", "selvedges")
_MEASURES = {
    "plain": "seam_allowance",
    "felled": "felled_allowance",
    "french": "french_allowance",
    "zip": "zip_allowance",
}


def allowance_of(method: HouseMethod, ruler: Ruler, seam: str) -> str:
    """What a seam of this kind takes up at either of its edges; a seam from selvedge to selvedge takes next to
    nothing."""
    return method.measure(_MEASURES[seam], ruler) if seam in _MEASURES else "0"


def seam_fields(
    usual: str, kinds: tuple[str, ...], label: str = "Seam allowance where widths are joined"
) -> tuple[Field, Field]:
    """The two blanks of a join: which seam, and what it takes up at each of its edges.

    usual: the kind of seam that stands there first. kinds: those to choose from.
    """
    seam = Field(
        "seam",
        "Seam of a join",
        Choice(options={kind: SEAMS[kind] for kind in kinds}),
        "How two widths become one; the allowance follows.",
        fixed=usual,
        known_as=("seam",),
    )
    allowance = Field(
        "seam_allowance",
        label,
        ALLOWANCE_OR_NONE,
        "Taken up at each of the two edges, as the house does this seam; for a French seam both its rows together.",
        fixed={"cm": "1 cm", "in": "3/8 in"},
        from_method=allowance_of,
        beside=(seam,),
        known_as=("join_allowance",),
    )
    return seam, allowance


def taken_up(joins: int, allowance: Fraction) -> Fraction:
    """The cloth that joins take out of a width.

    joins: how many seams; allowance: taken up at each of the two edges of one [mm].
    Returns what all of them take [mm].
    Source: derived, two edges a seam.
    """
    return joins * 2 * allowance
