"""Words on the cloth of a corner: which side is up, written where there is room for them."""

import xml.etree.ElementTree as ET
from collections.abc import Iterator, Sequence
from itertools import pairwise

from calculators.drawing import lines
from calculators.drawing.folding_words import Lying, side_style
from calculators.drawing.picture import MIDDLE, Ring, Sheet, part_within, text_width
from calculators.trade.corners.convex import Polygon, area, box, overlap, polygon
from calculators.trade.corners.plane import steady

ON_CLOTH = "on-cloth"
_DRAWN_OVER = (lines.STITCH, lines.PENCIL, lines.CUT, lines.FOLD, lines.BREAK, "dimension")
_TRIED = 7  # places across and up
_WHOLE = 0.9999  # of an area: what roundings leave of it
_FREE = 4.0  # [drawing units] left round the words
_HIGH = 0.8  # of the letters' size
Rectangle = tuple[float, float, float, float]


def write_sides(sheet: Sheet, lay: Lying, letters: float) -> None:
    """Write on each side that is seen which it is, where it has room for the words.

    letters: how large they are [drawing units].
    """
    taken = [_round(ring) for ring in (*_lines(sheet.svg, "sign"), *sheet.written)]
    drawn = [ring for style in _DRAWN_OVER for ring in _lines(sheet.svg, style)]
    for style, _ in lay.sides:
        words = lines.WORDS[style].split(", ")[-1]
        wide, high = text_width(words, letters) + 2 * _FREE, _HIGH * letters + 2 * _FREE
        places = _places(sheet, _largest(lay, style), wide, high)
        if found := next((each for each in places if not _is_taken(each, taken, drawn)), None):
            left, top, right, low = found
            x, y = (left + right) / 2, (top + low) / 2
            made = {"x": f"{x:.1f}", "y": f"{y:.1f}", "text-anchor": "middle", "font-size": f"{letters:.1f}"}
            ET.SubElement(sheet.svg, "text", {"class": f"{ON_CLOTH} {MIDDLE}", **made}).text = words
            taken.append(found)


def _largest(lay: Lying, style: str) -> list[Polygon]:
    """What is to be seen of the facet of a style of which most is seen, in convex parts."""
    found: dict[int, list[Polygon]] = {}
    for facet, part in lay.seen:
        if side_style(facet) == style:
            found.setdefault(id(facet), []).append(part)
    return max(found.values(), key=lambda parts: steady(sum(float(area(part)) for part in parts)))


def _places(sheet: Sheet, region: Sequence[Polygon], wide: float, high: float) -> Iterator[Rectangle]:
    """Upright rectangles that lie within what is to be seen [drawing units], the nearest to its middle first."""
    boxes = [box(part) for part in region]
    left, low = (float(min(each[at] for each in boxes)) for at in (0, 1))
    right, top = (float(max(each[at] for each in boxes)) for at in (2, 3))
    across, up = (right - left) * sheet.scale, (top - low) * sheet.scale
    if across < wide or up < high:
        return
    begin, middle = sheet.at((left, top)), sheet.at(((left + right) / 2, (low + top) / 2))
    steps = [(number + 1) / (_TRIED + 1) for number in range(_TRIED)]
    grid = ((begin[0] + across * u, begin[1] + up * v) for u in steps for v in steps)
    rings = [[sheet.at(place) for place in part] for part in region]
    for x, y in sorted(grid, key=lambda at: steady((at[0] - middle[0]) ** 2 + (at[1] - middle[1]) ** 2)):
        found = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
        if _is_within(rings, found):
            yield found


def _is_within(rings: Sequence[Ring], place: Rectangle) -> bool:
    """Whether a rectangle lies within convex parts: all its corners, and as much of it as there is."""
    left, top, right, low = place
    corners = [(left, low), (left, top), (right, top), (right, low)]  # the way round of what is turned upside down
    if not all(any(_holds(ring, corner) for ring in rings) for corner in corners):
        return False
    whole = polygon(corners[::-1])
    covered = sum(float(area(overlap(whole, polygon(ring[::-1])))) for ring in rings)
    return covered > _WHOLE * float(area(whole))


def _holds(ring: Ring, place: tuple[float, float]) -> bool:
    """Whether a place lies in a convex part, whose corners follow each other clockwise on the sheet."""
    x, y = place
    return all(
        (bx - ax) * (y - ay) - (by - ay) * (x - ax) < 1e-6 for (ax, ay), (bx, by) in zip(ring, [*ring[1:], ring[0]])
    )


def _lines(svg: ET.Element, style: str) -> Iterator[Ring]:
    for each in svg.iter():
        if (each.get("class") or "").split(" ")[0].startswith(style) and each.get("points"):
            yield [(float(x), float(y)) for x, y in (place.split(",") for place in each.get("points", "").split())]


def _round(ring: Ring) -> Rectangle:
    """The upright rectangle round a ring."""
    xs, ys = zip(*ring)
    return min(xs), min(ys), max(xs), max(ys)


def _is_taken(place: Rectangle, taken: Sequence[Rectangle], drawn: Sequence[Ring]) -> bool:
    """Whether something else stands at a place, or a line goes through it."""
    left, top, right, low = place
    return any(a < right and left < c and b < low and top < d for a, b, c, d in taken) or any(
        part_within(one, other, place) for ring in drawn for one, other in pairwise(ring)
    )
