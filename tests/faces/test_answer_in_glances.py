"""An answer is read in glances: its sentence, its drawing, what to do next; all else waits behind a line to tap."""

import pytest

from calculators.asking.answering import Asking, answer
from calculators.asking.house_method import RULER_STEPS
from calculators.catalogue import catalogue
from calculators.drawing.picture import pictures_of
from calculators.faces.page.all_measures import both, measures
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.form import form_html

RULERS = [f"{unit} {steps[0]}" for unit, steps in RULER_STEPS.items()]
every_calculator = pytest.mark.parametrize("calculator", catalogue().values(), ids=lambda each: each.name)
every_ruler = pytest.mark.parametrize("ruler", RULERS)
SEEN = ["headed", "spoken", "drawing", "drawings", "steps", "notes", "files"]


def answered(calculator, ruler):
    asking = Asking({}, wanted_ruler=ruler)
    reply = answer(calculator, asking)
    return asking, reply, answer_html(calculator, reply, asking)


def style(element):
    return (element.get("class") or "").split()[0]


@every_calculator
@every_ruler
def test_only_sentence_drawing_and_notes_are_seen_before_a_tap(calculator, ruler):
    _, _, parts = answered(calculator, ruler)
    seen = [part for part in parts if part.tag != "details" and style(part) != "listed"]
    assert [style(part) for part in seen] == [each for each in SEEN if each in map(style, seen)]
    folds = [fold for part in parts for fold in part.iter("details")]
    tables = [table for part in parts for table in part.iter("table")]
    assert all(any(table in list(fold.iter("table")) for fold in folds) for table in tables)
    assert not any(fold.get("open") is not None for fold in folds)
    assert all(fold[0].tag == "summary" and fold[0].text for fold in folds)


@every_calculator
@every_ruler
def test_each_fold_of_an_answer_has_a_class_of_its_own_by_which_it_stays_open(calculator, ruler):
    _, _, parts = answered(calculator, ruler)
    kinds = [fold.get("class") for part in parts for fold in part.iter("details")]
    assert len(set(kinds)) == len(kinds)


@every_calculator
@every_ruler
def test_all_measures_stand_on_the_ruler_in_hand_alone(calculator, ruler):
    asking, reply, parts = answered(calculator, ruler)
    shown = [
        result.kind.show(reply.results[result.name], asking.ruler)
        for result in calculator.results
        if result.kind.layout == "figure" and reply.results[result.name] is not None
    ]
    tables = [table for part in parts for table in part.iter("table") if "measured" in table.get("class")]
    rows = [row for table in tables for row in table.iter("tr")]
    told = measures(calculator, reply, asking.ruler)
    assert set(shown) == {figure for _, figure in told}
    assert len(rows) == len(told) and all([cell.tag for cell in row] == ["th", "td"] for row in rows)


def test_two_equal_measures_of_like_names_are_one_row():
    mitre = catalogue()["mitre-marks"]
    asking = Asking({"hem_1": "2 cm", "hem_2": "2 cm"})
    told = dict(measures(mitre, answer(mitre, asking), asking.ruler))
    assert told["Mark on edges 1 and 2"] == "4 cm" and "Mark on edge 1" not in told
    asking = Asking({"hem_1": "2 cm", "hem_2": "3 cm"})
    told = dict(measures(mitre, answer(mitre, asking), asking.ruler))
    assert (told["Mark on edge 1"], told["Mark on edge 2"]) == ("6 cm", "4 cm")


@pytest.mark.parametrize(
    ("one", "other", "as_one"),
    [
        ("Mark on edge 1", "Mark on edge 2", "Mark on edges 1 and 2"),
        ("Cut width", "Cut length", "Cut width and length"),
        ("Marks across", "Marks along", "Marks across and along"),
        ("Length to start from", "Width to start from", None),
        ("Skew", "Bow", None),
        ("Cut width", "Cut width", None),
    ],
)
def test_labels_that_differ_in_their_last_word_read_as_one(one, other, as_one):
    assert both(one, other) == as_one


def test_sums_of_money_are_never_told_as_one():
    """“Cost of the thread and rest: €6.40” would be read as their sum."""
    cost = catalogue()["thread-time-cost"]
    asking = Asking({"price_spool": "0", "other": "0"})
    labels = [label for label, _ in measures(cost, answer(cost, asking), asking.ruler)]
    assert "Cost of the thread" in labels and "Cost of the rest" in labels


def test_curtains_ask_four_things_in_their_sentence():
    assert len(catalogue()["curtains"].in_question) == 4


@pytest.mark.parametrize(
    "calculator", [each for each in catalogue().values() if each.drawing], ids=lambda each: each.name
)
def test_a_key_stands_apart_from_its_drawing(calculator):
    asking = Asking({})
    pictures = pictures_of(calculator.drawing(answer(calculator, asking).drawn_from, asking.ruler))
    assert not any("keyed" in (node.get("class") or "") for each in pictures for node in each.svg.iter())


def test_a_row_of_an_order_is_told_in_one_line():
    plan = catalogue()["lay-plan"]
    pieces = plan.field("pieces").kind
    assert pieces.in_one_line(["Napkin", "46 cm", "46 cm", "12", "no", "plain", "1"]) == "12× Napkin, 46 cm × 46 cm"
    assert pieces.in_one_line(["Napkin", "46 cm", "46 cm", "", "no", "plain", "1"]) == "Napkin, 46 cm × 46 cm"
    assert pieces.in_one_line([""] * 7) == "Piece"
    lines = [each.text for each in form_html(plan, Asking({}), "x").iter("button") if each.get("class") == "open-row"]
    assert "12× Napkin, 46\N{NO-BREAK SPACE}cm × 46\N{NO-BREAK SPACE}cm" in lines
