"""The format of a job: every version opens, equal jobs are written alike, what this handbook does not know is kept and
said."""

import json
from fractions import Fraction
from pathlib import Path

import fastjsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.asking.answering import Asking
from calculators.asking.house_method import FORMAT as METHOD_FORMAT
from calculators.batch.walk import BATCH, go
from calculators.documents.job.format import FORMAT, VERSION, migrated, schema
from calculators.documents.job.reading import read_job, written_down
from calculators.documents.json_text import InvalidDocument, write_json
from calculators.documents.versions import Format
from tests.published_schema import check_agreement

SAMPLES = sorted(Path(__file__).parent.glob("samples/job-*.json"))
OURS = {"format": FORMAT, "version": VERSION, "name": "Ours", "walk": "batch"}


def read(**parts):
    return read_job(json.dumps(OURS | parts))


def test_there_is_a_sample_of_every_version():
    assert [path.stem for path in SAMPLES] == [f"job-{version}" for version in range(1, VERSION + 1)]


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_job_of_every_version_opens_and_is_worked_out_anew(path):
    """Arithmetic: 482 of 500 mm is −3.6 %; 5 m × 0.964 = 4820 mm; 478 cm take 10 pieces of 46 cm; 46 − 2 × (1.2 + 2.4)
    = 38.8 cm."""
    job = read_job(path.read_text(encoding="utf-8"))
    results = {step_result.calculator.name: step_result.answer.results for step_result in job.step_results()}
    assert job.name == "Napkins in sage linen"
    assert (results["wash-test"]["change_length"], results["wash-test"]["washed_length"]) == (Fraction(-36, 10), 4820)
    assert results["pieces-from-cloth"]["along"] == 10
    assert results["finished-size"]["finished_width"] == 388, (
        "with the measures of the method that the job was made with"
    )
    assert job.document["ticks"] == {"hem": [1, 2], "press": 12}
    assert job.document["thread"] == "one spool and a half"
    assert job.document["measured"][0]["note"] == "pressed <b>twice</b>"


def test_diagonals_came_with_the_second_version():
    first, second = (read_job(path.read_text(encoding="utf-8")).document for path in SAMPLES[:2])
    assert first["version"] == second["version"] == VERSION
    assert "diagonal_1" not in first["measured"][0]
    assert (second["measured"][0]["diagonal_1"], second["measured"][0]["diagonal_2"]) == ("56.8 cm", "56.5 cm")
    assert second["measured"][1] == {"piece": "7", "width": "40.1 cm", "diagonal_1": "567 mm"}


def test_a_width_written_before_selvedges_were_asked_for_stays_one_without_them():
    old = read_job(json.dumps(OURS | {"version": 2, "typed": {"pieces-from-cloth": {"cloth_width": "140 cm"}}}))
    pieces = next(
        step_result for step_result in old.step_results() if step_result.calculator.name == "pieces-from-cloth"
    )
    assert pieces.answer.results["usable_width"] == 1400
    untouched = read_job(json.dumps(OURS | {"version": 2, "typed": {"pieces-from-cloth": {"piece_width": "40 cm"}}}))
    assert "measured" not in untouched.document["typed"]["pieces-from-cloth"], "nothing was written about the width"


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_written_down_and_read_again_it_is_the_same_byte_for_byte(path):
    once = written_down(read_job(path.read_text(encoding="utf-8")).document)
    assert written_down(read_job(once).document) == once


def test_nothing_worked_out_is_kept():
    text = written_down(read_job(SAMPLES[-1].read_text(encoding="utf-8")).document)
    assert not {"results", "answer", "finished_width", "washed_length", "388", "4820"} & set(
        text.replace('"', " ").split()
    )


def test_bare_numbers_keep_the_ruler_they_were_read_on():
    job = read(typed={"pieces-from-cloth": {"piece_width": "18", "piece_length": "46 cm"}}, read_on="in 1/16")
    assert job.typed["pieces-from-cloth"] == {"piece_width": "18 in", "piece_length": "46 cm"}
    on_either = [
        {step_result.calculator.name: step_result.answer.results for step_result in job.step_results(ruler)}[
            "pieces-from-cloth"
        ]["across"]
        for ruler in ("cm 1/10", "in 1/8")
    ]
    assert on_either[0] == on_either[1]


def test_what_is_not_asked_here_is_kept_and_said_and_not_used():
    job = read(typed={"wash-test": {"of_another_edition": "3"}, "another": {"depth": "2 cm"}})
    assert set(job.messages) == {"typed.wash-test.of_another_edition", "typed.another.depth"}
    assert job.document["typed"] == {"wash-test": {"of_another_edition": "3"}, "another": {"depth": "2 cm"}}
    assert [step_result.answer is not None for step_result in job.step_results()] == [
        step_result.answer is not None for step_result in go(BATCH, {}, Asking({}))
    ]


def test_a_blank_that_cannot_be_used_is_refused_at_its_place_as_when_it_was_typed():
    job = read(typed={"usable-cloth": {"selvedge": "36 banana"}})
    assert (
        "selvedge"
        in {step_result.calculator.name: step_result for step_result in job.step_results()}[
            "usable-cloth"
        ].refusal.sentences
    )


