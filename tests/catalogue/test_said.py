"""What calculators say of lengths that must fit, of cloth that is too small, and of measures that contradict each
other."""

import re
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import InvalidInput
from calculators.catalogue import calculator_named
from calculators.drawing.cloth import cloth_with_pieces
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.markup import html
from calculators.faces.page.plain import refusals
from calculators.trade.pieces import Grid
from calculators.values.measure import parse_length

LENGTH = r"(?:about )?(\d[\d.]*(?: \d+/\d+)? (?:cm|in))"


def said(name, typed, ruler="cm"):
    """All sentences of an answer, and the answer."""
    calculator, asking = calculator_named(name), Asking(typed, wanted_ruler=ruler)
    reply = answer(calculator, asking)
    return " ".join(
        filled(phrase, calculator, asking.ruler) for phrase in (reply.spoken, *reply.notes, *reply.working)
    ), reply.results


def asked_again(name, typed):
    calculator, asking = calculator_named(name), Asking(typed)
    with pytest.raises(InvalidInput) as error:
        answer(calculator, asking)
    return refusals(error.value, calculator, asking)


def lengths(pattern, text):
    found = re.search(pattern.replace("LENGTH", LENGTH), text)
    assert found, (pattern, text)
    return [parse_length(each) for each in found.groups()]


def not_more_than(pattern, text):
    """A length that a sentence says; nothing where it is under the finest division that is read."""
    read = re.search(pattern, text)[1]
    return F(0) if read.startswith("under ") else parse_length(read.removeprefix("about "))


def left_over(way, text):
    return not_more_than(rf"{way}: [^=]*= \d+ whole pieces, (.*?) left", text)


@given(
    st.integers(10_000, 30_000),
    st.integers(40_000, 49_999),
    st.sampled_from(["cm", "in", "cm 1/2", "in 1/2"]),
    st.sampled_from(["selvedges", "trimmed"]),
)
def test_no_sentence_says_more_than_there_is_where_something_must_fit(cloth, after, ruler, measured):
    typed = {
        "before_length": "500 mm",
        "after_length": f"{after / 100} mm",
        "before_width": "500 mm",
        "after_width": f"{after / 100} mm",
        "cloth_length": f"{cloth / 10} mm",
        "cloth_width": f"{cloth / 10} mm",
    }
    text, results = said("wash-test", typed, ruler)
    long, wide = lengths("in hand will be LENGTH by LENGTH once", text)
    assert long <= results["washed_length"] and wide <= results["washed_width"]

    text, results = said(
        "usable-cloth", {"full_width": f"{cloth / 10} mm", "folded_length": f"{cloth / 10} mm", "skew": "7 mm"}, ruler
    )
    assert (
        lengths("of skew = LENGTH", text)[0] <= results["usable_length"]
        and lengths("Width: .* = LENGTH", text)[0] <= results["usable_width"]
    )
    assert lengths("only LENGTH can be cut square", text)[0] <= results["usable_length"] - 7 * results[
        "usable_width"
    ] / F(cloth, 10)

    text, results = said(
        "pieces-from-cloth",
        {
            "cloth_width": f"{cloth / 10} mm",
            "cloth_length": f"{cloth / 10} mm",
            "measured": measured,
            "piece_width": "400 mm",
            "piece_length": "400 mm",
        },
        ruler,
    )
    assert results["usable_width"] == F(cloth, 10) - (
        30 if measured == "selvedges" and not ruler.startswith("in") else F(254, 10) if measured == "selvedges" else 0
    )
    if measured == "selvedges":
        assert lengths("Width to use: .* = LENGTH", text)[0] <= results["usable_width"]
    assert left_over("Across", text) <= results["left_width"] and left_over("Along", text) <= results["left_length"]
    words = cloth_with_pieces(
        Grid(F(cloth, 10), F(cloth, 10), F(400), F(400), False), Asking({}, wanted_ruler=ruler).ruler
    ).description
    assert not_more_than("Left over: (.*?) of length", words) <= F(cloth, 10) % 400 and lengths(
        "Cloth LENGTH long", words
    )[0] <= F(cloth, 10)


def test_a_wash_test_prints_a_working_that_can_be_worked_through():
    text, results = said("wash-test", {"before_length": "50 cm", "after_length": "47.6 cm", "needed_length": "300 cm"})
    assert "300 cm × 50 cm ÷ 47.6 cm = about 315.2 cm" in text
    assert results["cut_length"] == F(3000) * 500 / 476


def test_cloth_that_grew_is_not_counted_on():
    text, results = said(
        "wash-test",
        {
            "before_length": "50 cm",
            "after_length": "51 cm",
            "before_width": "50 cm",
            "after_width": "50.5 cm",
            "needed_length": "300 cm",
            "needed_width": "100 cm",
        },
    )
    assert (results["cut_length"], results["cut_width"]) == (3000, 1000)
    assert "grew both ways" in text and "all of the 300 cm needed" in text


def test_cloth_in_hand_that_is_too_small_is_named():
    typed = {
        "before_length": "50 cm",
        "after_length": "47.5 cm",
        "needed_length": "285 cm",
        "before_width": "50 cm",
        "after_width": "50 cm",
        "needed_width": "100 cm",
        "cloth_width": "100 cm",
    }
    assert (
        "not long enough for the 285 cm written as needed: it lacks 10 cm"
        in said("wash-test", typed | {"cloth_length": "290 cm"})[0]
    )
    assert "enough" not in said("wash-test", typed | {"cloth_length": "300 cm"})[0]


