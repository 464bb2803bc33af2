"""Changing a job entry by entry; every entry has a path, such as ``typed.wash-test.cloth_width`` or ``ticks.press``."""

from collections.abc import Mapping
from typing import Any

from calculators.documents.house_method.reading import read_method
from calculators.documents.job.format import FIGURES, FORMAT, VERSION, normal, schema
from calculators.documents.job.reading import LONGEST, Job, opened, written_down
from calculators.documents.json_schema import violations
from calculators.documents.json_text import InvalidDocument, read_json, unshowable
from calculators.documents.versions import Document
from calculators.values.kind import InvalidValue

WORDS = ("notes", *FIGURES)
YES = "yes"


def begun(identity: str, name: str, walk: str, method: str) -> Document:
    """A job with nothing typed yet. method: the text of the house method it is made with, empty for the handbook's
    own."""
    return normal(
        {
            "format": FORMAT,
            "version": VERSION,
            "id": identity,
            "name": name,
            "walk": walk,
            "method": read_method(method)[0] if method else None,
        }
    )


def changed(job: Job, changes: Mapping[str, str], ruler: str = "") -> Document:
    """The job's document with entries changed; an empty text takes an entry out.

    changes: path → text. Paths: ``name``, ``cloth``, ``notes``, ``thread``, ``time``, ``cost``, ``archived`` (``yes``),
    ``typed.CALCULATOR.FIELD``, ``ticks.STEP`` (a count, or a list of bundles as JSON), ``measured.LINE.COLUMN``,
    ``measured.LINE`` to take a line out, ``method`` (the text of a house method, empty for the handbook's own).
    ruler: on which bare numbers among them are read, such as ``in 1/16``.
    Raises InvalidValue with a sentence for the person; KeyError for a path that no job has.
    """
    document = {**job.document}
    if ruler:
        document["read_on"] = ruler
    for path, text in changes.items():
        text = text.replace("\r\n", "\n").strip()
        if unshowable(text):
            raise InvalidValue("That holds characters that cannot be shown. Type it again.")
        place, *rest = path.split(".")
        document = {**document, **_CHANGES[place](document, place, rest, text)}
    for _, sentence in violations(document, schema()):
        raise InvalidValue(sentence)
    made = opened(normal(document)).document
    if len(written_down(made)) > LONGEST:
        raise InvalidValue(
            f"There is no room for this: all that is written in a job comes to {LONGEST:,} characters at most. "
            "Shorten it, or something else that is written here."
        )
    return made


def _name(document: Document, place: str, rest: list[str], text: str) -> Document:
    if not text:
        raise InvalidValue("A job needs a name. Give it one, such as Napkins for the long table.")
    return {"name": text}


def _words(document: Document, place: str, rest: list[str], text: str) -> Document:
    return {place: text}


def _archived(document: Document, place: str, rest: list[str], text: str) -> Document:
    return {"archived": text == YES}


def _method(document: Document, place: str, rest: list[str], text: str) -> Document:
    return {"method": read_method(text)[0] if text else None}


def _typed(document: Document, place: str, rest: list[str], text: str) -> Document:
    calculator, field = rest
    typed = document.get("typed", {})
    return {"typed": {**typed, calculator: _without_empty({**typed.get(calculator, {}), field: text})}}


def _ticks(document: Document, place: str, rest: list[str], text: str) -> Document:
    (step,) = rest
    return {"ticks": _without_empty({**document.get("ticks", {}), step: _ticked(text)})}


def _ticked(text: str) -> Any:
    try:
        return read_json(text) if text else None
    except InvalidDocument:
        raise InvalidValue("Tick whole pieces or bundles, such as 12.") from None


def _measured(document: Document, place: str, rest: list[str], text: str) -> Document:
    rows = [*document.get("measured", [])]
    number = int(rest[0])
    if not 0 <= number <= len(rows):
        raise InvalidValue("This line is no longer there. Open the job again.")
    if len(rest) == 1:
        return {"measured": rows[:number] + rows[number + 1 :]}
    (column,) = rest[1:]
    row = rows[number] if number < len(rows) else {}
    rows[number : number + 1] = [{**row, column: text}]
    return {"measured": rows}


def _without_empty(entries: dict[str, Any]) -> dict[str, Any]:
    return {name: each for name, each in entries.items() if each not in ("", None)}


_CHANGES = {
    "name": _name,
    "archived": _archived,
    "cloth": _words,
    "method": _method,
    "typed": _typed,
    "ticks": _ticks,
    "measured": _measured,
    **dict.fromkeys(WORDS, _words),
}
