"""An apron with a bib in one piece, a loop for the neck and two ties."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, refuse_unless, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length, bib, high = given.width, given.length, given.bib, given.bib_high
    refuse_unless(bib < width, "bib", "The bib is as wide as the apron, {width:length}. Write less.", width=width)
    refuse_unless(high < length, "bib_high", "The bib is as high as the apron is long, {length:length}. Write less.",
        length=length)  # fmt: skip
    refuse_unless(bib > 2 * (given.hem + given.turn), "bib", "The bib would be nothing but hem. Write more.")
    wide = given.tie_wide
    refuse_unless(2 * wide < bib and wide < length - high, "tie_wide", "Loop and ties so wide find no room at the bib "
        "or at the sides. Write less.")  # fmt: skip
    slant = (width - bib) / 2, high
    apron = work.slanted("apron", width, length, {"top left": slant, "top right": slant})
    loop = work.strap("neck loop", wide, given.neck, given.hem)
    work.hang(loop, apron.top.between(Fraction(0), wide), apron.top.between(bib - wide, bib))
    tie = work.strap("tie", wide, given.tie, given.hem, count=2)
    for side in (apron.left, apron.right):
        work.hang(tie, side.between(side.length - wide, side.length))
    work.hem(apron.side("top left"), apron.side("top right"), turn=given.turn, hem=given.hem,
        do="Hem the slanting sides: turn in {turn}, then {hem}, and stitch",
        how="They lie on the bias: press, do not pull.")  # fmt: skip
    work.hem(
        apron.top, apron.left, apron.right, apron.bottom, turn=given.turn, hem=given.hem,
        do="Hem all other sides: turn in {turn}, then {hem}; lay the loop’s ends under the hem of the bib and a tie "
        "under the upper end of each side, and stitch",
        how="Fold loop and ties outwards and stitch them once more, to and fro.",
    )  # fmt: skip
    return width, length


ARTICLE = Article(
    name="apron",
    title="Apron with a bib",
    purpose="What to cut for an apron with a bib, its neck loop and its ties.",
    fields=(
        size("width", "Width of the apron", "At the waist, finished.", "70 cm", "28 in"),
        size("length", "Length of the apron", "From the top of the bib to the foot.", "85 cm", "34 in"),
        size("bib", "Width of the bib", "At its top, finished.", "28 cm", "11 in"),
        size("bib_high", "Height of the bib", "From its top down to the waist.", "28 cm", "11 in"),
        hem_of("hem", "Hem depth", "On all sides.", "1 cm", "3/8 in"),
        hem_of("turn", "First turn", "The first fold of the raw edge.", "1 cm", "3/8 in"),
        size("neck", "Neck loop", "Its length where it is seen; it goes over a head.", "60 cm", "24 in"),
        size("tie", "Each tie", "Its length where it is seen.", "85 cm", "34 in"),
        hem_of("tie_wide", "Width of loop and ties", "Folded and stitched.", "2.5 cm", "1 in"),
    ),
    question="An apron {width} by {length}, its bib {bib} wide and {bib_high} high.",
    make=_make,
    cut=("apron", "neck loop", "tie"),
    examples=(
        Example(
            {"width": "70 cm", "length": "85 cm", "bib": "28 cm", "bib_high": "28 cm", "hem": "1 cm", "turn": "1 cm",
                "neck": "60 cm", "tie": "85 cm", "tie_wide": "2.5 cm"},
            {"apron_width": 740, "apron_length": 890, "neck_loop_width": 100, "tie_length": 870},
            "worked by hand: 70 + 4 cm, 85 + 4 cm; loop and ties folded in four, 4 × 2.5 cm; 85 + 2 × 1 cm",
        ),
    ),
    template=("apron",),
)  # fmt: skip
