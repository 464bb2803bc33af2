"""A drawing under construction: lines, areas and words at places given in mm, put to scale on a sheet."""

import xml.etree.ElementTree as ET
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from math import atan2, cos, degrees, fsum, hypot, radians, sin

from calculators.drawing import lines

Real = Fraction | float
Point = tuple[Real, Real]
DrawnLine = tuple[tuple[float, float], tuple[float, float]]
Ring = list[tuple[float, float]]

WIDTH = 360  # drawing units, close to the pixels of a phone held upright, so that 12 stays readable there
ON_SCREENS = (
    600  # drawing units of a drawing laid out anew for a screen, where its words are a little larger than on a phone
)
SIZES = (1, 2, 4)  # how many times as large a drawing can be shown; its words keep their size on the screen
MIDDLE = "in-middle"  # the class of words whose middle, not whose foot, is at the height they are given
_KEY, _KEY_ROW, _KEY_COLUMNS, _SAMPLE = "Key to the drawing", 20, 2, 26
LETTERS = 13.3  # [drawing units] how large letters are on the narrowest phones; elsewhere they are smaller
_TEXT_ROW = 16  # [drawing units] a row of letters
_HIGH = 0.7  # of the letters' size: how high figures and capitals are
_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8)
_BESIDE: list[tuple[int, float, bool]] = [
    (side, share, along) for side in (1, -1) for share in _SHARES for along in (False, True)
]
"""Where the words of a dimension can stand, the best first: on which side of its line, at which share of it, and
whether along it."""
_WIDTHS = {
    letter: wide
    for wide, letters in {
        0.25: " .,'ijl\u00a0",
        0.35: "IJf-()t/;:r",
        0.4: "°",
        0.6: "0123456789",
        0.75: "wDGHNUOQ",
        0.9: "mMW…",
    }.items()
    for letter in letters
}  # of the letters' size, as Rosario sets them; all others are at most 0.63 wide


@dataclass(frozen=True)
class Told:
    """What is told beside the drawing of a step.

    do: one command, its figures between ``**``. line: what belongs to doing it. why: its reason, "" where it needs
    none.
    """

    do: str
    line: str = ""
    why: str = ""


@dataclass(frozen=True)
class Picture:
    """A finished drawing: its SVG element, a title and a description that say in words what it shows.

    caption: what stands below it, if not the title.
    hint: what to point at for words about it, such as "a piece to read its marks"; "" when there is nothing to point
    at. Such a
        drawing can also be enlarged.
    wide: the same drawing laid out for a screen, where that makes another one; it is shown in place of the other.
    told: what a list of steps says beside it, where it is a step.
    crop: the part of it to show small, without its words: left, top, width, height [drawing units]; None where it is to
        be measured in and stays large.
    key: what its lines and areas are, where no word on them says so.
    """

    svg: ET.Element
    title: str
    description: str
    caption: str = ""
    hint: str = ""
    wide: ET.Element | None = None
    told: Told | None = None
    crop: tuple[float, float, float, float] | None = None
    key: ET.Element | None = None


@dataclass(frozen=True)
class PictureSeries:
    """Drawings that follow one another, such as the steps of a corner, and one key to them all.

    played: what moves between them, for a script to show; None where nothing can be played.
    """

    pictures: tuple[Picture, ...]
    key: Picture
    played: ET.Element | None = None


Drawn = Picture | tuple[Picture, ...] | PictureSeries


def pictures_of(drawn: Drawn) -> tuple[Picture, ...]:
    """All pictures of a drawing, those that stand by themselves as those that follow one another."""
    if isinstance(drawn, Picture):
        return (drawn,)
    return drawn.pictures if isinstance(drawn, PictureSeries) else drawn


