"""A house method from the text it is kept as."""

import json
from functools import lru_cache

from calculators.asking.house_method import HouseMethod, read_house_method
from calculators.asking.site_method import site_method
from calculators.asking.usual_cloth import worked_out
from calculators.documents.house_method.check import UNNAMED, mended
from calculators.documents.house_method.format import migrated
from calculators.documents.house_method.two_rulers import with_both_rulers
from calculators.documents.json_text import read_json, write_json
from calculators.documents.versions import Document

LONGEST = 400_000


@lru_cache(maxsize=16)
def read_method(text: str) -> tuple[Document, HouseMethod, dict[str, str]]:
    """The document, the method it describes over the site's own, and a sentence for every value that had to be left
    out.

    Raises InvalidDocument with a sentence.
    """
    document, messages = mended(migrated(read_json(text, LONGEST)))
    return document, house_of(document), messages


def name_in(text: str) -> str:
    """What the method kept as that text is called, the rest of it left unread. Raises InvalidDocument with a
    sentence."""
    name: str = migrated(read_json(text, LONGEST))["name"].strip()
    return name or UNNAMED


def read_within(document: Document) -> tuple[Document, HouseMethod, dict[str, str]]:
    """The same of a method that stands in a job, its shape already checked; worked out once for all jobs with the same
    one."""
    return _read_within(json.dumps(document, sort_keys=True))


@lru_cache(maxsize=16)
def _read_within(text: str) -> tuple[Document, HouseMethod, dict[str, str]]:
    document, messages = mended(json.loads(text))
    return document, house_of(document), messages


def house_of(document: Document, under: HouseMethod | None = None) -> HouseMethod:
    """The method that a document describes, whole: with a figure for each ruler, and with what follows from its own
    entries.

    under: the method that fills what the document leaves out; the site's own where none is named.
    """
    return worked_out(with_both_rulers(read_house_method(document, under or site_method())))


def method_in_hand(text: str) -> HouseMethod:
    """The method kept as that text; the site's own for an empty text. Raises InvalidDocument with a sentence."""
    return read_method(text)[1] if text else site_method()


def written_down(document: Document) -> str:
    """The text a method is kept as: the same for the same method."""
    return write_json(document)
