"""Whatever the corner of a batch lets through has a ticket; what has none leads to the very blank."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.answering import Asking, answer
from calculators.catalogue import calculator_named
from calculators.declaration import AskAgain
from calculators.measure import show_exactly
from calculators.ticket.batch import NotYet, batch_of
from calculators.ticket.steps import ticket_steps
from calculators.walk import BATCH, go


def refused(calculator, typed):
    try:
        answer(calculator_named(calculator), Asking(typed))
    except AskAgain as trouble:
        return set(trouble.sentences)
    return set()


@given(st.integers(8, 60), st.integers(8, 60), st.integers(1, 120))
def test_what_is_left_at_a_mitre_is_taken_by_every_page_or_by_none(hem_1, hem_2, left):
    """In half millimetres, at a square corner with a turn no page refuses."""
    typed = {"hem_1": show_exactly(F(hem_1, 2), "mm"), "hem_2": show_exactly(F(hem_2, 2), "mm"), "turn": "0", "seam_allowance": show_exactly(F(left, 2), "mm")}
    found = {calculator: "seam_allowance" in refused(calculator, typed) for calculator in ("mitre-marks", "mitre-gauge", "corner-steps")}
    assert len(set(found.values())) == 1, found


@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_half_an_inch_left_in_a_hem_of_half_an_inch_is_refused_in_the_batch_itself(ruler):
    typed = {"finished-size": {"hem": "1/2 in", "turn": "1/4 in"}, "mitre-marks": {"seam_allowance": "1/2 in"}}
    stops = go(BATCH, typed, Asking({}, wanted_ruler=ruler))
    with pytest.raises(NotYet) as trouble:
        ticket_steps(batch_of(stops, stops[0].asking.method))
    assert (trouble.value.calculator, trouble.value.field) == ("mitre-marks", "seam_allowance")
    assert "seam_allowance" in next(stop for stop in stops if stop.calculator.name == "mitre-marks").refusal.sentences


def test_a_seam_allowance_of_half_an_inch_does_not_keep_a_hem_of_half_an_inch_from_its_ticket():
    """Joins and mitres have allowances of their own: only the first is half an inch here."""
    typed = {"finished-size": {"hem": "1/2 in", "turn": "1/4 in"}}
    stops = go(BATCH, typed, Asking({}, wanted_ruler="in"))
    assert ticket_steps(batch_of(stops, stops[0].asking.method))
