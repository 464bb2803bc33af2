"""What the calculator of curtains begins with, says, and asks again."""

from dataclasses import replace
from fractions import Fraction as F
from math import ceil
from random import Random

import pytest

from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import InvalidInput, Onward
from calculators.asking.site_method import site_method
from calculators.catalogue import calculator_named
from calculators.drawing.curtain import curtain_laid_flat
from calculators.faces.page.plain import refusals
from tests.any_numbers import any_numbers
from tests.catalogue.test_every_calculator import assert_is_drawn_on_its_sheet

CALCULATOR = calculator_named("curtains")
PLAIN = {
    "rod": "200 cm", "curtains": "2", "drop": "240 cm", "fullness": "2", "side_return": "10 cm", "overlap": "10 cm",
    "cloth_width": "140 cm", "measured": "trimmed", "side_hem": "3 cm", "lower_hem": "10 cm", "heading": "5 cm",
    "seam_allowance": "1 cm", "change_length": "0", "change_width": "0", "end_loss": "1 cm", "skew": "0",
    "sold_in": "10 cm",
}  # fmt: skip


def said(typed, ruler="cm", method=None):
    asking = Asking({**PLAIN, **typed}, wanted_ruler=ruler, method=method or site_method())
    reply = answer(CALCULATOR, asking)
    return " ".join(
        filled(phrase, CALCULATOR, asking.ruler) for phrase in (reply.spoken, *reply.notes, *reply.working)
    ), reply.results


def asked_again(typed):
    asking = Asking({**PLAIN, **typed})
    with pytest.raises(InvalidInput) as error:
        answer(CALCULATOR, asking)
    return refusals(error.value, CALCULATOR, asking)


def begins_with(name, ruler="cm", **tables):
    method = site_method()
    return Asking({}, wanted_ruler=ruler, method=replace(method, tables={**method.tables, **tables})).text(
        CALCULATOR.field(name)
    )


def test_the_blanks_begin_in_round_figures_of_the_ruler_and_with_the_house_method():
    names = (
        "rod",
        "drop",
        "overlap",
        "lower_hem",
        "sold_in",
        "side_hem",
        "seam_allowance",
        "cloth_width",
        "change_length",
        "change_width",
        "side_turn",
    )
    assert [begins_with(name) for name in names] == [
        "180 cm",
        "220 cm",
        "8 cm",
        "10 cm",
        "10 cm",
        "2 cm",
        "1 cm",
        "150 cm",
        "−4.8 %",
        "−2.4 %",
        "",
    ]
    assert [begins_with(name, "in") for name in names] == [
        "72 in",
        "86 in",
        "3 in",
        "4 in",
        "1/8 yd",
        "3/4 in",
        "3/8 in",
        "60 in",
        "−4.8 %",
        "−2.4 %",
        "",
    ]


def test_a_cloth_without_a_readable_wash_test_begins_with_no_change():
    linen = {"cloth": "Washed linen, medium"}
    assert (
        begins_with("change_length", cloths=())
        == begins_with("change_length", cloths=(linen,))
        == begins_with("change_length", cloths=({**linen, "change_length": "some"},))
        == "0"
    )
    assert (
        begins_with(
            "change_length", cloths=({"cloth": "Lawn", "change_length": "−9 %"}, {**linen, "change_length": "−3"})
        )
        == "−3 %"
    )


def test_two_curtains_worked_by_hand():
    """2 × 200 + 2 × 10 + 10 = 430; 215 each; 2 × 140 − 2 − 4 × 3 = 266, of 1.5 widths only 196; 4 × 265 + 2 = 1062,
    sold as 1070."""
    text, results = said({})
    assert (results["widths_each"], results["widths"], results["cut_drop"], results["length"], results["buy"]) == (
        2,
        4,
        2650,
        10_620,
        10_700,
    )
    assert results["reached"] == F(2 * 2660 - 300, 2000) and results["cut_unwashed"] is None
    assert (
        "**4 widths**, 2 a curtain, cut 265 cm long. **Buy 10.7 m** for fullness 2.51." in text
        and "200 cm × 2 + 30 cm = 430 cm" in text
    )


def test_the_two_ways_of_counting_are_told_apart():
    """Gathered, (200 + 30) × 2 = 460, 230 each: still 2 widths. With fullness 2.5: 530 ÷ 2 = 265, 2 widths; 575 ÷ 2 =
    287.5, 2.5 widths."""
    assert "gathered too, it comes to as many widths" in said({})[0]
    flat, flat_results = said({"fullness": "2.5"})
    gathered, results = said({"fullness": "2.5", "gathered": "gathered"})
    assert (flat_results["widths"], results["widths"], results["widths_each"]) == (4, 5, F(5, 2))
    assert (
        "gathered too, it takes 5 widths: ask which one" in flat
        and "added flat, it takes 4 widths: ask which one" in gathered
        and "(200 cm + 30 cm) × 2.5 = 575 cm" in gathered
    )
    assert "the other way" not in said({"side_return": "0", "curtains": "1"})[0]


