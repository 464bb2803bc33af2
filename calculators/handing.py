"""Handing a method or everything to somebody else: as a file, or as a link that holds it all, with no server between.

A link carries the document in its fragment, which a browser never sends anywhere: the text, compressed (RFC 1951) and written
in the letters that an address may hold (RFC 4648, base64url).
"""

import base64
import binascii
import re
import zlib
from dataclasses import dataclass
from typing import Any

from calculators.documents import LONGEST, Unreadable, read_json, write_json
from calculators.house_method import FORMAT as METHOD_FORMAT
from calculators.method.check import mended
from calculators.method.format import Document, brought_up
from calculators.method.reading import written_down

FORMAT, VERSION = "workroom", 1
MOST = 200
LONGEST_LINK = 60_000
_PACKED = re.compile(r"1\.([A-Za-z0-9_-]+)")
_BROKEN = "This link is not whole. Ask for it again, or for a file."


@dataclass(frozen=True)
class Handed:
    """One method that was handed over, with a sentence for every value of it that cannot be used here."""

    document: Document
    troubles: dict[str, str]

    @property
    def text(self) -> str:
        return written_down(self.document)


def packed(text: str) -> str:
    """A document's text as the end of a link."""
    squeezed = zlib.compress(write_json(read_json(text)).encode(), 9, wbits=-15)
    return "1." + base64.urlsafe_b64encode(squeezed).decode().rstrip("=")


def unpacked(fragment: str) -> str:
    """The text that a link holds. Raises Unreadable with a sentence."""
    if len(fragment) > LONGEST_LINK:
        raise Unreadable("This link is longer than any that this handbook makes. Ask for a file instead.")
    found = _PACKED.fullmatch(fragment)
    if not found:
        newer = re.match(r"\d+\.", fragment) and not fragment.startswith("1.")
        raise Unreadable("This link was made by a newer handbook. Open it with the newer one." if newer else _BROKEN)
    try:
        squeezed = base64.urlsafe_b64decode(found[1] + "=" * (-len(found[1]) % 4))
        opened = zlib.decompressobj(wbits=-15)
        plain = opened.decompress(squeezed, LONGEST + 1)  # never more, however small the link
        if len(plain) > LONGEST or not opened.eof:
            raise Unreadable(_BROKEN)
        return plain.decode()
    except (binascii.Error, zlib.error, UnicodeDecodeError):
        raise Unreadable(_BROKEN) from None


def handed(text: str) -> list[Handed]:
    """The methods in a file or link: one, or all that a file of everything holds. Raises Unreadable with a sentence."""
    data = read_json(text)
    return [_one(each) for each in (_all_of(data) if _is_everything(data) else [data])]


def everything(documents: list[Document]) -> str:
    """All methods as the text of one file, the same for the same methods."""
    return write_json({"format": FORMAT, "version": VERSION, "methods": sorted(documents, key=lambda each: each.get("id", ""))})


def _is_everything(data: Any) -> bool:
    return isinstance(data, dict) and data.get("format") == FORMAT


def _all_of(data: dict[str, Any]) -> list[Any]:
    if data.get("version") != VERSION or isinstance(data["version"], bool):
        raise Unreadable("This file was saved by a newer handbook. Open it with the newer one.")
    methods = data.get("methods")
    if not isinstance(methods, list) or len(methods) > MOST:
        raise Unreadable(f"This file is not whole, or holds more than {MOST} methods. Choose another.")
    return methods


def _one(data: Any) -> Handed:
    if not isinstance(data, dict) or data.get("format") not in (METHOD_FORMAT,):
        raise Unreadable("This is not a house method. Choose a file that this handbook saved, or ask for the link again.")
    return Handed(*mended(brought_up(data)))
