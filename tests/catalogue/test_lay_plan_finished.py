"""Finished sizes in place of cut sizes: what is planned, shown and refused is the piece with the hems of its kind."""

import pytest

from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import InvalidInput
from calculators.asking.house_method import read_house_method
from calculators.asking.site_method import site_document, site_method
from calculators.catalogue import calculator_named
from calculators.catalogue.lay_plan.finished import HEMS
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.plain import refusals

LAY = calculator_named("lay-plan")
OWN = {
    "format": "house method",
    "name": "ours",
    "measures": {"hem": {"cm": "4 cm", "in": "1 1/2 in"}},
    "tables": {"pieces": [{"piece": 'Bag; small | "x"', "hem": "1 cm"}]},
}


def order(reply):
    return [
        (row["piece"], row["finished_width"], row["finished_length"], row["width"], row["length"])
        for row in reply.results["per_piece"]
    ]


def test_each_row_takes_the_turn_and_hem_of_its_kind_and_any_other_the_usual_ones():
    """The house: 1 + 2 cm on a napkin, 1 + 3 on a runner, 0.8 + 1.2 on a tea towel, else 1 + 2; each on both sides."""
    pieces = (
        "Napkins | 40 cm | 40 cm | 4; runner | 40 cm | 140 cm | 1; Tea towel | 50 cm | 70 cm | 1; Bag | 30 cm "
        "| 35 "
        "cm | 2"
    )
    assert order(answer(LAY, Asking({"sizes": "finished", "pieces": pieces}))) == [
        ("Napkins", 400, 400, 460, 460), ("runner", 400, 1400, 480, 1480), ("Tea towel", 500, 700, 540, 740),
        ("Bag", 300, 350, 360, 410),
    ]  # fmt: skip


def test_the_plan_is_that_of_the_cut_sizes():
    finished = answer(
        LAY, Asking({"sizes": "finished", "pieces": "Napkin | 40 cm | 40 cm | 12; Runner | 37 cm | 132 cm | 2"})
    )
    cut = answer(LAY, Asking({"pieces": "Napkin | 46 cm | 46 cm | 12; Runner | 45 cm | 140 cm | 2"}))
    same = ("count", "marking", "cut_list", "last_mark", "remnants")
    assert {name: finished.results[name] for name in same} == {name: cut.results[name] for name in same}


def test_cut_sizes_are_shown_alone_where_they_were_written():
    asking = Asking({})
    heads = [node.text for part in answer_html(LAY, answer(LAY, asking), asking) for node in part.iter("th")]
    assert "Cut width" in heads and "Finished width" not in heads


@pytest.mark.parametrize(("ruler", "hem"), [("cm", "4 cm"), ("in", "1 1/2 in")])
def test_the_hems_are_those_of_the_reader_s_own_method_and_ruler(ruler, hem):
    method = read_house_method(OWN, under=site_method())
    asking = Asking(
        {"sizes": "finished", "pieces": "Bag; small | 30 cm | 30 cm".replace(";", "")},
        method=method,
        wanted_ruler=ruler,
    )
    shown = HEMS.kind.cells(asking.text(LAY.field("hems")))
    assert [row[0] for row in shown] == ['Bag; small | "x"', "Any other"] and shown[1][2] == hem


def test_hems_that_are_written_here_are_taken_and_one_of_nothing_leaves_the_sides_as_they_are():
    typed = {
        "sizes": "finished",
        "pieces": "Napkin | 40 cm | 40 cm | 1; Strip | 20 cm | 40 cm | 1",
        "hems": "Strip | 1 cm | 0; Any other | 5 mm | 5 mm",
    }
    assert [row[3:] for row in order(answer(LAY, Asking(typed)))] == [(420, 420), (200, 400)]


def test_a_piece_without_a_hem_is_asked_for_at_the_hems():
    asking = Asking({"sizes": "finished", "pieces": "Bag | 30 cm | 30 cm | 1", "hems": "Napkin | 1 cm | 2 cm"})
    with pytest.raises(InvalidInput) as error:
        answer(LAY, asking)
    assert refusals(error.value, LAY, asking) == {
        "hems": "There is no hem for “Bag”. Write a row for it, or one called “Any other”."
    }


def test_a_piece_that_is_too_wide_with_its_hems_is_said_to_be_so():
    asking = Asking({"sizes": "finished", "pieces": "Wide | 146 cm | 100 cm | 1"})
    with pytest.raises(InvalidInput) as error:
        answer(LAY, asking)
    assert "is 152 cm wide and 106 cm long with its hems" in refusals(error.value, LAY, asking)["pieces"]


def test_every_kind_of_piece_of_the_house_has_its_row():
    kinds = [line["piece"] for line in site_document()["tables"]["pieces"]]
    assert [row[0] for row in HEMS.kind.cells(Asking({}).text(HEMS))] == [*kinds, "Any other"]
