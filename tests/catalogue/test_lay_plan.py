"""The lay plan as a maker meets it: what it refuses, what it says, and that its files carry the plan exactly."""

import csv
import io
import json
import re
import xml.etree.ElementTree as ET
from fractions import Fraction

import pytest
from shapely import unary_union
from shapely.geometry import box

from calculators.answering import Asking, answer, answers, filled
from calculators.catalogue import calculator_named
from calculators.declaration import AskAgain, Offer, Setting
from calculators.drawing import lines as line_styles
from calculators.drawing.lay_plan import bare, lay_plan, letter
from calculators.faces.answered import answered
from calculators.faces.markup import html
from calculators.faces.plain import plain_answer, refusals
from calculators.layplan import any_stage_value
from calculators.layplan.lay_check import lay_faults
from calculators.layplan.listed import exact
from calculators.walk import BATCH, go
from calculators.measure import CENTIMETRES, SIXTEENTHS, parse_length
from tests.catalogue.test_every_calculator import assert_is_drawn_on_its_sheet
from tests.sentences import is_one_message

LAY = calculator_named("lay-plan")
LARGE = {
    "cloths": "Linen | 150 cm | 60 m; Cotton | 140 cm | 30 m | 2",
    "pieces": "Napkin | 40 cm | 40 cm | 300 ; Placemat | 35 cm | 48 cm | 120 | yes; Runner | 45 cm | 150 cm | 20; Towel | 50 cm | 70 cm | 60 | yes",
}

SHORT = "Linen | 150 cm | 320 cm"


def notes(reply, ruler=CENTIMETRES):
    return " ".join(filled(note, LAY, ruler) for note in reply.notes)


@pytest.mark.parametrize(
    ("typed", "field", "part"),
    [
        ({"pieces": "Big | 200 cm | 450 cm | 1 | yes"}, "pieces", "however it lies"),
        ({"pieces": "Wide | 200 cm | 100 cm | 1"}, "pieces", "across"),
        ({"pieces": "Napkin | 46 cm | 46 cm | 1000000"}, "pieces", "from 1 to 1000"),
        ({"pieces": "Napkin | 46 cm | 46 cm | 1000; Other | 40 cm | 40 cm | 1"}, "pieces", "more than 1,000 pieces"),
        ({"pieces": "Dot | 2 cm | 2 cm | "}, "pieces", "more than 1,000 pieces"),
        ({"pieces": "Napkin | 46 cm | 46 cm | 0"}, "pieces", "from 1"),
        ({"pieces": "Napkin | 46 cm | 46 cm | -3"}, "pieces", "not a count"),
        ({"pieces": "Napkin | 0 | 46 cm | 3"}, "pieces", "too small"),
        ({"pieces": "Napkin | 46 cm | 46 cm", "aim": "buy"}, "pieces", "has no number"),
        ({"pieces": ""}, "pieces", "such as"),
        ({"cloths": "Linen | 150 cm"}, "cloths", "no length"),
        ({"cloths": "; ".join(["Linen | 150 cm | 3 m | 24"] * 2)}, "cloths", "more than 24"),
        ({"flaws": "500 cm | 10 cm | 5 cm | 5 cm"}, "flaws", "outside"),
        ({"flaws": "10 cm | 149 cm | 5 cm | 5 cm"}, "flaws", "outside"),
        ({"flaws": "10 cm | 10 cm | 5 cm | 5 cm | Silk"}, "flaws", "no cloth called"),
        ({"repeats": "0 | 30 cm"}, "repeats", "repeat of 0"),
        ({"repeats": "| | 5 cm"}, "repeats", "no distance"),
        ({"repeats": "30 cm | | | 5 cm"}, "repeats", "no distance across"),
        ({"repeats": "30 cm; 40 cm"}, "repeats", "more than one"),
        ({"repeats": "30 cm | | | | Silk"}, "repeats", "no cloth called"),
        ({"pieces": "Napkin | 46 cm | 46 cm | 3 | no | matched"}, "repeats", "no repeat"),
        ({"selvedge": "50 cm", "cloths": "Linen | 100 cm | 1 m"}, "selvedge", "leave nothing"),
        ({"pieces": "Tablecloth | 240 cm | 300 cm | | no | joined"}, "pieces", "Write how many"),
        ({"end_loss": "2.2 m"}, "end_loss", "leave nothing"),
        ({"skew": "2.9 m", "cloths": "Linen | 150 cm | 2.9 m"}, "skew", "slant by 290"),
        ({"aim": "buy", "strips": "along"}, "strips", "across"),
        ({"aim": "shortest", "strips": "sections"}, "strips", "across"),
    ],
)
def test_what_cannot_be_planned_gets_one_sentence_at_its_field(typed, field, part):
    with pytest.raises(AskAgain) as trouble:
        answer(LAY, Asking(typed))
    sentences = refusals(trouble.value, LAY, Asking(typed))
    assert set(sentences) == {field} and part in sentences[field] and is_one_message(sentences[field]), sentences


def test_says_that_no_plan_can_give_more_only_when_it_is_proven():
    sound = answer(LAY, Asking({"cloths": SHORT, "pieces": "Napkin | 46 cm | 46 cm"}))
    assert "No plan cut this way can give more." in notes(sound) and sound.results["most_pieces"] == sound.results["count"] == 18
    flawed = answer(LAY, Asking({"cloths": SHORT, "pieces": "Napkin | 46 cm | 46 cm", "flaws": "130 cm | 60 cm | 60 cm | 30 cm", "strips": "free"}))
    assert "No plan cut" not in notes(flawed) and "not ruled out" in notes(flawed)
    assert flawed.results["count"] < 18 and flawed.results["most_pieces"] == 18


