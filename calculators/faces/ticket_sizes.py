"""The sizes measured at the end: a line for each box of the ticket, what was written there, and how it compares."""

import xml.etree.ElementTree as ET
from collections.abc import Mapping, Sequence

from calculators.bundles import Box
from calculators.faces.markup import add, element
from calculators.kinds import Refused
from calculators.measure import show_length
from calculators.ticket.batch import Batch
from calculators.ticket.sizes import compared, read_size
from calculators.ticket.small import show_small

MOST_LINES = 10
SIDES = {"width": "Width", "length": "Length"}
LONGEST = "80"


def sizes(batch: Batch, measured: Sequence[Mapping[str, str]]) -> ET.Element:
    """The table of measured sizes. measured: lines with ``piece``, ``width``, ``length``, ``note``, each a text as written."""
    finished = " by ".join(show_length(each, batch.ruler) for each in batch.finished.values())
    allowed = show_small(batch.settled("tolerance_finished"), batch.ruler)
    made = element(
        "div", {"class": "sizes"},
        element("h4", None, "Measured sizes"),
        element("p", {"class": "meant"}, f"The ticket says {finished}; {allowed} more or less is allowed."),
    )  # fmt: skip
    for box in batch.bundles.boxes(MOST_LINES):
        own = [line for line in measured if line.get("piece", "").isdecimal() and int(line["piece"]) in box]
        for line in own or [{"piece": str(box.first)}]:
            add(made, _line(box, line, batch))
    for line in measured:
        if not line.get("piece", "").isdecimal():
            add(made, _elsewhere(line))
    return made


def _line(box: Box, line: Mapping[str, str], batch: Batch) -> ET.Element:
    piece = line["piece"]
    which = f"Piece {box.first}" if box.first == box.last else f"Pieces {box.first}–{box.last}"
    return element(
        "div", {"class": "size-line", "role": "group", "aria-label": which},
        element("p", {"class": "which"}, which),
        *(_side(side, label, piece, which, line.get(side, ""), batch) for side, label in SIDES.items()),
        _blank("note", "Note", piece, which, line.get("note", "")),
    )  # fmt: skip


def _side(side: str, label: str, piece: str, which: str, text: str, batch: Batch) -> ET.Element:
    made = _blank(side, label, piece, which, text)
    said, within = size_said(text, side, batch)
    add(made, element("p", {"class": "compared" if within else "compared off", "role": "status", "data-size": f"{piece}.{side}"}, said))
    return made


def _blank(side: str, label: str, piece: str, which: str, text: str) -> ET.Element:
    control = element(
        "input", {"type": "text", "name": f"{piece}.{side}", "value": text, "maxlength": LONGEST, "aria-label": f"{label}, {which.lower()}", "autocomplete": "off", "spellcheck": "false"}
    )
    return element("div", {"class": "size"}, element("label", None, element("span", None, label), " ", control))


def size_said(text: str, side: str, batch: Batch) -> tuple[str, bool]:
    """How a size that is written down compares, and whether it is within what is allowed; nothing for an empty blank."""
    if not text.strip():
        return "", True
    try:
        found = compared(read_size(text, side, batch), side, batch)
    except Refused as trouble:
        return str(trouble), False
    return found.said.filled(batch.ruler), found.within


def _elsewhere(line: Mapping[str, str]) -> ET.Element:
    """A line that was written for a piece of no number, shown as it stands."""
    words = ", ".join(line[name] for name in ("piece", "width", "length", "note") if line.get(name))
    return element("p", {"class": "size-line"}, words)