class Sheet:
    """A sheet to draw on. The drawn part spans `box` in mm; y points up as on paper unless `down` is set.

    margins: left, top, right, bottom, in drawing units, for what stands outside the cloth. width: of the sheet, in
    drawing units. letters: how large they can be [drawing units].
    """

    def __init__(
        self,
        box: tuple[Real, Real, Real, Real],
        margins: tuple[float, float, float, float] = (40, 28, 40, 40),
        down: bool = False,
        tallest: float = 420,
        width: int = WIDTH,
        letters: float = LETTERS,
    ) -> None:
        self.width, self.letters = width, letters
        self.written: list[Ring] = []  # where words stand already
        self.left, self.low, right, high = (float(edge) for edge in box)
        self.margins = margins
        self.scale = min((width - margins[0] - margins[2]) / (right - self.left), tallest / (high - self.low))
        self.down = down
        self.drawn_height = (high - self.low) * self.scale
        self.used: list[str] = []
        self.named: list[tuple[str, str]] = []
        self.said: set[str] = set()  # words that stand on their lines
        self.svg = ET.Element("svg", {"xmlns": "http://www.w3.org/2000/svg", "class": "to-scale", "role": "img"})

    def at(self, point: Point) -> tuple[float, float]:
        """Where a place in mm lies on the sheet, in drawing units."""
        x = self.margins[0] + (float(point[0]) - self.left) * self.scale
        rise = (float(point[1]) - self.low) * self.scale
        return x, self.margins[1] + (rise if self.down else self.drawn_height - rise)

    def back(self, place: Point) -> tuple[float, float]:
        """The place in mm that lies at a place of the sheet [drawing units]."""
        rise = float(place[1]) - self.margins[1]
        x = self.left + (float(place[0]) - self.margins[0]) / self.scale
        return x, self.low + (rise if self.down else self.drawn_height - rise) / self.scale

    @contextmanager
    def pointed_at(self, words: str) -> Iterator[None]:
        """What is drawn meanwhile is one thing that can be pointed at; words: what is then said of it."""
        whole, self.svg = self.svg, ET.SubElement(self.svg, "g", {"class": "pointed-at", "data-words": words})
        yield
        self.svg = whole

    def group(self, style: str) -> ET.Element:
        """A part of the drawing by itself, such as an enlarged corner."""
        return ET.SubElement(self.svg, "g", {"class": style})

    def line(self, style: str, *points: Point, fine: bool = False) -> None:
        """A line through places in mm; fine where a heavy one would leave too little between."""
        if style in lines.WORDS:
            self._use(style)
        ET.SubElement(
            self.svg,
            "polyline",
            {"class": f"{style} fine" if fine else style, "points": _points(self.at(p) for p in points)},
        )

    def cut_off(self, start: Point, end: Point) -> None:
        """Where the drawing stops but the cloth does not: a thin line from start to end [mm] with a zigzag at its
        middle, as in ISO 128."""
        self._use(lines.BREAK)
        ET.SubElement(
            self.svg, "polyline", {"class": lines.BREAK, "points": _points(_zigzag(self.at(start), self.at(end)))}
        )

    def area(self, style: str, points: Sequence[Point], pattern: bool = False) -> None:
        """A closed shape; with pattern, filled with the weave or hatch of its style."""
        attributes = {"class": style, "points": _points(self.at(p) for p in points)}
        if style in lines.WORDS:
            self._use(style)
        if pattern:
            attributes["fill"] = f"url(#{_filling(style)})"
        ET.SubElement(self.svg, "polygon", attributes)

    def ellipse(self, style: str, middle: Point, reach: Point) -> None:
        """A round shape about a place; reach: across and up [mm]."""
        (x, y), (across, up) = self.at(middle), (float(each) * self.scale for each in reach)
        ET.SubElement(
            self.svg,
            "ellipse",
            {"class": style, "cx": _round(x), "cy": _round(y), "rx": _round(across), "ry": _round(up)},
        )

    def rings(self, style: str, rings: Sequence[Sequence[Point]]) -> None:
        """An area of several closed shapes, holes among them."""
        self._use(style)
        path = "".join(f"M{_points(self.at(p) for p in ring)}Z" for ring in rings)
        fill = {"fill": f"url(#{_filling(style)})"} if style in lines.HATCHES else {}
        ET.SubElement(self.svg, "path", {"class": style, "d": path, "fill-rule": "evenodd", **fill})

    def boxes(self, style: str, corners: Sequence[Sequence[Point]]) -> None:
        """Many upright rectangles in the hatch of one style, each as its four corners, in few letters: an order may
        have a thousand."""
        path = ""
        for ring in corners:
            (left, top), (right, low) = self.at(ring[0]), self.at(ring[2])
            path += f"M{_round(left)} {_round(top)}H{_round(right)}V{_round(low)}H{_round(left)}Z"
        ET.SubElement(self.svg, "path", {"class": style, "d": path, "fill": f"url(#{_filling(style)})"})

    def shade(self, rings: Sequence[Sequence[Point]], share: float) -> None:
        """An area in a tone of ink: from 0, none, to 1, full."""
        path = "".join(f"M{_points(self.at(p) for p in ring)}Z" for ring in rings)
        ET.SubElement(self.svg, "path", {"class": "shade-ground", "d": path, "fill-rule": "evenodd"})
        ET.SubElement(
            self.svg,
            "path",
            {"class": "shade", "d": path, "fill-rule": "evenodd", "fill-opacity": f"{share * 0.6:.3f}"},
        )

    def words(
        self,
        text: str,
        place: Point,
        style: str = "label",
        anchor: str = "middle",
        shift: Point = (0, 0),
        sizes: Sequence[int] = (),
    ) -> None:
        """A label at a place in mm, shifted in drawing units; one too long for the sheet goes on below, divided at its
        semicolons.

        sizes: at which sizes of the drawing it is shown, of SIZES; at all when empty.
        """
        x, y = self.at(place)
        room = self.width - (x + shift[0] if anchor == "start" else 0)
        rows = text.split("; ") if text_width(text) > room else [text]
        for row, part in enumerate(rows):
            if not sizes:
                at = (x + shift[0], y + shift[1] + row * _TEXT_ROW)
                self.written.append(self._taken(part, at, anchor, middle=MIDDLE in style))
            attributes = {
                "class": style,
                "x": _round(x + shift[0]),
                "y": _round(y + shift[1] + row * _TEXT_ROW),
                "text-anchor": anchor,
            }
            if sizes and tuple(sizes) != SIZES:
                attributes["data-at"] = " ".join(map(str, sizes))
            ET.SubElement(self.svg, "text", attributes).text = part

    def along(self, text: str, start: Point, end: Point) -> None:
        """A word on a line from start to end [mm], at its middle, to be read from below or from the right; left out
        where the line is too short or other words stand there."""
        (x1, y1), (x2, y2) = self.at(start), self.at(end)
        if hypot(x2 - x1, y2 - y1) < text_width(text, self.letters) + 12:
            return
        lean = _upright(degrees(atan2(y2 - y1, x2 - x1)))
        taken = self._taken(text, ((x1 + x2) / 2, (y1 + y2) / 2), lean=lean)
        if any(_meet(taken, other) for other in self.written):
            return
        self.written.append(taken)
        self.said.add(text)
        x, y = _round((x1 + x2) / 2), _round((y1 + y2) / 2)
        turned = {"transform": f"rotate({_round(lean)} {x} {y})"} if _round(lean) != "0" else {}
        ET.SubElement(
            self.svg, "text", {"class": f"on-line {MIDDLE}", "x": x, "y": y, "text-anchor": "middle", **turned}
        ).text = text

    def tick(self, place: Point, direction: Point, style: str = lines.MARK) -> None:
        """A short mark across an edge at a place in mm; direction is in drawing units."""
        self._use(style)
        x, y = self.at(place)
        dx, dy = direction
        ET.SubElement(self.svg, "polyline", {"class": style, "points": _points([(x - dx, y - dy), (x + dx, y + dy)])})

    def dimension(self, start: Point, end: Point, text: str, away: float) -> None:
        """A dimension line beside start–end, `away` units to its left as seen going from start to end."""
        (x1, y1), (x2, y2) = self.at(start), self.at(end)
        length = hypot(x2 - x1, y2 - y1) or 1
        ux, uy = (x2 - x1) / length, (y2 - y1) / length
        nx, ny = uy, -ux
        a, b = (x1 + nx * away, y1 + ny * away), (x2 + nx * away, y2 + ny * away)
        for foot, head in (((x1, y1), a), ((x2, y2), b)):
            reach = (head[0] + nx * 3, head[1] + ny * 3)
            ET.SubElement(self.svg, "polyline", {"class": "dimension extension", "points": _points([foot, reach])})
        ET.SubElement(self.svg, "polyline", {"class": "dimension", "points": _points([a, b])})
        for x, y in (a, b):
            slash = [(x - (ux + nx) * 3, y - (uy + ny) * 3), (x + (ux + nx) * 3, y + (uy + ny) * 3)]
            ET.SubElement(self.svg, "polyline", {"class": "dimension", "points": _points(slash)})
        self._beside(a, b, (nx, ny), text)

    def _beside(self, a: Point, b: Point, way: Point, text: str) -> None:
        """A dimension's words beside its line from a to b, in the direction `way`: at its middle where no other words
        stand and the sheet does not end, or else along the line, or nearer to one of its ends, or on its other side.

        The limit stands off the sine of 30°, where a float's last digit would decide.
        """
        choices: list[tuple[int, int, float, float, str, float, Ring]] = []
        for side, share, along in _BESIDE:
            nx, ny = float(way[0]) * side, float(way[1]) * side
            anchor = "middle" if along or abs(nx) < 0.499 else ("start" if nx > 0 else "end")
            off = 10 if along else 8
            x = float(a[0] + (b[0] - a[0]) * share + nx * off)
            y = float(a[1] + (b[1] - a[1]) * share + ny * off)
            lean = _upright(degrees(atan2(nx, -ny))) if along else 0.0
            if anchor == "middle" and not lean:  # words longer than their line may stand out at one end only
                half = text_width(text, self.letters) / 2
                x = max(half, min(x, self.width - half))
            taken = self._taken(text, (x, y), anchor, lean=lean)
            choices.append((self._over(taken), len(choices), x, y, anchor, lean, taken))
            if not choices[-1][0]:
                break
        _, _, x, y, anchor, lean, taken = min(choices)
        self.written.append(taken)
        place = {"x": _round(x), "y": _round(y), "text-anchor": anchor}
        if lean:
            place["transform"] = f"rotate({_round(lean)} {_round(x)} {_round(y)})"
        ET.SubElement(self.svg, "text", {"class": f"dimension-text {MIDDLE}", **place}).text = text

    def _taken(self, text: str, place: Point, anchor: str = "middle", lean: float = 0.0, middle: bool = True) -> Ring:
        """The corners of what words take up, turned by their lean [degrees] about the place they are anchored at."""
        x, y = float(place[0]), float(place[1])
        wide, high = text_width(text, self.letters), _HIGH * self.letters
        left = -wide * {"start": 0, "middle": 0.5, "end": 1}[anchor]
        top = -high / 2 if middle else -high
        across, down = cos(radians(lean)), sin(radians(lean))
        corners = ((left, top), (left + wide, top), (left + wide, top + high), (left, top + high))
        return [(x + u * across - v * down, y + u * down + v * across) for u, v in corners]

    def _over(self, taken: Ring) -> int:
        """How many words stand there already, one more for each side of the sheet that it leaves."""
        xs, ys = zip(*taken)
        high = self.margins[1] + self.drawn_height + self.margins[3]
        strays: int = (min(xs) < 0) + (max(xs) > self.width) + (min(ys) < 0) + (max(ys) > high)
        return strays + sum(_meet(taken, other) for other in self.written)

    def first_clear(self, text: str, places: Sequence[Point], anchor: str = "middle", shift: Point = (0, 0)) -> None:
        """A label at the first of several places [mm] where no other words stand, shifted in drawing units; its middle
        is at the height of the place."""
        choices: list[int] = []
        for x, y in map(self.at, places):
            choices.append(self._over(self._taken(text, (x + shift[0], y + shift[1]), anchor)))
            if not choices[-1]:
                break
        place = places[choices.index(min(choices))]
        self.words(text, place, style=f"label {MIDDLE}", anchor=anchor, shift=shift)

    def name(self, style: str, words: str) -> None:
        """Give a style a place in the key under words of this drawing's own."""
        self.named.append((style, words))

    def grain(self, place: Point, along_x: bool) -> None:
        """The grain arrow: the direction of the warp, at a place in mm."""
        x, y = self.at(place)
        dx, dy = (16, 0) if along_x else (0, 16)
        heads = [((x + dx, y + dy), -1), ((x - dx, y - dy), 1)]
        ET.SubElement(self.svg, "polyline", {"class": "grain", "points": _points([(x - dx, y - dy), (x + dx, y + dy)])})
        for (hx, hy), back in heads:
            wings = (
                [(hx + back * 5, hy - 4), (hx, hy), (hx + back * 5, hy + 4)]
                if along_x
                else [(hx - 4, hy + back * 5), (hx, hy), (hx + 4, hy + back * 5)]
            )
            ET.SubElement(self.svg, "polyline", {"class": "grain", "points": _points(wings)})
        if along_x:
            self.words("grain", place, shift=(0, -6))
        else:
            self.words("grain", place, style=f"label {MIDDLE}", anchor="start", shift=(8, 0))

    def finish(self, title: str, description: str, with_key: bool = True, caption: str = "", hint: str = "") -> Picture:
        """Close the drawing with its words for those who cannot see it, and with its key."""
        foot = max((y for taken in self.written for _, y in taken), default=0.0)
        high = max(self.margins[1] + self.drawn_height + self.margins[3], foot + 2)
        key = key_of(self._keyed(), self.width) if with_key else None
        return replace(self._closed(title, description, high, caption), hint=hint, key=key)

    def _keyed(self) -> list[tuple[str, str]]:
        """Every style of the drawing with its words, but for those whose word stands on their line."""
        used = ((style, lines.WORDS[style]) for style in self.used)
        return [*self.named, *((style, words) for style, words in used if _bare(words) not in self.said)]

    def _closed(self, title: str, description: str, height: float, caption: str = "") -> Picture:
        self.svg.set("viewBox", f"0 0 {self.width} {_round(height)}")
        self.svg.set("aria-label", f"{title}. {description}")
        return Picture(self.svg, title, description, caption)

    def _use(self, style: str) -> None:
        if style not in self.used:
            self.used.append(style)


