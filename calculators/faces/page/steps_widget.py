"""The steps of a corner below the calculator that asks for its measures: one list, and only what it asks besides waits
behind a line to tap."""

import xml.etree.ElementTree as ET

from calculators.asking.answering import Asking
from calculators.catalogue import calculator_named
from calculators.faces.page.markup import NOT_SEARCHED, element
from calculators.faces.page.widget import widget

#: What is asked beside the steps, folded away.
_BESIDES = {
    "corner-steps": "Another way, edge stitch, trimming",
    "edge-steps": "Another hem or seam, other measures",
}


def steps_widget(name: str, asking: Asking, place: str, given: dict[str, str], level: int = 3) -> ET.Element:
    """The list with its form folded away; place, given, level: as for `widget`. The search reads its steps, as it
    would the text of a page."""
    made = widget(calculator_named(name), asking, place, given, level)
    _, form, old, in_answer = made
    beside = (each for each in in_answer if "steps" not in each.get("class", "").split())
    for part in (form, old, *beside):
        part.attrib.update(NOT_SEARCHED)
    for each in NOT_SEARCHED:
        made.attrib.pop(each)
    made.remove(form)
    summary = element("summary", NOT_SEARCHED, _BESIDES[name])
    made.insert(1, element("details", {"class": "asked-besides"}, summary, form))
    return made
