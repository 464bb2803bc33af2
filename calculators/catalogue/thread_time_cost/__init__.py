"""Thread, time and cost of a batch of hemmed pieces."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace

from calculators.catalogue.thread_time_cost.asked import ASKED, FIELDS
from calculators.costing import CLOTH, OTHER, THREAD, TIME, Costs, costs_of, hands_on
from calculators.declaration import Answer, Calculator, Example, Result
from calculators.duration import Minutes
from calculators.kinds import Count, LongLength, Number
from calculators.money import Amount
from calculators.phrase import Phrase, say
from calculators.thread import seams_of_a_row, stitching_of_a_piece, thread_ends, thread_for_each_length, whole_spools

_NAMES = {CLOTH: "the cloth", THREAD: "the thread", TIME: "the time", OTHER: "what each piece needs besides"}
_NANOMETRES = 10**6  # a seam measured on a fold is no exact number; so fine, it is the same on every machine


def _work(given: SimpleNamespace) -> Answer:
    corner = Fraction(given.mitre_seam).limit_denominator(_NANOMETRES)
    edge = given.sides_across * given.finished_width + given.sides_along * given.finished_length
    of_a_piece = stitching_of_a_piece(edge, given.rows, given.corners, corner)
    ratio = thread_for_each_length(given.stitch, given.thickness)
    ends = thread_ends(given.rows * seams_of_a_row(given.sides_along, given.sides_across) + (given.corners if corner else 0), given.thread_end)
    thread_of_a_piece = (of_a_piece * ratio + ends) * (1 + given.waste / 100)
    thread = given.pieces * thread_of_a_piece
    spools = whole_spools(thread, given.spool)
    time = hands_on(given.pieces, given.minutes_batch, given.minutes_piece)
    costs = costs_of(
        given.pieces,
        (given.cloth_bought, given.price_cloth),
        (spools, thread_of_a_piece / given.spool, given.price_spool),
        (time, given.minutes_piece, given.rate),
        given.other,
    )
    priced = len(costs.without_price) < 3 or given.other > 0
    results = {
        "stitching": given.pieces * of_a_piece,
        "ratio": ratio,
        "thread": thread,
        "spools": spools,
        "bobbins": whole_spools(thread / 2, given.bobbin),
        "time": time,
        "time_piece": time / given.pieces,
        **{f"cost_{part}": costs.parts[part] for part in (CLOTH, THREAD, TIME, OTHER)},
        "total": costs.total if priced else None,
        "each": costs.each if priced else None,
        "one_more": costs.one_more if priced else None,
    }
    spoken = "**{time} of work**, {thread} of thread"
    spoken += "; **{total} for the batch**, {each} a piece." if priced else "."
    return Answer(
        results,
        say(spoken, **results),
        notes=tuple(_notes(costs, results, priced)),
        working=tuple(_working(given, corner, of_a_piece, ends, costs, results)),
    )


def _notes(costs: Costs, results: dict, priced: bool) -> Iterator[Phrase]:
    if results["thread"]:
        yield say("Buy {spools:reel|reels}, and wind {bobbins:bobbin|bobbins} off the same before you begin.", spools=results["spools"], bobbins=results["bobbins"])
    else:
        yield say("Nothing is stitched by machine here; thread for sewing by hand is not counted.")
    if costs.largest:
        yield say("The largest part is {part:text}: {cost:amount} of {total:amount}.", part=_NAMES[costs.largest], cost=costs.parts[costs.largest], total=costs.total)
    if priced:
        yield say("One more piece would cost {one_more}: its share of the cloth, its own thread and minutes, and what it needs besides.", **results)
    if costs.without_price:
        yield say("Not in the sum, for want of a price: {parts:text}.", parts=", ".join(_NAMES[part] for part in costs.without_price))


def _working(given: SimpleNamespace, corner: Fraction, of_a_piece: Fraction, ends: Fraction, costs: Costs, results: dict) -> Iterator[Phrase]:
    yield say(
        "Stitching of a piece: {rows:row|rows} along the edge of {across:count} × {width:length} + {along:count} × {length:length}, and {corners:corner seam|corner seams} of {corner:length}, together {whole:long}. "
        "Each row is counted as long as the edge; further in it is a little shorter.",
        rows=given.rows, across=given.sides_across, width=given.finished_width, along=given.sides_along, length=given.finished_length,
        corners=given.corners if corner else 0, corner=corner, whole=of_a_piece,
    )
    yield say(
        "Thread for each length of it, upper and lower together: 2 + 2 × {thickness:length} ÷ {stitch:length} = {ratio}. Both threads run along every stitch, "
        "and from one to the next each dips to the middle of the cloth and comes back. Nothing is allowed for cloth that gives way or thread that stretches.",
        thickness=given.thickness, stitch=given.stitch, ratio=results["ratio"],
    )
    yield say(
        "{pieces:piece|pieces} × ({whole:long} × {ratio} + {ends:length} of thread ends), and {waste:percent} for waste: {thread}.",
        pieces=given.pieces, whole=of_a_piece, ratio=results["ratio"], ends=ends, waste=given.waste, thread=results["thread"],
    )
    yield say(
        "Time: {batch:minutes} once and {pieces:count} × {piece:minutes} = {time}.", batch=given.minutes_batch, pieces=given.pieces, piece=given.minutes_piece, time=results["time"],
    )
    if costs.parts[CLOTH] is not None:
        yield say("Cloth: {length:length} at {price:price} = {cost:amount}.", length=given.cloth_bought, price=given.price_cloth, cost=costs.parts[CLOTH])
    if costs.parts[THREAD] is not None:
        yield say("Thread: {spools:reel|reels} at {price:amount} = {cost:amount}, whole reels as they are bought.", spools=results["spools"], price=given.price_spool, cost=costs.parts[THREAD])
    if costs.parts[TIME] is not None:
        yield say("Time: {time} at {rate:amount} an hour = {cost:amount}.", time=results["time"], rate=given.rate, cost=costs.parts[TIME])
    if given.other:
        yield say("Besides: {pieces:count} × {other:amount} = {cost:amount}.", pieces=given.pieces, other=given.other, cost=costs.parts[OTHER])


CALCULATOR = Calculator(
    name="thread-time-cost",
    title="Thread, time and cost",
    purpose="How much thread and how many hours a batch takes, and what it costs you to make.",
    fields=FIELDS,
    asked=ASKED,
    results=(
        Result("stitching", "Stitching", LongLength(), "All rows and corner seams of the batch."),
        Result("ratio", "Thread for each length of stitching", Number(places=2), "Upper and lower thread together, without ends and waste."),
        Result("thread", "Thread", LongLength(toward="up"), "Upper and lower thread together, with ends and waste."),
        Result("spools", "Reels to buy", Count(), "Whole reels that hold all the thread."),
        Result("bobbins", "Bobbins to wind", Count(), "Full bobbins that hold the lower thread, which is half of it."),
        Result("time", "Hands-on time", Minutes(), "For the whole batch."),
        Result("time_piece", "Hands-on time, a piece", Minutes(), "A piece’s share of it."),
        Result("cost_cloth", "Cost of the cloth", Amount(), "All the cloth bought for the batch."),
        Result("cost_thread", "Cost of the thread", Amount(), "Whole reels, as they are bought."),
        Result("cost_time", "Cost of the time", Amount(), "Hands-on time at the price of an hour."),
        Result("cost_other", "Cost of the rest", Amount(), "What each piece needs besides, for all pieces."),
        Result("total", "Cost of the batch", Amount(), "All parts that have a price."),
        Result("each", "Cost of a piece", Amount(), "A piece’s share of the batch."),
        Result("one_more", "One more piece", Amount(), "What it would add: its share of the cloth, its own thread and minutes, and what it needs besides."),
    ),
    work=_work,
    examples=(
        Example(
            {"stitch": "0.1 in", "thickness": "0.01 in"},
            {"ratio": 2.2},
            "thread-consumption: 2 + 2 × 0.01 × 10 = 2.2 in of thread for each inch, at 10 stitches an inch",
        ),
        Example(
            {"pieces": "1", "finished_width": "40 cm", "finished_length": "140 cm", "rows": "1", "sides_along": "1", "corners": "2", "mitre_seam": "3 cm"},
            {"stitching": 2_260},
            "arithmetic: a runner that keeps one selvedge, 2 × 40 + 140 cm, and two corner seams of 3 cm",
        ),
        Example(
            {
                "pieces": "10", "finished_width": "40 cm", "finished_length": "40 cm", "rows": "1", "corners": "4", "mitre_seam": "3 cm", "stitch": "3 mm", "thickness": "1.5 mm",
                "thread_end": "10 cm", "waste": "10", "spool": "100 m", "bobbin": "10 m", "minutes_batch": "20", "minutes_piece": "15", "rate": "30", "cloth_bought": "2 m", "price_cloth": "18 per m",
                "price_spool": "3", "other": "0.50",
            },
            {
                "stitching": 17_200, "ratio": 3, "thread": 78_760, "spools": 1, "bobbins": 4, "time": 170, "time_piece": 17, "cost_cloth": 36, "cost_thread": 3, "cost_time": 85, "cost_other": 5,
                "total": 129, "each": 12.9, "one_more": 11.83628,
            },
            "worked by hand: a piece 160 + 12 = 172 cm of stitching, × 3 = 516 cm, + 5 × 4 × 10 cm of ends = 716 cm, + 10 % = 787.6 cm; 20 + 10 × 15 = 170 min; "
            "36 + 3 + 85 + 5 = 129; one more 3.60 + 0.23628 + 7.50 + 0.50",
        ),
    ),
    sources=("thread-consumption",),
)