def test_one_width_and_twelve():
    """60 + 2 × 10 = 80 cm: half a width gives 70 − 12 = 58, one 140 − 12 = 128. 12 × 140 − 11 × 2 − 12 = 1646, 11.5
    widths 70 less, 1576."""
    one, results = said({"rod": "60 cm", "curtains": "1", "fullness": "1"})
    assert (
        (results["widths"], results["widths_each"], results["finished_width"]) == (1, 1, 1280)
        and one.startswith("**1 width**, cut 265 cm long.")
        and ": 1 width, 0 joins, 140 cm before hemming" in one
    )
    twelve, results = said({"rod": "15.8 m", "curtains": "1", "fullness": "1", "side_return": "0"})
    assert (results["widths"], results["cut_width"], results["finished_width"]) == (12, 16_580, 16_460)
    assert "half width" not in twelve and said({"rod": "15.7 m", "curtains": "1", "fullness": "1", "side_return": "0"})[
        1
    ]["widths_each"] == F(23, 2)


def test_whole_widths_only():
    half, whole = (
        said({"widths_in": way, "rod": "260 cm"})[1] for way in ("half", "whole")
    )  # 275 each: 2.5 widths give 350 − 4 − 12 = 334
    assert (half["widths_each"], half["widths"], whole["widths_each"], whole["widths"]) == (F(5, 2), 5, 3, 6)
    assert (
        "outer side" in said({"rod": "260 cm"})[0]
        and "outer side" not in said({"rod": "260 cm", "widths_in": "whole"})[0]
    )


def test_a_repeat_of_0_and_of_64():
    """265 cm goes up to 5 × 64 = 320; three such, 265 for the last, 64 to spare and 2 for the ends: 1291."""
    assert said({"pattern_repeat": "0"})[1] == said({})[1] == said({"spare_repeats": "9"})[1]
    text, results = said({"pattern_repeat": "64 cm"})
    assert (results["cut_drop"], results["length"], results["buy"]) == (3200, 12_910, 13_000)
    assert "3 × 320 cm and 265 cm for the last, 1 repeat to spare" in text and "trim 55 cm off each" in text
    assert said({"pattern_repeat": "64 cm", "spare_repeats": "0"})[1]["length"] == 12_270


def test_a_long_drop():
    """14 + 0.25 m, four times, and 2 cm."""
    assert said({"drop": "14 m"})[1]["length"] == 4 * 14_250 + 20


def test_turns_of_their_own():
    """Single hems: sides 2 × 3, foot 10, so 140 − 6 and 240 + 5 + 10."""
    _, results = said({"side_turn": "0", "lower_turn": "0"})
    assert (results["finished_width"], results["cut_drop"]) == (2780 - 60, 2550)
    _, results = said({"side_hem": "0", "lower_hem": "0"})
    assert (results["finished_width"], results["cut_drop"]) == (2780, 2450)


def test_the_wash_is_allowed_for_both_ways():
    """140 cm less 5 % is 133: 2 widths 266 − 2 − 12 = 252. 265 ÷ 0.96 = 276.04 cm unwashed."""
    text, results = said({"change_length": "−4", "change_width": "−5"})
    assert (
        results["finished_width"] == 2520 and results["cut_drop"] == 2650 and results["cut_unwashed"] == F(265_000, 96)
    )
    assert (
        "cut about 276.1 cm long from unwashed cloth, or 265 cm from washed." in text.partition("Buy")[0]
    )  # whoever reads the sentence alone cuts long enough
    assert "unwashed" not in said({})[0].partition("Buy")[0]
    grown, same = said({"change_length": "+4", "change_width": "+5"})
    assert same == said({})[1] and "Growing is not counted on" in grown


def test_cloth_in_hand():
    """Four widths take 1062. Three give 1.5 widths a curtain: 196 each, (392 − 30) ÷ 200 = 1.81. Two give 128 each:
    (256 − 30) ÷ 200 = 1.13."""
    text, results = said({"cloth_in_hand": "11 m"})
    assert "enough, with 38 cm over" in text and (results["widths_in_hand"], results["fullness_in_hand"]) == (
        4,
        F("2.51"),
    )
    text, results = said({"cloth_in_hand": "10 m"})
    assert (
        "lacks 62 cm: its 3 widths, shared out evenly, would come to fullness 1.81, short of the 2 wanted." in text
        and results["fullness_in_hand"] == F("1.81")
    )
    assert said({"cloth_in_hand": "6 m"})[1]["fullness_in_hand"] == F("1.13")
    text, results = said({"cloth_in_hand": "3 m"})
    assert "its 1 width would not cover the rod, even flat" in text and results["fullness_in_hand"] is None
    assert "does not give one width" in said({"cloth_in_hand": "2 m"})[0]


