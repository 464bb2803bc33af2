"""The markers that pages use to show what the calculators know: ``{{ verb word word name="value" }}``."""

import json
import re
import shlex
import xml.etree.ElementTree as ET
from collections.abc import Callable
from dataclasses import dataclass, field

from calculators.asking.answering import Asking, answer
from calculators.asking.bibliography import bibliography, source_named
from calculators.asking.declaration import InvalidInput
from calculators.asking.site_method import site_method
from calculators.batch.walk import WALKS
from calculators.catalogue import calculator_named, catalogue
from calculators.documents.house_method.sections import sections
from calculators.faces.browser import NO_NUMBER
from calculators.faces.handing.page import handing_page
from calculators.faces.handing.where_kept import where_kept
from calculators.faces.house_method.format_page import method_format
from calculators.faces.house_method.page import method_page
from calculators.faces.job.format_page import job_format
from calculators.faces.job.jobs_page import jobs_page
from calculators.faces.job.walk import walk_on_page
from calculators.faces.page.answer_html import figure, small_figure
from calculators.faces.page.beside import beside
from calculators.faces.page.markup import element, html
from calculators.faces.page.own_words import place_for_words
from calculators.faces.page.page_notes import PageNotes
from calculators.faces.page.reference import reference
from calculators.faces.page.sentence_number import HOUSE, number_text, value_text
from calculators.faces.page.signs import fault_pair, lines_list, signs_list
from calculators.faces.page.steps_widget import steps_widget
from calculators.faces.page.widget import widget
from calculators.faces.ticket.page import ticket_page
from calculators.trade.trade_rules import PRACTICE, rule
from scripts.checked.pages import checked, held_against, summary

MARKER = re.compile(r"\{\{\s*(.*?)\s*\}\}")
RULE = re.compile(r"\{\{\s*rule\s+([\w-]+)(?:\s+(brief|said))?\s*\}\}")
HEADING = re.compile(r"^(#{1,6}) ", re.MULTILINE)
FENCE = re.compile(r"^```.*?^```", re.MULTILINE | re.DOTALL)
BUT = "but"
OR = "or"
AS = {"given": "given", BUT: "but", OR: "other"}  # by what name a marker takes the fields after each word
SMALL = "small"  # a drawing without its words
SETTLED = "settled"  # choices that a page makes and does not ask for
PRACTICE_WORDS = "common practice, no source"
MARK = '<sup class="noted"'


class UnknownMarker(ValueError):
    """Raised for a marker that no one can read; the build stops on it."""


@dataclass
class PageMarkers:
    """The markers of one page: each is replaced by a token before Markdown runs and by its HTML afterwards.

    home: the way from the page back to the top of the site, such as ``../``.
    """

    home: str
    shown: list[str] = field(default_factory=list)
    notes: PageNotes = field(default_factory=PageNotes)
    level: int = 2  # of a heading that belongs to the last one before the marker in hand

    def take_out(self, markdown: str) -> str:
        """The page's Markdown with the trade's rules written out, and a token for every other marker."""
        return MARKER.sub(self._token, with_rules(markdown))

    def put_back(self, page_html: str) -> str:
        """The page's HTML with what each token stands for, and its notes at its foot; a token alone in a paragraph
        replaces the paragraph, and a mark stands close to the word before it."""

        def made(found: re.Match[str]) -> str:
            return self.shown[int(found.group(1))]

        def close(found: re.Match[str]) -> str:
            return made(found) if made(found).startswith(MARK) else found[0]

        page_html = re.sub(r"\s+markertoken(\d+)x", close, page_html)
        page_html = re.sub(r"markertoken(\d+)x", made, re.sub(r"<p>markertoken(\d+)x</p>", made, page_html))
        notes = self.notes.at_foot()
        return page_html if notes is None else page_html + html(notes)

    def _token(self, found: re.Match[str]) -> str:
        try:
            words = shlex.split(found.group(1))
        except ValueError as problem:
            raise UnknownMarker(f"{found.group(0)}: {problem}") from problem
        headings = HEADING.findall(FENCE.sub("", found.string[: found.start()]))
        self.level = min(len(headings[-1]), 5) + 1 if headings else 2
        verb, arguments = (words[0] if words else ""), words[1:]
        if verb not in MARKERS:
            raise UnknownMarker(f"There is no marker “{verb}”. There are: {', '.join(MARKERS)}.")
        plain = [word for word in arguments if "=" not in word and word not in (BUT, OR)]
        heading = "given"
        named: dict[str, list[str]] = {heading: [], BUT: [], OR: []}
        for word in arguments:
            heading = word if word in (BUT, OR) else heading
            named[heading].append(word)
        filled = {name: dict(word.split("=", 1) for word in words if "=" in word) for name, words in named.items()}
        try:
            made = MARKERS[verb](self, *plain, **{AS[name]: fields for name, fields in filled.items() if fields})
        except (KeyError, ValueError, TypeError, StopIteration) as problem:
            raise UnknownMarker(f"{found.group(0)}: {problem}") from problem
        self.shown.append(html(made))
        return f"markertoken{len(self.shown) - 1}x"


