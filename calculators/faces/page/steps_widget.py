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
#: The blank that says what is made.
_WHAT = {"corner-steps": "way", "edge-steps": "edge"}


def _title(name: str, asking: Asking) -> str:
    """What is made, as a heading."""
    field = calculator_named(name).field(_WHAT[name])
    made = field.kind.choices[asking.text(field)]
    return f"{made[:1].upper()}{made[1:]}, step by step"


def steps_widget(
    name: str, asking: Asking, place: str, given: dict[str, str], level: int = 3, settled: bool = False
) -> ET.Element:
    """The list with its form folded away; place, given, level: as for `widget`. settled: whether choices that the page
    fills in are its own, and not the reader's. The search reads its steps, as it would the text of a page."""
    calculator = calculator_named(name)
    chosen = [each for each in given if settled and calculator.field(each).kind.choices]
    made = widget(calculator, asking, place, given, level, chosen)
    heading, form, old, in_answer = made
    title = _title(name, asking)
    heading.text = title
    for named in (made, form):  # a page may tell several edges, each by its own name
        named.set("aria-label", title)
    beside = (each for each in in_answer if "steps" not in each.get("class", "").split())
    for part in (form, old, *beside):
        part.attrib.update(NOT_SEARCHED)
    for each in NOT_SEARCHED:
        made.attrib.pop(each)
    made.remove(form)
    summary = element("summary", NOT_SEARCHED, "Other measures" if chosen else _BESIDES[name])
    made.insert(1, element("details", {"class": "asked-besides"}, summary, form))
    return made
