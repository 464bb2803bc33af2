"""The page of the house method: the sheet as the site has it; with a script, the reader's own methods, to change and to
compare."""

import xml.etree.ElementTree as ET

from calculators.asking.site_method import site_method
from calculators.faces.house_method.sheet import sheet
from calculators.faces.page.markup import Content, element

BUTTONS = {
    "new": "Set down your own",
    "edit": "Change it",
    "copy": "Copy it",
    "print": "Print it",
    "file": "Save as a file",
    "share": "Share it",
    "remove": "Remove it",
}


def method_page() -> ET.Element:
    """The whole page below its first words, complete with the site's own method."""
    method = site_method()
    choice = element("label", None, "Method followed on every page ", element("select", {"name": "followed"}))
    buttons = (element("button", {"type": "button", "data-do": name}, words) for name, words in BUTTONS.items())
    return element(
        "div", {"class": "house-method"},
        element("div", {"class": "tools", "hidden": True}, choice, *buttons),
        element("p", {"class": "said", "role": "status"}),
        element("div", {"class": "shared", "hidden": True}),
        element("div", {"class": "house-body"}, *sheet(method, method.ruler())),
        _folded("house-changes", "What was changed when, and the way back", element("div", {"class": "listed"})),
        _folded("house-compare", "Compare with another method",
            element("label", None, "Compare with ", element("select", {"name": "other"})),
            element("div", {"class": "listed"})),
    )  # fmt: skip


def _folded(name: str, summary: str, *content: Content) -> ET.Element:
    return element("details", {"class": name, "hidden": True}, element("summary", None, summary), *content)
