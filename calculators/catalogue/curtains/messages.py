"""What is said of curtains: what to do next, and how it was worked out."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from calculators.articles import articles
from calculators.asking.declaration import Onward
from calculators.catalogue.curtains.fields import hem, off_the_ends
from calculators.trade.curtains import Drop, JoinedWidths, Window
from calculators.values.kind import InvalidValue
from calculators.values.phrase import Phrase, say

_LEAST_OVERLAP = Fraction(762, 10)  # 3 in, UFGS 12 22 00
_LITTLE = Fraction(5, 100)
_ARTICLE = "curtain"
_WAYS = {False: "added flat", True: "gathered too"}


def notes(
    given: SimpleNamespace, window: Window, widths: JoinedWidths, drop: Drop, results: dict[str, Any], other_way: int
) -> Iterator[Phrase]:
    """What to do next, one phrase each. other_way: the widths in all when returns and overlap are counted the other
    way."""
    if window.beyond_the_rod:
        way = _WAYS[not window.gathered]
        if other_way == results["widths"]:
            yield say(f"Counted the other way, with returns and overlap {way}, it comes to as many widths.")
        else:
            yield say(
                f"Counted the other way, with returns and overlap {way}, it takes {{other:width|widths}}: ask which "
                "one the order means.",
                other=other_way,
            )
    if given.cloth_in_hand is not None:
        yield _in_hand(given, results)
    yield from _fewer(given, results)
    if results["widths"] > window.curtains * widths.number:
        yield say("Half a width is left over.")
    if widths.joins and widths.number != widths.number // 1:
        yield say(
            "Join the half width at the outer side of a curtain, away from the middle (common practice, no source)."
        )
    if drop.repeat:
        then = ", and trim {extra:length_down} off each after joining" if drop.cut > drop.needed else ""
        yield say(f"Begin every width at the same place of the pattern{then}.", extra=drop.cut - drop.needed)
        if drop.cut > drop.needed and not given.spare_repeats:
            yield say(
                "Only {last:length_up} is counted for the last width: it may end sooner.", last=drop.needed_unwashed
            )
    if window.curtains > 1 and window.overlap < _LEAST_OVERLAP:
        yield say(
            "One specification has two curtains overlap by {least:length} at least (UFGS 12 22 00).",
            least=_LEAST_OVERLAP,
        )
    if max(given.change_length, given.change_width) > 0:
        yield say("Growing is not counted on: the cloth is taken as it is now.")


def piece_by_piece(given: SimpleNamespace, cloth_width: Fraction) -> Iterator[Onward]:
    """On to one of them as an article, where it can be sewn as that is: with a hem on every side, and a seam between
    widths. cloth_width: of the whole cloth, washed [mm]."""
    sides = {name: hem(getattr(given, f"{name}_hem"), getattr(given, f"{name}_turn")) for name in ("side", "lower")}
    turns = {f"{name}_turn": each.turn for name, each in sides.items()}
    values = {**vars(given), **turns, "cloth_width": cloth_width}
    fields = articles()[_ARTICLE].fields
    texts = {each.name: each.kind.write_exactly(values[each.name], given.ruler) for each in fields}
    try:
        for each in fields:
            each.kind.parse(texts[each.name], given.ruler)
    except InvalidValue:
        return
    yield Onward(
        "One of them, with each piece, each step and its time.",
        does="One curtain, piece by piece",
        page="projects/curtains-piece-by-piece/",
        calculator=_ARTICLE,
        carries=texts,
    )


def _in_hand(given: SimpleNamespace, results: dict[str, Any]) -> Phrase:
    found, lacking = results["widths_in_hand"], results["length"] - given.cloth_in_hand
    values = {
        "found": found,
        "lacking": lacking,
        "over": -lacking,
        "wanted": given.fullness,
        "fullness": results["fullness_in_hand"],
    }
    if lacking <= 0:
        return say("The cloth in hand is enough, with {over:length_down} over.", **values)
    short = "The cloth in hand lacks {lacking:length_up}"
    if not found:
        return say(f"{short}: it does not give one width.", **values)
    if results["fullness_in_hand"] is None:
        return say(f"{short}: its {{found:width|widths}} would not cover the rod, even flat.", **values)
    return say(
        f"{short}: its {{found:width|widths}}, shared out evenly, would come to fullness {{fullness}}, short of the "
        "{wanted:number} wanted.",
        **values,
    )


def _fewer(given: SimpleNamespace, results: dict[str, Any]) -> Iterator[Phrase]:
    """A little less fullness that would save cloth."""
    for row in results["other_counts"]:
        saved = results["buy"] - row["buy"]
        if (
            saved > 0
            and row["widths"] < results["widths"]
            and given.fullness - row["fullness"] <= _LITTLE * given.fullness
        ):
            yield say(
                "With {widths:width|widths} the fullness would be {fullness}, a little short of {wanted:number}, and "
                "{saved:length} less to buy.",
                widths=row["widths"],
                fullness=row["fullness"],
                wanted=given.fullness,
                saved=saved,
            )


def working(
    given: SimpleNamespace, window: Window, widths: JoinedWidths, drop: Drop, results: dict[str, Any]
) -> Iterator[Phrase]:
    """How it was worked out, with this job's numbers."""
    flat = (
        "({rod:length} + {beyond:length}) × {fullness:number}"
        if window.gathered
        else "{rod:length} × {fullness:number} + {beyond:length}"
    )
    yield say(
        f"Flat width, all curtains together: {flat} = {{flat_width}}. Returns and overlap: 2 × {{side:length}} + "
        "{meetings:count} × {overlap:length} = {beyond:length}.",
        rod=window.rod,
        beyond=window.beyond_the_rod,
        fullness=given.fullness,
        flat_width=results["flat_width"],
        side=window.side_return,
        overlap=window.overlap,
        meetings=window.curtains - 1,
    )
    yield say(
        "A curtain: {flat_width} ÷ {curtains:count} and {side:length} for each side hem, of cloth "
        "{cloth:length_down} wide once washed, of which each edge of a join takes {seam:length}: "
        f"{{widths_each}} {'widths' if widths.number > 1 else 'width'}, {{joins:join|joins}}, {{cut_width}} before "
        "hemming and {finished_width} hemmed.",
        curtains=window.curtains,
        side=widths.side.taken_up,
        cloth=widths.cloth_width,
        seam=widths.seam_allowance,
        joins=widths.joins,
        **results,
    )
    yield say(
        "A width: {finished:length} + {heading:length} + {lower:length} = {needed:length} on washed cloth"
        + (", {unwashed:length_up} unwashed" if drop.shrinkage else "")
        + (", and so {repeats:repeat|repeats} of {repeat:length}" if drop.repeat else "")
        + ".",
        finished=drop.finished,
        heading=drop.heading,
        lower=drop.lower.taken_up,
        needed=drop.needed,
        unwashed=drop.needed_unwashed,
        repeat=drop.repeat,
        repeats=drop.cut_unwashed // drop.repeat if drop.repeat else 0,
    )
    yield say(
        "Cloth, unwashed: "
        + (
            "{rest:count} × {cut:length_up} and {last:length_up} for the last"
            if drop.repeat
            else "{widths} × {cut:length_up}"
        )
        + (", {spare:repeat|repeats} to spare" if given.pattern_repeat and given.spare_repeats else "")
        + ", and {ends:length} for the two ends: {length}. Bought in steps of {step:length}: {buy}.",
        rest=results["widths"] - 1,
        cut=drop.cut_unwashed,
        last=drop.needed_unwashed,
        spare=given.spare_repeats,
        ends=off_the_ends(given),
        step=given.sold_in,
        **results,
    )
