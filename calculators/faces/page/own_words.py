"""A studio's own words where they are about something: on the page of the handbook, and at the step of a ticket."""

import xml.etree.ElementTree as ET
from collections.abc import Sequence

from calculators.asking.house_method import HouseMethod
from calculators.asking.site_method import site_method
from calculators.faces.page.markup import NOT_SEARCHED, Attributes, element
from calculators.faces.page.studio_text import studio_text

AT_STEPS = {
    "cloths": ("wash", "straighten"),
    "usual": ("measure",),
    "hems": ("turn", "hem"),
    "stitches": ("stitch",),
    "seams": ("edge-stitch", "stitch"),
    "tolerances": ("check",),
}
"""Section of a method → the steps of a ticket that its words are about, the first that a ticket has."""


def place_for_words(section: str) -> ET.Element:
    """Where a page shows the reader's own words on a section of her method, and until a script fills it those of the
    studio whose handbook this is."""
    words = words_on_page(site_method(), section)
    place: Attributes = {"class": "words-of-the-house", "data-own-words": section, "hidden": not words, **NOT_SEARCHED}
    return element("div", place, *words)


def words_on_page(method: HouseMethod, section: str) -> list[ET.Element]:
    """Her own words on a section; nothing for the example's, whose words are the pages themselves."""
    if method.is_example or not method.texts.get(section):
        return []
    return [
        element("p", {"class": "whose"}, f"From “{method.name}”:"),
        element("div", {"class": "own-words"}, *studio_text(method.texts[section])),
    ]


def words_at_steps(method: HouseMethod, keys: Sequence[str]) -> dict[str, list[ET.Element]]:
    """Step of a ticket → her own words on it. keys: of the steps that the ticket has."""
    found: dict[str, list[ET.Element]] = {}
    for section, steps in AT_STEPS.items():
        at = next((step for step in steps if step in keys), None)
        if at and (words := words_on_page(method, section)):
            found.setdefault(at, []).extend(words[1:])
    return found
