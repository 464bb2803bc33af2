"""The asked half of a calculator on a page: a sentence with blanks to fill in, and the rarer questions behind *more*."""

import re
import xml.etree.ElementTree as ET

from calculators.answering import Asking
from calculators.declaration import Calculator, Field
from calculators.faces.markup import add, element
from calculators.kinds import YES_NO_WORDS, Choice, YesNo

_BLANK = re.compile(r"\{(\w+)\}")


def asked_form(calculator: Calculator, asking: Asking, place: str) -> ET.Element:
    """The form of a calculator.

    place: a word that keeps the ids of this form apart from others on the page.
    """
    sentence = element("p", {"class": "sentence"})
    for index, part in enumerate(_BLANK.split(calculator.asked)):
        add(sentence, _blank(calculator.field(part), asking, place) if index % 2 else part)
    form = element("form", {"class": "asked", "autocomplete": "off", "novalidate": True, "aria-label": calculator.title}, sentence)
    add(form, *(_refusal(name, place) for name in calculator.asked_in_sentence))
    if calculator.rarely_asked:
        rows = [_row(calculator.field(name), asking, place) for name in calculator.rarely_asked]
        labels = ", ".join(calculator.field(name).label[0].lower() + calculator.field(name).label[1:] for name in calculator.rarely_asked)
        add(form, element("details", {"class": "more"}, element("summary", None, f"More: {labels}"), *rows))
    add(form, _meanings(calculator, place), element("p", {"class": "tools"}, _afresh()))
    return form


def _blank(field: Field, asking: Asking, place: str) -> ET.Element:
    """A blank inside the sentence: its name for those who cannot see the sentence, and the control."""
    return element("label", {"class": "blank"}, element("span", {"class": "blank-name"}, field.label), _control(field, asking, place))


def _row(field: Field, asking: Asking, place: str) -> ET.Element:
    return element(
        "div", {"class": "field"},
        element("label", {"for": _id(place, field.name)}, field.label),
        _control(field, asking, place),
        element("p", {"class": "help", "id": _id(place, field.name, "help")}, field.help),
        _refusal(field.name, place),
    )


def _control(field: Field, asking: Asking, place: str) -> ET.Element:
    common = {
        "id": _id(place, field.name),
        "name": field.name,
        "aria-describedby": f"{_id(place, field.name, 'help')} {_id(place, field.name, 'refusal')}",
        "data-taken": field.name in asking.taken and field.name not in asking.typed,
    }
    text = asking.text(field)
    options = field.kind.options if isinstance(field.kind, Choice) else {word: word for word in YES_NO_WORDS} if isinstance(field.kind, YesNo) else None
    if options:
        choices = (element("option", {"value": key, "selected": key == text}, words) for key, words in options.items())
        return element("select", common, *choices)
    width = {"size": str(max(6, len(text) + 1))}
    return element("input", common | width | {"type": "text", "inputmode": field.kind.mode, "value": text, "spellcheck": "false"})


def _refusal(name: str, place: str) -> ET.Element:
    return element("p", {"class": "refusal", "id": _id(place, name, "refusal"), "data-field": name, "hidden": True})


def _meanings(calculator: Calculator, place: str) -> ET.Element:
    listed = element("dl")
    for name in calculator.asked_in_sentence:
        field = calculator.field(name)
        add(listed, element("dt", None, field.label), element("dd", {"id": _id(place, name, "help")}, field.help))
    return element("details", {"class": "meanings"}, element("summary", None, "What to measure"), listed)


def _afresh() -> ET.Element:
    return element("button", {"type": "button", "class": "afresh", "hidden": True}, "Back to the house’s numbers")


def _id(place: str, *parts: str) -> str:
    return "-".join((place, *parts))
