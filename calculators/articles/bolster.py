"""A cover for a bolster: a tube with round ends and a zip along it."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import part_of_size, refuse_unless, seam_kind, seam_of, size
from calculators.asking.declaration import Example, Field
from calculators.asking.house_measures import ALLOWANCE
from calculators.trade.articles.operation import SeamKind
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    refuse_unless(2 * given.shut < given.length, "shut", "Both ends together leave nothing open of {length:length}. "
        "Write less.", length=given.length)  # fmt: skip
    ends = work.round("end", given.diameter, given.diameter, count=2)
    round_it = ends.length_of("round")
    body = work.rectangle("body", given.length, round_it)
    opening = given.length - 2 * given.shut
    work.zip((body.top, body.bottom), kind=SeamKind("seam at a zip", given.zip_allowance, 1, "zip"), length=opening)
    (edge,) = ends.around
    kind = seam_kind(given)
    work.seam((body.left, edge), (body.right, edge), kind=kind, angle=90, do="Open the zip. Mark the quarters of both "
        "ends and of the tube, snip the tube’s allowance, pin quarter to quarter, and stitch, {allowance}")  # fmt: skip
    work.turn_out(opening, "Turn right side out through the zip")
    return given.length, Fraction(given.diameter)


ARTICLE = Article(
    name="bolster",
    title="Bolster cover",
    purpose="What to cut for the cover of a bolster, with a zip along it.",
    fields=(
        size("length", "Length of the bolster", "From end to end.", "45 cm", "18 in"),
        size("diameter", "Across its ends", "Through the middle.", "18 cm", "7 in"),
        part_of_size("shut", "Sewn shut at each end", "Of the seam that the zip lies in.", "3 cm", "1 1/4 in"),
        Field("zip_allowance", "Allowance at the zip", ALLOWANCE, "At each side of the zip; its tape lies on it.",
            "zip_allowance", known_as=()),
        *seam_of("plain", "plain"),
    ),
    question="A bolster {length} long, {diameter} across its ends.",
    make=_make,
    cut=("end", "body"),
    examples=(
        Example(
            {"length": "45 cm", "diameter": "18 cm", "shut": "3 cm", "zip_allowance": "2 cm",
                "seam_allowance": "1.5 cm"},
            {"end_width": 210, "body_width": 480, "body_length": 605.4867, "zip": 390},
            "worked by hand: 18 + 2 × 1.5 = 21 cm; 45 + 3 = 48 cm; π × 18 = 56.5487 cm, and 2 × 2 cm",
            tolerance=0.001,
        ),
    ),
    about="cover",
    buys=("zip",),
    is_bent=True,
    template=("end",),
)  # fmt: skip
