"""A cloth for bread, its edge bound."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    cloth = work.rectangle("cloth", given.width, given.length)
    work.bind(*cloth.around, width=given.binding_width)
    return given.width, given.length


ARTICLE = Article(
    name="bread-cloth",
    title="Bread cloth with a bound edge",
    purpose="What to cut for a cloth whose edge is bound, and how much binding goes round it.",
    fields=(
        size("width", "Finished width", "Bound.", "45 cm", "18 in", known_as=("finished_width",)),
        size("length", "Finished length", "Bound.", "45 cm", "18 in", known_as=("finished_length",)),
        hem_of("binding_width", "Width of the binding", "As it is seen on one side.", "1 cm", "3/8 in"),
    ),
    question="A cloth {width} by {length}, bound {binding_width} wide.",
    make=_make,
    cut=("cloth",),
    examples=(
        Example(
            {"width": "45 cm", "length": "60 cm", "binding_width": "1 cm"},
            {"cloth_width": 450, "cloth_length": 600, "binding": 2100},
            "worked by hand: the edge is cut as it is to be, and 2 × (45 + 60) cm of binding go round it",
        ),
    ),
    buys=("binding",),
)
