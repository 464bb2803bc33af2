"""The sizes measured at the end: lines for the boxes of the ticket, what was written there, and how each and all
together compare."""

import xml.etree.ElementTree as ET
from collections.abc import Mapping, Sequence
from fractions import Fraction

from calculators.faces.page.keyboard import keyboard
from calculators.faces.page.markup import add, element
from calculators.ticket.batch import Batch
from calculators.ticket.sizes import DIAGONALS, compared, read_size, square, squareness_together, together
from calculators.trade.bundles import TickBox
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Length
from calculators.values.measure import show_length
from calculators.values.small_lengths import show_small

MOST_LINES = 10
SEVERAL = 5  # as many pieces are measured where one a box would be fewer
SIDES = {"width": "Width", "length": "Length"}
BLANKS = {**SIDES, "diagonal_1": "Diagonal 1", "diagonal_2": "Diagonal 2"}
SHORT = {"width": "W", "length": "L", "diagonal_1": "D 1", "diagonal_2": "D 2"}
LETTERS = "W width, L length, D 1 and D 2 from corner to corner."
LONGEST = "80"
Line = Mapping[str, str]


def sizes(batch: Batch, measured: Sequence[Line]) -> ET.Element:
    """The table of measured sizes. measured: lines with ``piece``, ``width``, ``length``, both diagonals, ``note``,
    each a text as written."""
    finished = " by ".join(show_length(each, batch.ruler) for each in batch.finished.values())
    allowed, apart = (
        show_small(batch.settled(name), batch.ruler) for name in ("tolerance_finished", "tolerance_square")
    )
    meant = f"The ticket says {finished}; {allowed} more or less is allowed, and diagonals that differ by {apart}."
    made = element(
        "div",
        {"class": "sizes"},
        element("h4", None, "Measured sizes"),
        element("p", {"class": "meant"}, meant),
        element("p", {"class": "on-paper letters"}, LETTERS),
    )
    boxes = batch.bundles.boxes(MOST_LINES)
    more, left = divmod(max(0, SEVERAL - len(boxes)), len(boxes))
    for at, box in enumerate(boxes):
        for number, line in enumerate(_lines(box, 1 + more + (at < left), measured), start=1):
            add(made, _line(box, number, line, batch))
    for line in measured:
        if not _is_of(boxes[0].first, boxes[-1].last, line):
            add(made, _elsewhere(line))
    add(made, element("div", {"class": "all-sizes", "role": "status"}, *all_together(batch, measured)))
    return made


def _lines(box: TickBox, wanted: int, measured: Sequence[Line]) -> list[Line]:
    """What was written for pieces of a box, and empty lines for further pieces of it up to so many as are wanted."""
    own = [line for line in measured if _is_of(box.first, box.last, line)]
    taken = {int(line["piece"]) for line in own}
    free = (piece for piece in range(box.first, box.last + 1) if piece not in taken)
    lines = [*own, *({"piece": str(piece)} for piece, _ in zip(free, range(wanted - len(own))))]
    return sorted(lines, key=lambda line: int(line["piece"]))


def _is_of(first: int, last: int, line: Line) -> bool:
    piece = line.get("piece", "")
    return piece.isdecimal() and first <= int(piece) <= last


def _line(box: TickBox, number: int, line: Line, batch: Batch) -> ET.Element:
    piece = line["piece"]
    pieces = f"Piece {box.first}" if box.first == box.last else f"Pieces {box.first}–{box.last}"
    which = pieces if number == 1 else f"{pieces}, no.\N{NO-BREAK SPACE}{number}"
    said, within = square_said(line, batch)
    return element(
        "div", {"class": "size-line", "role": "group", "aria-label": which},
        element("p", {"class": "which"}, which),
        *(_side(side, label, piece, which, line.get(side, ""), batch) for side, label in BLANKS.items()),
        element("p", {"class": _class(within), "role": "status", "data-size": f"{piece}.square"}, said),
        _blank("note", "Note", piece, which, line.get("note", "")),
    )  # fmt: skip


def _side(side: str, label: str, piece: str, which: str, text: str, batch: Batch) -> ET.Element:
    made = _blank(side, label, piece, which, text, unread=bool(text) and _read({side: text}, side, batch) is None)
    said, within = size_said(text, side, batch)
    add(made, element("p", {"class": _class(within), "role": "status", "data-size": f"{piece}.{side}"}, said))
    return made


def _class(within: bool) -> str:
    return "compared" if within else "compared off"


def _blank(side: str, label: str, piece: str, which: str, text: str, unread: bool = False) -> ET.Element:
    control = element(
        "input",
        {
            "type": "text", "name": f"{piece}.{side}", "value": text, "maxlength": LONGEST,
            "aria-label": f"{label}, {which.lower()}",
            "autocomplete": "off", "spellcheck": "false", "aria-invalid": "true" if unread else None,
            **(keyboard(Length()) if side in BLANKS else {}),
        },
    )  # fmt: skip
    short = element("span", {"class": "on-paper short"}, SHORT[side]) if side in SHORT else None
    return element(
        "div",
        {"class": f"size {side.partition('_')[0]}"},
        element("label", None, element("span", {"class": "long"}, label), short, " ", control),
    )


def size_said(text: str, side: str, batch: Batch) -> tuple[str, bool]:
    """How a size that is written down compares, and whether it is within what is allowed; nothing for an empty blank.

    A diagonal says nothing by itself, only what is wrong with it.
    """
    if not text.strip():
        return "", True
    try:
        size = read_size(text, side, batch)
    except InvalidValue as error:
        return str(error), False
    if side in DIAGONALS:
        return "", True
    found = compared(size, side, batch)
    return found.message.filled(batch.ruler), found.within


def square_said(line: Line, batch: Batch) -> tuple[str, bool]:
    """Whether the piece of a line is square; nothing until both its diagonals are written down."""
    one, other = (_read(line, side, batch) for side in DIAGONALS)
    if one is None or other is None:
        return "", True
    found = square((one, other), batch)
    return found.message.filled(batch.ruler), found.within


def all_together(batch: Batch, measured: Sequence[Line]) -> list[ET.Element]:
    """A sentence for each side, and one for the diagonals, of which two pieces or more are written down."""
    of_batch = [line for line in measured if _is_of(1, batch.bundles.pieces, line)]
    said = []
    for side in SIDES:
        read = [size for line in of_batch if (size := _read(line, side, batch)) is not None]
        if len(read) > 1:
            said.append(together(read, side, batch))
    both = [[_read(line, side, batch) for side in DIAGONALS] for line in of_batch]
    differences = [abs(one - other) for one, other in both if one is not None and other is not None]
    if len(differences) > 1:
        said.append(squareness_together(differences, batch))
    return [element("p", None, each.filled(batch.ruler)) for each in said]


def _read(line: Line, side: str, batch: Batch) -> Fraction | None:
    try:
        return read_size(line.get(side, ""), side, batch)
    except InvalidValue:
        return None


def _elsewhere(line: Line) -> ET.Element:
    """A line that was written for no piece of this batch, shown as it stands."""
    words = ", ".join(line[name] for name in ("piece", *BLANKS, "note") if line.get(name))
    return element("p", {"class": "size-line"}, words)
