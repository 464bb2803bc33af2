"""A tea towel with a loop to hang it up by."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import hem_of, refuse_unless, size, turn_and_hem
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    towel = work.rectangle("towel", given.width, given.length)
    refuse_unless(given.loop_broad < given.width, "loop_broad", "The loop is as wide as the towel, {width:length}. "
        "Write less.", width=given.width)  # fmt: skip
    loop = work.strap("loop", given.loop_broad, given.loop_seen, given.hem)
    middle = (given.width - given.loop_broad) / 2
    work.hang(loop, *[towel.top.between(middle, middle + given.loop_broad)] * 2)
    work.hem(
        *towel.around, turn=given.turn, hem=given.hem,
        do="Hem all sides: turn in {turn}, then {hem}, lay both ends of the loop under the hem, and stitch",
        how="Fold the loop outwards and stitch it once more, to and fro.",
    )  # fmt: skip
    return given.width, given.length


ARTICLE = Article(
    name="tea-towel",
    title="Tea towel with a loop",
    purpose="What to cut for a tea towel and its loop.",
    fields=(
        size("width", "Finished width", "Hemmed, across.", "50 cm", "20 in"),
        size("length", "Finished length", "Hemmed, along.", "70 cm", "28 in"),
        *turn_and_hem("Tea towel"),
        size("loop_seen", "Loop", "Its length where it is seen.", "10 cm", "4 in"),
        hem_of("loop_broad", "Width of the loop", "Folded and stitched.", "2 cm", "3/4 in"),
    ),
    question="A tea towel {width} by {length}; turn {turn}, hem {hem}; a loop {loop_seen} long.",
    make=_make,
    cut=("towel", "loop"),
    examples=(
        Example(
            {"width": "50 cm", "length": "70 cm", "turn": "8 mm", "hem": "12 mm", "loop_seen": "10 cm",
                "loop_broad": "2 cm"},
            {"towel_width": 540, "towel_length": 740, "loop_width": 80},
            "worked by hand: 50 + 2 × 2 = 54 cm, 70 + 4 = 74 cm; a loop folded in four, 4 × 2 = 8 cm",
        ),
    ),
)  # fmt: skip
