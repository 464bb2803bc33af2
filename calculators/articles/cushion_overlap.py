"""A cushion cover whose back is two parts that overlap."""

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
from calculators.articles.measures import seam_kind, seam_of
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = cover_size(given)
    front = work.rectangle("front", width, length)
    upper, lower = backs_that_overlap(work, given, width, length)
    sew_round(work, front, upper, lower, seam_kind(given))
    work.turn_out(width)
    return width, length


ARTICLE = Article(
    name="cushion-overlap",
    title="Cushion cover with an overlap",
    purpose="What to cut for a cushion cover whose back opens in an overlap.",
    fields=(*COVER_FIELDS, *OPENING_FIELDS, *seam_of("plain", "plain", "french")),
    question="A pad {pad_width} by {pad_length}, the cover {smaller} smaller; the backs overlap by {overlap}.",
    make=_make,
    cut=("front", "upper back", "lower back"),
    examples=(
        Example(
            {**LIKE_THE_PAD, "overlap": "12 cm", "hem": "2 cm", "turn": "1 cm", "seam_allowance": "1.5 cm"},
            {"front_width": 430, "front_length": 530, "upper_back_width": 430, "upper_back_length": 355},
            "worked by hand: 40 + 2 × 1.5 = 43 cm, 50 + 2 × 1.5 = 53 cm; (50 + 12) ÷ 2 = 31 cm, and 1.5 + 3 cm",
        ),
    ),
    about="cover",
)
