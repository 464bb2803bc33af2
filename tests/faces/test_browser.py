"""The browser's way in: questions as JSON, replies as JSON, the last of them final."""

import json

import pytest
from bs4 import BeautifulSoup

from calculators.batch.walk import WALKS
from calculators.catalogue import catalogue
from calculators.faces.browser import replies
from calculators.values.kinds import Text

NASTY = '<img src=x onerror="alert(1)">'


def ask(**request):
    told = [json.loads(text) for text in replies(json.dumps(request))]
    assert [reply.get("final", False) for reply in told] == [False] * (len(told) - 1) + [True]
    return told[-1]


def calculator(name, typed=(), given=(), ruler=""):
    return ask(ask="calculator", calculator=name, given=dict(given), typed=dict(typed), ruler=ruler)


def page(reply):
    return BeautifulSoup(reply["answer"], "html.parser")


@pytest.mark.parametrize("name", catalogue())
def test_an_answer_comes_with_what_stands_in_every_blank(name):
    reply = calculator(name)
    assert set(reply["texts"]) == {field.name for field in catalogue()[name].fields}
    assert reply["written"] == {}
    assert page(reply).select_one(".spoken .figure").get_text()
    assert "refusals" not in reply


def test_typed_values_are_told_with_the_unit_they_were_read_in():
    reply = calculator("pieces-from-cloth", {"piece_width": "36", "piece_length": '14 1/4"', "may_turn": "yes"})
    assert reply["written"] == {"piece_width": "36 cm", "piece_length": '14 1/4"', "may_turn": "yes"}
    assert calculator("pieces-from-cloth", {"piece_width": "14"}, ruler="in")["written"]["piece_width"] == "14 in"


def test_what_can_be_read_is_told_even_beside_what_cannot():
    reply = calculator("pieces-from-cloth", {"piece_width": "36", "piece_length": "36 banana"})
    assert set(reply["refusals"]) == {"piece_length"} and reply["written"] == {"piece_width": "36 cm"}


def test_what_a_page_fills_in_gives_way_to_what_is_typed():
    given = {"piece_width": "40 cm"}
    assert calculator("pieces-from-cloth", {}, given)["texts"]["piece_width"] == "40 cm"
    assert calculator("pieces-from-cloth", {"piece_width": "36 cm"}, given)["texts"]["piece_width"] == "36 cm"


@pytest.mark.parametrize("nasty", [NASTY, "\x00", "\ud83d", "\u202e"])
def test_whatever_is_typed_is_only_ever_text(nasty):
    for name in catalogue():
        for field in catalogue()[name].fields:
            reply = calculator(name, {field.name: nasty})
            assert "<img" not in reply["answer"] if type(field.kind) is Text else "refusals" in reply
    steps = ask(ask="walk", walk="batch", typed={"wash-test": {"after_length": nasty}}, ruler="")["steps"]
    assert "refusals" in steps["wash-test"] and "waits" in steps["pieces-from-cloth"]


@pytest.mark.parametrize("ruler", ["cubit", "in 1/7", "🧵", "in"])
def test_a_ruler_kept_from_another_day_is_no_trouble(ruler):
    """The browser keeps the ruler between visits; one that is no longer offered must not silence every page."""
    assert "answer" in calculator("mitre-marks", ruler=ruler)
    assert "steps" in ask(ask="walk", walk="batch", typed={}, ruler=ruler)
    assert ask(ask="numbers", numbers=[{"calculator": "mitre-marks", "result": "mark_1", "given": {}}], ruler=ruler)[
        "numbers"
    ]


@pytest.mark.parametrize("walk", WALKS)
def test_a_walk_tells_every_step(walk):
    steps = ask(ask="walk", walk=walk, typed={}, ruler="")["steps"]
    assert list(steps) == [step.calculator for step in WALKS[walk].steps]
    assert all(reply["answer"] and "written" in reply for reply in steps.values())


def test_a_bare_number_keeps_the_ruler_it_was_written_on():
    wanted = {"calculator": "mitre-marks", "result": "mark_1", "given": {"hem_1": "2", "hem_2": "2"}}
    reply = ask(ask="numbers", ruler="in", numbers=[{**wanted, "readOn": "cm"}, {**wanted, "readOn": "in"}, wanted])
    assert reply["numbers"] == [text.replace("~", "\N{NO-BREAK SPACE}") for text in ("about~1~9/16~in", "4~in", "4~in")]


@pytest.mark.parametrize("ruler", ["cm", "in"])
@pytest.mark.parametrize("text", ["80/12", "70/10, 80/12, 90/14", "ticket 75", "75", "25.4", "2–3"])
def test_a_value_that_names_no_unit_is_no_length(text, ruler):
    """A needle's size, a thread's ticket and a number to divide by stay as their source prints them, on every ruler."""
    assert ask(ask="numbers", ruler=ruler, numbers=[], values=[text], figures=[])["values"] == [text]


def test_numbers_values_and_figures_come_back_in_their_order():
    reply = ask(
        ask="numbers", ruler="in",
        numbers=[
            {"calculator": "mitre-marks", "result": "mark_1", "given": {"hem_2": "1 in"}},
            {"calculator": "mitre-marks", "result": "mark_2", "given": {"hem_1": "2 in"}},
        ],
        values=["1/4 in", "5 cm", "350 mm", "8–12 in", "2–4 cm", "3 %"],
        figures=[{"calculator": "mitre-marks", "given": {}}],
    )  # fmt: skip
    assert reply["numbers"] == ["2\N{NO-BREAK SPACE}in", "4\N{NO-BREAK SPACE}in"]
    values = [
        "1/4~in",
        "5~cm (about~1~15/16~in)",
        "350~mm (about~13~3/4~in)",
        "8–12~in",
        "2–4~cm (about~13/16–1~9/16~in)",
        "3~%",
    ]
    assert reply["values"] == [text.replace("~", "\N{NO-BREAK SPACE}") for text in values]
    assert reply["figures"][0].count("<svg") == 2  # the drawing, and its key behind a line to tap


def test_plain_data_is_what_the_terminal_prints():
    assert ask(ask="plain", calculator="mitre-marks", typed={"hem_2": "1 in"}, ruler="")["results"]["mark_1"] == 50.8
    assert set(ask(ask="plain", calculator="mitre-marks", typed={"hem_2": "x"}, ruler="")["errors"]) == {"hem_2"}


def test_no_fold_of_measures_where_nothing_is_measured_yet():
    step = ask(ask="walk", walk="batch", typed={}, ruler="")["steps"]["order"]
    assert "As many pieces" in step["answer"] and "All measures" not in step["answer"]
    step = ask(ask="walk", walk="batch", typed={"order": {"ordered": "24"}}, ruler="")["steps"]["order"]
    assert "All measures" in step["answer"]
