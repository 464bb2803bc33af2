"""The line on every page that says whose method the numbers follow, with the way back to the other."""

import xml.etree.ElementTree as ET

from calculators.asking.site_method import site_method
from calculators.documents.house_method.reading import read_method
from calculators.documents.json_text import InvalidDocument
from calculators.faces.page.markup import NOT_SEARCHED, Content, element

SITE, MINE = "site", "mine"


def whose(home: str) -> ET.Element:
    """The line as it is built into a page, for the site's own method.

    home: the way from the page back to the top of the site, such as ``../``.
    """
    return element("p", {"class": "whose-method", "data-home": home, **NOT_SEARCHED}, *whose_line("", "", home))


def whose_line(text: str, other: str, home: str) -> list[Content]:
    """What stands in the line.

    text: the method the page follows, empty for the site's. other: the reader's own, which she could go back to.
    """
    error = ""
    try:
        mine = read_method(text)[1].name if text else ""
    except InvalidDocument as problem:
        mine, error = "", f"{problem} Until then these are the handbook’s numbers. "
    if mine:
        return ["Numbers by ", _link(mine, home), ". ", _switch("Show the handbook’s numbers", SITE)]
    parts: list[Content] = [error, "Numbers by ", _link(site_method().name, home), ". "]
    if other and not error:
        return [*parts, _switch(f"Show those of {_name(other)}", MINE)]
    return parts


def _name(text: str) -> str:
    try:
        return read_method(text)[1].name
    except InvalidDocument:
        return "your own method"


def _link(name: str, home: str) -> ET.Element:
    return element("a", {"href": f"{home}house/"}, name)


def _switch(words: str, to: str) -> ET.Element:
    return element("button", {"type": "button", "data-follow": to}, words)
