"""Marks and cuts of a lay plan, in its tables and in its files: complete, exact, in working order."""

import csv
import io
import xml.etree.ElementTree as ET
from fractions import Fraction

import pytest

from calculators.asking.answering import answer
from calculators.trade.lay_plan.csv_lists import exact
from calculators.values.measure import SIXTEENTHS
from tests.catalogue.lay_plans import LAY, of_washed_cloth, saved


def test_marks_are_rounded_each_from_its_exact_place():
    typed = {
        "cloths": "Linen | 60 in | 90 in",
        "pieces": "Strip | 20 in | 10 1/3 in",
        "selvedge": "0",
        "end_loss": "0",
        "skew": "0",
    }
    reply = answer(LAY, of_washed_cloth(typed, wanted_ruler="in"))
    step = Fraction(31, 3) * Fraction(254, 10)
    ends = [row["end"] for row in reply.results["marking"] if row["start"] is not None and row["gives"]]
    assert ends == [step * n for n in range(1, 9)] and reply.results["last_mark"] == 8 * step
    (marking,) = (each for each in LAY.results if each.name == "marking")
    shown = [marking.kind.cells(row, SIXTEENTHS)[3] for row in reply.results["marking"]]
    assert shown[7].endswith("82 11/16 in")  # 82 2/3; eight roundings of 10 1/3 one upon another would read 82 1/2


def test_threads_are_counted_for_the_cuts_that_follow_one():
    typed = {
        "cloths": "Linen | 138 cm | 92 cm",
        "pieces": "Napkin | 46 cm | 46 cm",
        "selvedge": "0",
        "end_loss": "0",
        "skew": "0",
    }
    across = answer(LAY, of_washed_cloth(typed)).results
    assert (across["threads"], across["thread_length"]) == (1, 1380)
    both = answer(LAY, of_washed_cloth({**typed, "way_along": "thread"})).results
    assert (both["threads"], both["thread_length"]) == (1 + 4, 1380 + 4 * 460)
    torn = answer(LAY, of_washed_cloth({**typed, "way_across": "tear"})).results
    assert (torn["threads"], torn["thread_length"]) == (0, 0)


def test_the_whole_cut_list_sets_every_piece_free():
    results = answer(LAY, of_washed_cloth({"aim": "shortest"})).results
    assert [row["step"] for row in results["cut_list"]] == list(range(1, len(results["cut_list"]) + 1))
    assert results["cut_list"][0]["cut"] == "whole cloth: straighten the first end, 1 cm off"
    assert (
        results["cut_list"][1]["marks"]
        == sorted({row["end"] for row in results["marking"] if row["strip"].isdigit() or row["strip"] == "left over"})[
            :-1
        ]
    )


@pytest.mark.parametrize(
    ("strips", "order"),
    [("across", ["straighten", "across", "selvedges"]), ("along", ["straighten", "selvedges", "along"])],
)
def test_trimming_stands_among_the_first_cuts_and_selvedges_stay_on_until_the_cloth_is_cut_across(strips, order):
    typed = {
        "cloths": "Linen | 141 cm | 96 cm",
        "pieces": "Napkin | 46 cm | 46 cm",
        "strips": strips,
        "selvedge": "1.5 cm",
        "end_loss": "1 cm",
        "skew": "2 cm",
    }
    cuts = [row["cut"] for row in answer(LAY, of_washed_cloth(typed)).results["cut_list"]]
    places = [next(place for place, cut in enumerate(cuts) if word in cut) for word in order]
    assert places == sorted(set(places)) and places[0] == 0
    assert any("cut off the far end" in cut for cut in cuts)  # 92 cm are used to the last
    bare = answer(LAY, of_washed_cloth({**typed, "selvedge": "0", "end_loss": "0", "skew": "0"})).results["cut_list"]
    assert not any("selvedges" in row["cut"] or "end," in row["cut"] for row in bare)


