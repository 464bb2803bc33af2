"""Usable cloth: what is left of a cloth measured folded, once selvedges, ends and skew are allowed for."""

from dataclasses import replace
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.asking.edge_questions import MEASURED, SELVEDGE, edges_that_leave_cloth
from calculators.asking.house_measures import CLOTH_WIDTH
from calculators.drawing.usable import cloth_in_hand
from calculators.trade.cloth import UsableCloth, usable_cloth
from calculators.values.kinds import Count, Length, Percent
from calculators.values.phrase import Phrase, say

_SKEW_WORTH_PULLING = 2  # [%] common practice, no source


def _work(given: SimpleNamespace) -> Answer:
    strip = edges_that_leave_cloth(given, given.full_width).strip
    if given.skew >= given.full_width:
        raise invalid_input(
            "skew",
            "The end cannot be off by more than the cloth is wide ({full_width:length}). Measure the offset along "
            "the selvedge.",
            full_width=given.full_width,
        )
    whole = given.layers * given.folded_length + given.extra_length
    if 2 * given.end_loss + given.skew >= whole:
        if given.skew > 2 * given.end_loss:
            raise invalid_input(
                "skew",
                "Slanting by {skew:length}, the ends leave nothing of the {whole:length} there is. Measure the "
                "offset along the selvedge.",
                skew=given.skew,
                whole=whole,
            )
        raise invalid_input(
            "end_loss",
            "The ends take up all of the {whole:length} there is. Write what is cut off one end.",
            whole=whole,
        )
    cloth = usable_cloth(
        given.layers, given.folded_length, given.extra_length, given.full_width, strip, given.end_loss, given.skew
    )
    results = {"usable_length": cloth.length, "usable_width": cloth.width, "skew_percent": cloth.skew_percent}
    notes = []
    if given.skew:
        notes.append(_slanted(cloth))
    if cloth.skew_percent > _SKEW_WORTH_PULLING:
        notes.append(
            say(
                "Pull the damp cloth on the bias, corner to corner, until the ends lie square, and measure again "
                "(common practice, no source)."
            )
        )
    if given.layers > 1:
        notes.append(
            say("Measure one layer at the fold and one in the middle; if they differ, the cloth is not lying flat.")
        )
    return Answer(
        results,
        say("**{usable_length} by {usable_width}** can be used.", **results),
        notes=tuple(notes),
        working=(
            say(
                "Length: {layers:count} × {folded:length} + {extra:length} = {whole:length}; less {ends:length} at "
                "each end and {skew:length} of skew = {usable:length_down}.",
                layers=given.layers,
                folded=given.folded_length,
                extra=given.extra_length,
                whole=whole,
                ends=given.end_loss,
                skew=given.skew,
                usable=cloth.length,
            ),
            say("Width: {full:length}, with nothing to trim.", full=given.full_width)
            if not strip
            else say(
                "Width: {full:length} − 2 × {strip:length} = {usable:length_down}.",
                full=given.full_width,
                strip=strip,
                usable=cloth.width,
            ),
        ),
        drawn_from=cloth,
    )


def _slanted(cloth: UsableCloth) -> Phrase:
    pulled = "This counts on the cloth being pulled square before it is marked."
    if cloth.upright_length <= 0:
        return say(f"{pulled} Left as it is, no piece as wide as the cloth can be cut square to the selvedge.")
    return say(
        f"{pulled} Left as it is, only {{upright:length_down}} can be cut square to the selvedge.",
        upright=cloth.upright_length,
    )


CALCULATOR = Calculator(
    name="usable-cloth",
    title="Usable cloth",
    purpose="What can be used of a long cloth measured folded in layers.",
    fields=(
        Field(
            "layers",
            "Layers",
            Count(least=1, most=200),
            "How many full layers lie on one another; 1 for a cloth measured flat.",
            "layers",
        ),
        Field(
            "folded_length",
            "Length of one layer",
            Length(least=Fraction(10), toward="down"),
            "From fold to fold along the selvedge.",
            "folded_length",
        ),
        Field(
            "extra_length",
            "What hangs over",
            Length(),
            "Length beyond the last full layer; 0 if there is none.",
            "extra_length",
        ),
        Field(
            "full_width",
            "Full width",
            replace(CLOTH_WIDTH, toward="down"),
            "Lying without tension, at its narrowest.",
            "cloth_width",
        ),
        MEASURED,
        SELVEDGE,
        Field(
            "end_loss",
            "Cut off each end",
            Length(most=Fraction(5_000)),
            "Cloth cut off each end to reach clean, whole threads.",
            "end_loss",
        ),
        Field(
            "skew",
            "Slant of one end",
            Length(most=Fraction(3_000)),
            "How far along the selvedge a drawn thread comes out from where a square line would.",
            "skew",
        ),
    ),
    question="Cloth lying {layers} deep, each layer {folded_length} long, with {extra_length} over; {full_width} wide, "
    "{measured}.",
    results=(
        Result(
            "usable_length", "Usable length", Length(toward="down"), "Length between two ends that follow a thread."
        ),
        Result(
            "usable_width", "Usable width", Length(toward="down"), "Width between the trimming lines of the selvedges."
        ),
        Result("skew_percent", "Skew", Percent(), "Slant of one end as a share of the width."),
    ),
    work=_work,
    drawing=cloth_in_hand,
    examples=(
        Example(
            {"full_width": "1500 mm", "skew": "15 mm"},
            {"skew_percent": 1},
            "GOST 14067-91, formula 100·d/w: 15 mm on 1500 mm is 1.0 % (arithmetic derived)",
            tolerance=0.05,
        ),
        Example(
            {"layers": "4", "folded_length": "63 cm", "extra_length": "0", "end_loss": "0", "skew": "0"},
            {"usable_length": 2520},
            "arithmetic: 4 × 63 cm",
        ),
    ),
    sources=("astm-d3774", "gost-14067", "astm-d3882"),
)
