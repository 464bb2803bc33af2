"""A snapshot of Python's memory without what is there by itself: the data that the wasm file brings, and emptiness.

An eighth of the snapshot is data of the program, tables of letters for the most part, that never change: they need not
travel
twice. More than half is empty: it need not be unpacked and written.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from scripts.tools.archives import integrity

BLOCK = 1024  # [bytes] what is compared at once; smaller would lengthen the list of runs and gain next to nothing
_DATA_SECTION = 11
_CONSTANT, _END = 0x41, 0x0B  # the two instructions that a fixed address is written with


class NotUnderstood(ValueError):
    """Raised when a file is not built as WebAssembly or a snapshot of it is."""


@dataclass
class _Reader:
    content: bytes
    at: int = 0

    def byte(self) -> int:
        self.at += 1
        return self.content[self.at - 1]

    def number(self) -> int:
        """A whole number in LEB128, as WebAssembly writes lengths; an address below 2 GiB reads the same signed or
        not."""
        value = shift = 0
        while True:
            byte = self.byte()
            value |= (byte & 0x7F) << shift
            shift += 7
            if byte < 0x80:
                return value

    def bytes(self, count: int) -> bytes:
        self.at += count
        return self.content[self.at - count : self.at]


def data_of(wasm: bytes) -> Iterator[tuple[int, bytes]]:
    """What a WebAssembly file puts into memory: address, content (WebAssembly Core Specification 2.0, 5.5.14)."""
    if wasm[:8] != b"\0asm\1\0\0\0":
        raise NotUnderstood("no WebAssembly file")
    reader = _Reader(wasm, 8)
    while reader.at < len(wasm):
        section, length = reader.byte(), reader.number()
        if section != _DATA_SECTION:
            reader.at += length
            continue
        for _ in range(reader.number()):
            if reader.number() != 0 or reader.byte() != _CONSTANT:
                raise NotUnderstood("data without a fixed address")
            address = reader.number()
            if reader.byte() != _END:
                raise NotUnderstood("an address that is worked out")
            yield address, reader.bytes(reader.number())


def thinned(snapshot: bytes, wasm: bytes) -> tuple[bytes, dict[str, Any]]:
    """The parts of a snapshot that must travel, and where they belong.

    Returns: the head of the snapshot and after it all that is kept of the memory; `head`, the length of the head, and
    `memory`, of the memory [bytes];
    `kept` and `brought`, address and length of what is kept and of what the machine brings [bytes], the rest being
    empty; `integrity`, the hash of
    all that the machine brings.
    """
    head = int.from_bytes(snapshot[4:8], "little")
    memory = snapshot[head:]
    machine = bytearray(len(memory))
    for address, brought_there in data_of(wasm):
        machine[address : address + len(brought_there)] = brought_there
    runs: dict[str, list[list[int]]] = {"kept": [], "brought": [], "empty": []}
    for address in range(0, len(memory), BLOCK):
        block, brought = memory[address : address + BLOCK], machine[address : address + BLOCK]
        kind = "kept" if block != brought else "brought" if any(block) else "empty"
        if runs[kind] and sum(runs[kind][-1]) == address:
            runs[kind][-1][1] += len(block)
        else:
            runs[kind].append([address, len(block)])

    def content(kind: str) -> bytes:
        return b"".join(memory[address : address + length] for address, length in runs[kind])

    listing = {
        "head": head,
        "memory": len(memory),
        "kept": runs["kept"],
        "brought": runs["brought"],
        "integrity": integrity(content("brought")),
    }
    return snapshot[:head] + content("kept"), listing
