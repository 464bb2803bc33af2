"""A map of the layers in a finished corner."""

from collections.abc import Sequence
from math import dist

from calculators.drawing import lines
from calculators.drawing.picture import MIDDLE, Picture, Sheet, part_within, text_width
from calculators.trade.corners.bulk import Bulk
from calculators.trade.corners.comparison import ComparedCorner
from calculators.trade.corners.convex import Polygon, centroid, edges, holds, largest_first
from calculators.trade.corners.plane import Point, steady

APART = 18  # [drawing units] between two numbers
_LEADER = 14  # [drawing units] how far beside the corner the number of the thickest place stands that has no room in it
_HIGH, _AROUND = 9, 2  # [drawing units] how high a number is, and how far every border stays away from it
_STEP, _STEPS = 4, 20  # [drawing units] how much lower or higher such a line begins than it ends, and how often


def bulk_map(ways: Sequence[ComparedCorner], chosen: str) -> Picture:
    """The chosen way's corner from above, each patch with its number of layers; the more, the darker, and the thickest
    heavily outlined."""
    way = next(each for each in ways if each.name == chosen)
    assert way.bulk, f"{chosen} cannot be made at this corner"
    shapes = way.bulk.shapes
    xs, ys = zip(*((float(x), float(y)) for rings in shapes.values() for ring in rings for x, y in ring))
    sheet = Sheet((min(xs), min(ys), max(xs), max(ys)), margins=(24 + _LEADER, 16, 24, 28), tallest=300)
    for count, rings in shapes.items():
        sheet.shade(rings, shade(count))
        for ring in rings:
            sheet.line(lines.PATCH, *ring, ring[0])
    for ring in shapes[way.bulk.thickest]:
        sheet.line(lines.THICKEST, *ring, ring[0])
    numbers = _numbers(way.bulk, sheet.scale)
    for place, count in numbers:
        sheet.words(str(count), place, style=f"label {MIDDLE}")
    if way.bulk.thickest not in {count for _, count in numbers}:
        there = (float(way.bulk.thickest_at[0]), float(way.bulk.thickest_at[1]))
        beside = _leads_from(
            float(min(xs)) - _LEADER / sheet.scale, there, [place for place, _ in numbers], sheet.scale
        )
        sheet.line("dimension", beside, there)
        sheet.words(str(way.bulk.thickest), beside, style=f"label {MIDDLE}", anchor="end", shift=(-3, 0))
    return sheet.finish(f"Layers: {way.title.lower()}", _in_words(way.bulk))


def shade(count: int) -> float:
    """The tone for a number of layers: the same in every map, and never the same for two numbers.

    count: layers that lie on one another, from 1.
    Returns a share of the full tone, from 0 to 1.
    Source: ours.
    """
    return 1 - 0.86**count


def _numbers(found: Bulk, scale: float) -> list[tuple[Point, int]]:
    """Where each number of layers is written: once in every patch, where it is farthest from all borders, if there is
    room."""
    written: list[tuple[Point, int]] = []
    parts = sorted(found.patches, key=lambda patch: largest_first(patch[0]))
    for count, rings in found.shapes.items():
        alike = [part for part, layers in parts if layers == count]
        for ring in rings:
            places = [centroid(ring), *(centroid(part) for part in alike)]
            inside = [place for place in places if _within(place, ring) and any(holds(part, place) for part in alike)]
            place = max(inside, key=lambda place: steady(_clearance(place, rings)), default=None)
            if (
                place
                and _has_room(str(count), place, rings, scale)
                and all(dist(place, other) * scale >= APART for other, _ in written)
            ):
                written.append((place, count))
    return written


def _has_room(text: str, place: Point, rings: Sequence[Polygon], scale: float) -> bool:
    """Whether a number at a place stays clear of every border."""
    across, up = (text_width(text) / 2 + _AROUND) / scale, (_HIGH / 2 + _AROUND) / scale
    box = (place[0] - across, place[1] - up, place[0] + across, place[1] + up)
    return not any(part_within(start, end, box) for ring in rings for start, end in edges(ring))


def _clearance(place: Point, rings: Sequence[Polygon]) -> float:
    """How far a place is from the nearest border [mm]."""
    return min(_from_segment(place, start, end) for ring in rings for start, end in edges(ring))


def _from_segment(place: Point, start: Point, end: Point) -> float:
    """How far a place is from a line that ends at both sides [mm]."""
    (ax, ay), (bx, by) = start, end
    length = dist(start, end)
    along = ((place[0] - ax) * (bx - ax) + (place[1] - ay) * (by - ay)) / length**2 if length else 0
    share = min(max(along, 0), 1)
    return dist(place, (ax + (bx - ax) * share, ay + (by - ay) * share))


def _leads_from(x: float, there: Point, numbers: Sequence[Point], scale: float) -> Point:
    """Where a line to a place begins at this x, as level as it can be without crossing a number."""
    begins = [(x, there[1] + way * step * _STEP / scale) for step in range(_STEPS) for way in (1, -1)]
    clear = (start for start in begins if all(_from_segment(each, start, there) * scale >= _HIGH for each in numbers))
    return next(clear, begins[0])


def _within(place: Point, ring: Sequence[Point]) -> bool:
    """Whether a place lies inside a ring of any shape: a line from it to the right crosses the ring an odd number of
    times."""
    x, y = place
    crossings = [
        (x2 - x1) * (y - y1) / (y2 - y1) + x1 > x
        for (x1, y1), (x2, y2) in zip(ring, (*ring[1:], ring[0]))
        if (y1 > y) != (y2 > y)
    ]
    return sum(crossings) % 2 == 1


def _in_words(bulk: Bulk) -> str:
    counts = sorted(bulk.shapes)
    listed = ", ".join(map(str, counts))
    return (
        f"From the finished edges inwards the corner has places of {listed} layers; the most, {bulk.thickest}, "
        "in the part with the heavy outline."
    )
