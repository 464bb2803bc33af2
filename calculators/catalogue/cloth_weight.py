"""Weight of cloth: what a piece, a batch and the parcel weigh."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.values.kinds import Count, Length
from calculators.values.mass import Mass, MassPerArea
from calculators.values.phrase import say

_SIDE = Length(least=Fraction(10), most=Fraction(60_000))
_MM2_IN_M2 = 10**6


def weight(mass_per_area: Fraction, width: Fraction, length: Fraction) -> Fraction:
    """What a piece of cloth weighs.

    mass_per_area: what a square metre weighs [g/m²]. width, length: of the piece [mm].
    Returns its mass [g].
    Source: derived: mass per area × area.
    """
    return mass_per_area * width * length / _MM2_IN_M2


def _work(given: SimpleNamespace) -> Answer:
    each = weight(given.mass_per_area, given.width, given.length)
    cloth = given.how_many * each
    results = {"each": each, "cloth": cloth, "parcel": cloth + given.packing}
    spoken = "**{parcel}** in the parcel: {cloth} of cloth, {packing} of packing."
    return Answer(
        results,
        say(spoken if given.packing else "**{cloth}** of cloth.", **results, packing=given.packing),
        notes=(say("Count pieces as they are cut: what is turned into a hem weighs as well."),),
        working=(
            say(
                "{width:length} × {length:length} of {mass:mass_per_area} weigh {each:mass}; "
                "{how_many:piece weighs|pieces weigh} {cloth:mass}.",
                width=given.width, length=given.length, mass=given.mass_per_area, how_many=given.how_many,
                each=each, cloth=cloth,
            ),
        ),
    )  # fmt: skip


CALCULATOR = Calculator(
    name="cloth-weight",
    title="Weight of cloth",
    purpose="What a piece weighs, a whole batch, and the parcel it is sent in.",
    fields=(
        Field("how_many", "Pieces", Count(least=1), "How many are weighed together; 1 for a whole cloth.", fixed="24"),
        Field("width", "Width of each", _SIDE, "As cut, hems included.", fixed={"cm": "46 cm", "in": "18 in"}),
        Field("length", "Length of each", _SIDE, "As cut, hems included.", fixed={"cm": "46 cm", "in": "18 in"}),
        Field(
            "mass_per_area",
            "Weight of the cloth",
            MassPerArea(),
            "On the label, or the weight of a measured scrap divided by its area.",
            fixed={"cm": "170 g/m²", "in": "5 oz/yd²"},
        ),
        Field(
            "packing",
            "Weight of the packing",
            Mass(most=Fraction(50_000)),
            "Box, card and paper, weighed empty; 0 if there is none.",
            fixed={"cm": "150 g", "in": "5 oz"},
        ),
    ),
    question="{how_many} pieces, {width} by {length}, of cloth that weighs {mass_per_area}, in packing of {packing}.",
    results=(
        Result("each", "One piece", Mass(), "What one piece weighs."),
        Result("cloth", "All pieces", Mass(), "What the cloth of the batch weighs."),
        Result("parcel", "The parcel", Mass(), "Cloth and packing together."),
    ),
    work=_work,
    examples=(
        Example(
            {"how_many": "1", "width": "1 m", "length": "1 m", "mass_per_area": "10 oz/yd²", "packing": "0"},
            {"each": 339.0575},
            "NIST SP 811, appendix B.8, as a table of units restates it: 1 oz/yd² is 0.033 905 75 kg/m²",
            tolerance=0.00005,
        ),
        Example(
            {"how_many": "10", "width": "50 cm", "length": "50 cm", "mass_per_area": "200 g/m²", "packing": "100 g"},
            {"each": 50, "cloth": 500, "parcel": 600},
            "arithmetic: 10 × 0.25 m² × 200 g/m² = 500 g; and 100 g of packing",
        ),
    ),
)
