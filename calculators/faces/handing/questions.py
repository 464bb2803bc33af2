"""What the browser asks when something is handed over, saved or opened: what was opened is first shown, with what it
would change; only what the reader then chooses is kept. A file of any length goes through here some entries at a time,
and each is a step of its own, so that Python is never held for long."""

from collections.abc import Iterator

from calculators.documents.exchange.backup import (
    CHOICES,
    around,
    changes_of,
    entry,
    read_entry,
    read_head,
    with_room,
)
from calculators.documents.exchange.share_link import handed, packed, unpacked
from calculators.documents.json_text import InvalidDocument, read_json
from calculators.faces.handing.preview import (
    broken,
    choices_section,
    folded,
    is_same,
    keep_all,
    name_of,
    section,
)
from calculators.faces.page.markup import html
from calculators.faces.page.questions import WORKING, Question, Reply, Request

UNREAD = "What could not be read here is in the file as it stands."
SHORTENED = "Of what was changed very often the file holds the newest states."
STATES_A_STEP = 10
MOST_TAKEN = 2_000_000  # [characters] after which no further thing is taken out of a file in one go


def share(request: Request) -> Reply:
    """{"text": of a method or job} → {"fragment": the end of a link that holds it}."""
    return {"fragment": packed(handed(read_json(request["text"])).text)}


def unpack(request: Request) -> Reply:
    """{"fragment"} → {"text": what the link holds}."""
    return {"text": unpacked(request["fragment"])}


def save_some(request: Request) -> Iterator[Reply]:
    """{"documents": [{"kind", "id", "versions": [{"at", "text"}, …] oldest first}, …]} → {"entries": each as it stands
    in a file of everything, "said": [sentence, …]}."""
    entries, said = [], set()
    for each in request["documents"]:
        versions = with_room(each["versions"])
        changes = []
        for change in changes_of(each["kind"], versions):
            changes.append(change)
            if len(changes) % STATES_A_STEP == 0:
                yield WORKING
        said |= {UNREAD} if any("damaged" in change for change in changes) else set()
        said |= {SHORTENED} if len(versions) < len(each["versions"]) else set()
        entries.append(entry(each["kind"], each["id"], changes))
        yield WORKING
    yield {"entries": entries, "said": sorted(said)}


def file_around(request: Request) -> Reply:
    """{"at", "choices": name → what was chosen} → {"start", "between", "end"}: what stands around the entries."""
    return around({name: request["choices"].get(name, "") for name in CHOICES}, request["at"])


def count(request: Request) -> Iterator[Reply]:
    """{"head", "entries": [text, …] of a file just saved} → {"counted": kind → how many of them can be read again}."""
    counted: dict[str, int] = {}
    version = read_head(request["head"]).version
    for text in request["entries"]:
        kind = read_entry(text, version).kind
        counted[kind] = counted.get(kind, 0) + 1
        yield WORKING
    yield {"counted": counted}


def open_head(request: Request) -> Reply:
    """{"head": the file with a 0 for each of its entries} → {"version", "choices", "alone": the one entry of a file
    that is a method or a job}."""
    head = read_head(request["head"])
    return {"version": head.version, "choices": {**head.choices}, "alone": head.alone}


def show_some(request: Request) -> Iterator[Reply]:
    """{"version", "entries": [{"text", "mine": what stands under its id, empty for nothing}, …], "first": the number of
    the first, "folded": bool} → {"items": [{"kind", "id", "name", "known", "same", "body": HTML}, …]}."""
    items = []
    for number, each in enumerate(request["entries"], start=request["first"]):
        items.append(_item(each, request["version"], number, request["folded"]))
        yield WORKING
    yield {"items": items}


def _item(given: Request, version: int, number: int, is_folded: bool) -> Reply:
    try:
        kept = read_entry(given["text"], version)
    except InvalidDocument as error:
        return {"kind": "", "id": "", "name": "", "known": False, "same": False, "body": html(broken(str(error)))}
    show = folded if is_folded else section
    return {
        "kind": kept.kind,
        "id": kept.identity,
        "name": name_of(kept),
        "known": bool(given["mine"]),
        "same": is_same(kept, given["mine"]),
        "body": html(show(kept, number, given["mine"])),
    }


def show_around(request: Request) -> Reply:
    """{"new": how many things, "choices", "followed": the name of the method that was followed} → {"before", "after":
    HTML}: what stands above all of them and below."""
    found = choices_section(request["choices"], request["followed"])
    return {
        "before": html(keep_all(request["new"])) if request["new"] > 1 else "",
        "after": html(found) if found is not None else "",
    }


def take(request: Request) -> Iterator[Reply]:
    """{"version", "entries": [{"text", "id", "mine": text or empty}, …]} → {"documents": [{"kind", "id", "versions":
    [{"at", "text"}, …]}, …], "taken": how many of the entries these are} to keep after what is there; without versions
    where there is nothing to keep. What is written in few words may be long: the rest is to be asked for again.

    id: under which it is to stand. mine: what stands there and is to be followed by it: then only what came after that,
    else the newest alone.
    """
    documents: list[Reply] = []
    taken = length = 0
    for each in request["entries"]:
        if length > MOST_TAKEN:
            break
        taken += 1
        try:
            kept = read_entry(each["text"], request["version"])
        except InvalidDocument:
            continue
        versions: list[dict[str, str]] = []
        for version in kept.versions(each["id"]):
            versions.append(version)
            length += len(version["text"])
            if len(versions) % STATES_A_STEP == 0:
                yield WORKING
        documents.append({"kind": kept.kind, "id": each["id"], "versions": _after(each["mine"], versions[::-1])})
        yield WORKING
    yield {"documents": documents, "taken": taken}


def _after(mine: str, versions: list[dict[str, str]]) -> list[dict[str, str]]:
    if not mine or not versions:
        return versions
    texts = [each["text"] for each in versions]
    return versions[texts.index(mine) + 1 :] if mine in texts[:-1] else [{**versions[-1], "at": ""}]


HANDING_QUESTIONS: dict[str, Question] = {
    "share": share,
    "unpack": unpack,
    "save some": save_some,
    "file around": file_around,
    "count": count,
    "handed": open_head,
    "handed some": show_some,
    "handed around": show_around,
    "take": take,
}
