"""Walks: each calculator takes over what the one before worked out."""

from dataclasses import replace
from fractions import Fraction as F

import pytest
from bs4 import BeautifulSoup
from hypothesis import given
from hypothesis import strategies as st

from calculators.asking.answering import Asking
from calculators.asking.site_method import site_method
from calculators.batch.walk import BATCH, Taken, Walk, WalkStep, go
from calculators.faces.job.walk import walk_replies
from calculators.faces.page.plain import refusals
from calculators.values.money import two_decimals
from tests.batch.batches import NAPKINS


def by_name(step_results):
    return {step_result.calculator.name: step_result for step_result in step_results}


def test_a_batch_from_cloth_to_corners_with_nothing_typed_twice():
    """Arithmetic on 110 × 252 cm that does not shrink: 3 × 7 pieces of 36 cm, 29 cm finished, marks at 5 cm."""
    step_results = by_name(go(BATCH, NAPKINS, Asking({})))
    assert [step_result.answer is not None for step_result in step_results.values()] == [True] * 8
    assert (
        step_results["pieces-from-cloth"].answer.results["across"],
        step_results["pieces-from-cloth"].answer.results["along"],
    ) == (3, 7)
    assert step_results["finished-size"].answer.results["finished_width"] == 290
    assert step_results["mitre-marks"].answer.results["mark_1"] == 50
    assert step_results["bundles"].asking.taken["pieces"] == 21


def test_a_change_at_the_start_reaches_the_end():
    before, after = (
        by_name(go(BATCH, {"wash-test": {"cloth_width": width}}, Asking({}))) for width in ("150 cm", "100 cm")
    )
    assert (
        before["usable-cloth"].answer.results["usable_width"] - after["usable-cloth"].answer.results["usable_width"]
        == F(500) * F("48.8") / 50
    )
    assert before["pieces-from-cloth"].answer.results["across"] > after["pieces-from-cloth"].answer.results["across"]


def test_values_are_handed_on_exactly():
    step_results = by_name(go(BATCH, {}, Asking({})))
    assert (
        step_results["usable-cloth"].asking.taken["full_width"]
        == step_results["wash-test"].answer.results["washed_width"]
    )
    assert (
        step_results["pieces-from-cloth"].asking.taken["cloth_length"]
        == step_results["usable-cloth"].answer.results["usable_length"]
    )


def test_what_is_typed_over_holds_and_what_is_emptied_is_taken_over_again():
    typed = by_name(go(BATCH, {"pieces-from-cloth": {"cloth_width": "110 cm"}}, Asking({})))
    assert (
        typed["pieces-from-cloth"].asking.text(typed["pieces-from-cloth"].calculator.field("cloth_width")) == "110 cm"
    )
    emptied = by_name(go(BATCH, {"pieces-from-cloth": {"cloth_width": " "}}, Asking({})))
    assert (
        emptied["pieces-from-cloth"].answer.results
        == by_name(go(BATCH, {}, Asking({})))["pieces-from-cloth"].answer.results
    )


@given(
    st.integers(1_000, 3_000),
    st.integers(400, 500),
    st.integers(400, 500),
    st.sampled_from(["cm", "cm 1/2", "mm", "in", "in 1/2", "in 1/32"]),
)
def test_what_stands_in_a_blank_taken_over_reads_back_and_is_never_more_than_there_is(
    cloth, after_length, after_width, ruler
):
    typed = {
        "wash-test": {
            "cloth_width": f"{cloth} mm",
            "cloth_length": f"{3 * cloth} mm",
            "after_length": f"{after_length} mm",
            "after_width": f"{after_width} mm",
        }
    }
    for step_result in go(BATCH, typed, Asking({}, wanted_ruler=ruler)):
        for name in step_result.asking.taken if step_result.answer else ():
            field, value = step_result.calculator.field(name), step_result.asking.taken[name]
            read_back = field.kind.parse(step_result.asking.text(field), step_result.asking.ruler)
            assert read_back <= value or name not in {"folded_length", "full_width", "cloth_length", "cloth_width"}
            assert read_back == value if isinstance(value, str) else abs(read_back - value) <= 13


def test_a_count_taken_over_stands_in_plain_digits():
    typed = {
        "pieces-from-cloth": {
            "cloth_width": "5 m",
            "measured": "trimmed",
            "cloth_length": "90 m",
            "piece_width": "20 mm",
            "piece_length": "50 mm",
        }
    }
    bundles = by_name(go(BATCH, typed, Asking({})))["bundles"]
    assert bundles.asking.text(bundles.calculator.field("pieces")) == "450000"


