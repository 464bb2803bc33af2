"""CPython and the browser's Python give the same answers to the same questions, and agree with the world outside."""

import json
import random
import sys
from itertools import cycle

import pytest

from calculators.batch.walk import WALKS
from calculators.catalogue import catalogue
from calculators.faces.browser import replies
from tests.any_numbers import RULERS, any_numbers
from tests.bad_values import BEYOND_LIMITS, EMPTY, IMPOSSIBLE_TOGETHER, OTHER_KINDS, REFUSED_EVERYWHERE
from tests.reference import cases

each_calculator = pytest.mark.parametrize("name", catalogue())


def in_cpython(request):
    return [json.loads(text) for text in replies(json.dumps(request))]


def questions(name, typed, ruler=""):
    """The two questions about one calculator: what a page shows, and plain data."""
    yield {"ask": "calculator", "calculator": name, "given": {}, "typed": typed, "ruler": ruler}
    yield {"ask": "plain", "calculator": name, "typed": typed, "ruler": ruler}


def same(in_pyodide, asked):
    """Both give the same to all of these; what they gave to the last."""
    for request in asked:
        both = in_cpython(request)
        assert in_pyodide(request) == both, request
    return both


def test_it_is_another_python(line_to_pyodide):
    version, platform = line_to_pyodide("version")
    assert platform == "emscripten" and version.startswith("3.14.")
    assert sys.platform != platform


def test_a_traceback_names_every_function_by_its_first_line(line_to_pyodide):
    """No other line travels with it (scripts/runtime/compile.py)."""
    told = line_to_pyodide("traceback")
    assert [name for name, *_ in told][:1] == ["replies"] and len(told) > 2
    assert all(line == first for _, line, first in told)


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.name)
def test_published_values_come_out_as_printed(case, in_pyodide):
    (answer,) = in_pyodide(case.question)
    assert case.agrees(answer["results"]), answer["results"]


@each_calculator
def test_house_numbers_and_worked_examples(name, in_pyodide):
    for ruler in RULERS:
        same(in_pyodide, questions(name, {}, ruler))
    for example, ruler in zip(catalogue()[name].examples, cycle(RULERS)):
        same(in_pyodide, questions(name, dict(example.given), ruler))


@each_calculator
def test_many_numbers(name, in_pyodide):
    chance = random.Random(f"many numbers for {name}")
    answered = 0
    for tried in range(300):
        if tried >= 30 and answered >= 10:
            break
        numbers = any_numbers(catalogue()[name], chance)
        plain = same(in_pyodide, questions(name, numbers, chance.choice(RULERS)))
        answered += "results" in plain[-1]
    assert answered >= 10, "the numbers tried hardly ever go together"


@each_calculator
def test_bad_values(name, in_pyodide):
    first = catalogue()[name].fields[0].name
    typed = [{first: bad} for bad in (*REFUSED_EVERYWHERE, *EMPTY)]
    typed += [{field: bad} for calculator, field, bad in (*BEYOND_LIMITS, *OTHER_KINDS) if calculator == name]
    typed += [together for calculator, together, _ in IMPOSSIBLE_TOGETHER if calculator == name]
    for texts in typed:
        same(in_pyodide, questions(name, texts))


@pytest.mark.parametrize("walk", WALKS)
def test_walks(walk, in_pyodide):
    for typed in ({}, {"wash-test": {"after_length": "48.5 cm"}}, {"wash-test": {"after_length": "36 banana"}}):
        for ruler in ("", "in 1/16"):
            same(in_pyodide, [{"ask": "walk", "walk": walk, "typed": typed, "ruler": ruler}])


def test_numbers_in_sentences(in_pyodide):
    wanted = [
        {"calculator": name, "result": result.name, "given": {}}
        for name, calculator in catalogue().items()
        for result in calculator.results
    ]
    same(
        in_pyodide,
        [
            {
                "ask": "numbers",
                "numbers": wanted,
                "values": ["1/4 in", "8–12 in", "350 mm"],
                "figures": [],
                "ruler": ruler,
            }
            for ruler in RULERS
        ],
    )
