"""A table runner with square ends, from the table and how far it hangs down."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import part_of_size, size, turn_and_hem
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    length = given.table_length + 2 * given.drop
    runner = work.rectangle("runner", given.width, length)
    work.hem(*runner.around, turn=given.turn, hem=given.hem)
    return given.width, length


ARTICLE = Article(
    name="runner",
    title="Table runner",
    purpose="What to cut for a runner with square ends, from the table and how far it hangs down.",
    fields=(
        size("width", "Width of the runner", "Finished.", "40 cm", "16 in"),
        size("table_length", "Length of the table", "Along the top.", "180 cm", "72 in", known_as=("table_length",)),
        part_of_size("drop", "Drop at each end", "0 where it ends on the top.", "20 cm", "8 in"),
        *turn_and_hem("Runner"),
    ),
    question="A runner {width} wide on a table {table_length} long, with a drop of {drop}; turn {turn}, hem {hem}.",
    make=_make,
    cut=("runner",),
    examples=(
        Example(
            {"width": "16 in", "table_length": "72 in", "drop": "8 in", "turn": "1/4 in", "hem": "1 1/4 in"},
            {"runner_width": 19 * 25.4, "runner_length": 91 * 25.4},
            "worked by hand: 16 + 2 × 1 1/2 = 19 in; 72 + 16 = 88 in finished, and 3 in of hems",
        ),
    ),
)
