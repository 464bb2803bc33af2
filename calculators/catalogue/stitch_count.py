"""Stitches to the corner: a whole number of them on each side, and where to shorten instead."""

from collections.abc import Iterator
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result, invalid_input
from calculators.asking.house_measures import PIECE, STITCH
from calculators.drawing.stitch_count import DIAL, stitches_at_the_corner
from calculators.trade.stitches.to_the_corner import RowToCorner
from calculators.values.kinds import Count, Length, Number
from calculators.values.measure import MM_IN
from calculators.values.phrase import Phrase, say

_DIAL = Length(on=DIAL)


def _work(given: SimpleNamespace) -> Answer:
    sides = {"finished_width": given.finished_width, "finished_length": given.finished_length}
    for name, side in sides.items():
        if side <= 2 * given.row_in:
            raise invalid_input(
                name,
                "Two rows {row:length} from the edges leave nothing of this side. Write a longer side, or the row "
                "nearer to the edge.",
                row=given.row_in,
            )
    across, along = (RowToCorner(side - 2 * given.row_in, given.stitch_hem) for side in sides.values())
    return Answer(
        {
            "count_across": across.count,
            "count_along": along.count,
            "stitch_across": across.adjusted,
            "stitch_along": along.adjusted,
            "shorten_across": across.shorten[0],
            "shorten_along": along.shorten[0],
            "in_an_inch": MM_IN["in"] / across.adjusted,
            "all_round": 2 * (across.count + along.count),
        },
        say(
            "Stitches of **{stitch_across}** across and {stitch_along} along: {across:count} and {along:count}, "
            "the last in the corner.",
            stitch_across=across.adjusted,
            stitch_along=along.adjusted,
            across=across.count,
            along=along.count,
        ),
        tuple(_notes(across, along)),
        (
            say(
                "({side:length} − 2 × {row:length}) ÷ {count:count} = {stitch_across}, nearest to the stitch as it "
                "is set; the other side likewise.",
                side=given.finished_width,
                row=given.row_in,
                count=across.count,
                stitch_across=across.adjusted,
            ),
        ),
        drawn_from=across,
    )


def _notes(across: RowToCorner, along: RowToCorner) -> Iterator[Phrase]:
    sides = {"on every side": across} if across == along else {"across": across, "along": along}
    for side, row in sides.items():
        from_corner, short = row.shorten
        if short:
            yield say(
                "With the stitch as it is set: {side:text}, shorten {before:length} before the corner; "
                "{short:stitch|stitches} from there.",
                side=side,
                before=from_corner,
                short=short,
            )


CALCULATOR = Calculator(
    name="stitch-count",
    title="Stitches to the corner",
    purpose="A stitch length with which a whole number of stitches lands in each corner, or where to shorten instead.",
    fields=(
        Field("finished_width", "Finished width", PIECE, "Edge to edge across.", fixed={"cm": "40 cm", "in": "16 in"},
              known_as=("finished_width",)),
        Field("finished_length", "Finished length", PIECE, "Edge to edge along.", fixed={"cm": "40 cm", "in": "16 in"},
              known_as=("finished_length",)),
        Field("row_in", "Row, from the edge", Length(most=Fraction(1_000)), "From the finished edge to the row of "
              "stitches.", fixed={"cm": "1.8 cm", "in": "11/16 in"}),
        Field("stitch_hem", "Stitch length", STITCH, "As it is set on the machine.", "stitch_hem"),
    ),
    question="A piece {finished_width} by {finished_length}, a row {row_in} from its edge, stitches of {stitch_hem}.",
    results=(
        Result("count_across", "Stitches across", Count(), "From corner to corner."),
        Result("count_along", "Stitches along", Count(), "From corner to corner."),
        Result("stitch_across", "Stitch across, adjusted", _DIAL, "With it the last one lands in the corner."),
        Result("stitch_along", "Stitch along, adjusted", _DIAL, "With it the last one lands in the corner."),
        Result("shorten_across", "Or shorten across", Length(), "So far before the corner, the stitch left as it is."),
        Result("shorten_along", "Or shorten along", Length(), "So far before the corner, the stitch left as it is."),
        Result("in_an_inch", "Stitches in an inch", Number(most=Fraction(1_000)), "Across, with the adjusted stitch."),
        Result("all_round", "Stitches all round", Count(), "Both sides, twice."),
    ),
    work=_work,
    drawing=stitches_at_the_corner,
    examples=(
        Example(
            {"finished_width": "104 mm", "finished_length": "203 mm", "row_in": "2 mm", "stitch_hem": "3 mm"},
            {"count_across": 33, "count_along": 66, "stitch_along": 3.0152, "shorten_across": 16, "shorten_along": 16,
             "all_round": 198},
            "worked by hand: 100 ÷ 3 is nearest to 33, 199 ÷ 3 to 66; 100 − 28 × 3 = 16 and 199 − 61 × 3 = 16",
            tolerance=0.0001,
        ),
    ),
)  # fmt: skip
