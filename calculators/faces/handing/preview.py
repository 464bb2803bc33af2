"""What was handed over, as it is shown before anything of it is kept: one section for each thing, folded where there
are many."""

import xml.etree.ElementTree as ET
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from calculators.asking.declaration import Calculator
from calculators.asking.site_method import site_document
from calculators.catalogue import catalogue
from calculators.documents.exchange.backup import DocumentHistory
from calculators.documents.exchange.kinds import LOOSE, REFUSED, TYPED
from calculators.documents.exchange.share_link import JOB, METHOD, Handed
from calculators.documents.house_method.difference import Difference
from calculators.documents.house_method.difference import differences as method_differences
from calculators.documents.house_method.reading import house_of
from calculators.documents.house_method.two_rulers import clashes_told
from calculators.documents.job.difference import differences as job_differences
from calculators.documents.job.reading import opened as opened_job
from calculators.documents.json_text import InvalidDocument, read_json
from calculators.documents.versions import Document
from calculators.faces.house_method.compare import differences_table, in_words
from calculators.faces.house_method.sheet import sheet
from calculators.faces.job.jobs_page import pieces_of
from calculators.faces.page.markup import element
from calculators.faces.page.table import row, scrolling
from calculators.values.measure import quote

FOLLOW, BESIDE, REPLACE = "follow", "beside", "replace"
_KEEP_IT, _KEEP_BOTH = {BESIDE: "Keep it"}, {BESIDE: "Keep both"}
_OF_NO_JOB = (
    "This was ticked and measured for a batch that is kept as no job. It stands on the ticket of whatever batch is "
    "filled in here."
)
_NOT_TAKEN = "This was typed and could not be taken. It stands in its blank again, until it is mended."


@dataclass(frozen=True)
class _Shown:
    """How things of a kind are shown.

    title: what one is, and what it is called. unread: the same where it cannot be read. new: what it
    holds, where there is none here. new_choices,
    other_choices: what can be chosen where it is new, and beside putting it in place of mine.
    differing: where two of them differ. told: what else is said of one.
    """

    title: Callable[[str, Document], str]
    unread: str
    new: Callable[[str, Handed], list[ET.Element]]
    differing: Callable[[str, Document, Document], list[Difference]]
    new_choices: Mapping[str, str]
    other_choices: Mapping[str, str]
    told: Callable[[Handed], list[ET.Element]] = lambda newest: []


def title(kept: DocumentHistory) -> str:
    """What it is and what it is called. Raises InvalidDocument with a sentence."""
    return _SHOWN[kept.kind].title(kept.identity, kept.newest.document)


def name_of(kept: DocumentHistory) -> str:
    """The name of a document, empty for what has none or cannot be read."""
    name: str = kept.newest.document.get("name", "") if kept.is_readable else ""
    return name


def folded(kept: DocumentHistory, number: int, mine: str) -> ET.Element:
    """One thing of many, in one line; what it holds is shown once it is opened."""
    try:
        words = f"{title(kept)}: {_standing(kept, mine)}"
    except InvalidDocument as error:
        words = f"{_SHOWN[kept.kind].unread}: {error}"
    return element(
        "details", {"class": "handed", "data-number": str(number)}, element("summary", None, words), element("div")
    )


def broken(sentence: str) -> ET.Element:
    """A part of a file of which nothing can be told."""
    return element(
        "section",
        {"class": "handed"},
        element("h2", None, "A part of this file that cannot be read here"),
        element("p", {"class": "trouble"}, sentence),
    )


def section(kept: DocumentHistory, number: int, mine: str) -> ET.Element:
    """One thing: what it is, what it would change here, and what can be chosen."""
    shown = _SHOWN[kept.kind]
    try:
        newest = kept.newest
    except InvalidDocument as error:
        return _unreadable(kept, number, mine, str(error))
    parts = [element("h2", None, title(kept)), *_dated(kept), *shown.told(newest)]
    if newest.messages:
        parts += [
            element("p", None, "Not all of it can be used here:"),
            element("ul", None, *(element("li", None, sentence) for sentence in newest.messages.values())),
        ]
    if is_same(kept, mine):
        return _section(*parts, element("p", None, "You have exactly this already: there is nothing to keep."))
    if mine:
        parts_shown = [
            element("p", None, "You have an earlier or later form of it. Where yours and this one differ:"),
            _compared(kept, mine, newest),
        ]
        choices = {REPLACE: "Put this in place of mine", **shown.other_choices}
    else:
        parts_shown, choices = shown.new(kept.identity, newest), {**shown.new_choices}
    choose = (_chosen_from(choices, number) for _ in range(2))  # what is shown may be longer than a screen
    return _section(*parts, next(choose), *parts_shown, next(choose), *_whole(newest))


