"""The work ticket says what the calculators answer, in every unit and for batches of any size."""

from fractions import Fraction as F

import pytest

from calculators.asking.answering import Asking, answer
from calculators.asking.site_method import site_method
from calculators.batch.walk import BATCH, go
from calculators.catalogue import calculator_named
from calculators.drawing.cloth import cloth_with_pieces
from calculators.ticket.batch import NoTicketYet, batch_of
from calculators.ticket.care import CORNER_STEPS, corner_care
from calculators.ticket.marking import markings
from calculators.ticket.settings import machine_settings, tolerances
from calculators.ticket.steps import ONCE, ticket_steps
from calculators.trade.trade_rules import brief
from tests.batch.batches import NAPKINS


def batch(typed=NAPKINS, ruler="cm", cloth=""):
    method = site_method()
    return batch_of(go(BATCH, typed, Asking({}, method=method, wanted_ruler=ruler)), method, cloth)


def told(made):
    return {
        step.key: " ".join(phrase.filled(made.ruler) for phrase in step.instructions) for step in ticket_steps(made)
    }


def test_the_steps_come_in_working_order():
    assert [step.key for step in ticket_steps(batch())] == [
        "wash", "straighten", "measure", "mark", "cut", "turn", "hem", "mark-mitres", "pin", "stitch", "trim",
        "turn-out", "edge-stitch", "press", "check",
    ]  # fmt: skip


def test_the_numbers_of_a_worked_batch():
    """Arithmetic on 110 × 252 cm: 3 × 7 pieces of 36 cm, 29 cm finished; common practice, no source: 2.5 cm hem, marks
    at 5 cm, about 3.5 cm to the crossing."""
    words = told(batch())
    assert (
        "252 cm; across, selvedge to selvedge, 110 cm" in words["measure"]
        and "less than 252 cm by 108 cm" in words["measure"]
    )
    assert "must read 252 cm; count 3 across × 7 along: 21 pieces." in words["mark"]
    assert "at 7 marks. Then cut each strip at 3 cross marks. Each piece is 36 cm by 36 cm" in words["cut"]
    assert "Turn 1 cm " in words["turn"] and "never push" in words["turn"]
    assert "2.5 cm deep" in words["hem"]
    assert "Mark 5 cm on both edges" in words["mark-mitres"] and "about 3.5 cm" in words["mark-mitres"]
    assert "29 cm by 29 cm" in words["check"]


@pytest.mark.parametrize("ruler", ["cm", "in 1/32"])
def test_every_number_is_the_calculators_own(ruler):
    made = batch({"finished-size": {"hem": "1 in"}, "mitre-marks": {"seam_allowance": "1/4 in"}}, ruler)
    words, shown = (
        told(made),
        lambda name, result: calculator_named(name).kinds[result].show(made(name, result), made.ruler),
    )
    for key, name, results in (
        ("measure", "usable-cloth", ("usable_length", "full_width")),
        ("cut", "finished-size", ("cut_width", "cut_length")), ("hem", "finished-size", ("hem",)),
        ("mark-mitres", "mitre-marks", ("mark_1", "half_line")), ("trim", "mitre-marks", ("seam_allowance",)),
        ("check", "finished-size", ("finished_width", "finished_length")),
    ):  # fmt: skip
        for result in results:
            assert shown(name, result) in words[key], (key, result)


@pytest.mark.parametrize(
    ("after_length", "after_width", "said"),
    [
        ("47 cm", "48 cm", "it shrinks 6 % along and 4 % across."),
        ("48 cm", "50.5 cm", "it shrinks 4 % along and grows 1 % across."),
        ("50 cm", "49 cm", "it keeps its size along and shrinks 2 % across."),
        ("50 cm", "50 cm", "it keeps its size along and across."),
    ],
)
def test_what_the_wash_does_to_the_cloth_is_told_in_words(after_length, after_width, said):
    """Arithmetic on a square of 50 cm."""
    square = {"before_length": "50 cm", "before_width": "50 cm"}
    made = batch({"wash-test": {**square, "after_length": after_length, "after_width": after_width}})
    assert said in told(made)["wash"].replace("\N{NO-BREAK SPACE}", " ")


def test_marks_are_cumulative_from_one_end_with_a_check_at_the_far_end():
    along, across = markings(batch())
    assert along.readings == ("36", "72", "108", "144", "180", "216", "252") and across.readings == ("36", "72", "108")
    assert "last mark must read 252 cm, and the far end 252 cm" in along.check.filled(batch().ruler)
    assert not along.rounded


