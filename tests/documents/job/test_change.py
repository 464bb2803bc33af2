"""Changing a job entry by entry, comparing two, and bringing two windows together without losing anything in
silence."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.catalogue import calculator_named
from calculators.documents.job.change import begun, changed
from calculators.documents.job.difference import differences
from calculators.documents.job.format import (
    LONGEST_NAME,
    LONGEST_NOTE,
    LONGEST_TYPED,
    MEASURED,
    MOST_MEASURED,
    VERSION,
    normal,
)
from calculators.documents.job.merge import merged
from calculators.documents.job.reading import LONGEST, opened, read_job, written_down
from calculators.values.kind import InvalidValue

SAMPLE = read_job((Path(__file__).parent / "samples/job-1.json").read_text(encoding="utf-8"))


def job(**changes):
    """A small job with entries changed."""
    return opened(
        changed(
            opened(begun("j", "Towels", "batch", "")),
            {path.replace("__", "."): text for path, text in changes.items()},
            "cm 1/10",
        )
    )


def test_every_kind_of_entry_is_written_and_taken_out_again():
    written = {
        "name": "Runners", "notes": " two\r\nlines ", "thread": "a spool", "time": "3 h", "cost": "40",
        "archived": "yes",
        "typed.wash-test.cloth_width": "140", "ticks.hem": "3", "ticks.press": "[2, 1, 2]", "measured.0.piece": "first",
        "measured.0.width": "40 cm",
    }  # fmt: skip
    document = changed(job(), written, "cm 1/10")
    assert document == normal(
        {
            "format": "job", "version": VERSION, "id": "j", "name": "Runners", "walk": "batch", "notes": "two\nlines",
            "thread": "a spool", "time": "3 h", "cost": "40", "archived": True,
            "typed": {"wash-test": {"cloth_width": "140 cm"}}, "read_on": "cm 1/10",
            "ticks": {"hem": 3, "press": [1, 2]}, "measured": [{"piece": "first", "width": "40 cm"}],
        }
    )  # fmt: skip
    emptied = changed(
        opened(document),
        {path: "" for path in written if path != "name" and not path.startswith("measured")}
        | {"measured.0": "", "name": "Towels"},
    )
    assert emptied == job().document


def test_a_bare_number_keeps_its_ruler_when_another_is_taken_in_hand():
    first = changed(job(), {"typed.pieces-from-cloth.piece_width": "18"}, "in 1/16")
    second = changed(opened(first), {"typed.pieces-from-cloth.piece_length": "46"}, "cm 1/10")
    assert second["typed"]["pieces-from-cloth"] == {"piece_width": "18 in", "piece_length": "46 cm"}


def test_what_this_edition_does_not_ask_stays_through_a_change():
    document = changed(SAMPLE, {"name": "Renamed"}, "in 1/16")
    assert document["typed"]["a-calculator-of-another-edition"] == {"depth": "2 cm"}
    assert document["typed"]["wash-test"]["cloth_width"] == "1420 mm"
    assert document["method"] == SAMPLE.document["method"]


@pytest.mark.parametrize(
    ("path", "text", "words"),
    [
        ("name", " ", "needs a name"), ("name", "x" * 81, "Keep it to 80"),
        ("notes", "x" * 10_001, "Keep it to 10,000"), ("time", "\u202e", "cannot be shown"),
        ("ticks.hem", "many", "whole pieces"), ("ticks.hem", "-1", "from 0"), ("ticks.hem", "1.5", "whole number"),
        ("ticks.hem", '["x"]', "whole number"),
        ("measured.5.width", "1", "no longer there"), ("measured.0.weight", "1", "no entry called"),
        ("typed.wash-test.cloth_width", "9" * 4_001, "Keep it to 4,000"),
    ],
)  # fmt: skip
def test_what_cannot_be_kept_is_refused_in_one_sentence(path, text, words):
    with pytest.raises(InvalidValue, match=words):
        changed(job(), {path: text})


def test_differences_are_told_in_the_words_of_the_trade():
    other = changed(
        SAMPLE,
        {"typed.wash-test.cloth_width": "150 cm", "ticks.hem": "[1, 2, 3]", "measured.0.width": "40 cm", "time": ""},
    )
    assert [
        (each.label, each.one, each.other)
        for each in differences(SAMPLE.document, other)
        if each.label.startswith(("Wash test: Width", "Ticked", "Measured", "Time"))
    ] == [
        ("Wash test: Width of the cloth in hand", "1420 mm", "150 cm"),
        ("Ticked: hem", "bundles 1, 2", "bundles 1, 2, 3"),
        (
            "Measured, line 1",
            "piece first of bundle 1, width 40.2 cm, length 40 cm, note pressed <b>twice</b>",
            "piece first of bundle 1, width 40 cm, length 40 cm, note pressed <b>twice</b>",
        ),
        ("Time, your own figure", "about 4 hours with pressing", ""),
    ]
    assert [
        each.other for each in differences(SAMPLE.document, changed(SAMPLE, {"method": ""})) if each.path == "method"
    ] == ["the handbook’s own"]
    assert differences(SAMPLE.document, SAMPLE.document) == []


def test_two_windows_that_change_different_entries_both_keep_theirs():
    base = job(ticks__hem="[1, 2]", measured__0__piece="first", notes="old")
    mine = changed(
        base, {"typed.wash-test.cloth_width": "140 cm", "ticks.hem": "[1, 2, 3]", "measured.1.piece": "second"}
    )
    theirs = changed(
        base,
        {"typed.wash-test.cloth_length": "3 m", "ticks.hem": "[2, 4]", "measured.1.piece": "third", "notes": "new"},
    )
    document, both = merged(base.document, mine, theirs)
    assert both == []
    assert document["typed"] == {"wash-test": {"cloth_width": "140 cm", "cloth_length": "3 m"}}
    assert document["ticks"] == {"hem": [2, 3, 4]}, "one window ticked 3, the other ticked 4 and took 1 back"
    assert [row["piece"] for row in document["measured"]] == ["first", "third", "second"]
    assert document["notes"] == "new"


def test_an_entry_that_both_changed_is_mine_and_is_said():
    base = job(time="1 h")
    document, both = merged(
        base.document,
        changed(base, {"time": "2 h", "ticks.press": "4"}),
        changed(base, {"time": "3 h", "ticks.press": "5"}),
    )
    assert (document["time"], document["ticks"]) == ("2 h", {"press": 4})
    assert [(each.label, each.one, each.other) for each in both] == [
        ("Time, your own figure", "3 h", "2 h"),
        ("Ticked: press", "5", "4"),
    ]


_ENTRY = st.sampled_from(
    [
        "name",
        "notes",
        "thread",
        "archived",
        "typed.wash-test.cloth_width",
        "typed.finished-size.hem",
        "ticks.hem",
        "ticks.press",
        "measured.0.piece",
        "measured.0.note",
    ]
)
_VALUES = {
    "archived": st.sampled_from(["yes", ""]),
    "ticks.hem": st.sampled_from(["1", "7", ""]),
    "ticks.press": st.sampled_from(["[1]", "[1, 2]", "[5]", ""]),
}
_changes = st.lists(_ENTRY, max_size=4, unique=True).flatmap(
    lambda paths: st.fixed_dictionaries(
        {path: _VALUES.get(path, st.sampled_from(["1 cm", "2 cm", "x"])) for path in paths}
    )
)


@given(_changes, _changes, _changes)
def test_no_change_is_lost_in_silence(first, here, there):
    """Every entry I changed stands as I left it; every one they alone changed stands as they left it; what both changed
    is said."""
    base = opened(changed(job(), first))
    mine, theirs = changed(base, here), changed(base, there)
    document, both = merged(base.document, mine, theirs)
    said = {each.path for each in both}
    for path in ("name", "notes", "thread", "archived"):
        was, my, their, now = (each.get(path) for each in (base.document, mine, theirs, document))
        assert now == (my if my != was else their)
        if my != was and their not in (was, my):
            assert path in said
    for row in (*mine.get("measured", []), *theirs.get("measured", [])):
        if row not in base.document.get("measured", []):
            assert row in document["measured"]
    assert merged(base.document, mine, base.document) == (mine, [])
    assert merged(base.document, base.document, theirs) == (theirs, [])
    assert json.loads(json.dumps(document)) == normal(document)


def test_no_blank_lets_a_job_grow_past_what_can_be_read():
    """Each entry is as short as its own blank asks for, and all together are too long: refused at the last one."""
    row = {name: "m" * (LONGEST_NOTE if name == "note" else LONGEST_NAME) for name in MEASURED}
    document, refused = normal({**job().document, "measured": [row] * MOST_MEASURED}), ""
    for calculator in SAMPLE.walk.steps:
        for field in calculator_named(calculator.calculator).fields:
            path = f"typed.{calculator.calculator}.{field.name}"
            try:
                document = changed(opened(document), {path: '"' * LONGEST_TYPED})
            except InvalidValue as error:
                refused = str(error)
        if refused:
            break
    assert "no room for this" in refused and "\n" not in refused
    assert LONGEST - 3 * LONGEST_TYPED < len(written_down(document)) <= LONGEST
    assert read_job.__wrapped__(written_down(document)).document == document
