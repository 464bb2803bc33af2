"""A flat sheet, from the mattress and what is tucked in."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, part_of_size, size
from calculators.asking.declaration import Example, Field
from calculators.asking.house_measures import HEM_OR_NONE
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width = given.mattress_width + 2 * (given.depth + given.tuck)
    length = given.mattress_length + 2 * given.depth + given.tuck + given.at_head
    sheet = work.rectangle("sheet", width, length)
    side_turn = given.turn if given.side_hem else Fraction(0)
    work.hem(sheet.left, sheet.right, turn=side_turn, hem=given.side_hem)
    work.hem(sheet.bottom, turn=given.turn, hem=given.foot_hem)
    work.hem(sheet.top, turn=given.turn, hem=given.head_hem)
    return width, length


ARTICLE = Article(
    name="flat-sheet",
    title="Flat sheet",
    purpose="How large a flat sheet is, from the mattress and what is tucked in, and what to cut for it.",
    fields=(
        size("mattress_width", "Width of the mattress", "Across, with its topper on.", "90 cm", "36 in",
            known_as=("mattress_width",)),
        size("mattress_length", "Length of the mattress", "From head to foot.", "200 cm", "79 in",
            known_as=("mattress_length",)),
        part_of_size("depth", "Depth of the mattress", "With its topper on.", "20 cm", "8 in",
            known_as=("mattress_depth",)),
        part_of_size("tuck", "Tucked in at each side and the foot", "Beyond the depth.", "25 cm", "10 in"),
        part_of_size("at_head", "At the head", "What is tucked in, or turned back.", "25 cm", "10 in"),
        hem_of("head_hem", "Hem at the head", "Deep: it is seen.", "7.5 cm", "3 in"),
        hem_of("foot_hem", "Hem at the foot", "Shallow.", "2.5 cm", "1 in"),
        Field("side_hem", "Hems at the sides", HEM_OR_NONE, "0 where the selvedges stay as they are.",
            fixed={"cm": "1 cm", "in": "3/8 in"}, known_as=()),
        hem_of("turn", "First turn of all", "The first fold of the raw edge.", "1 cm", "3/8 in"),
    ),
    question="A mattress {mattress_width} by {mattress_length}, {depth} deep; {tuck} is tucked in.",
    make=_make,
    cut=("sheet",),
    examples=(
        Example(
            {"mattress_width": "90 cm", "mattress_length": "200 cm", "depth": "20 cm", "tuck": "25 cm",
                "at_head": "40 cm", "head_hem": "7.5 cm", "foot_hem": "2.5 cm", "side_hem": "0", "turn": "1 cm"},
            {"finished_width": 1800, "finished_length": 3050, "sheet_width": 1800, "sheet_length": 3170},
            "worked by hand: 90 + 2 × 45 = 180 cm; 200 + 2 × 20 + 25 + 40 = 305 cm, and 8.5 + 3.5 cm of hems",
        ),
    ),
    about="sheet",
)  # fmt: skip
