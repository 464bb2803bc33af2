"""Where two methods or jobs differ, and what was changed when, as tables and lists for a page."""

import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterator, Sequence
from datetime import datetime
from typing import Any

from calculators.documents.house_method.difference import Difference
from calculators.documents.json_text import InvalidDocument
from calculators.faces.page.markup import Content, element, html
from calculators.faces.page.questions import WORKING, Reply
from calculators.faces.page.studio_text import studio_text
from calculators.faces.page.table import row, table


def differences_table(one: str, other: str, found: list[Difference]) -> ET.Element:
    """Two methods side by side, only where they differ. one, other: their names."""
    if not found:
        return element("p", None, "The two are the same in everything.")
    rows = (
        row(each.label, *(element("td", None, *_cell(each, text)) for text in (each.one, each.other))) for each in found
    )
    return table(f"Where “{one}” and “{other}” differ", ("", one, other), rows)


def _cell(difference: Difference, text: str) -> Sequence[Content]:
    """One side of a difference; the studio's own words as they are read on its page, a whole line of a table part by
    part."""
    if difference.path.startswith("texts.") and text:
        return studio_text(text)
    parts = text.split("; ") if difference.path.startswith("tables.") else [text]
    return (
        [element("ul", None, *(element("li", None, part) for part in parts))] if len(parts) > 1 else [text or "nothing"]
    )


def _plain(difference: Difference, text: str) -> str:
    """The same in one line of words."""
    if difference.path.startswith("texts.") and text:
        return " ".join("".join(block.itertext()) for block in studio_text(text))
    return text or "nothing"


def changes_replies(versions: list[dict[str, Any]], found: Callable[[str, str], list[Difference]]) -> Iterator[Reply]:
    """{"body": HTML}: what changed when, newest first, each with a way back to how it was before; a step for each.

    versions: ``{"at": moment, "revision": number, "text": the document as kept then}``, oldest first.
    found: the differences between two such texts.
    """
    items = []
    for before, after in zip(versions, versions[1:]):
        back = element("button", {"type": "button", "data-back-to": str(before["revision"])}, "Back to before this")
        when = element("time", {"datetime": after["at"]}, in_words(after["at"]))
        items.append(element("li", None, when, ": ", _said(before["text"], after["text"], found), " ", back))
        yield WORKING
    listed = (
        element("ol", {"class": "changes", "reversed": True}, *reversed(items))
        if items
        else element("p", None, "Nothing has been changed yet.")
    )
    yield {"body": html(listed)}


def _said(before: str, after: str, found: Callable[[str, str], list[Difference]]) -> str:
    try:
        listed = found(before, after)
    except InvalidDocument:
        return "a version that cannot be read here."
    return (
        "; ".join(f"{each.label}, {_plain(each, each.one)} → {_plain(each, each.other)}" for each in listed)
        or "nothing that shows."
    )


def in_words(moment: str) -> str:
    """A moment as it was written down, such as 25 November 2026, 14:03."""
    try:
        when = datetime.fromisoformat(moment)
    except ValueError:
        return "at an unknown time"
    return f"{when.day} {when:%B %Y, %H:%M}"
