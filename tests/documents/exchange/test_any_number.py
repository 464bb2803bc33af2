"""However many things are saved, listed or opened: the work grows as their number does, and no step of it grows.

Counted in calls of functions, which a busy machine does not change."""

import json
import sys

import pytest

from calculators.documents.job.change import begun, changed
from calculators.documents.job.reading import opened, read_job, written_down
from calculators.faces.browser import QUESTIONS
from tests.documents.exchange.test_handing import WRITTEN
from tests.documents.exchange.whole_file import saved

AT = "2026-11-25T08:00:00+01:00"
FEW, MANY = 10, 40
HEAD = '{"format":"workroom","version":4,"kept":[]}'


def job(number: int, states: int = 3) -> list[dict[str, str]]:
    document = changed(opened(begun(f"job-{number}", f"Job {number}", "batch", WRITTEN)), {"notes": "Pressed twice."})
    made = []
    for at in range(states):
        document = changed(opened(document), {"measured.0.width": f"{40 + at % 7} cm"})
        made.append({"at": AT, "revision": at + 1, "text": written_down(document)})
    return made


def entries(count: int) -> list[str]:
    return [saved("job", f"job-{number}", job(number)) for number in range(count)]


def newest(count: int) -> list[dict[str, str]]:
    return [{"id": f"job-{number}", "at": AT, "text": job(number)[-1]["text"]} for number in range(count)]


#: Question → what it is asked about so many things.
ASKED = {
    "save some": lambda count: {
        "documents": [{"kind": "job", "id": f"job-{number}", "versions": job(number)} for number in range(count)]
    },
    "count": lambda count: {"head": HEAD, "entries": entries(count)},
    "handed some": lambda count: {
        "version": 4, "first": 0, "folded": True, "entries": [{"text": each, "mine": ""} for each in entries(count)],
    },
    "take": lambda count: {
        "version": 4, "entries": [{"text": each, "mine": "", "id": f"k{at}"} for at, each in enumerate(entries(count))],
    },
    "jobs": lambda count: {"jobs": newest(count), "ruler": "", "home": "/"},
    "methods": lambda count: {
        "methods": [json.dumps({**json.loads(WRITTEN), "name": f"Method {at}"}) for at in range(count)]
    },
    "job changes": lambda count: {"versions": job(0, count)},
    "method changes": lambda count: {
        "versions": [
            {"at": AT, "revision": at, "text": json.dumps({**json.loads(WRITTEN), "name": f"Method {at}"})}
            for at in range(count)
        ]
    },
}  # fmt: skip


def steps(question: str, asked: dict) -> list[int]:
    """How many functions were called in each step of an answer."""
    made, calls = [], 0

    def note(frame, event, argument):
        nonlocal calls
        calls += event == "call"

    sys.setprofile(note)
    try:
        for _ in QUESTIONS[question](asked):
            made.append(calls)
            calls = 0
    finally:
        sys.setprofile(None)
    return made


@pytest.mark.parametrize("question", ASKED)
def test_four_times_as_many_take_four_times_the_work_and_no_longer_step(question):
    read_job.cache_clear()
    list(QUESTIONS[question](ASKED[question](2)))  # what is worked out once for all is worked out now
    few, many = (steps(question, ASKED[question](count)) for count in (FEW, MANY))
    assert len(many) >= MANY - 1, "each thing is a step of its own"
    assert sum(many) < 1.5 * MANY / FEW * sum(few)
    assert max(many) < 2 * max(few)


@pytest.mark.parametrize("question", ["save some", "take"])
def test_no_step_grows_with_how_often_a_thing_was_changed(question):
    def asked(states: int) -> dict:
        if question == "save some":
            return {"documents": [{"kind": "job", "id": "job-0", "versions": job(0, states)}]}
        return {"version": 4, "entries": [{"text": saved("job", "job-0", job(0, states)), "mine": "", "id": "k"}]}

    list(QUESTIONS[question](asked(2)))
    few, many = (steps(question, asked(states)) for states in (15, 120))
    assert len(many) > 3 * len(few)
    assert max(many) < 4 * max(few)


def test_what_is_written_in_few_words_and_is_long_is_taken_out_in_several_goes():
    """Three jobs of 200 states, each with long notes: their file is hardly longer than the notes."""
    text = written_down(changed(opened(json.loads(job(0)[0]["text"])), {"notes": "Pressed twice. " * 600}))
    states = [{"at": AT, "text": text.replace("40 cm", f"{at} cm")} for at in range(200)]
    left = [{"text": saved("job", f"j{at}", states), "mine": "", "id": f"j{at}"} for at in range(3)]
    found = []
    while left:
        *_, reply = QUESTIONS["take"]({"version": 4, "entries": left})
        assert reply["taken"] == len(reply["documents"]) == 1
        left, found = left[reply["taken"] :], [*found, *reply["documents"]]
    assert [len(each["versions"]) for each in found] == [200] * 3


def test_a_question_of_one_step_is_found():
    """The check can fail: all in one go is one long step."""

    def in_one_go(asked):
        yield [*QUESTIONS["jobs"](asked)][-1]

    QUESTIONS["in one go"] = in_one_go
    try:
        assert len(steps("in one go", ASKED["jobs"](FEW))) == 1
    finally:
        del QUESTIONS["in one go"]
