"""A square or oblong tablecloth, from the table and how far the cloth hangs down."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import part_of_size, size, turn_and_hem
from calculators.articles.widths import CLOTH_FIELDS, tell_whether_it_goes_in
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = given.table_width + 2 * given.drop, given.table_length + 2 * given.drop
    cloth = work.rectangle("tablecloth", width, length)
    work.hem(*cloth.around, turn=given.turn, hem=given.hem)
    tell_whether_it_goes_in(work, given, min(width, length) + 2 * (given.turn + given.hem))
    return width, length


ARTICLE = Article(
    name="tablecloth",
    title="Tablecloth",
    purpose="What to cut for a tablecloth, from the table and how far the cloth hangs down.",
    fields=(
        size("table_width", "Width of the table", "Across the top.", "90 cm", "36 in", known_as=("table_width",)),
        size("table_length", "Length of the table", "Along the top.", "180 cm", "72 in", known_as=("table_length",)),
        part_of_size("drop", "Drop", "From the table’s edge to the hem.", "30 cm", "12 in", known_as=("table_drop",)),
        *turn_and_hem("Tablecloth"),
        *CLOTH_FIELDS,
    ),
    question="A table {table_width} by {table_length}, a drop of {drop}; turn {turn}, hem {hem}.",
    make=_make,
    cut=("tablecloth",),
    examples=(
        Example(
            {"table_width": "36 in", "table_length": "60 in", "drop": "12 in", "turn": "1/4 in", "hem": "1/2 in"},
            {"finished_width": 60 * 25.4, "tablecloth_width": 61.5 * 25.4, "tablecloth_length": 85.5 * 25.4},
            "worked by hand: 36 + 2 × 12 = 60 in finished, and 2 × 3/4 in of hems; 60 + 24 + 1 1/2 = 85 1/2 in",
        ),
    ),
    joined_as="tablecloth-joined",
)
