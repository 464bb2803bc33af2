"""Measured sizes against the ticket: in the maker's unit, in one sentence."""

import pytest

from calculators.kinds import Refused
from calculators.ticket.sizes import compared, read_size
from tests.sentences import is_one_message
from tests.ticket.test_ticket import batch

INCHES = {"pieces-from-cloth": {"piece_width": "18 in", "piece_length": "18 in"}, "finished-size": {"turn": "3/8 in", "hem": "3/4 in"}}


@pytest.mark.parametrize(
    ("text", "side", "within", "said"),
    [
        ("29.2", "width", True, "2 mm wider than the ticket says; within 4 mm."),
        ("28.8 cm", "width", True, "2 mm narrower than the ticket says; within 4 mm."),
        ("290 mm", "length", True, "As the ticket says."),
        ("29.4", "length", True, "4 mm longer than the ticket says; within 4 mm."),
        ("28.5", "length", False, "5 mm shorter than the ticket says, more than the 4 mm allowed: put it aside."),
    ],
)
def test_a_size_on_a_metric_ruler(text, side, within, said):
    made = batch()
    found = compared(read_size(text, side, made), side, made)
    assert (found.within, found.said.filled(made.ruler)) == (within, said)


def test_a_size_in_inches_with_a_fraction():
    """Cut 18 in, turn 3/8, hem 3/4 on both sides: 15 3/4 in finished; the house allows 3/16 in."""
    made = batch(INCHES, "in 1/16")
    found = compared(read_size("15 7/8", "width", made), "width", made)
    assert (found.within, found.said.filled(made.ruler)) == (True, "1/8 in wider than the ticket says; within 3/16 in.")


def test_what_the_ruler_cannot_tell_apart_is_as_the_ticket_says():
    made = batch(INCHES, "in 1/16")
    assert compared(read_size("400 mm", "width", made), "width", made).said.filled(made.ruler) == "As the ticket says."


@pytest.mark.parametrize("text", ["banana", "", "-3", "40 40", "12 1/", "1e9", "9" * 80, "290 cm", "2,900"])
def test_what_cannot_be_a_size_gets_one_sentence(text):
    with pytest.raises(Refused) as refused:
        read_size(text, "width", batch())
    assert is_one_message(str(refused.value))
