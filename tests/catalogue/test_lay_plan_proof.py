"""A lay plan says whether another could do better, only as far as that is proven, and where it is cut in fewer ways
than asked."""

import pytest

from calculators.asking.answering import Asking, answer, answers
from calculators.faces.page.plain import plain_answer
from calculators.trade.lay_plan.solving import any_stage_value
from tests.catalogue.lay_plans import LAY, notes, of_washed_cloth
from tests.trade.lay_plan.lay_check import lay_faults

SHORT = "Linen | 150 cm | 320 cm"


def test_says_that_no_plan_can_give_more_only_when_it_is_proven():
    sound = answer(LAY, of_washed_cloth({"cloths": SHORT, "pieces": "Napkin | 46 cm | 46 cm"}))
    assert (
        "No plan cut this way can give more." in notes(sound)
        and sound.results["most_pieces"] == sound.results["count"] == 18
    )
    flawed = answer(
        LAY,
        Asking(
            {
                "cloths": SHORT,
                "pieces": "Napkin | 46 cm | 46 cm",
                "flaws": "130 cm | 60 cm | 60 cm | 30 cm",
                "strips": "free",
            }
        ),
    )
    assert "No plan cut" not in notes(flawed) and "not ruled out" in notes(flawed)
    assert flawed.results["count"] < 18 and flawed.results["most_pieces"] == 18


SECTIONED = {
    "cloths": "Linen | 100 cm | 60 cm",
    "pieces": "Runner | 40 cm | 60 cm | 1; Napkin | 30 cm | 30 cm | 4",
    "selvedge": "0",
    "end_loss": "0",
    "skew": "0",
}


def test_says_how_much_less_is_not_ruled_out_until_it_is_proven_that_nothing_is():
    pieces = (
        "Cloth | 61 cm | 83 cm | 5; Napkin | 46 cm | 41 cm | 9; Runner | 37 cm | 97 cm | 4; Towel | 53 cm | 71 "
        "cm | "
        "6; Mat | 31 cm | 43 cm | 8; Bag | 27 cm | 34 cm | 5"
    )
    found = [
        each
        for each in answers(LAY, of_washed_cloth({"cloths": "Linen | 150 cm", "pieces": pieces, "aim": "shortest"}))
        if each
    ]
    gaps = [each.results["to_start_from"] - each.results["least_length"] for each in found]
    assert gaps[0] > gaps[-1] == 0
    for each, gap in zip(found, gaps):
        assert ("No plan cut this way can use less." in notes(each)) == (gap == 0)
        assert (f"no plan uses less: up to {gap / 10} cm less is not ruled out." in notes(each)) == (gap > 0)


def test_strips_may_be_cut_into_sections_and_those_into_pieces():
    strips, sections = (answer(LAY, of_washed_cloth({**SECTIONED, "strips": way})) for way in ("across", "sections"))
    assert strips.results[
        "count"
    ] == 3 and "No plan cut this way that keeps every kind of piece can give more." in notes(strips)
    assert "Cut in strips along the cloth: all 5 fit." in notes(strips)
    assert sections.results["count"] == 5 and "Everything ordered is cut." in notes(
        sections
    )  # two napkins one behind the other
    assert lay_faults(sections.drawn_from.lays[0]) == []


@pytest.mark.parametrize("strips", ["sections", "free"])
def test_says_plainly_where_the_plan_is_cut_in_strips_after_all(strips):
    flawed = notes(answer(LAY, of_washed_cloth({**SECTIONED, "strips": strips, "flaws": "5 cm | 90 cm | 5 cm | 5 cm"})))
    assert "This plan is cut in plain strips, stepping over what must stay free" in flawed
    assert "plain strips" not in notes(answer(LAY, of_washed_cloth({**SECTIONED, "strips": strips})))
    assert "not along" in notes(answer(LAY, of_washed_cloth({"aim": "shortest", "strips": "either"})))


def test_says_where_there_are_too_many_places_for_a_cut(monkeypatch):
    asked = of_washed_cloth({**SECTIONED, "strips": "free"})
    assert "too many places" not in notes(answer(LAY, asked))
    monkeypatch.setattr(any_stage_value, "MOST_POSITIONS", 3)
    assert "This plan is cut in plain strips: there are too many places for a cut" in notes(answer(LAY, asked))


def test_first_answer_comes_before_the_work_is_done_and_says_so():
    found = list(answers(LAY, of_washed_cloth({"aim": "shortest"})))
    first = next(each for each in found if each)
    assert not first.settled and "still being looked for" in notes(first)
    assert found[-1].settled and "still being looked for" not in notes(found[-1])


def test_the_answer_is_the_same_every_time():
    typed = {"aim": "shortest", "pieces": "A | 31 cm | 47 cm | 14; B | 52 cm | 38 cm | 9 | yes; C | 23 cm | 61 cm | 11"}
    assert plain_answer(LAY, of_washed_cloth(typed)) == plain_answer(LAY, of_washed_cloth(typed))