def test_a_little_less_fullness_that_saves_cloth_is_named():
    """Fullness 2.6 wants 275 each, 2 widths give 266: fullness 2.51; 5 × 265 + 2 = 1327, sold as 1330, against 1070."""
    text, results = said({"fullness": "2.6"})
    assert (
        results["widths"] == 5
        and "With 4 widths the fullness would be 2.51, a little short of 2.6, and 260 cm less to buy." in text
    )
    assert "a little short" not in said({})[0]
    assert [row["laid"] for row in results["other_counts"]] == ["2 a curtain", "2.5 a curtain, as now", "3 a curtain"]
    assert [(row["widths_each"], row["widths"], row["buy"]) for row in results["other_counts"]] == [
        (2, 4, 10_700),
        (F(5, 2), 5, 13_300),
        (3, 6, 16_000),
    ]


def test_other_counts_all_cover_the_rod():
    assert [row["widths_each"] for row in said({"fullness": "1", "rod": "300 cm"})[1]["other_counts"]] == [F(3, 2), 2]


def test_an_overlap_under_that_of_the_specification_is_named():
    """UFGS 12 22 00: at least 3 in."""
    assert (
        "UFGS 12 22 00" in said({"overlap": "7.6 cm"})[0]
        and "UFGS" not in said({"overlap": "3 in"})[0]
        and "UFGS" not in said({"overlap": "0", "curtains": "1"})[0]
    )


def test_cloth_is_bought_in_metres_or_in_yards():
    """4 × 104 + 2 in = 418 in = 11.61 yd, in eighths 11 5/8; a step of 10 cm is no part of a yard."""
    inches = {"drop": "94 in", "heading": "2 in", "lower_hem": "4 in", "end_loss": "1 in"}
    assert (
        "**Buy 11 5/8 yd**" in said({**inches, "sold_in": "1/8 yd"}, "in")[0]
        and "**Buy about 11 3/4 yd**" in said({**inches, "sold_in": "10 cm"}, "in")[0]
    )
    assert "**Buy 10.7 m**" in said({"sold_in": "10 cm"})[0] and "**Buy 10.62 m**" in said({"sold_in": "1 cm"})[0]


def test_both_rulers_tell_the_same_curtains():
    on_cm, on_inches = said({"pattern_repeat": "25 in"}), said({"pattern_repeat": "25 in"}, "in")
    assert on_cm[1] == on_inches[1] and "317.5 cm" in on_cm[0] and "125 in" in on_inches[0]


@pytest.mark.parametrize(
    ("typed", "field", "says"),
    [
        ({"side_hem": "97.5 cm", "fullness": "1.8"}, "side_hem", "on a curtain 195 cm wide"),
        ({"lower_hem": "80 cm", "drop": "70 cm"}, "lower_hem", "Write less than 70 cm"),
        ({"lower_turn": "11 cm"}, "lower_turn", "Turn at most 10 cm"),
        ({"side_turn": "3.1 cm"}, "side_turn", "Turn at most 3 cm"),
        ({"cloth_width": "4 cm", "measured": "trimmed"}, "seam_allowance", "half a width of 4 cm"),
        ({"cloth_width": "5 cm", "measured": "trimmed"}, "cloth_width", "this narrow"),
    ],
)
def test_what_cannot_be_sewn_is_asked_again(typed, field, says):
    sentences = asked_again(typed)
    assert set(sentences) == {field} and says in sentences[field]


def test_several_troubles_are_told_at_once():
    assert set(
        asked_again(
            {
                "side_turn": "4 cm",
                "lower_turn": "12 cm",
                "seam_allowance": "5 cm",
                "cloth_width": "12 cm",
                "measured": "trimmed",
            }
        )
    ) == {"side_turn", "lower_turn", "seam_allowance"}


def test_the_slant_of_the_ends_is_taken_off_before_the_wash_as_a_lay_plan_takes_it():
    """4 × 265 + 2 + 2 cm = 1064 cm; of cloth that loses 5 %: (4 × 265 + 4) ÷ 0.95 = 1120 cm."""
    assert said({"skew": "2 cm"})[1]["length"] == 10_640
    assert said({"skew": "2 cm", "change_length": "−5"})[1]["length"] == 11_200


