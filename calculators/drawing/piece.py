"""A hemmed piece: the cut cloth, where it folds, and where its hems are stitched."""

from collections.abc import Callable, Sequence
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Point, Sheet, rectangle, stands_out
from calculators.trade.hems import HemmedPiece
from calculators.values.measure import Ruler, show_length

_MARGINS, _TALLEST = (70, 44, 60, 56), 300  # drawing units
_ROOM = 11  # [drawing units] between the lines of a hem; where there is less, a corner is drawn enlarged
_DETAIL, _OVER = 150, 30  # [drawing units] the enlarged corner, and what is left free over it for its name
_BEYOND = 1.3  # how much farther than the hems the enlarged corner reaches


def hemmed_piece(piece: HemmedPiece, ruler: Ruler) -> Picture:
    """The cut piece flat, wrong side up, with its cut and finished size, its fold lines and its stitches.

    Where hems are too narrow on the drawing to be told apart, one corner is enlarged below it.

    piece: the piece with its hems; ruler: the one sizes are read on.
    """
    hems, whole = piece.hems, (0, 0, piece.cut_width, piece.cut_length)
    narrow = _narrow(piece)
    left, _, right, _ = _MARGINS
    long_words = f"finished {show_length(piece.finished_length, ruler)}"
    beyond = stands_out(long_words, _scale(piece) * float(piece.cut_length))
    above, below = max(_MARGINS[1], beyond), max(_MARGINS[3], beyond)
    detail = narrow * (_DETAIL + _OVER + 12)
    sheet = Sheet(whole, margins=(left, above, right, below + detail), tallest=_TALLEST)
    sheet.area(lines.CLOTH_WRONG, rectangle(*whole), pattern=True)
    finished = _inside(piece, lambda hem: hem + hems.turn)
    sheet.line(lines.CUT, *_closed(rectangle(*whole)))
    if not narrow:
        _hems(piece, lambda style, corners: sheet.line(style, *_closed(corners)))
    sheet.line(lines.FOLD, *_closed(finished))
    (inner, low), (outer, _), (_, high), _ = finished
    sheet.dimension(
        (0, piece.cut_length),
        (piece.cut_width, piece.cut_length),
        f"cut {show_length(piece.cut_width, ruler)}",
        away=14,
    )
    sheet.dimension(
        (piece.cut_width, piece.cut_length),
        (piece.cut_width, 0),
        f"cut {show_length(piece.cut_length, ruler)}",
        away=12,
    )
    sheet.dimension(
        (outer, low),
        (inner, low),
        f"finished {show_length(piece.finished_width, ruler)}",
        away=14 + float(low) * sheet.scale,
    )
    sheet.dimension(
        (inner, low),
        (inner, high),
        long_words,
        away=14 + float(inner) * sheet.scale,
    )
    if narrow:
        _enlarged(sheet, piece, below)
    return sheet.finish("The piece, cut and finished", _in_words(piece, ruler, narrow))


def _narrow(piece: HemmedPiece) -> bool:
    """Whether the lines of a hem would run into one another on the drawing of the whole piece."""
    return any(float(hem) * _scale(piece) < _ROOM for hem in _hemmed(piece))


def _scale(piece: HemmedPiece) -> float:
    """Drawing units in a millimetre of the whole piece."""
    left, _, right, _ = _MARGINS
    return Sheet((0, 0, piece.cut_width, piece.cut_length), margins=(left, 0, right, 0), tallest=_TALLEST).scale


def _hemmed(piece: HemmedPiece) -> list[Fraction]:
    """The depths of the hems there are."""
    return [hem for hem in (piece.hems.left, piece.hems.right, piece.hems.bottom, piece.hems.top) if hem]


