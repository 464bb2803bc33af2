"""Where the words of a drawing stand, measured with the very letters that pages are set in."""

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from functools import cache
from itertools import combinations
from pathlib import Path

from PIL import ImageFont
from shapely import affinity
from shapely.geometry import Polygon, box

FONT = ImageFont.truetype(Path(__file__).parents[2] / "docs/assets/fonts/rosario.woff2", 100)
HIGH = 0.7  # of the letters' size: how high figures and capitals are
NEAR = 0.3  # [drawing units] that places are rounded by


@cache
def width(text: str) -> float:
    """How wide words are, of letters of size 1."""
    return FONT.getlength(text, features=["lnum", "tnum"]) / 100


def words(svg: ET.Element, letters: float, size: int = 1) -> Iterator[tuple[str, Polygon]]:
    """What is written at one size of a drawing, with the place that it takes [drawing units of the enlarged drawing].

    letters: their size [drawing units]; size: how many times the drawing is enlarged, under which letters stay.
    """
    for node in svg.iter("text"):
        if not node.text or str(size) not in node.get("data-at", str(size)).split():
            continue
        x, y = float(node.get("x")) * size, float(node.get("y")) * size
        own = float(node.get("font-size", letters))
        wide = width(node.text) * own
        left = x - wide * {"start": 0, "middle": 0.5, "end": 1}[node.get("text-anchor", "start")]
        low = y + HIGH * own / 2 if "in-middle" in node.get("class").split() else y
        place = box(left + NEAR, low - HIGH * own + NEAR, left + wide - NEAR, low - NEAR)
        if turned := re.match(r"rotate\(([-\d.]+) ([-\d.]+) ([-\d.]+)\)", node.get("transform", "")):
            place = affinity.rotate(place, float(turned[1]), (float(turned[2]) * size, float(turned[3]) * size))
        yield node.text, place


def faults(svg: ET.Element, letters: float, size: int = 1) -> list[str]:
    """What is written over something else that is written, or leaves its sheet."""
    found = list(words(svg, letters, size))
    _, _, across, down = (float(at) * size for at in svg.get("viewBox").split())
    sheet = box(-2, -2, across + 2, down + 2)
    strays = [f"“{text}” leaves its sheet" for text, place in found if not sheet.covers(place)]
    clashes = [f"“{a}” lies on “{b}”" for (a, one), (b, other) in combinations(found, 2) if one.intersects(other)]
    return strays + clashes
