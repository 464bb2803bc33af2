"""The bibliography: every source says what it is and how it is known, and what is cited by key is in it."""

import re
from collections.abc import Iterator

import pytest

from calculators.asking.bibliography import bibliography, source_named
from scripts.tools.places import ROOT


def test_every_source_says_how_it_is_known():
    for key, source in bibliography().items():
        assert source.key == key == key.lower() and " " not in key
        assert source.known in {"read", "second-hand", "memory", "library"}
        assert source.cited.endswith(".") and source.about.endswith(".")


def test_a_key_that_is_not_there_is_named():
    with pytest.raises(KeyError, match="no-such-book"):
        source_named("no-such-book")


#: A work as prose cites it, by names and year, where its key should stand; and a key as a docstring writes it.
_BY_NAME = re.compile(r"(?:[A-Z][a-z]+ and )?[A-Z][a-z]+,? \(?(?:19|20)\d\d\b")
_KEY = re.compile(r"`([a-z]+(?:-[a-z]+)*-(?:19|20)\d\d)`")


def faults(source: str) -> Iterator[str]:
    """What a module of the trade cites otherwise than by a key that is there."""
    yield from _BY_NAME.findall(source)
    yield from (word for word in re.findall(r"from memory", source))
    yield from (key for key in _KEY.findall(source) if key not in bibliography())


@pytest.mark.parametrize(
    "path", sorted((ROOT / "calculators/trade").rglob("*.py")), ids=lambda path: f"{path.parent.name}/{path.stem}"
)
def test_the_trade_cites_by_keys(path):
    assert list(faults(path.read_text(encoding="utf-8"))) == []


@pytest.mark.parametrize("text", ["(Gilmore and Gomory 1965)", "Polyak 1969", "`no-such-paper-1999`", "from memory"])
def test_a_planted_citation_is_found(text):
    assert list(faults(f'"""Strips ({text})."""')) != []