def with_rules(markdown: str) -> str:
    """A page's Markdown with each ``{{ rule KEY }}`` written out as Markdown and markers.

    After the key may stand ``brief``, for the rule as a ticket tells it, or ``said``, without its reason and, where the
    list or box it stands in is
    marked as common practice, without that mark of its own.
    """
    return RULE.sub(_written_out, markdown)


def _written_out(found: re.Match[str]) -> str:
    key, how = found.groups()
    try:
        told = rule(key)
    except KeyError as problem:
        raise UnknownMarker(f"{found.group(0)}: {problem}") from problem
    if how == "brief":
        return told.brief
    words = [told.said.strip(), *([told.why] if told.why and how != "said" else [])]
    known = [
        source
        for source in told.known
        if not re.search(rf"\b{source} *\}}\}}", told.said) and (source != PRACTICE or how != "said")
    ]
    return " ".join(
        [*words, *("{{ practice }}" if source == PRACTICE else f"{{{{ cite {source} }}}}" for source in known)]
    )


def _place(page: PageMarkers, name: str) -> str:
    return f"{name}-{len(page.shown)}"


def _calculator(page: PageMarkers, name: str, *, given: dict[str, str] | None = None) -> ET.Element:
    given = given or {}
    return widget(calculator_named(name), Asking(given), _place(page, name), given, page.level)


def _steps(page: PageMarkers, name: str = "corner-steps", asked: str = "", *, given: dict[str, str]) -> ET.Element:
    """The steps of a corner, a hem or a seam. asked: “settled” where the choices given are the page's, not the
    reader's."""
    if asked not in ("", SETTLED):
        raise ValueError(f"“{asked}” is not “{SETTLED}”")
    return steps_widget(name, Asking(given), _place(page, name), given, page.level, settled=asked == SETTLED)


def _walk(page: PageMarkers, name: str) -> ET.Element:
    return walk_on_page(WALKS[name], Asking({}), _place(page, name), page.home)


def _number(
    page: PageMarkers, name: str, result: str, *, given: dict[str, str] | None = None, but: dict[str, str] | None = None
) -> ET.Element:
    """A number of the calculation that is filled in just as `given` says; `but` stands in place of what the reader has
    there."""
    given, but = given or {}, but or {}
    wanted = json.dumps({"calculator": name, "result": result, "given": given, **({BUT: but} if but else {})})
    try:
        text = number_text(name, result, {**given, **but}, Asking({}))
    except InvalidInput:
        if site_method().is_example:
            raise  # the page is wrong; a studio's cloth may be too small for an example, and no page is wrong then
        text = NO_NUMBER
    return element("span", {"class": "number", "data-number": wanted}, text)


def _house(page: PageMarkers, measure: str) -> ET.Element:
    """A measure that the house method settles."""
    return _number(page, HOUSE, measure)


def _value(page: PageMarkers, text: str, source: str) -> ET.Element:
    """A measured value with its source, or marked as common practice."""
    shown = element("span", {"class": "value", "data-value": text}, value_text(text, Asking({})))
    return element("span", {"class": "sourced"}, shown, _practice(page) if source == PRACTICE else _cite(page, source))


