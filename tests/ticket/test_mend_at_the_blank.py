"""Whatever the corner of a batch lets through has a ticket; what has none leads to the very blank."""

from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import InvalidInput
from calculators.asking.site_method import site_method
from calculators.batch.walk import BATCH, go
from calculators.catalogue import calculator_named
from calculators.ticket.batch import NoTicketYet, batch_of
from calculators.ticket.steps import ticket_steps
from calculators.values.measure import show_exactly


def refused(calculator, typed):
    try:
        answer(calculator_named(calculator), Asking(typed))
    except InvalidInput as error:
        return set(error.sentences)
    return set()


@given(st.integers(8, 60), st.integers(8, 60), st.integers(1, 120))
def test_what_is_left_at_a_mitre_is_taken_by_every_page_or_by_none(hem_1, hem_2, left):
    """In half millimetres, at a square corner with a turn no page refuses."""
    typed = {
        "hem_1": show_exactly(F(hem_1, 2), "mm"),
        "hem_2": show_exactly(F(hem_2, 2), "mm"),
        "turn": "0",
        "seam_allowance": show_exactly(F(left, 2), "mm"),
    }
    found = {
        calculator: "seam_allowance" in refused(calculator, typed)
        for calculator in ("mitre-marks", "mitre-gauge", "corner-steps")
    }
    assert len(set(found.values())) == 1, found


@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_half_an_inch_left_in_a_hem_of_half_an_inch_is_refused_in_the_batch_itself(ruler):
    typed = {"finished-size": {"hem": "1/2 in", "turn": "1/4 in"}, "mitre-marks": {"seam_allowance": "1/2 in"}}
    step_results = go(BATCH, typed, Asking({}, wanted_ruler=ruler))
    with pytest.raises(NoTicketYet) as error:
        ticket_steps(batch_of(step_results, step_results[0].asking.method))
    assert (error.value.calculator, error.value.field) == ("mitre-marks", "seam_allowance")
    assert (
        "seam_allowance"
        in next(
            step_result for step_result in step_results if step_result.calculator.name == "mitre-marks"
        ).refusal.sentences
    )


def test_a_seam_allowance_of_half_an_inch_does_not_keep_a_hem_of_half_an_inch_from_its_ticket():
    """Joins and mitres have allowances of their own: only the first is half an inch here."""
    typed = {"finished-size": {"hem": "1/2 in", "turn": "1/4 in"}}
    step_results = go(BATCH, typed, Asking({}, wanted_ruler="in"))
    assert ticket_steps(batch_of(step_results, step_results[0].asking.method))


def on_its_ticket(corner, edge_stitch):
    """The steps of the batch with a corner like this; what keeps it from having any stands at a blank of the walk."""
    method = replace(site_method(), measures={**site_method().measures, "edge_stitch": edge_stitch})
    step_results = go(BATCH, {"mitre-marks": corner}, Asking({}, method=method))
    blanks = {
        step_result.calculator.name: {field.name for field in step_result.calculator.fields}
        for step_result in step_results
    }
    try:
        return ticket_steps(batch_of(step_results, step_results[0].asking.method))
    except NoTicketYet as error:
        step_result = next(
            step_result for step_result in step_results if step_result.calculator.name == error.calculator
        )
        assert error.field in blanks[error.calculator]
        assert error.field in step_result.refusal.sentences  # so that the page of the batch marks it too
        assert str(error) == filled(
            step_result.refusal.sentences[error.field], step_result.calculator, step_result.asking.ruler
        )
        return None


@given(
    st.fixed_dictionaries(
        {
            "hem_1": st.sampled_from(["2 mm", "3 mm", "8 mm", "2 cm", "6 cm"]),
            "hem_2": st.sampled_from(["2 mm", "4 mm", "1 cm", "2 cm", "15 cm"]),
            "angle": st.sampled_from(["20", "29", "30", "45", "60", "90", "91", "120", "150", "151", "160"]),
            "turn": st.sampled_from(["0", "2 mm", "8 mm"]),
            "seam_allowance": st.sampled_from(["2 mm", "6 mm", "1 cm"]),
        }
    ),
    st.sampled_from(["1 mm", "2 mm", "3 mm", "9 mm"]),
)
@settings(max_examples=60, deadline=None)
def test_whatever_corner_the_batch_answers_is_folded_on_its_ticket(corner, edge_stitch):
    on_its_ticket(corner, edge_stitch)


@pytest.mark.parametrize("ruler, words", [
    ("cm", "The house’s edge stitch, 0.3 cm from the inner edge, would miss a hem of 0.3 cm. Make the hem deeper, or "
        "the edge stitch of the house method smaller."),
    ("in", "The house’s edge stitch, about 1/8 in from the inner edge, would miss a hem of about 1/8 in. Make the "
        "hem deeper, or the edge stitch of the house method smaller."),
])  # fmt: skip
def test_an_edge_stitch_that_misses_the_hem_is_refused_in_the_batch_at_that_very_hem(ruler, words):
    corner = {"hem_1": "4 mm", "hem_2": "3 mm", "turn": "0", "seam_allowance": "1 mm"}
    method = replace(site_method(), measures={**site_method().measures, "edge_stitch": "3 mm"})
    step_result = next(
        step_result
        for step_result in go(BATCH, {"mitre-marks": corner}, Asking({}, method=method, wanted_ruler=ruler))
        if step_result.calculator.name == "mitre-marks"
    )
    assert [*step_result.refusal.sentences] == ["hem_2"]
    assert (
        filled(step_result.refusal.sentences["hem_2"], step_result.calculator, step_result.asking.ruler).replace(
            "\N{NO-BREAK SPACE}", " "
        )
        == words
    )
    assert on_its_ticket(corner, "3 mm") is None
    assert on_its_ticket({**corner, "hem_2": "4 mm"}, "3 mm")
