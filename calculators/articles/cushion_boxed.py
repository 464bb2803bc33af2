"""A boxed cushion cover: top, base, and a strip as high as the foam, with a zip at its back."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import part_of_size, refuse_unless, seam_kind, seam_of, size
from calculators.asking.declaration import Example, Field
from calculators.asking.house_measures import ALLOWANCE
from calculators.trade.articles.operation import SeamKind
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length, high = given.width, given.length, given.high
    refuse_unless(2 * given.shut < width, "shut", "Both ends together leave nothing open of {width:length}. Write "
        "less.", width=width)  # fmt: skip
    top = work.rectangle("top", width, length)
    base = work.rectangle("base", width, length)
    front = work.rectangle("front strip", width, high)
    left = work.rectangle("left strip", length, high)
    right = work.rectangle("right strip", length, high)
    upper = work.rectangle("upper zip strip", width, high / 2)
    lower = work.rectangle("lower zip strip", width, high / 2)
    work.fold(front.left, left.right, 90)
    work.fold(front.right, right.left, 90)
    opening = width - 2 * given.shut
    work.zip((upper.bottom, lower.top), kind=SeamKind("seam at a zip", given.zip_allowance, 1, "zip"), length=opening)
    work.seam(
        (left.left.between(high / 2, high), upper.right),
        (left.left.between(Fraction(0), high / 2), lower.right),
        (right.right.between(high / 2, high), upper.left),
        (right.right.between(Fraction(0), high / 2), lower.left),
        kind=seam_kind(given),
        angle=90,
        do="Join the strip to the zip’s strips at both ends, {allowance}",
    )
    work.seam(
        (top.bottom, front.top),
        (top.left.back, left.top),
        (top.right, right.top),
        (top.top.back, upper.top),
        kind=seam_kind(given),
        angle=90,
        do="Snip the strip’s allowance where it turns a corner, and stitch it round the top, {allowance}",
    )
    work.seam(
        (base.bottom, front.bottom),
        (base.left.back, left.bottom),
        (base.right, right.bottom),
        (base.top.back, lower.bottom),
        kind=seam_kind(given),
        angle=90,
        do="Open the zip, and stitch the strip round the base, corner to corner with the top, {allowance}",
    )
    work.turn_out(opening)
    return width, length


ARTICLE = Article(
    name="cushion-boxed",
    title="Boxed cushion cover",
    purpose="What to cut for a boxed cushion cover with a zip at its back.",
    fields=(
        size("width", "Width of the foam", "Along the front.", "45 cm", "18 in"),
        size("length", "Depth of the foam", "From front to back.", "40 cm", "16 in"),
        size("high", "Height of the foam", "As it lies.", "6 cm", "2 1/2 in"),
        part_of_size("shut", "Sewn shut at each end", "Of the seam that the zip lies in.", "2 cm", "3/4 in"),
        Field("zip_allowance", "Allowance at the zip", ALLOWANCE, "At each side of the zip; its tape lies on it.",
            "zip_allowance", known_as=()),
        *seam_of("plain", "plain"),
    ),
    question="Foam {width} by {length}, {high} high.",
    make=_make,
    cut=("top", "base", "front strip", "upper zip strip", "lower zip strip"),
    examples=(
        Example(
            {"width": "45 cm", "length": "40 cm", "high": "6 cm", "shut": "2 cm", "zip_allowance": "2 cm",
                "seam_allowance": "1 cm"},
            {"top_width": 470, "top_length": 420, "front_strip_width": 1270, "front_strip_length": 80,
                "upper_zip_strip_width": 470, "upper_zip_strip_length": 60, "zip": 410},
            "worked by hand: 45 + 2 cm, 40 + 2 cm; a strip of 45 + 2 × 40 + 2 = 127 cm, 6 + 2 = 8 cm high; "
                "3 + 1 + 2 = 6 cm; 45 − 4 = 41 cm of zip",
        ),
    ),
    about="cover",
    buys=("zip",),
)  # fmt: skip
