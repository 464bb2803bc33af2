"""A napkin, or any other piece with a hem on all four sides and nothing else."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import HEM_FIELD, TURN_FIELD, size
from calculators.asking.declaration import Example
from calculators.trade.articles.work import MakingUp


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    napkin = work.rectangle("napkin", given.width, given.length)
    work.hem(*napkin.around, turn=given.turn, hem=given.hem)
    return given.width, given.length


ARTICLE = Article(
    name="napkin",
    title="Napkin",
    purpose="What to cut for a napkin of the size you want.",
    fields=(
        size("width", "Finished width", "Hemmed, across.", "40 cm", "16 in", known_as=("finished_width",)),
        size("length", "Finished length", "Hemmed, along.", "40 cm", "16 in", known_as=("finished_length",)),
        TURN_FIELD,
        HEM_FIELD,
    ),
    question="A napkin {width} by {length}; turn {turn}, hem {hem}.",
    make=_make,
    cut=("napkin",),
    examples=(
        Example(
            {"width": "18 in", "length": "18 in", "turn": "1/4 in", "hem": "1/4 in"},
            {"napkin_width": 19 * 25.4, "napkin_length": 19 * 25.4, "stitching": 4 * 18 * 25.4},
            "derived: finished + 2·(hem + turn); 18 in with 1/4 + 1/4 in → 19 in",
        ),
    ),
)
