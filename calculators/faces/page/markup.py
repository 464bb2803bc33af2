"""HTML built as elements, never as pasted text, so that whatever a person typed is escaped on the way out."""

import re
import xml.etree.ElementTree as ET
from collections.abc import Mapping
from functools import cache

from calculators.values.kind import units

Attributes = Mapping[str, str | bool | None]
Content = ET.Element | str | None
#: What the search leaves out, so that the words of forms and drawings do not stand in for those of the text.
NOT_SEARCHED = {"data-search-exclude": ""}
_ONLY_IN_PAGES = ("°C", "°F", "tex", "den")  # units that no calculator asks for or answers in
LONGEST_LINE = 200  # more than any kind reads, so that what was pasted is refused rather than cut to something else
_AS_WRITTEN = {"textarea", "option", "code", "pre", "script"}


def together(text: str) -> str:
    """The text with every number held on one line with its unit and its fraction, by spaces that do not break."""
    return _before_unit(tuple(units())).sub("\N{NO-BREAK SPACE}", text)


@cache
def _before_unit(of_kinds: tuple[str, ...]) -> re.Pattern[str]:
    """The space before a unit, a fraction, or a number after about."""
    named = "|".join(map(re.escape, (*of_kinds, *_ONLY_IN_PAGES)))
    return re.compile(rf"(?<=\d) (?=(?:{named})(?!\w)|\d+/\d)|(?<=\babout) (?=\d)")


def element(tag: str, attributes: Attributes | None = None, *content: Content) -> ET.Element:
    """An element with its content: texts and elements in order; None is left out.

    An attribute that is True stands alone; one that is None or False is left out.
    """
    kept = {
        name: "" if value is True else str(value)
        for name, value in (attributes or {}).items()
        if value is not None and value is not False
    }
    made = ET.Element(tag, kept)
    add(made, *content)
    return made


def add(parent: ET.Element, *content: Content) -> None:
    """Append texts and elements to an element, in order; numbers stay on one line with their units."""
    for piece in content:
        if piece is None:
            continue
        if isinstance(piece, ET.Element):
            parent.append(piece)
            continue
        piece = piece if parent.tag in _AS_WRITTEN else together(piece)
        if len(parent):
            parent[-1].tail = (parent[-1].tail or "") + piece
        else:
            parent.text = (parent.text or "") + piece


def html(node: ET.Element) -> str:
    """The element as HTML text."""
    return ET.tostring(node, encoding="unicode", method="html")


def fold(kind: str, words: str, *content: Content) -> ET.Element:
    """What waits behind a line to tap. kind: its class, by which an answer that changes keeps it open."""
    return element("details", {"class": kind}, element("summary", None, words), *content)
