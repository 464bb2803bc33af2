"""A pillowcase with a flat border on all sides, its back two parts that overlap."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.cushions import backs_that_overlap, sew_round, stitch_border
from calculators.articles.measures import hem_of, part_of_size, seam_kind, seam_of, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = given.width + 2 * given.border, given.length + 2 * given.border
    front = work.rectangle("front", width, length)
    upper, lower = backs_that_overlap(work, given, width, length)
    sew_round(work, front, upper, lower, seam_kind(given))
    work.turn_out(width)
    stitch_border(work, front, given.border)
    return width, length


ARTICLE = Article(
    name="pillowcase-bordered",
    title="Pillowcase with a flat border",
    purpose="What to cut for a pillowcase with a flat border round the pillow.",
    fields=(
        size("width", "Width for the pillow", "Inside the border.", "50 cm", "20 in"),
        size("length", "Length for the pillow", "Inside the border.", "75 cm", "30 in"),
        size("border", "Border", "Flat, outside the pillow, on every side.", "5 cm", "2 in"),
        part_of_size("overlap", "Overlap", "How far one back lies over the other.", "20 cm", "8 in"),
        hem_of("hem", "Hem of the opening", "On both backs.", "2 cm", "3/4 in"),
        hem_of("turn", "Its first turn", "The first fold of the raw edge.", "1 cm", "3/8 in"),
        *seam_of("plain", "plain", "french"),
    ),
    question="A pillow {width} by {length} and a border of {border}; the backs overlap by {overlap}.",
    make=_make,
    cut=("front", "upper back", "lower back"),
    examples=(
        Example(
            {"width": "50 cm", "length": "70 cm", "border": "5 cm", "overlap": "20 cm", "hem": "2 cm", "turn": "1 cm",
                "seam_allowance": "1 cm"},
            {"finished_width": 600, "front_width": 620, "front_length": 820, "upper_back_length": 540,
                "stitching": 6_400},
            "worked by hand: 50 + 10 = 60 cm, and 2 cm; 80 + 2 cm; (80 + 20) ÷ 2 = 50 cm, and 1 + 3 cm; "
            "stitched 2 × 60, 2 × (60 + 80) and 2 × (50 + 70) cm",
        ),
    ),
    about="case",
)  # fmt: skip
