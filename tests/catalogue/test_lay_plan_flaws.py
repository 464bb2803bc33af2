"""A lay plan around a flaw: the strips a pencil finds, and the room left free named waste everywhere."""

import pytest

from calculators.asking.answering import answer
from calculators.drawing.lay_plan import lay_plan
from calculators.values.measure import CENTIMETRES
from tests.catalogue.lay_plans import LAY, of_washed_cloth, saved

PENCIL = {
    "cloths": "Linen | 140 cm | 300 cm", "pieces": "Napkin | 40 cm | 40 cm | 10; Placemat | 35 cm | 48 cm | 6; "
        "Runner | 42 cm | 150 cm | 1",
    "flaws": "120 cm | 68 cm | 4 cm | 4 cm | Linen", "selvedge": "1.5 cm", "end_loss": "1 cm", "skew": "2 cm",
}  # fmt: skip


@pytest.mark.parametrize("strips", ["along", "either", "sections", "free"])
def test_strips_are_put_so_that_a_flaw_falls_between_their_pieces(strips):
    """Worked with a pencil: strips of 40, 42 and 40 along the cloth; the middle one leaves the flaw free between mats
    and runner."""
    results = answer(LAY, of_washed_cloth({**PENCIL, "strips": strips})).results
    assert (results["count"], results["proof"]) == (17, "no: this is proven")


def test_room_left_for_a_flaw_is_named_waste_in_the_tables_the_file_and_the_drawing():
    reply = answer(LAY, of_washed_cloth({**PENCIL, "strips": "along"}))
    assert sum("; waste from " in row["gives"] for row in reply.results["marking"]) == 1
    assert sum("; waste from " in row["cut"] for row in reply.results["cut_list"]) == 1
    assert saved(reply, "marking-table.csv").count("waste up to this mark") == 1
    picture = lay_plan(reply.drawn_from, CENTIMETRES)
    written = [[node.text for node in svg.iter("text")].count("waste") for svg in (picture.svg, picture.key)]
    assert written == [1, 1]  # in its place and in the key
    assert sum(node.get("class") == "waste" for node in picture.svg.iter("polygon")) == 1


def test_a_plan_that_leaves_no_room_before_a_piece_names_no_waste():
    reply = answer(LAY, of_washed_cloth({**PENCIL, "flaws": "", "strips": "along"}))
    assert "waste" not in saved(reply, "marking-table.csv") + str(reply.results["cut_list"])
    assert "waste" not in [node.text for node in lay_plan(reply.drawn_from, CENTIMETRES).svg.iter("text")]
