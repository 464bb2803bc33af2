"""Handing a method or a job over: whole and the same at the other end; shown before it is kept; everything in one file
and back."""

import base64
import json
import random
import zlib
from base64 import urlsafe_b64encode
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from hypothesis import given
from hypothesis import strategies as st

from calculators.asking.site_method import site_document
from calculators.documents.exchange.backup import (
    LONGEST_ENTRY,
    LONGEST_HISTORY,
    MOST_CHANGES,
    VERSION,
    with_room,
)
from calculators.documents.exchange.share_link import handed, packed, unpacked
from calculators.documents.house_method.format import normal
from calculators.documents.house_method.reading import read_method, written_down
from calculators.documents.job.change import changed
from calculators.documents.job.format import VERSION as JOB_VERSION
from calculators.documents.job.reading import opened
from calculators.documents.job.reading import written_down as job_written_down
from calculators.documents.json_text import LONGEST, InvalidDocument, read_json, write_json
from calculators.documents.merge_patch import patch, patched
from tests.documents.exchange.whole_file import ask, file_of, keep, read_file, saved, versions
from tests.documents.exchange.whole_file import handed as opened_file

HERE = Path(__file__).parent
SAMPLE = (HERE.parent / "house_method/samples/method-1.json").read_text(encoding="utf-8")
WRITTEN = written_down(read_method(SAMPLE)[0])
HOUSE = written_down(normal(site_document()))
JOB = handed(json.loads((HERE.parent / "job/samples/job-1.json").read_text(encoding="utf-8"))).text


def states():
    """A job as it was after each of three changes: {"at", "text"}, oldest first."""
    texts = [JOB]
    for changes in (
        {"ticks.hem": "[1, 2, 3]", "measured.0": ""},
        {"typed.wash-test.cloth_width": "150 cm", "time": ""},
    ):
        texts.append(job_written_down(changed(opened(json.loads(texts[-1])), changes)))
    return [{"at": f"2026-11-2{day}T09:00:00+01:00", "text": text} for day, text in enumerate(texts)]


def methods(*texts):
    return [
        saved("method", json.loads(text)["id"], [{"at": "2026-11-25T08:00:00+01:00", "text": text}]) for text in texts
    ]


@pytest.mark.parametrize("text", [WRITTEN, HOUSE, JOB], ids=["method", "house", "job"])
def test_a_link_holds_the_whole_of_it(text):
    fragment = ask(ask="share", text=text)["fragment"]
    assert unpacked(fragment) == text
    assert handed(read_json(unpacked(fragment))).text == text
    assert set(fragment) <= set("0123456789.ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz-_")


def squeezed(data: bytes) -> str:
    return "1." + urlsafe_b64encode(zlib.compress(data, 9, wbits=-15)).decode().rstrip("=")


def test_no_link_is_made_that_could_not_be_opened():
    """Longer than any link that is read: said where it would be made."""
    noise = base64.b64encode(random.Random(1).randbytes(70_000)).decode()
    rows = [{"note": noise[start : start + 500]} for start in range(0, len(noise), 500)]
    long = job_written_down({**json.loads(JOB), "measured": rows})
    assert handed(read_json(long)).text == long
    assert "too long for a link" in ask(ask="share", text=long)["trouble"]


@pytest.mark.parametrize(
    ("fragment", "words"),
    [
        ("", "not whole"), ("1.", "not whole"), ("1.!!", "not whole"), ("1.AAAA", "not whole"), ("2.AAAA", "newer"),
        (packed(WRITTEN)[:-5], "not whole"),
        (squeezed(b"\xff\xfe"), "not whole"), (squeezed(b" " * 20_000_000), "not whole"),
        ("1." + "A" * 60_000, "longer than any"), (squeezed(b"[" * 1000), "nested"),
    ],
)  # fmt: skip
def test_a_broken_link_is_refused_in_one_sentence(fragment, words):
    assert words in opened_file(fragment=fragment, kept={})["trouble"]


def test_what_is_longer_than_anything_here_is_refused_before_it_is_read():
    assert "at most" in opened_file(text=" " * (LONGEST + 1), kept={})["trouble"]
    assert (
        "at most"
        in ask(
            ask="handed some",
            version=VERSION,
            entries=[{"text": "[" * (LONGEST_ENTRY + 1), "mine": ""}],
            first=0,
            folded=True,
        )["items"][0]["body"]
    )


