"""Thread, time and cost of a batch of hemmed pieces."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Result
from calculators.catalogue.thread_time_cost.fields import FIELDS, QUESTION
from calculators.trade.costing import CLOTH, OTHER, THREAD, TIME, Costs, cloth_of_the_rows, costs_of, hands_on
from calculators.trade.pieces import rows_of
from calculators.trade.thread import (
    seams_of_a_row,
    stitching_of_a_piece,
    thread_ends,
    thread_for_each_length,
    whole_spools,
)
from calculators.values.duration import Minutes
from calculators.values.kinds import Count, Length, LongLength, Number
from calculators.values.money import Amount
from calculators.values.phrase import Phrase, say

_NAMES = {CLOTH: "the cloth", THREAD: "the thread", TIME: "the time", OTHER: "what each piece needs besides"}
_NANOMETRES = 10**6  # a seam measured on a fold is no exact number; so fine, it is the same on every machine


@dataclass(frozen=True)
class _PieceWork:
    """One piece of the batch, whatever their number: its stitching and thread [mm], loose ends of it [mm], thread for
    each length, seam of a corner [mm]."""

    stitching: Fraction
    thread: Fraction
    ends: Fraction
    ratio: Fraction
    corner: Fraction


@dataclass(frozen=True)
class _Sums:
    """What so many pieces of the batch take and cost. cloth: the length they are charged with [mm], and the pieces that
    so much gives."""

    cloth: tuple[Fraction, int]
    thread: Fraction
    spools: int
    time: Fraction
    costs: Costs


def _work(given: SimpleNamespace) -> Answer:
    piece = _piece(given)
    made = given.pieces if given.gives is None else min(given.pieces, given.gives)
    sums = _sums(given, piece, made, _cloth_for(given, made))
    is_short, all_known = made < given.pieces, given.cloth_more is not None or not given.price_cloth
    whole = (
        _sums(given, piece, given.pieces, (given.cloth_bought + (given.cloth_more or 0), given.pieces))
        if is_short and all_known
        else None
    )
    costs = sums.costs
    priced = len(costs.without_price) < 3 or given.other > 0
    results = {
        "made": made,
        "stitching": made * piece.stitching,
        "ratio": piece.ratio,
        "thread": sums.thread,
        "spools": sums.spools,
        "bobbins": whole_spools(sums.thread / 2, given.bobbin),
        "cloth_taken": sums.cloth[0],
        "time": sums.time,
        "time_piece": sums.time / made,
        **{f"cost_{part}": costs.parts[part] for part in (CLOTH, THREAD, TIME, OTHER)},
        "total": costs.total if priced else None,
        "each": costs.each if priced else None,
        "one_more": costs.one_more if priced and not is_short else None,
        "time_whole": whole.time if whole else None,
        "thread_whole": whole.thread if whole else None,
        "total_whole": whole.costs.total if whole and priced else None,
        "each_whole": whole.costs.each if whole and priced else None,
    }
    return Answer(
        results,
        _spoken(given, results, is_short, priced),
        notes=(
            *_of_the_whole(given, results, is_short, priced),
            *_of_the_cloth(given, results, costs),
            *_notes(costs, results),
        ),
        working=tuple(_working(given, piece, costs, results)),
    )


def _piece(given: SimpleNamespace) -> _PieceWork:
    corner = Fraction(given.mitre_seam).limit_denominator(_NANOMETRES)
    edge = given.sides_across * given.finished_width + given.sides_along * given.finished_length
    stitching = stitching_of_a_piece(edge, given.rows, given.corners, corner)
    ratio = thread_for_each_length(given.stitch, given.thickness)
    ends = thread_ends(
        given.rows * seams_of_a_row(given.sides_along, given.sides_across) + (given.corners if corner else 0),
        given.thread_end,
    )
    return _PieceWork(stitching, (stitching * ratio + ends) * (1 + given.waste / 100), ends, ratio, corner)


def _cloth_for(given: SimpleNamespace, pieces: int) -> tuple[Fraction, int]:
    """The length of cloth that pieces are charged with [mm], and how many so much gives."""
    if given.gives is None or given.gives <= pieces:
        return given.cloth_bought, pieces
    rows = rows_of(pieces, given.across)
    taken = cloth_of_the_rows(given.cloth_bought, rows, rows_of(given.gives, given.across))
    return taken, min(rows * given.across, given.gives)


def _sums(given: SimpleNamespace, piece: _PieceWork, pieces: int, cloth: tuple[Fraction, int]) -> _Sums:
    thread = pieces * piece.thread
    spools = whole_spools(thread, given.spool)
    time = hands_on(pieces, given.minutes_batch, given.minutes_piece)
    costs = costs_of(
        pieces,
        (*cloth, given.price_cloth),
        (spools, piece.thread / given.spool, given.price_spool),
        (time, given.minutes_piece, given.rate),
        given.other,
    )
    return _Sums(cloth, thread, spools, time, costs)


def _spoken(given: SimpleNamespace, results: dict, is_short: bool, priced: bool) -> Phrase:
    if not is_short:
        return say(
            "**{time} of work**, {thread} of thread"
            + (f"; **{{total}} for the batch**{of_each(given.pieces)}." if priced else "."),
            **results,
        )
    of_one = of_each(results["made"])
    amounts = "{time} of work, {thread} of thread" + (f"; {{total}}{of_one}." if priced else ".")
    return say(
        "**{wanted:count} wanted; this cloth gives {made}.** Those {made}: " + amounts, wanted=given.pieces, **results
    )


def of_each(pieces: int, each: str = "each") -> str:
    """The words for a piece's share of a sum, beside the sum; none where one piece is all of it. each: its blank."""
    return f", {{{each}}} a piece" if pieces > 1 else ""


