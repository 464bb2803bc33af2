"""One file of all that a browser keeps: every method and job with its dated changes, what was ticked, measured or typed
for no job, what a form could not take, and what was chosen.

Everything kept is an entry of its own in the list ``kept``, on a line of its own, so that a file of any length is
written and read entry by entry; the rest of the file, with a 0 for each entry, is its head. An entry holds its changes
in order, the first of them the whole document, each further one a JSON Merge Patch (RFC 7396) of what stood before. A
record that could not be read when the file was saved is in it letter for letter.
"""

import base64
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from calculators.documents.exchange.kinds import KINDS, checked
from calculators.documents.exchange.share_link import METHOD, Handed, handed
from calculators.documents.house_method.format import ID
from calculators.documents.job.format import RULER
from calculators.documents.json_schema import Schema, group, listed, text
from calculators.documents.json_text import InvalidDocument, read_json, write_json
from calculators.documents.merge_patch import patch, patched
from calculators.documents.versions import Document, Format

FORMAT, VERSION = "workroom", 4
MOST, MOST_CHANGES = 1_000_000, 400
LONGEST_HISTORY = 8_000_000  # [characters] of all states of one thing together: older ones are left out
LONGEST_ENTRY = 5 * LONGEST_HISTORY  # [characters]; a damaged record takes up to four times its length
START, BETWEEN, END = '"kept":[\n', ",\n", "\n]}\n"
CHOICES: dict[str, Schema] = {
    "follows": {"anyOf": [ID, text(0)]},
    "before": {"anyOf": [ID, text(0)]},
    "ruler": {"anyOf": [RULER, text(0)]},
    "look": {"enum": ["", "light", "dark"]},
}


@dataclass(frozen=True)
class DocumentHistory:
    """One thing of such a file: its kind and id, and what it was after each change, oldest first: (moment, data or raw
    text)."""

    kind: str
    identity: str
    states: tuple[tuple[str, Any], ...]

    @cached_property
    def newest(self) -> Handed:
        """What it is now. Raises InvalidDocument with a sentence."""
        found = KINDS[self.kind].read(self._data(self.states[-1][1]))
        if len(found.text) > KINDS[self.kind].longest:
            raise InvalidDocument("This is longer than anything that this handbook keeps. Choose another.")
        return found

    @property
    def raw(self) -> str:
        """The text of the newest record, as it was kept."""
        return _text(self.states[-1][1])

    @property
    def is_readable(self) -> bool:
        """Whether what it is now can be used here."""
        try:
            return bool(self.newest)
        except InvalidDocument:
            return False

    def versions(self, identity: str) -> Iterator[dict[str, str]]:
        """Its states as they are kept under an id, newest first, as far as they are not too long together: {"at",
        "text"}.

        The newest is written as this handbook writes it; where it cannot be read, as it stands, since an edition to
        come may read it. Of those before it the ones without the shape of their kind are passed over.
        """
        kind = KINDS[self.kind]
        (at, _), room = self.states[-1], LONGEST_HISTORY
        if self.is_readable:
            yield {"at": at, "text": write_json(_under(identity, self.newest.document))}
        elif kind.is_dated:
            yield {"at": at, "text": self.raw}
        else:
            return
        for at, state in reversed(self.states[:-1]):
            try:
                data = kind.shaped(self._data(state))
            except InvalidDocument:
                continue
            kept = write_json(_under(identity, data))
            room -= len(kept)
            if room < 0:
                return
            yield {"at": at, "text": kept}

    def _data(self, state: Any) -> Any:
        return read_json(state, KINDS[self.kind].longest) if isinstance(state, str) else state


@dataclass(frozen=True)
class Head:
    """What stands in a file beside its entries. version: of the file, by which they are read. choices: name → what was
    chosen, empty for none. alone: the one entry, where the file is a method or a job and no file of everything."""

    version: int
    choices: Mapping[str, str]
    alone: str = ""


def changes_of(kind: str, versions: Iterable[Mapping[str, str]]) -> Iterator[Document]:
    """The states of one thing as they stand in its entry. versions: {"at", "text"}, oldest first."""
    before: Document = {}
    for version in versions:
        try:
            data = read_json(version["text"], KINDS[kind].longest)
        except InvalidDocument:
            data = None
        if not isinstance(data, dict) or ("null" in version["text"] and _has_null(data)):
            raw = base64.b64encode(version["text"].encode("utf-8", "surrogatepass"))
            yield {"at": version["at"], "damaged": raw.decode()}
            continue
        yield {"at": version["at"], "patch": patch(before, data)}
        before = data


