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
from calculators.documents.exchange.backup import LONGEST, VERSION, file_of, read_file, saved
from calculators.documents.exchange.share_link import handed, packed, unpacked
from calculators.documents.house_method.format import normal
from calculators.documents.house_method.reading import read_method, written_down
from calculators.documents.job.change import changed
from calculators.documents.job.format import VERSION as JOB_VERSION
from calculators.documents.job.reading import opened
from calculators.documents.job.reading import written_down as job_written_down
from calculators.documents.json_text import InvalidDocument, read_json
from calculators.documents.merge_patch import patch, patched
from calculators.faces.browser import replies

HERE = Path(__file__).parent
SAMPLE = (HERE.parent / "house_method/samples/method-1.json").read_text(encoding="utf-8")
WRITTEN = written_down(read_method(SAMPLE)[0])
HOUSE = written_down(normal(site_document()))
JOB = handed(json.loads((HERE.parent / "job/samples/job-1.json").read_text(encoding="utf-8"))).text


def ask(**request):
    return json.loads(list(replies(json.dumps(request)))[-1])


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
    assert words in ask(ask="handed", fragment=fragment, kept={})["trouble"]


def test_fifty_megabytes_are_refused_before_they_are_read():
    assert "50.0 MB" in ask(ask="handed", text="{", size=50_000_000, kept={})["trouble"]
    assert "at most" in ask(ask="handed", text=" " * (LONGEST + 1), size=0, kept={})["trouble"]


def rows(body):
    return [
        [cell.text for cell in row.find_all(["th", "td"])]
        for row in BeautifulSoup(body, "html.parser").find("tbody").find_all("tr")
    ]


def test_before_anything_is_kept_it_says_what_it_is_and_what_would_change():
    new = ask(ask="handed", text=SAMPLE, size=len(SAMPLE), kept={})
    assert "It is new here" in new["body"] and "Summer linen" in new["body"]
    assert new["items"] == [{"kind": "method", "id": "summer-linen", "known": False, "same": False}]
    assert "exactly this already" in ask(ask="handed", text=SAMPLE, kept={"method summer-linen": WRITTEN})["body"]
    mine = written_down({**json.loads(WRITTEN), "name": "Mine"})
    assert rows(ask(ask="handed", text=SAMPLE, kept={"method summer-linen": mine})["body"]) == [
        ["Name", "Mine", "Summer linen"]
    ]


def test_what_can_be_chosen_stands_above_what_is_shown_and_below_it():
    """What is shown may be five screens of a telephone."""
    known = {"method summer-linen": written_down({**json.loads(WRITTEN), "name": "Mine"})}
    for kept, words in (
        ({}, ["Keep it, and let every page show its numbers", "Only keep it"]),
        (known, ["Put this in place of mine", "Keep both"]),
    ):
        page = BeautifulSoup(ask(ask="handed", text=SAMPLE, kept=kept)["body"], "html.parser")
        before, after = (
            [each.text for each in page.find("table").__getattribute__(way)("button", attrs={"data-item": "0"})]
            for way in ("find_all_previous", "find_all_next")
        )
        assert sorted(before) == sorted(after) == sorted(words)
        assert not page.find_all("button", id=True)


def test_a_job_says_what_it_is_and_what_would_change():
    new = ask(ask="handed", text=JOB, kept={})
    assert new["items"] == [{"kind": "job", "id": "sage-napkins", "known": False, "same": False}]
    assert "20 pieces: 2 across, 10 along" in new["body"] and ["Ticked: press", "12"] in rows(new["body"])
    assert "“2\u00a0cm” was written under “depth”, which is not asked here" in new["body"]
    mine = states()[1]["text"]
    differing = rows(ask(ask="handed", text=JOB, kept={"job sage-napkins": mine})["body"])
    assert differing[0] == ["Ticked: hem", "bundles 1, 2, 3", "bundles 1, 2"]
    assert differing[1][:2] == ["Measured, line 1", "nothing"]


def test_everything_in_one_file_comes_back_byte_for_byte():
    kept = [saved("job", "sage-napkins", states()), *methods(WRITTEN, HOUSE)]
    whole = file_of(kept, "summer-linen", "in 1/16")
    found = read_file(whole)
    assert (found.follows, found.ruler) == ("summer-linen", "in 1/16")
    assert [(each.kind, each.identity) for each in found.kept] == [
        ("job", "sage-napkins"),
        ("method", "linen-workroom"),
        ("method", "summer-linen"),
    ]
    assert found.kept[0].versions() == states()
    again = [saved(each.kind, each.identity, each.versions()) for each in found.kept]
    assert file_of(again, found.follows, found.ruler) == whole
    assert len(whole) < len(json.dumps(states())) + 2 * len(HOUSE) + len(WRITTEN), (
        "a change takes the room of a change, not of a whole job"
    )


def test_the_first_version_of_the_file_still_opens():
    """As it was saved before jobs: the methods alone, each without its changes."""
    found = read_file((HERE / "samples/workroom-1.json").read_text(encoding="utf-8"))
    assert [each.newest.text for each in found.kept] == [WRITTEN]
    assert (
        "It is new here"
        in ask(ask="handed", text=(HERE / "samples/workroom-1.json").read_text(encoding="utf-8"), kept={})["body"]
    )


def test_the_second_version_of_the_file_still_opens():
    """As it was saved before the ticks of a batch without a job were in it."""
    found = read_file((HERE / "samples/workroom-2.json").read_text(encoding="utf-8"))
    assert found.kept[0].versions() == states() and found.kept[1].newest.text == WRITTEN
    assert (found.follows, found.ruler) == ("summer-linen", "in 1/16")


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


