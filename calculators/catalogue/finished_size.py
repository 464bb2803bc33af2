"""Finished size: what a cut piece becomes once it is hemmed, or what to cut for a finished size."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from types import SimpleNamespace

from calculators.articles.hemmed import hemmed_from_cut, hemmed_from_finished
from calculators.asking.corner_questions import check_turn
from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.asking.house_measures import EDGE_STITCH, HEM_OR_NONE, TURN
from calculators.drawing.piece import hemmed_piece
from calculators.trade.hems import Hems, HemsMeet
from calculators.trade.trade_rules import brief
from calculators.values.kinds import Choice, Count, Length, Percent
from calculators.values.phrase import Phrase, say

_SIZE = Length(least=Fraction(20), most=Fraction(20_000))
_NO_RIDGE = Fraction(
    3, 4
)  # of the hem: with a shallower turn the raw edge lies along its middle; common practice, no source


def _work(given: SimpleNamespace) -> Answer:
    sides = {side: getattr(given, f"hem_{side}") for side in ("top", "bottom", "left", "right")}
    hems = Hems(given.turn, **{side: given.hem if hem is None else hem for side, hem in sides.items()})
    if shallow := [hem for hem in (hems.top, hems.bottom, hems.left, hems.right) if hem]:
        check_turn(hems.turn, min(shallow))
    from_size = hemmed_from_cut if given.start_from == "cut" else hemmed_from_finished
    try:
        piece = from_size(given.width, given.length, hems)
    except HemsMeet as meeting:
        deepest = max(meeting.sides, key=lambda side: getattr(hems, side))
        size = given.width if deepest in ("left", "right") else given.length
        raise invalid_input(
            "hem" if sides[deepest] is None else f"hem_{deepest}",
            "Hems this deep leave nothing between them on {size:length}. Write shallower hems or a larger piece.",
            size=size,
        ) from None
    results = {
        "cut_width": piece.cut_width,
        "cut_length": piece.cut_length,
        "finished_width": piece.finished_width,
        "finished_length": piece.finished_length,
        "border_share": piece.border_share,
        "hemmed_along": hems.sides_along,
        "hemmed_across": hems.sides_across,
        "hemmed_corners": hems.hemmed_corners,
    }
    spoken = (
        "**Finished {finished_width} by {finished_length}** from {cut_width} by {cut_length} cut."
        if given.start_from == "cut"
        else "**Cut {cut_width} by {cut_length}** for {finished_width} by {finished_length} finished."
    )
    return Answer(
        results,
        say(spoken, **results),
        notes=tuple(_notes(hems)),
        working=(
            say(
                "Each hemmed side takes its hem and the turn: left and right together {across:length}, top and "
                "bottom {along:length}.",
                across=hems.across,
                along=hems.along,
            ),
            say(
                "Cut {cut:length} − {across:length} = {finished:length} finished across.",
                cut=piece.cut_width,
                across=hems.across,
                finished=piece.finished_width,
            ),
        ),
        drawn_from=replace(piece, edge_stitch=given.edge_stitch),
    )


def _notes(hems: Hems) -> Iterator[Phrase]:
    depths = {hems.top, hems.bottom, hems.left, hems.right}
    if len(hems.corners) > 1 or 0 in depths:
        yield say("The sides differ: work out each kind of corner under Corners.")
    if 0 in depths:
        yield say("A side with a hem of 0 keeps its edge as it is: only do this on a selvedge or a bound edge.")
    if not hems.turn:
        yield say("With no turn the raw edge shows on the wrong side: neaten it first.")
    elif hems.turn < _NO_RIDGE * max(hems.top, hems.bottom, hems.left, hems.right):
        yield say(brief("turn-depth"))


CALCULATOR = Calculator(
    name="finished-size",
    title="Finished size",
    purpose="What a piece measures once hemmed, or what to cut for the size you want.",
    fields=(
        Field(
            "width",
            "Width",
            _SIZE,
            "Across the piece, cut or finished as chosen.",
            "piece_width",
            known_as=("{start_from}_width",),
        ),
        Field(
            "length",
            "Length",
            _SIZE,
            "Along the piece, cut or finished as chosen.",
            "piece_length",
            known_as=("{start_from}_length",),
        ),
        Field(
            "start_from",
            "Which size",
            Choice(options={"cut": "cut size", "finished": "finished size"}),
            "Whether the size is the cut or the finished one.",
            fixed="cut",
        ),
        Field(
            "turn",
            "First turn",
            TURN,
            "The first fold of the raw edge, hidden in the hem; 0 for a single turned hem.",
            "turn",
        ),
        Field(
            "hem",
            "Hem depth",
            HEM_OR_NONE,
            "The width of the visible border on every side not named below.",
            "hem",
            known_as=("hem", "hem/2"),
        ),
        Field(
            "hem_top",
            "Hem at the top",
            HEM_OR_NONE,
            "Only if it differs; 0 for an edge left as it is.",
            optional=True,
            known_as=("hem/top", "hem/2"),
        ),
        Field(
            "hem_bottom",
            "Hem at the bottom",
            HEM_OR_NONE,
            "Only if it differs; 0 for an edge left as it is.",
            optional=True,
            known_as=("hem/bottom", "hem/2"),
        ),
        Field(
            "hem_left",
            "Hem on the left",
            HEM_OR_NONE,
            "Only if it differs; 0 for an edge left as it is.",
            optional=True,
            known_as=("hem/left",),
        ),
        Field(
            "hem_right",
            "Hem on the right",
            HEM_OR_NONE,
            "Only if it differs; 0 for an edge left as it is.",
            optional=True,
            known_as=("hem/right",),
        ),
        Field(
            "edge_stitch",
            "Edge stitch",
            EDGE_STITCH,
            "From the inner folded edge of the hem to its row of stitches; it is only drawn.",
            "edge_stitch",
        ),
    ),
    question="{width} by {length} is the {start_from}; turn {turn}, then a hem of {hem}.",
    results=(
        Result("cut_width", "Cut width", Length(), "Across the piece, with all hems."),
        Result("cut_length", "Cut length", Length(), "Along the piece, with all hems."),
        Result("finished_width", "Finished width", Length(), "Across the piece, hemmed."),
        Result("finished_length", "Finished length", Length(), "Along the piece, hemmed."),
        Result("border_share", "Border", Percent(), "The visible border as a share of the finished piece."),
        Result("hemmed_along", "Hemmed sides along", Count(), "How many of the two sides along the piece have a hem."),
        Result("hemmed_across", "Hemmed ends", Count(), "How many of the two ends, top and bottom, have a hem."),
        Result("hemmed_corners", "Hemmed corners", Count(), "Corners where two hems meet."),
    ),
    work=_work,
    drawing=hemmed_piece,
    examples=(
        Example(
            {"start_from": "finished", "width": "18 in", "length": "18 in", "turn": "1/4 in", "hem": "1/4 in"},
            {"cut_width": 19 * 25.4, "cut_length": 19 * 25.4},
            "derived: finished + 2·(hem + turn); 18 in with 1/4 + 1/4 in → 19 in",
        ),
        Example(
            {"width": "36 cm", "length": "36 cm", "turn": "1 cm", "hem": "2.5 cm"},
            {"finished_width": 290, "finished_length": 290},
            "arithmetic: 36 − 2·(2.5 + 1) cm",
        ),
        Example(
            {"width": "36 cm", "length": "60 cm", "turn": "1 cm", "hem": "2 cm", "hem_left": "0"},
            {"finished_width": 330, "finished_length": 540, "hemmed_along": 1, "hemmed_across": 2, "hemmed_corners": 2},
            "arithmetic: the left side keeps its selvedge, 36 − 3 and 60 − 6 cm; two corners are left",
        ),
    ),
    sources=("american-womans-cook-book",),
)
