"""A duvet cover with buttons at its foot."""

from fractions import Fraction
from math import ceil
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, part_of_size, refuse_unless, seam_kind, seam_of, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = given.duvet_width + given.larger, given.duvet_length + given.larger
    refuse_unless(given.opening < width, "opening", "The opening is as wide as the cover, {width:length}. Write "
        "less.", width=width)  # fmt: skip
    front = work.rectangle("front", width, length)
    back = work.rectangle("back", width, length)
    work.hem(front.bottom, back.bottom, turn=given.turn, hem=given.hem)
    buttons = max(1, ceil(given.opening / given.apart) - 1)
    shut = (width - given.opening) / 2
    work.buttons(front.bottom.between(shut, width - shut), buttons)
    work.seam(
        (front.left, back.left), (front.top, back.top), (front.right, back.right), kind=seam_kind(given),
    )  # fmt: skip
    work.close(
        (front.bottom.between(Fraction(0), shut), back.bottom.between(Fraction(0), shut)),
        (front.bottom.between(width - shut, width), back.bottom.between(width - shut, width)),
        do="Lay the hems of the foot on each other and stitch {shut} at either end, to and fro where the opening "
        "begins",
        lengths={"shut": shut},
    )
    work.turn_out(given.opening)
    return width, length


ARTICLE = Article(
    name="duvet-cover",
    title="Duvet cover",
    purpose="What to cut for a duvet cover that is buttoned at its foot.",
    fields=(
        size("duvet_width", "Width of the duvet", "Across, spread out.", "135 cm", "54 in"),
        size("duvet_length", "Length of the duvet", "From head to foot.", "200 cm", "79 in"),
        part_of_size("larger", "Larger than the duvet", "For a thick one; 0 for as large.", "3 cm", "1 1/4 in"),
        size("opening", "Opening", "At the foot, in the middle.", "75 cm", "30 in"),
        hem_of("hem", "Hem at the foot", "Deep enough for the buttons.", "4 cm", "1 1/2 in"),
        hem_of("turn", "Its first turn", "The first fold of the raw edge.", "1 cm", "3/8 in"),
        size("apart", "Buttons at most so far apart", "From one to the next.", "15 cm", "6 in"),
        *seam_of("french", "french", "felled", "plain"),
    ),
    question="A duvet {duvet_width} by {duvet_length}, the cover {larger} larger, open for {opening} at the foot.",
    make=_make,
    cut=("front", "back"),
    examples=(
        Example(
            {"duvet_width": "135 cm", "duvet_length": "200 cm", "larger": "3 cm", "opening": "75 cm", "hem": "4 cm",
                "turn": "1 cm", "apart": "15 cm", "seam_allowance": "1 cm"},
            {"front_width": 1400, "front_length": 2090, "buttons": 4, "stitching": 14_270},
            "worked by hand: 138 + 2 × 1 cm; 203 + 1 + 5 cm; 75 ÷ 15 = 5 gaps, so 4 buttons between them; "
            "stitched 2 × 138 cm, twice 2 × 203 + 138 cm, and 2 × 31.5 cm",
        ),
    ),
    about="cover",
    buys=("buttons",),
)  # fmt: skip
