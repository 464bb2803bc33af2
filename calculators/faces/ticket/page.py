"""The page of the work ticket: complete for the house's own batch; with a script, for the maker's, and at the
machine."""

import json
import xml.etree.ElementTree as ET

from calculators.asking.answering import Asking
from calculators.asking.site_method import site_method
from calculators.batch.in_hand import known_as_in
from calculators.batch.walk import Walk, go
from calculators.faces.page.markup import LONGEST_LINE, element
from calculators.faces.ticket.sheets import ticket_sheets
from calculators.ticket.batch import Batch, NoTicketYet, batch_of

WAKE = {
    "on": "The screen stays on.",
    "off": "The screen may go dark.",
}
ONWARD = {"bundle": "Bundle done", "step": "Done, next", "end": "Done", "on": "Next"}
"""What the one large button says: more bundles are left, this makes the step whole, the last step, or a step that
is whole already."""
MEND = "This batch has no ticket yet. In “{title}” a blank needs mending: {sentence}"
KEYS = "Keys: → next, ← back, + one more bundle, − undo, Esc leave."


def ticket_page(walk: Walk, home: str) -> ET.Element:
    """The whole page below its first words. home: the way from the page back to the top of the site."""
    method = site_method()
    try:
        sheets = ticket_sheets("The house’s batch", batch_of(go(walk, {}, Asking({})), method), {}, ())
    except NoTicketYet as error:
        if method.is_example:
            raise
        sheets = [no_ticket(error)]
    return element(
        "div",
        {"class": "ticket", "data-walk": walk.name, "data-home": home,
            "data-in-hand": json.dumps(known_as_in(walk))},
        element("p", {"class": "of-what"}, "This is the house’s own batch. ",
            element("a", {"href": f"{home}batch/"}, "Fill in yours"), ", and its ticket stands "
            "here."),
        element(
            "div", {"class": "tools", "hidden": True},
            element("button", {"type": "button", "class": "first", "data-do": "machine"}, "At the machine"),
            element("button", {"type": "button", "data-do": "print"}, "Print it"),
            element("div", {"class": "settle"}),
        ),
        element("p", {"class": "said", "role": "status"}),
        element("div", {"class": "ticket-body"}, *sheets),
        _machine(),
    )  # fmt: skip


def no_ticket(error: NoTicketYet) -> ET.Element:
    """Why a batch has none yet."""
    return element("p", {"class": "trouble"}, MEND.format(title=error.title, sentence=error))


def settle_blanks(batch: Batch, home: str, about_cloth: ET.Element | None = None) -> list[ET.Element]:
    """The two things a maker settles on the ticket itself, its cloth and how many pieces go together, and the way to
    all others.

    about_cloth: what to do about a cloth that the method does not have.
    """
    names = [line["cloth"] for line in batch.method.tables.get("cloths", ()) if "cloth" in line]
    shown = [*names, *([batch.cloth] if batch.cloth and not batch.cloth_line else [])]
    options = (
        element("option", {"value": name, "selected": name.casefold() == batch.cloth.casefold()}, name)
        for name in map(str, shown)
    )
    made = [
        element(
            "label",
            None,
            "Bundles of ",
            element(
                "input",
                {
                    "type": "text",
                    "name": "bundle",
                    "inputmode": "numeric",
                    "maxlength": str(LONGEST_LINE),
                    "value": str(batch.bundles.size),
                    "autocomplete": "off",
                },
            ),
        ),
        element("p", {"class": "refusal", "data-field": "bundle", "hidden": True}),
        element("a", {"href": f"{home}batch/"}, "Change its numbers in the batch"),
    ]
    made += [about_cloth] if about_cloth is not None else []
    return [element("label", None, "Cloth ", element("select", {"name": "cloth"}, *options)), *made] if shown else made


def _machine() -> ET.Element:
    """What stands around a step at the machine; the step itself stays where it is in the list."""
    wake = (element("span", {"data-wake": name, "hidden": True}, words) for name, words in WAKE.items())
    onward = (element("span", {"data-says": name, "hidden": True}, words) for name, words in ONWARD.items())
    return element(
        "div", {"class": "machine", "hidden": True},
        element(
            "div", {"class": "machine-top"},
            element("p", {"class": "wake", "role": "status"}, *wake),
            element("button", {"type": "button", "data-do": "next", "aria-label": "Skip: next step, nothing ticked"},
                "Skip"),
            element("button", {"type": "button", "data-do": "leave"}, "Leave"),
        ),
        element("p", {"class": "more-below", "aria-hidden": "true"}, "↓ more below"),
        element("p", {"class": "keys"}, KEYS),
        element(
            "div", {"class": "machine-ways"},
            element("button", {"type": "button", "data-do": "back"}, "Back"),
            element("button", {"type": "button", "data-do": "less"}, "Undo"),
            element("button", {"type": "button", "class": "first", "data-do": "onward"}, *onward),
        ),
    )  # fmt: skip