def test_marks_in_inches_are_rounded_each_from_its_own_place():
    """14 1/10 in on a ruler of sixteenths: the tenth mark reads 141 in exactly, not ten times a rounded piece."""
    made = batch(
        {
            "pieces-from-cloth": {
                "piece_width": "14.1 in",
                "piece_length": "14.1 in",
                "cloth_length": "141 in",
                "cloth_width": "60 in",
            }
        },
        "in 1/16",
    )
    along, _ = markings(made)
    assert along.rounded and along.readings[0] == "14 1/8" and along.readings[9] == "141"
    assert [made("pieces-from-cloth", "marks_along")[n] for n in (0, 9)] == [F(141, 10) * F(254, 10), 141 * F(254, 10)]


def test_care_is_what_the_corner_says_and_practice_says_so():
    made = batch()
    care = corner_care(made)
    assert (care["turn"].level, care["hem"].level, care["alignment"].level) == ("little", "much", "much")
    assert all(care[step].is_worked_out for step in CORNER_STEPS)
    by_key = {step.key: step.care for step in ticket_steps(made)}
    assert by_key["hem"] == care["hem"] and by_key["turn"] == care["turn"] and by_key["pin"] == care["alignment"]
    assert not by_key["straighten"].is_worked_out


@pytest.mark.parametrize("step", ["turn", "hem", "marks", "alignment", "stitching"])
def test_the_care_words_agree_with_the_calculator(step):
    """corner-care, asked with the same slip in this step alone: what shows at the inner corner."""
    labels = {
        "turn": "First turn",
        "hem": "Second fold",
        "marks": "Marks",
        "alignment": "Laying mark on mark",
        "stitching": "Stitching on the line",
    }
    asked = {"hem_1": "2.5 cm", "hem_2": "2.5 cm", "turn": "1 cm"} | {
        f"off_{each}": "1 mm" if each == step else "0" for each in labels
    }
    rows = answer(calculator_named("corner-care"), Asking(asked)).results["steps"]
    inner = next(row["inner"] for row in rows if row["step"] == labels[step])
    assert (corner_care(batch())[step].level == "little") == (inner < 0.05)


def test_settings_come_from_the_house_with_their_reasons():
    settings = {each.name: each for each in (*machine_settings(batch()), *tolerances(batch()))}
    line = next(line for line in site_method().tables["cloths"] if line["cloth"] == batch().cloth)
    assert (settings["needle"].text, settings["thread"].text) == (line["needle"], line["thread"])
    assert (
        settings["stitch_hem"].text == "3 mm" and settings["stitch_hem"].why == site_method().why["measures.stitch_hem"]
    )


def test_another_cloth_has_its_own_needle_and_an_unknown_one_none():
    assert machine_settings(batch(cloth="half linen, LIGHT"))[0].text == "80/12 universal"
    assert machine_settings(batch(cloth="Hemp"))[0].text == ""


def test_five_hundred_pieces():
    made = batch({"wash-test": {"cloth_length": "84 m"}, "bundles": {"bundle": "10"}})
    assert made.bundles.pieces >= 500
    assert len(made.bundles.boxes(15)) <= 15
    assert len(markings(made)[0].readings) == made("pieces-from-cloth", "along")


def test_fewer_pieces_than_the_cloth_gives_are_said():
    words = told(batch(NAPKINS | {"bundles": {"pieces": "12"}}))
    assert "at 4 marks" in words["cut"] and words["cut"].endswith(
        "Only 12 pieces of the 21 that fit are made: leave the rest of the cloth whole."
    )
    assert (
        "With less than 144 cm by 108 cm the pieces do not fit" in words["measure"]
    )  # 4 rows of 36 cm, of the 7 that fit
    one = told(batch(NAPKINS | {"bundles": {"pieces": "1"}}))
    assert (
        "at 1 mark. Then cut the strip at 1 cross mark" in one["cut"]
        and "With less than 36 cm by 36 cm" in one["measure"]
    )
    more = told(batch(NAPKINS | {"bundles": {"pieces": "30"}}))["cut"]
    assert (
        "gives 21 pieces; 9 more want a further length of it, as wide as this: 108 cm between straight ends." in more
    )  # 3 rows of 36 cm


