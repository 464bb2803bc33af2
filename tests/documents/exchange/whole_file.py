"""A file of everything as the page of handing over writes, splits and reads it, for tests that have no page."""

import json
from dataclasses import dataclass

from calculators.documents.exchange.backup import DocumentHistory, read_entry, read_head
from calculators.faces.browser import replies


def ask(**request):
    return json.loads(list(replies(json.dumps(request)))[-1])


def saved(kind, identity, versions):
    """One thing with all its changes, as it stands in the file. versions: {"at", "text"}, oldest first."""
    documents = [{"kind": kind, "id": identity, "versions": versions}]
    return ask(ask="save some", documents=documents)["entries"][0]


def file_of(entries, follows="", ruler="", at="2026-11-29T16:00:00+01:00", **choices):
    """The text of a file with these entries."""
    around = ask(ask="file around", at=at, choices={"follows": follows, "ruler": ruler, **choices})
    return around["start"] + around["between"].join(entries) + around["end"]


def split(text):
    """The head of a file, with a 0 for each entry, and its entries."""
    try:
        data = json.loads(text)
    except (ValueError, RecursionError):
        return text, []
    if not isinstance(data, dict):
        return text, []
    lists = {name: data[name] for name in ("kept", "methods") if isinstance(data.get(name), list)}
    head = {**data, **{name: [0] * len(each) for name, each in lists.items()}}
    return json.dumps(head) if lists else text, [json.dumps(each) for found in lists.values() for each in found]


@dataclass(frozen=True)
class File:
    kept: list[DocumentHistory]
    choices: dict[str, str]


def read_file(text):
    """Everything in a file. Raises InvalidDocument with a sentence."""
    head_text, entries = split(text)
    head = read_head(head_text)
    if head.alone:
        entries = [head.alone]
    return File([read_entry(each, head.version) for each in entries], dict(head.choices))


def versions(kept):
    """Every state of one thing, oldest first."""
    return [*kept.versions(kept.identity)][::-1]


def _opened(text="", fragment=None, **more):
    if fragment is not None:
        unpacked = ask(ask="unpack", fragment=fragment)
        if "trouble" in unpacked:
            return unpacked, []
        text = unpacked["text"]
    head_text, entries = split(text)
    head = ask(ask="handed", head=head_text)
    return head, [head["alone"]] if head.get("alone") else entries


def handed(kept, folded=False, **given):
    """What a page shows of a file or link: {"body", "items", "choices"}, or {"trouble"}. kept: "kind id" → text."""
    head, entries = _opened(**given)
    if "trouble" in head:
        return head
    asked = [{"text": each, "mine": kept.get(place(each, head["version"]), "")} for each in entries]
    items = ask(ask="handed some", version=head["version"], entries=asked, first=0, folded=folded)["items"]
    followed = next((each["name"] for each in items if each["id"] == head["choices"].get("follows") != ""), "")
    new = sum(not each["known"] and each["kind"] != "" for each in items)
    around = ask(ask="handed around", new=new, choices=head["choices"], followed=followed)
    body = around["before"] + "".join(each["body"] for each in items) + around["after"]
    return {"body": body, "items": items, "choices": head["choices"]}


def keep(text="", item=0, id="sage-napkins", mine="", **given):
    """The states of one thing of a file that are kept after what is there."""
    head, entries = _opened(text=text, **given)
    taken = ask(ask="take", version=head["version"], entries=[{"text": entries[item], "id": id, "mine": mine}])
    return taken["documents"][0]["versions"] if taken["documents"] else []


def place(entry, version):
    """Where an entry belongs: its kind and id."""
    data = json.loads(entry)
    if not isinstance(data, dict):
        return ""
    return f"{'method' if version == 1 else data.get('kind')} {data.get('id')}"
