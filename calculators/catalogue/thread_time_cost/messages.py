"""What is said of thread, time and cost: the answer, what to do next, and how it was worked out."""

from collections.abc import Iterator, Mapping
from types import SimpleNamespace
from typing import Any

from calculators.asking.timing import told_of_time, told_of_waiting
from calculators.catalogue.thread_time_cost.sums import PieceWork
from calculators.trade.articles.work import listed
from calculators.trade.costing import CLOTH, OTHER, THREAD, TIME, Costs
from calculators.values.phrase import Phrase, say

_NAMES = {CLOTH: "the cloth", THREAD: "the thread", TIME: "the time", OTHER: "what each piece needs besides"}


def spoken(given: SimpleNamespace, results: dict[str, Any], is_short: bool) -> Phrase:
    priced = results["total"] is not None
    without = without_said(results)
    if not is_short:
        return say(
            "**{time} of work**, {thread} of thread"
            + (f"; **{{total}} for the batch**{without}{of_each(given.pieces)}." if priced else "."),
            **results,
        )
    of_one = of_each(results["made"])
    amounts = "{time} of work, {thread} of thread" + (f"; {{total}}{without}{of_one}." if priced else ".")
    return say(
        "**{wanted:count} wanted; this cloth gives {made}.** Those {made}: " + amounts, wanted=given.pieces, **results
    )


def without_said(results: Mapping[str, Any]) -> str:
    """The words behind a sum for what is not in it for want of a price; none where all is in it."""
    unpriced = _unpriced(results)
    return f" without {listed(unpriced)}" if unpriced else ""


def _unpriced(results: Mapping[str, Any]) -> list[str]:
    return [name for part, name in _NAMES.items() if results[f"cost_{part}"] is None]


def of_each(pieces: int, each: str = "each") -> str:
    """The words for a piece's share of a sum, beside the sum; none where one piece is all of it. each: its blank."""
    return f", {{{each}}} a piece" if pieces > 1 else ""


def of_the_whole(given: SimpleNamespace, results: dict[str, Any], is_short: bool, priced: bool) -> Iterator[Phrase]:
    """What all pieces wanted take where the cloth gives fewer."""
    if not is_short:
        return
    wanted = {"wanted": given.pieces, **results}
    if results["time_whole"] is None:
        yield say(
            "Write what further cloth the rest take, under “Further cloth for the rest”, and what all {wanted:count} "
            "cost stands here too.",
            **wanted,
        )
        return
    cloth = "{cloth:length_up} of cloth, " if given.cloth_more is not None else ""
    amounts = (
        cloth
        + "{time_whole} of work, {thread_whole} of thread"
        + ("; {total_whole}, {each_whole} a piece." if priced else ".")
    )
    yield say("All {wanted:count} want " + amounts, cloth=given.cloth_bought + (given.cloth_more or 0), **wanted)


def of_the_cloth(given: SimpleNamespace, results: dict[str, Any], costs: Costs) -> Iterator[Phrase]:
    """What of the cloth is not charged, where these pieces leave rows of it whole."""
    left = given.cloth_bought - results["cloth_taken"]
    if left <= 0:
        return
    yield say(
        "These pieces take {taken:length} of the {bought:length} of cloth; {left:length} is left for other work"
        + (". With all of it the batch would cost {all:amount}." if given.price_cloth else "."),
        taken=results["cloth_taken"],
        bought=given.cloth_bought,
        left=left,
        all=costs.total
        + (given.cloth_bought * given.price_cloth / 1000 - costs.parts[CLOTH] if given.price_cloth else 0),
    )


