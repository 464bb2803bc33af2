"""Curtains: widths, cut drop and cloth to buy, and the fullness that comes of it."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from math import ceil
from types import SimpleNamespace
from typing import Any

from calculators.articles.hangings import FULLNESS
from calculators.asking.declaration import Answer, Calculator, Example, Result, invalid_input
from calculators.asking.edge_questions import edges_that_leave_cloth
from calculators.catalogue.curtains.fields import (
    FIELDS,
    QUESTION,
    Bought,
    hem,
    off_the_ends,
    refuse_what_cannot_be_sewn,
)
from calculators.catalogue.curtains.messages import notes, piece_by_piece, working
from calculators.drawing.curtain import curtain_laid_flat
from calculators.trade.cloth import after_the_wash
from calculators.trade.curtains import (
    HALF,
    Drop,
    JoinedWidths,
    Window,
    cloth_for,
    each_curtain_of,
    whole_steps,
    widths_for,
    widths_from,
)
from calculators.values.kinds import Column, Count, Length, Number, Table, Text
from calculators.values.phrase import say

_MOST_WIDTHS = 60  # in a curtain, beyond which no seam can be told from the next in its drawing
_EACH = Number(most=Fraction(1_000))
_UP = Length(toward="up")
_CUT = {False: "cut {cut_drop} long", True: "cut {cut_unwashed} long from unwashed cloth, or {cut_drop} from washed"}


def _work(given: SimpleNamespace) -> Answer:
    window = Window(given.rod, given.curtains, given.side_return, given.overlap, given.gathered == "gathered")
    washed = after_the_wash(given.cloth_width, min(given.change_width, Fraction(0)))
    cloth_width = edges_that_leave_cloth(given, washed).between(washed)
    refuse_what_cannot_be_sewn(given, window.flat_width(given.fullness) / window.curtains, cloth_width)
    drop = Drop(
        given.drop, given.heading, hem(given.lower_hem, given.lower_turn), given.change_length, given.pattern_repeat
    )
    widths = _widths(given, window, cloth_width)
    if widths.number > _MOST_WIDTHS:
        raise invalid_input(
            "cloth_width",
            "Of cloth this narrow a curtain takes {count:count} widths. Write the whole width of the cloth.",
            count=ceil(widths.number),
        )
    bought = _bought(given, widths, drop)
    a_width = drop if bought["widths"] > 1 else replace(drop, repeat=Fraction(0))  # a single one need not match another
    results = {
        "widths_each": widths.number,
        **bought,
        "cut_drop": a_width.cut,
        "cut_unwashed": a_width.cut_unwashed if drop.shrinkage else None,
        "flat_width": window.flat_width(given.fullness),
        "cut_width": widths.cut,
        "finished_width": widths.finished,
        "reached": _reached(window, widths),
        "widths_in_hand": None,
        "fullness_in_hand": None,
        "other_counts": list(_other_counts(given, window, widths, drop)),
    }
    if given.cloth_in_hand is not None:
        results |= _from_cloth_in_hand(given, window, widths, drop)
    other_way = _in_all(given, _widths(given, replace(window, gathered=not window.gathered), cloth_width))
    each = ", {widths_each} a curtain" if window.curtains > 1 or results["widths"] > widths.number else ""
    return Answer(
        results,
        say(
            f"**{{widths:width|widths}}**{each}, {_CUT[results['cut_unwashed'] is not None]}. **Buy {{buy}}** for "
            "fullness {reached}.",
            **results,
        ),
        notes=(*notes(given, window, widths, a_width, results, other_way), *piece_by_piece(given, washed)),
        working=tuple(working(given, window, widths, a_width, results)),
        drawn_from=(widths, a_width),
    )


def _widths(given: SimpleNamespace, window: Window, cloth_width: Fraction) -> JoinedWidths:
    wanted = window.flat_width(given.fullness) / window.curtains
    return widths_for(
        wanted, cloth_width, given.seam_allowance, hem(given.side_hem, given.side_turn), given.widths_in == "half"
    )


def _in_all(given: SimpleNamespace, widths: JoinedWidths) -> int:
    curtains: int = given.curtains
    return ceil(curtains * widths.number)


def _reached(window: Window, widths: JoinedWidths) -> Fraction:
    return window.fullness(window.curtains * widths.finished)


def _bought(given: SimpleNamespace, widths: JoinedWidths, drop: Drop) -> dict[str, Any]:
    in_all = _in_all(given, widths)
    length = cloth_for(in_all, drop, given.spare_repeats, off_the_ends(given))
    return {"widths": in_all, "length": length, "buy": whole_steps(length, given.sold_in)}


def _other_counts(given: SimpleNamespace, window: Window, widths: JoinedWidths, drop: Drop) -> Iterator[dict[str, Any]]:
    """The counts on either side that still cover the rod."""
    step = HALF if given.widths_in == "half" else 1
    for count in (widths.number + n * step for n in (-1, 0, 1)):
        made = replace(widths, number=count)
        if count > 0 and _reached(window, made) >= 1:
            a_curtain = f"{float(count):g} a curtain{', as now' if count == widths.number else ''}"
            yield {
                "laid": a_curtain,
                "widths_each": count,
                "fullness": _reached(window, made),
                **_bought(given, made, drop),
            }


def _from_cloth_in_hand(given: SimpleNamespace, window: Window, widths: JoinedWidths, drop: Drop) -> dict[str, Any]:
    found = widths_from(given.cloth_in_hand, drop, given.spare_repeats, off_the_ends(given))
    each = each_curtain_of(found, window.curtains, given.widths_in == "half")
    fullness = _reached(window, replace(widths, number=each)) if each else Fraction(0)
    return {"widths_in_hand": found, "fullness_in_hand": fullness if fullness >= 1 else None}


CALCULATOR = Calculator(
    name="curtains",
    title="Curtains",
    purpose="How many widths curtains take, how long each is cut, how much cloth to buy, and how full they come out.",
    fields=FIELDS,
    question=QUESTION,
    results=(
        Result("widths", "Widths in all", Count(), "Widths to cut for all curtains."),
        Result("widths_each", "Widths a curtain", _EACH, "Widths joined into each curtain."),
        Result("cut_drop", "Cut drop", _UP, "Length of each width, on washed cloth."),
        Result("cut_unwashed", "Cut drop, unwashed", _UP, "Length of each width if the cloth is not washed first."),
        Result("length", "Cloth needed", _UP, "Unwashed length that all widths take."),
        Result("buy", "Cloth to buy", Bought(), "The same in whole steps, as the shop sells it."),
        Result("reached", "Fullness reached", FULLNESS, "Fullness that these widths give, washed and hemmed."),
        Result("flat_width", "Flat width wanted", Length(), "All curtains together, finished, before they are "
            "gathered."),
        Result("cut_width", "A curtain before hemming", Length(), "Across the joined widths, washed."),
        Result("finished_width", "A curtain, flat", Length(toward="down"), "Across the finished curtain before it is "
            "gathered."),
        Result("widths_in_hand", "Widths from the cloth in hand", Count(), "Whole widths that it gives."),
        Result("fullness_in_hand", "Fullness from the cloth in hand", FULLNESS, "Fullness that those widths give, "
            "shared out evenly; none where they do not cover the rod."),
        Result(
            "other_counts",
            "Other counts",
            Table(columns=(Column("laid", "Widths", Text()),
                Column("widths_each", "Widths a curtain", _EACH, as_data=True), Column("widths", "In all", Count()),
                Column("fullness", "Fullness", FULLNESS), Column("length", "Cloth needed", _UP, as_data=True),
                Column("buy", "Cloth to buy", Bought()))),
            "What the next counts on either side would come to.",
        ),
    ),
    work=_work,
    drawing=curtain_laid_flat,
    examples=(
        Example(
            {
                "rod": "200 cm", "curtains": "2", "drop": "240 cm", "fullness": "2", "side_return": "10 cm",
                "overlap": "10 cm", "gathered": "flat", "cloth_width": "140 cm", "measured": "trimmed",
                "pattern_repeat": "64 cm", "widths_in": "half",
                "side_hem": "3 cm", "lower_hem": "10 cm", "heading": "5 cm", "seam_allowance": "1 cm",
                "change_length": "0", "change_width": "0", "spare_repeats": "1", "end_loss": "1 cm", "skew": "0",
                "sold_in": "10 cm",
            },
            {"flat_width": 4300, "widths_each": 2, "widths": 4, "cut_width": 2780, "finished_width": 2660,
                "cut_drop": 3200, "length": 12_910, "buy": 13_000, "reached": 2.51},
            "worked by hand: 2 × 200 + 20 + 10 = 430 cm, 215 cm a curtain; 1.5 widths are 210 − 2 − 12 = 196 cm, too "
                "little, 2 widths 280 − 2 − 12 = 266 cm; 240 + 5 + 20 = 265 cm, 5 × 64 = 320 cm; "
            "3 × 320 + 265 + 64 + 2 = 1291 cm; (2 × 266 − 30) ÷ 200 = 2.51",
        ),
    ),
    sources=("ufgs-12-22-00",),
)  # fmt: skip
