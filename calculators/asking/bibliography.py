"""The one bibliography: every published source that a calculator or a page cites, by key."""

import re
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

import yaml


@dataclass(frozen=True)
class Source:
    """A published source: its key, how it is cited, and how we know what it says (read, second-hand, or from
    memory)."""

    key: str
    cited: str
    known: str
    about: str

    @property
    def short(self) -> str:
        """What the source is called in a sentence: its citation up to the first comma or bracket."""
        return re.split(r",| \(|\.$", self.cited)[0]


@cache
def bibliography() -> dict[str, Source]:
    """All sources by key."""
    data = yaml.safe_load(files(__package__).joinpath("bibliography.yaml").read_text(encoding="utf-8"))
    return {key: Source(key, **entry) for key, entry in data.items()}


def source_named(key: str) -> Source:
    """The source of that key; raises KeyError naming it."""
    if key not in bibliography():
        raise KeyError(f"There is no source “{key}” in calculators/asking/bibliography.yaml.")
    return bibliography()[key]
