"""A hemmed piece: the cut cloth, where it folds, and the border that shows."""

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, rectangle
from calculators.hems import HemmedPiece
from calculators.measure import Ruler, show_length


def hemmed_piece(piece: HemmedPiece, ruler: Ruler) -> Picture:
    """The cut piece flat, wrong side up, with its fold lines, and its cut and finished size.

    piece: the piece with its hems; ruler: the one sizes are read on.
    """
    hems = piece.hems
    sheet = Sheet((0, 0, piece.cut_width, piece.cut_length), margins=(70, 44, 60, 56), tallest=300)
    sheet.area("cloth-wrong", rectangle(0, 0, piece.cut_width, piece.cut_length), pattern=True)
    finished = _inside(piece, hems.left, hems.right, hems.bottom, hems.top, turns=1, depths=1)
    sheet.line(lines.CUT, *_closed(rectangle(0, 0, piece.cut_width, piece.cut_length)))
    if hems.turn:
        sheet.line(lines.FOLD, *_closed(_inside(piece, hems.left, hems.right, hems.bottom, hems.top, turns=1, depths=0)))
    sheet.line(lines.FOLD, *_closed(finished))
    sheet.line(lines.STITCH, *_closed(_inside(piece, hems.left, hems.right, hems.bottom, hems.top, turns=1, depths=2)))
    (left, low), (right, _), (_, high), _ = finished
    sheet.dimension((0, piece.cut_length), (piece.cut_width, piece.cut_length), f"cut {show_length(piece.cut_width, ruler)}", away=14)
    sheet.dimension((piece.cut_width, piece.cut_length), (piece.cut_width, 0), show_length(piece.cut_length, ruler), away=12)
    sheet.dimension((right, low), (left, low), f"finished {show_length(piece.finished_width, ruler)}", away=14 + float(low) * sheet.scale)
    sheet.dimension((left, low), (left, high), show_length(piece.finished_length, ruler), away=14 + float(left) * sheet.scale)
    return sheet.finish("The piece, cut and finished", _in_words(piece, ruler))


def _inside(piece: HemmedPiece, left, right, bottom, top, turns: int, depths: int):
    """The rectangle that lies so many turns and hem depths inside the cut edge, on the sides that are hemmed."""

    def inset(hem):
        return turns * piece.hems.turn + depths * hem if hem else 0

    return rectangle(inset(left), inset(bottom), piece.cut_width - inset(right), piece.cut_length - inset(top))


def _closed(corners):
    return [*corners, corners[0]]


def _in_words(piece: HemmedPiece, ruler: Ruler) -> str:
    return (
        f"Cut {show_length(piece.cut_width, ruler)} by {show_length(piece.cut_length, ruler)}; finished "
        f"{show_length(piece.finished_width, ruler)} by {show_length(piece.finished_length, ruler)}."
    )