def test_corners_take_the_hems_that_meet_in_them():
    def corner(**hems):
        step_results = by_name(
            go(BATCH, NAPKINS | {"finished-size": {"turn": "1 cm", "hem": "2.5 cm"} | hems}, Asking({}))
        )
        notes = [note.template for note in step_results["finished-size"].answer.notes]
        return (
            step_results["mitre-marks"].asking.taken["hem_1"],
            step_results["mitre-marks"].asking.taken["hem_2"],
            any("The sides differ" in note for note in notes),
        )

    assert corner() == (25, 25, False)
    assert corner(hem_top="4 cm", hem_bottom="4 cm") == (25, 40, False)
    assert corner(hem_top="4 cm") == (25, 40, True)
    assert corner(hem_left="0", hem_right="3 cm") == (30, 25, True)


def test_an_order_by_finished_size_gives_its_cut_size_to_the_pieces():
    """Arithmetic: 42 cm finished with 0.8 cm turn and 2 cm hem on every side is cut 42 + 2 × 2.8 = 47.6 cm."""
    order = {"start_from": "finished", "width": "42 cm", "length": "42 cm", "turn": "0.8 cm", "hem": "2 cm"}
    step_results = by_name(
        go(
            BATCH,
            NAPKINS
            | {"pieces-from-cloth": {"cloth_width": "140 cm", "cloth_length": "320 cm"}, "finished-size": order},
            Asking({}),
        )
    )
    assert (
        step_results["pieces-from-cloth"].asking.taken["piece_width"]
        == 476
        == step_results["finished-size"].answer.results["cut_length"]
    )
    assert (
        step_results["pieces-from-cloth"].answer.results["across"],
        step_results["pieces-from-cloth"].answer.results["along"],
    ) == (2, 6)
    assert step_results["finished-size"].answer.results["finished_width"] == 420
    assert step_results["mitre-marks"].answer.results["mark_1"] == 40
    assert "width" not in step_results["finished-size"].asking.taken and not step_results["finished-size"].departures


def test_pieces_wait_for_a_finished_size_that_needs_mending():
    step_results = by_name(go(BATCH, {"finished-size": {"start_from": "finished", "width": "36 banana"}}, Asking({})))
    assert (
        step_results["pieces-from-cloth"].waits_for
        == "Turn, hem and finished size"
        == step_results["finished-size"].step.title
    )
    assert (
        step_results["finished-size"].refusal
        and step_results["mitre-marks"].waits_for
        and step_results["bundles"].waits_for
    )


def test_the_cloth_is_asked_for_first_and_nobody_must_say_what_she_needs_of_it():
    wash = by_name(go(BATCH, {}, Asking({})))["wash-test"]
    assert (
        wash.calculator.question.startswith("The cloth, unwashed, is {cloth_length} long and {cloth_width} wide.")
        and "needed" not in wash.calculator.question
    )
    told = walk_replies(BATCH, {}, Asking({}))["wash-test"]["answer"].replace("\N{NO-BREAK SPACE}", " ")
    assert (
        "Start from" not in told
        and told.count("The cloth in hand will be about 304.6 cm by 146.4 cm once it is washed.") == 1
    )  # 320 × 47.6 ÷ 50; 150 × 48.8 ÷ 50
    needed = walk_replies(BATCH, {"wash-test": {"needed_length": "4 m"}}, Asking({}))["wash-test"]["answer"].replace(
        "\N{NO-BREAK SPACE}", " "
    )
    assert (
        "Start from a length of about 420.2 cm" in needed and "not long enough for the 400 cm" in needed
    )  # 400 × 50 ÷ 47.6


def test_what_is_written_by_hand_and_differs_from_the_other_steps_is_named():
    typed = NAPKINS | {
        "finished-size": {"start_from": "cut", "width": "42 cm", "length": "36 cm"},
        "bundles": {"pieces": "24"},
    }
    step_results = by_name(go(BATCH, typed, Asking({})))
    (wide,) = step_results["finished-size"].departures
    assert (wide.name, wide.title, wide.value) == ("width", "Pieces and marks", 360)
    assert [(each.name, each.value) for each in step_results["bundles"].departures] == [("pieces", 21)]
    told = walk_replies(BATCH, typed, Asking({}))["bundles"]["answer"].replace("\N{NO-BREAK SPACE}", " ")
    assert "Pieces to make: you wrote 24, and “Pieces and marks” gives 21." in told


