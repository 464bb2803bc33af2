"""Strips for a binding: how wide, how long, and the cloth they are cut from."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace
from typing import Any

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.asking.edge_questions import MEASURED, SELVEDGE, edges_that_leave_cloth
from calculators.asking.house_measures import ALLOWANCE_OR_NONE, CLOTH_WIDTH
from calculators.drawing.binding import StripsOnCloth, strips_on_cloth
from calculators.trade.binding import (
    by_area,
    slanting_strips,
    spiral,
    square_by_area,
    square_for,
    straight_strips,
    strip_width,
)
from calculators.values.kinds import Choice, Count, Length
from calculators.values.phrase import Phrase, say

_Parts = tuple[dict[str, Any], Phrase, Phrase, StripsOnCloth]
_PIECE = Length(least=Fraction(20), most=Fraction(6_000))
_NONE = {"strips": None, "cloth": None, "square": None, "square_by_area": None, "gives": None, "gives_by_area": None}


def _work(given: SimpleNamespace) -> Answer:
    seam = given.binding_width if given.binding_seam is None else given.binding_seam
    if seam > given.binding_width:
        raise invalid_input(
            "binding_seam",
            "The seam would lie deeper than the binding is wide, so the edge would fold over inside. Write at most "
            "{width:length_down}.",
            width=given.binding_width,
        )
    strip = strip_width(given.binding_width, seam, given.for_thickness, given.layers == "double")
    length = given.bound_edge + given.ends
    parts = {"straight": _straight, "bias": _bias, "spiral": _spiral}[given.cut]
    results, told, working, drawn = parts(given, strip, length)
    return Answer(
        {"strip": strip, "length": length} | _NONE | results,
        told,
        tuple(_notes(given, results, length)),
        (
            say(
                "Strip: {times:count} × {width:length} + 2 × {seam:length} + {more:length} = {strip:length_up}.",
                times=4 if given.layers == "double" else 2,
                width=given.binding_width,
                seam=seam,
                more=given.for_thickness,
                strip=strip,
            ),
            say(
                "Length: {edge:length} + {ends:length} = {length:length_up}.",
                edge=given.bound_edge,
                ends=given.ends,
                length=length,
            ),
            working,
        ),
        drawn_from=drawn,
    )


def _straight(given: SimpleNamespace, strip: Fraction, length: Fraction) -> _Parts:
    join = strip if given.join == "slant" else 2 * given.seam_allowance
    width = edges_that_leave_cloth(given, given.cloth_width).between(given.cloth_width)
    if join >= width:
        raise invalid_input(
            "cloth_width",
            "One join takes {join:length_up}, as much as a strip across this cloth is long. Use wider cloth.",
            join=join,
        )
    count = straight_strips(length, width, join)
    return (
        {"strips": count, "cloth": count * strip},
        say(
            "**{strips:strip|strips}**, each cut {strip:length_up} wide, for {length:length_up} of binding.",
            strips=count,
            strip=strip,
            length=length,
        ),
        say(
            "{count:strip|strips} of {cloth:length_down}, less {joins:join|joins} of {join:length}: {all:length_down}.",
            count=count,
            cloth=width,
            joins=count - 1,
            join=join,
            all=count * width - (count - 1) * join,
        ),
        StripsOnCloth("straight", width, count * strip, strip, count),
    )


def _bias(given: SimpleNamespace, strip: Fraction, length: Fraction) -> _Parts:
    width = edges_that_leave_cloth(given, given.cloth_width).between(given.cloth_width)
    found = slanting_strips(length, strip, width, given.seam_allowance)
    if found is None:
        raise invalid_input(
            "cut",
            "Strips for {length:length_up} do not all lie side by side on this cloth. Cut the strip round and round "
            "from a square, or use wider cloth.",
            length=length,
        )
    count, high = found
    return (
        {"strips": count, "cloth": high},
        say(
            "**{strips:strip|strips}** on the bias, each cut {strip:length_up} wide, from {cloth:length_up} of cloth.",
            strips=count,
            strip=strip,
            cloth=high,
        ),
        say(
            "Each strip is √2 times as long as the cloth, and takes √2 times its width across; a join takes 2 × √2 "
            "times {allowance:length}. More strips would take less cloth and more joins.",
            allowance=given.seam_allowance,
        ),
        StripsOnCloth("bias", width, high, strip, count),
    )


def _spiral(given: SimpleNamespace, strip: Fraction, length: Fraction) -> _Parts:
    allowance = given.seam_allowance
    rows, side = square_for(length, strip, allowance)
    results = {"square": side, "square_by_area": square_by_area(length, strip, allowance)}
    drawn = StripsOnCloth("spiral", side, side, strip, rows)
    wide = say(
        "A square of **{square:length_up}** gives {length:length_up} of strip, {strip:length_up} wide.",
        square=side,
        length=length,
        strip=strip,
    )
    if given.piece_width is not None:
        long = given.piece_width if given.piece_length is None else given.piece_length
        rows, gives = spiral(given.piece_width, long, strip, allowance)
        if not rows:
            raise invalid_input(
                "piece_width",
                "No strip {strip:length_up} wide goes round this piece. Write a larger one, or a narrower binding.",
                strip=strip,
            )
        results |= {"gives": gives, "gives_by_area": by_area(given.piece_width, long, strip, allowance)}
        drawn = StripsOnCloth("spiral", max(given.piece_width, long), min(given.piece_width, long), strip, rows)
        wide = say(
            "This piece gives **{gives:length_down}** of strip, {strip:length_up} wide; {length:length_up} is needed.",
            gives=gives,
            strip=strip,
            length=length,
        )
    return (
        results,
        wide,
        say(
            "{rows:whole row|whole rows} of strip, {strip:length_up} wide, go round it, less two seams of "
            "{allowance:length}. By area alone a square of {area:length_up} would do.",
            rows=rows,
            strip=strip,
            allowance=allowance,
            area=results["square_by_area"],
        ),
        drawn,
    )


def _notes(given: SimpleNamespace, results: dict[str, Any], length: Fraction) -> Iterator[Phrase]:
    if results.get("gives") is not None and results["gives"] < length:
        yield say("It falls short by {short:length_up}. Take a larger piece.", short=float(length) - results["gives"])
    if given.cut == "straight":
        yield say("Straight strips are for straight edges; for a curve cut them on the bias.")


CALCULATOR = Calculator(
    name="binding",
    title="Strips for a binding",
    purpose="How wide and how long a binding strip is cut, how many strips, and from which cloth.",
    fields=(
        Field("bound_edge", "Edge to bind", Length(least=Fraction(20), most=Fraction(100_000)), "All the way, corners "
              "included; a corner needs no more.", fixed={"cm": "180 cm", "in": "72 in"}),
        Field("binding_width", "Binding", Length(least=Fraction(2), most=Fraction(150)), "Finished, seen on one side.",
              fixed={"cm": "1 cm", "in": "3/8 in"}),
        Field("layers", "Strip", Choice(options={"single": "single", "double": "folded double"}),
              "A double one is folded in half before it is stitched on, and wears longer.", fixed="single"),
        Field("cut", "Cut", Choice(options={"straight": "straight across the cloth", "bias": "on the bias, strip by "
              "strip", "spiral": "on the bias, round and round"}), "Round and round: one long strip from a square.",
              fixed="straight"),
        Field("cloth_width", "Cloth width", CLOTH_WIDTH, "Across the cloth, lying without tension.", "cloth_width"),
        MEASURED,
        SELVEDGE,
        Field("join", "Join", Choice(options={"slant": "on the slant", "straight": "straight"}),
              "How two straight strips are joined; on the slant lies flatter.", fixed="slant", known_as=()),
        Field("seam_allowance", "Seam allowance of the joins", ALLOWANCE_OR_NONE, "At each of the two edges.",
              "seam_allowance", known_as=("join_allowance",)),
        Field("ends", "Where the ends meet", Length(most=Fraction(1_000)), "Added to the edge.",
              fixed={"cm": "25 cm", "in": "10 in"}),
        Field("binding_seam", "Seam of the binding", Length(least=Fraction(1), most=Fraction(150)),
              "From the edge to its row; left empty, as wide as the binding.", optional=True),
        Field("for_thickness", "For the thickness", Length(most=Fraction(50)), "Added to the strip where what is bound "
              "is thick.", fixed="0"),
        Field("piece_width", "Piece in hand, width", _PIECE, "To be cut round and round; left empty, the square that "
              "is needed is told.", optional=True, known_as=()),
        Field("piece_length", "Piece in hand, length", _PIECE, "Left empty, it is a square.", optional=True,
              known_as=()),
    ),
    question="{bound_edge} of edge, a binding {binding_width} wide, {layers}; strips {cut}, cloth {cloth_width} wide.",
    results=(
        Result("strip", "Strip, cut width", Length(toward="up"), "Before it is folded."),
        Result("length", "Length of binding", Length(toward="up"), "The edge, and where the ends meet."),
        Result("strips", "Strips", Count(), "Whole strips, joined one after another."),
        Result("cloth", "Cloth for them", Length(toward="up"), "Its length, as wide as it lies."),
        Result("square", "Square", Length(toward="up"), "Its side, for a strip cut round and round."),
        Result("square_by_area", "Square by area alone", Length(toward="up"), "As books reckon it, with no row left "
               "over."),
        Result("gives", "The piece gives", Length(toward="down"), "Strip from the piece in hand, in whole rows."),
        Result("gives_by_area", "The piece gives, by area alone", Length(toward="down"), "As books reckon it, with no "
               "row left over."),
    ),
    work=_work,
    drawing=strips_on_cloth,
    sources=("bias-square-page",),
    examples=(
        Example(
            {"bound_edge": "200 cm", "ends": "20 cm", "binding_width": "1 cm", "layers": "double", "cut": "straight",
             "cloth_width": "150 cm", "join": "straight", "seam_allowance": "1 cm", "measured": "trimmed"},
            {"strip": 60, "length": 2200, "strips": 2, "cloth": 120},
            "worked by hand: 6 × 1 cm; 2 × 150 − 2 = 298 cm is more than 220 cm",
        ),
        Example(
            {"bound_edge": "8 in", "ends": "0", "binding_width": "1/4 in", "cut": "bias",
             "cloth_width": "20 in", "measured": "trimmed",
             "seam_allowance": "1/4 in"},
            {"strip": 25.4, "strips": 1, "cloth": 143.684},
            "worked by hand: one strip; 8 in ÷ √2 = 5.6569 in", tolerance=0.001,
        ),
        Example(
            {"bound_edge": "250 in", "ends": "0", "binding_width": "1/2 in", "cut": "spiral",
             "seam_allowance": "1/2 in", "piece_width": "21 in"},
            {"strip": 50.8, "square": 600.1364, "gives": 5028.9442, "gives_by_area": 5080},
            "worked by hand: 8 rows × √2 × 2 in = 22.6274 in, and 2 × 1/2 in; 7 rows × √2 × 20 in; 20 × 20 ÷ 2 in",
            tolerance=0.001,
        ),
    ),
)  # fmt: skip