def notes(given: SimpleNamespace, costs: Costs, results: dict[str, Any]) -> Iterator[Phrase]:
    if given.stitching_each is not None:
        yield say(
            "Counted with the stitching written for a piece, {each:long}, not with its size, rows and corners.",
            each=given.stitching_each,
        )
    if results["waiting"]:
        yield told_of_waiting(results["waiting"], "batch")
    if results["thread"]:
        yield say(
            "Buy {spools:reel|reels}, and wind {bobbins:bobbin|bobbins} off the same before you begin.",
            spools=results["spools"],
            bobbins=results["bobbins"],
        )
    else:
        yield say("Nothing is stitched by machine here; thread for sewing by hand is not counted.")
    if costs.largest:
        yield say(
            "The largest part is {part:text}: {cost:amount} of {total:amount}.",
            part=_NAMES[costs.largest],
            cost=costs.parts[costs.largest],
            total=costs.total,
        )
    if results["one_more"] is not None:
        yield say(
            "One more piece would cost {one_more}: its share of the cloth, its own thread and minutes, and what it "
            "needs besides.",
            **results,
        )
    if unpriced := _unpriced(results):
        yield say("Not in the sum, for want of a price: {parts:text}.", parts=", ".join(unpriced))


def _stitching(given: SimpleNamespace, piece: PieceWork) -> Phrase:
    if given.stitching_each is not None:
        return say(
            "Stitching of a piece: {whole:long} in {rows:row|rows}, as written; its size, sides and corners are not "
            "counted.",
            whole=piece.stitching,
            rows=given.rows_each,
        )
    return say(
        "Stitching of a piece: {rows:row|rows} along the edge of {across:count} × {width:length} + {along:count} × "
        "{length:length}, and {corners:corner seam|corner seams} of {corner:length}, together {whole:long}. "
        "Each row is counted as long as the edge; further in it is a little shorter.",
        rows=given.rows,
        across=given.sides_across,
        width=given.finished_width,
        along=given.sides_along,
        length=given.finished_length,
        corners=given.corners if piece.corner else 0,
        corner=piece.corner,
        whole=piece.stitching,
    )


def working(given: SimpleNamespace, piece: PieceWork, costs: Costs, results: dict[str, Any]) -> Iterator[Phrase]:
    yield _stitching(given, piece)
    yield say(
        "Thread for each length of it, upper and lower together: 2 + 2 × {thickness:length} ÷ {stitch:length} = "
        "{ratio}. Both threads run along every stitch, "
        "and from one to the next each dips to the middle of the cloth and comes back. Nothing is allowed for cloth "
        "that gives way or thread that stretches.",
        thickness=given.thickness,
        stitch=given.stitch,
        ratio=results["ratio"],
    )
    yield say(
        "{pieces:piece|pieces} × ({whole:long} × {ratio} + {ends:length} of thread ends), and {waste:percent} for "
        "waste: {thread}.",
        pieces=costs.pieces,
        whole=piece.stitching,
        ratio=results["ratio"],
        ends=piece.ends,
        waste=given.waste,
        thread=results["thread"],
    )
    each = told_of_time(costs.pieces, given.minutes_piece, given)
    yield say(
        f"Time: {{batch:minutes}} once and {each.template}, together {{time}}.",
        **each.values,
        batch=given.minutes_batch,
        time=results["time"],
    )
    if costs.parts[CLOTH] is not None:
        yield say(
            "Cloth: {length:length} at {price:price} = {cost:amount}.",
            length=results["cloth_taken"],
            price=given.price_cloth,
            cost=costs.parts[CLOTH],
        )
    if costs.parts[THREAD] is not None:
        yield say(
            "Thread: {spools:reel|reels} at {price:amount} = {cost:amount}, whole reels as they are bought.",
            spools=results["spools"],
            price=given.price_spool,
            cost=costs.parts[THREAD],
        )
    if costs.parts[TIME] is not None:
        yield say(
            "Time: {time} at {rate:amount} an hour = {cost:amount}.",
            time=results["time"],
            rate=given.rate,
            cost=costs.parts[TIME],
        )
    if given.other:
        yield say(
            "Besides: {pieces:count} × {other:amount} = {cost:amount}.",
            pieces=costs.pieces,
            other=given.other,
            cost=costs.parts[OTHER],
        )