def told(item):
    """What is told of a thing beside how it is shown."""
    return {name: item[name] for name in ("kind", "id", "known", "same")}


def rows(body):
    return [
        [cell.text for cell in row.find_all(["th", "td"])]
        for row in BeautifulSoup(body, "html.parser").find("tbody").find_all("tr")
    ]


def test_before_anything_is_kept_it_says_what_it_is_and_what_would_change():
    new = opened_file(text=SAMPLE, kept={})
    assert "It is new here" in new["body"] and "Summer linen" in new["body"]
    assert [told(each) for each in new["items"]] == [
        {"kind": "method", "id": "summer-linen", "known": False, "same": False}
    ]
    assert "exactly this already" in opened_file(text=SAMPLE, kept={"method summer-linen": WRITTEN})["body"]
    mine = written_down({**json.loads(WRITTEN), "name": "Mine"})
    assert rows(opened_file(text=SAMPLE, kept={"method summer-linen": mine})["body"]) == [
        ["Name", "Mine", "Summer linen"]
    ]


def test_what_can_be_chosen_stands_above_what_is_shown_and_below_it():
    """What is shown may be five screens of a telephone."""
    known = {"method summer-linen": written_down({**json.loads(WRITTEN), "name": "Mine"})}
    for kept, words in (
        ({}, ["Keep it, and let every page show its numbers", "Only keep it"]),
        (known, ["Put this in place of mine", "Keep both"]),
    ):
        page = BeautifulSoup(opened_file(text=SAMPLE, kept=kept)["body"], "html.parser")
        before, after = (
            [each.text for each in page.find("table").__getattribute__(way)("button", attrs={"data-item": "0"})]
            for way in ("find_all_previous", "find_all_next")
        )
        assert sorted(before) == sorted(after) == sorted(words)
        assert not page.find_all("button", id=True)


def test_a_job_says_what_it_is_and_what_would_change():
    new = opened_file(text=JOB, kept={})
    assert [told(each) for each in new["items"]] == [
        {"kind": "job", "id": "sage-napkins", "known": False, "same": False}
    ]
    assert "20 pieces: 2 across, 10 along" in new["body"] and ["Ticked: press", "12"] in rows(new["body"])
    assert "“2\u00a0cm” was written under “depth”, which is not asked here" in new["body"]
    mine = states()[1]["text"]
    differing = rows(opened_file(text=JOB, kept={"job sage-napkins": mine})["body"])
    assert differing[0] == ["Ticked: hem", "bundles 1, 2, 3", "bundles 1, 2"]
    assert differing[1][:2] == ["Measured, line 1", "nothing"]


def test_everything_in_one_file_comes_back_byte_for_byte():
    kept = [saved("job", "sage-napkins", states()), *methods(WRITTEN, HOUSE)]
    whole = file_of(kept, "summer-linen", "in 1/16")
    found = read_file(whole)
    assert (found.choices["follows"], found.choices["ruler"]) == ("summer-linen", "in 1/16")
    assert [(each.kind, each.identity) for each in found.kept] == [
        ("job", "sage-napkins"),
        ("method", "summer-linen"),
        ("method", "linen-workroom"),
    ]
    assert versions(found.kept[0]) == states()
    again = [saved(each.kind, each.identity, versions(each)) for each in found.kept]
    assert file_of(again, found.choices["follows"], found.choices["ruler"]) == whole
    assert len(whole) < len(json.dumps(states())) + 2 * len(HOUSE) + len(WRITTEN), (
        "a change takes the room of a change, not of a whole job"
    )


def test_the_first_version_of_the_file_still_opens():
    """As it was saved before jobs: the methods alone, each without its changes."""
    found = read_file((HERE / "samples/workroom-1.json").read_text(encoding="utf-8"))
    assert [each.newest.text for each in found.kept] == [WRITTEN]
    assert (
        "It is new here"
        in opened_file(text=(HERE / "samples/workroom-1.json").read_text(encoding="utf-8"), kept={})["body"]
    )