SECTIONED = {"cloths": "Linen | 100 cm | 60 cm", "pieces": "Runner | 40 cm | 60 cm | 1; Napkin | 30 cm | 30 cm | 4", "selvedge": "0", "end_loss": "0", "skew": "0"}


def test_says_how_much_less_is_not_ruled_out_until_it_is_proven_that_nothing_is():
    pieces = "Cloth | 61 cm | 83 cm | 5; Napkin | 46 cm | 41 cm | 9; Runner | 37 cm | 97 cm | 4; Towel | 53 cm | 71 cm | 6; Mat | 31 cm | 43 cm | 8; Bag | 27 cm | 34 cm | 5"
    found = [each for each in answers(LAY, Asking({"cloths": "Linen | 150 cm", "pieces": pieces, "aim": "shortest"})) if each]
    gaps = [each.results["to_start_from"] - each.results["least_length"] for each in found]
    assert gaps[0] > gaps[-1] == 0
    for each, gap in zip(found, gaps):
        assert ("No plan cut this way can use less." in notes(each)) == (gap == 0)
        assert (f"no plan uses less: up to {gap / 10} cm less is not ruled out." in notes(each)) == (gap > 0)


def test_strips_may_be_cut_into_sections_and_those_into_pieces():
    strips, sections = (answer(LAY, Asking({**SECTIONED, "strips": way})) for way in ("across", "sections"))
    assert strips.results["count"] == 3 and "No plan cut this way that keeps every kind of piece can give more." in notes(strips)
    assert "Cut in strips along the cloth: all 5 fit." in notes(strips)
    assert sections.results["count"] == 5 and "Everything ordered is cut." in notes(sections)  # two napkins one behind the other
    assert lay_faults(sections.drawn_from.lays[0]) == []


@pytest.mark.parametrize("strips", ["sections", "free"])
def test_says_plainly_where_the_plan_is_cut_in_strips_after_all(strips):
    flawed = notes(answer(LAY, Asking({**SECTIONED, "strips": strips, "flaws": "5 cm | 90 cm | 5 cm | 5 cm"})))
    assert "This plan is cut in plain strips, stepping over what must stay free" in flawed
    assert "plain strips" not in notes(answer(LAY, Asking({**SECTIONED, "strips": strips})))
    assert "not along" in notes(answer(LAY, Asking({"aim": "shortest", "strips": "either"})))


def test_says_where_there_are_too_many_places_for_a_cut(monkeypatch):
    asked = Asking({**SECTIONED, "strips": "free"})
    assert "too many places" not in notes(answer(LAY, asked))
    monkeypatch.setattr(any_stage_value, "MOST_POSITIONS", 3)
    assert "This plan is cut in plain strips: there are too many places for a cut" in notes(answer(LAY, asked))


def test_says_what_keeping_to_the_grain_costs():
    assert "Keeping every piece to the grain costs 50 cm" in notes(answer(LAY, Asking({"aim": "shortest"})))


def test_says_what_a_repeat_and_one_way_cloth_cost():
    matched = {"pieces": "Napkin | 46 cm | 46 cm | 12 | no | matched", "repeats": "64 cm | 50 cm", "aim": "shortest"}
    assert "Matching the repeat costs" in notes(answer(LAY, Asking(matched)))
    one_way = {"pieces": "Mat | 30 cm | 70 cm | 8 | yes", "cloths": "Velvet | 143 cm | 300 cm | 1 | yes", "aim": "shortest"}
    assert "The one-way cloth costs" in notes(answer(LAY, Asking(one_way)))


def test_tells_of_near_misses_and_they_are_true():
    typed = {"cloths": "Linen | 150 cm | 320 cm", "pieces": "Napkin | 46 cm | 46 cm", "skew": "0"}
    reply = answer(LAY, Asking(typed))
    assert "Cloth 4 cm longer would give 3 more pieces" in notes(reply)
    assert "“Napkin” 0.6 cm shorter, 45.4 cm, would give 3 more pieces" in notes(reply)
    assert answer(LAY, Asking({**typed, "cloths": "Linen | 150 cm | 324 cm"})).results["count"] == 21
    assert answer(LAY, Asking({**typed, "pieces": "Napkin | 46 cm | 45.4 cm"})).results["count"] == 21


