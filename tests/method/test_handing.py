"""Handing a method over: whole and the same at the other end; hostile files and links refused in a sentence or shown as text."""

import copy
import json
import random
import zlib
from base64 import urlsafe_b64encode
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from calculators.documents import LONGEST, Unreadable
from calculators.faces.browser import replies
from calculators.handing import everything, handed, packed, unpacked
from calculators.house_method import FORMAT, site_document
from calculators.method.format import normal
from calculators.method.reading import read_method, written_down

SAMPLE = (Path(__file__).parent / "samples/method-1.json").read_text(encoding="utf-8")
WRITTEN = written_down(read_method(SAMPLE)[0])
HOUSE = written_down(normal(site_document()))


def ask(**request):
    return json.loads(list(replies(json.dumps(request)))[-1])


@pytest.mark.parametrize("text", [WRITTEN, HOUSE])
def test_a_link_holds_the_whole_method(text):
    fragment = packed(text)
    assert unpacked(fragment) == text
    assert handed(unpacked(fragment))[0].text == text
    assert set(fragment) <= set("0123456789.ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz-_")


def test_a_file_of_everything_is_the_same_byte_for_byte_after_a_round():
    whole = everything([json.loads(WRITTEN), json.loads(HOUSE)])
    assert everything([each.document for each in handed(whole)]) == whole


def squeezed(data: bytes) -> str:
    return "1." + urlsafe_b64encode(zlib.compress(data, 9, wbits=-15)).decode().rstrip("=")


@pytest.mark.parametrize(
    ("fragment", "words"),
    [
        ("", "not whole"), ("1.", "not whole"), ("1.!!", "not whole"), ("1.AAAA", "not whole"), ("2.AAAA", "newer"), (packed(WRITTEN)[:-5], "not whole"),
        (squeezed(b"\xff\xfe"), "not whole"), (squeezed(b" " * 20_000_000), "not whole"), ("1." + "A" * 60_000, "longer than any"), (squeezed(b"[" * 1000), "nested"),
    ],
)  # fmt: skip
def test_a_broken_link_is_refused_in_one_sentence(fragment, words):
    assert words in ask(ask="handed", fragment=fragment, kept={})["trouble"]


def test_fifty_megabytes_are_refused_before_they_are_read():
    assert "50.0 MB" in ask(ask="handed", text="{", size=50_000_000, kept={})["trouble"]
    assert "at most" in ask(ask="handed", text=" " * (LONGEST + 1), size=0, kept={})["trouble"]


def test_before_anything_is_kept_it_says_what_it_is_and_what_would_change():
    new = ask(ask="handed", text=SAMPLE, size=len(SAMPLE), kept={})
    assert "It is new here" in new["body"] and "Summer linen" in new["body"]
    assert new["items"] == [{"id": "summer-linen", "text": WRITTEN, "known": False, "same": False}]
    assert "exactly this already" in ask(ask="handed", text=SAMPLE, kept={"summer-linen": WRITTEN})["body"]
    mine = written_down({**json.loads(WRITTEN), "name": "Mine"})
    changed = ask(ask="handed", text=SAMPLE, kept={"summer-linen": mine})["body"]
    rows = [[cell.text for cell in row.find_all(["th", "td"])] for row in BeautifulSoup(changed, "html.parser").find("tbody").find_all("tr")]
    assert rows == [["Name", "Mine", "Summer linen"]]


NASTY = [
    "<script>window.ran=1</script>", "<img src=x onerror=window.ran=1>", "javascript:window.ran=1", "[x](javascript:window.ran=1)", "\"><svg onload=window.ran=1>", "{{ constructor }}",
    "\u202e", "\ud800", "\x00", "x" * 100_000, "__proto__", "'; DROP", "${7*7}", "=HYPERLINK(1)", "", " ", "1e999", -1, 0, 10**40, True, None, [], {}, [[[[[[[[]]]]]]]], {"cm": {}}, 1.5,
]  # fmt: skip


def hostile(chance: random.Random, data):
    """A document with one to four places spoilt."""
    data = json.loads(json.dumps(data))
    for _ in range(chance.randint(1, 4)):
        place = data
        while True:
            keys = list(place) if isinstance(place, dict) else list(range(len(place)))
            if not keys:
                break
            key = chance.choice(keys)
            inner = place[key]
            if isinstance(inner, dict | list) and inner and chance.random() < 0.8:
                place = inner
                continue
            how = chance.random()
            if how < 0.6 or isinstance(place, list):
                place[key] = copy.deepcopy(chance.choice(NASTY))
            elif how < 0.8:
                place[str(chance.choice(NASTY))[:200]] = copy.deepcopy(chance.choice(NASTY))
            else:
                del place[key]
            break
    return data


def only_harmless(body: str) -> None:
    """Read back by an independent parser of HTML: nothing in it can run or fetch."""
    for found in BeautifulSoup(body, "html.parser").find_all(True):
        assert found.name not in {"script", "img", "iframe", "object", "embed", "svg", "style", "link", "meta", "form", "base"}, found
        assert not [name for name in found.attrs if name.startswith("on") or name in {"src", "style", "srcdoc", "action", "formaction"}], found
        address = found.attrs.get("href", "")
        assert address == "" or address.startswith(("http://", "https://")) or ":" not in address


@pytest.mark.parametrize("batch", range(10))
def test_five_thousand_hostile_files_and_links(batch):
    """500 in each of ten batches, half of them files and half links: refused in a sentence, or shown as harmless text and readable ever after."""
    chance = random.Random(batch)
    refused = opened = 0
    for _ in range(500):
        start = json.loads(chance.choice([WRITTEN, HOUSE, everything([json.loads(WRITTEN)])]))
        text = json.dumps(hostile(chance, start))
        if chance.random() < 0.1:
            cut = chance.randrange(len(text))
            text = text[:cut] + chance.choice(["", "\x00", "]", "{", "NaN", "\\u"]) + text[cut + chance.randint(0, 3) :]
        by_link = chance.random() < 0.5
        given = {"fragment": squeezed(text.encode("utf-8", "surrogatepass"))} if by_link else {"text": text}
        reply = ask(ask="handed", kept={}, **given)
        if "trouble" in reply:
            refused += 1
            assert 10 < len(reply["trouble"]) < 400 and "\n" not in reply["trouble"]
            continue
        opened += 1
        only_harmless(reply["body"])
        for item in reply["items"]:
            if chance.random() < 0.2:
                only_harmless(ask(ask="method page", method=item["text"], editing=chance.random() < 0.5, ruler="")["body"])
            assert written_down(read_method(item["text"])[0]) == item["text"]
    assert refused > 100 and opened > 20


def test_only_the_formats_of_this_handbook_are_opened():
    with pytest.raises(Unreadable, match="not a house method"):
        handed('{"format": "something else"}')
    with pytest.raises(Unreadable, match="newer"):
        handed('{"format": "workroom", "version": 2, "methods": []}')
    with pytest.raises(Unreadable, match="not whole"):
        handed('{"format": "workroom", "version": 1}')
    assert json.loads(HOUSE)["format"] == FORMAT