def test_the_second_version_of_the_file_still_opens():
    """As it was saved before the ticks of a batch without a job were in it."""
    found = read_file((HERE / "samples/workroom-2.json").read_text(encoding="utf-8"))
    assert versions(found.kept[0]) == states() and found.kept[1].newest.text == WRITTEN
    assert (found.choices["follows"], found.choices["ruler"]) == ("summer-linen", "in 1/16")


LOOSE = job_written_down(
    {
        "format": "job",
        "version": JOB_VERSION,
        "id": "batch",
        "name": "This batch",
        "walk": "batch",
        "ticks": {"hem": [1, 3]},
        "measured": [{"piece": "1", "width": "40 cm"}],
    }
)


TYPED = {
    "edition": 2,
    "readOn": "in 1/16",
    "refused": {"seam": "“x” is no length."},
    "texts": {"pieces": '[["napkin", "40 cm", "40 cm", "24"]]', "seam": "x"},
}
NOT_TAKEN = {"measures.hem": {"sentence": "“x” is no length.", "text": "x"}}
LOOSE_THINGS = [
    saved("loose", "batch", [{"at": "2026-11-25T08:00:00+01:00", "text": LOOSE}]),
    saved("typed", "batch/thread-length-here", [{"at": "", "text": json.dumps(TYPED)}]),
    saved("typed", "lay-plan", [{"at": "", "text": json.dumps(TYPED)}]),
    saved("refused", "method/summer-linen", [{"at": "", "text": json.dumps(NOT_TAKEN)}]),
]


def test_numbers_of_no_job_and_what_was_not_taken_are_in_the_file_and_come_back():
    whole = file_of(LOOSE_THINGS, look="dark")
    reply = opened_file(text=whole, kept={})
    for words in ("Typed into “Lay plan”", "24", "Typed into a house method and not taken", "the pages were dark"):
        assert words in reply["body"]
    assert json.loads(keep(whole, 2, id="lay-plan")[0]["text"]) == TYPED
    assert json.loads(keep(whole, 3, id="method/summer-linen")[0]["text"]) == NOT_TAKEN
    mine = {"typed lay-plan": json.dumps(TYPED), "typed batch/thread-length-here": json.dumps({**TYPED, "texts": {}})}
    again = opened_file(text=whole, kept=mine)
    assert [(each["known"], each["same"]) for each in again["items"]] == [
        (False, False), (True, False), (True, True), (False, False),
    ]  # fmt: skip
    assert "Put this in place of mine" in again["body"] and "Keep both" not in again["body"]


def test_a_typed_text_that_cannot_be_shown_leaves_the_others_as_they_are():
    odd = json.dumps({"texts": {"seam": "a\u202eb", "ratio": "2"}, "refused": {"seam": "\u0001"}})
    whole = file_of([saved("typed", "thread", [{"at": "", "text": odd}])])
    assert json.loads(keep(whole, id="thread")[0]["text"]) == {"texts": {"ratio": "2"}, "refused": {}}
    assert "left out" in opened_file(text=whole, kept={})["body"]


def test_what_was_ticked_without_a_job_is_in_the_file_and_comes_back():
    part = saved("loose", "batch", [{"at": "2026-11-25T08:00:00+01:00", "text": LOOSE}])
    whole = file_of([part, *methods(WRITTEN)])
    reply = opened_file(text=whole, kept={})
    assert told(reply["items"][0]) == {"kind": "loose", "id": "batch", "known": False, "same": False}
    assert "Work ticket “This batch”" in reply["body"] and "bundles 1, 3" in reply["body"]
    assert keep(whole, id="batch") == [{"at": "2026-11-25T08:00:00+01:00", "text": LOOSE}]
    same = opened_file(text=whole, kept={"loose batch": LOOSE})
    assert same["items"][0]["same"] and "exactly this already" in same["body"]


def test_a_ticket_without_a_job_is_never_kept_beside_another():
    whole = file_of([saved("loose", "batch", [{"at": "2026-11-25T08:00:00+01:00", "text": LOOSE}])])
    mine = job_written_down({**json.loads(LOOSE), "ticks": {"hem": 12}})
    body = opened_file(text=whole, kept={"loose batch": mine})["body"]
    assert "Put this in place of mine" in body and "Keep both" not in body
    assert rows(body)[0] == ["Ticked: hem", "12", "bundles 1, 3"]


