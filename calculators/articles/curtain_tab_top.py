"""A curtain that hangs from tabs, its top faced."""

from fractions import Fraction
from math import ceil
from types import SimpleNamespace

from calculators.articles.article import Article, Size
from calculators.articles.hangings import (
    HEM_FIELDS,
    NAMES,
    PAIR_FIELDS,
    ROD_FIELDS,
    WIDTHS_FIELD,
    Hanging,
    hanging,
    hem_sides_and_foot,
    refuse_what_cannot_hang,
)
from calculators.articles.measures import refuse_unless, seam_kind, seam_of, size
from calculators.articles.widths import CLOTH_FIELDS
from calculators.asking.declaration import Example
from calculators.trade.articles.parts import EdgeStretch, FlatPart
from calculators.trade.articles.work import MakingUp
from calculators.trade.curtains import Hem
from calculators.values.phrase import say


def _make(work: MakingUp, given: SimpleNamespace) -> Size:
    kind = seam_kind(given)
    refuse_what_cannot_hang(given, given.facing)
    made = hanging(work, given, kind, Hem(given.side_hem, given.side_turn))
    refuse_unless(2 * given.tab < made.width, "tab", "Two such tabs are wider than the curtain, {width:length_down}. "
        "Write less.", width=made.width)  # fmt: skip
    tabs = max(2, ceil((made.width - given.tab) / given.apart) + 1)
    facing = work.rectangle("facing", made.width, given.facing)
    gap = (made.width - given.tab) / (tabs - 1)
    tab = work.tube("tab", given.tab, 2 * given.tab_seen, kind.allowance, count=tabs)
    for number in range(tabs):
        work.hang(tab, *[facing.top.between(number * gap, number * gap + given.tab)] * 2)
    hem_sides_and_foot(work, given, made)
    work.seam(
        *((part.top, stretch) for part, stretch in _behind(facing.top, made)), kind=kind,
        do="Fold the tabs in two and lay them on the curtain’s top, raw edges even, one at each side; lay the facing "
        "over them, right side down, and stitch, {allowance}",
    )  # fmt: skip
    work.lay_on(
        *((part.top, stretch) for part, stretch in _behind(facing.bottom, made)), inset=given.facing,
        turn=kind.allowance,
        do="Turn the facing to the back, turn its lower edge under by {turn}, and stitch it down",
    )  # fmt: skip
    ends = given.drop - given.facing, given.drop
    left, right = made.sides
    work.lay_on(
        (left.between(*ends), facing.left), (right.between(*ends), facing.right), inset=Fraction(0),
        turn=kind.allowance, do="Turn the ends of the facing under by {turn} and slip-stitch them",
        by_hand="slip",
    )  # fmt: skip
    work.notes.append(say("Between the middles of two tabs: {gap:length}.", gap=gap))
    return made.width, given.drop


def _behind(edge: EdgeStretch, made: Hanging) -> list[tuple[FlatPart, EdgeStretch]]:
    """Every width with the stretch of a long edge that lies behind it."""
    found, at = [], Fraction(0)
    for part in made.widths:
        found.append((part, edge.between(at, at + part.width)))
        at += part.width
    return found


ARTICLE = Article(
    name="curtain-tab-top",
    title="Curtain with tabs",
    purpose="What to cut for one curtain that hangs from tabs, and how many tabs it takes.",
    fields=(
        *ROD_FIELDS,
        *PAIR_FIELDS,
        *CLOTH_FIELDS,
        WIDTHS_FIELD,
        *HEM_FIELDS,
        size("facing", "Facing", "How deep it is, finished.", "6 cm", "2 3/8 in"),
        size("tab", "Width of a tab", "Finished.", "5 cm", "2 in"),
        size("tab_seen", "Height of a tab", "From the curtain’s top over the rod.", "10 cm", "4 in"),
        size("apart", "Tabs at most so far apart", "From the middle of one to that of the next.", "18 cm", "7 in"),
        *seam_of("plain", "plain"),
    ),
    question="A rod of {rod} for {curtains} curtains, a drop of {drop} below the tabs, fullness {fullness}, cloth "
    "{cloth_width} wide.",
    make=_make,
    cut=(*NAMES, "facing", "tab"),
    not_always=NAMES,
    examples=(
        Example(
            {"rod": "100 cm", "curtains": "1", "drop": "200 cm", "fullness": "1.2", "side_return": "0",
                "overlap": "0", "cloth_width": "140 cm", "measured": "trimmed", "widths_in": "whole",
                "side_hem": "2.5 cm", "side_turn": "2.5 cm", "lower_hem": "10 cm", "lower_turn": "10 cm",
                "facing": "6 cm", "tab": "5 cm", "tab_seen": "10 cm", "apart": "18 cm", "seam_allowance": "1.5 cm"},
            {"finished_width": 1300, "curtain_length": 2215, "facing_width": 1330, "facing_length": 90,
                "tab_width": 130, "tab_length": 230},
            "worked by hand: 140 − 10 = 130 cm; 200 + 20 + 1.5 cm; 6 + 3 cm; 2 × 5 + 3 cm, 2 × 10 + 3 cm; 125 cm in 7 "
            "gaps of 17.9 cm, so 8 tabs",
        ),
    ),
    about="curtain",
    is_let_down=True,
)  # fmt: skip
