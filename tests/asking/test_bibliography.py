"""The bibliography: every source says what it is and how it is known."""

import pytest

from calculators.asking.bibliography import bibliography, source_named


def test_every_source_says_how_it_is_known():
    for key, source in bibliography().items():
        assert source.key == key == key.lower() and " " not in key
        assert source.known in {"read", "second-hand", "memory", "library"}
        assert source.cited.endswith(".") and source.about.endswith(".")


def test_a_key_that_is_not_there_is_named():
    with pytest.raises(KeyError, match="no-such-book"):
        source_named("no-such-book")