def test_what_was_ticked_without_a_job_is_in_the_file_and_comes_back():
    part = ask(ask="save one", kind="loose", id="batch", versions=[{"at": "2026-11-25T08:00:00+01:00", "text": LOOSE}])
    assert part["said"] == ""
    whole = ask(ask="everything", saved=[part["saved"], *methods(WRITTEN)], follows="", ruler="")["text"]
    reply = ask(ask="handed", text=whole, kept={})
    assert reply["items"][0] == {"kind": "loose", "id": "batch", "known": False, "same": False}
    assert "Work ticket “This batch”" in reply["body"] and "bundles 1, 3" in reply["body"]
    assert keep(whole, id="batch") == [{"at": "2026-11-25T08:00:00+01:00", "text": LOOSE}]
    same = ask(ask="handed", text=whole, kept={"loose batch": LOOSE})
    assert same["items"][0]["same"] and "exactly this already" in same["body"]


def test_a_ticket_without_a_job_is_never_kept_beside_another():
    whole = file_of([saved("loose", "batch", [{"at": "2026-11-25T08:00:00+01:00", "text": LOOSE}])])
    mine = job_written_down({**json.loads(LOOSE), "ticks": {"hem": 12}})
    body = ask(ask="handed", text=whole, kept={"loose batch": mine})["body"]
    assert "Put this in place of mine" in body and "Keep both" not in body
    assert rows(body)[0] == ["Ticked: hem", "12", "bundles 1, 3"]


def test_a_method_saved_as_a_ticket_is_refused():
    whole = file_of([saved("loose", "batch", [{"at": "", "text": WRITTEN}])])
    assert "saved as a job and is none" in ask(ask="handed", text=whole, kept={})["body"]


def keep(text, item=0, **more):
    return ask(ask="one handed", text=text, item=item, **{"id": "sage-napkins", "mine": "", **more})["versions"]


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
    parts = [
        ask(
            ask="save one", kind="job", id=name, versions=[*states(), {"at": "2026-11-26T09:00:00+01:00", "text": text}]
        )
        for name, text in (("a", damaged), ("b", to_come))
    ]
    assert all("as it stands" in each["said"] for each in parts)
    whole = ask(ask="everything", saved=[*(each["saved"] for each in parts), *methods(WRITTEN)], follows="", ruler="")[
        "text"
    ]
    found = read_file(whole)
    assert [each.raw for each in found.kept[:2]] == [damaged, to_come]
    reply = ask(ask="handed", text=whole, kept={})
    assert "damaged" in reply["body"] and "newer handbook" in reply["body"] and "Summer linen" in reply["body"], (
        "the rest opens all the same"
    )
    assert keep(whole, 0, id="a")[-1] == {"at": "2026-11-26T09:00:00+01:00", "text": damaged}


@pytest.mark.parametrize("damaged", ["½", "A", "!!!!", "/w==", " "])
def test_a_record_that_is_no_record_leaves_the_rest_of_the_file_as_it_is(damaged):
    whole = json.loads(file_of([saved("job", "a", states()), *methods(WRITTEN)]))
    whole["kept"][0]["changes"].append({"at": "", "damaged": damaged})
    body = ask(ask="handed", text=json.dumps(whole), kept={})["body"]
    assert "A job that cannot be read here" in body and "Summer linen" in body


def test_a_job_whose_method_is_named_with_blanks_opens():
    job = {**json.loads(JOB), "method": {**json.loads(WRITTEN), "name": "  "}}
    assert handed(job).document["method"]["name"] == "A method without a name"


def test_a_file_that_grew_too_long_to_be_read_again_holds_the_newest_of_each():
    long = [
        {"at": "2026-11-25T08:00:00+01:00", "text": job_written_down({**json.loads(JOB), "notes": letter * 9_000})}
        for letter in "ab" * 100
    ]
    whole = file_of([saved("job", f"j{number}", long) for number in range(14)])
    assert len(whole) < LONGEST
    assert [each.newest.document["notes"] for each in read_file(whole).kept] == ["b" * 9_000] * 14


def test_choices_are_shown_and_left_to_the_reader():
    whole = file_of(methods(WRITTEN), "summer-linen", "in 1/16")
    reply = ask(ask="handed", text=whole, kept={})
    assert "“Summer linen” was followed on every page and the ruler in hand was in (1/16)" in reply["body"]
    assert (reply["follows"], reply["ruler"]) == ("summer-linen", "in 1/16")


@pytest.mark.parametrize(
    ("data", "words"),
    [
        ({"format": "something else"}, "neither a house method nor a job"), ({"format": ["job"]}, "neither"),
        ({"format": "workroom", "version": VERSION + 1, "kept": []}, "newer"),
        ({"format": "workroom", "version": 1}, "not whole"), ({"format": "workroom", "version": 2}, "missing"),
        ({"format": "workroom", "version": 2, "kept": [{}] * 1_001}, "Keep to 1000"),
        ({"format": "workroom", "version": 2, "kept": [{"kind": "recipe", "id": "x", "changes": []}]},
            "not one of the choices"),
        ({"format": "workroom", "version": 2, "kept": [{"kind": "job", "id": "\"]", "changes": []}]},
            "cannot stand here"),
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
_documents = st.dictionaries(st.text(max_size=2), _plain, max_size=4)


@given(_documents, _documents)
def test_a_change_made_to_what_was_gives_what_is(before, after):
    assert patched(before, patch(before, after)) == after


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
