"""A bag in one piece with a casing at its mouth and two cords."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, part_of_size, refuse_unless, seam_kind, seam_of, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length, slit = given.width, given.length, given.slit
    refuse_unless(slit < length, "slit", "The slit is as long as the bag, {length:length}. Write less.", length=length)
    refuse_unless(slit >= given.casing, "slit", "The cords come out of the casing, {casing:length} deep, through the "
        "slit. Write at least as much.", casing=given.casing)  # fmt: skip
    front = work.rectangle("front", width, length)
    back = work.rectangle("back", width, length)
    work.fold(front.bottom, back.bottom)
    sides = [part.side(side) for part in (front, back) for side in ("left", "right")]
    kind = seam_kind(given)
    work.hem(*(side.between(length - slit, length) for side in sides), turn=Fraction(0), hem=kind.allowance,
        do="Turn the upper ends of all sides in by {hem}, as far as the slit, and stitch")  # fmt: skip
    work.hem(front.top, back.top, turn=given.turn, hem=given.casing, casing=True)
    work.seam(
        *((front.side(side).between(Fraction(0), length - slit), back.side(side).between(Fraction(0), length - slit))
            for side in ("left", "right")),
        kind=kind,
        do="Fold the bag in two, right sides together, and stitch both sides up to the slit, {allowance}",
    )  # fmt: skip
    work.turn_out(width, "Turn right side out and draw in two cords, one from each side, each once round")
    work.buy("cord", 2, 2 * width + given.beyond)
    return width, length


ARTICLE = Article(
    name="drawstring-bag",
    title="Bag with drawn cords",
    purpose="What to cut for a bag that two cords draw shut, and how much cord it takes.",
    fields=(
        size("width", "Width of the bag", "Finished.", "30 cm", "12 in"),
        size("length", "Height of the bag", "Finished, with its casing.", "40 cm", "16 in"),
        hem_of("casing", "Casing", "Wide enough for both cords.", "2.5 cm", "1 in"),
        hem_of("turn", "Its first turn", "The first fold of the raw edge.", "1 cm", "3/8 in"),
        part_of_size("slit", "Slit at each side", "From the mouth down.", "5 cm", "2 in"),
        part_of_size("beyond", "Cord beyond the bag", "Of each, for its knot.", "20 cm", "8 in"),
        *seam_of("plain", "plain"),
    ),
    question="A bag {width} by {length} with a casing of {casing}.",
    make=_make,
    cut=("front",),
    examples=(
        Example(
            {"width": "30 cm", "length": "40 cm", "casing": "2.5 cm", "turn": "1 cm", "seam_allowance": "1.5 cm",
                "beyond": "20 cm"},
            {"front_width": 330, "front_length": 870, "cord": 1600},
            "worked by hand: 30 + 3 cm; 2 × (40 + 3.5) cm; two cords of 2 × 30 + 20 cm",
        ),
    ),
    about="bag",
    buys=("cord",),
)  # fmt: skip