def test_a_method_saved_as_a_ticket_is_refused():
    whole = file_of([saved("loose", "batch", [{"at": "", "text": WRITTEN}])])
    assert "saved as a job and is none" in opened_file(text=whole, kept={})["body"]


def test_what_is_kept_comes_with_its_dates_and_never_over_what_is_there():
    whole = file_of([saved("job", "sage-napkins", states())])
    assert keep(whole) == states()
    beside = keep(whole, id="another")
    assert [each["at"] for each in beside] == [each["at"] for each in states()]
    assert {json.loads(each["text"])["id"] for each in beside} == {"another"}
    assert keep(whole, mine=states()[0]["text"]) == states()[1:], "only what came after mine"
    other = job_written_down(changed(opened(json.loads(JOB)), {"name": "Mine"}))
    assert keep(whole, mine=other) == [{"at": "", "text": states()[-1]["text"]}], (
        "the newest alone, after mine, dated now"
    )


def test_what_cannot_be_read_is_in_the_file_letter_for_letter():
    damaged, to_come = (
        '{"name": "half',
        json.dumps({"format": "job", "version": 99, "tomorrow": None, "name": "\u0001"}),
    )
    made = ask(
        ask="save some",
        documents=[
            {"kind": "job", "id": name, "versions": [*states(), {"at": "2026-11-26T09:00:00+01:00", "text": text}]}
            for name, text in (("a", damaged), ("b", to_come))
        ],
    )
    assert made["said"] == ["What could not be read here is in the file as it stands."]
    whole = file_of([*made["entries"], *methods(WRITTEN)])
    found = read_file(whole)
    assert [each.raw for each in found.kept[:2]] == [damaged, to_come]
    reply = opened_file(text=whole, kept={})
    assert "damaged" in reply["body"] and "newer handbook" in reply["body"] and "Summer linen" in reply["body"], (
        "the rest opens all the same"
    )
    assert keep(whole, 0, id="a")[-1] == {"at": "2026-11-26T09:00:00+01:00", "text": damaged}


@pytest.mark.parametrize("damaged", ["½", "A", "!!!!", "/w==", " "])
def test_a_record_that_is_no_record_leaves_the_rest_of_the_file_as_it_is(damaged):
    whole = json.loads(file_of([saved("job", "a", states()), *methods(WRITTEN)]))
    whole["kept"][0]["changes"].append({"at": "", "damaged": damaged})
    body = opened_file(text=json.dumps(whole), kept={})["body"]
    assert "A job that cannot be read here" in body and "Summer linen" in body


def test_a_job_whose_method_is_named_with_blanks_opens():
    job = {**json.loads(JOB), "method": {**json.loads(WRITTEN), "name": "  "}}
    assert handed(job).document["method"]["name"] == "A method without a name"


def test_of_what_was_changed_too_often_the_newest_states_are_in_the_file_and_it_says_so():
    """As many as can be read again."""
    long = [
        {"at": "2026-11-25T08:00:00+01:00", "text": job_written_down({**json.loads(JOB), "notes": letter * 9_000})}
        for letter in "ab" * 100
    ]
    assert with_room(long) == long and len(with_room(long * 8)) == MOST_CHANGES < 8 * len(long)
    heavy = [{"at": "", "text": job_written_down({**json.loads(JOB), "notes": '"' * 9_000})}] * 900
    made = ask(ask="save some", documents=[{"kind": "job", "id": "j", "versions": heavy}])
    assert made["said"] == ["Of what was changed very often the file holds the newest states."]
    (kept,) = read_file(file_of(made["entries"])).kept
    assert len(kept.states) == len(with_room(heavy)) == min(MOST_CHANGES, LONGEST_HISTORY // len(heavy[0]["text"]))


@pytest.mark.parametrize("text", ["{damaged " + "½" * 800_000, "\ud800" * 800_000], ids=["long", "half characters"])
def test_a_damaged_record_of_any_length_comes_back_letter_for_letter(text):
    (kept,) = read_file(file_of([saved("job", "j", [{"at": "", "text": text}])])).kept
    assert kept.raw == text


def test_a_file_of_more_than_a_thousand_things_opens():
    whole = file_of([saved("job", f"j{number}", states()[:1]) for number in range(1_001)])
    assert len(read_file(whole).kept) == 1_001


def test_choices_are_shown_and_left_to_the_reader():
    whole = file_of(methods(WRITTEN), "summer-linen", "in 1/16")
    reply = opened_file(text=whole, kept={})
    assert "“Summer linen” was followed on every page and the ruler in hand was in (1/16)" in reply["body"]
    assert (reply["choices"]["follows"], reply["choices"]["ruler"]) == ("summer-linen", "in 1/16")


@pytest.mark.parametrize(
    ("data", "words"),
    [
        ({"format": "something else"}, "neither a house method nor a job"), ({"format": ["job"]}, "neither"),
        ({"format": "workroom", "version": VERSION + 1, "kept": []}, "newer"),
        ({"format": "workroom", "version": 1}, "not whole"), ({"format": "workroom", "version": 2}, "missing"),
        ({"format": "workroom", "version": 2, "kept": [], "ruler": "cubit"}, "cannot stand here"),
    ],
)  # fmt: skip
def test_only_the_formats_of_this_handbook_are_opened(data, words):
    with pytest.raises(InvalidDocument, match=words):
        read_file(json.dumps(data))


_plain = st.recursive(
    st.text(max_size=3) | st.integers(0, 3) | st.booleans(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=2), inner, max_size=3),
    max_leaves=10,
)


