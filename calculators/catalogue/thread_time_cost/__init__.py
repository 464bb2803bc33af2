"""Thread, time and cost of a batch of hemmed pieces."""

from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Result
from calculators.asking.timing import refuse_half_timed
from calculators.catalogue.thread_time_cost.fields import FIELDS, QUESTION
from calculators.catalogue.thread_time_cost.messages import notes, of_the_cloth, of_the_whole, spoken, working
from calculators.catalogue.thread_time_cost.sums import batch_sums, cloth_for, piece_work
from calculators.trade.costing import CLOTH, OTHER, THREAD, TIME
from calculators.trade.thread import whole_spools
from calculators.values.duration import Minutes
from calculators.values.kinds import Count, Length, LongLength, Number
from calculators.values.money import Amount


def _work(given: SimpleNamespace) -> Answer:
    refuse_half_timed(given.pieces, given)
    piece = piece_work(given)
    made = given.pieces if given.gives is None else min(given.pieces, given.gives)
    sums = batch_sums(given, piece, made, cloth_for(given, made))
    is_short, all_known = made < given.pieces, given.cloth_more is not None or not given.price_cloth
    whole = (
        batch_sums(given, piece, given.pieces, (given.cloth_bought + (given.cloth_more or 0), given.pieces))
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
        "waiting": given.waiting_batch or None,
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
        spoken(given, results, is_short),
        notes=(
            *of_the_whole(given, results, is_short, priced),
            *of_the_cloth(given, results, costs),
            *notes(given, costs, results),
        ),
        working=tuple(working(given, piece, costs, results)),
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
        Result("waiting", "Waiting", Minutes(), "Once, beside the hands-on time; it is not paid by the hour."),
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
        Example(
            {
                "pieces": "6",
                "stitching_each": "2.5 m",
                "rows_each": "4",
                "stitch": "2.5 mm",
                "thickness": "1 mm",
                "thread_end": "10 cm",
                "waste": "0",
                "minutes_batch": "0",
                "minutes_piece": "30",
            },
            {"stitching": 15_000, "thread": 51_600, "time": 180},
            "worked by hand: 250 cm × (2 + 2 × 1 ÷ 2.5) = 700 cm, + 4 × 4 × 10 cm of ends = 860 cm, × 6 = 51.6 m",
        ),
    ),
    sources=("thread-consumption", "wright-1936"),
)