def with_room(versions: list[Mapping[str, str]]) -> list[Mapping[str, str]]:
    """The newest of its states, as many as can be read again."""
    kept, room = 0, LONGEST_HISTORY
    for each in reversed(versions):
        room -= len(each["text"])
        if room < 0:
            break
        kept += 1
    return versions[-min(max(kept, 1), MOST_CHANGES) :]


def entry(kind: str, identity: str, changes: list[Document]) -> str:
    """One thing with all its changes, as it stands in the file."""
    return _line({"kind": kind, "id": identity, "changes": changes})


def around(choices: Mapping[str, str], at: str) -> dict[str, str]:
    """What stands before, between and after the entries of a file. at: when it is saved."""
    head = _line({"format": FORMAT, "version": VERSION, "saved": at, **choices})
    return {"start": f"{head[:-1]},{START}", "between": BETWEEN, "end": END}


def read_head(text: str) -> Head:
    """The head of a file. Raises InvalidDocument with a sentence."""
    data = read_json(text)
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        one = handed(data)
        return Head(VERSION, {}, entry(one.kind, one.document.get("id", ""), [{"at": "", "patch": data}]))
    version = data.get("version")
    head = _FORMAT.validated(_FORMAT.migrated(data))
    return Head(version if isinstance(version, int) else VERSION, {name: head.get(name, "") for name in CHOICES})


def read_entry(text: str, version: int) -> DocumentHistory:
    """One thing out of a file. version: of the file. Raises InvalidDocument with a sentence."""
    data = read_json(text, LONGEST_ENTRY)
    if version == 1:  # each was a method, without its changes
        data = {"kind": METHOD, "id": data.get("id", "") if isinstance(data, dict) else "", "changes": [_first(data)]}
    what = "This part of the file"
    checked(data, _entry_schema(), what)
    checked(data["id"], KINDS[data["kind"]].identity, what)
    if not data["changes"]:
        raise InvalidDocument(f"{what} is empty.")
    return DocumentHistory(data["kind"], data["id"], tuple(_states(data["changes"])))


def _first(data: Any) -> Document:
    return {"at": "", "patch": data}


def _head_schema() -> Schema:
    kept = listed({}, MOST)
    return group(
        {"format": {"const": FORMAT}, "version": {"const": VERSION}, "saved": text(40), "kept": kept, **CHOICES},
        ("format", "version", "kept"),
    )


def _entry_schema() -> Schema:
    change = group({"at": text(40), "patch": {}, "damaged": text(LONGEST_ENTRY)}, ("at",))
    return group(
        {"kind": {"enum": [*KINDS]}, "id": text(4_000), "changes": listed(change, MOST_CHANGES)},
        ("kind", "id", "changes"),
    )


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


def _under(identity: str, data: Document) -> Document:
    return data if "format" not in data or data.get("id") == identity else {**data, "id": identity}


def _line(data: Any) -> str:
    made = json.dumps(data, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    return made if made.isascii() or _is_whole(made) else json.dumps(data, separators=(",", ":"), sort_keys=True)


def _is_whole(text: str) -> bool:
    try:
        return bool(text.encode())
    except UnicodeEncodeError:  # half a character, which no file holds but as its number
        return False


def _has_null(data: Any) -> bool:
    inner = data.values() if isinstance(data, dict) else data if isinstance(data, list) else ()
    return data is None or any(map(_has_null, inner))


def _from_1(head: Document) -> Document:
    """The first version held the newest of each method and nothing else."""
    if not isinstance(head.get("methods"), list):
        raise InvalidDocument("This file is not whole. Choose another.")
    return {"format": FORMAT, "version": 2, "kept": head["methods"]}


def _from_2(head: Document) -> Document:
    """The second version held nothing of a batch that is kept as no job."""
    return {**head, "version": 3}


def _from_3(head: Document) -> Document:
    """The third version held nothing that was typed for no job or could not be taken, and not whether the pages are
    light or dark."""
    return {**head, "version": 4}


_FORMAT = Format(FORMAT, VERSION, _head_schema, {1: _from_1, 2: _from_2, 3: _from_3})
