"""A drawing for where there is no room for words: cloth and lines alone, cropped to them."""

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator

from calculators.drawing import lines
from calculators.drawing.picture import Picture

#: What only says something in words, or shows that the cloth runs on.
_LEFT_OUT = {lines.BREAK, "dimension", "grain", "enlarged", "leader"}
_AROUND = 3  # [drawing units] left free around what is drawn, for the width of its lines
_NUMBERS = re.compile(r"-?\d+(?:\.\d+)?")
_PART_OF_PATH = re.compile(r"([MLHVZ])([^MLHVZ]*)")

Place = tuple[float, float]


def made_small(picture: Picture) -> ET.Element:
    """The drawing without its words and dimensions; its title still says what it shows.

    Raises ValueError where nothing is left to be seen.
    """
    svg = picture.svg
    _leave_out(svg)
    xs, ys = zip(*places_of(svg))
    box = (min(xs) - _AROUND, min(ys) - _AROUND, max(xs) - min(xs) + 2 * _AROUND, max(ys) - min(ys) + 2 * _AROUND)
    svg.set("viewBox", " ".join(f"{each:.1f}" for each in box))
    svg.set("aria-label", picture.title)
    return svg


def _leave_out(part: ET.Element) -> None:
    for each in list(part):
        if each.tag == "text" or set(each.get("class", "").split()) & _LEFT_OUT:
            part.remove(each)
        else:
            _leave_out(each)


def places_of(svg: ET.Element) -> Iterator[Place]:
    """Every corner and end of what is drawn [drawing units]."""
    for each in svg.iter():
        numbers = [float(found) for found in _NUMBERS.findall(each.get("points", ""))]
        yield from zip(numbers[::2], numbers[1::2])
        yield from _places_of_path(each.get("d", ""))
        if each.tag == "ellipse":
            x, y, across, up = (float(each.get(name, 0)) for name in ("cx", "cy", "rx", "ry"))
            yield from ((x - across, y - up), (x + across, y + up))


def _places_of_path(path: str) -> Iterator[Place]:
    x = y = 0.0
    for letter, told in _PART_OF_PATH.findall(path):
        numbers = [float(found) for found in _NUMBERS.findall(told)]
        if letter == "H":
            pairs = [(each, y) for each in numbers]
        elif letter == "V":
            pairs = [(x, each) for each in numbers]
        else:
            pairs = list(zip(numbers[::2], numbers[1::2]))
        for x, y in pairs:
            yield x, y
