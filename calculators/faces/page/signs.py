"""Drawings that have no numbers: the key of all signs and lines, and a fault beside the same thing as it should be."""

import xml.etree.ElementTree as ET

from calculators.drawing import lines
from calculators.drawing.faults import halves
from calculators.drawing.picture import key_picture
from calculators.drawing.signs import SIGNS, alone
from calculators.faces.page.markup import NOT_SEARCHED, element

_PAIR = ("as it should be", "as it is")
#: What only a lay plan or a map of layers has, and keys there.
_OWN_KEY = {lines.REPEAT, lines.STRIP, lines.FLAW, lines.WASTE, lines.PATCH, lines.THICKEST}


def signs_list() -> ET.Element:
    """Every sign with its name and what the maker does."""
    listed = element("dl", {"class": "signs-list"})
    for name, sign in SIGNS.items():
        listed.append(element("dt", {"id": name}, alone(name).svg, " ", sign.title))
        listed.append(element("dd", None, sign.meaning))
    return listed


def lines_list() -> ET.Element:
    """Every line and area that drawings have in common."""
    key = key_picture([style for style in lines.WORDS if style not in _OWN_KEY])
    return element("figure", {"class": "drawing", **NOT_SEARCHED}, key.svg)


def fault_pair(name: str) -> ET.Element:
    """A fault as it should be and as it is, side by side."""
    parts = (
        element("span", {"class": "half"}, picture.svg, element("span", None, words))
        for picture, words in zip(halves(name), _PAIR)
    )
    return element("figure", {"class": "pair", **NOT_SEARCHED}, *parts)
