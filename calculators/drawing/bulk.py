"""A map of the layers in a finished corner."""

from collections.abc import Sequence
from math import dist

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Sheet
from calculators.trade.corners.bulk import Bulk
from calculators.trade.corners.comparison import ComparedCorner
from calculators.trade.corners.convex import area, centre, largest_first
from calculators.trade.corners.plane import Point

APART = 18  # [drawing units] between two numbers
_LEADER = 14  # [drawing units] how far beside the corner the number of the thickest place stands that has no room in it
ROOM = 260  # [square drawing units] a number needs to stand in a patch


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
    for cell_centre, count in numbers:
        sheet.words(str(count), cell_centre, shift=(0, 4))
    if way.bulk.thickest not in {count for _, count in numbers}:
        there = (float(way.bulk.thickest_at[0]), float(way.bulk.thickest_at[1]))
        beside = (float(min(xs)) - _LEADER / sheet.scale, there[1])
        sheet.line("dimension", beside, there)
        sheet.words(str(way.bulk.thickest), beside, anchor="end", shift=(-3, 4))
    return sheet.finish(f"Layers: {way.title.lower()}", _in_words(way.bulk))


def shade(count: int) -> float:
    """The tone for a number of layers: the same in every map, and never the same for two numbers.

    count: layers that lie on one another, from 1.
    Returns a share of the full tone, from 0 to 1.
    Source: ours.
    """
    return 1 - 0.86**count


def _numbers(found: Bulk, scale: float) -> list[tuple[Point, int]]:
    """Where each number of layers is written: once in every patch, in its largest convex part, if there is room."""
    written: list[tuple[Point, int]] = []
    parts = sorted(found.patches, key=lambda patch: largest_first(patch[0]))
    for count, rings in found.shapes.items():
        for ring in rings:
            inside = next(
                (centre(part) for part, layers in parts if layers == count and _within(centre(part), ring)), None
            )
            if (
                inside
                and abs(float(area(ring))) * scale * scale >= ROOM
                and all(dist(inside, other) * scale >= APART for other, _ in written)
            ):
                written.append((inside, count))
    return written


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
