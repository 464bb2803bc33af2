"""What an order answers: cloth, pieces, what is bought besides, the work list, and the sums."""

import json
from collections.abc import Iterator, Sequence
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from calculators.articles.calculator import WHAT_IS_BOUGHT
from calculators.asking.declaration import Answer, Onward, Result
from calculators.asking.timing import told_of_time, told_of_waiting
from calculators.catalogue.thread_time_cost import CALCULATOR as COSTS
from calculators.catalogue.whole_order.cloths import PieceOfLine, PlannedCloth
from calculators.catalogue.whole_order.lines import OrderLine
from calculators.catalogue.whole_order.sums import OrderSums, sums_of
from calculators.drawing.article import is_step, told_of
from calculators.trade.articles.finishes import HEM
from calculators.trade.articles.work import MakingUp, listed
from calculators.trade.costing import CLOTH, OTHER, THREAD, TIME
from calculators.values.duration import Minutes
from calculators.values.kinds import Column, Count, Length, LongLength, Table, Text
from calculators.values.measure import show_exactly
from calculators.values.money import Amount
from calculators.values.phrase import Phrase, say, without_marks

_MOST_CARRIED, _LONGEST_NAME = 20, 30  # rows that the lay plan takes, and letters of a name there
_NAMES = {CLOTH: "cloth", THREAD: "thread", TIME: "time"}

_LINES = Table(
    columns=(
        Column("article", "Article", Text()), Column("count", "How many", Count()),
        Column("width", "Finished width", Length()), Column("length", "Finished length", Length()),
        Column("cloth", "Cloth", Text()), Column("time", "Time", Minutes()), Column("each", "Cost of one", Amount()),
    )
)  # fmt: skip
_CLOTHS = Table(
    columns=(
        Column("cloth", "Cloth", Text()), Column("width", "Width", Length()),
        Column("length", "Buy", Length(toward="up")), Column("cost", "Cost", Amount()),
    )
)  # fmt: skip
_PIECES = Table(
    columns=(
        Column("cloth", "Cloth", Text()), Column("piece", "Piece", Text()), Column("width", "Cut width", Length()),
        Column("length", "Cut length", Length()), Column("count", "How many", Count()),
    )
)  # fmt: skip
_BOUGHT = Table(
    columns=(
        Column("thing", "What", Text()), Column("article", "For", Text()), Column("count", "How many", Count()),
        Column("length", "Length", Length(toward="up")),
    )
)  # fmt: skip
_WORK = Table(
    columns=(
        Column("article", "Article", Text()), Column("count", "How many", Count()), Column("step", "Step", Count()),
        Column("do", "What is done", Text()),
    )
)  # fmt: skip

RESULTS = (
    Result("articles", "Articles", Count(), "All lines together."),
    Result("pieces_to_cut", "Pieces to cut", Count(), "From all cloths."),
    Result("stitching", "Stitching", LongLength(), "All rows of the machine, on all articles."),
    Result("thread", "Thread", LongLength(toward="up"), "For the machine and by hand, with waste."),
    Result("spools", "Reels to buy", Count(), "Whole reels that hold all the thread, if it is of one colour."),
    Result("bobbins", "Bobbins to wind", Count(), "Full bobbins that hold the lower thread, half of the machine’s."),
    Result("time", "Hands-on time", Minutes(), "For the whole order."),
    COSTS.result("waiting"),
    Result("cost_cloth", "Cost of the cloth", Amount(), "All that is bought of every cloth."),
    Result("cost_thread", "Cost of the thread", Amount(), "Whole reels, as they are bought."),
    Result("cost_time", "Cost of the time", Amount(), "Hands-on time at the price of an hour."),
    Result("cost_besides", "Cost of what is bought besides", Amount(), "As it was written."),
    Result("total", "Cost of the order", Amount(), "All parts that have a price."),
    Result("cloth_to_buy", "Cloth to buy", _CLOTHS, "Before the wash, with what is cut off both ends.", to_table=True),
    Result(
        "order_lines",
        "The order",
        _LINES,
        "One of a line costs its share of each cloth by area, its own thread and minutes, and a share of the rest.",
        to_table=True,
    ),
    Result("cutting_list", "Cutting list", _PIECES, "With what their edges take up.", to_table=True),
    Result("to_buy", "Also to buy", _BOUGHT, "For all of a line.", to_table=True),
    Result("work_list", "Work list", _WORK, "Line by line, in the order of the work.", sheet=True),
)


