"""A work ticket as sheets: the plan with its marks and settings, then the steps with their boxes and measured sizes."""

import xml.etree.ElementTree as ET
from collections.abc import Mapping, Sequence
from dataclasses import replace

from calculators.faces.page.answer_html import figure
from calculators.faces.page.markup import Content, add, element
from calculators.faces.ticket.steps import box_words, steps_listed
from calculators.ticket.batch import Batch
from calculators.ticket.cautions import DEFER
from calculators.ticket.marking import Marking, markings
from calculators.ticket.settings import Setting, machine_settings, tolerances
from calculators.ticket.steps import ticket_steps
from calculators.ticket.sums import sums
from calculators.ticket.ticks import Kept
from calculators.ticket.two_figures import two_figures
from calculators.values.measure import show_length

TO_WRITE = "not settled yet: "
UNITS = {"cm": "centimetres", "mm": "millimetres", "in": "inches"}
_LINE_OF_NAME, _LINES_OF_ORDER, _LINE_OF_FIGURE = (
    40,
    180,
    30,
)  # [characters] that fit on paper without taking a line more
FILLED_IN_BY_HAND = ("Begun", "Done", "By")


def ticket_sheets(
    name: str,
    batch: Batch,
    ticks: Mapping[str, Kept],
    measured: Sequence[Mapping[str, str]],
    notes: str = "",
    own: Mapping[str, str] = {},
) -> list[ET.Element]:
    """The two sheets of a ticket.

    name: of the job. ticks: step → pieces done, or bundles. measured: sizes written down, each with the piece it is of.
    notes: the maker's own words.
    own: her own figures for thread, time and cost, by their names in a job.
    Raises NoTicketYet where the batch cannot be made yet.
    """
    steps = ticket_steps(batch)  # first, since what cannot be made has no sheet
    order = _order(batch)
    clash = two_figures(batch)
    kind = "ticket-sheet plan crowded" if clash or _crowded(name, order, notes, own) else "ticket-sheet plan"
    return [
        element(
            "section", {"class": kind, "aria-labelledby": "ticket-name"},
            element("h2", {"id": "ticket-name"}, name),
            element("p", {"class": "order"}, order),
            element("p", {"class": "by-hand", "aria-hidden": "true"}, *_lines_to_write(FILLED_IN_BY_HAND)),
            element("p", {"class": "trouble clash"}, clash.filled(batch.ruler)) if clash else None,
            *_notes(notes),
            _what_is_cut(batch),
            element("h3", None, "Marking table"),
            element("div", {"class": "markings"}, *(_marks(each, batch) for each in markings(batch))),
            element(
                "div", {"class": "settings"},
                *_settings("Settings", machine_settings(batch)),
                element("div", None, *_settings("What may be off", tolerances(batch)),
                    *_settings("Thread, time and cost", sums(batch, own), "group sums")),
            ),
            element("p", {"class": "defer"}, DEFER),
        ),
        element(
            "section", {"class": "ticket-sheet work", "aria-labelledby": "ticket-steps"},
            element("h2", {"id": "ticket-steps"}, f"Steps: {name}"),
            element("p", {"class": "box-words"}, box_words(batch.bundles)),
            steps_listed(name, steps, batch, ticks, measured),
        ),
    ]  # fmt: skip


def _what_is_cut(batch: Batch) -> ET.Element:
    """The cloth with the pieces of this batch, which may be fewer than fit."""
    calculator, answer = batch.step_results["pieces-from-cloth"].calculator, batch.answer("pieces-from-cloth")
    return figure(calculator, replace(answer, drawn_from=batch.grid), batch.ruler)


def _crowded(name: str, order: str, notes: str, own: Mapping[str, str]) -> bool:
    """Whether the maker's own words take lines that a ticket seldom has, for which the drawing gives up room on
    paper."""
    return (
        bool(notes)
        or len(name) > _LINE_OF_NAME
        or len(order) > _LINES_OF_ORDER
        or any(len(each) > _LINE_OF_FIGURE for each in own.values())
    )


def _order(batch: Batch) -> str:
    ruler, size, bundles = batch.ruler, batch.values["finished-size"], batch.bundles
    cut, finished = (
        " by ".join(show_length(size[f"{kind}_{way}"], ruler) for way in ("width", "length"))
        for kind in ("cut", "finished")
    )
    made = f"{bundles.pieces:,} {'piece' if bundles.pieces == 1 else 'pieces'}"
    fits = batch.answer("pieces-from-cloth").results["count"]
    short = f" wanted, {fits:,} from this cloth" if fits < bundles.pieces else ""
    kind = f" ({batch.kind})" if batch.kind else ""
    cloth = f" of {batch.cloth}" if batch.cloth else ""
    split = f"{bundles.count} bundles of {bundles.size}" if bundles.count > 1 else "one bundle"
    last = f", the last of {bundles.last}" if bundles.count > 1 and bundles.last != bundles.size else ""
    return (
        f"{made}{short}{kind}{cloth}, cut {cut}, finished {finished}; {split}{last}. Measures of “{batch.method.name}”."
    )


def _lines_to_write(words: Sequence[str]) -> list[Content]:
    return [each for word in words for each in (f"{word} ", element("span", {"class": "line"}), " ")]


def _notes(notes: str) -> list[ET.Element]:
    return [element("p", {"class": "own-notes"}, notes)] if notes else []


def _marks(marking: Marking, batch: Batch) -> ET.Element:
    step = show_length(batch.ruler.step_mm, batch.ruler)
    words = f"All from {marking.origin}, in {UNITS[batch.ruler.unit]}"
    words += (
        f", each to the nearest {step} of its own place, so that rounding never adds up." if marking.rounded else "."
    )
    return element(
        "div", {"class": "marking"},
        element("h4", None, marking.title),
        element("p", None, words),
        readings(marking),
        element("p", {"class": "check-mark"}, marking.check.filled(batch.ruler)),
    )  # fmt: skip


def readings(marking: Marking) -> ET.Element:
    """The marks of one direction as a numbered list, the last one told apart."""
    last = len(marking.readings) - 1
    return element(
        "ol",
        {"class": "readings"},
        *(element("li", {"class": "last" if at == last else None}, each) for at, each in enumerate(marking.readings)),
    )


def _settings(title: str, settings: Sequence[Setting], kind: str = "group") -> list[ET.Element]:
    listed = element("dl")
    for each in settings:
        value = [each.text] if each.text else [TO_WRITE, element("span", {"class": "line"})]
        told = element("div", {"data-setting": each.name}, element("dt", None, each.label), element("dd", None, *value))
        if each.why:
            add(told, element("dd", {"class": "why"}, each.why))
        add(listed, told)
    return [element("div", {"class": kind}, element("h3", None, title), listed)]
