"""A cushion cover with a zip across its back."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.cushions import COVER_FIELDS, LIKE_THE_PAD, cover_size
from calculators.articles.measures import part_of_size, refuse_unless, seam_kind, seam_of
from calculators.asking.declaration import Example, Field
from calculators.asking.house_measures import ALLOWANCE
from calculators.trade.articles.work import MakingUp, SeamKind


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = cover_size(given)
    refuse_unless(2 * given.shut < width, "shut", "Both ends together leave nothing open of {width:length}. Write "
        "less.", width=width)  # fmt: skip
    refuse_unless(given.from_foot < length, "from_foot", "The zip would lie beyond the cover, which is "
        "{length:length} high. Write less.", length=length)  # fmt: skip
    front = work.rectangle("front", width, length)
    upper = work.rectangle("upper back", width, length - given.from_foot)
    lower = work.rectangle("lower back", width, given.from_foot)
    zip_length = width - 2 * given.shut
    work.zip(
        (upper.bottom, lower.top),
        kind=SeamKind("seam at a zip", given.zip_allowance, 1, "zip"),
        length=zip_length,
    )
    work.seam(
        (front.top, upper.top),
        (front.bottom, lower.bottom),
        (front.left.between(given.from_foot, length), upper.left),
        (front.left.between(Fraction(0), given.from_foot), lower.left),
        (front.right.between(given.from_foot, length), upper.right),
        (front.right.between(Fraction(0), given.from_foot), lower.right),
        kind=seam_kind(given),
        do="Open the zip. Lay front and back right sides together and stitch round, {allowance} from the edges",
    )
    work.turn_out(zip_length)
    return width, length


ARTICLE = Article(
    name="cushion-zip",
    title="Cushion cover with a zip",
    purpose="What to cut for a cushion cover with a zip across its back, and how long the zip is.",
    fields=(
        *COVER_FIELDS,
        part_of_size("from_foot", "Zip above the foot", "From the finished lower edge up to the zip.", "8 cm", "3 in"),
        part_of_size("shut", "Sewn shut at each end", "Of the seam that the zip lies in.", "3 cm", "1 1/4 in"),
        Field("zip_allowance", "Allowance at the zip", ALLOWANCE, "At each side of the zip; its tape lies on it.",
            "zip_allowance", known_as=()),
        *seam_of("plain", "plain"),
    ),
    question="A pad {pad_width} by {pad_length}, the cover {smaller} smaller; the zip {from_foot} above the foot.",
    make=_make,
    cut=("front", "upper back", "lower back"),
    examples=(
        Example(
            {**LIKE_THE_PAD, "from_foot": "8 cm", "shut": "3 cm", "zip_allowance": "2 cm", "seam_allowance": "1.5 cm"},
            {"front_width": 430, "upper_back_length": 455, "lower_back_length": 115, "zip": 340},
            "worked by hand: 50 − 8 + 1.5 + 2 = 45.5 cm; 8 + 2 + 1.5 = 11.5 cm; a zip of 40 − 2 × 3 = 34 cm",
        ),
    ),
    about="cover",
    buys=("zip",),
)  # fmt: skip