def fillings() -> ET.Element:
    """The weaves and hatches that areas are filled with. They stand once on a page that shows drawings."""
    svg = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "class": "to-scale fillings",
            "width": "0",
            "height": "0",
            "aria-hidden": "true",
        },
    )
    definitions = ET.SubElement(svg, "defs")
    for hatches, field in ((lines.HATCHES, "6"), (lines.KINDS, "10")):
        for style, hatch in hatches.items():
            pattern = ET.SubElement(
                definitions,
                "pattern",
                {"id": _filling(style), "width": field, "height": field, "patternUnits": "userSpaceOnUse"},
            )
            ET.SubElement(pattern, "rect", {"class": f"{style}-ground", "width": field, "height": field})
            ET.SubElement(pattern, "path", {"class": f"{style}-hatch", "d": hatch})
    return svg


@lru_cache(maxsize=4096)
def text_width(text: str, letters: float = LETTERS) -> float:
    """How wide words are drawn in letters of a size, rather too much than too little [drawing units]."""
    return fsum(_WIDTHS.get(letter, 0.63) for letter in text) * letters  # rounded once, so alike in every Python


def stands_out(text: str, length: float) -> float:
    """How far words along a line stand out at each of its ends; length: of the line [drawing units]."""
    return max(0.0, (text_width(text) - length) / 2)


