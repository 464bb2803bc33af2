"""A pot holder: two pieces of cloth with wadding between them, bound, with a loop."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, refuse_unless, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    front = work.rectangle("front", given.width, given.length)
    wadding = work.rectangle("wadding", given.width, given.length, cloth="wadding")
    back = work.rectangle("back", given.width, given.length)
    work.tack(
        (front, wadding, back),
        do="Lay the wadding between front and back and tack all layers together, the middle first",
    )
    refuse_unless(given.loop_broad < given.width, "loop_broad", "The loop is as wide as the holder, {width:length}. "
        "Write less.", width=given.width)  # fmt: skip
    loop = work.strap("loop", given.loop_broad, given.loop_seen, given.binding_width)
    work.hang(loop, *[front.top.between(Fraction(0), given.loop_broad)] * 2)
    work.bind(
        *front.around, *wadding.around, *back.around,
        width=given.binding_width, length=2 * (given.width + given.length),
        do="Bind all layers together, {width} wide, both ends of the loop under the binding at a corner",
    )  # fmt: skip
    return given.width, given.length


ARTICLE = Article(
    name="pot-holder",
    title="Pot holder",
    purpose="What to cut for a pot holder of two pieces with wadding between them, its edge bound.",
    fields=(
        size("width", "Finished width", "Bound.", "20 cm", "8 in"),
        size("length", "Finished length", "Bound.", "20 cm", "8 in"),
        hem_of("binding_width", "Width of the binding", "As it is seen on one side.", "1 cm", "3/8 in"),
        size("loop_seen", "Loop", "Its length where it is seen.", "10 cm", "4 in"),
        hem_of("loop_broad", "Width of the loop", "Folded and stitched.", "1 cm", "3/8 in"),
    ),
    question="A pot holder {width} by {length}, bound {binding_width} wide.",
    make=_make,
    cut=("front", "wadding", "back", "loop"),
    examples=(
        Example(
            {"width": "20 cm", "length": "22 cm", "binding_width": "1 cm", "loop_seen": "10 cm", "loop_broad": "1 cm"},
            {"front_width": 200, "front_length": 220, "loop_width": 40, "loop_length": 120, "binding": 840},
            "worked by hand: cut as it is to be; a loop 4 × 1 cm wide, 10 + 2 × 1 cm long; 2 × (20 + 22) cm of binding",
        ),
    ),
    buys=("binding",),
)  # fmt: skip
