"""Work at the table, drawn: a thread drawn, a cloth folded, a hem pressed, a piece held square."""

from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.declaration import Answer, Calculator, Example, Field, Result
from calculators.asking.house_measures import CLOTH_WIDTH, HEM, PIECE
from calculators.drawing.at_the_table import WORKS, OnTheTable, at_the_table
from calculators.drawing.picture import Picture
from calculators.values.kinds import Choice, Count, Length
from calculators.values.measure import Ruler
from calculators.values.phrase import say


def _work(given: SimpleNamespace) -> Answer:
    on = OnTheTable(
        given.layers, given.folded_length, given.extra_length, given.full_width, given.skew, given.hem,
        (given.piece_width, given.piece_length),
    )  # fmt: skip
    folded = given.layers * given.folded_length + given.extra_length
    return Answer(
        {"diagonal": on.diagonal, "folded": folded},
        say(
            "The piece is square when both its diagonals measure **{diagonal:length}**.",
            diagonal=on.diagonal,
        ),
        (),
        (
            say(
                "The diagonal by Pythagoras: the root of {width:length} × {width:length} + {length:length} × "
                "{length:length}.",
                width=given.piece_width,
                length=given.piece_length,
            ),
            say("In all, the folded cloth measures {folded:length}.", folded=folded),
        ),
        drawn_from=(given.work, on),
    )


def _drawing(drawn_from: tuple[str, OnTheTable], ruler: Ruler) -> Picture:
    return at_the_table(*drawn_from, ruler)


CALCULATOR = Calculator(
    name="at-the-table",
    title="At the table, drawn",
    purpose="What hands and tools do at the table, drawn from your own numbers, and the diagonal of a square piece.",
    fields=(
        Field("work", "Work", Choice(options={name: title for name, (title, _) in WORKS.items()}),
              "What is drawn.", fixed="diagonals"),
        Field("piece_width", "Width of a piece", PIECE, "From side to side.",
              "piece_width", known_as=("cut_width",)),
        Field("piece_length", "Length of a piece", PIECE, "From end to end.",
              "piece_length", known_as=("cut_length",)),
        Field("layers", "Layers", Count(least=1, most=200), "Full layers of a folded cloth.", "layers"),
        Field("folded_length", "Length of one layer", Length(least=Fraction(10)), "From fold to fold.",
              "folded_length"),
        Field("extra_length", "What hangs over", Length(), "Beyond the last full layer.", "extra_length"),
        Field("full_width", "Full width", CLOTH_WIDTH, "From selvedge to selvedge.", "cloth_width"),
        Field("skew", "Slant of one end", Length(most=Fraction(3_000)), "Along the selvedge.", "skew"),
        Field("hem", "Hem", HEM, "Depth of the finished hem.", "hem"),
    ),
    question="{work}; a piece of {piece_width} by {piece_length}.",
    results=(
        Result("diagonal", "Diagonal of the piece", Length(), "From corner to corner of a square piece, both ways."),
        Result("folded", "Folded cloth in all", Length(), "Every layer, and what hangs over."),
    ),
    work=_work,
    drawing=_drawing,
    examples=(
        Example(
            {"piece_width": "30 cm", "piece_length": "40 cm", "layers": "4", "folded_length": "80 cm",
             "extra_length": "4 cm"},
            {"diagonal": 500, "folded": 3240},
            "the triangle of 3, 4 and 5; 4 × 80 + 4 by hand",
            tolerance=1e-9,
        ),
    ),
)  # fmt: skip