def _meet(one: Ring, other: Ring) -> bool:
    """Whether two rectangles, however turned, lie over each other: no line along a side of either parts them."""
    for ring in (one, other):
        for (ax, ay), (bx, by) in zip(ring[:2], ring[1:3]):
            mine, theirs = ([(bx - ax) * x + (by - ay) * y for x, y in each] for each in (one, other))
            if max(mine) <= min(theirs) or max(theirs) <= min(mine):
                return False
    return True


def _filling(style: str) -> str:
    return f"filling-{style}"


def _zigzag(start: Point, end: Point) -> list[Point]:
    """A break line from start to end [drawing units]."""
    (x1, y1), (x2, y2) = start, end
    length = hypot(x2 - x1, y2 - y1) or 1
    ux, uy = (x2 - x1) / length, (y2 - y1) / length
    size = min(5.0, length / 4)
    turns = ((-size, 0), (-size / 2, size), (size / 2, -size), (size, 0))
    return [
        start,
        *(((x1 + x2) / 2 + ux * on - uy * out, (y1 + y2) / 2 + uy * on + ux * out) for on, out in turns),
        end,
    ]


def _upright(lean: float) -> float:
    """The turn of a word on a line of this lean, so that it is read from below or from the right [degrees, clockwise,
    from -90 to less than 90]."""
    return (lean + 90.001) % 180 - 90.001


