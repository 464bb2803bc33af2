"""Gauges drawn in their true size, cut into sheets that overlap when one page is too small."""

import xml.etree.ElementTree as ET
from math import ceil

from calculators.drawing import lines
from calculators.drawing.picture import Picture, PictureSeries, key_picture
from calculators.trade.corners.gauge import Gauge
from calculators.values.measure import Ruler, show_length

PAPERS = {
    "a4": (164.0, 208.0),
    "letter": (170.0, 190.0),
}  # [mm] of gauge; a wider sheet would make the browser print the page smaller
PAPER_NAMES = {"a4": "A4", "letter": "Letter"}
OVERLAP = 10.0  # [mm] of one sheet on the next
CHECK_BARS = ((100.0, "10 cm"), (101.6, "4 in"))
ALONE = "Print at full size, check the bars with a ruler, then cut along the edge."
GLUED = (
    "Print at full size and check the bars with a ruler. Cut along the outer thin line, glue on the thin line "
    "of the "
    "sheet beside or below, then cut along the edge."
)
JOIN = "dimension"  # the style of the thin lines where sheets meet
PX = 96 / 25.4  # drawing units in a millimetre of paper
EDGE, BARS = 5.0, 24.0  # [mm] around the gauge, and below it for the check bars

STYLES = {"cut": lines.EDGE, "fold": lines.FOLD, "stitch": lines.STITCH, "mark": lines.MARK, "trim": lines.CUT}


def gauge_sheets(gauge: Gauge, paper: str, ruler: Ruler) -> PictureSeries:
    """The gauge in its true size, one picture a sheet of paper, each with check bars of 10 cm and 4 in.

    paper: "a4" or "letter"; ruler: the one measures are written in.
    """
    left, low, right, high = gauge.box
    width, height = PAPERS[paper]
    across, up = _sheets(right - left, width), _sheets(high - low, height)
    pictures = [
        _sheet(gauge, (column, row), (across, up), paper, ruler) for row in range(up) for column in range(across)
    ]
    styles = [style for style in lines.WORDS if style in {STYLES[line.kind] for line in gauge.lines}]
    return PictureSeries(tuple(pictures), key_picture(styles))


def _sheets(size: float, of_paper: float) -> int:
    return max(1, ceil((size - OVERLAP) / (of_paper - OVERLAP)))


def _sheet(gauge: Gauge, place: tuple[int, int], of: tuple[int, int], paper: str, ruler: Ruler) -> Picture:
    (column, row), (across, up), (width, height) = place, of, PAPERS[paper]
    left, low, right, high = gauge.box
    left, low = left + column * (width - OVERLAP), low + row * (height - OVERLAP)
    shown_width, shown_height = min(width, right - left), min(height, high - low)
    paper_width, paper_height = max(shown_width, CHECK_BARS[-1][0]) + 2 * EDGE, shown_height + 2 * EDGE + BARS
    svg = ET.Element("svg", {"xmlns": "http://www.w3.org/2000/svg", "class": "to-scale true-size", "role": "img"})
    svg.set("width", f"{paper_width:.2f}mm")
    svg.set("height", f"{paper_height:.2f}mm")
    svg.set("viewBox", f"0 0 {_units(paper_width)} {_units(paper_height)}")

    def at(place) -> tuple[float, float]:
        return EDGE + float(place[0]) - left, EDGE + shown_height - (float(place[1]) - low)

    for line in gauge.lines:
        part = _within(at(line.start), at(line.end), (EDGE, EDGE, EDGE + shown_width, EDGE + shown_height))
        if part:
            _line(svg, STYLES[line.kind], *part)
            named = at(tuple(float(a) + (float(b) - float(a)) * line.named_at for a, b in zip(line.start, line.end)))
            if line.name and EDGE <= named[0] <= EDGE + shown_width and EDGE <= named[1] <= EDGE + shown_height:
                _words(svg, show_length(gauge.measures[line.name], ruler), (named[0] + 3, named[1] - 1.5))
    begins = [EDGE] * (column > 0) + [EDGE + width - OVERLAP] * (column < across - 1)
    for x in begins:
        _line(svg, JOIN, (x, EDGE), (x, EDGE + shown_height))
    ends = [EDGE + shown_height] * (row > 0) + [EDGE + OVERLAP] * (row < up - 1)
    for y in ends:
        _line(svg, JOIN, (EDGE, y), (EDGE + shown_width, y))
    for number, (bar, words) in enumerate(CHECK_BARS):
        y = EDGE + shown_height + EDGE + 6 + number * 9
        _line(svg, "check", (EDGE, y), (EDGE + bar, y))
        for end in (EDGE, EDGE + bar):
            _line(svg, "check", (end, y - 2), (end, y + 2))
        _words(svg, f"check: this bar is {words}", (EDGE + 3, y - 1.5))
    title = f"Sheet {row * across + column + 1} of {across * up}"
    description = (
        f"A gauge in true size on {PAPER_NAMES[paper]}. Print without fitting to the page, and check both "
        "bars with "
        "a ruler before cutting."
    )
    svg.set("aria-label", f"{title}. {description}")
    return Picture(svg, title, description, caption=GLUED if across * up > 1 else ALONE)


def _within(start, end, box):
    """The part of a line inside an upright box, or None."""
    first, last = 0.0, 1.0
    run = (end[0] - start[0], end[1] - start[1])
    for axis, (lowest, highest) in enumerate(((box[0], box[2]), (box[1], box[3]))):
        if abs(run[axis]) < 1e-12:
            if not lowest - 1e-9 <= start[axis] <= highest + 1e-9:
                return None
            continue
        near, beyond = sorted(((lowest - start[axis]) / run[axis], (highest - start[axis]) / run[axis]))
        first, last = max(first, near), min(last, beyond)
    if last - first < 1e-9:
        return None
    return tuple(
        (start[0] + run[0] * share, start[1] + run[1] * share) if 0 < share < 1 else (start if share <= 0 else end)
        for share in (first, last)
    )


def _line(svg: ET.Element, style: str, start, end) -> None:
    (x1, y1), (x2, y2) = start, end
    places = {"x1": _units(x1), "y1": _units(y1), "x2": _units(x2), "y2": _units(y2)}
    ET.SubElement(svg, "line", {"class": style, **places})


def _words(svg: ET.Element, text: str, place) -> None:
    ET.SubElement(svg, "text", {"class": "label", "x": _units(place[0]), "y": _units(place[1])}).text = text


def _units(mm: float) -> str:
    """Millimetres of paper in drawing units, to a hundredth: far finer than any printer."""
    return f"{mm * PX:.2f}"
