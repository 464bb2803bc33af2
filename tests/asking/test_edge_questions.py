"""Selvedge to selvedge, or already trimmed: asked in the same words wherever a cloth's width is asked, and answered
alike."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer, read
from calculators.asking.declaration import InvalidInput
from calculators.asking.edge_questions import MEASURED, SELVEDGE
from calculators.asking.rows import Rows
from calculators.catalogue import calculator_named, catalogue
from calculators.documents.house_method.reading import house_of
from calculators.drawing.cloth import cloth_with_pieces
from calculators.trade.cloth import LongEdges
from calculators.trade.pieces import Grid
from calculators.values.measure import CENTIMETRES, SIXTEENTHS
from tests.catalogue.lay_plans import WASHED

#: One asks for the width that goes into the wash, before anything is trimmed; the other draws a folded cloth.
NOTHING_IS_TRIMMED = {"wash-test", "at-the-table"}


def fields_of(calculator):
    for field in calculator.fields:
        yield field
        if isinstance(field.kind, Rows):
            yield from field.kind.columns


def test_every_calculator_that_asks_for_a_cloths_width_asks_how_it_was_measured_in_the_same_words():
    asked = {
        name for name, each in catalogue().items() if any(field.default == "cloth_width" for field in each.fields)
    } | {"lay-plan"}
    assert asked >= {"usable-cloth", "pieces-from-cloth", "curtains", "wash-test"}
    for name in asked - NOTHING_IS_TRIMMED:
        assert MEASURED in fields_of(catalogue()[name]) and SELVEDGE in fields_of(catalogue()[name]), name
    words = [field.help for each in catalogue().values() for field in fields_of(each)]
    assert not [each for each in words if "Usable width" in each], (
        "a width without its selvedges is asked for by the one question alone"
    )


@given(st.integers(60, 300), st.integers(0, 25), st.sampled_from(["selvedges", "trimmed"]))
def test_the_same_cloth_has_the_same_width_to_use_on_every_page(width, selvedge, measured):
    typed = {"measured": measured, "selvedge": f"{selvedge} mm"}
    usable = F(10 * width) - (2 * selvedge if measured == "selvedges" else 0)
    assert (
        answer(calculator_named("usable-cloth"), Asking(typed | {"full_width": f"{width} cm"})).results["usable_width"]
        == usable
    )
    pieces = typed | {
        "cloth_width": f"{width} cm",
        "cloth_length": "3 m",
        "piece_width": "20 cm",
        "piece_length": "20 cm",
    }
    assert answer(calculator_named("pieces-from-cloth"), Asking(pieces)).results["across"] == usable // 200
    plan = typed | {
        "cloths": f"Linen | {width} cm | 60 cm | 1 | no | {measured}",
        "pieces": "Napkin | 20 cm | 20 cm | | no",
        "end_loss": "0",
        "skew": "0",
        "change_length": "0",
        "change_width": "0",
    }
    del plan["measured"]
    assert answer(calculator_named("lay-plan"), Asking(plan)).results["count"] == 3 * (usable // 200)
    one = {
        "curtains": "1",
        "fullness": "1",
        "rod": "20 cm",
        "side_return": "0",
        "side_hem": "0",
        "seam_allowance": "0",
        "change_width": "0",
        "widths_in": "whole",
    }
    assert (
        answer(calculator_named("curtains"), Asking(typed | one | {"cloth_width": f"{width} cm"})).results["cut_width"]
        == usable
    )


def test_a_remnant_that_is_trimmed_lies_beside_a_cloth_with_its_selvedges():
    """By hand: 43 cm less two selvedges of 1.5 cm gives one piece of 40 across, 40 cm already trimmed gives one too; 42
    cm with selvedges none."""
    plan = {"pieces": "Napkin | 40 cm | 40 cm | | no", "selvedge": "1.5 cm", "end_loss": "0", "skew": "0"} | WASHED

    def count(cloths):
        return answer(calculator_named("lay-plan"), Asking(plan | {"cloths": cloths})).results["count"]

    assert count("Bolt | 43 cm | 40 cm | 1 | no; Rest | 40 cm | 40 cm | 1 | no | trimmed") == 2
    assert count("Bolt | 43 cm | 40 cm | 1 | no; Short | 42 cm | 80 cm | 1 | no") == 1
    said = [
        note.filled(CENTIMETRES)
        for note in answer(
            calculator_named("lay-plan"),
            Asking(plan | {"cloths": "Bolt | 43 cm | 40 cm; Rest | 40 cm | 40 cm | 1 | no | trimmed"}),
        ).notes
    ]
    assert any("of “Bolt” start from the trimming line, 1.5 cm inside one selvedge" in each for each in said)
    assert any("of “Rest” start from one trimmed edge" in each for each in said)


@pytest.mark.parametrize(
    ("edges", "words"),
    [
        (LongEdges(False, F(15)), "the trimming line, 1.5 cm inside one selvedge"),
        (LongEdges(True, F(15)), "one trimmed edge"),
        (LongEdges(False, F(0)), "one selvedge"),
    ],
)
def test_the_drawing_names_the_edge_that_marks_start_from_and_draws_it(edges, words):
    assert edges.start(CENTIMETRES) == words
    grid = Grid(F(1470), F(3200), F(460), F(460), False, edges)
    for ruler in (CENTIMETRES, SIXTEENTHS):
        picture = cloth_with_pieces(grid, ruler)
        shown = [text.text for text in picture.svg.iter("text")]
        assert any(f"across from the {edges.name}" in each for each in shown)
        assert shown.count("0") == 2, "both rows of marks show where they start"
        assert edges.start(ruler) in picture.description
    drawn = cloth_with_pieces(grid, CENTIMETRES).svg
    cloth = next(_places(line) for line in drawn.iter("polyline") if line.get("class") == "edge")
    ends = {min(x for x, _ in cloth), max(x for x, _ in cloth)}
    cuts = [_places(line) for line in drawn.iter("polyline") if line.get("class") == "cut"]
    trimming = [line for line in cuts if len({y for _, y in line}) == 1 and {x for x, _ in line} == ends]
    assert len(trimming) == (2 if edges.strip else 0)


def _places(line):
    return [tuple(map(float, point.split(","))) for point in line.get("points").split()]


def test_two_selvedges_that_leave_nothing_are_refused_at_their_blank():
    with pytest.raises(InvalidInput) as refused:
        answer(calculator_named("pieces-from-cloth"), Asking({"cloth_width": "6 cm", "selvedge": "3 cm"}))
    assert set(refused.value.sentences) == {"selvedge"}
    assert read(calculator_named("pieces-from-cloth"), Asking({}))["measured"] == "selvedges"


def test_a_width_that_a_house_once_wrote_without_its_selvedges_is_followed_with_them():
    """By hand: 137 cm to use and two selvedges of 1.5 cm are 140 cm from selvedge to selvedge."""
    document = {
        "format": "house method",
        "version": 1,
        "name": "Old",
        "measures": {"usable_width": "137 cm", "selvedge": "1.5 cm"},
    }
    method = house_of(document)
    assert method.measure("cloth_width", method.ruler("cm")) == "140 cm"
    assert answer(calculator_named("pieces-from-cloth"), Asking({}, method=method)).results["usable_width"] == 1370