def test_a_step_in_trouble_is_asked_again_and_those_behind_it_wait():
    step_results = by_name(go(BATCH, {"usable-cloth": {"selvedge": "36 banana"}}, Asking({})))
    assert step_results["wash-test"].answer
    assert set(refusals(step_results["usable-cloth"].refusal, step_results["usable-cloth"].calculator, Asking({}))) == {
        "selvedge"
    }
    assert step_results["pieces-from-cloth"].waits_for == "What can be used of it"
    assert not any(
        step_results[name].answer
        for name in ("pieces-from-cloth", "finished-size", "mitre-marks")
        if step_results[name].waits_for
    )


def test_a_step_that_takes_nothing_from_the_one_in_trouble_goes_on():
    typed = {"wash-test": {"after_length": "x"}, "usable-cloth": {"folded_length": "3 m", "full_width": "150 cm"}}
    step_results = by_name(go(BATCH, typed, Asking({})))
    assert (
        step_results["wash-test"].refusal and step_results["usable-cloth"].answer and step_results["mitre-marks"].answer
    )


def test_a_walk_cannot_take_what_no_earlier_step_has():
    with pytest.raises(ValueError, match="no earlier step"):
        Walk(
            "backwards",
            "Backwards",
            (
                WalkStep("pieces-from-cloth", "Pieces", taken={"cloth_width": Taken("usable-cloth", "usable_width")}),
                WalkStep("usable-cloth", "Cloth"),
            ),
        )
    with pytest.raises(ValueError, match="no earlier step"):
        Walk(
            "unknown",
            "Unknown",
            (
                WalkStep("usable-cloth", "Cloth"),
                WalkStep("pieces-from-cloth", "Pieces", taken={"cloth_width": Taken("usable-cloth", "no_such")}),
            ),
        )


def test_the_order_comes_first_and_its_number_reaches_the_ticket():
    """24 ordered + 1 to spare; a number written into the bundles still stands, and the order is named beside it."""
    ordered = {"order": {"ordered": "24", "spare": "1"}}
    assert by_name(go(BATCH, {}, Asking({})))["bundles"].asking.taken["pieces"] == 18
    assert next(iter(by_name(go(BATCH, ordered, Asking({}))))) == "order"
    assert by_name(go(BATCH, ordered, Asking({})))["bundles"].asking.taken["pieces"] == 25
    by_hand = by_name(go(BATCH, {**ordered, "bundles": {"pieces": "20"}}, Asking({})))["bundles"]
    assert by_hand.answer.results["bundles"] == 4
    assert [(each.title, each.value) for each in by_hand.departures] == [("The order", 25)]
    assert (
        "25 pieces are to be made, and this cloth gives 18: 7 are lacking"
        in walk_replies(BATCH, ordered, Asking({}))["pieces-from-cloth"]["answer"]
    )
    assert (
        "138\N{NO-BREAK SPACE}cm between straight ends"
        in walk_replies(BATCH, ordered, Asking({}))["pieces-from-cloth"]["answer"]
    )  # 7 at 3 across: 3 rows of 46 cm
    assert (
        "to be made" not in walk_replies(BATCH, {"order": {"ordered": "18"}}, Asking({}))["pieces-from-cloth"]["answer"]
    )


def test_thread_time_and_cost_say_for_how_many_pieces_where_the_cloth_gives_fewer():
    """The house's minutes: 60 once, 30.73 a piece. By hand for the 18 that the cloth gives 60 + 18 × 30.73 = 613.14
    min, shown 10 h 13 min;
    for 25, 60 + 25 × 30.73 = 828.25 min, 13 h 48 min, with 3 rows of 46 cm more: (138 + 2 + 2) ÷ 0.952 = 149.2 cm,
    together 469.2 cm."""
    ordered = {"order": {"ordered": "24", "spare": "1"}}
    alone = by_name(go(BATCH, {}, Asking({})))["thread-time-cost"].answer.results

    def told(typed):
        html = walk_replies(BATCH, typed, Asking({}))["thread-time-cost"]["answer"]
        return BeautifulSoup(html, "html.parser").text.replace("\N{NO-BREAK SPACE}", " ")

    assert alone["time"] == F("613.14")
    said = told(ordered)
    assert (
        said.startswith("25 wanted; this cloth gives 18. Those 18: 10 h 13 min of work")
        and "One more piece" not in said
    )
    assert f"€{two_decimals(alone['total'])}, €{two_decimals(alone['each'])} a piece." in said
    assert "All 25 want about 469.2 cm of cloth, 13 h 48 min of work" in said
    assert "20 wanted; this cloth gives 18" in told({"thread-time-cost": {"pieces": "20"}})
    assert "this cloth gives" not in told({}) + told({"order": {"ordered": "18"}})
    by_hand = told(ordered | {"pieces-from-cloth": {"cloth_length": "2 m"}})
    assert "25 wanted; this cloth gives 12" in by_hand and "Write what further cloth the rest take" in by_hand


