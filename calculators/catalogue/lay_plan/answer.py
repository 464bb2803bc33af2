"""What a lay plan answers, from an order as planned."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from calculators.asking.declaration import Answer, Result
from calculators.catalogue.lay_plan.fields import WAYS
from calculators.catalogue.lay_plan.messages import bound_said, next_steps, spoken
from calculators.catalogue.lay_plan.which_cloth import CLOTHS, cloths_told
from calculators.trade.lay_plan.advice import Advice
from calculators.trade.lay_plan.cut_list import Work, working_order
from calculators.trade.lay_plan.cutting import remnants
from calculators.trade.lay_plan.joins import Join
from calculators.trade.lay_plan.laid import Lay
from calculators.trade.lay_plan.marking import Marked, marked
from calculators.trade.lay_plan.planning import PlannedOrder
from calculators.trade.lay_plan.usable import length_to_start_from
from calculators.values.kinds import Column, Count, Length, Lengths, Percent, Table, Text
from calculators.values.measure import Ruler, show_length
from calculators.values.phrase import Phrase, say

_MOST_REMNANTS = 12
_MOST_STRIPS_SAID = 4

_PER_PIECE = Table(
    columns=(
        Column("piece", "Piece", Text()), Column("finished_width", "Finished width", Length()),
        Column("finished_length", "Finished length", Length()),
        Column("width", "Cut width", Length()), Column("length", "Cut length", Length()),
        Column("wanted", "Ordered", Count()), Column("cut", "Cut", Count()),
    )
)  # fmt: skip
_MARKING = Table(
    columns=(
        Column("cloth", "Cloth", Text()), Column("strip", "Strip", Text()), Column("start", "From", Length()),
        Column("end", "To", Length()), Column("marks", "Then marks the other way at", Lengths()),
        Column("gives", "Gives", Text()),
    )
)  # fmt: skip
_CUT_LIST = Table(
    columns=(
        Column("step", "Step", Count()), Column("cut", "Cut", Text()), Column("marks", "At the marks", Lengths()),
        Column("how", "How", Text()), Column("each", "Each cut is long", Length()),
    )
)  # fmt: skip
_REMNANTS = Table(
    columns=(
        Column("cloth", "Cloth", Text()),
        Column("width", "Width", Length(toward="down")),
        Column("length", "Length", Length(toward="down")),
        Column("how_many", "How many", Count()),
    )
)
_JOINS = Table(
    columns=(
        Column("piece", "Piece", Text()), Column("full", "Full widths", Count()),
        Column("full_width", "each cut", Length()),
        Column("side_width", "Two sides, each cut", Length()), Column("seams", "Seams", Count()),
    )
)  # fmt: skip

RESULTS = (
    Result("count", "Cut out in all", Count(), "Pieces; of a piece that is joined from widths, every part."),
    Result(
        "to_start_from",
        "Cloth to start from",
        Length(toward="up"),
        "Length needed before the wash, with what is cut off both ends and lost to their slant.",
    ),
    Result(
        "least_length",
        "No plan can start from less than",
        Length(toward="up"),
        "The least cloth to start from under the same rules of cutting.",
    ),
    Result("most_pieces", "No plan can give more than", Count(), "The most pieces under the same rules of cutting."),
    Result(
        "proof",
        "Could another plan do better",
        Text(longest=200),
        "Whether this is proven to be the best plan cut this way.",
    ),
    Result(
        "used_share",
        "Share of the cloth used",
        Percent(),
        "Area of the pieces as a share of the cloth they are cut from.",
    ),
    Result(
        "last_mark",
        "Last mark, where the pieces end",
        Length(),
        "What the last mark must read from the straight end, on the cloth used furthest; as every mark, at the "
        "nearest division of the ruler.",
    ),
    Result("threads", "Threads to draw", Count(), "One for every cut that follows a drawn thread."),
    Result("thread_length", "Length of all drawn threads", Length(toward="up"), "One after another."),
    Result(
        "on_table",
        "The cloth",
        CLOTHS,
        "From edge to edge and end to end, before the wash and the first cut. Measure what lies on the table.",
        to_table=True,
    ),
    Result(
        "per_piece",
        "The order",
        _PER_PIECE,
        "What is ordered and what this plan cuts. Cut sizes have all hems in them.",
        to_table=True,
    ),
    Result(
        "marking",
        "Marking table",
        _MARKING,
        "Along the cloth, from the straight end; lines that say “across”, from the trimming line of one selvedge, or "
        "from the edge itself where nothing is trimmed. Each mark is rounded from its exact place, so that "
        "rounding never adds up. If the check does not read as written, measure again before cutting.",
        sheet=True,
    ),
    Result(
        "cut_list",
        "Cuts in working order",
        _CUT_LIST,
        "Every cut runs from edge to edge of what is in hand. Selvedges stay on until the cloth is cut across: marks "
        "are taken from them.",
        to_table=True,
    ),
    Result("remnants", "Remnants to keep", _REMNANTS, "What is left over and large enough.", to_table=True),
    Result(
        "joins", "Pieces joined from widths", _JOINS, "A full width in the centre, and two sides alike.", to_table=True
    ),
)


def answer_of(outcome: PlannedOrder, given: SimpleNamespace, advice: Advice | None = None) -> Answer:
    """The answer for an order as planned so far; without advice a better plan, or what to do next, is still being
    looked for."""
    made = [(lay, working_order(lay, outcome.order.rules)) for lay in outcome.lays]
    drawn = [
        work
        for _, found in made
        for work in found
        if (given.way_across if work.across else given.way_along) == "thread"
    ]
    whole = sum((lay.cloth.width * lay.length for lay in outcome.lays), Fraction(0))
    proof, last_mark = bound_said(outcome), max(lay.used_length for lay in outcome.lays)
    results = {
        "count": sum(outcome.counts.values()),
        "to_start_from": outcome.to_start_from if outcome.open_ended else None,
        "least_length": length_to_start_from(outcome.bound, outcome.order.rules)
        if outcome.open_ended and outcome.bound is not None
        else None,
        "most_pieces": _most_pieces(outcome),
        "proof": "no: this is proven" if outcome.proven else "not ruled out",
        "used_share": 100 * sum((lay.piece_area for lay in outcome.lays), Fraction(0)) / whole,
        "last_mark": last_mark,
        "threads": sum(len(work.lengths) for work in drawn),
        "thread_length": sum((length for work in drawn for length in work.lengths), Fraction(0)),
        "on_table": list(cloths_told(outcome, given.ruler)),
        "per_piece": _per_piece(outcome),
        "marking": [row for lay in outcome.lays for row in _marking(lay, len(outcome.lays) > 1, given.ruler)],
        "cut_list": _cut_list(made, given),
        "remnants": [row for lay in outcome.lays for row in _kept(lay, outcome.order.rules.keep)] or None,
        "joins": [_join_row(join) for join in outcome.joins] or None,
    }
    notes = [proof, *next_steps(outcome, last_mark, advice or Advice(), given)]
    if advice is None:
        notes.insert(0, say("A better plan is still being looked for."))
    return Answer(
        results,
        spoken(outcome),
        notes=tuple(notes),
        working=_working(outcome),
        drawn_from=outcome,
        settled=advice is not None,
        headed=given.order or "",
    )


def _most_pieces(outcome: PlannedOrder) -> int | None:
    bound, counts_alike = (outcome.instead or outcome).bound, all(piece.matters == 1 for piece in outcome.pieces)
    return int(bound) if outcome.order.rules.aim == "most" and counts_alike and bound is not None else None


def _per_piece(outcome: PlannedOrder) -> list[dict[str, Any]]:
    rows = []
    for number, piece in enumerate(outcome.pieces):
        width, length = piece.finished or (None, None)
        rows.append({
            "piece": piece.name, "finished_width": width, "finished_length": length, "width": piece.width,
            "length": piece.length,
            "wanted": piece.count, "cut": outcome.counts[number],
        })  # fmt: skip
    return rows


def gives(lay: Lay, pieces: tuple[tuple[int, int], ...]) -> str:
    """What a strip gives, in words."""
    return ", ".join(f"{count} × {lay.pieces[number].name}" for number, count in pieces)


def waste_said(waste: tuple[tuple[Fraction, Fraction], ...], ruler: Ruler) -> str:
    """Which rooms between marks are no piece, in words; "" where there are none."""
    return "".join(f"; waste from {show_length(start, ruler)} to {show_length(end, ruler)}" for start, end in waste)


def _marking(lay: Lay, several: bool, ruler: Ruler) -> Iterator[dict[str, Any]]:
    """Every mark of one cloth, and last of all the one to check before cutting."""
    cloth = lay.cloth.cloth.name if several else None
    for line in marked(lay):
        yield {
            "cloth": cloth, "strip": _part_words(line), "start": line.start, "end": line.end,
            "marks": list(line.marks) or None,
            "gives": "waste" if line.is_waste else gives(lay, line.pieces) + waste_said(line.waste, ruler),
        }  # fmt: skip
    yield {
        "cloth": cloth,
        "strip": "check",
        "start": None,
        "end": lay.used_length,
        "marks": None,
        "gives": "the last mark along: measure it first",
    }


def _part_words(line: Marked) -> str:
    """What a line of the marking table is about; lines that are not measured along the cloth say so."""
    if not line.strip:
        return "left over"
    within = f", {'parts' if ' to ' in line.within else 'part'} {line.within}" if line.within else ""
    return f"{line.strip}{within}{'' if line.along else ', across'}"


def _cut_list(made: list[tuple[Lay, list[Work]]], given: SimpleNamespace) -> list[dict[str, Any]]:
    rows: list[dict[str, Any]] = []
    for lay, found in made:
        for work in found:
            rows.append({
                "step": len(rows) + 1, "cut": _cut_words(lay, work, len(made) > 1, given.ruler),
                "marks": list(work.marks) or None,
                "how": WAYS[given.way_across if work.across else given.way_along], "each": work.each,
            })  # fmt: skip
    return rows


def _cut_words(lay: Lay, work: Work, several: bool, ruler: Ruler) -> str:
    in_hand = f"{lay.cloth.cloth.name}, {work.in_hand}" if several else work.in_hand
    off = f", {show_length(work.off, ruler)} off" if work.off else ""
    return f"{in_hand}: {work.does}{off}{waste_said(work.waste, ruler)}"


def _kept(lay: Lay, keep: Fraction) -> list[dict[str, Any]]:
    counted: dict[tuple[Fraction, Fraction], int] = {}
    for box in remnants(lay, keep):
        counted[box.width, box.length] = counted.get((box.width, box.length), 0) + 1
    rows = [
        {"cloth": lay.cloth.cloth.name, "width": width, "length": length, "how_many": count}
        for (width, length), count in counted.items()
    ]
    return rows[:_MOST_REMNANTS]


def _join_row(join: Join) -> dict[str, Any]:
    return {
        "piece": join.piece.name,
        "full": join.full_widths,
        "full_width": join.full_width,
        "side_width": join.side_width or None,
        "seams": join.seams,
    }


def _working(outcome: PlannedOrder) -> tuple[Phrase, ...]:
    lay = outcome.lays[0]
    steps = [
        say(
            "“{cloth:text}”: {width:length} "
                f"wide{', less two selvedges' if lay.cloth.cloth.edges(outcome.order.rules).strip else ''}, after "
                    "the wash: {usable:length_down} to plan on.",
            cloth=lay.cloth.cloth.name, width=lay.cloth.cloth.width, usable=lay.cloth.width,
        )
    ]  # fmt: skip
    steps += _filled(lay)
    if not outcome.hindered:
        steps.append(say(_METHODS.get(outcome.order.rules.strips, _IN_STRIPS)))
    else:
        steps.append(
            say(
                "With flaws or a repeat, strips are laid one after another in every order that could be better, and "
                "step over what must stay free. The limit sees the flaws and the repeat."
            )
        )
    return tuple(steps)


_IN_STRIPS = (
    "Strips are filled with pieces, and strips stacked, in every combination that could be better than the "
    "best so "
    "far. What none of them can pass is worked out at the same time."
)
_METHODS = {
    "sections": "The plan starts from strips both ways. Then pieces that are wanted too often are made dear, and "
    "strips cut into sections are filled at these prices. What the best strips and sections would give with no "
    "limit on numbers, plus the price of every piece ordered, is a limit that no plan cut this way can pass.",
    "free": "The plan starts from strips both ways. Then every part is cut in two wherever pieces end, again and "
    "again, as long as it could be better than the best so far. Prices on the pieces give a limit that no plan "
    "can pass.",
}


def _filled(lay: Lay) -> Iterator[Phrase]:
    """The first strips of a cloth, each with how far its pieces reach."""
    across = lay.first_cut == "across"
    room = lay.cloth.width if across else lay.length
    reach: dict[int, Fraction] = {}
    for placed in lay.placed:
        reach[placed.strip] = max(reach.get(placed.strip, Fraction(0)), placed.box.right if across else placed.box.end)
    alike: dict[tuple[Fraction, tuple[tuple[int, int], ...], Fraction], list[int]] = {}
    for line in marked(lay):
        if line.strip and not line.within:
            alike.setdefault((line.end - line.start, line.pieces, reach[line.strip]), []).append(line.strip)
    for (high, pieces, far), numbers in list(alike.items())[:_MOST_STRIPS_SAID]:
        *most, last = map(str, numbers)
        name = f"Strips {', '.join(most)} and {last}, each" if most else f"Strip {last},"
        yield say(
            "{name:text} {high:length}: {gives:text}, which reach {far:length} of {room:length_down}.",
            name=name, high=high, gives=gives(lay, pieces), far=far, room=room,
        )  # fmt: skip