def _figure(
    page: PageMarkers,
    name: str,
    size: str = "",
    *,
    given: dict[str, str] | None = None,
    but: dict[str, str] | None = None,
) -> ET.Element:
    """A drawing of the calculation that is filled in just as `given` says, as for a number; `small`: without its
    words."""
    if size not in ("", SMALL):
        raise ValueError(f"“{size}” is no size of a drawing; there is {SMALL}")
    given, but = given or {}, but or {}
    filled = {**given, **but}
    calculator, asking = calculator_named(name), Asking(filled)
    try:
        made = (small_figure if size else figure)(calculator, answer(calculator, asking), asking.ruler)
    except InvalidInput:
        if site_method().is_example:
            raise
        made = element("div", None, NO_NUMBER)
    wanted = {"calculator": name, "given": given, **({BUT: but} if but else {}), **({SMALL: True} if size else {})}
    made.set("data-figure", json.dumps(wanted))
    return made


def _beside(
    page: PageMarkers,
    name: str,
    *,
    but: dict[str, str],
    other: dict[str, str],
    given: dict[str, str] | None = None,
) -> ET.Element:
    """The steps of two ways, which one slider takes on together: the first as `but` says, the second as `other`."""
    wanted = {"calculator": name, "given": given or {}, "but": but, "beside": other}
    one, second = (Asking({**(given or {}), **differs}) for differs in (but, other))
    made = beside(calculator_named(name), one, second, (but, other))
    made.set("data-figure", json.dumps(wanted))
    return made


def _signs(page: PageMarkers) -> ET.Element:
    return signs_list()


def _lines(page: PageMarkers) -> ET.Element:
    return lines_list()


def _fault(page: PageMarkers, name: str) -> ET.Element:
    """A fault beside the same thing as it should be."""
    return fault_pair(name)


def _cite(page: PageMarkers, key: str) -> ET.Element:
    source = source_named(key)
    return page.notes.mark(
        source.short, element("a", {"href": f"{page.home}reference/sources/#{key}", "class": "cite"}, source.cited)
    )


def _practice(page: PageMarkers) -> ET.Element:
    return page.notes.mark(PRACTICE_WORDS, f"{PRACTICE_WORDS.capitalize()}.")


def _reference(page: PageMarkers, name: str) -> ET.Element:
    return reference(calculator_named(name), held_against(calculator_named(name), page.home))


def _checked(page: PageMarkers) -> ET.Element:
    return checked(page.home)


def _checked_in_numbers(page: PageMarkers) -> ET.Element:
    return summary()


def _ticket(page: PageMarkers, name: str) -> ET.Element:
    return ticket_page(WALKS[name], page.home)


def _jobs(page: PageMarkers) -> ET.Element:
    return jobs_page()


def _job_format(page: PageMarkers) -> ET.Element:
    return job_format()


def _method(page: PageMarkers) -> ET.Element:
    return method_page()


def _own_words(page: PageMarkers, section: str) -> ET.Element:
    if section not in {each.name for each in sections()}:
        raise KeyError(section)
    return place_for_words(section)


def _handing(page: PageMarkers) -> ET.Element:
    return handing_page()


def _where_kept(page: PageMarkers) -> ET.Element:
    return where_kept()


def _method_format(page: PageMarkers) -> ET.Element:
    return method_format()


def _calculators(page: PageMarkers) -> ET.Element:
    entries = (
        element(
            "li", None, element("a", {"href": f"{page.home}reference/{each.name}/"}, each.title), f": {each.purpose}"
        )
        for each in catalogue().values()
    )
    return element("ul", None, *entries)


def _sources(page: PageMarkers) -> ET.Element:
    listed = element("dl", {"class": "bibliography"})
    for source in bibliography().values():
        listed.append(element("dt", {"id": source.key}, source.cited))
        listed.append(element("dd", None, f"{source.about} Known: {source.known}."))
    return listed


MARKERS: dict[str, Callable[..., ET.Element]] = {
    "calculator": _calculator,
    "steps": _steps,
    "walk": _walk,
    "number": _number,
    "house": _house,
    "value": _value,
    "figure": _figure,
    "beside": _beside,
    "fault": _fault,
    "signs": _signs,
    "lines": _lines,
    "cite": _cite,
    "practice": _practice,
    "reference": _reference,
    "ticket": _ticket,
    "jobs": _jobs,
    "job_format": _job_format,
    "method": _method,
    "own_words": _own_words,
    "handing": _handing,
    "where_kept": _where_kept,
    "method_format": _method_format,
    "calculators": _calculators,
    "sources": _sources,
    "checked": _checked,
    "checked_in_numbers": _checked_in_numbers,
}
