"""The page where a method is handed over, opened and kept safe; every word is there before a script runs."""

import xml.etree.ElementTree as ET

from calculators.faces.page.markup import element


def handing_page() -> ET.Element:
    """The tools of the page; they show themselves once a script can act on them."""
    return element(
        "div", {"class": "kept"},
        element("div", {"class": "tools", "hidden": True},
            element("button", {"type": "button", "data-do": "everything"}, "Save everything as one file"),
            element("label", None, "Open a file ",
                element("input", {"type": "file", "accept": ".json,application/json", "name": "file"}))),
        element("p", {"class": "reminder"}),
        element("p", {"class": "going-on", "hidden": True},
            element("span", {"class": "far"}), " ",
            element("button", {"type": "button", "data-do": "stop"}, "Stop")),
        element("p", {"class": "said", "role": "status"}),
        element("div", {"class": "opened", "aria-live": "polite"}),
    )  # fmt: skip
