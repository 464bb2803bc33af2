"""What was handed over, as it is shown before anything of it is kept."""

import xml.etree.ElementTree as ET
from collections.abc import Mapping
from contextlib import suppress

from calculators.asking.site_method import site_document
from calculators.documents.exchange.backup import LOOSE, Backup, DocumentHistory
from calculators.documents.exchange.share_link import JOB, METHOD, Handed, handed
from calculators.documents.house_method.difference import Difference
from calculators.documents.house_method.difference import differences as method_differences
from calculators.documents.house_method.reading import house_of
from calculators.documents.house_method.two_rulers import clashes_told
from calculators.documents.job.difference import differences as job_differences
from calculators.documents.job.reading import opened as opened_job
from calculators.documents.json_text import InvalidDocument, read_json
from calculators.faces.house_method.compare import differences_table, in_words
from calculators.faces.house_method.sheet import sheet
from calculators.faces.job.jobs_page import pieces_of
from calculators.faces.page.markup import element
from calculators.faces.page.table import row, scrolling

_WORDS = {"method": "House method", "job": "Job", LOOSE: "Work ticket"}
_OF_NO_JOB = (
    "This was ticked and measured for a batch that is kept as no job. The numbers of that batch are not in "
    "it: it "
    "stands on the ticket of whatever batch is filled in here."
)


def opened_parts(found: Backup, kept: Mapping[str, str]) -> list[ET.Element]:
    """Every document of a file, what it is and what it would change; then the choices it tells of. kept: "kind id" →
    newest text."""
    new = [each for each in found.kept if f"{each.kind} {each.identity}" not in kept]
    parts = (
        [element("p", {"class": "tools"}, _button(f"Keep all that is new here ({len(new)})", "all", ""))]
        if len(new) > 1
        else []
    )
    parts += [
        _section(each, number, kept.get(f"{each.kind} {each.identity}", "")) for number, each in enumerate(found.kept)
    ]
    return (
        parts + _choices(found) if found.kept else [element("p", None, "Nothing was kept where this file was saved.")]
    )


def _section(kept: DocumentHistory, number: int, mine: str) -> ET.Element:
    try:
        newest = kept.newest
    except InvalidDocument as error:
        return _unreadable(kept, number, mine, str(error))
    parts = [element("h2", None, f"{_WORDS[kept.kind]} “{newest.document['name']}”"), *_dated(kept)]
    if kept.kind == JOB:
        parts.append(element("p", None, pieces_of(opened_job(newest.document), "")))
    if kept.kind == LOOSE:
        parts.append(element("p", None, _OF_NO_JOB))
    method = newest.document.get("method", {}) if newest.kind == JOB else newest.document
    if told := clashes_told(method):
        parts.append(element("ul", {"class": "notes"}, *(element("li", None, sentence) for sentence in told)))
    if newest.messages:
        parts += [
            element("p", None, "Not all of it can be used here:"),
            element("ul", None, *(element("li", None, sentence) for sentence in newest.messages.values())),
        ]
    if mine == newest.text:
        return element(
            "section",
            {"class": "handed"},
            *parts,
            element("p", None, "You have exactly this already: there is nothing to keep."),
        )
    if mine:
        shown = [
            element("p", None, "You have an earlier or later form of it. Where yours and this one differ:"),
            _compared(mine, newest),
        ]
        choices = {"replace": "Put this in place of mine"} | (
            {} if kept.kind == LOOSE else {"beside": "Keep both"}
        )  # there is one such ticket
    else:
        shown, choices = (
            _as_new(newest),
            {"follow": "Keep it, and let every page show its numbers", "beside": "Only keep it"}
            if newest.kind == METHOD
            else {"beside": "Keep it"},
        )
    parts += [
        _chosen_from(choices, number),
        *shown,
        _chosen_from(choices, number),
    ]  # what is shown may be longer than a screen
    return element("section", {"class": "handed"}, *parts, *_whole(newest))


def _unreadable(kept: DocumentHistory, number: int, mine: str, sentence: str) -> ET.Element:
    parts = [
        element("h2", None, f"A {_WORDS[kept.kind].lower()} that cannot be read here"),
        element("p", {"class": "trouble"}, sentence),
    ]
    if not mine and kept.raw:
        parts.append(_button("Keep it as it is", "beside", number))
    return element("section", {"class": "handed"}, *parts)


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


def _as_new(newest: Handed) -> list[ET.Element]:
    name = newest.document["name"]
    if newest.kind == JOB:
        return [
            element("p", None, "It is new here. What was typed, ticked and written down for it:"),
            _written(job_differences({}, newest.document)),
        ]
    table = differences_table(
        name, "The handbook", method_differences(newest.document, site_document(), as_followed=True)
    )
    return [element("p", None, "It is new here. Where it differs from the handbook’s own:"), table]


def _compared(mine: str, newest: Handed) -> ET.Element:
    try:
        own = handed(read_json(mine))
    except InvalidDocument as error:
        return element("p", None, str(error))
    differences = job_differences if newest.kind == JOB else method_differences
    return differences_table("Yours", "This one", differences(own.document, newest.document))


def _written(found: list[Difference]) -> ET.Element:
    lines = (row(each.label, element("td", None, each.other)) for each in found)
    return scrolling(
        element("table", {"class": "results"}, element("tbody", None, *lines)), "All that was written down for it"
    )


def _whole(newest: Handed) -> list[ET.Element]:
    if newest.kind == JOB:
        return []
    method = house_of(newest.document)
    return [element("details", None, element("summary", None, "Read the whole of it"), *sheet(method, method.ruler()))]


def _choices(found: Backup) -> list[ET.Element]:
    """Whose method was followed and which ruler was in hand, where the file tells."""
    words = []
    if followed := next(
        (each for each in found.kept if each.identity == found.follows and each.kind == "method"), None
    ):
        with suppress(InvalidDocument):
            words.append(f"“{followed.newest.document['name']}” was followed on every page")
    if found.ruler:
        words.append(
            f"the ruler in hand was {found.ruler.partition(' ')[0]} ({found.ruler.partition(' ')[2] or 'the house’s'})"
        )
    if not words:
        return []
    said = " and ".join(words)
    return [
        element(
            "section",
            {"class": "handed"},
            element("h2", None, "Choices"),
            element("p", None, f"Where this was saved, {said}."),
            _button("Choose the same here", "choices", ""),
        )
    ]


def _chosen_from(choices: Mapping[str, str], number: int) -> ET.Element:
    return element("p", {"class": "tools"}, *(_button(words, what, number) for what, words in choices.items()))


def _button(words: str, what: str, number: int | str) -> ET.Element:
    return element("button", {"type": "button", "data-keep": what, "data-item": str(number)}, words)