def test_the_same_cloth_gives_the_same_pieces_here_as_in_a_batch():
    """324 − 2 × 1 − 2 = 320 cm take 6 rows of 46 cm, 326 take 7: the slant of 2 cm makes the difference, and both tell it."""
    def here(length, **typed):
        return answer(LAY, Asking({"cloths": f"Linen | 150 cm | {length}", "pieces": "Napkin | 46 cm | 46 cm", **typed})).results["count"]

    def batch(length, **typed):
        stops = {stop.calculator.name: stop for stop in go(BATCH, {"usable-cloth": {"folded_length": length, "full_width": "150 cm", **typed}}, Asking({}))}
        return stops["pieces-from-cloth"].answer.results["count"]

    assert here("325.9 cm") == batch("325.9 cm") == 18
    assert here("326 cm") == batch("326 cm") == 21
    assert here("325.9 cm", skew="0") == batch("325.9 cm", skew="0") == 21


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
def test_a_near_miss_is_the_largest_piece_the_ruler_shows_that_gives_the_extra_pieces(width, length, piece_width, piece_length, gap, ruler):
    """Counted by hand: whole rows and whole columns of one size, at the size that is said and one division above it."""
    typed = {"cloths": f"Linen | {width} | {length}", "pieces": f"Towel | {piece_width} | {piece_length}", "gap": gap, "selvedge": "0", "end_loss": "0", "skew": "0"}
    asking = Asking(typed, wanted_ruler=ruler)
    wide, long, across, along, lost = (parse_length(each, asking.ruler.unit) for each in (width, length, piece_width, piece_length, gap))

    def count(piece_across, piece_along):
        return ((wide + lost) // (piece_across + lost)) * ((long + lost) // (piece_along + lost))

    reply = answer(LAY, asking)
    assert reply.results["count"] == count(across, along)
    found = re.findall(r"“Towel” (?:about )?([^,]+) (shorter|narrower), ([^,]+), would give (\d+) more piece", notes(reply, asking.ruler))
    assert found
    step = asking.ruler.step_mm
    for by, way, said, more in found:
        size = parse_length(said, asking.ruler.unit)  # no “about”: the very division to lay out
        assert asking.ruler.read(size) == size and 0 <= parse_length(by) - ((along if way == "shorter" else across) - size) < step
        sizes = [(across, each) if way == "shorter" else (each, along) for each in (size, size + step)]
        assert count(*sizes[0]) == reply.results["count"] + int(more) > count(*sizes[1])


def test_an_eighth_of_an_inch_shorter_is_said_where_eight_lengths_then_fit_exactly():
    typed = {"cloths": "Linen | 60 in | 179 in", "pieces": "Towel | 18 in | 22 1/2 in", "selvedge": "0", "end_loss": "0", "skew": "0"}
    said = notes(answer(LAY, Asking(typed, wanted_ruler="in")), SIXTEENTHS)
    assert "“Towel” 1/8 in shorter, 22 3/8 in, would give 3 more pieces." in said  # 8 × 22 3/8 = 179
    assert "Cloth 1 in longer would give 3 more pieces." in said  # 8 × 22 1/2 = 180


TIGHT = {"cloths": "Linen | 140 cm | 300 cm", "pieces": "Napkin | 40 cm | 40 cm | 10; | | | | ; Placemat | 35 cm | 48 cm | 6; Runner | 42 cm | 150 cm | 1"}


def test_before_it_says_buy_it_says_which_one_change_would_fit_the_order():
    reply = answer(LAY, Asking(TIGHT))
    (offer,) = (note for note in reply.notes if isinstance(note, Offer))
    assert filled(offer, LAY, CENTIMETRES) == "Cut in strips along the cloth: all 17 fit." and offer.sets == (Setting("strips", "along"),)
    assert "buy" not in notes(reply) and "longer" not in notes(reply) and "costs" not in notes(reply)
    changed = answer(LAY, Asking({**TIGHT, **{each.field: each.text for each in offer.sets}}))
    assert changed.results["count"] == 17 and not any(isinstance(note, Offer) for note in changed.notes)


def test_the_row_that_must_turn_is_found_even_below_an_empty_one():
    typed = {"cloths": "Linen | 100 cm | 60 cm", "selvedge": "0", "end_loss": "0", "skew": "0", "pieces": "Square | 30 cm | 30 cm | 2; | | | ; Band | 100 cm | 30 cm | 1; Towel | 30 cm | 40 cm | 1"}
    reply = answer(LAY, Asking(typed))
    (offer,) = (note for note in reply.notes if isinstance(note, Offer))
    assert filled(offer, LAY, CENTIMETRES) == "Let “Towel” turn: all 4 fit." and offer.sets == (Setting("pieces", "yes", 3, "may_turn"),)
    (button,) = (node for part in answered(LAY, reply, Asking(typed)) for node in part.iter("button") if node.get("class") == "offer")
    assert json.loads(button.get("data-sets")) == [["pieces", "yes", 3, 4]] and button.get("hidden") is not None


def test_numbers_kept_of_what_a_piece_counts_keep_their_meaning():
    """One cloth takes two of one size or one of the other; what counts three is kept before two that count one."""
    typed = {"cloths": "Linen | 100 cm | 50 cm", "selvedge": "0", "end_loss": "0", "skew": "0"}
    asked = "Half | 50 cm | 50 cm | 2; Whole | 100 cm | 50 cm | 1 | no | plain | {}"
    for counts, cut in (("3", [0, 1]), ("1", [2, 0]), ("", [2, 0])):
        assert [row["cut"] for row in answer(LAY, Asking({**typed, "pieces": asked.format(counts)})).results["per_piece"]] == cut


def test_what_is_ordered_by_number_is_not_given_up_for_as_many_as_fit():
    """6 m hold a tablecloth, with one napkin beside its sides; 6 m hold 3 × 15 more. Napkins alone would be 90."""
    cloth = {"cloths": "Linen | 150 cm | 12 m", "selvedge": "0", "end_loss": "0", "skew": "0"}
    reply = answer(LAY, Asking({**cloth, "pieces": "Tablecloth | 240 cm | 300 cm | 1 | no | joined; Napkin | 40 cm | 40 cm | "}))
    assert [row["cut"] for row in reply.results["per_piece"]] == [1, 2, 46] and reply.results["most_pieces"] == 90
    assert "Without “Tablecloth”, 90 pieces could be cut. If you would rather have those, say so under “If not all fit”." in notes(reply)


def test_what_was_said_to_count_less_may_be_given_up_for_as_many_as_fit_and_that_is_told():
    cloth = {"cloths": "Linen | 150 cm | 12 m", "selvedge": "0", "end_loss": "0", "skew": "0"}
    asked = "Tablecloth | 240 cm | 300 cm | 1 | no | joined | 1; Napkin | 40 cm | 40 cm | {count} | no | plain | 2"
    told = "“Tablecloth” may have been given up for “Napkin”, of which as many as fit are cut"
    assert told in notes(answer(LAY, Asking({**cloth, "pieces": asked.format(count="")})))
    assert told not in notes(answer(LAY, Asking({**cloth, "pieces": asked.format(count="100")})))
    assert told not in notes(answer(LAY, Asking({**cloth, "pieces": asked.format(count="30")})))


def test_cloth_that_is_needed_reads_alike_everywhere_and_is_told_from_the_last_mark():
    """612 cm is 240.94 in: 241 of cloth, rounded up; a mark at 240 15/16, the nearest."""
    typed = {"cloths": "Linen | 150 cm", "pieces": "Runner | 50 cm | 204 cm | 9", "aim": "buy", "selvedge": "0", "end_loss": "0", "skew": "0"}
    for ruler, cloth, mark in (("in", "about 241 in", "about 240 15/16 in"), ("cm", "612 cm", "612 cm")):
        asking = Asking(typed, wanted_ruler=ruler)
        reply = answer(LAY, asking)
        kinds = {each.name: each.kind.show(reply.results[each.name], asking.ruler) for each in LAY.results if each.name in ("to_start_from", "least_length", "last_mark")}
        assert kinds == {"to_start_from": cloth, "least_length": cloth, "last_mark": mark}
        assert f"Buy **{cloth}**" in filled(reply.spoken, LAY, asking.ruler) and f"last mark along must read {mark}:" in notes(reply, asking.ruler)
        assert ("Cloth is rounded up to the next division" in notes(reply, asking.ruler)) == (cloth != mark)


@pytest.mark.parametrize(
    ("cloth", "napkins", "said"),
    [
        ("12 m", "", "1 piece from Linen, cut in 3 parts: the whole order."),
        ("12 m", "; Napkin | 40 cm | 40 cm | 12", "13 pieces from Linen, cut in 15 parts: the whole order."),
        ("4 m", "; Napkin | 40 cm | 40 cm | 2", "2 pieces of 3 ordered can be cut."),
    ],
)
def test_a_tablecloth_joined_from_widths_is_one_piece(cloth, napkins, said):
    """A centre of 150 cm and two sides of 47 cm, 300 cm long each; 4 m take the centre or the sides, not both."""
    typed = {"cloths": f"Linen | 150 cm | {cloth}", "pieces": f"Tablecloth | 240 cm | 300 cm | 1 | no | joined{napkins}", "selvedge": "0", "end_loss": "0", "skew": "0", "seam_allowance": "1 cm"}
    assert filled(answer(LAY, Asking(typed)).spoken, LAY, CENTIMETRES).replace("**", "") == said


def test_says_how_much_to_buy_for_what_does_not_fit():
    reply = answer(LAY, Asking({"cloths": "Linen | 150 cm | 100 cm", "pieces": "Napkin | 46 cm | 46 cm | 9"}))  # one row, an end off at each side and the slant
    assert "The order is larger than the cloth. For the rest, buy 50 cm of Linen; in one length with this cloth, 42 cm more would do." in notes(reply)  # 142 = 3 × 46 + 4
    assert reply.results["count"] == 6


def test_marks_are_rounded_each_from_its_exact_place():
    typed = {"cloths": "Linen | 60 in | 90 in", "pieces": "Strip | 20 in | 10 1/3 in", "selvedge": "0", "end_loss": "0", "skew": "0"}
    reply = answer(LAY, Asking(typed, wanted_ruler="in"))
    step = Fraction(31, 3) * Fraction(254, 10)
    ends = [row["end"] for row in reply.results["marking"] if row["start"] is not None and row["gives"]]
    assert ends == [step * n for n in range(1, 9)] and reply.results["last_mark"] == 8 * step
    (marking,) = (each for each in LAY.results if each.name == "marking")
    shown = [marking.kind.cells(row, SIXTEENTHS)[3] for row in reply.results["marking"]]
    assert shown[7].endswith("82 11/16 in")  # 82 2/3; eight roundings of 10 1/3 one upon another would read 82 1/2


def test_threads_are_counted_for_the_cuts_that_follow_one():
    typed = {"cloths": "Linen | 138 cm | 92 cm", "pieces": "Napkin | 46 cm | 46 cm", "selvedge": "0", "end_loss": "0", "skew": "0"}
    across = answer(LAY, Asking(typed)).results
    assert (across["threads"], across["thread_length"]) == (1, 1380)
    both = answer(LAY, Asking({**typed, "way_along": "thread"})).results
    assert (both["threads"], both["thread_length"]) == (1 + 4, 1380 + 4 * 460)
    torn = answer(LAY, Asking({**typed, "way_across": "tear"})).results
    assert (torn["threads"], torn["thread_length"]) == (0, 0)


def test_the_whole_cut_list_sets_every_piece_free():
    results = answer(LAY, Asking({"aim": "shortest"})).results
    assert [row["step"] for row in results["cut_list"]] == list(range(1, len(results["cut_list"]) + 1))
    assert results["cut_list"][0]["cut"] == "whole cloth: straighten the first end, 1 cm off"
    assert results["cut_list"][1]["marks"] == sorted({row["end"] for row in results["marking"] if row["strip"].isdigit() or row["strip"] == "left over"})[:-1]


@pytest.mark.parametrize(("strips", "order"), [("across", ["straighten", "across", "selvedges"]), ("along", ["straighten", "selvedges", "along"])])
def test_trimming_stands_among_the_first_cuts_and_selvedges_stay_on_until_the_cloth_is_cut_across(strips, order):
    typed = {"cloths": "Linen | 141 cm | 96 cm", "pieces": "Napkin | 46 cm | 46 cm", "strips": strips, "selvedge": "1.5 cm", "end_loss": "1 cm", "skew": "2 cm"}
    cuts = [row["cut"] for row in answer(LAY, Asking(typed)).results["cut_list"]]
    places = [next(place for place, cut in enumerate(cuts) if word in cut) for word in order]
    assert places == sorted(set(places)) and places[0] == 0
    assert any("cut off the far end" in cut for cut in cuts)  # 92 cm are used to the last
    bare = answer(LAY, Asking({**typed, "selvedge": "0", "end_loss": "0", "skew": "0"})).results["cut_list"]
    assert not any("selvedges" in row["cut"] or "end," in row["cut"] for row in bare)


def test_the_file_of_cuts_has_every_mark_of_the_list_and_no_formula():
    typed = {"cloths": "=Linen | 141 cm | 96 cm; +Other | 150 cm | 50 cm", "pieces": "@Napkin | 46 cm | 46 cm | 9"}
    reply = answer(LAY, Asking(typed))
    rows = list(csv.DictReader(io.StringIO(saved(reply, "cuts.csv"))))
    assert [int(row["step"]) for row in rows] == [line["step"] for line in reply.results["cut_list"]]
    for row, line in zip(rows, reply.results["cut_list"]):
        marks = [Fraction(mark) for mark in row["marks [mm]"].split()]
        assert marks == line["marks"] if line["marks"] else marks in ([10], [15])  # an end off, or both selvedges
    assert not any(cell[:1] in "=+-@" for row in rows for cell in row.values() if cell)


def test_with_cuts_any_way_the_marking_table_goes_down_to_the_last_cut():
    typed = {"cloths": "Linen | 100 cm | 100 cm", "strips": "free", "selvedge": "0", "end_loss": "0", "skew": "0"}
    pinwheel = "A | 30 cm | 70 cm | 2; B | 70 cm | 30 cm | 1; C | 35 cm | 20 cm | 3"
    reply = answer(LAY, Asking({**typed, "pieces": pinwheel}))
    (lay,) = reply.drawn_from.lays
    listed = {"along": {0, lay.length}, "across": {0, lay.cloth.width}}
    for row in reply.results["marking"]:
        ways = ("across", "along") if "across" in row["strip"] else ("along", "across")
        listed[ways[0]] |= {row["start"], row["end"]}
        listed[ways[1]] |= set(row["marks"] or ())
    assert any("part" in row["strip"] for row in reply.results["marking"])
    for placed in lay.placed:
        assert {placed.box.y, placed.box.end} <= listed["along"] and {placed.box.x, placed.box.right} <= listed["across"]


def test_a_piece_that_is_pointed_at_tells_where_its_edges_lie_on_the_ruler_in_hand():
    typed = {"cloths": "Linen | 92 cm | 46 cm", "pieces": "Napkin | 46 cm | 46 cm | 2", "end_loss": "0", "skew": "0"}
    asking = Asking({**typed, "selvedge": "0"}, wanted_ruler="in")
    told = [node.get("data-words") for node in lay_plan(answer(LAY, asking).drawn_from, asking.ruler).svg.iter("g") if node.get("class") == "pointed-at"]
    assert [words.replace("\u00a0", " ") for words in told] == [
        "A Napkin, strip 1: from the straight end 0 in to about 18 1/8 in, from the selvedge 0 in to about 18 1/8 in.",
        "A Napkin, strip 1: from the straight end 0 in to about 18 1/8 in, from the selvedge about 18 1/8 in to about 36 1/4 in.",
    ]  # 46 cm = 18.11 in and 92 cm = 36.22 in


def test_first_answer_comes_before_the_work_is_done_and_says_so():
    found = list(answers(LAY, Asking({"aim": "shortest"})))
    first = next(each for each in found if each)
    assert not first.settled and "still being looked for" in notes(first)
    assert found[-1].settled and "still being looked for" not in notes(found[-1])


def test_the_answer_is_the_same_every_time():
    typed = {"aim": "shortest", "pieces": "A | 31 cm | 47 cm | 14; B | 52 cm | 38 cm | 9 | yes; C | 23 cm | 61 cm | 11"}
    assert plain_answer(LAY, Asking(typed)) == plain_answer(LAY, Asking(typed))


@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_five_hundred_pieces_are_planned_drawn_and_listed(ruler):
    asking = Asking(LARGE, wanted_ruler=ruler)
    reply = answer(LAY, asking)
    assert reply.results["count"] == 500
    for lay in reply.drawn_from.lays:
        assert lay_faults(lay) == []
    assert_is_drawn_on_its_sheet(lay_plan(reply.drawn_from, asking.ruler).svg)
    assert len("".join(html(each) for each in answered(LAY, reply, asking))) < 900_000


def saved(reply, name):
    (wanted,) = (each for each in LAY.files if each.name == name)
    return wanted.text(reply.drawn_from, CENTIMETRES)


def test_the_csv_files_carry_the_plan_exactly():
    typed = {"cloths": "Linen | 60 in | 90 in | 2", "pieces": "=Strip, \"fine\" | 20 in | 10 1/3 in | 30", "change_length": "-3.7"}
    reply = answer(LAY, Asking(typed))
    rows = list(csv.DictReader(io.StringIO(saved(reply, "pieces.csv"))))
    placed = [piece for lay in reply.drawn_from.lays for piece in lay.placed]
    assert len(rows) == len(placed) == 30
    for row, piece in zip(rows, placed):
        sizes = [Fraction(row[name]) for name in ("from the end [mm]", "from the first long edge [mm]", "length [mm]", "width [mm]")]
        assert sizes == [piece.box.y, piece.box.x, piece.box.length, piece.box.width]
        assert row["piece"] == "'=Strip, \"fine\""  # no table programme takes it for a formula
    marks = list(csv.DictReader(io.StringIO(saved(reply, "marking-table.csv"))))
    along = [Fraction(row["mark [mm]"]) for row in marks if row["direction"] == "along"]
    assert along == [row["end"] for row in reply.results["marking"] if row["strip"] != "check"]


@pytest.mark.parametrize("length", [Fraction(5), Fraction(31, 3) * Fraction(254, 10), Fraction(1, 3), Fraction(254, 160), Fraction(123456789, 1000)])
def test_a_length_is_written_so_that_reading_it_back_gives_the_same(length):
    assert Fraction(exact(length)) == length


def test_the_saved_drawing_is_at_true_scale():
    reply = answer(LAY, Asking({"aim": "shortest", "pieces": "<b>& | 46 cm | 35.5 cm | 7"}))
    svg = ET.fromstring(saved(reply, "lay-plan.svg"))
    left, top, width, height = map(float, svg.get("viewBox").split())
    assert (svg.get("width"), svg.get("height")) == (f"{width:g}mm", f"{height:g}mm") and (left, top) == (0, 0)
    boxes = [node for node in svg.iter("{http://www.w3.org/2000/svg}rect")]
    sizes = {(float(box.get("width")), float(box.get("height"))) for box in boxes[1:]}
    assert sizes == {(355.0, 460.0)} and len(boxes) == 1 + 7
    assert any(node.text == "<b>&" for node in svg.iter())


def test_a_drawing_of_a_long_cloth_is_split_into_stretches_that_a_phone_can_show():
    reply = answer(LAY, Asking({"cloths": "Linen | 150 cm | 30 m", "pieces": "Napkin | 46 cm | 46 cm | 180"}))
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    words = [node.text for node in svg.iter("text")]
    assert sum("from" in word and "on" in word for word in words) >= 3
    for size in "124":
        shown = [node.text for node in svg.iter("text") if size in node.get("data-at", "1 2 4")]
        assert shown.count("A Napkin") - 1 + shown.count("A") == 180  # one stands in the key


@pytest.mark.parametrize("name", ["Linen", "White two-layer cotton, row 2"])
def test_the_name_of_a_cloth_takes_one_line_over_its_marks(name):
    """A second line would lie on the marks. The first stretch tells the grain and the unit, the others where they begin."""
    asking = Asking({"cloths": f"{name} | 132 cm | 4.6 m", "pieces": "Napkin | 46 cm | 46 cm | 18"}, wanted_ruler="in")
    words = [node.text for node in lay_plan(answer(LAY, asking).drawn_from, asking.ruler).svg.iter("text")]
    named = [word for word in words if word.startswith(name[:5])]
    assert named[0].endswith("; grain ↔; marks in inches") and all(word.endswith(" on") for word in named[1:]) and len(named) >= 2
    assert not {"grain ↔", "marks in inches"} & set(words)


@pytest.mark.parametrize("ruler", ["cm", "in"])
@pytest.mark.parametrize("size", [1, 2, 4])
@pytest.mark.parametrize("layout", ["svg", "wide"])
def test_no_two_marks_of_a_drawing_run_into_one_another(size, ruler, layout):
    asking = Asking(LARGE, wanted_ruler=ruler)
    svg = getattr(lay_plan(answer(LAY, asking).drawn_from, asking.ruler), layout)
    lines: dict[str, list[tuple[float, float]]] = {}
    for node in svg.iter("text"):
        if node.get("class") == "dimension-text" and str(size) in node.get("data-at", "1 2 4") and node.text[0].isdigit():
            wide, x = 6.2 * len(node.text), float(node.get("x")) * size
            share = {"start": 0, "middle": 0.5, "end": 1}[node.get("text-anchor")]
            lines.setdefault(node.get("y"), []).append((x - wide * share, x + wide * (1 - share)))
    assert len(lines) > 3
    for reach in lines.values():
        assert all(before[1] < after[0] for before, after in zip(sorted(reach), sorted(reach)[1:]))


def cloth_drawn(svg, number=0):
    """Left, top, right and lowest of a stretch of cloth as drawn."""
    found = [node for node in svg.iter("polygon") if node.get("class") == "cloth"][number]
    xs, ys = zip(*(map(float, pair.split(",")) for pair in found.get("points").split()))
    return min(xs), min(ys), max(xs), max(ys)


def stretches(svg):
    return 1 + sum("from" in node.text and node.text.endswith("on") for node in svg.iter("text"))


def test_a_screen_shows_a_long_cloth_in_fewer_stretches_and_as_many_pieces():
    typed = {"cloths": "Linen | 150 cm", "pieces": "Runner | 50 cm | 204 cm | 9", "aim": "buy", "selvedge": "0", "end_loss": "0", "skew": "0"}
    picture = lay_plan(answer(LAY, Asking(typed)).drawn_from, CENTIMETRES)
    assert (stretches(picture.svg), stretches(picture.wide)) == (2, 1)
    boxes = [node for node in picture.wide.iter("polyline") if node.get("class").startswith("cut") and len(node.get("points").split()) == 5]
    places = sorted(tuple(map(float, node.get("points").split()[0].split(","))) for node in boxes)
    left, _, right, _ = cloth_drawn(picture.wide)
    assert right > 570
    scale = (right - left) / 6120
    wanted = [(left + 2040 * n * scale, 46 + 500 * m * scale) for n in range(3) for m in range(3)]
    assert [each for place in places for each in place] == pytest.approx([each for place in wanted for each in place], abs=0.1)


def test_a_cloth_that_a_phone_shows_whole_is_not_drawn_twice():
    assert lay_plan(answer(LAY, Asking({})).drawn_from, CENTIMETRES).wide is None


def test_pieces_are_drawn_where_they_lie():
    reply = answer(LAY, Asking({"cloths": "Linen | 150 cm | 320 cm"}))
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    (lay,) = reply.drawn_from.lays
    left, top, right, _ = cloth_drawn(svg)
    assert right > 340
    scale = (right - left) / float(lay.length)
    boxes = [node for node in svg.iter("polyline") if node.get("class").startswith("cut") and len(node.get("points").split()) == 5]
    drawn = [tuple(map(float, node.get("points").split()[0].split(","))) for node in boxes]
    assert len(drawn) == len(lay.placed)
    for (x, y), placed in zip(drawn, lay.placed):
        assert (x, y) == pytest.approx((left + float(placed.box.y) * scale, top + float(placed.box.x) * scale), abs=0.2)


MIXED = {"cloths": "Linen | 150 cm | 280 cm", "pieces": "Napkin | 46 cm | 46 cm | 4; Placemat | 35 cm | 48 cm | 4 | yes; Runner | 45 cm | 140 cm | 1"}


def upright_boxes(svg, style):
    """The rectangles hatched in a style: left, top, right, lowest."""
    for path in svg.iter("path"):
        if path.get("class") == style:
            for left, top, right, low in re.findall(r"M([\d.]+) ([\d.]+)H([\d.]+)V([\d.]+)H", path.get("d")):
                yield tuple(map(float, (left, top, right, low)))


@pytest.mark.parametrize("strips", ["across", "along", "free"])
def test_a_hatch_means_a_kind_of_piece_and_has_no_other_sense(strips):
    """Every piece lies in the hatch of its kind, nothing else does, and the key names that kind as pieces and caption do."""
    reply = answer(LAY, Asking({**MIXED, "strips": strips}))
    picture = lay_plan(reply.drawn_from, CENTIMETRES)
    (lay,) = reply.drawn_from.lays
    left, top, right, _ = cloth_drawn(picture.svg)
    scale = (right - left) / float(lay.length)
    hatches = {}
    for number, piece in enumerate(reply.drawn_from.pieces):
        drawn = unary_union([box(*each) for each in upright_boxes(picture.svg, line_styles.kind(number))])
        placed = [each.box for each in lay.placed if each.piece == number]
        wanted = unary_union([box(left + float(p.y) * scale, top + float(p.x) * scale, left + float(p.end) * scale, top + float(p.right) * scale) for p in placed])
        assert placed and drawn.symmetric_difference(wanted).area < 0.01 * wanted.area
        name = f"{letter(number)} {piece.name}"
        nodes = list(picture.svg)
        (keyed,) = (at for at, node in enumerate(nodes) if node.text == name and node.get("class") == "label")
        assert nodes[keyed - 2].get("fill") == f"url(#filling-{line_styles.kind(number)})"
        assert name in picture.caption
        hatches[line_styles.KINDS[line_styles.kind(number)]] = name
        inside = [node.text for node in picture.svg.iter("text") if node.get("class") == "label in-middle" and node.text[0] == letter(number)]
        assert set(inside) <= {name, letter(number)}
    assert len(hatches) == 3  # told apart by the hatch itself, not by its tint


def test_kinds_of_piece_differ_in_their_hatch_from_each_other_and_from_what_is_left_over():
    hatches = [*line_styles.KINDS.values(), *line_styles.HATCHES.values()]
    assert len(hatches) == len(set(hatches))


@pytest.mark.parametrize("strips", ["across", "along"])
def test_a_bar_counts_the_strips_as_the_marking_table_does(strips):
    reply = answer(LAY, Asking({**MIXED, "strips": strips}))
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    (lay,) = reply.drawn_from.lays
    left, top, right, low = cloth_drawn(svg)
    scale = (right - left) / float(lay.length)
    axis = 0 if lay.first_cut == "across" else 1
    begins = (left, top)[axis]
    numbers = [node for node in svg.iter("text") if node.get("class") == "label in-middle" and node.text.isdigit()]
    assert [int(node.text) for node in numbers] == sorted({placed.strip for placed in lay.placed}) and len(numbers) > 1
    for node in numbers:
        x, y = float(node.get("x")), float(node.get("y"))
        assert (y > low) if axis == 0 else (x > right)
        of_strip = [placed.box for placed in lay.placed if placed.strip == int(node.text)]
        from_, to = ((min(box.y for box in of_strip), max(box.end for box in of_strip)), (min(box.x for box in of_strip), max(box.right for box in of_strip)))[axis]
        assert begins + float(from_) * scale < (x, y)[axis] < begins + float(to) * scale


@pytest.mark.parametrize("ruler", ["cm", "in"])
def test_marks_are_read_from_the_long_edge_too(ruler):
    asking = Asking(MIXED, wanted_ruler=ruler)
    reply = answer(LAY, asking)
    svg = lay_plan(reply.drawn_from, asking.ruler).svg
    (lay,) = reply.drawn_from.lays
    left, top, right, _ = cloth_drawn(svg)
    scale = (right - left) / float(lay.length)
    beside = [node for node in svg.iter("text") if node.get("class") == "dimension-text" and node.get("text-anchor") == "end" and float(node.get("x")) < left]
    first = [placed.box for placed in lay.placed if placed.strip == 1 and placed.box.y == 0]
    expected = {bare(box.right, asking.ruler): top + float(box.right) * scale for box in first}
    seen = {node.text: float(node.get("y")) - 4 / int(node.get("data-at", "1")[0]) for node in beside}
    assert seen == {text: pytest.approx(at, abs=0.2) for text, at in expected.items()}
    other = {bare(placed.box.right, asking.ruler) for placed in lay.placed if placed.strip == 3 and placed.box.right < lay.cloth.width}
    within = {node.text for node in svg.iter("text") if node.get("class") == "dimension-text in-middle"}
    assert other - set(expected) <= within


def test_the_lines_of_a_repeat_are_drawn_where_it_starts():
    typed = {"pieces": "Napkin | 46 cm | 46 cm | 6 | no | matched", "cloths": "Damask | 150 cm | 260 cm", "repeats": "64 cm | 50 cm | 5 cm | 0 cm | Damask"}
    reply = answer(LAY, Asking(typed))
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    (lay,) = reply.drawn_from.lays
    left, top, right, _ = cloth_drawn(svg)
    scale = (right - left) / float(lay.length)
    repeat = lay.cloth.repeat
    drawn = [[tuple(map(float, pair.split(","))) for pair in node.get("points").split()] for node in svg.iter("polyline") if node.get("class") == "repeat"][:-1]
    upright = [points[0][0] for points in drawn if points[0][0] == points[1][0]]
    level = [points[0][1] for points in drawn if points[0][1] == points[1][1]]
    along = [at for n in range(9) if (at := repeat.first_along + n * repeat.along) < lay.length]
    across = [at for n in range(9) if (at := repeat.first_across + n * repeat.across) < lay.cloth.width]
    assert upright == pytest.approx([left + float(at) * scale for at in along], abs=0.2)
    assert level == pytest.approx([top + float(at) * scale for at in across], abs=0.2)
    for placed in lay.placed:
        assert any(abs(float(placed.box.y - at)) < 1e-6 for at in along) and any(abs(float(placed.box.x - at)) < 1e-6 for at in across)
    assert lines_in_key(svg, "repeat starts") and not lines_in_key(lay_plan(answer(LAY, Asking(MIXED)).drawn_from, CENTIMETRES).svg, "repeat starts")


def lines_in_key(svg, words):
    return [node for node in svg.iter("text") if node.text == words]


PENCIL = {
    "cloths": "Linen | 140 cm | 300 cm", "pieces": "Napkin | 40 cm | 40 cm | 10; Placemat | 35 cm | 48 cm | 6; Runner | 42 cm | 150 cm | 1",
    "flaws": "120 cm | 68 cm | 4 cm | 4 cm | Linen", "selvedge": "1.5 cm", "end_loss": "1 cm", "skew": "2 cm",
}  # fmt: skip


@pytest.mark.parametrize("strips", ["along", "either", "sections", "free"])
def test_strips_are_put_so_that_a_flaw_falls_between_their_pieces(strips):
    """Worked with a pencil: strips of 40, 42 and 40 along the cloth; the middle one leaves the flaw free between mats and runner."""
    results = answer(LAY, Asking({**PENCIL, "strips": strips})).results
    assert (results["count"], results["proof"]) == (17, "no: this is proven")


def test_room_left_for_a_flaw_is_named_waste_in_the_tables_the_file_and_the_drawing():
    reply = answer(LAY, Asking({**PENCIL, "strips": "along"}))
    assert sum("; waste from " in row["gives"] for row in reply.results["marking"]) == 1
    assert sum("; waste from " in row["cut"] for row in reply.results["cut_list"]) == 1
    assert saved(reply, "marking-table.csv").count("waste up to this mark") == 1
    svg = lay_plan(reply.drawn_from, CENTIMETRES).svg
    assert [node.text for node in svg.iter("text")].count("waste") == 2  # in its place and in the key
    assert sum(node.get("class") == "waste" for node in svg.iter("polygon")) == 1


def test_a_plan_that_leaves_no_room_before_a_piece_names_no_waste():
    reply = answer(LAY, Asking({**PENCIL, "flaws": "", "strips": "along"}))
    assert "waste" not in saved(reply, "marking-table.csv") + str(reply.results["cut_list"])
    assert "waste" not in [node.text for node in lay_plan(reply.drawn_from, CENTIMETRES).svg.iter("text")]
