"""The shape of a document, written as JSON Schema (the few words of it used here), and the check against it.

The very schema that the site publishes is the one that is checked against, so the two cannot differ.
"""

import re
from collections.abc import Callable, Iterator
from typing import Any

from calculators.documents.json_text import unshowable
from calculators.values.measure import quote

Schema = dict[str, Any]
_TYPES = {"object": dict, "array": list, "string": str, "boolean": bool, "integer": int}
_WORDS = {
    "object": "A group of named entries",
    "array": "A list",
    "string": "A text in quotation marks",
    "boolean": "Either true or false",
    "integer": "A whole number",
}


def violations(data: Any, schema: Schema, path: str = "") -> Iterator[tuple[str, str]]:
    """Every place where data does not have the shape: (path such as ``tables.cloths.0.needle``, sentence)."""
    if not schema.keys() - {"description"}:
        return  # anything may stand here
    if "anyOf" in schema:
        yield from _fits_none(data, schema["anyOf"], path)
    elif "const" in schema:
        if data != schema["const"] or isinstance(data, bool):
            yield path, f"{schema['const']} is needed here."
    elif "enum" in schema:
        if data not in schema["enum"]:
            yield path, f"{_shown(data)} is not one of the choices: {', '.join(schema['enum'])}."
    elif not isinstance(data, _TYPES[schema["type"]]) or (isinstance(data, bool) and schema["type"] != "boolean"):
        yield path, f"{_WORDS[schema['type']]} is needed here."
    else:
        yield from _INSIDE[schema["type"]](data, schema, path)


def fits(data: Any, schema: Schema) -> bool:
    """Whether data has the shape."""
    return next(violations(data, schema), None) is None


def _fits_none(data: Any, choices: list[Schema], path: str) -> Iterator[tuple[str, str]]:
    if any(fits(data, choice) for choice in choices):
        return
    likely = next(
        (choice for choice in choices if "type" in choice and isinstance(data, _TYPES[choice["type"]])), choices[0]
    )
    yield from violations(data, likely, path)


def _text(data: str, schema: Schema, path: str) -> Iterator[tuple[str, str]]:
    if len(data) > schema["maxLength"]:
        yield path, f"This text is {len(data):,} characters long. Keep it to {schema['maxLength']:,}."
    elif unshowable(data):
        yield path, "This text holds characters that cannot be shown. Type it again."
    elif len(data) < schema.get("minLength", 0):
        yield path, "Nothing is written here. Write a few words."
    elif "pattern" in schema and not re.fullmatch(schema["pattern"], data):
        yield path, f"{_shown(data)} cannot stand here: {schema['description']}"


def _list(data: list[Any], schema: Schema, path: str) -> Iterator[tuple[str, str]]:
    if len(data) > schema["maxItems"]:
        yield path, f"There are {len(data):,} lines here. Keep to {schema['maxItems']}."
        return
    for number, item in enumerate(data):
        yield from violations(item, schema["items"], _join(path, str(number)))


def _group(data: dict[str, Any], schema: Schema, path: str) -> Iterator[tuple[str, str]]:
    known, others = schema.get("properties", {}), schema.get("additionalProperties", True)
    for name in schema.get("required", ()):
        if name not in data:
            yield _join(path, name), "This is missing."
    if len(data) > schema.get("maxProperties", len(known)):
        yield path, f"There are {len(data):,} entries here. Keep to {schema.get('maxProperties', len(known))}."
        return
    for name, value in data.items():
        if name in known:
            yield from violations(value, known[name], _join(path, name))
        elif isinstance(others, dict) and fits(name, schema["propertyNames"]):
            yield from violations(value, others, _join(path, name))
        else:
            yield path, f"There is no entry called {_shown(name)} here."


def _nothing(data: Any, schema: Schema, path: str) -> Iterator[tuple[str, str]]:
    return iter(())


def _whole(data: int, schema: Schema, path: str) -> Iterator[tuple[str, str]]:
    if not schema["minimum"] <= data <= schema["maximum"]:
        yield path, f"A whole number from {schema['minimum']:,} to {schema['maximum']:,} is needed here."


_INSIDE: dict[str, Callable[[Any, Schema, str], Iterator[tuple[str, str]]]] = {
    "string": _text,
    "array": _list,
    "object": _group,
    "integer": _whole,
    "boolean": _nothing,
}


def _join(path: str, name: str) -> str:
    return f"{path}.{name}" if path else name


def _shown(data: Any) -> str:
    return f"“{quote(data)}”" if isinstance(data, str) and not unshowable(data) else "What stands here"


def text(longest: int, *, least: int = 0, pattern: str = "", description: str = "") -> Schema:
    """The shape of a text of at most so many characters."""
    made: Schema = {"type": "string", "maxLength": longest}
    return (
        made
        | ({"minLength": least} if least else {})
        | ({"pattern": pattern} if pattern else {})
        | ({"description": description} if description else {})
    )


def whole(least: int, most: int, description: str = "") -> Schema:
    """The shape of a whole number."""
    made: Schema = {"type": "integer", "minimum": least, "maximum": most}
    return made | ({"description": description} if description else {})


def yes_or_no(description: str = "") -> Schema:
    """The shape of a true or false."""
    return {"type": "boolean"} | ({"description": description} if description else {})


def group(properties: dict[str, Schema], required: tuple[str, ...] = (), description: str = "") -> Schema:
    """The shape of a group of entries, each known by name."""
    made: Schema = {"type": "object", "properties": properties, "additionalProperties": False}
    return (
        made
        | ({"required": list(required)} if required else {})
        | ({"description": description} if description else {})
    )


def named(items: Schema, most: int, description: str = "") -> Schema:
    """The shape of a group of like entries under names of the writer's own."""
    names = text(
        60, least=1, pattern=r"^[a-z0-9][a-z0-9_/-]*$", description="a name is of small letters, digits, _, - and /."
    )
    made: Schema = {"type": "object", "propertyNames": names, "additionalProperties": items, "maxProperties": most}
    return made | ({"description": description} if description else {})


def listed(items: Schema, most: int, description: str = "") -> Schema:
    """The shape of a list of like entries."""
    made: Schema = {"type": "array", "items": items, "maxItems": most}
    return made | ({"description": description} if description else {})
