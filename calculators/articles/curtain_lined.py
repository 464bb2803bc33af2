"""A lined curtain: the lining hangs free at the foot and is slip-stitched to the side hems."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.hangings import (
    NAMES,
    PAIR_FIELDS,
    ROD_FIELDS,
    WIDTHS_FIELD,
    Hanging,
    hanging,
    head_with_tape,
)
from calculators.articles.measures import hem_of, part_of_size, refuse_unless, seam_kind, seam_of
from calculators.articles.widths import CLOTH_FIELDS
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp
from calculators.trade.curtains import Hem

LINING = ("lining", "left lining", "middle lining", "right lining")


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    refuse_unless(given.back < given.side_hem, "back", "The lining would not reach the side hem, {hem:length}. Write "
        "less.", hem=given.side_hem)  # fmt: skip
    refuse_unless(given.lower_hem + given.heading < given.drop, "lower_hem", "The hems are as deep as the curtain is "
        "long, {drop:length}. Write less.", drop=given.drop)  # fmt: skip
    refuse_unless(given.up < given.lower_hem, "up", "The lining would end above the curtain’s hem, {hem:length}. "
        "Write less.", hem=given.lower_hem)  # fmt: skip
    refuse_unless(given.up + given.lining_hem + given.heading < given.drop, "lining_hem", "The lining would be nothing "
        "but hem. Write less.")  # fmt: skip
    kind = seam_kind(given)
    made = hanging(work, given, kind, Hem(given.side_hem, Fraction(0)))
    lining = _lining(work, given, made)
    if len(lining.widths) > 1:
        work.seam(
            *((one.right, other.left) for one, other in zip(lining.widths, lining.widths[1:])), kind=kind, angle=0,
            do=f"Join the widths of the lining, {kind.lie}, {kind.where}",
        )  # fmt: skip
    work.hem(*made.edges("bottom"), turn=given.lower_hem, hem=given.lower_hem,
        do="Hem the curtain’s foot: turn in {turn}, then {hem}, and slip-stitch", by_hand="slip")  # fmt: skip
    work.hem(*lining.edges("bottom"), turn=given.lining_hem, hem=given.lining_hem,
        do="Hem the lining’s foot by itself: turn in {turn}, then {hem}, and stitch")  # fmt: skip
    work.hem(*made.sides, turn=Fraction(0), hem=given.side_hem,
        do="Fold both sides of the curtain in by {hem} and catch-stitch them down", by_hand="catch")  # fmt: skip
    reach = given.up, given.drop
    work.lay_on(
        *((side.between(*reach), edge) for side, edge in zip(made.sides, lining.sides)),
        inset=given.back, turn=given.back, lengths={"up": given.up},
        do="Lay the lining on, wrong sides together, {up} above the lower edge; turn its sides under by {turn} and "
        "slip-stitch them to the side hems",
        how="Smooth it, do not stretch it.",
        by_hand="slip",
    )  # fmt: skip
    head_with_tape(work, (*made.edges("top"), *lining.edges("top")), given.heading, made.width)
    return made.width, given.drop


def _lining(work: MakingUp, given: SimpleNamespace, made: Hanging) -> Hanging:
    """The lining’s widths, each behind one of the curtain, its outer sides so far back."""
    names = {part.name: part.name.replace("curtain", "lining").replace("width", "lining") for part in made.widths}
    last = len(made.widths) - 1
    widths = tuple(
        work.rectangle(
            names[part.name],
            part.width - given.back * ((number == 0) + (number == last)),
            given.drop - given.up,
            names.get(part.like, ""),
            "lining",
        )
        for number, part in enumerate(made.widths)
    )
    return Hanging(widths, made.width - 2 * given.back)


ARTICLE = Article(
    name="curtain-lined",
    title="Curtain, lined",
    purpose="What to cut for one lined curtain and its lining, width by width.",
    fields=(
        *ROD_FIELDS,
        *PAIR_FIELDS,
        *CLOTH_FIELDS,
        WIDTHS_FIELD,
        hem_of("side_hem", "Side hem", "Folded once; the lining covers its raw edge.", "4 cm", "1 1/2 in"),
        hem_of("lower_hem", "Lower hem", "Folded twice, as deep each time.", "8 cm", "3 in"),
        hem_of("lining_hem", "Hem of the lining", "Folded twice, as deep each time.", "5 cm", "2 in"),
        part_of_size("back", "Lining behind the sides", "How far it lies back, and what is turned under.", "2 cm",
            "3/4 in"),
        part_of_size("up", "Lining above the lower edge", "How much shorter it hangs.", "2 cm", "3/4 in"),
        hem_of("heading", "Heading allowance", "All the cloth beyond the finished top edge.", "5 cm", "2 in"),
        *seam_of("plain", "plain"),
    ),
    question="A rod of {rod} for {curtains} curtains, a drop of {drop}, fullness {fullness}, cloth {cloth_width} wide.",
    make=_make,
    cut=(*NAMES, *LINING),
    not_always=(*NAMES, *LINING),
    examples=(
        Example(
            {"rod": "100 cm", "curtains": "1", "drop": "200 cm", "fullness": "1", "side_return": "0", "overlap": "0",
                "cloth_width": "140 cm", "measured": "trimmed", "widths_in": "whole", "side_hem": "4 cm",
                "lower_hem": "8 cm", "lining_hem": "5 cm", "back": "2 cm", "up": "2 cm", "heading": "5 cm"},
            {"curtain_width": 1400, "curtain_length": 2210, "lining_width": 1320, "lining_length": 2130},
            "worked by hand: 140 − 8 = 132 cm finished; the lining 132 − 4, and 4 cm turned under; 200 + 5 + 16 cm, "
            "and 198 + 5 + 10 cm",
        ),
    ),
    about="curtain",
    is_let_down=True,
    buys=("tape",),
)  # fmt: skip
