"""A valance: a short curtain gathered on a rod by a casing, with a frill above it."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, part_of_size, refuse_unless, size
from calculators.articles.widths import CLOTH_FIELDS, usable_width
from calculators.asking.declaration import Example, Field
from calculators.trade.articles.work import MakingUp
from calculators.values.kinds import Number
from calculators.values.phrase import say


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    top = given.frill + given.casing
    refuse_unless(top + given.lower_hem < given.drop, "drop", "Frill, casing and hem are as deep as the valance. Write "
        "more than {least:length_down}.", least=top + given.lower_hem)  # fmt: skip
    width = (given.rod + 2 * given.side_return) * given.fullness
    cut, cloth = width + 4 * given.side_hem, usable_width(given)
    valance = (work.sideways if cut > cloth else work.rectangle)("valance", width, given.drop)
    work.hem(valance.left, valance.right, turn=given.side_hem, hem=given.side_hem)
    work.hem(valance.bottom, turn=given.turn, hem=given.lower_hem)
    work.hem(
        valance.top, turn=given.turn, hem=top, casing=True, lengths={"frill": given.frill}, rows=2,
        do="Fold the top down for frill and casing: turn in {turn}, then {hem}; stitch along the inner fold, and again "
        "{frill} below the top",
        how="The rod goes in between the two rows.",
    )  # fmt: skip
    if cut > cloth:
        work.notes.append(
            say(
                "It is cut {cut:length_up} wide and your cloth gives {cloth:length_down} across: cut it along the "
                "selvedge, or join widths first.",
                cut=cut,
                cloth=cloth,
            )
        )
    return width, given.drop


ARTICLE = Article(
    name="valance",
    title="Valance",
    purpose="What to cut for a valance that is gathered on a rod, with a frill above it.",
    fields=(
        size("rod", "Rod", "Its front, from end to end.", "120 cm", "48 in"),
        part_of_size("side_return", "Return at each end", "From the front of the rod to the wall.", "10 cm", "4 in"),
        Field("fullness", "Fullness", Number(least=Fraction(1), most=Fraction(5), sample="2.5", places=2),
            "Flat width ÷ width it covers.", fixed="2", known_as=()),
        size("drop", "Finished drop", "From the top of the frill to the foot.", "40 cm", "16 in"),
        part_of_size("frill", "Frill above the rod", "0 for none.", "3 cm", "1 1/4 in"),
        hem_of("casing", "Casing", "Half the rod’s girth, and a little more to slide.", "4 cm", "1 1/2 in"),
        hem_of("side_hem", "Side hem", "Folded twice, as deep each time.", "1 cm", "3/8 in"),
        hem_of("lower_hem", "Lower hem", "At the foot.", "4 cm", "1 1/2 in"),
        hem_of("turn", "First turn of foot and casing", "The first fold of the raw edge.", "1 cm", "3/8 in"),
        *CLOTH_FIELDS,
    ),
    question="A rod of {rod}, a drop of {drop}, fullness {fullness}.",
    make=_make,
    cut=("valance",),
    examples=(
        Example(
            {"rod": "120 cm", "side_return": "10 cm", "fullness": "2", "drop": "40 cm", "frill": "3 cm",
                "casing": "4 cm", "side_hem": "1 cm", "lower_hem": "4 cm", "turn": "1 cm"},
            {"valance_width": 2840, "valance_length": 530, "stitching": 9_200},
            "worked by hand: (120 + 20) × 2 + 4 cm; 40 + (3 + 4 + 1) + (4 + 1) cm; stitched 2 × 40 + 3 × 280 cm",
        ),
    ),
)  # fmt: skip
