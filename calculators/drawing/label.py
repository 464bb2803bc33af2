"""A label with its words, line by line."""

from collections.abc import Sequence

from calculators.drawing import lines
from calculators.drawing.picture import Picture, rectangle, text_width
from calculators.drawing.signs import panel
from calculators.values.measure import Ruler

_WIDE, _ROW = 360.0, 22.0


def label(written: Sequence[str], ruler: Ruler) -> Picture:
    """The lines one below the other; a line too long for the label goes on in the next row."""
    rows = [row for line in written for row in _rows(line, _WIDE - 40)]
    high = _ROW * len(rows) + 24
    sheet = panel(_WIDE, high)
    sheet.area(lines.CLOTH_RIGHT, rectangle(4, 4, _WIDE - 4, high - 4))
    sheet.line(lines.EDGE, (4, 4), (_WIDE - 4, 4), (_WIDE - 4, high - 4), (4, high - 4), (4, 4))
    for number, row in enumerate(rows):
        sheet.words(row, (_WIDE / 2, 28 + _ROW * number))
    return sheet.finish("The label", f"It says: {'; '.join(written)}.", with_key=False, caption="What the label says.")


def _rows(line: str, room: float) -> list[str]:
    rows = [""]
    for word in line.split():
        longer = f"{rows[-1]} {word}".strip()
        if rows[-1] and text_width(longer) > room:
            rows.append(word)
        else:
            rows[-1] = longer
    return rows
