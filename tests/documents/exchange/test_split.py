"""A file is split into its head and its entries byte by byte: nothing is lost, added or taken for something else,
whatever the file holds and however it comes off the disk."""

import json
import random
import subprocess
from base64 import b64encode
from pathlib import Path

import pytest

from scripts.setup import node
from scripts.tools.places import VENV
from tests.documents.exchange.test_handing import LOOSE_THINGS, SAMPLE, WRITTEN, methods, states
from tests.documents.exchange.whole_file import file_of, saved

PROGRAM = Path(__file__).with_name("split.mjs")
SAMPLES = Path(__file__).parent / "samples"
WHOLE = file_of([saved("job", "sage-napkins", states()), *methods(WRITTEN), *LOOSE_THINGS], look="dark")
ODD = {
    "no entries": '{"format":"workroom","version":4,"kept":[ \n ]}',
    "one": '{"kept":[{"a":[1,{"b":"]}"}]}]}',
    "anything": '{"kept" : [ 1 , "a,]\\"\\\\", null,true , [[]],{} ],"other":[1,2],"kind":{"kept":[3]}}',
    "a name written otherwise": '{"\\u006bept":[{"a":1},{"b":2}]}',
    "a text called so": '{"name":"kept","list":[1,2]}',
    "a number called so": '{"kept":3,"list":[1,2]}',
    "signs": json.dumps({"kept": [{"é½": "“linen”, \U0001f9f5"}, "\u2028"]}, ensure_ascii=False),
    "a list": '[{"kept":[1,2]}]',
    "a word": '"kept"',
}


def split(files: list[tuple[bytes, int]], tmp_path: Path) -> list[dict]:
    """The head and the entries of each file. files: their bytes, and how many come at once."""
    listed = tmp_path / "files.json"
    listed.write_text(json.dumps([{"base64": b64encode(each).decode(), "chunk": chunk} for each, chunk in files]))
    command = [*node.found(VENV).node, str(PROGRAM), str(listed)]
    return json.loads(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


def together(head: str, entries: list[str]):
    """The whole again: each entry in place of its 0."""
    data, rest = json.loads(head), iter(entries)
    for name in ("kept", "methods"):
        if isinstance(data, dict) and isinstance(data.get(name), list):
            data[name] = [json.loads(next(rest)) for _ in data[name]]
    assert next(rest, None) is None
    return data


def test_head_and_entries_are_the_whole_file_wherever_it_is_cut(tmp_path):
    texts = [*ODD.values(), WHOLE, SAMPLE, *(each.read_text("utf-8") for each in sorted(SAMPLES.glob("*.json")))]
    texts += [json.dumps(json.loads(text), indent=indent) for text in texts for indent in (1, None)]
    files = [(text.encode(), chunk) for text in texts for chunk in (1, 7, 64_000)]
    files += [("\ufeff".encode() + text.encode(), 3) for text in texts]
    for (content, _), found in zip(files, split(files, tmp_path), strict=True):
        assert together(found["head"], found["entries"]) == json.loads(content.decode("utf-8-sig"))


def test_an_entry_is_never_in_the_head(tmp_path):
    """However long the entries are, what is judged as a whole stays short; a question holds but some of them."""
    (found,) = split([(file_of([saved("job", f"j{at}", states()) for at in range(60)]).encode(), 64_000)], tmp_path)
    assert len(found["head"]) < 500 and len(found["entries"]) == 60 and found["groups"] == [25, 25, 10]


SIGNS = [b"", b'"', b"\\", b"[", b"]", b"{", b"}", b",", b":"]


def is_json(text: str) -> bool:
    def refuse(word: str):
        raise ValueError(word)

    try:
        json.loads(text, parse_constant=refuse)
    except ValueError:
        return False
    return True


def test_two_thousand_spoilt_files_are_spoilt_in_a_part(tmp_path):
    """A file that is no JSON has a head or an entry that is none, and one that is has none of them."""
    chance = random.Random(14)
    files = []
    for _ in range(2_000):
        content = bytearray(chance.choice([*ODD.values(), *ODD.values(), WHOLE]).encode())
        for _ in range(chance.randint(1, 2)):
            at = chance.randrange(len(content))
            content[at : at + chance.randint(0, 2)] = chance.choice(SIGNS)
        files.append((bytes(content or b" "), chance.choice([1, 5, 64_000])))
    spoilt = 0
    for (content, _), found in zip(files, split(files, tmp_path), strict=True):
        is_whole = is_json(content.decode("utf-8", "replace"))
        assert (is_json(found["head"]) and all(map(is_json, found["entries"]))) == is_whole, content
        spoilt += not is_whole
    assert 500 < spoilt < 2_000


@pytest.mark.parametrize("content", [b"\0" * 9_000_000, b'"' * 9_000_000, b"[" * 9_000_000], ids=["0", "text", "deep"])
def test_what_is_long_and_no_file_of_this_handbook_is_refused_before_it_is_all_read(content, tmp_path):
    (found,) = split([(content, 64_000)], tmp_path)
    assert "not a file of this handbook" in found["trouble"]
