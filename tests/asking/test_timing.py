"""Pieces timed and waiting, wherever time is worked out: batch, article, order and ticket tell the same."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from calculators.articles import articles
from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import InvalidInput, Onward
from calculators.asking.site_method import example_method
from calculators.batch.walk import BATCH, go
from calculators.catalogue import calculator_named
from calculators.faces.page.plain import refusals
from calculators.ticket.batch import batch_of
from calculators.ticket.sums import sums
from calculators.trade.learning import time_with_learning

COSTS, ORDER = (calculator_named(name) for name in ("thread-time-cost", "whole-order"))
TIMED = {"timed": "4", "timed_minutes": "50 min"}
every_article = pytest.mark.parametrize("name", articles())


def results(calculator, **typed):
    return answer(calculator, Asking(typed, method=example_method())).results


def test_nothing_changes_until_the_first_ones_are_timed():
    for calculator in (COSTS, calculator_named("napkin")):
        assert results(calculator)["time"] == results(calculator, learning="60 %")["time"]


def test_the_rest_follows_from_the_first_ones():
    """4 took 50 min; at 90 % all 16, twice doubled, take 50 × 4 × 0.81 = 162 min, with 20 min done once 182."""
    found = results(COSTS, pieces="16", minutes_batch="20", learning="90", rate="60", **TIMED)
    assert (found["time"], found["cost_time"]) == (182, 182)
    one_more = time_with_learning(17, 4, F(50), F(90)) - 162
    without = results(COSTS, pieces="16", minutes_batch="20", minutes_piece="0", rate="60")
    assert found["one_more"] - without["one_more"] == one_more


@every_article
def test_every_article_takes_them_along(name):
    typed = {"count": "16", "learning": "90", **TIMED}
    asking = Asking(typed, method=example_method())
    there = answer(calculator_named(name), asking)
    assert there.results["time"] == 162
    carried = {note.calculator: note.carries for note in there.notes if isinstance(note, Onward)}
    assert results(COSTS, **carried["thread-time-cost"], minutes_batch="0")["time"] == 162


def test_each_line_of_an_order_has_its_own():
    line = "napkin | 16 | 40 cm | 40 cm | | Pieces timed 4, Minutes for those 50 min, Rate of learning 90 %"
    found = results(ORDER, lines=f"{line}; napkin | 2 | 40 cm | 40 cm | | Minutes for each 9 min", minutes_batch="20")
    assert [row["time"] for row in found["order_lines"]] == [162, 18] and found["time"] == 200


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("timed", {**TIMED, "timed": "0"}, "0 is outside what works here"),
        ("timed", {**TIMED, "timed": "9"}, "9 pieces timed, and only 8 wanted in all."),
        ("timed", {"timed_minutes": "50"}, "Write how many pieces took the 50 min."),
        ("timed_minutes", {"timed": "1"}, "Write how long the 1 piece took"),
        ("learning", {**TIMED, "learning": "49"}, "49 is outside what works here: from 50 % to 100 %."),
        ("learning", {**TIMED, "learning": "101"}, "101 is outside what works here: from 50 % to 100 %."),
    ],
)
def test_what_cannot_be_is_refused_in_one_sentence_at_its_blank(field, typed, sentence):
    for calculator, count in ((COSTS, "pieces"), (calculator_named("napkin"), "count")):
        asking = Asking({count: "8", **typed})
        with pytest.raises(InvalidInput) as refused:
            answer(calculator, asking)
        assert list(refused.value.sentences) == [field]
        assert sentence in " ".join(refusals(refused.value, calculator, asking).values())


def test_an_order_refuses_them_at_its_lines():
    asking = Asking({"lines": "napkin | 8 | 40 cm | 40 cm | | Pieces timed 9, Minutes for those 50 min"})
    with pytest.raises(InvalidInput) as refused:
        answer(ORDER, asking)
    assert refusals(refused.value, ORDER, asking) == {
        "lines": "row 1, Napkin: 9 pieces timed, and only 8 wanted in all. Write how many of these were timed."
    }


def waiting_a_day():
    method = example_method()
    steps = (
        {"step": "Dry", "minutes": "1440 min", "for_each": "waiting"},
        {"step": "Cool", "minutes": "30 min", "for_each": "waiting", "kinds": "Runner"},
    )
    return replace(method, tables={**method.tables, "steps": (*method.tables["steps"][:1], *steps)})


def test_waiting_stands_apart_is_once_and_costs_nothing():
    for calculator in (COSTS, ORDER):
        paid = {"rate": "60", "minutes_batch": "20"}
        none, day = (results(calculator, **paid, waiting_batch=each) for each in ("0", "24 h"))
        assert none["waiting"] is None and day["waiting"] == 24 * 60
        assert {**day, "waiting": None} == none


def test_the_house_says_what_a_batch_waits_and_for_which_kind():
    method = waiting_a_day()
    for calculator in (COSTS, ORDER):
        assert answer(calculator, Asking({}, method=method)).results["waiting"] == 1440
    assert answer(COSTS, Asking({}, method=method.for_kind("Runner"))).results["waiting"] == 1470
    napkin = calculator_named("napkin")
    for count in ("1", "12"):
        asking = Asking({"count": count}, method=method)
        notes = [filled(note, napkin, asking.ruler) for note in answer(napkin, asking).notes]
        assert any(note.startswith("Hands-on: ") and note.endswith("; waiting, once: 24 h.") for note in notes)


def test_the_ticket_tells_it_apart():
    method = waiting_a_day()
    ticket = sums(batch_of(go(BATCH, {}, Asking({}, method=method)), method), {})
    assert next(each.text for each in ticket if each.name == "sum-time").endswith("; plus 24 h of waiting")