@given(_plain)
def test_a_text_is_written_as_the_library_writes_it(data):
    assert write_json(data) == json.dumps(data, ensure_ascii=False, indent=1, sort_keys=True) + "\n"


_documents = st.dictionaries(st.text(max_size=2), _plain, max_size=4)


@given(_documents, _documents)
def test_a_change_made_to_what_was_gives_what_is(before, after):
    assert patched(before, patch(before, after)) == after


@pytest.mark.parametrize(
    ("entry", "words"),
    [
        ({"kind": "recipe", "id": "x", "changes": []}, "not one of the choices"),
        ({"kind": "job", "id": "\"]", "changes": []}, "cannot stand here"),
        ({}, "missing"), ([], "group"), (7, "group"),
        ({"kind": "job", "id": "x", "changes": []}, "empty"),
        ({"kind": "refused", "id": "recipe/x", "changes": []}, "cannot stand here"),
        ({"kind": "typed", "id": "x", "changes": [{"at": "", "patch": {"texts": 3}}]}, "group of named"),
        ({"kind": "typed", "id": "x\u202e", "changes": []}, "cannot be shown"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("folded", [True, False])
def test_a_part_that_cannot_be_read_is_said_and_the_rest_opens(entry, words, folded):
    whole = file_of([json.dumps(entry), *methods(WRITTEN)])
    body = opened_file(text=whole, kept={}, folded=folded)["body"]
    assert words in body and "House method “Summer linen”" in body and "cannot be read here" in body
    assert "trouble" not in ask(
        ask="take", version=VERSION, entries=[{"text": json.dumps(entry), "id": "x", "mine": ""}]
    )


def test_changes_are_those_of_the_standard():
    """RFC 7396, appendix A: the test cases printed there that begin with an object and have one as the patch."""
    cases = [
        ({"a": "b"}, {"a": "c"}, {"a": "c"}), ({"a": "b"}, {"b": "c"}, {"a": "b", "b": "c"}),
        ({"a": "b"}, {"a": None}, {}), ({"a": "b", "b": "c"}, {"a": None}, {"b": "c"}),
        ({"a": ["b"]}, {"a": "c"}, {"a": "c"}), ({"a": "c"}, {"a": ["b"]}, {"a": ["b"]}),
        ({"a": {"b": "c"}}, {"a": {"b": "d", "c": None}}, {"a": {"b": "d"}}),
        ({"a": [{"b": "c"}]}, {"a": [1]}, {"a": [1]}), ({"e": None}, {"a": 1}, {"e": None, "a": 1}),
        ({}, {"a": {"bb": {"ccc": None}}}, {"a": {"bb": {}}}),
    ]  # fmt: skip
    for before, change, after in cases:
        assert patched(before, change) == after


def test_a_link_of_version_0_is_broken_and_not_newer():
    with pytest.raises(InvalidDocument, match="not whole"):
        unpacked("0.AAAA")
