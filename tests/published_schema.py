"""A published schema and our own check of it, against an independent reader of JSON Schema (fastjsonschema)."""

from collections.abc import Callable
from typing import Any

import fastjsonschema
import pytest

from calculators.documents.json_schema import fits
from calculators.documents.json_text import InvalidDocument


def check_agreement(
    published: Callable[[Any], Any], schema: dict[str, Any], data: Any, migrated: Callable[[Any], Any]
) -> None:
    """Both let the same data through; only characters that cannot be shown, and an empty name of an entry, are ours
    alone to refuse."""
    try:
        published(data)
        agreed = True
    except fastjsonschema.JsonSchemaException:
        agreed = False
    if fits(data, schema):
        assert agreed
    elif agreed:
        with pytest.raises(InvalidDocument, match="characters that cannot be shown|no entry called"):
            migrated(data)
