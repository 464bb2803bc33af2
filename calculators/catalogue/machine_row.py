"""A row of machine stitches where something is done: where to begin, to shorten, to turn, to end."""

from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.asking.house_measures import EDGE_STITCH, STITCH
from calculators.drawing.machine_row import ROWS, RowMeasures, machine_row
from calculators.drawing.picture import Picture
from calculators.trade.stitches.machine_row import SHORT, short_part, stitches_in
from calculators.values.kinds import Choice, Count, Length
from calculators.values.measure import Ruler
from calculators.values.phrase import say


def _work(given: SimpleNamespace) -> Answer:
    shortened, lapped = short_part(given.short_stitch), stitches_in(given.lap, given.stitch_hem)
    return Answer(
        {"shortened": shortened, "lapped": lapped},
        say(
            "Shorten the stitch **{shortened:length}** before a point; a lap takes **{lapped:stitch|stitches}**.",
            shortened=shortened,
            lapped=lapped,
        ),
        (),
        (
            say(
                "{count:count} short stitches of {short:length}; {lap:length} of lap, in stitches of {stitch:length}.",
                count=SHORT,
                short=given.short_stitch,
                lap=given.lap,
                stitch=given.stitch_hem,
            ),
        ),
        drawn_from=(
            given.row,
            RowMeasures(given.stitch_seam, given.stitch_hem, given.short_stitch, given.edge_stitch, given.lap),
        ),
    )


def _drawing(drawn_from: tuple[str, RowMeasures], ruler: Ruler) -> Picture:
    return machine_row(*drawn_from, ruler)


CALCULATOR = Calculator(
    name="machine-row",
    title="A row of machine stitches",
    purpose="Where a row is begun, shortened before a point, turned at a corner and lapped, from your own stitch.",
    fields=(
        Field(
            "row",
            "Place in the row",
            Choice(options={name: title for name, (title, _) in ROWS.items()}),
            "What is drawn.",
            fixed="begin",
        ),
        Field("stitch_seam", "Stitch of a seam", STITCH, "One stitch, as it lies on the cloth.", "stitch_seam",
              known_as=()),
        Field("stitch_hem", "Stitch of a hem", STITCH, "One stitch, as it lies on the cloth.", "stitch_hem"),
        Field("edge_stitch", "Edge stitch", EDGE_STITCH, "From the inner fold of the hem to its row.", "edge_stitch"),
        Field(
            "short_stitch",
            "Short stitch",
            STITCH,
            "One of the last before a point.",
            fixed={"cm": "1.2 mm", "in": "1/16 in"},
            known_as=(),
        ),
        Field("lap", "Lap", EDGE_STITCH, "How much of the row is stitched over at its end.",
              fixed={"cm": "1.3 cm", "in": "1/2 in"}, known_as=()),
    ),
    question="{row}: stitches of {stitch_seam} in a seam and {stitch_hem} in a hem.",
    results=(
        Result("shortened", "Short before a point", Length(), "How far before a point the stitch is made shorter."),
        Result("lapped", "Stitches of a lap", Count(), "Whole stitches that cover the lap."),
    ),
    work=_work,
    drawing=_drawing,
    examples=(
        Example(
            {"short_stitch": "1.25 mm", "lap": "13 mm", "stitch_hem": "3 mm"},
            {"shortened": 7.5, "lapped": 5},
            "arithmetic: 6 × 1.25 mm; 13 ÷ 3 is more than 4",
        ),
    ),
)  # fmt: skip
