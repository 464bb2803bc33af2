"""Every kind of thing that a browser keeps and a file of everything holds: one line of KINDS for each."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any

from calculators.documents.exchange.share_link import JOB, LONGEST_OF, METHOD, Handed, handed
from calculators.documents.house_method.format import ID
from calculators.documents.house_method.format import migrated as migrated_method
from calculators.documents.job.format import migrated as migrated_job
from calculators.documents.json_schema import Schema, group, text, violations, whole
from calculators.documents.json_text import InvalidDocument, unshowable
from calculators.documents.versions import Document

LOOSE = "loose"  # ticked and measured for a batch kept as no job; written as a job is
TYPED = "typed"  # what was typed into a calculator and belongs to no job
REFUSED = "refused"  # what was typed into the form of a document and could not be taken


@dataclass(frozen=True)
class KeptKind:
    """One kind of thing.

    identity: the shape of its id. longest: how long one state of it may be [characters].
    read: from a state to what is used of it. shaped: from a state to one of this version, its shape checked and no
    more. Both raise InvalidDocument with a sentence.
    is_dated: whether every state of it is kept with its day; else only what it is now.
    """

    identity: Schema
    longest: int
    read: Callable[[Any], Handed]
    shaped: Callable[[Any], Any]
    is_dated: bool = True


def checked(data: Any, schema: Schema, what: str) -> Any:
    """The same data, its shape checked. Raises InvalidDocument with a sentence that names the place."""
    for path, sentence in violations(data, schema):
        raise InvalidDocument(f"{what} cannot be used: {path or 'at its start'}. {sentence}")
    return data


def _document(kind: str, data: Any) -> Handed:
    found = handed(data)
    if found.kind != kind:
        raise InvalidDocument(f"This was saved as a {kind} and is none. Choose another.")
    return found


LONGEST_TYPED = LONGEST_OF[JOB]
_NAMES = text(80, least=1, pattern=r"^[a-z0-9_][a-z0-9_./-]*$", description="a name is of small letters and digits.")
_TEXTS: Schema = {
    "type": "object", "propertyNames": _NAMES, "additionalProperties": {}, "maxProperties": 1_000,
}  # fmt: skip
_TYPED = group({"texts": _TEXTS, "readOn": text(40), "refused": _TEXTS, "edition": whole(0, 1_000_000)}, ("texts",))


def _typed(data: Any) -> Handed:
    """Every text as it was typed; one that cannot be shown is left out and told."""
    data = checked(data, _TYPED, "What was typed here")
    messages: dict[str, str] = {}
    made = {**data, **{name: _showable(data[name], messages) for name in ("texts", "refused") if name in data}}
    return Handed(TYPED, made, messages)


def _refused(data: Any) -> Handed:
    data = checked(data, _TEXTS, "What was typed here")
    messages: dict[str, str] = {}
    kept = {path: _showable(each, messages) for path, each in data.items() if isinstance(each, dict)}
    return Handed(REFUSED, {path: each for path, each in kept.items() if {*each} == {"text", "sentence"}}, messages)


def _showable(texts: Document, messages: dict[str, str]) -> dict[str, str]:
    kept = {name: each for name, each in texts.items() if isinstance(each, str) and not unshowable(each)}
    messages |= {
        name: "One text holds characters that cannot be shown, and is left out." for name in texts if name not in kept
    }
    return kept


_OF_DOCUMENTS: Schema = {"anyOf": [ID, text(0)]}
KINDS = {
    METHOD: KeptKind(_OF_DOCUMENTS, LONGEST_OF[METHOD], partial(_document, METHOD), migrated_method),
    JOB: KeptKind(_OF_DOCUMENTS, LONGEST_OF[JOB], partial(_document, JOB), migrated_job),
    LOOSE: KeptKind(_OF_DOCUMENTS, LONGEST_OF[JOB], partial(_document, JOB), migrated_job),
    TYPED: KeptKind(text(4_000, least=1), LONGEST_TYPED, _typed, _typed, is_dated=False),
    REFUSED: KeptKind(
        text(80, pattern=r"^(method|job|loose)/[a-z0-9-]*$", description="the form of a method, a job or a ticket."),
        LONGEST_TYPED, _refused, _refused, is_dated=False,
    ),
}  # fmt: skip
