"""A cushion cover with a flat border all round, its back two parts that overlap."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.cushions import (
    COVER_FIELDS,
    LIKE_THE_PAD,
    OPENING_FIELDS,
    backs_that_overlap,
    cover_size,
    sew_round,
    stitch_border,
)
from calculators.articles.measures import refuse_unless, seam_kind, seam_of, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    inner_width, inner_length = cover_size(given)
    width, length = inner_width + 2 * given.border, inner_length + 2 * given.border
    refuse_unless(given.border < given.pad_width, "border", "The border is wider than the pad. Write less.")
    front = work.rectangle("front", width, length)
    upper, lower = backs_that_overlap(work, given, width, length)
    sew_round(work, front, upper, lower, seam_kind(given))
    work.turn_out(width)
    stitch_border(work, front, given.border)
    return width, length


ARTICLE = Article(
    name="cushion-flanged",
    title="Cushion cover with a flat border",
    purpose="What to cut for a cushion cover with a flat border round the pad.",
    fields=(
        *COVER_FIELDS,
        size("border", "Border", "Flat, outside the pad, on every side.", "5 cm", "2 in"),
        *OPENING_FIELDS,
        *seam_of("plain", "plain"),
    ),
    question="A pad {pad_width} by {pad_length}, its cover {smaller} smaller, and a border of {border}.",
    make=_make,
    cut=("front", "upper back", "lower back"),
    examples=(
        Example(
            {
                **LIKE_THE_PAD,
                "border": "5 cm",
                "overlap": "12 cm",
                "hem": "2 cm",
                "turn": "1 cm",
                "seam_allowance": "1 cm",
            },
            {
                "finished_width": 500,
                "front_width": 520,
                "front_length": 620,
                "upper_back_length": 400,
                "stitching": 5_000,
            },
            "worked by hand: 40 + 2 × 5 = 50 cm, and 2 × 1 cm; 60 + 2 cm; (60 + 12) ÷ 2 = 36 cm, and 1 + 3 cm; "
            "stitched 2 × 50, 2 × (50 + 60) and 2 × (40 + 50) cm",
        ),
    ),
    about="cover",
)
