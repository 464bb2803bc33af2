"""The snapshot leaves out what the wasm file brings, and nothing else."""

import base64
import gzip
import hashlib
import json
from pathlib import Path

import pytest

from scripts.runtime.thin_snapshot import BLOCK, NotUnderstood, data_of, thinned
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
    data = leb(len(segments)) + b"".join(
        b"\0\x41" + address(at) + b"\x0b" + leb(len(content)) + content for at, content in segments
    )
    return MAGIC + b"\1\2\1\0" + b"\x0b" + leb(len(data)) + data


def snapshot(memory: bytes) -> bytes:
    return b"\0snp" + START.to_bytes(4, "little") + bytes(8) + memory


def test_only_what_the_machine_brings_and_what_is_empty_is_left_out():
    data = bytes(range(1, 256)) * 30
    content = wasm((BLOCK, data[: 4 * BLOCK]), (6 * BLOCK, b"gone since"))
    memory = bytearray(BLOCK) + data[: 4 * BLOCK] + bytes(3 * BLOCK + 100)
    memory[3 * BLOCK + 5] ^= 1  # changed since
    kept, listing = thinned(snapshot(memory), content)
    assert listing["brought"] == [[BLOCK, 2 * BLOCK], [4 * BLOCK, BLOCK]]
    assert listing["kept"] == [[3 * BLOCK, BLOCK], [6 * BLOCK, BLOCK]], (
        "emptied is not empty: the machine has something there"
    )
    assert (listing["head"], listing["memory"]) == (START, len(memory))
    brought = data[: 2 * BLOCK] + data[3 * BLOCK : 4 * BLOCK]
    assert listing["integrity"] == "sha256-" + base64.b64encode(hashlib.sha256(brought).digest()).decode()
    assert kept == snapshot(memory)[:START] + memory[3 * BLOCK : 4 * BLOCK] + bytes(BLOCK)


def test_a_length_of_several_bytes_is_read_and_other_sections_passed_over():
    assert list(data_of(wasm((70, b"ab"), (300, b"c" * 200)))) == [(70, b"ab"), (300, b"c" * 200)]


@pytest.mark.parametrize(
    "content", [b"none", wasm((5, b"x")).replace(b"\0\x41", b"\1\x41"), wasm((5, b"x")).replace(b"\x41\5", b"\x23\5")]
)
def test_what_is_not_understood_is_refused(content: bytes):
    with pytest.raises(NotUnderstood):
        list(data_of(content))


def test_most_of_the_machines_data_and_of_the_emptiness_is_left_out(made: Path):
    listing = json.loads((made / "listing.json").read_text())
    kept = gzip.decompress((made / listing["files"]["snapshot"]["name"]).read_bytes())
    snapshot = listing["snapshot"]
    machine = bytearray(snapshot["memory"])
    for at, content in data_of((NODE_MODULES / "pyodide/pyodide.asm.wasm").read_bytes()):
        machine[at : at + len(content)] = content
    brought = b"".join(machine[at : at + length] for at, length in snapshot["brought"])
    assert snapshot["integrity"] == "sha256-" + base64.b64encode(hashlib.sha256(brought).digest()).decode()
    assert len(brought) > 3_000_000
    assert len(kept) == snapshot["head"] + sum(length for _, length in snapshot["kept"]) < snapshot["memory"] / 2
