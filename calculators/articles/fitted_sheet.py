"""A fitted sheet in one piece, its corners sewn and an elastic in its edge."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, part_of_size, seam_kind, seam_of, size
from calculators.asking.declaration import Example, Field
from calculators.trade.articles.work import MakingUp
from calculators.values.kinds import Percent


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length, down = given.mattress_width, given.mattress_length, given.depth + given.under
    top = work.rectangle("top", width, length)
    head = work.rectangle("head drop", width, down)
    foot = work.rectangle("foot drop", width, down)
    left = work.rectangle("left drop", down, length)
    right = work.rectangle("right drop", down, length)
    for one, other in (
        (top.top, head.bottom), (top.bottom, foot.top), (top.left, left.right), (top.right, right.left)
    ):  # fmt: skip
        work.fold(one, other, 90)
    kind = seam_kind(given)
    work.seam(
        (head.left, left.top.back),
        (head.right, right.top),
        (foot.left.back, left.bottom.back),
        (foot.right.back, right.bottom),
        kind=kind,
        angle=90,
        do=f"Cut a square of {{square}} out of every corner, fold the corner diagonally, {kind.lie}, and stitch its "
        f"two edges together, {kind.where}",
        lengths={"square": down + given.turn + given.casing - kind.allowance},
    )
    work.hem(
        head.top, foot.bottom, left.left, right.right, turn=given.turn, hem=given.casing, casing=True,
        do="Turn the whole edge in by {turn}, then {hem} for the elastic, and stitch, leaving a gap to draw it in by",
    )  # fmt: skip
    work.buy("elastic", length=given.elastic_share / 100 * 2 * (width + length))
    return width, length


ARTICLE = Article(
    name="fitted-sheet",
    title="Fitted sheet",
    purpose="What to cut for a fitted sheet, and how large the squares at its corners are.",
    fields=(
        size("mattress_width", "Width of the mattress", "Across, with its topper on.", "90 cm", "36 in",
            known_as=("mattress_width",)),
        size("mattress_length", "Length of the mattress", "From head to foot.", "200 cm", "79 in",
            known_as=("mattress_length",)),
        size("depth", "Depth of the mattress", "With its topper on.", "20 cm", "8 in", known_as=("mattress_depth",)),
        part_of_size("under", "Under the mattress", "How far it goes under, finished.", "12 cm", "4 3/4 in"),
        hem_of("casing", "Casing", "A little wider than the elastic.", "1.5 cm", "5/8 in"),
        hem_of("turn", "Its first turn", "The first fold of the raw edge.", "0.5 cm", "1/4 in"),
        Field("elastic_share", "Elastic", Percent(least=Fraction(30), most=Fraction(100)), "As a share of the edge, "
            "before it is drawn in; try it on the elastic that you have.", fixed="70 %", known_as=()),
        *seam_of("french", "french", "plain"),
    ),
    question="A mattress {mattress_width} by {mattress_length}, {depth} deep; the sheet goes {under} under it.",
    make=_make,
    cut=("top",),
    examples=(
        Example(
            {"mattress_width": "90 cm", "mattress_length": "200 cm", "depth": "20 cm", "under": "12 cm",
                "casing": "1.5 cm", "turn": "5 mm", "elastic_share": "70 %"},
            {"top_width": 1580, "top_length": 2680, "stitching": 8_360, "elastic": 4_060},
            "worked by hand: 90 + 2 × (20 + 12 + 2) = 158 cm; 200 + 2 × 34 = 268 cm; stitched 8 × 32 + 580 cm; elastic "
            "0.7 × 2 × (90 + 200) cm",
        ),
    ),
    about="top",
    buys=("elastic",),
)  # fmt: skip
