"""Measured sizes against the ticket: in the maker's unit, in one sentence; each, its squareness, and several
together."""

from fractions import Fraction

import pytest

from calculators.ticket.sizes import compared, read_size, square, squareness_together, together
from calculators.values.kind import InvalidValue
from tests.sentences import is_one_message
from tests.ticket.test_ticket import batch

INCHES = {
    "pieces-from-cloth": {"piece_width": "18 in", "piece_length": "18 in"},
    "finished-size": {"turn": "3/8 in", "hem": "3/4 in"},
}


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
    assert (found.within, found.message.filled(made.ruler)) == (within, said)


def test_a_size_in_inches_with_a_fraction():
    """Cut 18 in, turn 3/8, hem 3/4 on both sides: 15 3/4 in finished; the house allows 3/16 in."""
    made = batch(INCHES, "in 1/16")
    found = compared(read_size("15 7/8", "width", made), "width", made)
    assert (found.within, found.message.filled(made.ruler)) == (
        True,
        "1/8 in wider than the ticket says; within 3/16 in.",
    )


def test_what_the_ruler_cannot_tell_apart_is_as_the_ticket_says():
    made = batch(INCHES, "in 1/16")
    found = compared(read_size("400 mm", "width", made), "width", made)
    assert found.message.filled(made.ruler) == "As the ticket says."


@pytest.mark.parametrize("ruler", ["in 1/2", "in 1/4", "in 1/16", "cm 1/2", "mm 1", "cm"])
def test_a_coarse_ruler_hides_no_piece_that_is_off_by_more_than_is_allowed(ruler):
    """Off by 5/16 in where 3/16 in or 4 mm are allowed; on a ruler of half inches that was taken for what the ticket
    says."""
    made = batch(INCHES, ruler)
    found = compared(made.finished["width"] + Fraction(127, 16), "width", made)
    assert not found.within and "put it aside" in found.message.filled(made.ruler)
    assert not square((Fraction(500), Fraction(508)), made).within
    assert "as the ticket says" not in together([made.finished["width"] + 8] * 2, "width", made).filled(made.ruler)


@pytest.mark.parametrize("text", ["banana", "", "-3", "40 40", "12 1/", "1e9", "9" * 80, "290 cm", "2,900"])
def test_what_cannot_be_a_size_gets_one_sentence(text):
    with pytest.raises(InvalidValue) as refused:
        read_size(text, "width", batch())
    assert is_one_message(str(refused.value))


@pytest.mark.parametrize(
    ("one", "other", "within", "said"),
    [
        ("41", "41", True, "Both diagonals are the same: square."),
        ("41.2", "41", True, "The diagonals differ by 2 mm; within 5 mm."),
        ("40.5 cm", "410 mm", True, "The diagonals differ by 5 mm; within 5 mm."),
        ("41", "41.6", False, "The diagonals differ by 6 mm, more than the 5 mm allowed: not square, put it aside."),
    ],
)
def test_a_piece_is_square_when_its_diagonals_are_alike(one, other, within, said):
    """29 by 29 cm is 41.01 cm from corner to corner; only the difference of the two is judged."""
    made = batch()
    assert made.settled("tolerance_square") == 5
    found = square([read_size(one, "diagonal_1", made), read_size(other, "diagonal_2", made)], made)
    assert (found.within, found.message.filled(made.ruler)) == (within, said)


@pytest.mark.parametrize("text", ["61.6", "20.4", "290"])
def test_a_diagonal_far_from_the_one_that_the_sizes_give_is_asked_about(text):
    """29 by 29 cm: 41.01 cm from corner to corner; half of it more or less is 20.5 to 61.5."""
    with pytest.raises(InvalidValue, match="about 41 cm that the sizes on the ticket give from corner to corner"):
        read_size(text, "diagonal_1", batch())
    assert read_size("29", "diagonal_1", batch()) == 290


@pytest.mark.parametrize(
    ("texts", "side", "said"),
    [
        (
            ["29.1", "29.3"],
            "width",
            "Width of 2 pieces: 29.2 cm on average, 2 mm wider than the ticket says; from the smallest to the "
            "largest it is 2 mm.",
        ),
        (
            ["28.8", "29.1", "29.1"],
            "length",
            "Length of 3 pieces: 29 cm on average, as the ticket says; from the smallest to the largest it is 3 mm.",
        ),
        (
            ["28.8", "288 mm"],
            "length",
            "Length of 2 pieces: 28.8 cm on average, 2 mm shorter than the ticket says; all are the same.",
        ),
    ],
)
def test_several_pieces_together(texts, side, said):
    made = batch()
    assert together([read_size(text, side, made) for text in texts], side, made).filled(made.ruler) == said


def test_several_pieces_together_in_inches():
    """Finished 15 3/4 in: 15 3/4 and 15 7/8 have the mean 15 13/16."""
    made = batch(INCHES, "in 1/16")
    said = together([read_size(text, "width", made) for text in ("15 3/4", "15 7/8")], "width", made).filled(made.ruler)
    assert (
        said
        == "Width of 2 pieces: 15 13/16 in on average, 1/16 in wider than the ticket says; from the smallest to the "
        "largest it is 1/8 in."
    )


@pytest.mark.parametrize(
    ("differences", "said"),
    [
        ([0, 0], "Diagonals of 2 pieces: the same on every piece."),
        ([1, 5, 0], "Diagonals of 3 pieces: they differ by 5 mm at most; within 5 mm."),
        ([1, 6, 7], "Diagonals of 3 pieces: they differ by 7 mm at most; on 2 pieces by more than the 5 mm allowed."),
    ],
)
def test_diagonals_of_several_pieces(differences, said):
    made = batch()
    assert squareness_together([Fraction(each) for each in differences], made).filled(made.ruler) == said
