"""A tie-back: a band folded lengthwise, turned out through a gap, with a ring at either end."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import refuse_unless, seam_kind, seam_of, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    length, wide, gap = given.around, given.wide, given.gap
    refuse_unless(gap < length, "gap", "The gap is as long as the tie-back, {length:length}. Write less.",
        length=length)  # fmt: skip
    front = work.rectangle("front", length, wide)
    back = work.rectangle("back", length, wide)
    work.fold(front.bottom, back.bottom)
    shut = (length - gap) / 2
    kind = seam_kind(given)
    work.seam(
        (front.left, back.left), (front.right, back.right),
        (front.top.between(Fraction(0), shut), back.top.between(Fraction(0), shut)),
        (front.top.between(length - shut, length), back.top.between(length - shut, length)),
        kind=kind, lengths={"gap": gap},
        do="Fold the band in two, right sides together, and stitch ends and long side, {allowance}, leaving {gap} open",
    )  # fmt: skip
    work.turn_out(gap)
    work.close_gap(front.top.between(shut, length - shut), back.top.between(shut, length - shut), kind.allowance)
    work.buy("rings", 2)
    return length, wide


ARTICLE = Article(
    name="tie-back",
    title="Tie-back",
    purpose="What to cut for a tie-back that holds a curtain to the wall.",
    fields=(
        size("around", "Length", "Lay a tape round the curtain as it is to hang, from hook to hook.", "60 cm", "24 in"),
        size("wide", "Width", "Finished.", "8 cm", "3 in"),
        size("gap", "Gap to turn it by", "In the long side.", "10 cm", "4 in"),
        *seam_of("plain", "plain"),
    ),
    question="A tie-back {around} long and {wide} wide.",
    make=_make,
    cut=("front",),
    examples=(
        Example(
            {"around": "60 cm", "wide": "8 cm", "gap": "10 cm", "seam_allowance": "1.5 cm"},
            {"front_width": 630, "front_length": 190, "rings": 2, "stitching": 660},
            "worked by hand: 60 + 2 × 1.5 cm; 2 × (8 + 1.5) cm; stitched 2 × 8 + 60 − 10 cm",
        ),
    ),
    buys=("rings",),
)  # fmt: skip