def is_same(kept: DocumentHistory, mine: str) -> bool:
    """Whether just this stands here already."""
    if not mine:
        return False
    if not kept.is_readable:
        return mine == kept.raw
    if mine == kept.newest.text:
        return True
    try:
        return bool(read_json(mine) == kept.newest.document)
    except InvalidDocument:
        return False


def choices_section(choices: Mapping[str, str], followed: str) -> ET.Element | None:
    """Whose method was followed and which ruler was in hand, where the file tells. followed: the name of the method."""
    words = []
    if followed:
        words.append(f"“{followed}” was followed on every page")
    if ruler := choices.get("ruler", ""):
        words.append(f"the ruler in hand was {ruler.partition(' ')[0]} ({ruler.partition(' ')[2] or 'the house’s'})")
    if look := choices.get("look", ""):
        words.append(f"the pages were {look}")
    if not words:
        return None
    said = " and ".join(", ".join(words).rsplit(", ", 1))
    return _section(
        element("h2", None, "Choices"),
        element("p", None, f"Where this was saved, {said}."),
        _button("Choose the same here", "choices", ""),
    )


def keep_all(new: int) -> ET.Element:
    """The button that keeps all that is new."""
    return element("p", {"class": "tools"}, _button(f"Keep all that is new here ({new:,})", "all", ""))


def _standing(kept: DocumentHistory, mine: str) -> str:
    return "you have this" if is_same(kept, mine) else "yours differs" if mine else "new here"


def _section(*parts: ET.Element) -> ET.Element:
    return element("section", {"class": "handed"}, *parts)


def _unreadable(kept: DocumentHistory, number: int, mine: str, sentence: str) -> ET.Element:
    parts = [
        element("h2", None, _SHOWN[kept.kind].unread),
        element("p", {"class": "trouble"}, sentence),
    ]
    if not mine and kept.raw and kept.kind in (METHOD, JOB, LOOSE):
        parts.append(_button("Keep it as it is", BESIDE, number))
    return _section(*parts)


def _chosen_from(choices: Mapping[str, str], number: int) -> ET.Element:
    return element("p", {"class": "tools"}, *(_button(words, what, number) for what, words in choices.items()))


def _button(words: str, what: str, number: int | str) -> ET.Element:
    return element("button", {"type": "button", "data-keep": what, "data-item": str(number)}, words)


def _dated(kept: DocumentHistory) -> list[ET.Element]:
    first = kept.states[0][0]
    if len(kept.states) == 1 and not first:
        return []
    return [
        element(
            "p",
            None,
            f"With {len(kept.states)} dated {'state' if len(kept.states) == 1 else 'states'}, the first of "
            f"{in_words(first)}.",
        )
    ]


def _compared(kept: DocumentHistory, mine: str, newest: Handed) -> ET.Element:
    try:
        own = DocumentHistory(kept.kind, kept.identity, (("", mine),)).newest
    except InvalidDocument as error:
        return element("p", None, str(error))
    found = _SHOWN[kept.kind].differing(kept.identity, own.document, newest.document)
    return differences_table("Yours", "This one", found)


def _written(found: list[Difference], caption: str) -> ET.Element:
    lines = (row(each.label, element("td", None, each.other)) for each in found)
    return scrolling(element("table", {"class": "results"}, element("tbody", None, *lines)), caption)


def _whole(newest: Handed) -> list[ET.Element]:
    if newest.kind != METHOD:
        return []
    method = house_of(newest.document)
    return [element("details", None, element("summary", None, "Read the whole of it"), *sheet(method, method.ruler()))]


def _named(word: str) -> Callable[[str, Document], str]:
    return lambda identity, document: f"{word} “{document['name']}”"


def _new_method(identity: str, newest: Handed) -> list[ET.Element]:
    table = differences_table(
        newest.document["name"],
        "The handbook",
        method_differences(newest.document, site_document(), as_followed=True),
    )
    return [element("p", None, "It is new here. Where it differs from the handbook’s own:"), table]


