"""What a lay plan advises: one change before anything is bought, what a rule costs, near misses, what to buy."""

import json
import re

import pytest

from calculators.asking.answering import answer, filled
from calculators.asking.declaration import FieldText, Offer
from calculators.faces.page.answer_html import answer_html
from calculators.values.measure import CENTIMETRES, SIXTEENTHS, parse_length
from tests.catalogue.lay_plans import LAY, notes, of_washed_cloth


def test_says_what_keeping_to_the_grain_costs():
    assert "Keeping every piece to the grain costs 50 cm" in notes(answer(LAY, of_washed_cloth({"aim": "shortest"})))


def test_says_what_a_repeat_and_one_way_cloth_cost():
    matched = {"pieces": "Napkin | 46 cm | 46 cm | 12 | no | matched", "repeats": "64 cm | 50 cm", "aim": "shortest"}
    assert "Matching the repeat costs" in notes(answer(LAY, of_washed_cloth(matched)))
    one_way = {
        "pieces": "Mat | 30 cm | 70 cm | 8 | yes",
        "cloths": "Velvet | 143 cm | 300 cm | 1 | yes",
        "aim": "shortest",
    }
    assert "The one-way cloth costs" in notes(answer(LAY, of_washed_cloth(one_way)))


def test_tells_of_near_misses_and_they_are_true():
    typed = {"cloths": "Linen | 150 cm | 320 cm", "pieces": "Napkin | 46 cm | 46 cm", "skew": "0"}
    reply = answer(LAY, of_washed_cloth(typed))
    assert "Cloth 4 cm longer would give 3 more pieces" in notes(reply)
    assert "“Napkin” 0.6 cm shorter, 45.4 cm, would give 3 more pieces" in notes(reply)
    assert answer(LAY, of_washed_cloth({**typed, "cloths": "Linen | 150 cm | 324 cm"})).results["count"] == 21
    assert answer(LAY, of_washed_cloth({**typed, "pieces": "Napkin | 46 cm | 45.4 cm"})).results["count"] == 21


@pytest.mark.parametrize("ruler", ["cm", "in"])
@pytest.mark.parametrize(
    ("width", "length", "piece_width", "piece_length", "gap"),
    [
        ("60 in", "179 in", "18 in", "22 1/2 in", "0"),
        ("60 in", "90 1/4 in", "19 in", "15 1/8 in", "1/8 in"),
        ("58 7/8 in", "3 yd 4 in", "20 in", "22 11/16 in", "0"),
        ("150 cm", "320 cm", "46 cm", "46 cm", "0"),
        ("147.3 cm", "211.9 cm", "37.4 cm", "43.2 cm", "3 mm"),
    ],
)
def test_a_near_miss_is_the_largest_piece_the_ruler_shows_that_gives_the_extra_pieces(
    width, length, piece_width, piece_length, gap, ruler
):
    """Counted by hand: whole rows and whole columns of one size, at the size that is said and one division above it."""
    typed = {
        "cloths": f"Linen | {width} | {length}",
        "pieces": f"Towel | {piece_width} | {piece_length}",
        "gap": gap,
        "selvedge": "0",
        "end_loss": "0",
        "skew": "0",
    }
    asking = of_washed_cloth(typed, wanted_ruler=ruler)
    wide, long, across, along, lost = (
        parse_length(each, asking.ruler.unit) for each in (width, length, piece_width, piece_length, gap)
    )

    def count(piece_across, piece_along):
        return ((wide + lost) // (piece_across + lost)) * ((long + lost) // (piece_along + lost))

    reply = answer(LAY, asking)
    assert reply.results["count"] == count(across, along)
    found = re.findall(
        r"“Towel” (?:about )?([^,]+) (shorter|narrower), ([^,]+), would give (\d+) more piece",
        notes(reply, asking.ruler),
    )
    assert found
    step = asking.ruler.step_mm
    for by, way, said, more in found:
        size = parse_length(said, asking.ruler.unit)  # no “about”: the very division to lay out
        assert (
            asking.ruler.read(size) == size
            and 0 <= parse_length(by) - ((along if way == "shorter" else across) - size) < step
        )
        sizes = [(across, each) if way == "shorter" else (each, along) for each in (size, size + step)]
        assert count(*sizes[0]) == reply.results["count"] + int(more) > count(*sizes[1])


def test_an_eighth_of_an_inch_shorter_is_said_where_eight_lengths_then_fit_exactly():
    typed = {
        "cloths": "Linen | 60 in | 179 in",
        "pieces": "Towel | 18 in | 22 1/2 in",
        "selvedge": "0",
        "end_loss": "0",
        "skew": "0",
    }
    said = notes(answer(LAY, of_washed_cloth(typed, wanted_ruler="in")), SIXTEENTHS)
    assert "“Towel” 1/8 in shorter, 22 3/8 in, would give 3 more pieces." in said  # 8 × 22 3/8 = 179
    assert "Cloth 1 in longer would give 3 more pieces." in said  # 8 × 22 1/2 = 180


TIGHT = {
    "cloths": "Linen | 140 cm | 300 cm",
    "pieces": "Napkin | 40 cm | 40 cm | 10; | | | | ; Placemat | 35 cm | 48 cm | 6; Runner | 42 cm | 150 cm | 1",
}


def test_before_it_says_buy_it_says_which_one_change_would_fit_the_order():
    reply = answer(LAY, of_washed_cloth(TIGHT))
    (offer,) = (note for note in reply.notes if isinstance(note, Offer))
    assert filled(offer, LAY, CENTIMETRES) == "Cut in strips along the cloth: all 17 fit." and offer.sets == (
        FieldText("strips", "along"),
    )
    assert "buy" not in notes(reply) and "longer" not in notes(reply) and "costs" not in notes(reply)
    changed = answer(LAY, of_washed_cloth({**TIGHT, **{each.field: each.text for each in offer.sets}}))
    assert changed.results["count"] == 17 and not any(isinstance(note, Offer) for note in changed.notes)


def test_the_row_that_must_turn_is_found_even_below_an_empty_one():
    typed = {
        "cloths": "Linen | 100 cm | 60 cm",
        "selvedge": "0",
        "end_loss": "0",
        "skew": "0",
        "pieces": "Square | 30 cm | 30 cm | 2; | | | ; Band | 100 cm | 30 cm | 1; Towel | 30 cm | 40 cm | 1",
    }
    reply = answer(LAY, of_washed_cloth(typed))
    (offer,) = (note for note in reply.notes if isinstance(note, Offer))
    assert filled(offer, LAY, CENTIMETRES) == "Let “Towel” turn: all 4 fit." and offer.sets == (
        FieldText("pieces", "yes", 3, "may_turn"),
    )
    (button,) = (
        node
        for part in answer_html(LAY, reply, of_washed_cloth(typed))
        for node in part.iter("button")
        if node.get("class") == "offer"
    )
    assert json.loads(button.get("data-sets")) == [["pieces", "yes", 3, 4]] and button.get("hidden") is not None


def test_says_how_much_to_buy_for_what_does_not_fit():
    reply = answer(
        LAY, of_washed_cloth({"cloths": "Linen | 150 cm | 100 cm", "pieces": "Napkin | 46 cm | 46 cm | 9"})
    )  # one row, an end off at each side and the slant
    assert (
        "The order is larger than the cloth. For the rest, buy 50 cm of Linen; in one length with this cloth, 42 cm "
        "more would do." in notes(reply)
    )  # 142 = 3 × 46 + 4
    assert reply.results["count"] == 6
