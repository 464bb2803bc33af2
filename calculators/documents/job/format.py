"""The format of a job: its shape, and the ways from older versions and to the newest."""

import json
from functools import cache, lru_cache
from typing import Any

from calculators.documents.house_method.format import ID
from calculators.documents.house_method.format import migrated as migrated_method
from calculators.documents.house_method.format import normal as normal_method
from calculators.documents.house_method.format import schema as method_schema
from calculators.documents.json_schema import Schema, group, listed, named, text, whole, yes_or_no
from calculators.documents.versions import Document, Format

FORMAT, VERSION = "job", 3
LONGEST_NAME, LONGEST_TYPED, LONGEST_NOTE, LONGEST_NOTES = 80, 4_000, 500, 10_000
MOST_MEASURED, MOST_BUNDLES, MOST_TICKED = 500, 500, 100_000
RULER = text(12, pattern=r"^(cm|mm|in)( [0-9]{1,2}(/[0-9]{1,2})?)?$", description="a ruler, such as in 1/16")
MEASURED = {
    "piece": "which piece it was",
    "width": "its width, as read off the ruler",
    "length": "its length, as read off the ruler",
    "diagonal_1": "one diagonal, from corner to corner, as read off the ruler",
    "diagonal_2": "the other diagonal, as read off the ruler",
    "note": "anything worth knowing about it",
}
FIGURES = {"thread": "thread for the batch", "time": "time for the batch", "cost": "cost of the batch"}


@cache
def schema() -> Schema:
    """The shape of a job as JSON Schema, published with the site."""
    method = {
        name: part
        for name, part in method_schema().items()
        if name in ("type", "properties", "required", "additionalProperties")
    }
    typed = named(
        text(LONGEST_TYPED, description="as the maker typed it"),
        60,
        "the blanks of one calculator that the maker filled in herself",
    )
    ticked = whole(0, MOST_TICKED, "how many pieces are done")
    bundles = listed(whole(1, MOST_TICKED, "the number of a bundle that is done"), MOST_BUNDLES)
    properties: dict[str, Schema] = {
        "format": {"const": FORMAT},
        "version": {"const": VERSION},
        "id": ID,
        "name": text(LONGEST_NAME, least=1, description="what the job is called"),
        "walk": text(40, least=1, pattern=r"^[a-z0-9-]+$", description="the walk it goes by, such as batch"),
        "typed": named(
            typed, 60, "what was typed, calculator by calculator; everything else is worked out anew each time"
        ),
        "read_on": {
            "anyOf": [RULER, text(0, description="the ruler that the method reads by habit")],
            "description": "the ruler on which a bare number is read",
        },
        "method": {
            "anyOf": [method, {"const": None}],
            "description": "the house method that the job was made with; without one, the handbook’s own",
        },
        "archived": yes_or_no("whether it stands among the finished jobs"),
        "cloth": text(
            LONGEST_NAME,
            description="the cloth, as the house method calls it; without one, the cloth the house uses most",
        ),
        "ticks": named({"anyOf": [ticked, bundles]}, 200, "step → how many pieces are done, or which bundles"),
        "measured": listed(
            group(
                {
                    name: text(LONGEST_NOTE if name == "note" else LONGEST_NAME, description=meaning)
                    for name, meaning in MEASURED.items()
                }
            ),
            MOST_MEASURED,
            "what was really measured",
        ),
        "notes": text(LONGEST_NOTES, description="the maker’s own words"),
        **{
            name: text(LONGEST_NOTE, description=f"the maker’s own figure: {meaning}")
            for name, meaning in FIGURES.items()
        },
    }
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "Job",
        "description": "One batch of pieces. Everything but format, version, name and walk may be left out. Nothing "
        "worked out is kept.",
        **group(properties, ("format", "version", "name", "walk")),
    }


def _from_1(job: Document) -> Document:
    """The first version had no diagonals; all else was the same."""
    return {**job, "version": 2}


def _from_2(job: Document) -> Document:
    """The second version asked nothing of the selvedges where pieces are counted: a width written there was one without
    them."""
    typed = dict(job.get("typed", {}))
    if "cloth_width" in (pieces := typed.get("pieces-from-cloth", {})):
        typed["pieces-from-cloth"] = {"measured": "trimmed", **pieces}
    return {**job, "version": 3, "typed": typed}


_JOB = Format(FORMAT, VERSION, schema, {1: _from_1, 2: _from_2})


def migrated(data: Any) -> Document:
    """A job of any version as one of this version, the method in it too, its shape checked.

    Raises InvalidDocument with a sentence when it is of a version to come, or not a job.
    """
    job = _JOB.migrated(data)
    method = job.get("method")
    if method is None:
        return _JOB.validated(job)
    method = _method(json.dumps(method))
    return {**_JOB.validated({**job, "method": None}), "method": method}


@lru_cache(maxsize=16)
def _method(text: str) -> Document:
    """The method in a job, checked once for all jobs with the same one."""
    return migrated_method(json.loads(text))


def normal(document: Document) -> Document:
    """The one way to write a job down: nothing empty, no space at the ends, bundles in order."""
    typed = {
        name: {field: kept for field, each in texts.items() if (kept := each.strip())}
        for name, texts in document.get("typed", {}).items()
    }
    made = {
        "format": FORMAT,
        "version": VERSION,
        "id": document.get("id", ""),
        "name": document["name"].strip(),
        "walk": document["walk"],
        "typed": {name: texts for name, texts in typed.items() if texts},
        "read_on": document.get("read_on", ""),
        "method": normal_method(document["method"]) if document.get("method") else None,
        "archived": document.get("archived", False),
        "cloth": document.get("cloth", "").strip(),
        "ticks": {
            step: kept
            for step, each in document.get("ticks", {}).items()
            if (kept := sorted({*each}) if isinstance(each, list) else each)
        },
        "measured": [
            kept
            for row in document.get("measured", [])
            if (kept := {name: each.strip() for name, each in row.items() if each.strip()})
        ],
        "notes": _lines(document.get("notes", "")),
        **{name: _lines(document.get(name, "")) for name in FIGURES},
    }
    return {name: each for name, each in made.items() if each}


def _lines(words: str) -> str:
    return "\n".join(line.rstrip() for line in words.splitlines()).strip()
