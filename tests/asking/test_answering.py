"""From what was typed to an answer."""

from fractions import Fraction as F

import pytest

from calculators.asking.answering import Asking, answer, filled, read
from calculators.asking.declaration import InvalidInput
from calculators.asking.site_method import site_method
from calculators.catalogue import calculator_named
from calculators.faces.page.plain import refusals

PIECES = calculator_named("pieces-from-cloth")


def test_what_is_typed_goes_before_what_is_taken_over_before_what_the_house_measures():
    house = Asking({})
    taken = Asking({}, taken={"cloth_width": F(1464)})
    typed = Asking({"cloth_width": "110 cm"}, taken={"cloth_width": F(1464)})
    house_width = site_method().measure("cloth_width", house.ruler)
    assert [asking.text(PIECES.field("cloth_width")) for asking in (house, taken, typed)] == [
        house_width,
        "146.4 cm",
        "110 cm",
    ]
    assert [read(PIECES, asking)["cloth_width"] for asking in (taken, typed)] == [F(1464), F(1100)]


def test_a_value_taken_over_is_not_rounded_by_being_shown():
    asking = Asking({}, taken={"cloth_width": F(10_000, 7)})
    assert (
        asking.text(PIECES.field("cloth_width")) == "142.8 cm"
    )  # rounded down, since pieces must fit on it; no "about", since the blank must read back
    assert read(PIECES, asking)["cloth_width"] == F(10_000, 7)


@pytest.mark.parametrize("emptied", ["", "   "])
def test_an_emptied_blank_is_asked_for_again_unless_something_stands_behind_it(emptied):
    with pytest.raises(InvalidInput) as refused:
        read(PIECES, Asking({"cloth_width": emptied}))
    assert "such as" in refusals(refused.value, PIECES, Asking({}))["cloth_width"]
    assert read(PIECES, Asking({"cloth_width": emptied}, taken={"cloth_width": F(1464)}))["cloth_width"] == 1464


def test_what_may_stay_empty_comes_as_nothing():
    assert read(PIECES, Asking({"least_width": " "}))["least_width"] is None


def test_every_field_in_trouble_is_named_at_once():
    with pytest.raises(InvalidInput) as refused:
        read(PIECES, Asking({"cloth_width": "36 banana", "piece_width": "1/0", "may_turn": "perhaps", "colour": "red"}))
    sentences = refusals(refused.value, PIECES, Asking({}))
    assert set(sentences) == {"cloth_width", "piece_width", "may_turn", "colour"}
    assert sentences["cloth_width"].startswith("Cloth width: ")
    assert "cloth_width" in sentences["colour"]


def test_bare_numbers_follow_the_ruler_in_hand():
    assert read(PIECES, Asking({"cloth_width": "60"}, wanted_ruler="in"))["cloth_width"] == 60 * F("25.4")
    assert read(PIECES, Asking({"cloth_width": "60"}, wanted_ruler="cm"))["cloth_width"] == 600


def test_an_unknown_ruler_is_answered_with_those_there_are():
    with pytest.raises(ValueError, match="in 1/16"):
        Asking({}, wanted_ruler="cubit").ruler  # noqa: B018 - reading it is what raises
    with pytest.raises(ValueError, match="in 1/16"):
        Asking({}, wanted_ruler="in 1/7").ruler  # noqa: B018 - reading it is what raises


def test_values_that_cannot_go_together_are_refused_at_their_blank():
    with pytest.raises(InvalidInput) as refused:
        answer(PIECES, Asking({"piece_width": "9 m"}))
    sentence = filled(refused.value.sentences["piece_width"], PIECES, Asking({}).ruler)
    assert "900 cm" in sentence and "smaller piece" in sentence
