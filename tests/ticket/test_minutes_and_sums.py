"""The minutes of the house cover every step of its ticket and go only to the kinds they name; what cannot be cut never
leads a sum."""

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from bs4 import BeautifulSoup
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer, filled
from calculators.asking.house_method import kinds_named
from calculators.asking.site_method import site_method
from calculators.batch.walk import BATCH, go
from calculators.catalogue import calculator_named
from calculators.documents.house_method.sections import STEPS
from calculators.faces.job.walk import walk_replies
from calculators.ticket.batch import batch_of
from calculators.ticket.steps import ticket_steps
from calculators.ticket.sums import sums

METHOD = site_method()
KINDS = ("", *(kind.lower() for kind in METHOD.kinds_of_piece))


def batch(typed, method=METHOD):
    return batch_of(go(BATCH, typed, Asking({}, method=method)), method)


@pytest.mark.parametrize("kind", KINDS)
def test_every_step_of_the_ticket_has_its_minutes(kind):
    typed = {"order": {"piece": kind}} if kind else {}
    timed = {line["step"]: line["minutes"] for line in (METHOD.for_kind(kind) if kind else METHOD).steps_of_its_kind}
    assert [step.title for step in ticket_steps(batch(typed)) if not timed.get(step.title)] == []


def minutes(method, kind):
    step_result = go(BATCH, {"order": {"piece": kind}} if kind else {}, Asking({}, method=method))[-1]
    return {
        name: step_result.asking.value(calculator_named("thread-time-cost").field(name))
        for name in ("minutes_batch", "minutes_piece", "waiting_batch")
    }


@pytest.mark.parametrize("for_each", dict(STEPS.columns[2].kind.options))
@given(named=st.lists(st.sampled_from(KINDS[1:]), unique=True))
@settings(max_examples=15)
def test_a_step_counts_for_the_kinds_it_names_and_for_no_other(for_each, named):
    step = {
        "step": "Buttonholes",
        "minutes": "3.5",
        "for_each": for_each,
        "kinds": ", ".join(kind.upper() for kind in named),
    }
    more = replace(METHOD, tables={**METHOD.tables, "steps": (*METHOD.tables["steps"], step)})
    assert len(kinds_named(step)) == len(named)
    for kind in KINDS:
        assert (minutes(more, kind) != minutes(METHOD, kind)) == (not named or kind in named), kind


def test_the_minutes_of_a_piece_follow_its_size():
    small, large = (
        go(BATCH, {"pieces-from-cloth": {"piece_width": size, "piece_length": size}}, Asking({}))[-1].answer.results[
            "time_piece"
        ]
        for size in ("26 cm", "66 cm")
    )
    assert large > small


LEADS_WITH_MONEY = re.compile(r"[€$£]|\d h |\d min")


@given(st.integers(1, 60), st.integers(60, 900), st.booleans())
@settings(max_examples=60, deadline=None)
def test_what_cannot_be_cut_never_leads(ordered, cloth, with_prices):
    """Orders and cloths: batch and ticket first say how many the cloth gives, then what those cost, then the order and
    its cloth."""
    method = METHOD if with_prices else replace(METHOD, tables={**METHOD.tables, "prices": ()})
    typed = {"order": {"ordered": str(ordered)}, "wash-test": {"cloth_length": f"{cloth} cm"}}
    step_results = go(BATCH, typed, Asking({}, method=method))
    gives, last = step_results[3].answer.results["count"], step_results[-1]
    alone = go(BATCH, {**typed, "order": {"ordered": str(min(ordered, gives))}}, Asking({}, method=method))[
        -1
    ].answer.results
    told = (
        BeautifulSoup(
            walk_replies(BATCH, typed, Asking({}, method=method))["thread-time-cost"]["answer"], "html.parser"
        )
        .select_one(".spoken")
        .text
    )
    on_the_ticket = sums(batch_of(step_results, method), {})
    lead = f"{ordered} wanted; this cloth gives {gives}. Those {gives}: "
    assert last.answer.results["made"] == min(ordered, gives)
    assert {name: last.answer.results[name] for name in ("total", "each", "time", "thread")} == {
        name: alone[name] for name in ("total", "each", "time", "thread")
    }
    if ordered > gives:
        assert told.startswith(lead) and all(setting.text.startswith(lead) for setting in on_the_ticket if setting.text)
        assert (
            last.answer.results["one_more"] is None and last.answer.results["time_whole"] > last.answer.results["time"]
        )
        whole = next(setting for setting in on_the_ticket if setting.name == "sum-time").why
        assert whole.startswith(f"All {ordered}, with ") and " of cloth: " in whole
    else:
        assert "this cloth gives" not in told and last.answer.results["time_whole"] is None


@given(st.integers(1, 60), st.integers(60, 900))
@settings(max_examples=60, deadline=None)
def test_cloth_is_charged_by_the_rows_that_are_cut(ordered, cloth):
    """Rows counted by hand: so many of all that the cloth gives, and one more piece costs its share of those."""
    typed = {"order": {"ordered": str(ordered)}, "wash-test": {"cloth_length": f"{cloth} cm"}}
    step_results = go(BATCH, typed, Asking({}, method=METHOD))
    pieces, results = step_results[3].answer.results, step_results[-1].answer.results
    across, along = pieces["across"], pieces["along"]
    rows = min(-(-ordered // across), along)
    price = step_results[-1].asking.value(calculator_named("thread-time-cost").field("price_cloth"))
    assert results["cloth_taken"] == Fraction(cloth * 10 * rows, along)
    assert results["cost_cloth"] == results["cloth_taken"] * price / 1000
    note = walk_replies(BATCH, typed, Asking({}, method=METHOD))["thread-time-cost"]["answer"]
    assert ("is left for other work" in note) == (rows < along)
    cost = next(setting for setting in sums(batch(typed), {}) if setting.name == "sum-cost")
    assert ("the rest is left" in cost.why) == (rows < along)
    if ordered < pieces["count"]:
        assert results["one_more"] < results["each"]


@given(st.integers(2, 500), st.integers(1, 500), st.booleans())
@settings(max_examples=60, deadline=None)
def test_on_its_own_page_too(pieces, gives, is_known):
    typed = {"pieces": str(pieces), "gives": str(gives), **({"cloth_more": "2 m"} if is_known else {})}
    calculator = calculator_named("thread-time-cost")
    reply = answer(calculator, Asking(typed))
    spoken = filled(reply.spoken, calculator, Asking({}).ruler)
    before_any_amount = spoken[: LEADS_WITH_MONEY.search(spoken).start()]
    assert ("wanted; this cloth gives" in before_any_amount) == (gives < pieces)
    assert (reply.results["total_whole"] is not None) == (gives < pieces and is_known)


def test_the_ticket_says_too_what_its_cost_lacks_a_price_for():
    prices = [line for line in METHOD.tables["prices"] if line["per"] in ("hour", "spool")]
    without = replace(METHOD, tables={**METHOD.tables, "prices": tuple(prices)})
    whole, lacking = (next(each for each in sums(batch({}, method), {}) if each.name == "sum-cost")
        for method in (METHOD, without))  # fmt: skip
    assert "without" not in whole.text and "without the cloth" in lacking.text
