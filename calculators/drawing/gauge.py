"""Gauges drawn in their true size, cut into sheets that overlap when one page is too small."""

import xml.etree.ElementTree as ET
from dataclasses import replace
from math import ceil

from calculators.drawing import lines
from calculators.drawing.picture import Picture, PictureSeries, Point, key_picture, part_within, text_width
from calculators.trade.corners.gauge import Gauge
from calculators.values.measure import Ruler, show_length

Place = tuple[float, float]  # [mm] on a sheet of paper
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
LETTERS = 12.5  # drawing units
BESIDE, ABOVE = 3.0, 1.5  # [mm] between a place and the words for it
ELSEWHERE = (0.8, 0.45, 0.9, 0.3)  # shares of a line where its words can stand too
PX = 96 / 25.4  # drawing units in a millimetre of paper
EDGE, BARS = 5.0, 24.0  # [mm] around the gauge, and below it for the check bars

STYLES = {"cut": lines.EDGE, "fold": lines.FOLD, "stitch": lines.STITCH, "mark": lines.MARK, "trim": lines.CUT}


def gauge_sheets(gauge: Gauge, paper: str, ruler: Ruler, name: str = "", told: str = "") -> PictureSeries:
    """The gauge in its true size, one picture a sheet of paper, each with check bars of 10 cm and 4 in.

    paper: "a4" or "letter"; ruler: the one measures are written in. name: what is printed, where it is no gauge. told:
    sentences about it that every sheet bears, before how it is printed.
    """
    left, low, right, high = gauge.box
    width, height = PAPERS[paper]
    across, up = _sheets(right - left, width), _sheets(high - low, height)
    pictures = [
        _sheet(gauge, (column, row), (across, up), paper, ruler, name) for row in range(up) for column in range(across)
    ]
    if told:
        pictures = [replace(each, caption=f"{told} {each.caption}") for each in pictures]
    styles = [style for style in lines.WORDS if style in {STYLES[line.kind] for line in gauge.lines}]
    return PictureSeries(tuple(pictures), key_picture(styles))


def _sheets(size: float, of_paper: float) -> int:
    return max(1, ceil((size - OVERLAP) / (of_paper - OVERLAP)))


def sheets_of(gauge: Gauge, paper: str) -> int:
    """How many sheets of paper it takes."""
    left, low, right, high = gauge.box
    width, height = PAPERS[paper]
    return _sheets(right - left, width) * _sheets(high - low, height)


def _sheet(gauge: Gauge, place: tuple[int, int], of: tuple[int, int], paper: str, ruler: Ruler, name: str) -> Picture:
    (column, row), (across, up), (width, height) = place, of, PAPERS[paper]
    left, low, right, high = gauge.box
    left, low = left + column * (width - OVERLAP), low + row * (height - OVERLAP)
    shown_width, shown_height = min(width, right - left), min(height, high - low)
    paper_width, paper_height = max(shown_width, CHECK_BARS[-1][0]) + 2 * EDGE, shown_height + 2 * EDGE + BARS
    svg = ET.Element("svg", {"xmlns": "http://www.w3.org/2000/svg", "class": "to-scale true-size", "role": "img"})
    svg.set("width", f"{paper_width:.2f}mm")
    svg.set("height", f"{paper_height:.2f}mm")
    svg.set("viewBox", f"0 0 {_units(paper_width)} {_units(paper_height)}")

    def at(place: Point) -> Place:
        return EDGE + float(place[0]) - left, EDGE + shown_height - (float(place[1]) - low)

    for line in gauge.lines:
        part = part_within(at(line.start), at(line.end), (EDGE, EDGE, EDGE + shown_width, EDGE + shown_height))
        if part:
            _line(svg, STYLES[line.kind], *part)
    written: list[tuple[str, Place]] = []
    for words, named in _named(gauge, ruler):
        x, y = at(named)
        if EDGE <= x <= EDGE + shown_width and EDGE <= y <= EDGE + shown_height:
            wide = text_width(words, LETTERS) / PX
            beyond = x + BESIDE + wide > paper_width
            _words(svg, words, (x - BESIDE if beyond else x + BESIDE, y - ABOVE), ends=beyond)
            written.append((words, (x - BESIDE - wide if beyond else x + BESIDE, y - ABOVE)))
    if name:
        for words, places in _beside(place, of, (shown_width, shown_height)):
            clear = (each for each in places if not any(_run_into(words, each, *other) for other in written))
            written.append((words, next(clear, places[0])))
            _words(svg, *written[-1])
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
    title = f"{f'{name}, sheet' if name else 'Sheet'} {row * across + column + 1} of {across * up}"
    description = (
        f"{name or 'A gauge'} in true size on {PAPER_NAMES[paper]}. Print without fitting to the page, and check both "
        "bars with "
        "a ruler before cutting."
    )
    svg.set("aria-label", f"{title}. {description}")
    return Picture(svg, title, description, caption=GLUED if across * up > 1 else ALONE)


def _beside(place: tuple[int, int], of: tuple[int, int], shown: Place) -> list[tuple[str, list[Place]]]:
    """Which sheet is glued on at which side, and where that can be written [mm], the best first."""
    (column, row), (across, up), (width, height) = place, of, shown
    number = row * across + column + 1
    along = (1 / 3, 2 / 3, *ELSEWHERE)
    right = [(EDGE + width - 2 * OVERLAP, EDGE + height * share) for share in along]
    top = [(EDGE + width * share, EDGE + OVERLAP / 2) for share in along]
    beside, above = (f"sheet {number + 1}", right), (f"sheet {number + across}", top)
    return [beside] * (column < across - 1) + [above] * (row < up - 1)


def _named(gauge: Gauge, ruler: Ruler) -> list[tuple[str, Place]]:
    """The measures written on a gauge and where [mm]: marks at their own place, those of other lines somewhere along
    them."""
    found: list[tuple[str, Place]] = []
    for line in sorted((line for line in gauge.lines if line.name), key=lambda line: line.kind != "mark"):
        words = show_length(gauge.measures[line.name], ruler)
        places = [
            (
                float(line.start[0]) + float(line.end[0] - line.start[0]) * share,
                float(line.start[1]) + float(line.end[1] - line.start[1]) * share,
            )
            for share in ((line.named_at,) if line.kind == "mark" else (line.named_at, *ELSEWHERE))
        ]
        clear = (place for place in places if not any(_run_into(words, place, *other) for other in found))
        found.append((words, next(clear, places[0])))
    return found


def _run_into(words: str, place: Place, other: str, there: Place) -> bool:
    """Whether words at two places [mm] would lie on each other."""
    (left, first), (right, second) = sorted(((place[0], words), (there[0], other)))
    return right - left < text_width(first, LETTERS) / PX + ABOVE and abs(place[1] - there[1]) < LETTERS / PX


def _line(svg: ET.Element, style: str, start: Place, end: Place) -> None:
    (x1, y1), (x2, y2) = start, end
    places = {"x1": _units(x1), "y1": _units(y1), "x2": _units(x2), "y2": _units(y2)}
    ET.SubElement(svg, "line", {"class": style, **places})


def _words(svg: ET.Element, text: str, place: Place, ends: bool = False) -> None:
    """Words that begin at a place, or end there."""
    anchor = {"text-anchor": "end"} if ends else {}
    ET.SubElement(svg, "text", {"class": "label", "x": _units(place[0]), "y": _units(place[1]), **anchor}).text = text


def _units(mm: float) -> str:
    """Millimetres of paper in drawing units, to a hundredth: far finer than any printer."""
    return f"{mm * PX:.2f}"
