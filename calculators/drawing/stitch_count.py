"""The last stitches of a row before its corner: adjusted all along, or shortened at the end."""

from collections.abc import Sequence
from fractions import Fraction

from calculators.drawing import lines
from calculators.drawing.picture import Picture
from calculators.drawing.signs import panel
from calculators.trade.stitches.to_the_corner import RowToCorner
from calculators.values.measure import Ruler, show_length
from calculators.values.small_lengths import show_small

_WIDE, _CORNER, _SHOWN = 360.0, 300.0, 9
DIAL = Ruler("mm", Fraction(1, 100))  # a dial counts in millimetres, whatever the tape
_GAP = 1.6  # [drawing units] left at either end of a stitch


def stitches_at_the_corner(row: RowToCorner, ruler: Ruler) -> Picture:
    """Two rows one below the other, each with the corner at its right end; a dot at every hole."""
    sheet = panel(_WIDE, 128, margins=(0, 22, 0, 30))
    stretch = min(row.length, _SHOWN * max(row.stitch, row.adjusted))
    scale = (_CORNER - 16) / float(stretch)
    from_corner, short = row.shorten
    part = from_corner / short if short else row.stitch
    adjusted = _places([row.adjusted] * row.count, stretch)
    shortened = _places([part] * short + [row.stitch] * (row.count + 1), stretch)
    for height, places, above in ((26.0, adjusted, "one stitch all along"), (92.0, shortened, "or shortened")):
        spots = [(_CORNER - float(place) * scale, height) for place in places]
        sheet.line(lines.LANDS, (_CORNER, height - 18), (_CORNER, height + 18))
        for (x1, _), (x2, _) in zip(spots, spots[1:]):
            sheet.line(lines.THREAD_OVER, (x2 + _GAP, height), (x1 - _GAP, height))
        sheet.words("corner", (_CORNER + 6, height + 4), anchor="start")
        sheet.words(above, (8, height - 26), anchor="start")
    first = float(adjusted[1]) * scale
    sheet.dimension((_CORNER, 34), (_CORNER - first, 34), show_length(row.adjusted, DIAL), away=6)
    if short:
        begins = max(8.0, _CORNER - float(min(from_corner, stretch)) * scale)
        sheet.dimension((_CORNER, 104), (begins, 104), f"{_stitches(short)}: {show_small(from_corner, ruler)}", away=14)
    return sheet.finish(
        "The last stitches before a corner",
        f"Above, stitches of {show_length(row.adjusted, DIAL)} all along, the last one in the corner. Below, "
        + (
            f"the stitch as it is set, and {_stitches(short)} in the last {show_small(from_corner, ruler)}."
            if short
            else "the stitch as it is set lands in the corner as well."
        ),
        with_key=False,
        caption="The row along the width, its last stitches before the corner, to scale.",
    )


def _stitches(count: int) -> str:
    return "one stitch" if count == 1 else f"{count} stitches"


def _places(stitches: Sequence[Fraction], stretch: Fraction) -> list[Fraction]:
    """Holes from the corner backwards, as far as the stretch that is drawn."""
    places = [Fraction(0)]
    for stitch in stitches:
        if places[-1] + stitch > stretch:
            break
        places.append(places[-1] + stitch)
    return places
