"""A cushion cover whose back is two parts that overlap and are buttoned."""

from math import ceil
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.cushions import (
    COVER_FIELDS,
    LIKE_THE_PAD,
    OPENING_FIELDS,
    backs_that_overlap,
    cover_size,
    sew_round,
)
from calculators.articles.measures import seam_kind, seam_of, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = cover_size(given)
    front = work.rectangle("front", width, length)
    upper, lower = backs_that_overlap(work, given, width, length)
    work.buttons(upper.bottom, max(1, ceil(width / given.apart) - 1))
    sew_round(work, front, upper, lower, seam_kind(given))
    work.turn_out(width)
    return width, length


ARTICLE = Article(
    name="cushion-buttons",
    title="Cushion cover with buttons",
    purpose="What to cut for a cushion cover that is buttoned at the back, and how many buttons it takes.",
    fields=(
        *COVER_FIELDS,
        *OPENING_FIELDS,
        size("apart", "Buttons at most so far apart", "From one to the next, and to the sides.", "12 cm", "4 3/4 in"),
        *seam_of("plain", "plain", "french"),
    ),
    question="A pad {pad_width} by {pad_length}, the cover {smaller} smaller; buttons at most {apart} apart.",
    make=_make,
    cut=("front", "upper back", "lower back"),
    examples=(
        Example(
            {
                **LIKE_THE_PAD,
                "overlap": "6 cm",
                "hem": "3 cm",
                "turn": "1 cm",
                "seam_allowance": "1.5 cm",
                "apart": "12 cm",
            },
            {"upper_back_length": 335, "buttons": 3},
            "worked by hand: (50 + 6) ÷ 2 = 28 cm, and 1.5 + 4 cm; 40 cm in 4 gaps of 10 cm, so 3 buttons",
        ),
    ),
    about="cover",
    buys=("buttons",),
)
