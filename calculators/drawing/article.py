"""The pieces of an article laid flat: what is cut, where it folds, and at which edges a step works."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property
from math import cos, pi, sin

from calculators.drawing import lines
from calculators.drawing.article_made_up import article_made_up
from calculators.drawing.picture import WIDTH, Picture, PictureSeries, Point, Sheet, Told, key_picture, text_width
from calculators.trade.articles.counting import OPERATIONS
from calculators.trade.articles.cutting import ArticlePiece, Box, LaidPart
from calculators.trade.articles.finishes import CASING, HEM, SEAM, TURNED_UNDER
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.parts import ROUND, EdgeStretch
from calculators.trade.articles.work import MakingUp
from calculators.trade.trade_rules import brief
from calculators.values.measure import Ruler, show_length

TALLEST, ALONE = 400.0, 230.0  # [drawing units] all pieces, with their words; one that is the only piece
GAP, ROW = 14.0, 16.0  # [drawing units] between pieces; a row of words
APART = 2.5  # [drawing units] between a cut edge and its finished line, else only one of them is drawn
LEAST = 3.0  # [drawing units] a piece is drawn at least so wide and so high
_ROUND = 48  # corners that a curve is drawn with
_SMALLER = 0.94  # from one scale that is tried to the next


@dataclass(frozen=True)
class _Placed:
    """A piece on the sheet: left and upper edge of its cut box, and how large a millimetre is [drawing units]."""

    piece: ArticlePiece
    left: float
    top: float
    scale: float
    words: tuple[str, ...]

    @cached_property
    def _corner(self) -> tuple[float, float]:
        left, _, _, high = self.piece.box
        return float(left), float(high)

    def at(self, point: tuple[object, object]) -> Point:
        x, y = (float(each) for each in point)  # type: ignore[arg-type]
        left, high = self._corner
        return self.left + (x - left) * self.scale, self.top + (high - y) * self.scale

    @property
    def wide(self) -> float:
        return float(self.piece.width) * self.scale

    @property
    def high(self) -> float:
        return float(self.piece.length) * self.scale


def parts_laid_flat(work: MakingUp, pieces: Sequence[ArticlePiece], ruler: Ruler) -> Picture:
    """Every piece as it is cut, with its size, its folds and its finished lines."""
    placed, high = _layout(pieces, ruler)
    sheet = _sheet(high)
    for each in placed:
        _piece(sheet, each, work, done=())
        for operation in work.operations:
            _rows_across(sheet, each, operation, lines.STITCH)
        _words(sheet, each)
    return sheet.finish("The pieces, laid flat", _in_words(pieces, ruler))


def article_steps(
    work: MakingUp, size: tuple[Fraction, Fraction], pieces: Sequence[ArticlePiece], ruler: Ruler
) -> PictureSeries:
    """A drawing for every step: the pieces with what is done, and the edges that the step works at; once it is turned
    out, the article made up."""
    is_turned_out = False
    placed, high = _layout(pieces, ruler, with_words=False)
    done: list[EdgeStretch] = []
    pictures = []
    for operation in work.operations:
        if not is_step(operation):
            done += operation.edges
            continue
        told = told_of(operation, ruler)
        if is_turned_out := is_turned_out or operation.verb == "turn out":
            made = article_made_up(work, size, ruler, until=operation)
            pictures.append(_as_step(made, operation, told))
            continue
        sheet = _sheet(high)
        for each in placed:
            _piece(sheet, each, work, done)
        for edge in (*operation.edges, *(end for glue in operation.glues for end in (glue.one, glue.other))):
            for each in placed:
                for laid in each.piece.parts:
                    if laid.part.name in (edge.part.name, edge.part.like):
                        sheet.line(lines.AT_WORK, *_edge(each, laid, edge))
        for each in placed:
            _rows_across(sheet, each, operation, lines.AT_WORK)
        done += operation.edges
        pictures.append(_as_step(sheet.finish("", "", with_key=False), operation, told))
    key = key_picture([lines.AT_WORK, lines.EDGE, lines.CUT, lines.FOLD, lines.STITCH])
    return PictureSeries(tuple(pictures), key)


def _as_step(picture: Picture, operation: Operation, told: Told) -> Picture:
    left, top, wide, high = (float(each) for each in picture.svg.get("viewBox", "").split())
    title, description = OPERATIONS[operation.verb].capitalize(), _plain(told.do)
    picture.svg.set("aria-label", f"{title}. {description}")
    return replace(
        picture,
        title=title,
        description=description,
        caption=told.do,
        told=told,
        crop=picture.crop or (left, top, wide, high),
    )


def is_step(operation: Operation) -> bool:
    """Whether an operation is something to do."""
    return operation.verb != "keep"


def told_of(operation: Operation, ruler: Ruler) -> Told:
    """What is told of an operation, its lengths on the ruler in hand."""
    lengths = {name: show_length(each, ruler) for name, each in operation.lengths.items()}
    marked = {name: f"**{each}**" for name, each in lengths.items()}
    beside = " ".join(part for part in (operation.how, *map(brief, operation.rules)) if part)
    return Told(f"{operation.do.format(**marked)}.", beside.format(**lengths), "")


def _plain(text: str) -> str:
    return text.replace("**", "")


def _sheet(high: float) -> Sheet:
    return Sheet((0, 0, WIDTH, high), margins=(0, 0, 0, 0), down=True, tallest=high)


def _layout(pieces: Sequence[ArticlePiece], ruler: Ruler, with_words: bool = True) -> tuple[list[_Placed], float]:
    """The pieces in rows, as large as the sheet lets them be, and how high all of it is [drawing units]."""
    told = [_size_in_words(each, ruler, alone=len(pieces) == 1) if with_words else () for each in pieces]
    tallest = ALONE if len(pieces) == 1 else TALLEST
    widest = max(float(each.width) for each in pieces)
    longest = max(float(each.length) for each in pieces)
    scale = min((WIDTH - GAP) / widest, tallest / longest)
    while True:
        placed, high = _in_rows(pieces, told, scale)
        if high <= tallest or scale * max(widest, longest) < LEAST:
            return placed, max(high, 64.0)
        scale *= _SMALLER


def _in_rows(
    pieces: Sequence[ArticlePiece], told: Sequence[tuple[str, ...]], scale: float
) -> tuple[list[_Placed], float]:
    rows: list[list[tuple[ArticlePiece, tuple[str, ...], float]]] = [[]]
    for piece, words in zip(pieces, told):
        cell = max(float(piece.width) * scale, LEAST, *(text_width(each) for each in words), 0.0) + GAP
        if rows[-1] and sum(each[2] for each in rows[-1]) + cell > WIDTH:
            rows.append([])
        rows[-1].append((piece, words, cell))
    top, placed = GAP / 2, []
    for row in rows:
        left = (WIDTH - sum(each[2] for each in row)) / 2
        tall = max(float(each[0].length) * scale for each in row)
        for piece, words, cell in row:
            at = left + (cell - float(piece.width) * scale) / 2
            placed.append(_Placed(piece, at, top + tall - float(piece.length) * scale, scale, words))
            left += cell
        top += tall + ROW * max(len(each[1]) for each in row) + GAP
    return placed, top


def _size_in_words(piece: ArticlePiece, ruler: Ruler, alone: bool) -> tuple[str, ...]:
    many = f", {piece.count} ×" if piece.count > 1 else ""
    size = (f"{show_length(piece.width, ruler)} ×", show_length(piece.length, ruler))
    joined = " ".join(size)
    sizes = (joined,) if text_width(joined) < WIDTH / 2 - GAP else size
    return sizes if alone and not many else (f"{piece.parts[0].part.name}{many}", *sizes)


def _words(sheet: Sheet, placed: _Placed) -> None:
    for number, words in enumerate(placed.words):
        sheet.words(words, (placed.left + placed.wide / 2, placed.top + placed.high + ROW * (number + 1)))
    if len(placed.piece.parts) == 1:
        return
    for laid in placed.piece.parts:
        left, low, right, high = laid.finished
        (x1, y1), (x2, y2) = placed.at((left, high)), placed.at((right, low))
        name = laid.part.name
        if text_width(name) + 6 < float(x2) - float(x1) and float(y2) - float(y1) > ROW + 6:
            sheet.words(name, ((float(x1) + float(x2)) / 2, (float(y1) + float(y2)) / 2), style="label in-middle")


def _piece(sheet: Sheet, placed: _Placed, work: MakingUp, done: Collection[EdgeStretch]) -> None:
    """A piece as far as it is made: what an edge takes up is gone once it is finished."""
    folded = {(end.part.name, end.side) for glue in work.folds for end in (glue.one, glue.other)}
    ways = {(each.stretch.part.name, each.stretch.side): each.how for each in work.finishes}
    finished = {(each.part.name, each.side) for each in done}
    now = replace(placed.piece, takes={key: each for key, each in placed.piece.takes.items() if key not in finished})
    for laid in placed.piece.parts:
        sheet.area(lines.CLOTH_RIGHT, _outline(placed, laid, now))
    for laid in placed.piece.parts:
        for side in laid.part.sides:
            key = laid.part.name, side
            if key in folded:
                if laid.lies(side) in ("top", "right"):  # the other part has the same line
                    sheet.line(lines.FOLD, *_finished_side(placed, laid, side))
                continue
            style = lines.EDGE if key in finished else lines.CUT
            sheet.line(style, *_cut_side(placed, laid, now, side), fine=style == lines.CUT)
            takes = float(now.takes.get(key, 0)) * placed.scale
            if takes >= APART and ways.get(key) in (HEM, CASING, SEAM, TURNED_UNDER):
                inner = lines.STITCH if ways[key] == SEAM else lines.FOLD
                sheet.line(inner, *_finished_side(placed, laid, side))


def _rows_across(sheet: Sheet, placed: _Placed, operation: Operation, style: str) -> None:
    """What an operation stitches across a piece."""
    for laid in placed.piece.parts:
        left, low, right, _ = laid.finished
        for part, high in operation.across:
            if part.name == laid.part.name:
                sheet.line(style, placed.at((left, low + high)), placed.at((right, low + high)))


def _outline(placed: _Placed, laid: LaidPart, piece: ArticlePiece) -> list[Point]:
    if laid.part.is_round:
        return _curve(placed, piece.cut_box(laid))
    return [placed.at(one) for one, _ in piece.cut_sides(laid).values()]


def _curve(placed: _Placed, box: Box) -> list[Point]:
    left, low, right, high = (float(each) for each in box)
    turns = (2 * pi * number / _ROUND for number in range(_ROUND + 1))
    middle, half = ((left + right) / 2, (low + high) / 2), ((right - left) / 2, (high - low) / 2)
    return [placed.at((middle[0] + half[0] * sin(turn), middle[1] - half[1] * cos(turn))) for turn in turns]


def _cut_side(placed: _Placed, laid: LaidPart, piece: ArticlePiece, side: str) -> list[Point]:
    if side == ROUND:
        return _curve(placed, piece.cut_box(laid))
    return [placed.at(each) for each in piece.cut_sides(laid)[side]]


def _finished_side(placed: _Placed, laid: LaidPart, side: str) -> list[Point]:
    return _curve(placed, laid.finished) if side == ROUND else [placed.at(each) for each in laid.side(side)]


def _edge(placed: _Placed, laid: LaidPart, edge: EdgeStretch) -> list[Point]:
    """A stretch of a finished edge."""
    if edge.side == ROUND:
        return _curve(placed, laid.finished)
    return [placed.at(each) for each in laid.at(edge)]


def _in_words(pieces: Sequence[ArticlePiece], ruler: Ruler) -> str:
    told = (
        f"{each.name}: {f'{each.count} times ' if each.count > 1 else ''}{show_length(each.width, ruler)} by "
        f"{show_length(each.length, ruler)} cut"
        for each in pieces
    )
    return f"{'; '.join(told)}."