def answer_of(lines: Sequence[OrderLine], cloths: Sequence[PlannedCloth], given: SimpleNamespace) -> Answer:
    """The answer for an order whose cloths are planned."""
    sums = sums_of(lines, cloths, given)
    parts = sums.costs.parts
    results = {
        "articles": sums.costs.pieces,
        "pieces_to_cut": sum(each.count for cloth in cloths for each in cloth.pieces),
        "stitching": sums.stitching,
        "thread": sums.thread,
        "spools": sums.spools,
        "bobbins": sums.bobbins,
        "time": sums.time,
        "waiting": given.waiting_batch or None,
        "cost_cloth": parts[CLOTH],
        "cost_thread": parts[THREAD],
        "cost_time": parts[TIME],
        "cost_besides": parts[OTHER],
        "total": sums.costs.total if sums.priced else None,
        "cloth_to_buy": [_cloth_row(each) for each in cloths],
        "order_lines": [_line_row(each, sums) for each in lines],
        "cutting_list": [row for cloth in cloths for row in _piece_rows(cloth)],
        "to_buy": [row for line in lines for row in _bought_rows(line)] or None,
        "work_list": [row for line in lines for row in _work_rows(line, given)],
    }
    return Answer(
        results,
        _spoken(cloths, results, sums),
        notes=tuple(_notes(lines, cloths, given, sums)),
        working=tuple(_working(lines, cloths)),
        drawn_from=tuple(each.plan for each in cloths),
        headed=given.order or "",
    )


def _cloth_row(cloth: PlannedCloth) -> dict[str, Any]:
    return {"cloth": cloth.row.name, "width": cloth.row.width, "length": cloth.to_buy, "cost": cloth.cost}


def _line_row(line: OrderLine, sums: OrderSums) -> dict[str, Any]:
    width, length = line.made.size
    return {
        "article": line.name, "count": line.count, "width": width, "length": length, "cloth": line.cloth.name,
        "time": line.minutes, "each": sums.each[line.place],
    }  # fmt: skip


def _piece_rows(cloth: PlannedCloth) -> Iterator[dict[str, Any]]:
    for each in cloth.pieces:
        width, length = each.piece.on_the_cloth
        yield {"cloth": cloth.row.name, "piece": each.name, "width": width, "length": length, "count": each.count}


def _bought_rows(line: OrderLine) -> Iterator[dict[str, Any]]:
    for each in line.made.work.to_buy:
        yield {
            "thing": WHAT_IS_BOUGHT[each.thing][0], "article": line.name, "count": line.count * each.count,
            "length": each.length,
        }  # fmt: skip


def _work_rows(line: OrderLine, given: SimpleNamespace) -> Iterator[dict[str, Any]]:
    for number, operation in enumerate(filter(is_step, line.made.work.operations), 1):
        told = told_of(operation, given.ruler)
        yield {
            "article": line.name, "count": line.count, "step": number,
            "do": without_marks(f"{told.do} {told.line}".strip()),
        }  # fmt: skip


def _spoken(cloths: Sequence[PlannedCloth], results: dict[str, Any], sums: OrderSums) -> Phrase:
    bought: dict[str, Any] = {}
    for number, each in enumerate(cloths):
        bought |= {f"length_{number}": each.to_buy, f"cloth_{number}": each.row.name}
    told = [f"**{{length_{number}:length_up}}** of {{cloth_{number}:text}}" for number in range(len(cloths))]
    total = _total_said(sums) if sums.priced else "."
    return say(
        f"Buy {listed(told)} for {{articles:article|articles}}: {{time}} of work, {{thread}} of thread{total}",
        **bought, articles=results["articles"], time=results["time"], thread=results["thread"], total=results["total"],
    )  # fmt: skip