def test_the_washed_cloth_is_the_same_length_in_words_and_in_the_drawing():
    """By hand: 460 × 47.8 ÷ 50 = 439.76 cm, told as what is there at least, 439.7 cm."""
    typed = {"wash-test": {"after_length": "47.8 cm", "cloth_length": "4.6 m"}}
    replies = walk_replies(BATCH, typed, Asking({}))
    for step in ("wash-test", "usable-cloth"):
        said = replies[step]["answer"].replace("\N{NO-BREAK SPACE}", " ")
        assert "439.7 cm" in said and "439.8 cm" not in said.split("How it was worked out")[0], step


def test_a_kind_of_piece_brings_its_own_turn_and_hem_and_says_so():
    """46 − 2 × (0.8 + 1.2) = 42 cm, the tea towel of the house's table; by hand 46 − 2 × (0.8 + 3) = 38.4 cm."""
    towel = {"order": {"piece": "tea towel"}}
    step_results = by_name(go(BATCH, towel, Asking({})))
    assert step_results["finished-size"].answer.results["finished_width"] == 420
    assert (step_results["mitre-marks"].asking.taken["hem_1"], step_results["mitre-marks"].asking.taken["turn"]) == (
        12,
        8,
    )
    said = walk_replies(BATCH, towel, Asking({}))["finished-size"]["answer"]
    assert (
        "From your method, “The linen workroom”, for “Tea towel”: first turn 0.8\N{NO-BREAK SPACE}cm and hem depth "
        "1.2\N{NO-BREAK SPACE}cm." in said
    )
    on_inches = walk_replies(BATCH, towel, Asking({}, wanted_ruler="in"))["finished-size"]["answer"]
    assert "first turn 5/16\N{NO-BREAK SPACE}in and hem depth 1/2\N{NO-BREAK SPACE}in." in on_inches
    by_hand = {**towel, "finished-size": {"hem": "3 cm"}}
    assert by_name(go(BATCH, by_hand, Asking({})))["finished-size"].answer.results["finished_width"] == 384
    said = walk_replies(BATCH, by_hand, Asking({}))["finished-size"]["answer"]
    assert (
        "you wrote 3\N{NO-BREAK SPACE}cm; your method has 1.2\N{NO-BREAK SPACE}cm for “Tea towel”" in said
        and "first turn 0.8\N{NO-BREAK SPACE}cm." in said
    )
    assert "From your method" not in walk_replies(BATCH, {}, Asking({}))["finished-size"]["answer"]


def test_a_blank_that_a_kind_leaves_empty_is_the_usual_one():
    method = site_method()
    mine = replace(method, tables={**method.tables, "pieces": ({"piece": "Napkin", "hem": "1 cm"},)})
    step_results = by_name(go(BATCH, {"order": {"piece": "Napkin"}}, Asking({}, method=mine)))
    assert step_results["finished-size"].answer.results["finished_width"] == 460 - 2 * (10 + 10)
    assert dict(step_results["finished-size"].asking.method.of_kind) == {"hem": "Napkin"}


def test_a_kind_that_the_method_does_not_have_is_asked_again_and_only_what_needs_it_waits():
    replies = walk_replies(BATCH, {"order": {"piece": "Bib"}}, Asking({}))
    assert "not one of the choices: none, napkin, placemat, runner, tea towel" in replies["order"]["refusals"]["piece"]
    assert {name for name, reply in replies.items() if "waits" in reply} == {
        "finished-size",
        "mitre-marks",
        "bundles",
        "thread-time-cost",
    }
    assert [kept for kept, _ in replies["order"]["choices"]["piece"]] == [
        "none",
        "napkin",
        "placemat",
        "runner",
        "tea towel",
    ]