def _new_job(identity: str, newest: Handed) -> list[ET.Element]:
    return [
        element("p", None, "It is new here. What was typed, ticked and written down for it:"),
        _written(job_differences({}, newest.document), "All that was written down for it"),
    ]


def _new_texts(identity: str, newest: Handed) -> list[ET.Element]:
    found = _texts_differ(identity, {}, newest.document)
    return [element("p", None, "It is new here:"), _written(found, "All that was typed")]


def _told_of_method(newest: Handed) -> list[ET.Element]:
    method = newest.document.get("method", {}) if newest.kind == JOB else newest.document
    told = clashes_told(method)
    return [element("ul", {"class": "notes"}, *(element("li", None, sentence) for sentence in told))] if told else []


def _told_of_job(newest: Handed) -> list[ET.Element]:
    return [element("p", None, pieces_of(opened_job(newest.document), "")), *_told_of_method(newest)]


def _told_of_ticket(newest: Handed) -> list[ET.Element]:
    return [element("p", None, _OF_NO_JOB), *_told_of_method(newest)]


def _told_of_refused(newest: Handed) -> list[ET.Element]:
    return [element("p", None, _NOT_TAKEN)]


def _calculator_of(identity: str) -> Calculator | None:
    """The calculator that was typed into; a walk's name may stand before its name, and what a page gave it after."""
    named = (catalogue().get(part) for part in identity.split("/")[:2])
    return next((each for each in named if each), None)


def _title_of(identity: str, document: Document) -> str:
    calculator = _calculator_of(identity)
    return f"Typed into “{calculator.title if calculator else quote(identity)}”"


def _form_of(identity: str, document: Document) -> str:
    form = {METHOD: "house method", JOB: "job", LOOSE: "work ticket"}[identity.partition("/")[0]]
    return f"Typed into a {form} and not taken"


def _methods_differ(identity: str, one: Document, other: Document) -> list[Difference]:
    return method_differences(one, other)


def _jobs_differ(identity: str, one: Document, other: Document) -> list[Difference]:
    return job_differences(one, other)


def _texts_differ(identity: str, one: Document, other: Document) -> list[Difference]:
    mine, theirs = one.get("texts", {}), other.get("texts", {})
    calculator = _calculator_of(identity)
    labels = {field.name: field.label for field in calculator.fields} if calculator else {}
    return [
        Difference(
            name, labels.get(name, name.replace("_", " ").capitalize()), mine.get(name, ""), theirs.get(name, "")
        )
        for name in {**mine, **theirs}
        if mine.get(name) != theirs.get(name)
    ]


def _refused_differ(identity: str, one: Document, other: Document) -> list[Difference]:
    def text(document: Document, path: str) -> str:
        written: Any = document.get(path, {})
        return f"{written['text']} ({written['sentence']})" if written else ""

    return [
        Difference(path, path.replace(".", ", ").replace("_", " "), text(one, path), text(other, path))
        for path in {**one, **other}
        if one.get(path) != other.get(path)
    ]


def _new_refused(identity: str, newest: Handed) -> list[ET.Element]:
    return [_written(_refused_differ(identity, {}, newest.document), "All that could not be taken")]


_SHOWN = {
    METHOD: _Shown(
        _named("House method"), "A house method that cannot be read here", _new_method, _methods_differ,
        {FOLLOW: "Keep it, and let every page show its numbers", BESIDE: "Only keep it"}, _KEEP_BOTH, _told_of_method,
    ),
    JOB: _Shown(
        _named("Job"), "A job that cannot be read here", _new_job, _jobs_differ, _KEEP_IT, _KEEP_BOTH, _told_of_job,
    ),
    LOOSE: _Shown(  # there is one such ticket
        _named("Work ticket"), "A work ticket that cannot be read here", _new_job, _jobs_differ, _KEEP_IT, {},
        _told_of_ticket,
    ),
    TYPED: _Shown(
        _title_of, "Something typed that cannot be read here", _new_texts, _texts_differ, _KEEP_IT, {},
    ),
    REFUSED: _Shown(
        _form_of, "Something typed that cannot be read here", _new_refused, _refused_differ, _KEEP_IT, {},
        _told_of_refused,
    ),
}  # fmt: skip
