"""Handing a method or a job to somebody else: as a file, or as a link that holds it all, with no server between.

A link carries the document in its fragment, which a browser never sends anywhere: the text, compressed (RFC 1951) and
written
in the letters that an address may hold (RFC 4648, base64url).
"""

import base64
import binascii
import re
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from calculators.asking.house_method import FORMAT as METHOD_FORMAT
from calculators.documents.house_method.check import mended
from calculators.documents.house_method.format import migrated
from calculators.documents.house_method.reading import LONGEST as LONGEST_METHOD
from calculators.documents.job.format import FORMAT as JOB_FORMAT
from calculators.documents.job.reading import LONGEST as LONGEST_JOB
from calculators.documents.job.reading import opened as opened_job
from calculators.documents.json_text import LONGEST, InvalidDocument, read_json, write_json
from calculators.documents.versions import Document

METHOD, JOB = "method", "job"
KINDS = {METHOD_FORMAT: METHOD, JOB_FORMAT: JOB}
LONGEST_OF = {METHOD: LONGEST_METHOD, JOB: LONGEST_JOB}
LONGEST_LINK = 60_000
_PACKED = re.compile(r"1\.([A-Za-z0-9_-]+)")
_BROKEN = "This link is not whole. Ask for it again, or for a file."


@dataclass(frozen=True)
class Handed:
    """One method or job that was handed over, with a sentence for everything in it that is not used here."""

    kind: str
    document: Document
    messages: Mapping[str, str]

    @cached_property
    def text(self) -> str:
        return write_json(self.document)


def packed(text: str) -> str:
    """A document's text as the end of a link. Raises InvalidDocument with a sentence where no link would be read."""
    squeezed = zlib.compress(write_json(read_json(text)).encode(), 9, wbits=-15)
    fragment = "1." + base64.urlsafe_b64encode(squeezed).decode().rstrip("=")
    if len(fragment) > LONGEST_LINK:
        raise InvalidDocument("This is too long for a link. Save it to a file and send that.")
    return fragment


def unpacked(fragment: str) -> str:
    """The text that a link holds. Raises InvalidDocument with a sentence."""
    if len(fragment) > LONGEST_LINK:
        raise InvalidDocument("This link is longer than any that this handbook makes. Ask for a file instead.")
    found = _PACKED.fullmatch(fragment)
    if not found:
        newer = re.match(r"[1-9]\d*\.", fragment, re.ASCII) and not fragment.startswith("1.")
        raise InvalidDocument(
            "This link was made by a newer handbook. Open it with the newer one." if newer else _BROKEN
        )
    try:
        squeezed = base64.urlsafe_b64decode(found[1] + "=" * (-len(found[1]) % 4))
        opened = zlib.decompressobj(wbits=-15)
        plain = opened.decompress(squeezed, LONGEST + 1)  # never more, however small the link
        if len(plain) > LONGEST or not opened.eof:
            raise InvalidDocument(_BROKEN)
        return plain.decode()
    except (binascii.Error, zlib.error, UnicodeDecodeError):
        raise InvalidDocument(_BROKEN) from None


def handed(data: Any) -> Handed:
    """The method or job that some data describes. Raises InvalidDocument with a sentence."""
    kind = KINDS.get(data["format"]) if isinstance(data, dict) and isinstance(data.get("format"), str) else None
    if not kind:
        raise InvalidDocument(
            "This is neither a house method nor a job. Choose a file that this handbook saved, or ask for the link "
            "again."
        )
    if kind == JOB:
        job = opened_job(data)
        made = Handed(kind, job.document, job.messages)
    else:
        made = Handed(kind, *mended(migrated(data)))
    if len(made.text) > LONGEST_OF[kind]:
        raise InvalidDocument(f"This {data['format']} is longer than any that this handbook keeps. Choose another.")
    return made
