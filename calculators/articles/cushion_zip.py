"""A cushion cover with a zip across its back."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.cushions import (
    COVER_FIELDS,
    LIKE_THE_PAD,
    ZIP_FIELDS,
    backs_with_zip,
    cover_size,
    sew_round_zip,
)
from calculators.articles.measures import seam_kind, seam_of
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = cover_size(given)
    front = work.rectangle("front", width, length)
    upper, lower = backs_with_zip(work, given, width, length)
    sew_round_zip(work, front, upper, lower, seam_kind(given))
    work.turn_out(width - 2 * given.shut)
    return width, length


ARTICLE = Article(
    name="cushion-zip",
    title="Cushion cover with a zip",
    purpose="What to cut for a cushion cover with a zip across its back, and how long the zip is.",
    fields=(
        *COVER_FIELDS,
        *ZIP_FIELDS,
        *seam_of("plain", "plain"),
    ),
    question="A pad {pad_width} by {pad_length}, the cover {smaller} smaller; the zip {from_foot} from the lower edge.",
    make=_make,
    cut=("front", "upper back", "lower back"),
    examples=(
        Example(
            {**LIKE_THE_PAD, "from_foot": "8 cm", "shut": "3 cm", "zip_allowance": "2 cm", "seam_allowance": "1.5 cm"},
            {"front_width": 430, "upper_back_length": 455, "lower_back_length": 115, "zip": 340,
                "stitching": 2_880},
            "worked by hand: 50 − 8 + 1.5 + 2 = 45.5 cm; 8 + 2 + 1.5 = 11.5 cm; a zip of 40 − 2 × 3 = 34 cm; "
            "stitched 40 + 2 × 34 + 180 cm",
        ),
    ),
    about="cover",
    buys=("zip",),
)  # fmt: skip
