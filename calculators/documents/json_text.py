"""Plain JSON that came from elsewhere (a file, a link, a stored record): read with care, written one way only."""

import json
import re
from json.encoder import encode_basestring
from typing import Any, NoReturn

LONGEST = 2_000_000  # [characters] of any file or link; a workroom's whole house stays far below
DEEPEST = 12

_STRING_OR_BRACKET = re.compile(r'"(?:[^"\\]|\\.)*"|[\[\]{}]', re.DOTALL)
_UNSHOWABLE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]")


class InvalidDocument(ValueError):
    """Raised with one sentence for the person: what is wrong with a document and what would be right."""


def read_json(text: str, longest: int = LONGEST) -> Any:
    """The data in a JSON text.

    longest: how long the text may be [characters].
    Raises InvalidDocument with a sentence when it is too long, nested too deeply, or not JSON.
    """
    if len(text) > longest:
        raise InvalidDocument(
            f"This holds {len(text):,} characters, and at most {longest:,} are read. Choose a file saved by this "
            "handbook."
        )
    _measure_depth(text)
    try:
        return json.loads(text, parse_constant=_no_constant)
    except (ValueError, RecursionError):
        raise InvalidDocument(
            "This is not a file of this handbook, or it has been damaged. Choose a file that the handbook saved."
        ) from None


def write_json(data: Any) -> str:
    """The one text for some data: names in order, so that equal data give equal bytes."""
    return _written(data, "\n") + "\n"


def _written(data: Any, line: str) -> str:
    """As json.dumps with one space of indentation writes it, several times as fast: that is Python's own slow way."""
    inner = line + " "
    if isinstance(data, str):
        return encode_basestring(data)
    if isinstance(data, dict) and data:
        each = [f"{encode_basestring(name)}: {_written(data[name], inner)}" for name in sorted(data)]
        return f"{{{inner}{f',{inner}'.join(each)}{line}}}"
    if isinstance(data, list | tuple) and data:
        return f"[{inner}{f',{inner}'.join([_written(each, inner) for each in data])}{line}]"
    return json.dumps(data)


def unshowable(text: str) -> bool:
    """Whether a text holds signs that no page can show or that turn the words around it."""
    return _UNSHOWABLE.search(text) is not None


def _measure_depth(text: str) -> None:
    # Before json.loads, which would go as deep as the text asks for: in the browser that can end Python itself.
    if text.count("[") + text.count("{") <= DEEPEST:
        return
    depth = 0
    for found in _STRING_OR_BRACKET.finditer(text):
        if found.group() in "[{":
            depth += 1
            if depth > DEEPEST:
                raise InvalidDocument(
                    f"This is nested more than {DEEPEST} deep, which no file of this handbook is. Choose another file."
                )
        elif found.group() in "]}":
            depth -= 1


def _no_constant(word: str) -> NoReturn:
    raise ValueError(f"{word} is not a number")