def _of_the_whole(given: SimpleNamespace, results: dict, is_short: bool, priced: bool) -> Iterator[Phrase]:
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


def _of_the_cloth(given: SimpleNamespace, results: dict, costs: Costs) -> Iterator[Phrase]:
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


def _notes(costs: Costs, results: dict) -> Iterator[Phrase]:
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
    if costs.without_price:
        yield say(
            "Not in the sum, for want of a price: {parts:text}.",
            parts=", ".join(_NAMES[part] for part in costs.without_price),
        )


def _working(given: SimpleNamespace, piece: _PieceWork, costs: Costs, results: dict) -> Iterator[Phrase]:
    yield say(
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
    yield say(
        "Time: {batch:minutes} once and {pieces:count} × {piece:minutes} = {time}.",
        batch=given.minutes_batch,
        pieces=costs.pieces,
        piece=given.minutes_piece,
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


CALCULATOR = Calculator(
    name="thread-time-cost",
    title="Thread, time and cost",
    purpose="How much thread and how many hours a batch takes, and what it costs you to make.",
    fields=FIELDS,
    question=QUESTION,
    results=(
        Result(
            "made",
            "Pieces made",
            Count(),
            "Those wanted, or those that the cloth gives where that is fewer. All sums but the last four are for "
            "these.",
        ),
        Result("stitching", "Stitching", LongLength(), "All rows and corner seams of the batch."),
        Result(
            "ratio",
            "Thread for each length of stitching",
            Number(places=2),
            "Upper and lower thread together, without ends and waste.",
        ),
        Result("thread", "Thread", LongLength(toward="up"), "Upper and lower thread together, with ends and waste."),
        Result("spools", "Reels to buy", Count(), "Whole reels that hold all the thread."),
        Result("bobbins", "Bobbins to wind", Count(), "Full bobbins that hold the lower thread, which is half of it."),
        Result(
            "cloth_taken",
            "Cloth they take",
            Length(),
            "The cloth bought; where it gives more rows of pieces than are wanted, only the rows that are cut.",
        ),
        Result("time", "Hands-on time", Minutes(), "For the whole batch."),
        Result("time_piece", "Hands-on time, a piece", Minutes(), "A piece’s share of it."),
        Result("cost_cloth", "Cost of the cloth", Amount(), "The cloth that these pieces take."),
        Result("cost_thread", "Cost of the thread", Amount(), "Whole reels, as they are bought."),
        Result("cost_time", "Cost of the time", Amount(), "Hands-on time at the price of an hour."),
        Result("cost_other", "Cost of the rest", Amount(), "What each piece needs besides, for all pieces."),
        Result("total", "Cost of the batch", Amount(), "All parts that have a price."),
        Result("each", "Cost of a piece", Amount(), "A piece’s share of the batch."),
        Result(
            "one_more",
            "One more piece",
            Amount(),
            "What it would add: its share of the cloth, its own thread and minutes, and what it needs besides.",
        ),
        Result(
            "time_whole", "Hands-on time, all wanted", Minutes(), "For every piece wanted, where the cloth gives fewer."
        ),
        Result(
            "thread_whole",
            "Thread, all wanted",
            LongLength(toward="up"),
            "For every piece wanted, where the cloth gives fewer.",
        ),
        Result(
            "total_whole",
            "Cost of all wanted",
            Amount(),
            "For every piece wanted, with the cloth that all of them take.",
        ),
        Result("each_whole", "Cost of a piece, all wanted", Amount(), "A piece’s share of that."),
    ),
    work=_work,
    examples=(
        Example(
            {"stitch": "0.1 in", "thickness": "0.01 in"},
            {"ratio": 2.2},
            "thread-consumption: 2 + 2 × 0.01 × 10 = 2.2 in of thread for each inch, at 10 stitches an inch",
        ),
        Example(
            {
                "pieces": "1",
                "finished_width": "40 cm",
                "finished_length": "140 cm",
                "rows": "1",
                "sides_along": "1",
                "corners": "2",
                "mitre_seam": "3 cm",
            },
            {"stitching": 2_260},
            "arithmetic: a runner that keeps one selvedge, 2 × 40 + 140 cm, and two corner seams of 3 cm",
        ),
        Example(
            {
                "pieces": "10",
                "finished_width": "40 cm",
                "finished_length": "40 cm",
                "rows": "1",
                "corners": "4",
                "mitre_seam": "3 cm",
                "stitch": "3 mm",
                "thickness": "1.5 mm",
                "thread_end": "10 cm",
                "waste": "10",
                "spool": "100 m",
                "bobbin": "10 m",
                "minutes_batch": "20",
                "minutes_piece": "15",
                "rate": "30",
                "cloth_bought": "2 m",
                "price_cloth": "18 per m",
                "price_spool": "3",
                "other": "0.50",
            },
            {
                "stitching": 17_200,
                "ratio": 3,
                "thread": 78_760,
                "spools": 1,
                "bobbins": 4,
                "time": 170,
                "time_piece": 17,
                "cost_cloth": 36,
                "cost_thread": 3,
                "cost_time": 85,
                "cost_other": 5,
                "total": 129,
                "each": 12.9,
                "one_more": 11.83628,
            },
            "worked by hand: a piece 160 + 12 = 172 cm of stitching, × 3 = 516 cm, + 5 × 4 × 10 cm of ends = 716 cm, "
            "+ 10 % = 787.6 cm; 20 + 10 × 15 = 170 min; "
            "36 + 3 + 85 + 5 = 129; one more 3.60 + 0.23628 + 7.50 + 0.50",
        ),
    ),
    sources=("thread-consumption",),
)