def _hems(piece: HemmedPiece, draw: Callable[[str, list[Point]], None]) -> None:
    """The lines of every hem but its outer fold: the fold of the turn, where the inner folded edge comes to lie, and
    the stitches outside it."""
    hems = piece.hems
    if hems.turn:
        draw(lines.FOLD, _inside(piece, lambda hem: hems.turn))
    if _hemmed(piece):
        draw(lines.LANDS, _inside(piece, lambda hem: hems.turn + 2 * hem))
        draw(lines.STITCH, _inside(piece, lambda hem: hems.turn + 2 * hem - min(piece.edge_stitch, hem)))


def _inside(piece: HemmedPiece, inset: Callable[[Fraction], Fraction]) -> list[Point]:
    """The rectangle that lies inside the cut edge by what a hem asks for, on the sides that are hemmed."""
    left, right, bottom, top = (
        inset(hem) if hem else 0 for hem in (piece.hems.left, piece.hems.right, piece.hems.bottom, piece.hems.top)
    )
    return rectangle(left, bottom, piece.cut_width - right, piece.cut_length - top)


def _enlarged(sheet: Sheet, piece: HemmedPiece, below: float) -> None:
    """A hemmed corner of the piece larger below it, and a frame on the piece that says which.

    below: how far below the piece its drawing ends [drawing units].
    """
    hems = piece.hems
    at_left, at_foot = bool(hems.left) or not hems.right, bool(hems.bottom) or not hems.top
    beside, end = (hems.left if at_left else hems.right), (hems.bottom if at_foot else hems.top)
    reach = float(hems.turn + 2 * max(beside, end)) * _BEYOND
    left = 0.0 if at_left else float(piece.cut_width) - reach
    low = 0.0 if at_foot else float(piece.cut_length) - reach
    window = (left, low, left + reach, low + reach)
    sheet.line("dimension", *_closed(rectangle(*window)))
    down = sheet.margins[1] + sheet.drawn_height + below + _OVER - 14
    detail = Sheet(window, margins=(_MARGINS[0], down, _MARGINS[2], 0), tallest=_DETAIL)
    detail.svg, detail.used = sheet.group("enlarged"), sheet.used
    detail.area(lines.CLOTH_WRONG, rectangle(*window), pattern=True)

    def draw(style: str, corners: list[Point]) -> None:
        ring = _closed(corners)
        for start, end in zip(ring, ring[1:]):
            if part := _clipped(start, end, window):
                detail.line(style, *part)

    _hems(piece, draw)
    draw(lines.FOLD, _inside(piece, lambda hem: hem + hems.turn))
    draw(lines.CUT, rectangle(0, 0, piece.cut_width, piece.cut_length))
    across, up = (left + reach if at_left else left), (low + reach if at_foot else low)
    detail.cut_off((across, low), (across, low + reach))
    detail.cut_off((left, up), (left + reach, up))
    detail.words("one corner, enlarged", (left, low + reach), anchor="start", shift=(0, -10))


def _clipped(start: Point, end: Point, window: tuple[float, float, float, float]) -> tuple[Point, Point] | None:
    """The part of an upright or level line that lies in a window."""
    left, low, right, high = window
    (x1, y1), (x2, y2) = sorted((float(x), float(y)) for x, y in (start, end))
    near = 1e-9 * (right - left)
    part = (max(x1, left), max(y1, low)), (min(x2, right), min(y2, high))
    (a, b), (c, d) = part
    return part if a <= c + near and b <= d + near and max(c - a, d - b) > near else None


def _closed(corners: Sequence[Point]) -> list[Point]:
    return [*corners, corners[0]]


def _in_words(piece: HemmedPiece, ruler: Ruler, narrow: bool) -> str:
    stitched = (
        f" Every hem is stitched {show_length(piece.edge_stitch, ruler)} from its inner folded edge."
        if _hemmed(piece)
        else ""
    )
    return (
        f"Cut {show_length(piece.cut_width, ruler)} by {show_length(piece.cut_length, ruler)}; finished "
        f"{show_length(piece.finished_width, ruler)} by {show_length(piece.finished_length, ruler)}."
        f"{stitched}{' One corner is drawn larger.' if narrow else ''}"
    )
