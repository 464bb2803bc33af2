"""Two thousand hostile files and links of jobs and methods: refused in one sentence, or shown as harmless text;
nothing of them can run. More with HOSTILE=1000 before pytest: so many in each of the ten batches."""

import base64
import copy
import json
import os
import random

import pytest
from bs4 import BeautifulSoup

from calculators.documents.exchange.share_link import handed
from calculators.documents.json_text import read_json
from calculators.documents.merge_patch import patched
from tests.documents.exchange.test_handing import HOUSE, JOB, LOOSE_THINGS, WRITTEN, methods, squeezed, states
from tests.documents.exchange.whole_file import ask, file_of, keep, saved
from tests.documents.exchange.whole_file import handed as opened_file

EVERYTHING = file_of(
    [saved("job", "sage-napkins", states()), *methods(WRITTEN), *LOOSE_THINGS],
    "summer-linen",
    "in 1/16",
    look="dark",
)

NASTY = [
    "<script>window.ran=1</script>", "<img src=x onerror=window.ran=1>", "javascript:window.ran=1",
    "[x](javascript:window.ran=1)", "\"><svg onload=window.ran=1>", "{{ constructor }}",
    "\u202e", "\ud800", "\x00", "x" * 100_000, "__proto__", "'; DROP", "${7*7}", "=HYPERLINK(1)", "", " ", "1e999", -1,
    0, 10**40, True, None, [], {}, [[[[[[[[]]]]]]]], {"cm": {}}, 1.5,
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
        assert found.name not in {
            "script",
            "img",
            "iframe",
            "object",
            "embed",
            "svg",
            "style",
            "link",
            "meta",
            "form",
            "base",
        }, found
        assert not [
            name
            for name in found.attrs
            if name.startswith("on") or name in {"src", "style", "srcdoc", "action", "formaction"}
        ], found
        address = found.attrs.get("href", "")
        assert address == "" or address.startswith(("http://", "https://")) or ":" not in address


def shown_everywhere(chance: random.Random, kind: str, text: str) -> None:
    """Wherever a page shows it, what was written in it is harmless text."""
    if kind == "method":
        only_harmless(ask(ask="method page", method=text, editing=chance.random() < 0.5, ruler="")["body"])
    else:
        only_harmless(
            ask(ask="jobs", jobs=[{"id": "x", "at": "2026-11-25T10:00:00", "text": text}], ruler="", home="/")["items"][
                0
            ]
        )
        opened = ask(ask="job opened", job=text, method="")
        only_harmless(opened["about"])
        for step in ask(ask="walk", walk="batch", typed=opened["typed"], method=opened["method"])["steps"].values():
            only_harmless(without_drawings(step.get("answer", "")))


def without_drawings(body: str) -> str:
    """A drawing is made of numbers; that its words are text too is for the tests of drawings."""
    made = BeautifulSoup(body, "html.parser")
    for each in made.find_all("svg"):
        assert not each.find_all(["script", "image", "foreignObject", "a"])
        each.decompose()
    return str(made)


MANY = int(os.environ.get("HOSTILE", "200"))


def kept_as_it_is(chance: random.Random, text: str) -> None:
    """Kept by a browser, as by another edition or half: every list and page says so, and a copy holds it."""
    versions = [
        {"at": "2026-11-25T10:00:00", "revision": at, "text": each} for at, each in enumerate((text, JOB, text))
    ]
    for kind in ("method", "job", "loose", "typed", "refused"):
        made = ask(ask="save some", documents=[{"kind": kind, "id": "x", "versions": versions}])["entries"]
        found = [json.loads(each) if isinstance(each, str) else each for _, each in states_in(made[0])]
        assert found[0] == found[2] == json.loads(text)
    assert ask(ask="methods", methods=[text])["names"][0]["name"]
    for name in ("job changes", "method changes"):
        only_harmless(ask(ask=name, versions=versions)["body"])
    only_harmless(ask(ask="jobs", jobs=[{"id": "x", **versions[0]}], ruler="", home="/")["items"][0])
    only_harmless(ask(ask="method page", method=text, editing=chance.random() < 0.5, ruler="")["body"])


def states_in(entry: str):
    """What a thing was after each change, as its entry in a file says."""
    data = {}
    for change in json.loads(entry)["changes"]:
        if "damaged" in change:
            yield change["at"], base64.b64decode(change["damaged"]).decode("utf-8", "surrogatepass")
        else:
            data = patched(data, change["patch"])
            yield change["at"], data


@pytest.mark.parametrize("batch", range(10))
def test_two_thousand_hostile_files_and_links(batch):
    """200 in each of ten batches, half of them files and half links: refused in a sentence, or shown as harmless text
    and readable ever after."""
    chance = random.Random(batch)
    refused = opened = 0
    for _ in range(MANY):
        start = json.loads(chance.choice([WRITTEN, HOUSE, JOB, JOB, EVERYTHING]))
        text = json.dumps(hostile(chance, start))
        if chance.random() < 0.1:
            kept_as_it_is(chance, text)
        if chance.random() < 0.1:
            cut = chance.randrange(len(text))
            text = text[:cut] + chance.choice(["", "\x00", "]", "{", "NaN", "\\u"]) + text[cut + chance.randint(0, 3) :]
        by_link = chance.random() < 0.5
        given = {"fragment": squeezed(text.encode("utf-8", "surrogatepass"))} if by_link else {"text": text}
        reply = opened_file(kept={}, folded=chance.random() < 0.2, **given)
        if "trouble" in reply:
            refused += 1
            assert 10 < len(reply["trouble"]) < 400 and "\n" not in reply["trouble"]
            continue
        opened += 1
        only_harmless(reply["body"])
        for number, item in enumerate(reply["items"]):
            kept = keep(item=number, id="kept", **given)
            if not kept or "cannot be read here" in item["body"]:
                assert "cannot be read here" in item["body"] and "Keep it</button>" not in item["body"]
                continue
            newest = kept[-1]["text"]
            if item["kind"] in ("method", "job", "loose"):
                assert handed(read_json(newest)).text == newest
                if chance.random() < 0.2:
                    shown_everywhere(chance, item["kind"], newest)
    assert refused > MANY / 5 and opened > MANY / 25
