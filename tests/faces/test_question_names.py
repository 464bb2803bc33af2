"""What the scripts ask is what Python answers: each question has one name, in one list, and somebody who asks it."""

import re
from collections.abc import Iterator, Mapping

import pytest

from calculators.faces.browser import QUESTIONS
from scripts.tools.places import ROOT

SCRIPTS = {each.name: each.read_text("utf-8") for each in (ROOT / "docs/assets/javascript").rglob("*.js")}
LIST = "messages.js"
#: Asked by no page: what published values are checked with, here and in the browser's Python.
ASKED_ELSEWHERE = {"plain": "scripts/checked/cases.py"}


def faults(scripts: Mapping[str, str], answered: set[str]) -> Iterator[str]:
    block = re.search(r"export const Question = Object\.freeze\(\{(.*?)\}\);", scripts[LIST], re.DOTALL)
    named = dict(re.findall(r'^\s*(\w+): "([^"]+)",', block.group(1), re.MULTILINE))
    used: set[str] = set()
    for script, text in scripts.items():
        asked = set(re.findall(r"\bQuestion\.(\w+)", text))
        used |= asked
        yield from (f"{script} asks {name}, which is not in the list" for name in asked - set(named))
        if script != LIST:
            yield from (f"{script} has a name of its own: {loose}" for loose in re.findall(r"\bask: ?[\"'`].*", text))
    yield from (f"nobody asks {name}" for name in set(named) - used)
    yield from (f"Python does not answer “{text}”" for text in set(named.values()) - answered)
    yield from (f"nobody asks “{text}”" for text in answered - set(named.values()))


def test_what_is_asked_is_what_is_answered():
    assert list(faults(SCRIPTS, set(QUESTIONS) - set(ASKED_ELSEWHERE))) == []


@pytest.mark.parametrize(("question", "asker"), ASKED_ELSEWHERE.items())
def test_what_no_page_asks_is_asked_elsewhere(question, asker):
    assert question in QUESTIONS and f'"ask": "{question}"' in (ROOT / asker).read_text("utf-8")


@pytest.mark.parametrize(
    ("script", "change", "says"),
    [
        (LIST, ('JOBS: "jobs"', 'JOBS: "jobz"'), "does not answer “jobz”"),
        (LIST, ('  JOBS: "jobs",\n', ""), "asks JOBS, which is not in the list"),
        (LIST, ('  JOBS: "jobs",\n', '  JOBS: "jobs",\n  LOST: "jobs",\n'), "nobody asks LOST"),
        (LIST, ("Question.JOB_MERGE", "null"), "nobody asks JOB_MERGE"),
        ("jobs-page.js", ("Question.COPY_JOB", '"copy job"'), 'a name of its own: ask: "copy job"'),
        ("widgets.js", ("Question.WALK", "Question.WLAK"), "asks WLAK"),
    ],
)
def test_a_planted_fault_is_found(script, change, says):
    assert change[0] in SCRIPTS[script]
    planted = SCRIPTS | {script: SCRIPTS[script].replace(*change)}
    assert any(says in fault for fault in faults(planted, set(QUESTIONS)))


def test_a_question_that_nobody_asks_is_found():
    assert "nobody asks “old”" in faults(SCRIPTS, {*QUESTIONS, "old"})
