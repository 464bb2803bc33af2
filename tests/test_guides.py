"""A file that a guide names is there."""

import re
from collections.abc import Iterator, Set

import pytest

from scripts.tools.places import ROOT

GUIDES = [
    "DEVELOPERS.md",
    "calculators/ARCHITECTURE.md",
    "calculators/trade/lay_plan/SOLVING.md",
    "scripts/runtime/BROWSER.md",
    "overrides/readme.md",
]
FOLDERS = ["calculators", "docs", "overrides", "scripts", "tests"]
#: Made up in the guide as examples; tests follow both.
EXAMPLES = {"fineness.py", "thread_length.py"}


def names_of_files() -> set[str]:
    return {file.name for folder in FOLDERS for file in (ROOT / folder).rglob("*.*")}


def missing(text: str, there: Set[str]) -> Iterator[str]:
    """Files named in backticks, whatever their folder, that are not there."""
    for code in re.findall(r"`([^`\n]+)`", text):
        for path in re.findall(r"[\w./-]*\w\.(?:py|js|mjs|css|yaml)\b", code):
            if path.rpartition("/")[2] not in there | EXAMPLES:
                yield path


@pytest.mark.parametrize("guide", GUIDES)
def test_every_file_that_a_guide_names_is_there(guide):
    assert list(missing((ROOT / guide).read_text(), names_of_files())) == []


def test_a_file_that_is_gone_is_found():
    assert list(missing("In `values/mass.py` and `values/gone.py`.", {"mass.py"})) == ["values/gone.py"]
