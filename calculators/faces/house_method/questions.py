"""What the browser asks about house methods. A method travels as the text it is kept as; whatever is wrong with one
comes
back as one sentence, never as a failure."""

import xml.etree.ElementTree as ET
from collections.abc import Iterator
from typing import Any

from calculators.asking.house_method import FORMAT, VERSION, Written, on_ruler
from calculators.asking.site_method import site_document, site_method
from calculators.documents.house_method.change import changed, with_its_line, written_at
from calculators.documents.house_method.difference import differences, label
from calculators.documents.house_method.difference import in_words as value_in_words
from calculators.documents.house_method.format import normal
from calculators.documents.house_method.merge import merged
from calculators.documents.house_method.reading import method_in_hand, name_in, read_method, written_down
from calculators.documents.json_text import InvalidDocument
from calculators.documents.put_back import Draft, put_back
from calculators.documents.versions import Document
from calculators.faces.house_method.compare import changes_replies, differences_table, in_words
from calculators.faces.house_method.form import form, stands_in_blank
from calculators.faces.house_method.sheet import sheet
from calculators.faces.page.markup import element, html
from calculators.faces.page.own_words import words_on_page
from calculators.faces.page.questions import WORKING, Question, Reply, Request, file_name, house, ruler_wanted
from calculators.faces.page.whose import whose_line
from calculators.values.kind import InvalidValue

NEW_NAME = "My workroom"


def _whose(request: Request) -> Reply:
    """{"method": text, "other": text, "home"} → {"line": HTML, "ruler": the ruler the method reads by habit}."""
    ruler = house(request).ruler()
    line = element("span", None, *whose_line(request.get("method", ""), request.get("other", ""), request["home"]))
    return {"line": html(line), "ruler": f"{ruler.unit} {ruler.step}"}


def _own_words(request: Request) -> Reply:
    """{"method", "sections": [name, …]} → {"words": [HTML, …]}: the reader's own words on each, empty where she has
    none."""
    method = house(request)
    return {"words": ["".join(map(html, words_on_page(method, each))) for each in request["sections"]]}


def _page(request: Request) -> Reply:
    """{"method", "at": when it was last changed, "ruler", "editing": bool} → {"body": HTML}: the sheet, or the form."""
    text = request["method"]
    try:
        method = method_in_hand(text)
    except InvalidDocument as error:
        return {"body": html(element("p", {"class": "trouble"}, str(error)))}
    ruler = method.ruler(ruler_wanted(request))
    parts = (
        form(read_method(text)[0], ruler)
        if request.get("editing")
        else [*_named_and_dated(text, request.get("at", "")), *sheet(method, ruler)]
    )
    return {"body": "".join(map(html, [*_left_out(text), *parts]))}


def _named_and_dated(text: str, at: str) -> list[ET.Element]:
    """Whose sheet it is and of which day, for the copy on paper."""
    day = in_words(at).rpartition(",")[0] if at else ""
    return (
        [element("p", {"class": "sheet-name"}, read_method(text)[1].name, f", as of {day}" if day else "")]
        if text
        else []
    )


def _left_out(text: str) -> list[ET.Element]:
    """A sentence for every entry that is kept but cannot be used."""
    messages = read_method(text)[2] if text else {}
    return (
        [
            element(
                "ul",
                {"class": "notes left-out"},
                *(element("li", None, f"Not used: {each}") for each in messages.values()),
            )
        ]
        if messages
        else []
    )


def _new(request: Request) -> Reply:
    """{"id", "from": text or ""} → {"method": text}: an empty method, or a copy of one under a name of its own."""
    document: dict[str, Any] = {"format": FORMAT, "version": VERSION, "name": NEW_NAME}
    if request.get("from"):
        document = read_method(request["from"])[0]
        document = {**document, "name": f"{document['name'][:70]}, a copy"}
    return {"method": written_down(normal({**document, "id": request["id"]}))}


