"""The format of a house method: its shape, and the ways from older versions and to the newest."""

from functools import cache
from typing import Any

from calculators.asking.house_method import FORMAT, RULER_STEPS, SETTLED_STEPS, VERSION
from calculators.documents.house_method.sections import sections, tables
from calculators.documents.json_schema import Schema, group, listed, named, text
from calculators.documents.versions import Document, Format

LONGEST_VALUE, LONGEST_WHY, LONGEST_TEXT, MOST_ROWS = 80, 500, 10_000, 60
ID = text(40, least=1, pattern=r"^[a-z0-9-]+$", description="a name of small letters, digits and hyphens")
OPENING = "opening"


@cache
def schema() -> Schema:
    """The shape of a house method as JSON Schema, published with the site."""
    value = text(LONGEST_VALUE, description="as the maker writes it, such as 1 cm")
    pair = group({"cm": value, "in": value}, ("cm", "in"), "one text for a centimetre ruler and one for an inch ruler")
    written = {"anyOf": [value, pair]}
    why = text(LONGEST_WHY, description="why the house does it so")
    measure = {"anyOf": [value, pair, group({"value": written, "why": why}, (), "a measure with the reason beside it")]}
    rows = {
        rows.name: listed(
            group({**{column.name: written | {"description": column.help} for column in rows.columns}, "why": why}),
            MOST_ROWS,
            rows.title,
        )
        for rows in tables().values()
    }
    steps = {
        f"{unit}_step": {
            "enum": list(RULER_STEPS[unit]),
            "description": f"the smallest division of the house’s {unit} ruler",
        }
        for unit in SETTLED_STEPS
    }
    own_text = text(LONGEST_TEXT, description="the studio’s own words, in Markdown")
    properties: dict[str, Schema] = {
        "format": {"const": FORMAT},
        "version": {"const": VERSION},
        "id": ID,
        "name": text(LONGEST_VALUE, least=1, description="what the method is called"),
        "ruler": group(
            {"unit": {"enum": list(RULER_STEPS), "description": "the unit the house reads by habit"}, **steps}
        ),
        "measures": named(measure, 200, "every single measure; one that is left out comes from the site’s method"),
        "tables": group(rows),
        "texts": group(dict.fromkeys((OPENING, *(section.name for section in sections())), own_text)),
    }
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        "title": "House method",
        "description": "What one workroom has settled on. Everything but format, version and name may be left out.",
        **group(properties, ("format", "version", "name")),
    }


def _from_1(data: Document) -> Document:
    """Version 2 has an allowance for every kind of seam and for the trimming of a mitre. The one there was served for
    all of them,
    so it stands for all of them; nobody had one for a seam at a zip. A step of version 1 counts for every piece, as one
    without kinds does.
    """
    measures = data.get("measures")
    if isinstance(measures, dict) and "seam_allowance" in measures:
        served = ("felled_allowance", "french_allowance", "facing_allowance", "mitre_allowance")
        measures = {**measures, **dict.fromkeys(served, measures["seam_allowance"])}
    return {**data, **({} if measures is None else {"measures": measures}), "version": 2}


_METHOD = Format(FORMAT, VERSION, schema, {1: _from_1})


def migrated(data: Any) -> Document:
    """A document of any version as one of this version, its shape checked.

    Raises InvalidDocument with a sentence when it is of a version to come, or not a house method.
    """
    return _METHOD.validated(_METHOD.migrated(data))


def normal(document: Document) -> Document:
    """The one way to write a method down: nothing empty, no space at the ends, no more brackets than needed.

    A table from which every line was taken out stands as an empty one: it is not the site's again.
    """
    made = {
        "format": FORMAT,
        "version": VERSION,
        "id": document.get("id", ""),
        "name": document.get("name", "").strip(),
        "ruler": {name: each for name, each in document.get("ruler", {}).items() if each},
        "measures": {
            name: each
            for name, each in ((name, _measure(each)) for name, each in document.get("measures", {}).items())
            if each
        },
        "tables": {name: [row for row in map(_row, rows) if row] for name, rows in document.get("tables", {}).items()},
        "texts": {name: kept for name, words in document.get("texts", {}).items() if (kept := _lines(words))},
    }
    return {name: each for name, each in made.items() if each}


def _measure(written: Any) -> Any:
    if isinstance(written, str) or "cm" in written:
        return _value(written)
    value, why = _value(written.get("value", "")), _lines(written.get("why", ""))
    return {name: each for name, each in (("value", value), ("why", why)) if each} if why else value


def _value(written: Any) -> Any:
    if isinstance(written, str):
        return written.strip()
    cm, inch = written["cm"].strip(), written["in"].strip()
    return {"cm": cm, "in": inch} if cm and inch and cm != inch else cm or inch


def _row(row: dict[str, Any]) -> dict[str, Any]:
    kept = {name: _lines(each) if name == "why" else _value(each) for name, each in row.items()}
    return {name: each for name, each in kept.items() if each}


def _lines(words: str) -> str:
    return "\n".join(line.rstrip() for line in words.splitlines()).strip()
