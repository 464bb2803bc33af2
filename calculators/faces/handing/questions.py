"""What the browser asks when something is handed over, and when something handed over is opened: first it is shown what
it is
and what it would change; only what the reader then chooses is kept."""

from calculators.documents.exchange.backup import LONGEST, Backup, DocumentHistory, file_of, read_file, saved
from calculators.documents.exchange.share_link import handed, packed, unpacked
from calculators.documents.json_text import InvalidDocument, read_json, write_json
from calculators.faces.handing.preview import opened_parts
from calculators.faces.page.markup import html
from calculators.faces.page.questions import Reply, Request

UNREAD = "What could not be read here is in the file as it stands."


def share(request: Request) -> Reply:
    """{"text": of a method or job} → {"fragment": the end of a link that holds it}."""
    return {"fragment": packed(handed(read_json(request["text"])).text)}


def save_one(request: Request) -> Reply:
    """{"kind", "id", "versions": [{"at", "text"}, …] oldest first} → {"saved": its part of a file of everything,
    "said"}."""
    made = saved(request["kind"], request["id"], request["versions"])
    return {"saved": made, "said": UNREAD if any("damaged" in each for each in made["changes"]) else ""}


def save_everything(request: Request) -> Reply:
    """{"saved": [part, …], "follows": id, "ruler"} → {"text": one file of everything}."""
    return {"text": file_of(request["saved"], request["follows"], request["ruler"])}


def open_handed(request: Request) -> Reply:
    """{"text" or "fragment", "size", "kept": "kind id" → newest text} → {"body": HTML, "items": [{"kind", "id",
    "known", "same"}], "follows", "ruler"}."""
    if request.get("size", 0) > LONGEST:
        raise InvalidDocument(
            f"This file is {request['size'] / 1e6:,.1f} MB large, and none of this handbook is larger than "
            f"{LONGEST / 1e6:.0f} MB. Choose another."
        )
    found, kept = _opened(request), request["kept"]
    items = [
        {
            "kind": each.kind,
            "id": each.identity,
            "known": _place(each) in kept,
            "same": kept.get(_place(each)) == _newest_text(each),
        }
        for each in found.kept
    ]
    return {
        "body": "".join(map(html, opened_parts(found, kept))),
        "items": items,
        "follows": found.follows,
        "ruler": found.ruler,
    }


def one_handed(request: Request) -> Reply:
    """{"text" or "fragment", "item": its number, "id", "mine": text or empty} → {"versions": [{"at", "text"}, …]} to
    keep after what is there.

    id: under which it is to stand. mine: what stands there and is to be followed by it: then only what came after that,
    else the newest alone.
    """
    kept = _opened(request).kept[request["item"]]
    versions = [{**each, "text": _under(request["id"], each["text"])} for each in kept.versions()]
    if not _is_readable(kept):
        versions.append({"at": kept.states[-1][0], "text": kept.raw})  # an edition to come may read it
    texts = [each["text"] for each in versions]
    if not request["mine"]:
        return {"versions": versions}
    return {
        "versions": versions[texts.index(request["mine"]) + 1 :]
        if request["mine"] in texts[:-1]
        else [{**versions[-1], "at": ""}]
    }


def _under(identity: str, text: str) -> str:
    data = read_json(text)
    return text if data.get("id") == identity else write_json({**data, "id": identity})


def _is_readable(kept: DocumentHistory) -> bool:
    try:
        return bool(kept.newest)
    except InvalidDocument:
        return False


def _opened(request: Request) -> Backup:
    return read_file(unpacked(request["fragment"]) if "fragment" in request else request["text"])


def _place(kept: DocumentHistory) -> str:
    return f"{kept.kind} {kept.identity}"


def _newest_text(kept: DocumentHistory) -> str:
    return kept.newest.text if _is_readable(kept) else kept.raw


HANDING_QUESTIONS = {
    "share": share,
    "save one": save_one,
    "everything": save_everything,
    "handed": open_handed,
    "one handed": one_handed,
}
