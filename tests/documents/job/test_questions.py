"""What the browser asks about jobs: begun with what was typed and ticked so far, opened with units, copied without its
ticks."""

import json
from pathlib import Path

from calculators.documents.job.change import begun, changed
from calculators.documents.job.reading import opened, written_down
from calculators.faces.browser import replies

JOB = (Path(__file__).parent / "samples/job-1.json").read_text(encoding="utf-8")


def ask(**request):
    return json.loads(list(replies(json.dumps(request)))[-1])


def new(**more):
    return json.loads(
        ask(
            ask="new job",
            id="j",
            at="2026-11-25T10:00:00+01:00",
            walk="batch",
            ruler="in 1/16",
            method="",
            **{"typed": {}, **more},
        )["job"]
    )


def test_a_new_job_takes_over_what_was_typed_ticked_and_measured_for_the_batch():
    loose = written_down(
        changed(
            opened(begun("batch", "This batch", "batch", "")),
            {"ticks.press": "6", "measured.0.width": "40 cm", "cloth": "Linen lawn"},
        )
    )
    job = new(typed={"pieces-from-cloth": {"piece_width": "18"}}, loose=loose)
    assert (job["name"], job["typed"]) == ("Job of 25 November 2026", {"pieces-from-cloth": {"piece_width": "18 in"}})
    assert (job["ticks"], job["measured"], job["cloth"]) == ({"press": 6}, [{"width": "40 cm"}], "Linen lawn")
    assert (job["id"], job["read_on"]) == ("j", "in 1/16")
    assert "ticks" not in new(loose="{damaged")


def test_a_job_says_when_its_measures_are_not_those_of_the_other_pages():
    apart = ask(ask="job opened", job=JOB, method="")
    assert apart["isApart"] and "Take over the measures" in apart["about"] and "Summer linen" in apart["about"]
    same = ask(ask="job opened", job=JOB, method=apart["method"])
    assert not same["isApart"] and "Take over" not in same["about"]
    assert same["typed"]["wash-test"]["before_length"] == "500 mm"


def test_a_job_does_not_say_so_where_only_words_differ():
    """Another name, other reasons, a length written otherwise, the handbook's own number written down: the pages show
    the same numbers."""
    method = {"format": "house method", "version": 1, "name": "Ours"}
    written = {
        "cloth_length": {"cm": "3.2 m", "in": "3 yd 18 in"},
        "turn": {"value": {"cm": "10 mm", "in": "3/8 in"}, "why": "Ours."},
    }
    words = {**method, "measures": written, "texts": {"opening": "**Ours**"}}
    for mine in (method, words):
        job = json.dumps({"format": "job", "version": 1, "name": "Napkins", "walk": "batch", "method": mine})
        for theirs in ("", json.dumps({**method, "name": "Theirs"})):
            opened_job = ask(ask="job opened", job=job, method=theirs)
            assert not opened_job["isApart"] and "other numbers" not in opened_job["about"]
        other = json.dumps({**method, "measures": {"turn": "9 mm"}})
        assert ask(ask="job opened", job=job, method=other)["isApart"]
        reasons = json.dumps({**method, "tables": {"pieces": [{"piece": "Napkin", "turn": "1 cm"}]}})
        assert ask(ask="job opened", job=job, method=reasons)["isApart"], "another table of pieces gives other numbers"


def test_a_copy_is_the_same_batch_with_nothing_ticked_or_measured():
    copy = json.loads(ask(ask="copy job", job=JOB, id="k")["job"])
    assert copy["name"] == "Napkins in sage linen, a copy" and copy["id"] == "k"
    assert not {"ticks", "measured", "archived"} & set(copy) and copy["thread"] == "one spool and a half"


def test_each_job_is_listed_where_it_stands_among_those_asked_for():
    away = json.dumps({**json.loads(JOB), "name": "Away", "archived": True})
    records = [
        {"id": name, "at": f"2026-11-2{day}T10:00:00+01:00", "text": text}
        for day, (name, text) in enumerate([("a", JOB), ("b", away), ("c", JOB.replace("sage", "blue")), ("d", "{")])
    ]
    items = ask(ask="jobs", jobs=records, ruler="", home="../")["items"]
    words = ("Napkins in sage linen", "Back to work", "Napkins in blue linen", "cannot be read here")
    assert len(items) == 4 and all(word in item for word, item in zip(words, items))
    assert "No job is kept" in ask(ask="jobs", jobs=[], ruler="", home="../")["none"]


def test_what_is_too_long_for_a_job_is_said_where_one_is_begun_with_it():
    reply = ask(
        ask="new job",
        id="j",
        at="2026-11-25T10:00:00+01:00",
        walk="batch",
        ruler="",
        method="",
        typed={"pieces-from-cloth": {"piece_width": "1" * 5_000}},
    )
    assert "5,000 characters" in reply["trouble"]
