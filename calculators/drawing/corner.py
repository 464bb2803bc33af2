"""The corner of a piece, wrong side up, with its creases, marks, mitre line and trim line."""

from calculators.drawing import lines
from calculators.drawing.picture import Picture, Point, Real, Sheet
from calculators.trade.corners.mitre_marks import MitreMarks
from calculators.values.measure import Ruler, show_length

ROOM_FOR_BOTH = 75  # [degrees] at a sharper corner the same distance is written once only
ALIKE = 1.5  # times as deep: beyond it the foot of the corner lies too near a mark to be written at


def mitre_corner(marks: MitreMarks, ruler: Ruler) -> Picture:
    """A corner to be mitred, the turn folded in, drawn to scale with its marks.

    marks: the mitre's measures; ruler: the one the marks are read on.
    """
    along_2 = _along_2(marks)
    inward_2 = (along_2[1], -along_2[0])
    right = 76 if marks.angle >= 60 else 116  # the hem on edge 2 of a sharp corner is written to the right of its end
    sheet, reach_1, end_2 = _corner_sheet(marks, margins=(76, 44 if marks.angle <= 90 else 80, right, 52))
    corner, end_1 = (0.0, 0.0), (reach_1, 0.0)
    mark_1, mark_2, crossing = _places(marks)
    if any(marks.turns):
        sheet.area(lines.CLOTH_RIGHT, _turned_in(marks, end_1, end_2))
        _parallels(sheet, marks, lines.RAW_EDGE, marks.turns, end_1, end_2)
    _parallels(sheet, marks, lines.FOLD, (marks.hem_1, marks.hem_2), end_1, end_2)
    sheet.line(lines.STITCH, mark_1, crossing, mark_2)
    sheet.line(lines.CUT, *map(_in_floats, marks.trim_line))
    sheet.along("cut", *map(_in_floats, marks.trim_line[:2]))
    sheet.line(lines.EDGE, end_1, corner, end_2)
    sheet.tick(mark_1, (0, 7))
    sheet.tick(mark_2, (7 * inward_2[0], -7 * inward_2[1]))
    sheet.dimension(mark_1, corner, show_length(marks.mark_1, ruler), away=16)
    sheet.dimension(corner, mark_2, show_length(marks.mark_2, ruler), away=16)
    hem = "hem " if marks.angle >= 60 else ""  # at a sharp corner the lines end side by side, and one word says it
    sheet.dimension((reach_1, float(marks.hem_1)), end_1, f"{hem}{show_length(marks.hem_1, ruler)}", away=12)
    inner_2 = (end_2[0] + inward_2[0] * float(marks.hem_2), end_2[1] + inward_2[1] * float(marks.hem_2))
    sheet.dimension(end_2, inner_2, f"hem {show_length(marks.hem_2, ruler)}", away=12)
    shares = (0.5, 0.7, 0.9, 1.0)
    sheet.first_clear("edge 1", [_between(mark_1, end_1, share) for share in shares], shift=(0, 14))
    sheet.first_clear(
        "edge 2",
        [_between(mark_2, end_2, share) for share in (*shares, 1.1, 1.2, 1.3, 1.4)],
        "end",
        (-8 * inward_2[0], 8 * inward_2[1]),
    )
    return sheet.finish("The corner to mitre, wrong side up", _in_words(marks, ruler))


def distances_at_corner(marks: MitreMarks, ruler: Ruler) -> Picture:
    """The corner with the distances that a ruler can be set to: from the crossing to each edge, and from the corner to
    the line.

    marks: the mitre's measures; ruler: the one the distances are read on.
    """
    sheet, reach_1, end_2 = _corner_sheet(marks, margins=(24, 16, 24, 28))
    corner, end_1, along_2 = (0.0, 0.0), (reach_1, 0.0), _along_2(marks)
    mark_1, mark_2, crossing = _places(marks)
    half, straight = show_length(marks.half_line, ruler), show_length(marks.to_line_1, ruler)
    _parallels(sheet, marks, lines.FOLD, (marks.hem_1, marks.hem_2), end_1, end_2)
    sheet.line(lines.STITCH, mark_1, crossing, mark_2)
    sheet.line(lines.EDGE, end_1, corner, end_2)
    sheet.tick(mark_1, (0, 7))
    sheet.tick(mark_2, (7 * along_2[1], 7 * along_2[0]))
    sheet.dimension(crossing, mark_1, half, away=14)
    if marks.angle >= ROOM_FOR_BOTH:
        sheet.dimension(mark_2, crossing, half, away=14)
    if marks.angle == 90 and max(marks.hem_1, marks.hem_2) < ALIKE * min(marks.hem_1, marks.hem_2):
        sheet.dimension(_in_floats(marks.lines.line_1.foot(corner)), corner, straight, away=0)
    words = (
        f"From the crossing of the creases to either mark it is {half}. From the corner straight to the line, at "
        f"edge 1, it is {straight}."
    )
    return sheet.finish("Distances to set a ruler to, wrong side up", words)


