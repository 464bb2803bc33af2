"""The page's line to Python: every question ends in an answer or in one sentence."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

LINE = "const { ask, onState, wake } = await import('./assets/javascript/python.js');"
REPORT = (
    "const reported = (call) => call.then((answer) => answer, (problem) => ({ kind: problem.kind ?? "
    "problem.name, "
    "sentence: problem.message }));"
)


@pytest.fixture
def small_page(browser: Browser, small_address: str) -> Iterator[Page]:
    context = browser.new_context()
    page = context.new_page()
    page.goto(small_address)
    yield page
    context.close()


def run(page: Page, program: str):
    return page.evaluate(f"async () => {{ {LINE} {REPORT} {program} }}")


def test_an_answer_comes_from_the_snapshot(small_page: Page):
    answer, states = run(
        small_page,
        "const states = []; onState((state) => states.push(state));"
        "return [await ask({ do: 'add', a: '1/3', b: '1/6' }), states];",
    )
    assert answer == {"final": True, "sum": "1/2", "read": 25}
    assert [state["name"] for state in states][:2] == ["asleep", "waking"]
    assert {name: states[-1][name] for name in ("name", "sentence", "way", "passedOver", "awaited")} == {
        "name": "ready", "sentence": "The calculators are awake.", "way": "snapshot", "passedOver": "", "awaited": True,
    }  # fmt: skip
    arrived = [state["done"] for state in states if "done" in state]
    assert arrived == sorted(arrived) and arrived[-1] > 10_000_000


def test_partial_answers_come_in_order(small_page: Page):
    steps, last = run(
        small_page,
        "const steps = []; const last = await ask({ do: 'improve', steps: 5 }, { onPartial: (reply) => "
        "steps.push(reply.step) });"
        "return [steps, last];",
    )
    assert steps == [0, 1, 2, 3]
    assert last == {"final": True, "step": 4}


def test_a_short_question_is_answered_beside_a_long_one_and_the_long_one_can_be_cancelled(small_page: Page):
    first, problem, after = run(
        small_page,
        "const stop = new AbortController(); let steps = 0;"
        "const long = reported(ask({ do: 'improve', steps: 1e6 }, { signal: stop.signal, onPartial: () => steps++ }));"
        "const first = await ask({ do: 'add', a: '1', b: '1' });"
        "stop.abort(); const problem = await long; const then = steps;"
        "await ask({ do: 'add', a: '1', b: '2' }); return [first.sum, problem.kind, steps - then];",
    )
    assert (first, problem, after) == ("2", "AbortError", 0)


def test_a_question_already_given_up_is_not_asked(small_page: Page):
    assert (
        run(small_page, "return (await reported(ask({ do: 'chance' }, { signal: AbortSignal.abort() }))).kind;")
        == "AbortError"
    )


def test_an_error_in_a_calculator_becomes_a_sentence_and_python_lives_on(small_page: Page):
    problem, unfinished, answer, starts = run(
        small_page,
        "let starts = 0; onState((state) => (starts += state.name === 'ready'));"
        "return [await reported(ask({ do: 'fail' })), await reported(ask({ do: 'forget_to_finish' })),"
        " (await ask({ do: 'add', a: '1', b: '1' })).sum, starts];",
    )
    assert problem == {"kind": "broken", "sentence": "This could not be worked out. The last answer is still shown."}
    assert unfinished["kind"] == "broken"
    assert (answer, starts) == ("2", 1)


def test_what_the_snapshot_lacks_is_found_in_the_library(small_page: Page):
    found, ways = run(
        small_page,
        "const ways = []; onState((state) => state.way && ways.push(state.way));"
        "return [(await ask({ do: 'lack' })).found, ways];",
    )
    assert (found, ways) == ("quopri", ["snapshot", "library"])


def test_a_question_that_stops_python_twice_is_given_up(small_page: Page):
    problem, answer = run(
        small_page,
        "return [await reported(ask({ do: 'lack_altogether' })), (await ask({ do: 'add', a: '1', b: '1' })).sum];",
    )
    assert problem["kind"] == "lost"
    assert answer == "2"


def test_a_silent_python_is_replaced_and_the_other_questions_are_repeated(small_page: Page):
    problem, answer = run(
        small_page,
        "await ask({ do: 'chance' }); const silent = reported(ask({ do: 'never_end' }, { timeout: 700 }));"
        "const other = ask({ do: 'add', a: '2', b: '2' }); return [await silent, (await other).sum];",
    )
    assert problem == {
        "kind": "silent",
        "sentence": "This took too long and was stopped. The last answer is still shown.",
    }
    assert answer == "4"


def test_chance_is_fresh_at_every_start_and_sets_keep_their_order(browser: Browser, small_address: str):
    seen = []
    for _ in range(2):
        context = browser.new_context()
        page = context.new_page()
        page.goto(small_address)
        seen.append(run(page, "return [(await ask({ do: 'chance' })).random, (await ask({ do: 'order' })).order];"))
        context.close()
    (chance, order), (other_chance, other_order) = seen
    assert chance != other_chance
    assert order == other_order


def test_memory_can_grow_after_a_start_from_the_snapshot(small_page: Page):
    assert run(small_page, "return (await ask({ do: 'grow', mebibytes: 96 })).kept;") == 96 << 20
