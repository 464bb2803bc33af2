"""The cloth with its pieces and numbered marks."""

from collections.abc import Iterator
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import MIDDLE, Picture, Point, Sheet, rectangle, text_width, thinned
from calculators.trade.pieces import Grid
from calculators.values.measure import Ruler, show_length

_LONGEST = 6  # cloth widths of length that are drawn; a longer cloth is drawn up to there
_NUMBERED = 80
_LEAST = 12  # [drawing units] beside the cloth, more where marks are written


def cloth_with_pieces(grid: Grid, ruler: Ruler) -> Picture:
    """Pieces of one size on a cloth, its length lying across the sheet, with every mark measured from the left end.

    grid: the pieces as they lie; ruler: the one the marks are read on.
    """
    drawn_length, strip = _drawn_length(grid), grid.edges.strip
    drawn_along = min(grid.rows, drawn_length // grid.lie_length)
    whole = drawn_length == grid.cloth_length
    beside = max((text_width(_bare(mark, ruler)) for mark in grid.marks_across), default=0)
    last = text_width(_bare(grid.marks_along[drawn_along - 1], ruler)) if drawn_along else 0
    sheet = Sheet(
        (0, -strip, drawn_length, grid.cloth_width + strip),
        margins=(_LEAST + beside, 42, max(_LEAST, last / 2), 60 if whole else 78),
        down=True,
    )
    sheet.area("cloth-right", rectangle(0, 0, drawn_length, grid.cloth_width))
    used_length = drawn_along * grid.lie_length
    used_width = grid.columns * grid.lie_width
    for remnant in _not_cut(grid, drawn_length, used_length, used_width):
        sheet.area(lines.REMNANT, remnant, pattern=True)
    _selvedges(sheet, grid, drawn_length)
    _cuts(sheet, grid, drawn_along, used_length, used_width)
    _marks(sheet, grid, ruler, drawn_along)
    _numbers(sheet, grid, drawn_along)
    low, high = -strip, grid.cloth_width + strip
    ends: list[Point] = [(0, low), (drawn_length, low), (drawn_length, high), (0, high), (0, low)]
    sheet.line(lines.EDGE, *(ends if whole else [ends[1], ends[0], ends[3], ends[2]]))
    if not whole:
        sheet.cut_off(ends[1], ends[2])
    size, edge_of_sheet = _size(grid, ruler, drawn_length, whole), 8 - sheet.margins[0]
    sheet.words(size, (0, high), style="dimension-text", anchor="start", shift=(edge_of_sheet, 20))
    return sheet.finish("Pieces on the cloth", _in_words(grid, ruler))


def _drawn_length(grid: Grid) -> Fraction:
    """How much of the cloth's length is drawn [mm]: at least one piece."""
    return min(grid.cloth_length, max(_LONGEST * grid.cloth_width, grid.lie_length))


def _not_cut(grid: Grid, drawn_length: Fraction, used_length: Fraction, used_width: Fraction) -> Iterator[list[Point]]:
    """What no piece is cut from: beside the rows, beyond them, and what a last row that is not whole leaves."""
    if used_width < grid.cloth_width:
        yield rectangle(0, used_width, drawn_length, grid.cloth_width)
    if used_length < grid.rows * grid.lie_length:
        return
    if used_length < drawn_length:
        yield rectangle(used_length, 0, drawn_length, used_width)
    if grid.in_last_row < grid.columns:
        yield rectangle(used_length - grid.lie_length, grid.in_last_row * grid.lie_width, used_length, used_width)


def _selvedges(sheet: Sheet, grid: Grid, drawn_length: Fraction) -> None:
    """What is still to be trimmed off both long edges, up to the trimming lines."""
    for outer, inner in ((-grid.edges.strip, 0), (grid.cloth_width + grid.edges.strip, grid.cloth_width)):
        if outer != inner:
            sheet.area(lines.REMNANT, rectangle(0, min(outer, inner), drawn_length, max(outer, inner)), pattern=True)
            sheet.line(lines.CUT, (0, inner), (drawn_length, inner))


def _cuts(sheet: Sheet, grid: Grid, along: int, used_length: Fraction, used_width: Fraction) -> None:
    for n in range(1, along + 1):
        sheet.line(
            lines.CUT,
            (n * grid.lie_length, -grid.edges.strip),
            (n * grid.lie_length, grid.cloth_width + grid.edges.strip),
        )
    for n in range(1, grid.columns + 1):
        if n * grid.lie_width < grid.cloth_width:
            end = used_length if n <= grid.in_last_row else min(used_length, (grid.rows - 1) * grid.lie_length)
            sheet.line(lines.CUT, (0, n * grid.lie_width), (end, n * grid.lie_width))


def _marks(sheet: Sheet, grid: Grid, ruler: Ruler, along: int) -> None:
    marks, low = [Fraction(0), *grid.marks_along[:along]], -grid.edges.strip
    room = 8 + 6 * max((len(_bare(mark, ruler)) for mark in marks), default=0)
    labelled = thinned(marks, sheet.scale, room)
    for index, mark in enumerate(marks):
        sheet.tick((mark, low), (0, 4))
        if index in labelled:
            sheet.words(_bare(mark, ruler), (mark, low), style="dimension-text", shift=(0, -10))
    sheet.words(
        f"marks in {ruler.unit_to_read}, across from the {grid.edges.name}",
        (0, low),
        anchor="start",
        shift=(8 - sheet.margins[0], -26),
    )
    marks = [Fraction(0), *grid.marks_across]
    labelled = thinned(marks, sheet.scale, 15)
    for index, mark in enumerate(marks):
        sheet.tick((0, mark), (4, 0))
        if index in labelled:
            sheet.words(_bare(mark, ruler), (0, mark), style=f"dimension-text {MIDDLE}", anchor="end", shift=(-8, 0))


def _numbers(sheet: Sheet, grid: Grid, along: int) -> None:
    if along * grid.across > _NUMBERED or min(grid.lie_length, grid.lie_width) * sheet.scale < 16:
        return
    for column in range(along):
        for row in range(grid.across):
            if column * grid.across + row >= grid.cut:
                return
            centre = ((column + 0.5) * float(grid.lie_length), (row + 0.5) * float(grid.lie_width))
            sheet.words(str(column * grid.across + row + 1), centre, style=f"label {MIDDLE}")


def _bare(mark: Fraction, ruler: Ruler) -> str:
    return show_length(mark, ruler).removeprefix("about ").removesuffix(f" {ruler.unit}")


def _size(grid: Grid, ruler: Ruler, drawn_length: Fraction, whole: bool) -> str:
    size = (
        f"cloth {show_length(grid.cloth_length, ruler, 'down')} long, "
        f"{show_length(grid.cloth_width + 2 * grid.edges.strip, ruler, 'down')} wide; grain ↔"
    )
    return size if whole else f"{size}; drawn to {show_length(drawn_length, ruler)}"


def _in_words(grid: Grid, ruler: Ruler) -> str:
    left_length = grid.cloth_length - grid.rows * grid.lie_length
    left_width = grid.cloth_width - grid.columns * grid.lie_width
    return (
        f"Cloth {show_length(grid.cloth_length, ruler, 'down')} long and "
        f"{show_length(grid.cloth_width + 2 * grid.edges.strip, ruler, 'down')} wide. "
        f"{_count_in_words(grid)}, each "
        f"{show_length(grid.lie_length, ruler)} along "
        f"by {show_length(grid.lie_width, ruler)} across. Left over: {show_length(left_length, ruler, 'down')} "
        "of length, "
        f"{show_length(left_width, ruler, 'down')} of width. Marks along are measured from the straightened end "
        "at the left, "
        f"marks across from {grid.edges.start(ruler)}, at the top. Every mark is in the table."
    )


def _count_in_words(grid: Grid) -> str:
    along, across = ("1 piece" if grid.rows == 1 else f"{grid.rows} pieces"), grid.columns
    last = f", only {grid.in_last_row} in the last row" if grid.in_last_row < grid.columns else ""
    return f"{along} along its length, {across} across its width{last}"