@pytest.mark.parametrize(
    ("data", "words"),
    [
        ([], "not a job"),
        ({"format": METHOD_FORMAT, "version": 1, "name": "x"}, "not a job"),
        (OURS | {"version": VERSION + 1}, "newer handbook"),
        (OURS | {"version": VERSION + 1, "method": {"version": 9}, "more": 1}, "This job was kept by a newer handbook"),
        (OURS | {"version": 10**400}, "newer handbook"),
        (OURS | {"version": True}, "which version"),
        (OURS | {"version": 0}, "which version"),
        (OURS | {"version": 1.0}, "which version"),
        (OURS | {"name": ""}, "name"),
        (OURS | {"walk": "round the houses"}, "walk"),
        (OURS | {"walk": "another-way"}, "does not have"),
        (OURS | {"extra": 1}, "no entry called “extra”"),
        (OURS | {"typed": {"wash-test": {"cloth_width": 1}}}, "typed.wash-test.cloth_width"),
        (OURS | {"typed": {"wash-test": {"__proto__": "1"}}}, "no entry called"),
        (OURS | {"typed": {"wash-test": {"cloth_width": "x" * 4_001}}}, "Keep it to 4,000"),
        (OURS | {"read_on": "cubit"}, "read_on"),
        (OURS | {"archived": "yes"}, "true or false"),
        (OURS | {"ticks": {"hem": -1}}, "from 0 to 100,000"),
        (OURS | {"ticks": {"hem": True}}, "whole number"),
        (OURS | {"ticks": {"hem": ["1"]}}, "whole number"),
        (OURS | {"measured": [{"weight": "1"}]}, "no entry called “weight”"),
        (OURS | {"measured": [{}] * 501}, "Keep to 500"),
        (OURS | {"notes": "a\u202eb"}, "characters that cannot be shown"),
        (OURS | {"method": {"format": METHOD_FORMAT, "version": 99, "name": "x"}}, "newer handbook"),
        (OURS | {"method": OURS}, "not a house method"),
    ],
)
def test_what_is_not_of_the_format_is_refused_in_one_sentence(data, words):
    with pytest.raises(InvalidDocument) as refused:
        read_job(write_json(data))
    assert words in str(refused.value) and "\n" not in str(refused.value)


def test_an_older_version_is_brought_up_step_by_step():
    """With a format of the test's own, since no older version of a job was ever kept."""
    text = {"type": "string", "maxLength": 9}
    shape = {
        "type": "object",
        "properties": {"format": text, "version": {"const": 3}, "third": text},
        "additionalProperties": False,
    }
    steps = {
        1: lambda data: {"format": "x", "version": 2, "second": data["first"]},
        2: lambda data: {"format": "x", "version": 3, "third": data["second"]},
    }
    form = Format("x", 3, lambda: shape, steps)
    assert form.validated(form.migrated({"format": "x", "version": 1, "first": "kept"})) == {
        "format": "x",
        "version": 3,
        "third": "kept",
    }
    assert form.migrated({"format": "x", "version": 2, "second": "kept"})["third"] == "kept"
    with pytest.raises(InvalidDocument, match="newer"):
        form.migrated({"format": "x", "version": 4})
    with pytest.raises(InvalidDocument, match="cannot be used: at its start. There is no entry"):
        form.validated(form.migrated({"format": "x", "version": 3, "fourth": "lost"}))


_texts = st.text(max_size=12) | st.sampled_from(
    ["1 cm", "3/8 in", "in 1/16", FORMAT, "hem", "cm 1/10", "wash-test", "cloth_width", "piece"]
)
_data = st.recursive(
    _texts | st.integers(-2, 3) | st.booleans() | st.none(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_texts, inner, max_size=4),
    max_leaves=8,
)
_near = st.fixed_dictionaries(
    {"format": st.just(FORMAT), "version": st.just(VERSION), "name": st.just("N"), "walk": st.just("batch")},
    optional={
        name: _data
        | st.dictionaries(
            st.sampled_from(["wash-test", "hem", "press"]),
            st.dictionaries(st.sampled_from(["cloth_width", "x"]), _data, max_size=2) | _data,
            max_size=2,
        )
        for name in ("id", "typed", "read_on", "archived", "ticks", "measured", "notes", "time", "x")
    },
)
_published = fastjsonschema.compile(schema())


@given(_near | _data)
def test_the_check_and_the_published_schema_agree(data):
    check_agreement(_published, schema(), data, migrated)


@given(_near)
def test_reading_never_breaks_and_what_was_read_is_written_alike(data):
    try:
        job = read_job(write_json(data))
    except (InvalidDocument, UnicodeEncodeError):
        job = read_job(write_json({name: data[name] for name in ("format", "version", "name", "walk")}))
    assert len(job.step_results()) == len(job.walk.steps)
    text = written_down(job.document)
    assert written_down(read_job(text).document) == text
