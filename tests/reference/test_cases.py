"""Values from outside, worked out by CPython; tests/pyodide asks the browser's Python the same."""

import pytest

from calculators.answering import Asking
from calculators.bibliography import bibliography
from calculators.catalogue import calculator_named
from calculators.faces.plain import plain_answer
from tests.reference import Case, cases

WITHOUT_KEY = {"derived", "common practice, no source"}


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.name)
def test_comes_out_as_printed(case):
    answer = plain_answer(calculator_named(case.calculator), Asking(case.given))
    assert case.agrees(answer["results"]), answer["results"]


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.name)
def test_names_its_source(case):
    assert case.source in WITHOUT_KEY or case.source in bibliography()
    assert case.known in {"read", "second-hand", "derived", "rule"}


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.name)
def test_a_number_of_ours_is_not_told_as_the_sources(case):
    """“derived” is for numbers that no source has a part in; under a source's name stands what it prints, or its rule."""
    assert (case.known == "derived") == (case.source in WITHOUT_KEY)


def test_a_value_beyond_the_tolerance_does_not_agree():
    case = Case("", "", {}, "raw_mark - mark", 2.146, "in", 0.0005, "derived", "derived")
    assert case.agrees({"raw_mark": 60.0, "mark": 60.0 - 2.1464 * 25.4})
    assert not case.agrees({"raw_mark": 60.0, "mark": 60.0 - 2.147 * 25.4})