def _total_said(sums: OrderSums) -> str:
    """What all of it costs, or all but what has no price."""
    without = [_NAMES[part] for part in sums.costs.without_price]
    return f"; **{{total}}** without {listed(without)}." if without else "; **{total} in all.**"


def _notes(
    lines: Sequence[OrderLine], cloths: Sequence[PlannedCloth], given: SimpleNamespace, sums: OrderSums
) -> Iterator[Phrase]:
    for line in lines:
        if line.sizes_left:
            yield say(
                "Row {row:count}, {article:text}: a size is left empty, so the handbook’s counts, {width:length} by "
                "{length:length} finished.",
                row=line.place + 1, article=line.name, width=line.made.size[0], length=line.made.size[1],
            )  # fmt: skip
        for note in line.made.work.notes:
            yield Phrase(f"{{line:text}}: {note.template}", {**note.values, "line": line.name})
    if hemmed := [*dict.fromkeys(line.name for line in lines if _is_hemmed_all_round(line.made.work))]:
        yield say(
            "{articles:text}: without the time and thread of marking and mitres, which a batch counts.",
            articles=listed(hemmed),
        )
    for cloth in cloths:
        yield _to_lay_plan(cloth, given)
    if given.waiting_batch:
        yield told_of_waiting(given.waiting_batch, "order")
    if sums.priced and sums.costs.without_price:
        yield say(
            "Write a price for {parts:text}, and it is in the sum.",
            parts=listed([_NAMES[part] for part in sums.costs.without_price]),
        )


def _is_hemmed_all_round(work: MakingUp) -> bool:
    """Whether it is one piece with nothing but hems, whose corners a batch would mitre."""
    return len(work.parts) == 1 and [each.how for each in work.finishes] == [HEM] * 4


def _to_lay_plan(cloth: PlannedCloth, given: SimpleNamespace) -> Phrase:
    proven = "no plan cut this way can use less" if cloth.plan.proven else "another plan may use a little less"
    told = f"{{cloth:text}}: {{pieces:piece|pieces}}; {proven}."
    values = {"cloth": cloth.row.name, "pieces": sum(each.count for each in cloth.pieces)}
    if len(cloth.pieces) > _MOST_CARRIED:
        return say(told, **values)
    unit = "in" if given.ruler.unit == "in" else "cm"
    row = cloth.row
    pieces = [
        [_in_short(each), *(show_exactly(side, unit) for side in each.piece.on_the_cloth), str(each.count)]
        for each in cloth.pieces
    ]
    on_table = [row.name, show_exactly(row.width, unit), "", "1", "yes" if row.one_way else "no", row.measured]
    return Onward(
        told,
        values,
        does=f"Lay plan and marks of {row.name}",
        page="plan/lay-plan/",
        calculator="lay-plan",
        carries={
            "cloths": json.dumps([on_table], ensure_ascii=False),
            "pieces": json.dumps(pieces, ensure_ascii=False),
            "sizes": "cut",
            "aim": "buy",
            "flaws": "[]",
            "repeats": "[]",
        },
    )


def _in_short(piece: PieceOfLine) -> str:
    """What a piece is called where there is little room: what tells it from the others of its article comes first."""
    if len(piece.name) <= _LONGEST_NAME:
        return piece.name
    return f"{piece.piece.named_on_the_cloth}, {piece.line.name}"[:_LONGEST_NAME].rstrip(" ,")


def _working(lines: Sequence[OrderLine], cloths: Sequence[PlannedCloth]) -> Iterator[Phrase]:
    for line in lines:
        time = told_of_time(line.count, line.given.minutes_each, line.given)
        yield say(
            f"{{article:text}}: {time.template}; {{count:count}} × {{stitching:long}} of stitching.",
            **time.values,
            article=line.name,
            stitching=line.made.work.stitching,
        )
    for cloth in cloths:
        area = sum((each.area for each in cloth.pieces), Fraction(0))
        whole = cloth.to_buy * cloth.row.width
        yield say(
            "{cloth:text}: its pieces are {share:percent} of what is bought.",
            cloth=cloth.row.name, share=100 * area / whole if whole else Fraction(0),
        )  # fmt: skip
