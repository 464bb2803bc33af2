"""A picture of Python's memory without what the wasm file puts there by itself, which the browser puts back.

An eighth of the picture is data of the program, tables of letters for the most part, that never change: they need not travel
twice.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from .archives import integrity

BLOCK = 1024  # [bytes] what is compared at once; smaller would lengthen the list of runs and gain next to nothing
_DATA_SECTION = 11
_CONSTANT, _END = 0x41, 0x0B  # the two instructions that a fixed address is written with


class NotUnderstood(ValueError):
    """Raised when a file is not built as WebAssembly or a picture of it is."""


@dataclass
class _Reader:
    content: bytes
    at: int = 0

    def byte(self) -> int:
        self.at += 1
        return self.content[self.at - 1]

    def number(self) -> int:
        """A whole number in LEB128, as WebAssembly writes lengths; an address below 2 GiB reads the same signed or not."""
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


def thinned(picture: bytes, wasm: bytes) -> tuple[bytes, dict]:
    """The picture with nothing in the blocks that the wasm file fills just so, and how to put them back.

    Returns: the picture; its `size` [bytes]; `start`, where in it memory begins [bytes], `runs`, address and length of what was left out [bytes],
    and `integrity`, the hash of it all.
    """
    segments = list(data_of(wasm))
    machine = bytearray(max(address + len(content) for address, content in segments))
    for address, content in segments:
        machine[address : address + len(content)] = content
    start = int.from_bytes(picture[4:8], "little")
    thin, runs, left_out = bytearray(picture), [], bytearray()
    for address in range(0, len(machine) - BLOCK + 1, BLOCK):
        block = machine[address : address + BLOCK]
        if not any(block) or picture[start + address : start + address + BLOCK] != block:
            continue
        thin[start + address : start + address + BLOCK] = bytes(BLOCK)
        left_out += block
        if runs and sum(runs[-1]) == address:
            runs[-1][1] += BLOCK
        else:
            runs.append([address, BLOCK])
    return bytes(thin), {"size": len(thin), "start": start, "runs": runs, "integrity": integrity(bytes(left_out))}
