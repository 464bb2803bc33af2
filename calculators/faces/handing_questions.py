"""What the browser asks when something is handed over, and when something handed over is opened: first it is shown what it is
and what it would change; only what the reader then chooses is kept."""

from typing import Any

from calculators.documents import LONGEST, Unreadable
from calculators.faces.markup import element, html
from calculators.faces.method_compare import differences_table
from calculators.faces.method_sheet import sheet
from calculators.handing import Handed, everything, handed, packed, unpacked
from calculators.house_method import read_house_method, site_document, site_method
from calculators.method.difference import differences
from calculators.method.format import normal
from calculators.method.reading import read_method, written_down

Reply = dict[str, Any]


def share(request: Reply) -> Reply:
    """{"method": text} → {"fragment": the end of a link that holds it}."""
    return {"fragment": packed(written_down(read_method(request["method"])[0]))}


def save_everything(request: Reply) -> Reply:
    """{"methods": [text, …]} → {"text", "said"}: one file of everything; what cannot be read here is said."""
    documents, unread = [], 0
    for text in request["methods"]:
        try:
            documents.append(read_method(text)[0])
        except Unreadable:
            unread += 1
    said = f"{unread} that cannot be read here could not be saved with the others." if unread else ""
    return {"text": everything(documents), "said": said}


def open_handed(request: Reply) -> Reply:
    """{"text" or "fragment", "size", "kept": id → text} → {"body": HTML, "items": [{"id", "text", "known": bool, "same": bool}]}."""
    if request.get("size", 0) > LONGEST:
        raise Unreadable(f"This file is {request['size'] / 1e6:,.1f} MB large, and none of this handbook is larger than {LONGEST / 1e6:.0f} MB. Choose another.")
    found = handed(unpacked(request["fragment"]) if "fragment" in request else request["text"])
    kept = request["kept"]
    body = element("div")
    body.extend(_shown(each, number, kept.get(each.document.get("id", ""), "")) for number, each in enumerate(found))
    items = [_item(each, kept) for each in found]
    return {"body": html(body), "items": items}


def renamed(request: Reply) -> Reply:
    """{"method": text, "id"} → {"method"}: the same method under another id, so that it stands beside the one that is kept."""
    return {"method": written_down(normal({**read_method(request["method"])[0], "id": request["id"]}))}


def _item(each: Handed, kept: dict[str, str]) -> Reply:
    identity = each.document.get("id", "")
    return {"id": identity, "text": each.text, "known": identity in kept, "same": kept.get(identity) == each.text}


def _shown(each: Handed, number: int, mine: str):
    name = each.document["name"]
    parts = [element("h2", None, f"House method “{name}”")]
    if each.troubles:
        parts += [element("p", None, "Not all of it can be used here. What is left out follows the handbook:")]
        parts += [element("ul", None, *(element("li", None, sentence) for sentence in each.troubles.values()))]
    if mine == each.text:
        return element("section", None, *parts, element("p", None, "You have exactly this already: there is nothing to keep."))
    if mine:
        parts += [element("p", None, "You have an earlier or later form of it. Where yours and this one differ:"), _compared(mine, each)]
        parts += [_button("Put this in place of mine", "replace", number), _button("Keep both", "beside", number)]
    else:
        parts += [element("p", None, "It is new here. Where it differs from the handbook’s own:"), _against_site(each), _button("Keep it", "beside", number)]
    whole = read_house_method(each.document, site_method())
    folded = element("details", None, element("summary", None, "Read the whole of it"), *sheet(whole, whole.ruler()))
    return element("section", {"class": "handed"}, *parts, folded)


def _compared(mine: str, each: Handed):
    try:
        own = read_method(mine)[0]
    except Unreadable as trouble:
        return element("p", None, str(trouble))
    return differences_table("Yours", "This one", differences(own, each.document))


def _against_site(each: Handed):
    return differences_table(each.document["name"], "The handbook", differences(each.document, site_document(), as_followed=True))


def _button(words: str, what: str, number: int):
    return element("button", {"type": "button", "data-keep": what, "data-item": str(number)}, words)


HANDING = {"share": share, "everything": save_everything, "handed": open_handed, "as another": renamed}
