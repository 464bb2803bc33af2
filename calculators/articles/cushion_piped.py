"""A cushion cover with a zip across its back and piping in the seam all round."""

from fractions import Fraction
from math import pi
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
from calculators.articles.measures import part_of_size, refuse_unless, seam_kind, seam_of
from calculators.asking.declaration import Example, Field
from calculators.trade.articles.finishes import SEAM, STRAP, Finish
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.work import MakingUp
from calculators.values.kinds import Length


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = cover_size(given)
    kind, round_it = seam_kind(given), 2 * (width + length)
    refuse_unless(4 * given.cord_thick < min(width, length), "cord_thick", "The cord is too thick for the cover, "
        "{least:length} across. Write less.", least=min(width, length))  # fmt: skip
    front = work.rectangle("front", width, length)
    upper, lower = backs_with_zip(work, given, width, length)
    strip = work.bias_strip("bias strip", Fraction(pi) * given.cord_thick, round_it)
    work.straps.append(strip)
    work.do(
        Operation(
            "piping",
            "Join the bias strips to one, fold it round the cord, raw edges even, and stitch close to the cord; stitch "
            "the piping round the front, {allowance} from its edges, and lap its ends",
            {"allowance": kind.allowance},
            how="Snip its allowance where it turns a corner. A zip foot runs beside the cord.",
            rules=("start-seam", "fasten"),
            finishes=(
                Finish(strip.left, SEAM, kind.allowance), Finish(strip.right, SEAM, kind.allowance),
                Finish(strip.top, STRAP, given.lap), Finish(strip.bottom, STRAP, Fraction(0)),
            ),
            along=front.around,
            stitched=2 * round_it,
            rows=0,
        )
    )  # fmt: skip
    sew_round_zip(work, front, upper, lower, kind)
    work.turn_out(width - 2 * given.shut)
    work.buy("cord", length=round_it + given.lap)
    return width, length


ARTICLE = Article(
    name="cushion-piped",
    title="Cushion cover with piping",
    purpose="What to cut for a zipped cushion cover with piping round it: cover, cord and bias strip.",
    fields=(
        *COVER_FIELDS,
        Field("cord_thick", "Thickness of the cord", Length(least=Fraction(1), most=Fraction(50)), "Through it.",
            fixed={"cm": "5 mm", "in": "3/16 in"}, known_as=()),
        part_of_size("lap", "More for its join", "Cord and strip are so much longer than the way round.", "8 cm",
            "3 in"),
        *ZIP_FIELDS,
        *seam_of("plain", "plain"),
    ),
    question="A pad {pad_width} by {pad_length}, the cover {smaller} smaller, piped with cord {cord_thick} thick.",
    make=_make,
    cut=("front", "upper back", "lower back", "bias strip"),
    examples=(
        Example(
            {**LIKE_THE_PAD, "cord_thick": "5 mm", "lap": "8 cm", "from_foot": "8 cm", "shut": "3 cm",
                "zip_allowance": "2 cm", "seam_allowance": "1.5 cm"},
            {"front_width": 430, "zip": 340, "cord": 1880, "bias_strip_width": 45.70796, "bias_strip_length": 1880,
                "stitching": 6_480},
            "worked by hand: 40 + 3 cm; 2 × (40 + 50) + 8 = 188 cm; round a cord of 5 mm π × 5 = 15.708 mm, and 2 × 15 "
            "mm; stitched 40 + 2 × 34 cm, and 2 + 1 rows of 180 cm",
            tolerance=0.001,
        ),
    ),
    about="cover",
    buys=("zip", "cord"),
)  # fmt: skip
