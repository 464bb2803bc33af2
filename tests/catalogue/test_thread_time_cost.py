"""What the calculator of thread, time and cost takes from a method, says, and asks again."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import InvalidInput
from calculators.asking.site_method import site_method
from calculators.batch.walk import BATCH, go
from calculators.catalogue import calculator_named
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.plain import refusals

CALCULATOR = calculator_named("thread-time-cost")


def said(typed, ruler="cm", method=None):
    asking = Asking(typed, wanted_ruler=ruler, method=method or site_method())
    reply = answer(CALCULATOR, asking)
    return " ".join(
        filled(phrase, CALCULATOR, asking.ruler) for phrase in (reply.spoken, *reply.notes, *reply.working)
    ), reply.results


def with_tables(**tables):
    method = site_method()
    return replace(method, tables={**method.tables, **tables})


def begins_with(name, method=None, ruler="cm"):
    return Asking({}, wanted_ruler=ruler, method=method or site_method()).text(CALCULATOR.field(name))


def test_the_blanks_begin_with_the_house_method():
    """30 + 10 + 5 + 15 = 60 min for the batch. For a piece 2 + 1 min, 3 min for each of four corners, 6.5 min for each
    of its 1.6 m of hem,
    4 min for each of its 1 1/3 drawn threads: 30.73 min. 46 − 2 × (1 + 2) = 40 cm."""
    begun = {
        name: begins_with(name)
        for name in (
            "minutes_batch",
            "minutes_piece",
            "rate",
            "price_cloth",
            "price_spool",
            "finished_width",
            "stitch",
            "mitre_seam",
        )
    }
    assert begun == {
        "minutes_batch": "60 min", "minutes_piece": "30.73 min", "rate": "€32.00", "price_cloth": "€18.50 per m",
        "price_spool": "€3.20", "finished_width": "40 cm", "stitch": "3 mm", "mitre_seam": "2.83 cm",
    }  # fmt: skip
    assert begins_with("finished_width", ruler="in") == "15 3/4 in"  # 18 − 2 × (3/8 + 3/4)
    assert begins_with("mitre_seam", ruler="in") == "1 1/16 in"  # 3/4 × √2 = 1.0607


def test_the_page_and_the_batch_tell_the_same_of_the_house():
    last = go(BATCH, {}, Asking({}))[-1]
    alone = Asking({})
    assert filled(last.answer.spoken, CALCULATOR, last.asking.ruler) == filled(
        answer(CALCULATOR, alone).spoken, CALCULATOR, alone.ruler
    )


def test_the_price_is_that_of_the_cloth_used_most_or_of_the_only_one():
    linen, other = (
        {"thing": "Washed linen, medium", "price": "18,50", "per": "yard"},
        {"thing": "Half linen", "price": "11", "per": "metre"},
    )
    assert begins_with("price_cloth", with_tables(prices=(other, linen)), "in") == "€18.50 per yd"
    assert begins_with("price_cloth", with_tables(prices=(other, linen))) == "€20.23 per m"  # 18.50 ÷ 0.9144
    assert begins_with("price_cloth", with_tables(prices=(other,))) == "€11.00 per m"
    assert begins_with("price_cloth", with_tables(prices=(other, {**other, "thing": "Lawn"}))) == ""
    assert (
        begins_with("rate", with_tables(prices=(other,)))
        == ""
        == begins_with("price_spool", with_tables(prices=(other,)))
    )


def test_the_price_of_cloth_is_shown_for_the_yard_on_an_inch_ruler_and_reckoned_as_the_house_wrote_it():
    """18.50 a metre is 16.9164 a yard, shown as 16.92; 10 m at 18.50 are 185, at 16.92 a yard they would be 185.04."""
    assert begins_with("price_cloth", ruler="in") == "€16.92 per yd"
    assert (
        said({"cloth_bought": "10 m"}, "in")[1]["cost_cloth"] == said({"cloth_bought": "10 m"})[1]["cost_cloth"] == 185
    )
    typed = {"price_cloth": "18.50 per m", "cloth_bought": "10 m"}
    assert (
        Asking(typed, wanted_ruler="in").text(CALCULATOR.field("price_cloth")) == "18.50 per m"
        and said(typed, "in")[1]["cost_cloth"] == 185
    )
    assert said({"price_cloth": "16.92", "cloth_bought": "10 m"}, "in")[1]["cost_cloth"] == F("16.92") * 10 / F(
        "0.9144"
    )
    emptied = {"price_cloth": " ", "cloth_bought": "10 m"}
    assert said(emptied, "in")[1]["cost_cloth"] == 185


def test_entries_of_a_method_that_cannot_be_read_are_passed_over():
    method = with_tables(
        prices=({"thing": "Hour", "price": "dear", "per": "hour"}, {"thing": "Hour", "price": "20", "per": "hour"}),
        steps=({"step": "Hem", "minutes": "soon", "for_each": "piece"}, {"step": "Cut"}),
    )
    assert (
        begins_with("rate", method),
        begins_with("minutes_piece", method),
        begins_with("minutes_batch", method),
    ) == ("€20.00", "15 min", "20 min")


def test_without_any_price_only_thread_and_time_are_told():
    text, results = said({}, method=with_tables(prices=()))
    assert results["total"] is results["each"] is results["one_more"] is None
    assert (
        "Not in the sum, for want of a price: the cloth, the thread, the time." in text
        and "for the batch**, " not in text
        and "One more piece" not in text
    )


def test_what_has_no_price_is_named_and_the_rest_is_added_up():
    typed = {
        "price_cloth": "10 per m",
        "cloth_bought": "2 m",
        "rate": "60",
        "minutes_batch": "0",
        "minutes_piece": "1 h 20",
        "pieces": "2",
        "other": "0,25",
    }
    text, results = said(typed, method=with_tables(prices=()))
    assert (results["cost_cloth"], results["cost_thread"], results["cost_time"], results["total"]) == (
        20,
        None,
        160,
        F("180.5"),
    )
    assert (
        "The largest part is the time: €160.00 of €180.50." in text
        and "for want of a price: the thread." in text
        and "for the batch** without the thread, " in text
        and "2 h 40 min" in text
    )


def test_an_emptied_price_is_that_of_the_house_again():
    assert said({"rate": " "})[1] == said({})[1] != said({"rate": "40"})[1]


def test_a_price_of_0_leaves_a_part_out_without_a_word():
    text, results = said({"rate": "0", "price_cloth": "10 per m", "cloth_bought": "2 m", "price_spool": "0"})
    assert (
        (results["cost_time"], results["total"]) == (0, 20)
        and "for want of a price" not in text
        and "The largest part is the cloth: €20.00 of €20.00." in text
    )


def test_both_rulers_tell_the_same_batch():
    """9144 mm are ten yards: at 10 a metre 91.44, and 10 a metre is 9.144 a yard, shown as 9.14."""
    typed = {
        "price_cloth": "10 per m",
        "cloth_bought": "9144 mm",
        "finished_width": "16 in",
        "finished_length": "16 in",
        "stitch": "1/8 in",
        "thickness": "1/16 in",
        "thread_end": "4 in",
        "mitre_seam": "1 in",
        "spool": "100 yd",
    }
    on_cm, on_inches = said(typed), said(typed, "in")
    for name in ("stitching", "thread", "ratio", "spools", "cost_cloth", "total"):
        assert on_cm[1][name] == on_inches[1][name], name
    assert "914.4 cm at €10.00 per m = €91.44" in on_cm[0] and "360 in at €9.14 per yd = €91.44" in on_inches[0]


def test_a_piece_sewn_by_hand_needs_no_spool():
    text, results = said({"rows": "0", "corners": "0"})
    assert (results["thread"], results["spools"], results["bobbins"]) == (0, 0, 0)
    assert "Nothing is stitched by machine" in text and "Buy" not in text


@pytest.mark.parametrize(
    ("field", "bad"),
    [
        ("pieces", "0"), ("rows", "1.5"), ("corners", "-1"), ("minutes_batch", "soon"), ("minutes_piece", "1:80"),
        ("rate", "dear"), ("price_cloth", "18 per cm"), ("price_spool", "-3"), ("other", "1,250"),
        ("stitch", "0"), ("thickness", "6 cm"), ("waste", "101"), ("spool", "0"), ("spool", "90 cm"), ("bobbin", "0.5"),
        ("thread_end", "2 m"), ("mitre_seam", "6 m"), ("finished_width", "0"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_asked_again_at_its_blank(field, bad):
    asking = Asking({field: bad})
    with pytest.raises(InvalidInput) as error:
        answer(CALCULATOR, asking)
    assert set(refusals(error.value, CALCULATOR, asking)) == {field}


def test_a_bare_number_on_a_spool_is_metres_or_yards():
    assert said({"spool": "100"})[1]["spools"] == said({"spool": "100 m"})[1]["spools"] == 2
    spool = CALCULATOR.field("spool").kind
    on_inches = Asking({}, wanted_ruler="in").ruler
    assert spool.parse("100", on_inches) == 91_440 and spool.write_out("100", on_inches) == "100 yd"


def test_minutes_and_thread_follow_the_corners_of_the_piece():
    """18.73 min and 3 for a corner: 36.73 min with six, 18.73 with none; what is written by hand stands. Folded corners
    take time but no seam:
    16 seams of 2.83 cm and 16 × 4 ends fewer than with four mitred ones on four pieces."""
    minutes = CALCULATOR.field("minutes_piece")
    assert [Asking({"corners": text}).text(minutes) for text in ("6", "0", " 4 ", "many")] == [
        "36.73 min",
        "18.73 min",
        "30.73 min",
        "15 min",
    ]
    assert said({"corners": "6", "pieces": "1"})[1]["time"] == 60 + F("36.73")
    assert said({"corners": "6", "pieces": "1", "minutes_piece": "10 min"})[1]["time"] == 70
    four, folded = (
        said({"pieces": "4", "mitre_seam": seam, "thread_end": end})[1]
        for seam, end in (("2.83 cm", "10 cm"), ("0", "10 cm"))
    )
    assert four["stitching"] - folded["stitching"] == 16 * F("28.3") and folded["time"] == four["time"]
    assert four["thread"] - folded["thread"] == F("1.15") * (16 * F("28.3") * four["ratio"] + 16 * 4 * 100)


def test_a_side_that_is_not_hemmed_takes_no_thread():
    two_sides = said(
        {"pieces": "1", "finished_width": "40 cm", "finished_length": "1 m", "sides_across": "0", "corners": "0"}
    )
    assert said({"pieces": "1", "sides_along": "0", "sides_across": "0", "corners": "0"})[1]["thread"] == 0
    assert two_sides[1]["stitching"] == 2000 and "along the edge of 0 × 40 cm + 2 × 100 cm" in two_sides[0].replace(
        "\N{NO-BREAK SPACE}", " "
    )


def test_in_a_batch_a_selvedge_kept_leaves_one_side_and_two_corners_out():
    """Cut 46 cm; one side as it is: 46 − 3 = 43 cm wide and 40 cm long. Edge 2 × 43 + 40 = 126 cm, two seams of 2 × √2
    cm; 3 + 2 × 3 + 1.26 × 6.5 + 4/3 × 4 = 22.52 min."""
    last = go(BATCH, {"finished-size": {"hem_left": "0"}, "order": {"ordered": "1"}}, Asking({}))[-1]
    assert (last.asking.taken["sides_along"], last.asking.taken["sides_across"], last.asking.taken["corners"]) == (
        1,
        2,
        2,
    )
    assert last.answer.results["stitching"] == pytest.approx(1260 + 2 * 20 * 2**0.5, abs=1e-3)
    assert last.answer.results["time"] == 60 + F("22.52")


def test_at_the_end_of_the_batch_it_takes_over_what_the_steps_before_know():
    """24 ordered and 1 to spare; 46 − 2 × (1 + 2.5) = 39 cm; the seam of a square mitre is the hem × √2."""
    typed = {
        "order": {"ordered": "24", "spare": "1"},
        "finished-size": {"hem": "2.5 cm"},
        "wash-test": {"cloth_length": "5 m"},
    }
    last = go(BATCH, typed, Asking({}))[-1]
    taken = last.asking.taken
    assert last.calculator is CALCULATOR and last.answer
    assert (taken["pieces"], taken["finished_width"], taken["finished_length"], taken["cloth_bought"]) == (
        25,
        390,
        390,
        5000,
    )
    assert taken["mitre_seam"] == pytest.approx(25 * 2**0.5)
    assert last.answer.results["cost_cloth"] == 5 * F("18.5") * 9 / 10  # 9 rows of three, of the 10 that 5 m give
    assert last.answer.results["stitching"] == pytest.approx(25 * (4 * 390 + 4 * 25 * 2**0.5), abs=1e-3)


def notes_of(typed, method, kind=""):
    asking = Asking(typed, method=method.for_kind(kind) if kind else method)
    return " ".join("".join(each.itertext()) for each in answer_html(CALCULATOR, answer(CALCULATOR, asking), asking))


def test_minutes_that_count_for_some_kinds_only_are_named_where_no_kind_is():
    told = (
        "The minutes are those that every kind of piece takes. Not in them: “Sew on the loop” (Tea towel). Name "
        "the "
        "kind in a batch, and its own are counted."
    )
    assert told in notes_of({}, site_method())
    assert told in notes_of({"minutes_piece": "12 min"}, site_method())
    for typed, kind in (({"minutes_piece": "12 min", "minutes_batch": "5 min"}, ""), ({}, "tea towel"), ({}, "napkin")):
        assert "Not in them" not in notes_of(typed, site_method(), kind)
    assert "Not in them" not in notes_of(
        {}, with_tables(steps=[{"step": "Cut", "minutes": "3 min", "for_each": "piece"}])
    )
