"""Pieces from cloth: how many pieces of one size fit, where to mark, and what a small change would gain."""

import json
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from calculators.asking.declaration import Answer, Calculator, Example, Field, InvalidInput, Onward, Result
from calculators.asking.edge_questions import MEASURED, SELVEDGE, edges_that_leave_cloth
from calculators.asking.house_measures import CLOTH_WIDTH, PIECE
from calculators.drawing.cloth import cloth_with_pieces
from calculators.trade.pieces import Grid, OtherCount, other_counts, pieces_from_cloth
from calculators.trade.trade_rules import brief
from calculators.values.kinds import Choice, Column, Count, Length, Lengths, Table, Text, YesNo
from calculators.values.measure import Ruler, show_exactly
from calculators.values.phrase import Phrase, say

_SMALL_CHANGE = Fraction(5, 100)


def _work(given: SimpleNamespace) -> Answer:
    _refuse_limits_above_the_piece(given)
    edges = edges_that_leave_cloth(given, given.cloth_width)
    usable = edges.between(given.cloth_width)
    grid = replace(
        pieces_from_cloth(usable, given.cloth_length, given.piece_width, given.piece_length, given.may_turn),
        edges=edges,
    )
    if not grid.count:
        raise InvalidInput(_does_not_fit(given, usable))
    least = {"across": given.least_width, "along": given.least_length}
    if grid.turned:
        least = {"across": given.least_length, "along": given.least_width}
    rows = [_row(entry, grid, least[entry.direction]) for entry in other_counts(grid)]
    results = {
        "usable_width": usable,
        "count": grid.count,
        "across": grid.across,
        "along": grid.along,
        "turned": grid.turned,
        "marks_across": grid.marks_across,
        "marks_along": grid.marks_along,
        "left_width": grid.left_width,
        "left_length": grid.left_length,
        "other_counts": rows,
    }
    turned = ", turned" if grid.turned else ""
    return Answer(
        results,
        say(f"**{{count:piece|pieces}}**: {{across}} across, {{along}} along{turned}.", **results),
        notes=(*_notes(grid, rows, given.ruler), _to_the_lay_plan(given)),
        working=(
            *(
                (
                    say(
                        "Width to use: {full:length_down} − 2 × {strip:length} = {usable:length_down}.",
                        full=given.cloth_width,
                        strip=edges.strip,
                        usable=usable,
                    ),
                )
                if edges.strip
                else ()
            ),
            say(
                "Across: {cloth:length_down} ÷ {lie:length} = {n:whole piece|whole pieces}, {left:length_down} left.",
                cloth=grid.cloth_width,
                lie=grid.lie_width,
                n=grid.across,
                left=grid.left_width,
            ),
            say(
                "Along: {cloth:length_down} ÷ {lie:length} = {n:whole piece|whole pieces}, {left:length_down} left.",
                cloth=grid.cloth_length,
                lie=grid.lie_length,
                n=grid.along,
                left=grid.left_length,
            ),
        ),
        drawn_from=grid,
    )


def _refuse_limits_above_the_piece(given: SimpleNamespace) -> None:
    messages = {
        f"least_{way}": say(
            "A piece cannot be allowed to shrink to {least:length} when it is cut {piece:length}. Write at most "
            "that, or leave this empty.",
            least=least,
            piece=piece,
        )
        for way, least, piece in (
            ("width", given.least_width, given.piece_width),
            ("length", given.least_length, given.piece_length),
        )
        if least is not None and least > piece
    }
    if messages:
        raise InvalidInput(messages)


def _does_not_fit(given: SimpleNamespace, usable: Fraction) -> dict[str, Phrase]:
    """A sentence for each measure of the piece that is larger than the cloth can take."""
    messages = {}
    turns = not given.may_turn and given.piece_width <= given.cloth_length and given.piece_length <= usable
    remedy = (
        "It fits lying sideways: allow that if the grain may run either way."
        if turns
        else "Write a smaller piece or a larger cloth."
    )
    for name, piece, cloth in (
        ("piece_width", given.piece_width, usable),
        ("piece_length", given.piece_length, given.cloth_length),
    ):
        if piece > cloth:
            messages[name] = say(
                f"A piece of {{piece:length}} does not fit on {{cloth:length_down}} of cloth. {remedy}",
                piece=piece,
                cloth=cloth,
            )
    return messages


def _row(entry: OtherCount, grid: Grid, least: Fraction | None) -> dict[str, Any]:
    now = grid.across if entry.direction == "across" else grid.along
    return {
        "laid": f"{entry.in_direction} {entry.direction}{', as now' if entry.in_direction == now else ''}",
        "direction": entry.direction,
        "pieces": entry.in_direction,
        "count": entry.count,
        "piece_size": entry.size if least is None or entry.size >= least else None,
        "more_cloth": entry.more_cloth if entry.in_direction > now else None,
    }


