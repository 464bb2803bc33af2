"""Where two methods or jobs differ, and what was changed when, as tables and lists for a page."""

import xml.etree.ElementTree as ET
from collections.abc import Callable
from datetime import datetime
from typing import Any

from calculators.documents import Unreadable
from calculators.faces.answered import scrolling
from calculators.faces.markup import element
from calculators.method.difference import Difference


def differences_table(one: str, other: str, found: list[Difference]) -> ET.Element:
    """Two methods side by side, only where they differ. one, other: their names."""
    if not found:
        return element("p", None, "The two are the same in everything.")
    caption = f"Where “{one}” and “{other}” differ"
    head = element("tr", None, *(element("th", {"scope": "col"}, words) for words in ("", one, other)))
    body = [element("tr", None, element("th", {"scope": "row"}, each.label), element("td", None, each.one or "nothing"), element("td", None, each.other or "nothing")) for each in found]
    return scrolling(element("table", {"class": "results"}, element("caption", None, caption), element("thead", None, head), element("tbody", None, *body)), caption)


def changes_listed(versions: list[dict[str, Any]], found: Callable[[str, str], list[Difference]]) -> ET.Element:
    """What changed when, newest first, each with a way back to how it was before.

    versions: ``{"at": moment, "revision": number, "text": the document as kept then}``, oldest first.
    found: the differences between two such texts.
    """
    items = []
    for before, after in zip(versions, versions[1:]):
        back = element("button", {"type": "button", "data-back-to": str(before["revision"])}, "Back to before this")
        items.append(element("li", None, element("time", {"datetime": after["at"]}, in_words(after["at"])), ": ", _said(before["text"], after["text"], found), " ", back))
    if not items:
        return element("p", None, "Nothing has been changed yet.")
    return element("ol", {"class": "changes", "reversed": True}, *reversed(items))


def _said(before: str, after: str, found: Callable[[str, str], list[Difference]]) -> str:
    try:
        listed = found(before, after)
    except Unreadable:
        return "a version that cannot be read here."
    return "; ".join(f"{each.label}, {each.one or 'nothing'} → {each.other or 'nothing'}" for each in listed) or "nothing that shows."


def in_words(moment: str) -> str:
    """A moment as it was written down, such as 25 November 2026, 14:03."""
    try:
        when = datetime.fromisoformat(moment)
    except ValueError:
        return "at an unknown time"
    return f"{when.day} {when:%B %Y, %H:%M}"
