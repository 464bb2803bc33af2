"""What the operations of a making up are counted by, so that a house can time them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.articles.cutting import ArticlePiece
from calculators.trade.articles.work import CLOSE_GAP, MakingUp
from calculators.trade.stitches.hand import STITCHES

CUT, PRESS, BY_HAND = "cut", "press", "by hand"
#: Every kind of operation that takes time: as it is called on a page. The edges that are kept take none.
OPERATIONS: Mapping[str, str] = {
    CUT: "cut a piece",
    "hem": "hem",
    "casing": "casing",
    "seam": "seam",
    "zip": "zip",
    "buttons": "buttonhole and button",
    "bind": "bind an edge",
    "strap": "loop or tie",
    "border": "row round a flange or border",
    "lay on": "stitch a border, lining or pocket on",
    "piping": "make piping",
    "rods": "tapes for rods",
    "turn out": "turn out",
    "tack": "tack layers together",
    "close": "close an opening",
    CLOSE_GAP: "close what it was turned out by",
    BY_HAND: "sew by hand",
    PRESS: "press and check",
}
_KEPT = "keep"


@dataclass(frozen=True)
class Counted:
    """How often an operation is done to one article, and how long its rows of stitches are together, by machine or by
    hand [mm]."""

    times: int = 0
    stitching: Fraction = Fraction(0)


def counted(work: MakingUp, pieces: Sequence[ArticlePiece]) -> dict[str, Counted]:
    """What is done to one article, by the kind of operation.

    Source: derived, the operations of the making up counted; buttons are counted one by one, what is cut piece by
    piece, and what is sewn by hand apart from what is stitched, but for the gap that it is turned out by.
    """
    found = {CUT: Counted(sum(each.count for each in pieces))}
    for each in work.operations:
        if each.verb == _KEPT:
            continue
        kind = BY_HAND if each.by_hand and each.verb != CLOSE_GAP else each.verb
        before = found.get(kind, Counted())
        found[kind] = Counted(before.times + 1, before.stitching + each.rows_sewn)
    if buttons := sum(each.count for each in work.to_buy if each.thing == "buttons"):
        found["buttons"] = Counted(buttons, found["buttons"].stitching if "buttons" in found else Fraction(0))
    return {**found, PRESS: Counted(1)}


def thread_by_hand(work: MakingUp) -> Fraction:
    """The thread of what is sewn by hand on one article, without its ends.

    work: the making up of the article.
    Returns its length [mm].
    Source: derived, each row as often as the path of its stitch is longer than the row.
    """
    rows = work.sewn_by_hand.items()
    return sum((length * STITCHES[stitch].thread_for_each_length() for stitch, length in rows), Fraction(0))


def rows_begun(work: MakingUp) -> int:
    """How often the machine starts and stops on one article, each operation's rows counted once.

    Source: derived.
    """
    return sum(max(each.rows, 1) for each in work.operations if each.stitching)
