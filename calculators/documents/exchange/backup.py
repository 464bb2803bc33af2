"""One file of all that a browser keeps: every method and job with its dated changes, what was ticked and measured for a
batch
that is kept as no job, whose method is followed, the ruler in hand.

Each document is written as its changes in order, the first of them the whole document, each further one a JSON Merge
Patch
(RFC 7396) of what stood before. A record that could not be read when the file was saved is in it letter for letter.
"""

import base64
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from calculators.documents.exchange.share_link import JOB, LONGEST_OF, METHOD, Handed, handed
from calculators.documents.house_method.format import ID
from calculators.documents.job.format import RULER
from calculators.documents.json_schema import Schema, group, listed, text
from calculators.documents.json_text import InvalidDocument, read_json, write_json
from calculators.documents.merge_patch import patch, patched
from calculators.documents.versions import Document, Format

FORMAT, VERSION = "workroom", 3
LOOSE = "loose"  # ticked and measured for a batch kept as no job; written as a job is
LONGEST = 20_000_000  # [characters]
MOST, MOST_CHANGES = 1_000, 400
_LONGEST_OF = {**LONGEST_OF, LOOSE: LONGEST_OF[JOB]}
LONGEST_HISTORY = 8_000_000  # [characters] of all versions of one document together


@dataclass(frozen=True)
class DocumentHistory:
    """One document of such a file: its kind and id, and what it was after each change, oldest first: (moment, data or
    raw text)."""

    kind: str
    identity: str
    states: tuple[tuple[str, Any], ...]

    @property
    def newest(self) -> Handed:
        """What it is now. Raises InvalidDocument with a sentence."""
        found = handed(self._data(self.states[-1][1]))
        if found.kind != self._written_as:
            raise InvalidDocument(f"This was saved as a {self._written_as} and is none. Choose another.")
        return found

    @property
    def raw(self) -> str:
        """The text of the newest record, as it was kept."""
        return _text(self.states[-1][1])

    def versions(self) -> list[dict[str, str]]:
        """Every state that can be read here, oldest first, as far as they are not too long together: {"at", "text"}."""
        made: list[dict[str, str]] = []
        room = LONGEST_HISTORY
        for at, state in reversed(self.states):
            try:
                found = handed(self._data(state))
            except InvalidDocument:
                continue
            room -= len(found.text)
            if room < 0 and made:
                break
            if found.kind == self._written_as:
                made.append({"at": at, "text": found.text})
        return made[::-1]

    @property
    def _written_as(self) -> str:
        return JOB if self.kind == LOOSE else self.kind

    def _data(self, state: Any) -> Any:
        return read_json(state, _LONGEST_OF[self.kind]) if isinstance(state, str) else state


@dataclass(frozen=True)
class Backup:
    """All that such a file holds. follows: the id of the method followed; ruler: the one in hand; empty for none
    chosen."""

    kept: tuple[DocumentHistory, ...]
    follows: str = ""
    ruler: str = ""


@cache
def schema() -> Schema:
    """The shape of a file of everything as JSON Schema."""
    change = group({"at": text(40), "patch": {}, "damaged": text(LONGEST_OF[JOB] * 2)}, ("at",))
    kept = group(
        {
            "kind": {"enum": [METHOD, JOB, LOOSE]},
            "id": {"anyOf": [ID, text(0)]},
            "changes": listed(change, MOST_CHANGES),
        },
        ("kind", "id", "changes"),
    )
    properties: dict[str, Schema] = {
        "format": {"const": FORMAT},
        "version": {"const": VERSION},
        "kept": listed(kept, MOST),
        "follows": {"anyOf": [ID, text(0)]},
        "ruler": {"anyOf": [RULER, text(0)]},
    }
    return group(properties, ("format", "version", "kept"))


def saved(kind: str, identity: str, versions: Iterable[Mapping[str, str]]) -> Document:
    """One document with all its changes, as it stands in the file. versions: {"at", "text"}, oldest first."""
    changes: list[dict[str, Any]] = []
    before: Document = {}
    for version in versions:
        try:
            data = read_json(version["text"], _LONGEST_OF[kind])
        except InvalidDocument:
            data = None
        if not isinstance(data, dict) or _has_null(data):
            changes.append(
                {
                    "at": version["at"],
                    "damaged": base64.b64encode(version["text"].encode("utf-8", "surrogatepass")).decode(),
                }
            )
            continue
        changes.append({"at": version["at"], "patch": patch(before, data)})
        before = data
    return {"kind": kind, "id": identity, "changes": changes}


def file_of(kept: Iterable[Document], follows: str = "", ruler: str = "") -> str:
    """The text of the file: the same for the same things kept. Should it grow too long to be read again, only the
    newest of each is in it."""
    ordered = sorted(kept, key=lambda each: (each["kind"], each["id"]))
    whole = {"format": FORMAT, "version": VERSION, "kept": ordered, "follows": follows, "ruler": ruler}
    made = write_json(whole)
    return made if len(made) <= LONGEST else write_json({**whole, "kept": [_only_newest(each) for each in ordered]})


def read_file(text: str) -> Backup:
    """What a file holds: everything, or one method or job as a file of its own. Raises InvalidDocument with a
    sentence."""
    data = read_json(text, LONGEST)
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        one = handed(data)
        return Backup((DocumentHistory(one.kind, one.document.get("id", ""), (("", data),)),))
    file = _FORMAT.validated(_FORMAT.migrated(data))
    kept = (
        DocumentHistory(each["kind"], each["id"], tuple(_states(each["changes"])))
        for each in file["kept"]
        if each["changes"]
    )
    return Backup(tuple(kept), file.get("follows", ""), file.get("ruler", ""))


def _states(changes: list[Document]) -> Iterator[tuple[str, Any]]:
    data: Any = {}
    for change in changes:
        if "damaged" in change:
            yield change["at"], _undamaged(change["damaged"])
        else:
            data = patched(data, change.get("patch"))
            yield change["at"], data


def _undamaged(text: str) -> str:
    try:
        return base64.b64decode(text, validate=True).decode("utf-8", "surrogatepass")
    except ValueError:  # no base64, or no text in it
        return ""


def _text(state: Any) -> str:
    return state if isinstance(state, str) else write_json(state)


def _only_newest(kept: Document) -> Document:
    states = list(_states(kept["changes"]))
    return saved(kept["kind"], kept["id"], [{"at": at, "text": _text(state)} for at, state in states[-1:]])


def _has_null(data: Any) -> bool:
    inner = data.values() if isinstance(data, dict) else data if isinstance(data, list) else ()
    return data is None or any(map(_has_null, inner))


def _from_1(file: Document) -> Document:
    """The first version held the newest of each method and nothing else."""
    methods = file.get("methods")
    if not isinstance(methods, list):
        raise InvalidDocument("This file is not whole. Choose another.")
    kept = [
        {
            "kind": METHOD,
            "id": each.get("id", "") if isinstance(each, dict) else "",
            "changes": [{"at": "", "patch": each}],
        }
        for each in methods
    ]
    return {"format": FORMAT, "version": 2, "kept": kept}


def _from_2(file: Document) -> Document:
    """The second version held nothing of a batch that is kept as no job."""
    return {**file, "version": 3}


_FORMAT = Format(FORMAT, VERSION, schema, {1: _from_1, 2: _from_2})
