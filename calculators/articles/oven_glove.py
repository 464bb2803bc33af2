"""An oven glove for both hands: a band with a pocket at either end, wadding in all of it, its edges bound."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, refuse_unless, size
from calculators.asking.declaration import Example
from calculators.trade.articles.finishes import Glue
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.parts import FlatPart
from calculators.trade.articles.work import MakingUp

Layers = tuple[FlatPart, FlatPart, FlatPart]


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length, pocket, bound = given.width, given.length, given.pocket, given.binding_width
    refuse_unless(2 * pocket < length, "pocket", "Two such pockets leave nothing of the band, {length:length} long, "
        "between them. Write less.", length=length)  # fmt: skip
    refuse_unless(2 * bound < pocket, "pocket", "The binding at both its ends, {bound:length} each, leaves nothing of "
        "the pocket. Write more.", bound=bound)  # fmt: skip

    def layers(name: str, long: bool = False, like: str = "") -> Layers:
        return (
            work.rectangle(name, width, length if long else pocket, like=like),
            work.rectangle(f"{name} wadding", width, length if long else pocket,
                like=like and f"{like} wadding", cloth="wadding"),
            work.rectangle(f"{name} lining", width, length if long else pocket, like=like and f"{like} lining"),
        )  # fmt: skip

    band, pockets = layers("band", long=True), (layers("pocket"), layers("other pocket", like="pocket"))
    in_pockets = [each for three in pockets for each in three]
    work.tack(*pockets, do="Lay the wadding of each pocket between pocket and lining, right sides out, and tack the "
        "three together, from the middle out to all edges")  # fmt: skip
    work.bind(*(each.top for each in in_pockets), width=bound, length=2 * width,
        do="Bind one end of each pocket, all three layers at once, {width} wide: its mouth")  # fmt: skip
    work.tack(band, do="Lay the wadding of the band between band and lining in the same way, and tack them")
    front, (near, *_), (far, *_) = band[0], *pockets
    work.do(
        Operation(
            "lay on",
            "Lay a pocket at each end of the band, lining on lining, mouths towards the middle, and stitch it down at "
            "its end and both sides",
            how="Keep the row so close to the edges that the binding covers it.",
            rules=("fasten",),
            glues=(  # the far pocket lies turned half round: both mouths are their tops
                Glue(front.bottom, near.bottom), Glue(front.top, far.bottom.back),
                *(Glue(front.side(side).between(Fraction(0), pocket), near.side(side)) for side in ("left", "right")),
                *(Glue(front.side(side).between(length - pocket, length), far.side(other).back)
                    for side, other in (("left", "right"), ("right", "left"))),
            ),
        )
    )  # fmt: skip
    work.bind(
        *(edge for each in band for edge in each.around),
        *(each.side(side) for each in in_pockets for side in ("bottom", "left", "right")),
        width=bound, length=2 * (width + length),
        do="Bind the glove all round, {width} wide, through every layer",
    )  # fmt: skip
    return width, length


ARTICLE = Article(
    name="oven-glove",
    title="Oven glove for both hands",
    purpose="What to cut for a band with a pocket at either end, wadding in all of it and its edges bound.",
    fields=(
        size("width", "Finished width", "Bound; a hand lies in it with room at both sides.", "20 cm", "8 in"),
        size("length", "Finished length", "Bound, from end to end.", "80 cm", "32 in"),
        size("pocket", "Depth of a pocket", "Bound, from its mouth to the end of the band.", "20 cm", "8 in"),
        hem_of("binding_width", "Width of the binding", "As it is seen on one side.", "1 cm", "3/8 in"),
    ),
    question="An oven glove {width} by {length}, pockets {pocket} deep, bound {binding_width} wide.",
    make=_make,
    cut=("band", "band wadding", "band lining", "pocket", "pocket wadding", "pocket lining"),
    examples=(
        Example(
            {"width": "20 cm", "length": "80 cm", "pocket": "18 cm", "binding_width": "1 cm"},
            {"band_width": 200, "band_length": 800, "band_wadding_length": 800, "pocket_width": 200,
                "pocket_lining_length": 180, "binding": 2400, "stitching": 5920},
            "worked by hand: cut as it is to be; binding 2 × 20 at the mouths + 2 × (20 + 80) cm round it = 240 cm; "
            "stitched 2 × 240 + 2 × (20 + 18 + 18) = 592 cm",
        ),
    ),
    about="glove",
    buys=("binding",),
)  # fmt: skip
