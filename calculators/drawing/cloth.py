"""The cloth with its pieces and numbered marks."""

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet, rectangle, thinned
from calculators.measure import Ruler, show_length
from calculators.pieces import Grid

_LONGEST = 6  # cloth widths of length that are drawn; a longer cloth is drawn up to there
_NUMBERED = 80


def cloth_with_pieces(grid: Grid, ruler: Ruler) -> Picture:
    """Pieces of one size on a cloth, its length lying across the sheet, with every mark measured from the left end.

    grid: the pieces as they lie; ruler: the one the marks are read on.
    """
    drawn_length = _drawn_length(grid)
    drawn_along = min(grid.along, drawn_length // grid.lie_length)
    whole = drawn_length == grid.cloth_length
    sheet = Sheet((0, 0, drawn_length, grid.cloth_width), margins=(8, 42, 66 if ruler.unit == "in" else 52, 60), down=True)
    sheet.area("cloth-right", rectangle(0, 0, drawn_length, grid.cloth_width))
    used_length = drawn_along * grid.lie_length
    used_width = grid.across * grid.lie_width
    if grid.left_width:
        sheet.area(lines.REMNANT, rectangle(0, used_width, drawn_length, grid.cloth_width), pattern=True)
    if whole and grid.left_length:
        sheet.area(lines.REMNANT, rectangle(used_length, 0, drawn_length, used_width), pattern=True)
    _cuts(sheet, grid, drawn_along, used_length, used_width)
    _marks(sheet, grid, ruler, drawn_along)
    _numbers(sheet, grid, drawn_along)
    ends = [(0, 0), (drawn_length, 0), (drawn_length, grid.cloth_width), (0, grid.cloth_width), (0, 0)]
    sheet.line(lines.EDGE, *(ends if whole else [ends[1], ends[0], ends[3], ends[2]]))
    sheet.words(_size(grid, ruler, drawn_length, whole), (0, grid.cloth_width), style="dimension-text", anchor="start", shift=(0, 18))
    return sheet.finish("Pieces on the cloth", _in_words(grid, ruler))


def _drawn_length(grid: Grid):
    """How much of the cloth's length is drawn [mm]: at least one piece."""
    return min(grid.cloth_length, max(_LONGEST * grid.cloth_width, grid.lie_length))


def _cuts(sheet: Sheet, grid: Grid, along: int, used_length, used_width) -> None:
    for n in range(1, along + 1):
        sheet.line(lines.CUT, (n * grid.lie_length, 0), (n * grid.lie_length, grid.cloth_width))
    for n in range(1, grid.across + 1):
        if n * grid.lie_width < grid.cloth_width:
            sheet.line(lines.CUT, (0, n * grid.lie_width), (used_length, n * grid.lie_width))


def _marks(sheet: Sheet, grid: Grid, ruler: Ruler, along: int) -> None:
    marks = grid.marks_along[:along]
    room = 8 + 6 * max((len(_bare(mark, ruler)) for mark in marks), default=0)
    labelled = thinned(marks, sheet.scale, room)
    for index, mark in enumerate(marks):
        sheet.tick((mark, 0), (0, 4))
        if index in labelled:
            sheet.words(_bare(mark, ruler), (mark, 0), style="dimension-text", shift=(0, -10))
    sheet.words(f"marks along, in {ruler.unit_to_read}", (0, 0), anchor="start", shift=(0, -26))
    marks = grid.marks_across
    labelled = thinned(marks, sheet.scale, 15)
    edge = _drawn_length(grid)
    for index, mark in enumerate(marks):
        sheet.tick((edge, mark), (4, 0))
        if index in labelled:
            sheet.words(_bare(mark, ruler), (edge, mark), style="dimension-text", anchor="start", shift=(8, 4))


def _numbers(sheet: Sheet, grid: Grid, along: int) -> None:
    if along * grid.across > _NUMBERED or min(grid.lie_length, grid.lie_width) * sheet.scale < 16:
        return
    for column in range(along):
        for row in range(grid.across):
            centre = ((column + 0.5) * float(grid.lie_length), (row + 0.5) * float(grid.lie_width))
            sheet.words(str(column * grid.across + row + 1), centre, shift=(0, 4))


def _bare(mark, ruler: Ruler) -> str:
    return show_length(mark, ruler).removeprefix("about ").removesuffix(f" {ruler.unit}")


def _size(grid: Grid, ruler: Ruler, drawn_length, whole: bool) -> str:
    size = f"cloth {show_length(grid.cloth_length, ruler, 'down')} long, {show_length(grid.cloth_width, ruler, 'down')} wide; grain ↔"
    return size if whole else f"{size}; drawn to {show_length(drawn_length, ruler)}"


def _in_words(grid: Grid, ruler: Ruler) -> str:
    return (
        f"Cloth {show_length(grid.cloth_length, ruler, 'down')} long and {show_length(grid.cloth_width, ruler, 'down')} wide. "
        f"{grid.along} pieces along its length, {grid.across} across its width, each {show_length(grid.lie_length, ruler)} along "
        f"by {show_length(grid.lie_width, ruler)} across. Left over: {show_length(grid.left_length, ruler, 'down')} of length, "
        f"{show_length(grid.left_width, ruler, 'down')} of width. Every mark is in the table."
    )
