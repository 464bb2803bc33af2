"""A sheer curtain in one piece: wide cloth laid sideways, its drop across the cloth, so that nothing is joined."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.hangings import PAIR_FIELDS, ROD_FIELDS, flat_width, head_with_tape
from calculators.articles.measures import hem_of, refuse_unless
from calculators.asking.declaration import Example, Field
from calculators.asking.house_measures import CLOTH_WIDTH
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    takes = 2 * given.lower_hem + given.heading
    refuse_unless(given.drop + takes <= given.cloth_width, "drop", "With its hems the drop is {cut:length_up}, and the "
        "cloth {cloth:length_down} wide; sideways nothing is joined. Write at most {most:length_down}, or make it of "
        "upright widths.", cut=given.drop + takes, cloth=given.cloth_width,
        most=max(given.cloth_width - takes, Fraction(0)))  # fmt: skip
    refuse_unless(given.lower_hem + given.heading < given.drop, "lower_hem", "The hems are as deep as the curtain is "
        "long, {drop:length}. Write less.", drop=given.drop)  # fmt: skip
    width = flat_width(given)
    curtain = work.sideways("curtain", width, given.drop)
    work.hem(curtain.left, curtain.right, turn=given.side_hem, hem=given.side_hem)
    work.hem(curtain.bottom, turn=given.lower_hem, hem=given.lower_hem, how="Both folds alike: the raw edge shows "
        "through and lies in the fold.")  # fmt: skip
    head_with_tape(work, (curtain.top,), given.heading, width)
    return width, given.drop


ARTICLE = Article(
    name="curtain-sheer",
    title="Sheer curtain in one piece",
    purpose="What to cut for one sheer curtain of wide cloth laid sideways, without a join.",
    fields=(
        *ROD_FIELDS,
        *PAIR_FIELDS,
        Field("cloth_width", "Cloth width", CLOTH_WIDTH, "The drop lies across it.",
            fixed={"cm": "300 cm", "in": "118 in"}, known_as=()),
        hem_of("side_hem", "Side hem", "Folded twice, as deep each time.", "1 cm", "3/8 in"),
        hem_of("lower_hem", "Lower hem", "Folded twice, as deep each time.", "5 cm", "2 in"),
        hem_of("heading", "Heading allowance", "All the cloth beyond the finished top edge.", "5 cm", "2 in"),
    ),
    question="A rod of {rod} for {curtains} curtains, a drop of {drop}, fullness {fullness}, cloth {cloth_width} wide.",
    make=_make,
    cut=("curtain",),
    examples=(
        Example(
            {"rod": "200 cm", "curtains": "1", "drop": "240 cm", "fullness": "2.5", "side_return": "0", "overlap": "0",
                "cloth_width": "300 cm", "side_hem": "1 cm", "lower_hem": "5 cm", "heading": "5 cm"},
            {"curtain_width": 5040, "curtain_length": 2550, "tape": 5000},
            "worked by hand: 200 × 2.5 = 500 cm, and 4 cm; 240 + 10 + 5 cm",
        ),
    ),
    about="curtain",
    is_let_down=True,
    buys=("tape",),
)  # fmt: skip
