"""A round or oval tablecloth, with a narrow hem or its edge bound."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, part_of_size, size
from calculators.articles.widths import CLOTH_FIELDS, tell_whether_it_goes_in
from calculators.asking.declaration import Example, Field
from calculators.asking.house_measures import TURN
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = given.table_width + 2 * given.drop, given.table_length + 2 * given.drop
    cloth = work.round("tablecloth", width, length)
    work.hem(
        *cloth.around,
        turn=given.turn,
        hem=given.hem,
        do="Stitch a line on the fold of the turn, turn in {turn} along it, then {hem}, and stitch",
        how="Ease the fullness of the curve in with the tip of the iron, a hand’s breadth at a time.",
    )
    tell_whether_it_goes_in(work, given, min(width, length) + 2 * (given.turn + given.hem))
    return width, length


ARTICLE = Article(
    name="tablecloth-round",
    title="Round or oval tablecloth",
    purpose="The square or oblong to cut a round or oval tablecloth from, and how long its hem is.",
    fields=(
        size("table_width", "Width of the table", "Across the top at its widest.", "110 cm", "44 in",
            known_as=("table_width",)),
        size("table_length", "Length of the table", "Along the top; for a round one, the same.", "110 cm", "44 in",
            known_as=("table_length",)),
        part_of_size("drop", "Drop", "From the table’s edge to the hem.", "25 cm", "10 in", known_as=("table_drop",)),
        Field("turn", "First turn", TURN, "Narrow, so that it lies along the curve.",
            fixed={"cm": "0.5 cm", "in": "3/16 in"}, known_as=()),
        hem_of("hem", "Hem depth", "Narrow too: a deep hem does not lie flat on a curve.", "0.5 cm", "3/16 in"),
        *CLOTH_FIELDS,
    ),
    question="A table {table_width} by {table_length}, a drop of {drop}; turn {turn}, hem {hem}.",
    make=_make,
    cut=("tablecloth",),
    examples=(
        Example(
            {"table_width": "100 cm", "table_length": "100 cm", "drop": "25 cm", "turn": "5 mm", "hem": "5 mm"},
            {"finished_width": 1500, "tablecloth_width": 1520, "stitching": 4712.389},
            "worked by hand: 100 + 2 × 25 = 150 cm, and 2 × 1 cm; round a circle of 150 cm π × 150 = 471.24 cm",
            tolerance=0.001,
        ),
        Example(
            {"table_width": "60 cm", "table_length": "100 cm", "drop": "20 cm", "turn": "5 mm", "hem": "5 mm"},
            {"tablecloth_width": 1020, "tablecloth_length": 1420, "stitching": 3796.137},
            "worked by hand by Ramanujan’s second approximation for half axes of 50 and 70 cm: 379.6137 cm",
            tolerance=0.001,
        ),
    ),
    is_bent=True,
    template=("tablecloth",),
    joined_as="tablecloth-joined",
)  # fmt: skip