def test_the_file_of_cuts_has_every_mark_of_the_list_and_no_formula():
    typed = {"cloths": "=Linen | 141 cm | 96 cm; +Other | 150 cm | 50 cm", "pieces": "@Napkin | 46 cm | 46 cm | 9"}
    reply = answer(LAY, of_washed_cloth(typed))
    rows = list(csv.DictReader(io.StringIO(saved(reply, "cuts.csv"))))
    assert [int(row["step"]) for row in rows] == [line["step"] for line in reply.results["cut_list"]]
    for row, line in zip(rows, reply.results["cut_list"]):
        marks = [Fraction(mark) for mark in row["marks [mm]"].split()]
        assert marks == line["marks"] if line["marks"] else marks in ([10], [15])  # an end off, or both selvedges
    assert not any(cell[:1] in "=+-@" for row in rows for cell in row.values() if cell)


def test_with_cuts_any_way_the_marking_table_goes_down_to_the_last_cut():
    typed = {"cloths": "Linen | 100 cm | 100 cm", "strips": "free", "selvedge": "0", "end_loss": "0", "skew": "0"}
    pinwheel = "A | 30 cm | 70 cm | 2; B | 70 cm | 30 cm | 1; C | 35 cm | 20 cm | 3"
    reply = answer(LAY, of_washed_cloth({**typed, "pieces": pinwheel}))
    (lay,) = reply.drawn_from.lays
    listed = {"along": {0, lay.length}, "across": {0, lay.cloth.width}}
    for row in reply.results["marking"]:
        ways = ("across", "along") if "across" in row["strip"] else ("along", "across")
        listed[ways[0]] |= {row["start"], row["end"]}
        listed[ways[1]] |= set(row["marks"] or ())
    assert any("part" in row["strip"] for row in reply.results["marking"])
    for placed in lay.placed:
        assert {placed.box.y, placed.box.end} <= listed["along"] and {placed.box.x, placed.box.right} <= listed[
            "across"
        ]


def test_the_csv_files_carry_the_plan_exactly():
    typed = {
        "cloths": "Linen | 60 in | 90 in | 2",
        "pieces": '=Strip, "fine" | 20 in | 10 1/3 in | 30',
        "change_length": "-3.7",
    }
    reply = answer(LAY, of_washed_cloth(typed))
    rows = list(csv.DictReader(io.StringIO(saved(reply, "pieces.csv"))))
    placed = [piece for lay in reply.drawn_from.lays for piece in lay.placed]
    assert len(rows) == len(placed) == 30
    for row, piece in zip(rows, placed):
        sizes = [
            Fraction(row[name])
            for name in ("from the end [mm]", "from the first long edge [mm]", "length [mm]", "width [mm]")
        ]
        assert sizes == [piece.box.y, piece.box.x, piece.box.length, piece.box.width]
        assert row["piece"] == '\'=Strip, "fine"'  # no table programme takes it for a formula
    marks = list(csv.DictReader(io.StringIO(saved(reply, "marking-table.csv"))))
    along = [Fraction(row["mark [mm]"]) for row in marks if row["direction"] == "along"]
    assert along == [row["end"] for row in reply.results["marking"] if row["strip"] != "check"]


@pytest.mark.parametrize(
    "length",
    [Fraction(5), Fraction(31, 3) * Fraction(254, 10), Fraction(1, 3), Fraction(254, 160), Fraction(123456789, 1000)],
)
def test_a_length_is_written_so_that_reading_it_back_gives_the_same(length):
    assert Fraction(exact(length)) == length


def test_the_saved_drawing_is_at_true_scale():
    reply = answer(LAY, of_washed_cloth({"aim": "shortest", "pieces": "<b>& | 46 cm | 35.5 cm | 7"}))
    svg = ET.fromstring(saved(reply, "lay-plan.svg"))
    left, top, width, height = map(float, svg.get("viewBox").split())
    assert (svg.get("width"), svg.get("height")) == (f"{width:g}mm", f"{height:g}mm") and (left, top) == (0, 0)
    boxes = list(svg.iter("{http://www.w3.org/2000/svg}rect"))
    sizes = {(float(box.get("width")), float(box.get("height"))) for box in boxes[1:]}
    assert sizes == {(355.0, 460.0)} and len(boxes) == 1 + 7
    assert any(node.text == "<b>&" for node in svg.iter())