@pytest.mark.parametrize(("after", "wash_first"), [("48.52 cm", True), ("48.53 cm", False)])
def test_a_threshold_is_met_where_the_number_shown_meets_it(after, wash_first):
    """48.52 of 50 is −2.96 %, shown as −3 %; 48.53 is −2.94 %, shown as −2.9 %."""
    text, _ = said(
        "wash-test", {"before_length": "50 cm", "after_length": after, "before_width": "50 cm", "after_width": "50 cm"}
    )
    assert ("Wash all of this cloth" in text) == wash_first


def test_every_line_of_the_other_counts_says_first_what_it_is_about():
    """A phone shows one line under another, each behind its own first words."""
    calculator, asking = (
        calculator_named("pieces-from-cloth"),
        Asking({"cloth_width": "150 cm", "cloth_length": "320 cm", "piece_width": "46 cm", "piece_length": "46 cm"}),
    )
    kind, rows = calculator.result("other_counts").kind, answer(calculator, asking).results["other_counts"]
    assert [kind.cells(row, asking.ruler)[0] for row in rows] == [
        "2 across",
        "3 across, as now",
        "4 across",
        "5 across",
        "5 along",
        "6 along, as now",
        "7 along",
        "8 along",
    ]
    assert [(row["direction"], row["pieces"]) for row in kind.plain(rows)] == [
        (way, n) for way, counts in (("across", range(2, 6)), ("along", range(5, 9))) for n in counts
    ]
    page = "".join(html(each) for each in answer_html(calculator, answer(calculator, asking), asking))
    assert 'data-label="In all"' in page and 'data-label="Way"' not in page


def test_a_piece_longer_than_six_cloth_widths_is_drawn():
    drawn = cloth_with_pieces(Grid(F(300), F(2500), F(300), F(2400), False), Asking({}).ruler).svg
    numbers = [node.text for node in drawn.iter() if node.tag.endswith("text")]
    assert "1" in numbers and "240" in numbers


def test_the_remedy_is_one_that_helps():
    assert (
        "allow that"
        in asked_again(
            "pieces-from-cloth",
            {"cloth_width": "100 cm", "cloth_length": "200 cm", "piece_width": "150 cm", "piece_length": "50 cm"},
        )["piece_width"]
    )
    assert (
        "allow that"
        not in asked_again(
            "pieces-from-cloth",
            {"cloth_width": "100 cm", "cloth_length": "200 cm", "piece_width": "150 cm", "piece_length": "150 cm"},
        )["piece_width"]
    )
    assert set(
        asked_again(
            "usable-cloth",
            {"layers": "1", "extra_length": "0", "folded_length": "20 cm", "end_loss": "2 cm", "skew": "18 cm"},
        )
    ) == {"skew"}


def test_a_piece_may_not_have_to_be_larger_than_it_is():
    sentences = asked_again(
        "pieces-from-cloth",
        {"piece_width": "40 cm", "least_width": "41 cm", "piece_length": "40 cm", "least_length": "40 cm"},
    )
    assert set(sentences) == {"least_width"} and "40 cm" in sentences["least_width"]


@pytest.mark.parametrize("name", ["mitre-marks", "mitre-gauge", "corner-steps"])
def test_every_corner_refuses_what_cannot_be_folded_in_the_same_words(name):
    narrow = {"hem_1": "2 cm", "hem_2": "1 cm", "seam_allowance": "3 mm", "turn": "5 mm"}
    deep = asked_again(name, narrow | {"turn": "1.1 cm"})
    assert "at most 1 cm" in deep["turn"] and set(deep) == {"turn"}
    assert answer(
        calculator_named(name),
        Asking(
            narrow | {"turn": "1 cm", "edge_stitch": "1 mm"} if name == "corner-steps" else narrow | {"turn": "1 cm"}
        ),
    )
    assert set(asked_again(name, narrow | {"seam_allowance": "5 cm"})) == {"seam_allowance"}
    assert set(asked_again(name, narrow | {"hem_1": "8 cm", "hem_2": "1 cm", "angle": "150"})) == {"angle"}


def test_a_finished_size_goes_by_the_same_rule():
    assert set(asked_again("finished-size", {"hem": "1 cm", "hem_top": "0", "turn": "1.1 cm"})) == {"turn"}
    assert answer(calculator_named("finished-size"), Asking({"hem": "1 cm", "hem_top": "0", "turn": "1 cm"}))


def test_a_hem_gauge_speaks_of_hems_and_of_the_other_hem():
    text, _ = said(
        "mitre-gauge", {"gauge": "hem", "hem_1": "3 cm", "hem_2": "2 cm", "angle": "150", "seam_allowance": "5 cm"}
    )
    assert "every hem wrong" in text and "Print another for the 2 cm on edge 2" in text
    assert "another" not in said("mitre-gauge", {"gauge": "hem", "hem_1": "3 cm", "hem_2": "3 cm"})[0]


@pytest.mark.parametrize(
    ("off", "shown"), [(0.0, "exact"), (0.1, "under 1/64 in"), (0.45, "about 1/64 in"), (0.7, "about 1/32 in")]
)
def test_how_far_off_a_mark_is_is_not_made_to_look_worse(off, shown):
    ways = calculator_named("gauge-finder").result("ways").kind
    assert next(column.kind for column in ways.columns if column.name == "off_in").show(off, Asking({}).ruler) == shown
