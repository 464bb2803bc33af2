"""The page that tells where things are kept; all but what is so in this browser is there before a script runs."""

import xml.etree.ElementTree as ET

from calculators.faces.page.markup import element

#: Each place: its name for scripts, what it is called, what lies there.
PLACES = (
    ("database", "The browser’s database", "Methods, jobs and ticks, each with its earlier states."),
    ("journal", "A journal beside it", "The same, change by change: if one is lost, the other gives it back."),
    ("texts", "The browser’s notebook", "Numbers typed into no job, your ruler, and what you are just writing."),
    ("handbook", "The kept handbook", "The pages themselves, for days without a network."),
)


def where_kept() -> ET.Element:
    """The places, one below another, with room for what is so in this browser."""
    rows = (
        element(
            "tr",
            {"data-place": name},
            element("th", {"scope": "row"}, title),
            element("td", None, holds),
            element("td", {"class": "so-here"}, "…"),
        )
        for name, title, holds in PLACES
    )
    head = (element("th", {"scope": "col"}, word) for word in ("Where", "What lies there", "In this browser"))
    return element(
        "div", {"class": "where-kept"},
        element("p", {"class": "reminder"}),
        element("p", {"class": "lasting"}),
        element("table", None, element("thead", None, element("tr", None, *head)), element("tbody", None, *rows)),
        element("p", {"class": "tools", "hidden": True},
            element("button", {"type": "button", "data-do": "test"}, "Test it now")),
        element("div", {"role": "status"}, element("ul", {"class": "tested"})),
    )  # fmt: skip
