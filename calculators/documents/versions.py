"""Formats with versions: what the handbook keeps as documents, and how one of any version becomes one of this
version."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from calculators.documents.json_schema import Schema, violations
from calculators.documents.json_text import InvalidDocument

Document = dict[str, Any]


@dataclass(frozen=True)
class Format:
    """One kind of document.

    name: what stands under ``format`` in each, and what a person calls it, such as ``house method``.
    version: the newest. schema: gives the shape of that version.
    migrations: version → function from a document of it to one of the next.
    """

    name: str
    version: int
    schema: Callable[[], Schema]
    migrations: Mapping[int, Callable[[Document], Document]] = field(default_factory=dict)

    def migrated(self, data: Any) -> Document:
        """A document of any version as one of the newest, its shape not yet checked.

        Raises InvalidDocument with a sentence when it is of a version to come, or not of this format.
        """
        if not isinstance(data, dict) or data.get("format") != self.name:
            raise InvalidDocument(f"This is not a {self.name}. Choose a file that was saved as one.")
        version = data.get("version")
        if (
            not isinstance(version, int)
            or isinstance(version, bool)
            or version < min(self.migrations, default=self.version)
        ):
            raise InvalidDocument(f"This {self.name} does not say which version it is, so it is left as it is.")
        if version > self.version:
            raise InvalidDocument(
                f"This {self.name} was kept by a newer handbook. It is left as it is; open it with the newer one."
            )
        document: Document = data
        while version < self.version:
            document, version = self.migrations[version](document), version + 1
        return document

    def validated(self, data: Document) -> Document:
        """The same document, its shape checked. Raises InvalidDocument with a sentence that names the place."""
        for path, sentence in violations(data, self.schema()):
            raise InvalidDocument(f"This {self.name} cannot be used: {path or 'at its start'}. {sentence}")
        return data
