"""Long work gives ever better answers, and can be broken off between them."""

import json
from dataclasses import replace

from calculators.asking.answering import Asking, answer, answers
from calculators.catalogue import calculator_named
from calculators.faces import browser

MITRE = calculator_named("mitre-marks")


def improving(given):
    first = MITRE.work(given)
    yield first
    yield None
    yield replace(first, results={**first.results, "mark_1": 1})


def test_the_last_answer_counts():
    calculator = replace(MITRE, work=improving)
    assert [each and each.results["mark_1"] for each in answers(calculator, Asking({}))] == [40, None, 1]
    assert answer(calculator, Asking({})).results["mark_1"] == 1


def test_the_browser_hears_of_every_step_and_of_the_end_once(monkeypatch):
    monkeypatch.setattr(browser, "calculator_named", lambda name: replace(MITRE, work=improving))
    request = {"ask": "calculator", "calculator": "mitre-marks", "given": {}, "typed": {}, "ruler": ""}
    steps = [json.loads(text) for text in browser.replies(json.dumps(request))]
    assert ["final" in step for step in steps] == [False, True]
    assert "4\N{NO-BREAK SPACE}cm" in steps[0]["answer"] and "0.1\N{NO-BREAK SPACE}cm" in steps[1]["answer"]


def test_an_answer_is_told_at_the_next_step_and_moments_between_are_told_apart(monkeypatch):
    def slow(given):
        yield from (None, MITRE.work(given), None, None)

    monkeypatch.setattr(browser, "calculator_named", lambda name: replace(MITRE, work=slow))
    request = {"ask": "calculator", "calculator": "mitre-marks", "given": {}, "typed": {}, "ruler": ""}
    steps = [json.loads(text) for text in browser.replies(json.dumps(request))]
    assert ["working" if "working" in step else "final" if "final" in step else "partial" for step in steps] == [
        "working", "partial", "working", "final",
    ]  # fmt: skip