def _notes(grid: Grid, rows: list[dict[str, Any]], ruler: Ruler) -> Iterator[Phrase]:
    for row in rows:
        lie = grid.lie_width if row["direction"] == "across" else grid.lie_length
        more = row["count"] - grid.count
        if more > 0 and row["piece_size"] and 1 - row["piece_size"] / lie <= _SMALL_CHANGE:
            yield say(
                f"Pieces {{less:length_up}} smaller {row['direction']} ({{size:length_down}}) would give {{more:more "
                "piece|more pieces}.",
                less=lie - row["piece_size"],
                size=row["piece_size"],
                more=more,
            )
        if more > 0 and row["more_cloth"] and row["more_cloth"] / lie <= Fraction(1, 4):
            way = "longer" if row["direction"] == "along" else "wider"
            yield say(
                f"Cloth {{extra:length_up}} {way} would give {{more:more piece|more pieces}}.",
                extra=row["more_cloth"],
                more=more,
            )
    yield say(f"Marks across start from {grid.edges.start(ruler)}.")
    if grid.edges.strip:
        yield say(brief("selvedges"))
    yield say(
        brief("one-end")
        + " The last mark along must read {last:length}: if it does not, measure again before cutting.",
        last=grid.marks_along[-1],
    )


def _to_the_lay_plan(given: SimpleNamespace) -> Onward:
    """On to a plan of the same cloth, which is washed and has straight ends, for as many of the piece as fit."""
    unit = "in" if given.ruler.unit == "in" else "cm"
    cloth = [show_exactly(length, unit) for length in (given.cloth_width, given.cloth_length)]
    piece = [show_exactly(length, unit) for length in (given.piece_width, given.piece_length)]
    return Onward(
        "The lay plan goes round flaws, and mixes sizes.",
        does="Plan this cloth",
        page="plan/lay-plan/",
        calculator="lay-plan",
        carries={
            "cloths": json.dumps([["Cloth", *cloth, "1", "no", given.measured]]),
            "pieces": json.dumps([["Piece", *piece, "", "yes" if given.may_turn else "no"]]),
            "sizes": "cut",
            "flaws": "[]",
            "repeats": "[]",
            "selvedge": show_exactly(given.selvedge, unit),
            **dict.fromkeys(("end_loss", "skew", "change_length", "change_width"), "0"),
        },
    )


_DIRECTIONS = {"across": "across", "along": "along"}

CALCULATOR = Calculator(
    name="pieces-from-cloth",
    title="Pieces from cloth",
    purpose="How many pieces of one size the cloth gives, where to mark them, and what a slightly smaller piece "
    "would gain.",
    fields=(
        Field(
            "cloth_width",
            "Cloth width",
            replace(CLOTH_WIDTH, toward="down"),
            "Across the cloth, lying without tension, at its narrowest.",
            "cloth_width",
        ),
        MEASURED,
        Field(
            "cloth_length",
            "Cloth length",
            Length(least=Fraction(20), most=Fraction(100_000), toward="down"),
            "Usable length between two straightened ends.",
            "usable_length",
        ),
        Field(
            "piece_width",
            "Piece width",
            PIECE,
            "Cut size across, with all hems.",
            "piece_width",
            known_as=("cut_width",),
        ),
        Field(
            "piece_length",
            "Piece length",
            PIECE,
            "Cut size along, with all hems.",
            "piece_length",
            known_as=("cut_length",),
        ),
        Field(
            "may_turn",
            "May lie sideways",
            YesNo(),
            "Yes if the grain may run either way in the piece; no for one-way cloth.",
            fixed="no",
        ),
        SELVEDGE,
        Field(
            "least_width",
            "Least piece width",
            PIECE,
            "The narrowest piece you would accept; empty for no limit.",
            optional=True,
        ),
        Field(
            "least_length",
            "Least piece length",
            PIECE,
            "The shortest piece you would accept; empty for no limit.",
            optional=True,
        ),
    ),
    question="Cloth {cloth_width} wide, {measured}, and {cloth_length} long; each piece is cut {piece_width} wide and "
    "{piece_length} long.",
    results=(
        Result("count", "Pieces", Count(), "Pieces in all."),
        Result(
            "usable_width", "Width to use", Length(toward="down"), "Cloth width less the selvedges still to be trimmed."
        ),
        Result("across", "Across the width", Count(), "Pieces side by side across the cloth."),
        Result("along", "Along the length", Count(), "Pieces one after another along the cloth."),
        Result("turned", "Turned", YesNo(), "Whether the pieces lie with their length across the cloth."),
        Result(
            "marks_across",
            "Marks across",
            Lengths(),
            "Every mark measured from the same edge: the trimming line of one selvedge, or the edge itself where "
            "nothing is trimmed.",
        ),
        Result("marks_along", "Marks along", Lengths(), "Every mark measured from the same straightened end."),
        Result("left_width", "Left of the width", Length(toward="down"), "What is left beyond the last mark across."),
        Result("left_length", "Left of the length", Length(toward="down"), "What is left beyond the last mark along."),
        Result(
            "other_counts",
            "Other counts",
            Table(
                columns=(
                    Column("laid", "Pieces", Text()),
                    Column("direction", "Way", Choice(options=_DIRECTIONS), as_data=True),
                    Column("pieces", "Pieces", Count(), as_data=True),
                    Column("count", "In all", Count()),
                    Column("piece_size", "Largest piece that way", Length(toward="down")),
                    Column("more_cloth", "or more cloth that way", Length(toward="up")),
                )
            ),
            "What the next counts would need: a piece of another size, or more cloth for the piece as it is.",
        ),
    ),
    work=_work,
    drawing=cloth_with_pieces,
    examples=(
        Example(
            {
                "cloth_width": "110 cm",
                "measured": "trimmed",
                "cloth_length": "252 cm",
                "piece_width": "36 cm",
                "piece_length": "36 cm",
            },
            {"across": 3, "along": 7, "count": 21},
            "arithmetic: 110 ÷ 36 → 3 across; 4 × 63 cm → 7 of 36 cm",
        ),
    ),
)
