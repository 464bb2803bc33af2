"""Several rows of the same questions, read from one line of text or from a page's table."""

import json
from fractions import Fraction

import pytest

from calculators.asking.declaration import Field
from calculators.asking.rows import Rows
from calculators.values.kind import InvalidValue
from calculators.values.kinds import Count, Length, Text, YesNo
from calculators.values.measure import CENTIMETRES

ORDER = Rows(
    columns=(
        Field("name", "Name", Text(), "What it is."),
        Field("width", "Width", Length(least=Fraction(1)), "Across."),
        Field("count", "How many", Count(least=1), "Pieces.", fixed="1"),
        Field("turn", "May turn", YesNo(), "Sideways.", fixed="no"),
    ),
    one="piece",
)


def test_rows_from_a_line():
    first, second = ORDER.parse("napkin | 40 cm | 24; runner | 45 | 2 | yes", CENTIMETRES)
    assert (first.name, first.width, first.count, first.turn) == ("napkin", 400, 24, False)
    assert (second.name, second.width, second.count, second.turn) == ("runner", 450, 2, True)


def test_a_page_may_put_any_character_into_a_cell():
    (row,) = ORDER.parse(json.dumps([["a; b | c", "40 cm", "", ""]]), CENTIMETRES)
    assert (row.name, row.count) == ("a; b | c", 1)


@pytest.mark.parametrize(
    ("text", "part_of_sentence"),
    [
        ("", "at least one piece"),
        (" ; ;", "at least one piece"),
        ("napkin | banana", "row 1, Width: “banana”"),
        ("napkin | 40 cm; runner", "row 2, Width: nothing"),
        ("napkin | 40 cm | 2 | no | more", "row 1 has more than 4 parts"),
        ("[1, 2]", "does not read as rows"),
        ("[[", "does not read as rows"),
        ("[" * 10_000, "does not read as rows"),
        ("[" * 100_000, "100000 characters long"),
        ("napkin | 40;" * 41, "41 rows"),
    ],
)
def test_a_row_that_cannot_be_read_is_named(text, part_of_sentence):
    with pytest.raises(InvalidValue, match=part_of_sentence.replace("|", r"\|").replace("[", r"\[")):
        ORDER.parse(text, CENTIMETRES)


def test_writing_out_keeps_empty_rows_and_adds_units():
    assert json.loads(ORDER.write_out("napkin | 40; | ", CENTIMETRES)) == [
        ["napkin", "40 cm", "", ""],
        ["", "", "", ""],
    ]
