"""The snapshot leaves out what the wasm file brings, and nothing else."""

import base64
import gzip
import hashlib
import json
from pathlib import Path

import pytest

from scripts.runtime.thin_picture import BLOCK, NotUnderstood, data_of, thinned
from scripts.tools.places import NODE_MODULES

MAGIC = b"\0asm\1\0\0\0"
START = 16


def leb(number: int) -> bytes:
    """Unsigned LEB128."""
    low, high = number & 0x7F, number >> 7
    return bytes([low | 0x80]) + leb(high) if high else bytes([low])


def address(number: int) -> bytes:
    """Signed LEB128 of a positive number, which needs a further byte where the sign bit would read as set."""
    low, high = number & 0x7F, number >> 7
    return bytes([low]) if not high and not low & 0x40 else bytes([low | 0x80]) + address(high)


def wasm(*segments: tuple[int, bytes]) -> bytes:
    data = leb(len(segments)) + b"".join(b"\0\x41" + address(at) + b"\x0b" + leb(len(content)) + content for at, content in segments)
    return MAGIC + b"\1\2\1\0" + b"\x0b" + leb(len(data)) + data


def picture(memory: bytes) -> bytes:
    return b"\0snp" + START.to_bytes(4, "little") + bytes(8) + memory


def test_only_blocks_that_are_the_same_are_left_out():
    data = bytes(range(1, 256)) * 30
    content = wasm((BLOCK, data[: 4 * BLOCK]))
    memory = bytearray(BLOCK) + data[: 4 * BLOCK] + bytes(BLOCK)
    memory[3 * BLOCK + 5] ^= 1  # changed since
    thin, back = thinned(picture(memory), content)
    assert back["runs"] == [[BLOCK, 2 * BLOCK], [4 * BLOCK, BLOCK]] and back["start"] == START
    left_out = data[: 2 * BLOCK] + data[3 * BLOCK : 4 * BLOCK]
    assert back["integrity"] == "sha256-" + base64.b64encode(hashlib.sha256(left_out).digest()).decode()
    kept = bytearray(picture(memory))
    for at, length in back["runs"]:
        kept[START + at : START + at + length] = bytes(length)
    assert thin == kept


def test_a_length_of_several_bytes_is_read_and_other_sections_passed_over():
    assert list(data_of(wasm((70, b"ab"), (300, b"c" * 200)))) == [(70, b"ab"), (300, b"c" * 200)]


@pytest.mark.parametrize("content", [b"none", wasm((5, b"x")).replace(b"\0\x41", b"\1\x41"), wasm((5, b"x")).replace(b"\x41\5", b"\x23\5")])
def test_what_is_not_understood_is_refused(content: bytes):
    with pytest.raises(NotUnderstood):
        list(data_of(content))


def test_most_of_the_machines_data_is_left_out_and_put_back_it_is_what_the_machine_brings(made: Path):
    listing = json.loads((made / "listing.json").read_text())
    thin = gzip.decompress((made / listing["files"]["snapshot"]["name"]).read_bytes())
    back = listing["fromMachine"]
    data = list(data_of((NODE_MODULES / "pyodide/pyodide.asm.wasm").read_bytes()))
    brought = bytearray(max(at + len(content) for at, content in data))
    for at, content in data:
        brought[at : at + len(content)] = content
    left_out = b"".join(brought[at : at + length] for at, length in back["runs"])
    assert back["integrity"] == "sha256-" + base64.b64encode(hashlib.sha256(left_out).digest()).decode()
    assert len(left_out) > 3_000_000
    for at, length in back["runs"]:
        assert not any(thin[back["start"] + at : back["start"] + at + length])
