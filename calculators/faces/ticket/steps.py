"""The steps of a ticket: what to do, how much care it deserves, and what is ticked when it is done."""

import xml.etree.ElementTree as ET
from collections.abc import Iterable, Mapping, Sequence

from calculators.faces.page.markup import Content, add, element
from calculators.faces.page.own_words import words_at_steps
from calculators.faces.ticket.sizes import sizes
from calculators.ticket.batch import Batch
from calculators.ticket.care import Care
from calculators.ticket.marking import markings
from calculators.ticket.settings import Setting, machine_settings, tolerances
from calculators.ticket.steps import ONCE, TicketStep
from calculators.ticket.ticks import Kept, done, of_box, pieces_done
from calculators.trade.bundles import Bundles, TickBox

MOST_BOXES = 10  # as many as stand beside a step on paper
SHORT = {
    "stitch_seam": "Stitch",
    "stitch_hem": "Stitch",
    "edge_stitch": "From the fold",
    "tolerance_cut": "May be off by",
    "tolerance_finished": "May be off by",
    "tolerance_square": "Diagonals may differ by",
}


def steps_listed(
    job: str,
    steps: Sequence[TicketStep],
    batch: Batch,
    ticks: Mapping[str, Kept],
    measured: Sequence[Mapping[str, str]],
) -> ET.Element:
    """All steps in working order. job: its name, which a step alone on a screen bears too. ticks: step → pieces done,
    or bundles. measured: as for `sizes`."""
    settings = {each.name: each for each in (*machine_settings(batch), *tolerances(batch))}
    listed = element("ol", {"class": "ticket-steps"})
    told_before: set[str] = set()
    own_words = words_at_steps(batch.method, [each.key for each in steps])
    for number, step in enumerate(steps, start=1):
        place = element(
            "p", {"class": "place"}, f"Step {number} of {len(steps)}", element("span", {"class": "of-job"}, f" · {job}")
        )
        add(
            listed,
            _step(
                place, step, batch, settings, ticks.get(step.key, 0), measured, told_before, own_words.get(step.key, [])
            ),
        )
        told_before |= set(step.cautions)
    return listed


def _step(
    place: ET.Element,
    step: TicketStep,
    batch: Batch,
    settings: Mapping[str, Setting],
    kept: Kept,
    measured: Sequence[Mapping[str, str]],
    told_before: set[str],
    own_words: list[ET.Element],
) -> ET.Element:
    what = element("div", {"class": "what"}, place, element("h3", {"tabindex": "-1"}, step.title))
    if step.picture:
        add(what, element("figure", {"class": "drawing"}, step.picture.svg))
    add(
        what,
        element("p", {"class": "told"}, " ".join(each.filled(batch.ruler) for each in step.instructions)),
        *own_words,
    )
    if step.settings:
        add(what, element("p", {"class": "set"}, *_set(settings[name] for name in step.settings)))
    care = step.care
    add(
        what,
        element(
            "p",
            {"class": "care"},
            element("strong", None, f"Care: {care.level}."),
            f" {care.why.filled(batch.ruler)}",
            _mark(care),
        ),
    )
    for caution in step.cautions:
        add(what, element("p", {"class": "caution again" if caution in told_before else "caution"}, caution))
    if step.key == "mark":
        add(what, element("div", {"class": "only-at-machine"}, *_marks_again(batch)))
    if step.key == "check":
        add(what, sizes(batch, measured))
    return element(
        "li",
        {"class": "ticket-step", "data-step": step.key},
        what,
        ticked(step.key, step.title, bundles_of(step.key, batch), kept),
    )


def _set(settings: Iterable[Setting]) -> list[Content]:
    """Settings in one line; those the house has not settled are left out."""
    parts = [(f"{SHORT.get(each.name) or each.label}: ", each.text) for each in settings if each.text]
    return [piece for at, part in enumerate(parts) for piece in (" · " if at else "", *part)]