def test_a_single_width_matches_no_other_and_is_cut_as_long_as_it_must_be():
    """5 + 240 + 20 = 265 cm however long the repeat is; 265 + 2 cm of cloth, and a repeat more where one is to
    spare."""
    alone = {
        "rod": "60 cm",
        "curtains": "1",
        "fullness": "1.5",
        "side_return": "0",
        "pattern_repeat": "300 cm",
        "spare_repeats": "0",
    }
    text, found = said(alone)
    assert (found["widths"], found["cut_drop"], found["length"]) == (1, 2650, 2670)
    assert said({**alone, "spare_repeats": "1"})[1]["length"] == 5670
    assert "trim" not in text and "Begin every width" not in text


def test_what_a_patterned_width_loses_is_said_as_it_is():
    """5 × 53 = 265 cm: nothing to trim. 5 × 64 = 320: 55 cm, and the last width ends at 265 where no repeat is to
    spare."""
    fits, longer, tight = (
        said({"pattern_repeat": repeat, "spare_repeats": spare})[0]
        for repeat, spare in (("53 cm", "1"), ("64 cm", "1"), ("64 cm", "0"))
    )
    assert "same place of the pattern." in fits and "trim" not in fits
    assert "trim 55 cm off each" in longer and "last width" not in longer
    assert "Only 265 cm is counted for the last width" in tight


def test_half_a_width_that_is_bought_and_not_used_is_said():
    """One curtain of a rod of 95 cm: 190 cm and 12 of hems want 1.5 widths; two are bought."""
    one = said({"rod": "95 cm", "curtains": "1", "side_return": "0"})[0]
    assert "**2 widths**, 1.5 a curtain" in one and "Half a width is left over." in one
    assert "left over" not in said({})[0]


def test_no_join_is_spoken_of_where_nothing_is_joined():
    """12 curtains from halves of widths: half a width each, and not one join."""
    many = said(
        {
            "rod": "200 cm",
            "curtains": "12",
            "side_return": "0",
            "overlap": "0",
            "side_hem": "0",
            "cloth_width": "140 cm",
            "measured": "trimmed",
        }
    )[0]
    assert "0.5 a curtain" in many and "Join the half width" not in many


def test_less_fullness_is_offered_only_where_it_saves_cloth():
    tenths, steps = (said({"fullness": "2.55", "sold_in": step})[0] for step in ("10 cm", "10 m"))
    assert "less to buy" in tenths and "less to buy" not in steps


def test_a_side_hem_wider_than_what_is_drawn_of_a_wide_short_curtain_stays_on_its_sheet():
    typed = {"rod": "12 m", "curtains": "1", "drop": "10 cm", "side_hem": "50 cm", "lower_hem": "1 cm"}
    asking = Asking(typed)
    picture = curtain_laid_flat(answer(CALCULATOR, asking).drawn_from, asking.ruler)
    assert_is_drawn_on_its_sheet(picture.svg)


def on_to_one_of_them(typed, ruler="cm"):
    """The answer of the curtains, and what they take along to one of them as an article; None where it is none."""
    reply = answer(CALCULATOR, Asking(typed, wanted_ruler=ruler))
    return reply, next((note.carries for note in reply.notes if isinstance(note, Onward)), None)


@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_one_of_them_piece_by_piece_is_as_wide_and_cut_as_long(ruler):
    """The same numbers, told by the window and by the pieces: widths joined, finished width, cut drop."""
    chance, compared = Random(5), 0
    for _ in range(60):
        typed = {**any_numbers(CALCULATOR, chance), "pattern_repeat": "0"}
        try:
            reply, carried = on_to_one_of_them(typed, ruler)
            article = calculator_named("curtain")
            piece_by_piece = answer(article, Asking(carried or {}, wanted_ruler=ruler))
        except InvalidInput:
            carried = None
        if carried is not None:
            compared += 1
            width, cut = reply.results["finished_width"], reply.results["cut_drop"]
            assert piece_by_piece.results["finished_width"] == width
            pieces = piece_by_piece.drawn_from.pieces
            assert sum(piece.count for piece in pieces) == ceil(reply.results["widths_each"])
            assert {piece.length for piece in pieces} == {cut}
    assert compared >= 8


def test_what_is_no_such_article_does_not_lead_there():
    assert on_to_one_of_them({})[1]
    for typed in ({"side_hem": "0"}, {"heading": "0"}, {"seam": "selvedges"}, {"lower_turn": "0"}):
        assert on_to_one_of_them(typed)[1] is None, typed