def _round(value: Real) -> str:
    """Tenths, as they are written on the sheet; shifted a little, so that a float's last digit never decides over a
    half."""
    tenths = f"{float(value) + 1e-6:.1f}".removesuffix(".0")
    return "0" if tenths == "-0" else tenths


def _points(places: Iterable[Point]) -> str:
    return " ".join(f"{_round(x)},{_round(y)}" for x, y in places)


def key_picture(styles: Sequence[str]) -> Picture:
    """The key of several drawings."""
    svg = key_of([(style, lines.WORDS[style]) for style in styles])
    if svg is None:
        raise ValueError("drawings without a line have no key")
    return Picture(svg, f"{_KEY}s", svg.get("aria-label", ""), caption=f"{_KEY}s")


def key_of(keyed: Sequence[tuple[str, str]], width: int = WIDTH) -> ET.Element | None:
    """Styles with their words as a drawing of its own; None where there are none. width: in drawing units."""
    if not keyed:
        return None
    named = ", ".join(_bare(words) for _, words in keyed)
    rows = -(-len(keyed) // _KEY_COLUMNS)
    svg = ET.Element("svg", {
        "xmlns": "http://www.w3.org/2000/svg", "class": "to-scale", "role": "img",
        "viewBox": f"0 0 {width} {rows * _KEY_ROW}", "aria-label": f"{_KEY}: {named}.",
    })  # fmt: skip
    for index, (style, words) in enumerate(keyed):
        x = 8 + (index % _KEY_COLUMNS) * (width / _KEY_COLUMNS)
        y = _KEY_ROW / 2 + (index // _KEY_COLUMNS) * _KEY_ROW
        if style in lines.AREAS:
            box = {"x": _round(x), "y": _round(y - 5), "width": str(_SAMPLE), "height": "10"}
            fill = {"fill": f"url(#{_filling(style)})"} if style in lines.HATCHES or style in lines.KINDS else {}
            ET.SubElement(svg, "rect", {"class": style, **box, **fill})
            ET.SubElement(svg, "rect", {"class": "dimension", **box, "fill": "none"})
        else:
            sample = (x, y), (x + _SAMPLE, y)
            ET.SubElement(
                svg,
                "polyline",
                {"class": style, "points": _points(_zigzag(*sample) if style == lines.BREAK else sample)},
            )
        ET.SubElement(
            svg, "text", {"class": f"keyed {MIDDLE}", "x": _round(x + _SAMPLE + 6), "y": _round(y)}
        ).text = words
    return svg


def _bare(words: str) -> str:
    """The words of a style without the sign before them."""
    return words.removeprefix("✂ ")


def rectangle(left: Real, low: Real, right: Real, high: Real) -> list[Point]:
    return [(left, low), (right, low), (right, high), (left, high)]


def part_within(start: Point, end: Point, box: tuple[Real, Real, Real, Real]) -> DrawnLine | None:
    """The part of a line inside an upright box, given by its least x and y and its greatest; None where it misses
    it."""
    first, last = 0.0, 1.0
    begin, finish = (float(start[0]), float(start[1])), (float(end[0]), float(end[1]))
    run = (finish[0] - begin[0], finish[1] - begin[1])
    for at, way, lowest, highest in zip(begin, run, map(float, box[:2]), map(float, box[2:])):
        if abs(way) < 1e-12:
            if not lowest - 1e-9 <= at <= highest + 1e-9:
                return None
            continue
        near, beyond = sorted(((lowest - at) / way, (highest - at) / way))
        first, last = max(first, near), min(last, beyond)
    if last - first < 1e-9:
        return None
    begins, ends = (
        (begin[0] + run[0] * share, begin[1] + run[1] * share) if 0 < share < 1 else (begin if share <= 0 else finish)
        for share in (first, last)
    )
    return begins, ends


def thinned(places: Sequence[Fraction], scale: float, room: float) -> list[int]:
    """Which of several labelled places can carry their label: indices at least `room` units apart, the last always
    among them."""
    if not places:
        return []
    kept = [len(places) - 1]
    for index in range(len(places) - 2, -1, -1):
        if float(places[kept[-1]] - places[index]) * scale >= room:
            kept.append(index)
    return kept[::-1]
