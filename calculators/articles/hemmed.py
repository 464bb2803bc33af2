"""What pieces with a hem on all four sides and nothing else have in common."""

from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import size
from calculators.asking.declaration import Example, Field
from calculators.trade.articles.work import MakingUp


def hemmed_piece(
    name: str, title: str, cm: tuple[str, str], inches: tuple[str, str], hems: tuple[Field, Field], example: Example
) -> Article:
    """An article that is one hemmed piece. cm, inches: its usual finished width and length. hems: its turn and hem."""
    word = title.lower()

    def make(work: MakingUp, given: SimpleNamespace) -> Size:
        piece = work.rectangle(name, given.width, given.length)
        work.hem(*piece.around, turn=given.turn, hem=given.hem)
        return given.width, given.length

    return Article(
        name=name,
        title=title,
        purpose=f"What to cut for a {word} of the size you want.",
        fields=(
            size("width", "Finished width", "Hemmed, across.", cm[0], inches[0], known_as=("finished_width",)),
            size("length", "Finished length", "Hemmed, along.", cm[1], inches[1], known_as=("finished_length",)),
            *hems,
        ),
        question=f"A {word} {{width}} by {{length}}; turn {{turn}}, hem {{hem}}.",
        make=make,
        cut=(name,),
        examples=(example,),
    )
