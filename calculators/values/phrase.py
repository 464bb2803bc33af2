"""Sentences with numbers in them, turned into words only when the ruler in hand is known."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from calculators.values.kind import Kind, kind_for_spec
from calculators.values.measure import Ruler

_BLANK = re.compile(r"\{(\w+)(?::([^{}]*))?\}")


@dataclass(frozen=True)
class Phrase:
    """A sentence with blanks: ``{left:length} more cloth gives {more:piece|pieces}``.

    After the colon stands the word that a kind is said as (`Kind.format_specs`), or the two words for one and for
    several, which shows the count and the word. ``**…**`` marks the figure to set large.
    """

    template: str
    values: Mapping[str, Any] = field(default_factory=dict)

    def blanks(self) -> set[str]:
        return {name for name, _ in _BLANK.findall(self.template)}

    def filled(self, ruler: Ruler, kinds: Mapping[str, Kind] = {}) -> str:
        """The sentence as text. kinds: how to show the blanks that name no kind of their own."""

        def fill(blank: re.Match[str]) -> str:
            name, spec = blank.groups()
            value = self.values[name]
            if spec and "|" in spec:
                one, several = spec.split("|")
                return f"{value:,} {one if value == 1 else several}"
            return (kind_for_spec(spec) if spec else kinds[name]).show(value, ruler)

        return _BLANK.sub(fill, self.template)


def say(template: str, **values: Any) -> Phrase:
    """A phrase and the values for its blanks."""
    return Phrase(template, values)


def figure_parts(sentence: str) -> list[tuple[str, bool]]:
    """Split a filled sentence at its ``**`` marks: (text, whether it is the figure to set large)."""
    return [(text, index % 2 == 1) for index, text in enumerate(sentence.split("**")) if text]


def without_marks(sentence: str) -> str:
    return sentence.replace("**", "")
