"""What pieces with hems and nothing else have in common, and their sizes both ways."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.measures import size
from calculators.asking.declaration import Example, Field
from calculators.trade.articles.cutting import cut_pieces
from calculators.trade.articles.work import MakingUp
from calculators.trade.hems import HemmedPiece, Hems


def hemmed_from_cut(width: Fraction, length: Fraction, hems: Hems) -> HemmedPiece:
    """The finished piece that a cut piece gives.

    width, length: cut size [mm]; hems: depth and turn of each side [mm].
    Returns both sizes [mm].
    Source: derived, finished = cut − 2·(hem + turn); 19 in cut with 1/4 in + 1/4 in gives 18 in.
    Raises HemsMeet when the hems leave no piece between them.
    """
    across, along = _taken_up(width, length, hems)
    return HemmedPiece(hems, width, length, width - across, length - along)


def hemmed_from_finished(width: Fraction, length: Fraction, hems: Hems) -> HemmedPiece:
    """The cut piece that a finished piece needs.

    width, length: finished size [mm]; hems: depth and turn of each side [mm].
    Returns both sizes [mm].
    Source: derived, cut = finished + 2·(hem + turn).
    Raises HemsMeet when the hems would cover the piece.
    """
    across, along = _taken_up(width, length, hems)
    return HemmedPiece(hems, width + across, length + along, width, length)


def _taken_up(width: Fraction, length: Fraction, hems: Hems) -> Size:
    """What the hems take of both sizes, of a piece put down as any article is, finished in this size [mm]."""
    work = MakingUp()
    piece = work.rectangle("piece", width, length)
    for side in ("top", "bottom", "left", "right"):
        work.hem(getattr(piece, side), turn=hems.turn, hem=getattr(hems, side))
    (cut,) = cut_pieces(work)
    return cut.width - width, cut.length - length


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
