"""One document as a change of another: JSON Merge Patch (RFC 7396). Holds for documents in which nothing is null."""

from typing import Any


def patch(before: Any, after: Any) -> Any:
    """What to change in one document to get the other; a list that differs is given whole."""
    if not isinstance(before, dict) or not isinstance(after, dict):
        return after
    taken_out = {name: None for name in before if name not in after}
    return taken_out | {
        name: patch(before.get(name), each)
        for name, each in after.items()
        if name not in before or before[name] != each
    }


def patched(before: Any, change: Any) -> Any:
    """The document with a change made to it; the first is left as it was."""
    if not isinstance(change, dict):
        return change
    made = dict(before) if isinstance(before, dict) else {}
    for name, each in change.items():
        if each is None:
            made.pop(name, None)
        else:
            made[name] = patched(made.get(name), each)
    return made