def _corner_sheet(marks: MitreMarks, margins: tuple[float, float, float, float]) -> tuple[Sheet, Real, Point]:
    """A sheet with the cloth on it; how far edge 1 is drawn [mm], and where edge 2 ends."""
    reach_1, reach_2 = _reaches(marks)
    end_2 = _times(_along_2(marks), reach_2)
    edges = (marks.corner.parallel(1, 0), marks.corner.parallel(2, 0))
    outline = [_in_floats(place) for place in marks.corner.shown((0, 0), (reach_1, reach_2), *edges)]
    xs, ys = zip(*outline)
    sheet = Sheet((min(xs), min(ys), max(xs), max(ys)), margins=margins, tallest=300)
    sheet.area(lines.CLOTH_WRONG, outline, pattern=True)
    for start, end in zip(outline[1:], outline[2:]):
        sheet.cut_off(start, end)
    return sheet, reach_1, end_2


def _places(marks: MitreMarks) -> tuple[Point, Point, Point]:
    """Mark 1, mark 2 and the crossing of the creases [mm]."""
    found = marks.lines
    return _in_floats(found.mark_1), _in_floats(found.mark_2), _in_floats(found.crossing)


def _between(start: Point, end: Point, share: float) -> Point:
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def _in_floats(place: Point) -> Point:
    return float(place[0]), float(place[1])


def _reaches(marks: MitreMarks) -> Point:
    """How far along each edge to draw: past the marks and past the crossing of the creases, and not too narrow a
    strip."""
    sine = _along_2(marks)[1]
    reach_1 = max(1.45 * float(marks.mark_1), 2 * float(marks.hem_2) / sine)
    reach_2 = max(1.45 * float(marks.mark_2), 2 * float(marks.hem_1) / sine)
    if marks.angle < 90:  # cut off square, a long edge would be crossed by the end of a short one
        reach_1 = reach_2 = max(reach_1, reach_2)
    return max(reach_1, reach_2 / 2), max(reach_2, reach_1 / 2)


def _along_2(marks: MitreMarks) -> Point:
    """The direction of edge 2."""
    return _in_floats(marks.corner.direction_2)


def _times(direction: Point, length: Real) -> Point:
    return direction[0] * float(length), direction[1] * float(length)


def _parallels(
    sheet: Sheet, marks: MitreMarks, style: str, inside: tuple[Real, Real], end_1: Point, end_2: Point
) -> None:
    """Two lines parallel to the edges and inside them, from where they cross to the edge of the drawing."""
    cosine, sine = _along_2(marks)
    inside_1, inside_2 = (float(each) for each in inside)
    crossing = ((inside_2 + inside_1 * cosine) / sine, inside_1)
    sheet.line(style, (end_1[0], inside_1), crossing, (end_2[0] + inside_2 * sine, end_2[1] - inside_2 * cosine))


def _turned_in(marks: MitreMarks, end_1: Point, end_2: Point) -> list[Point]:
    """The turn as it lies folded in along both edges, its right side up."""
    cosine, sine = _along_2(marks)
    turn_1, turn_2 = (float(each) for each in marks.turns)
    inner_1, inner_2 = (end_1[0], turn_1), (end_2[0] + turn_2 * sine, end_2[1] - turn_2 * cosine)
    return [(0.0, 0.0), end_1, inner_1, ((turn_2 + turn_1 * cosine) / sine, turn_1), inner_2, end_2]


def _in_words(marks: MitreMarks, ruler: Ruler) -> str:
    turned = " Along both edges the turn lies folded in, right side up." if any(marks.turns) else ""
    return (
        f"From the folded corner the mark on edge 1 is at {show_length(marks.mark_1, ruler)} and on edge 2 at "
        f"{show_length(marks.mark_2, ruler)}. The stitched line runs from mark to mark through the crossing of the "
        "creases, "
        f"{show_length(marks.half_line, ruler)} on each side of it. Trim {show_length(marks.seam_allowance, ruler)} "
        f"outside it.{turned}"
    )
