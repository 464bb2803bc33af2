"""Sentences with numbers in them."""

from fractions import Fraction as F

import pytest

from calculators.values.kinds import Length
from calculators.values.measure import CENTIMETRES, SIXTEENTHS
from calculators.values.phrase import Phrase, figure_parts, say, without_marks


def test_blanks_are_filled_on_the_ruler_in_hand():
    phrase = say(
        "**{count:piece|pieces}** of {size:length}; {left:length_down} is left, {more:length_up} more would do.",
        count=18,
        size=F(460),
        left=F("44.44"),
        more=F("20.01"),
    )
    assert phrase.filled(CENTIMETRES) == "**18 pieces** of 46 cm; about 4.4 cm is left, about 2.1 cm more would do."
    assert (
        phrase.filled(SIXTEENTHS)
        == "**18 pieces** of about 18 1/8 in; about 1 11/16 in is left, about 13/16 in more would do."
    )


def test_one_and_several():
    assert say("{n:piece|pieces}", n=1).filled(CENTIMETRES) == "1 piece"
    assert say("{n:piece|pieces}", n=0).filled(CENTIMETRES) == "0 pieces"
    assert say("{n:piece|pieces}", n=1200).filled(CENTIMETRES) == "1,200 pieces"


def test_a_blank_without_a_kind_of_its_own_is_shown_as_the_calculator_declares_it():
    assert say("{cut}", cut=F("315.1")).filled(CENTIMETRES, {"cut": Length(toward="up")}) == "about 31.6 cm"


def test_what_a_person_wrote_is_never_read_as_a_blank():
    assert say("{note:text}", note="{size} **large** {x:length}").filled(CENTIMETRES) == "{size} **large** {x:length}"


@pytest.mark.parametrize("missing", ["{size:length}", "{size}"])
def test_a_blank_without_a_value_does_not_pass(missing):
    with pytest.raises(KeyError):
        say(missing).filled(CENTIMETRES)


def test_blanks_are_named():
    assert Phrase("Cloth {width} by {length:length}, {n:piece|pieces}").blanks() == {"width", "length", "n"}


def test_the_figure_is_set_apart():
    assert figure_parts("**18 pieces**: 3 across") == [("18 pieces", True), (": 3 across", False)]
    assert figure_parts("Mark **4 cm** on both.") == [("Mark ", False), ("4 cm", True), (" on both.", False)]
    assert without_marks("Mark **4 cm** on both.") == "Mark 4 cm on both."


def test_letters_that_cannot_be_seen_are_dots_in_a_sentence():
    told = say("There is no cloth called “{name:text}”.", name="36\x00\U000c31abLinen").filled(CENTIMETRES)
    assert told == "There is no cloth called “36··Linen”."