def _mark(care: Care) -> ET.Element | None:
    """A mark that leads to what the page says of care that has no source."""
    if care.is_worked_out:
        return None
    words = dict.fromkeys(("aria-label", "title"), "Common practice, no source")
    return element("sup", {"class": "of-care"}, element("a", {"href": "#where-the-care-words-come-from", **words}, "°"))


def bundles_of(step: str, batch: Batch) -> Bundles:
    """What a step is ticked for: once, or bundle by bundle. step: its key."""
    return Bundles(1, 1) if step in ONCE else batch.bundles


def ticked(key: str, title: str, bundles: Bundles, kept: Kept) -> ET.Element:
    """The boxes of a step, what they say in words, and the two buttons that change them.

    kept: pieces done, or bundles; for a step of the whole batch 1 once it is done.
    """
    whole = len(done(kept, bundles))
    once = bundles.pieces == 1
    return element(
        "div",
        {"class": "done whole" if whole == bundles.count else "done", "data-ticks": key,
            "data-left": str(bundles.count - whole)},
        element("div", {"class": "boxes"},
            *(_box(box, key, title, bundles, kept) for box in bundles.boxes(MOST_BOXES))),
        element("p", {"class": "count", "role": "status"}, _words(bundles, whole, kept)),
        _button(key, "1", "Done" if once else "+1 bundle", title, whole == bundles.count),
        _button(key, "-1", "Undo", title, not kept),
    )  # fmt: skip


def _box(box: TickBox, key: str, title: str, bundles: Bundles, kept: Kept) -> ET.Element:
    own = of_box(box, bundles)
    of_these = len(own & done(kept, bundles))
    state, sign = ("ticked", "✓") if of_these == len(own) else ("part", "–") if of_these else ("", None)
    square = element("span", {"class": f"box {state}".strip(), "aria-hidden": "true"}, sign)
    if bundles.pieces == 1:
        return element("span", {"class": "boxed"}, square)
    which = f"Bundle {min(own)}" if len(own) == 1 else f"Bundles {min(own)}–{max(own)}"
    pressed = {"ticked": "true", "part": "mixed"}.get(state, "false")
    told = {"type": "button", "class": "boxed", "data-box": str(box.first), "data-step": key, "aria-pressed": pressed}
    return element(
        "button",
        told,
        square,
        element("span", {"class": "unseen"}, f"{which}: {title}, to piece "),
        element("small", None, f"{box.last}"),
    )


def _words(bundles: Bundles, whole: int, kept: Kept) -> str:
    if bundles.pieces == 1:
        return "Done." if whole else "Not done yet."
    pieces = pieces_done(kept, bundles)
    more = 0 if isinstance(kept, list) or whole == bundles.count else pieces - whole * bundles.size
    begun = f", and {more} more" if more else ""
    return (
        f"{whole} of {bundles.count} {'bundle' if bundles.count == 1 else 'bundles'} done: {pieces - more} of "
        f"{bundles.pieces} pieces{begun}."
    )


def _button(key: str, by: str, words: str, title: str, idle: bool) -> ET.Element:
    return element(
        "button",
        {
            "type": "button",
            "data-tick": by,
            "data-step": key,
            "aria-label": f"{words}: {title}",
            "aria-disabled": "true" if idle else None,
        },
        words,
    )


def box_words(bundles: Bundles) -> str:
    """What one box stands for."""
    first = bundles.boxes(MOST_BOXES)[0]
    each = -(-first.last // bundles.size)
    if first.last == 1:
        return "One box is one piece: the number beside it is that piece’s."
    return (
        f"One box is {'a bundle' if each == 1 else f'{each} bundles'}, {first.last} pieces: the number beside it "
        "is "
        "the last of them."
    )


def _marks_again(batch: Batch) -> list[ET.Element]:
    made = []
    for marking in markings(batch):
        listed = element("ol", {"class": "readings"}, *(element("li", None, each) for each in marking.readings))
        made += [element("p", None, element("strong", None, f"{marking.title}")), listed]
    return made