def _change(request: Request) -> Reply:
    """{"method", "path", "typed", "ruler"} → {"method": text, "shown": what now stands in the blank, "empty": bool,
    "beside": of the other ruler} or {"refusal"}."""
    ruler = house(request).ruler(ruler_wanted(request))
    try:
        document = changed(read_method(request["method"])[0], request["path"], request["typed"], ruler.unit)
    except InvalidValue as error:
        return {"refusal": str(error)}
    path = request["path"]
    has_blank = not (path.startswith("tables.") and path.count(".") < 3)
    now = written_at(document, path) if has_blank else ""
    stands, beside = (
        stands_in_blank(document, path, ruler)
        if now and path.startswith(("measures.", "tables."))
        else (on_ruler(now, ruler), "")
    )
    return {"method": written_down(document), "shown": stands, "empty": not now, "beside": beside}


class _BlanksOfAMethod:
    """How a method is filled in."""

    def __init__(self, request: Request):
        self.request = request

    def changed(self, document: Document, path: str, text: str, ruler: str) -> Document:
        return changed(document, path, text, house(self.request).ruler(ruler_wanted({"ruler": ruler})).unit)

    def at(self, document: Document, path: str) -> Written:
        return written_at(document, path)

    def moved(self, path: str, base: Document, now: Document) -> str | None:
        return with_its_line(path, base, now)

    def label(self, path: str, document: Document) -> str:
        return label(path, document)

    def words(self, value: Written) -> str:
        return value_in_words(value)


def _put_back(request: Request) -> Reply:
    """{"method", "drafts": [{"path", "texts", "ruler", "base": the text kept when they were typed}, …]} → {"method":
    text} and what `PutBack.reply` says. base: null where it is no longer known."""
    method = read_method(request["method"])[0]
    drafts = [
        Draft(
            each["path"],
            tuple(each["texts"]),
            each["ruler"],
            None if each["base"] is None else read_method(each["base"])[0],
        )
        for each in request["drafts"]
    ]
    done = put_back(method, drafts, _BlanksOfAMethod(request))
    return {"method": written_down(done.document), **done.reply()}


def _merge(request: Request) -> Reply:
    """{"base", "mine", "theirs"} → {"method": text, "said": sentence, empty when nothing was changed on both sides}."""
    document, both = merged(*(read_method(request[name])[0] for name in ("base", "mine", "theirs")))
    said = "; ".join(
        f"{each.label}: here “{each.other or 'nothing'}” stands, there it was “{each.one or 'nothing'}”"
        for each in both
    )
    return {
        "method": written_down(document),
        "said": f"This was changed in another window too. {said}." if said else "",
    }


def _changes(request: Request) -> Iterator[Reply]:
    """{"versions": [{"at", "revision", "text"}, …] oldest first} → {"body": HTML}: what changed when, newest first."""
    return changes_replies(
        request["versions"], lambda before, after: differences(read_method(before)[0], read_method(after)[0])
    )


def _compare(request: Request) -> Reply:
    """{"method", "other": texts, empty for the site's} → {"body": HTML}."""
    one, other = (read_method(text)[0] if text else site_document() for text in (request["method"], request["other"]))
    return {"body": html(differences_table(one["name"], other["name"], differences(one, other, as_followed=True)))}


def _named(request: Request) -> Iterator[Reply]:
    """{"methods": [text, …]} → {"names": [{"name", "trouble", "file"}, …]}: how each is listed."""
    names = []
    for text in request["methods"]:
        names.append(_name(text))
        yield WORKING
    yield {"names": names, "site": site_method().name}


def _name(text: str) -> Reply:
    try:
        name = name_in(text)
        return {"name": name, "trouble": "", "file": file_name("house-method", name)}
    except InvalidDocument as error:
        return {
            "name": "A method that cannot be read here",
            "trouble": str(error),
            "file": file_name("house-method", ""),
        }


METHOD_QUESTIONS: dict[str, Question] = {
    "whose": _whose,
    "own words": _own_words,
    "method page": _page,
    "new method": _new,
    "method change": _change,
    "method merge": _merge,
    "method put back": _put_back,
    "method changes": _changes,
    "method difference": _compare,
    "methods": _named,
}
