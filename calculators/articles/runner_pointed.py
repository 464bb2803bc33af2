"""A table runner whose ends come to a point."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import part_of_size, refuse_unless, size, turn_and_hem
from calculators.asking.corner_questions import ANGLE
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp
from calculators.trade.pointed_end import PointedEnd


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    width, length = given.width, given.table_length + 2 * given.drop
    refuse_unless(2 * given.point < length, "point", "Two such points are longer than the runner, {length:length}. "
        "Write less than half of it.", length=length)  # fmt: skip
    tip = PointedEnd(width, given.point).tip
    refuse_unless(ANGLE.least <= tip <= ANGLE.most, "point", "A point of {point:length} is too {how:text} for a mitre. "
        "Write {which:text}.", point=given.point, how="sharp" if tip < ANGLE.least else "blunt",
        which="less" if tip < ANGLE.least else "more")  # fmt: skip
    slant = width / 2, given.point
    runner = work.slanted(
        "runner", width, length, dict.fromkeys(("top left", "top right", "bottom left", "bottom right"), slant)
    )
    work.hem(
        *runner.around, turn=given.turn, hem=given.hem,
        how="Mitre the points; mark each corner by its own angle before you fold.",
    )  # fmt: skip
    return width, length


ARTICLE = Article(
    name="runner-pointed",
    title="Table runner with pointed ends",
    purpose="What to cut for a runner with pointed ends, from the table, its drop and its point.",
    fields=(
        size("width", "Width of the runner", "Finished.", "40 cm", "16 in"),
        size("table_length", "Length of the table", "Along the top.", "180 cm", "72 in", known_as=("table_length",)),
        part_of_size("drop", "Drop at each end", "From the table’s edge down to the tip.", "25 cm", "10 in"),
        size("point", "Length of the point", "Along the middle, from where it begins to its tip.", "20 cm", "8 in"),
        *turn_and_hem("Runner"),
    ),
    question="A runner {width} wide on a table {table_length} long, with a drop of {drop} and points {point} long.",
    make=_make,
    cut=("runner",),
    examples=(
        Example(
            {"width": "60 cm", "table_length": "160 cm", "drop": "20 cm", "point": "40 cm", "turn": "1 cm",
                "hem": "2 cm"},
            {"finished_length": 2000, "runner_width": 660, "runner_length": 2100, "stitching": 4400},
            "worked by hand: each half of a point is a triangle of 30, 40 and 50 cm, so a hem of 3 cm moves its tip "
            "out by 3 × 50 ÷ 30 = 5 cm; round it 2 × 120 + 4 × 50 cm",
        ),
    ),
)  # fmt: skip