@pytest.mark.parametrize("wanted", [1, 2, 3, 4, 7, 14, 15, 20])
@pytest.mark.parametrize("turned", [True, False])
def test_a_ticket_marks_draws_counts_and_cuts_what_is_wanted_and_no_more(wanted, turned):
    """By counting: the n-th piece lies in row (n − 1) ÷ across; marks end with the last row and column in use."""
    size = {"piece_width": "36 cm", "piece_length": "50 cm", "may_turn": "yes" if turned else "no"}
    made = batch(NAPKINS | {"pieces-from-cloth": size, "bundles": {"pieces": str(wanted)}})
    fit, across = made("pieces-from-cloth", "count"), made("pieces-from-cloth", "across")
    places = [(n // across, n % across) for n in range(min(wanted, fit))]
    rows, columns = (len({place[way] for place in places}) for way in (0, 1))
    in_last = sum(row == rows - 1 for row, _ in places)
    along, across_marks = markings(made)
    assert (len(along.readings), len(across_marks.readings)) == (rows, columns)
    words = told(made)
    pieces = f"{len(places)} piece" + ("" if len(places) == 1 else "s")
    assert f"{columns} across × {rows} along" in words["mark"] and f": {pieces}." in words["mark"]
    assert f"must read {along.readings[-1]} cm" in words["mark"] and f"at {rows} mark" in words["cut"]
    assert along.check.filled(made.ruler).startswith(f"Check: the last mark must read {along.readings[-1]} cm")
    for key in ("mark", "cut"):
        assert (f"only {in_last} in the last row" in words[key]) == (in_last < columns)
    drawn = cloth_with_pieces(made.grid, made.ruler)
    numbers = [
        each.text for each in drawn.svg.iter("text") if "label" in each.get("class", "").split() and each.text.isdigit()
    ]
    assert numbers == [str(n + 1) for n in range(len(places))]
    cuts = [each for each in drawn.svg.iter("polyline") if each.get("class") == "cut"]
    trims = sum(mark < made.grid.cloth_width for mark in made.grid.marks_across)
    assert len(cuts) == rows + trims


def test_what_is_left_of_a_cloth_is_not_counted_towards_a_further_length():
    """By hand: 18 of 38 fit, 2 across; the other 20 are 10 rows of 46 cm = 460 cm, not the 460 − 21.7 cm that one long
    cloth would take.
    Unwashed: (460 + 2 × 1 + 2) ÷ (47.8 ÷ 50) = 485.4 cm."""
    order = {
        "order": {"ordered": "38"},
        "wash-test": {
            "after_length": "47.8 cm",
            "after_width": "48.6 cm",
            "cloth_length": "4.6 m",
            "cloth_width": "132 cm",
        },
        "pieces-from-cloth": {"piece_width": "46 cm", "piece_length": "46 cm"},
    }
    cut = told(batch(order))["cut"]
    assert "gives 18 pieces; 20 more" in cut and "460 cm between straight ends" in cut and "about 485.4 cm" in cut
    by_hand = order | {"pieces-from-cloth": order["pieces-from-cloth"] | {"cloth_length": "435.7 cm"}}
    assert (
        "460 cm between straight ends" in told(batch(by_hand))["cut"] and "Unwashed" not in told(batch(by_hand))["cut"]
    )


def test_the_edge_stitch_is_told_as_it_stands_among_the_settings():
    assert "Stitch 2 mm from the inner edge" in told(batch())["edge-stitch"]
    assert "Stitch 1/16 in from the inner edge" in told(batch(ruler="in"))["edge-stitch"]


def test_what_the_pages_teach_of_a_row_of_stitches_stands_on_the_ticket():
    """A row that ends where it began laps it; no row is drawn into the plate where it starts."""
    words = told(batch())
    assert brief("lap") in words["edge-stitch"] and "1/2 in (13 mm)" in brief("lap")
    stitching = [step.key for step in ticket_steps(batch()) if {"stitch_seam", "stitch_hem"} & set(step.settings)]
    assert stitching == ["stitch", "edge-stitch"] and "threads" in brief("start-seam")
    assert [key for key in stitching if brief("start-seam") not in words[key]] == []


def test_sizes_written_down_as_they_can_be_used_ask_for_no_wash_and_no_trimming():
    by_hand = NAPKINS["pieces-from-cloth"] | {"cloth_width": "140 cm", "measured": "trimmed", "cloth_length": "320 cm"}
    words = told(batch({"pieces-from-cloth": by_hand}))
    assert "wash" not in words and "320 cm; across, from trimmed edge to trimmed edge, 140 cm" in words["measure"]
    assert (
        "trim" not in " ".join((words["straighten"], words["mark"], words["cut"])).lower()
        and "slant" not in words["straighten"]
        and "written down as it can be used" in words["straighten"]
    )
    half = told(
        batch({"pieces-from-cloth": NAPKINS["pieces-from-cloth"] | {"cloth_width": "140 cm", "measured": "trimmed"}})
    )
    assert "must measure" not in half["wash"] and "slant" in half["straighten"] and "Trim" not in half["cut"]


def test_selvedges_are_trimmed_after_the_cuts_across_and_marks_across_start_from_the_trimming_line():
    """By hand: 113 − 2 × 1.5 = 110 cm to use, 3 pieces of 36 cm; they want 3 × 36 + 2 × 1.5 = 111 cm of cloth."""
    made = batch(
        {
            "pieces-from-cloth": NAPKINS["pieces-from-cloth"] | {"cloth_width": "113 cm"},
            "usable-cloth": {"selvedge": "1.5 cm"},
        }
    )
    words = told(made)
    before_the_cut = " ".join(words[key] for key in list(words)[: list(words).index("cut")])
    assert "Trim 1.5" not in before_the_cut and "Keep the selvedges until every cut across is made" in words["mark"]
    assert (
        words["cut"].index("Across the whole width first, selvedges and all")
        < words["cut"].index("Trim 1.5 cm off at each selvedge")
        < words["cut"].index("then cut each strip")
    )
    assert (
        "across, selvedge to selvedge, 113 cm" in words["measure"]
        and "by 111 cm the pieces do not fit" in words["measure"]
    )
    across = markings(made)[1]
    assert across.origin == "the trimming line, 1.5 cm inside one selvedge" and across.readings == ("36", "72", "108")
    assert "the far trimming line 110 cm" in across.check.filled(made.ruler)


def test_a_cloth_that_the_house_knows_to_change_otherwise_is_named():
    """Hers may be the truer ones: both are told, and neither is written over the other."""
    other = "The house method has −7.5 % along and −4 % across for Loomstate linen, heavy: make sure which is right"
    assert other in told(batch({}, cloth="Loomstate linen, heavy"))["wash"]
    assert "make sure which" not in told(batch({}))["wash"]


def test_what_is_done_on_every_side_is_not_told_of_two():
    """The drawing of a corner has two edges, a napkin has four."""
    words = told(batch())
    assert [key for key in ("turn", "hem", "edge-stitch", "press") if "both edges" in words[key]] == []


def test_a_hem_without_a_turn_has_no_step_for_one():
    keys = [step.key for step in ticket_steps(batch(NAPKINS | {"finished-size": {"turn": "0", "hem": "2.5 cm"}}))]
    assert "turn" not in keys and "hem" in keys


def test_sides_with_a_hem_of_their_own_are_named():
    made = batch(NAPKINS | {"finished-size": {"turn": "1 cm", "hem": "2.5 cm", "hem_top": "4 cm"}})
    assert "The hem at the top is 4 cm." in told(made)["hem"]


def test_what_is_ticked_once_is_what_is_done_to_the_whole_cloth():
    assert {"wash", "straighten", "measure", "mark"} == ONCE
    assert {step.key for step in ticket_steps(batch())} >= ONCE


def test_every_sharp_or_hot_step_has_its_caution():
    cautions = {step.key: " ".join(step.cautions) for step in ticket_steps(batch())}
    for key, word in {
        "cut": "Blades",
        "trim": "Blades",
        "turn": "iron",
        "hem": "iron",
        "press": "iron",
        "pin": "Pins",
        "stitch": "Needle",
        "edge-stitch": "Needle",
    }.items():
        assert word in cautions[key]


@pytest.mark.parametrize(
    ("typed", "title", "word"),
    [
        ({"usable-cloth": {"selvedge": "36 banana"}}, "What can be used of it", "not a length"),
        ({"finished-size": {"turn": "3 cm", "hem": "2 cm"}}, "Turn, hem and finished size", "deeper than the hem"),
        ({"bundles": {"bundle": "0"}}, "Bundles for the ticket", "from 1"),
    ],
)
def test_a_batch_in_trouble_says_which_step_to_mend(typed, title, word):
    with pytest.raises(NoTicketYet, match=word) as error:
        ticket_steps(batch(typed))
    assert error.value.title == title
