"""What the search of the built site finds: the text of the pages, and not the words of forms and drawings."""

import json
import re
from pathlib import Path

import pytest


@pytest.fixture(scope="module")
def found_in(site: Path) -> dict[str, str]:
    """The text that the search knows, by the part of the page it stands in."""
    known = json.loads((site / "search/search_index.json").read_text(encoding="utf-8"))["docs"]
    return {part["location"]: part["text"] for part in known}


def test_the_text_of_a_page_is_searched(found_in):
    assert "go from corner to corner" in found_in["corners/mitre/#step-by-step"]


def test_the_steps_of_a_corner_are_searched_and_what_stands_round_them_is_not(found_in):
    steps = found_in["corners/mitre/#step-by-step"]
    assert "Fold the corner right sides together, mark on mark" in steps and "not the shears" in steps
    assert "Another way" not in steps and "Steps" not in steps and "layers thick" not in steps


def test_a_fault_is_found_by_its_words_and_not_by_those_of_its_drawing(found_in):
    assert "finish/faults/#the-hem-is-wavy-all-along" in found_in
    finder = [text for place, text in found_in.items() if place.startswith("finish/faults/")]
    assert finder and not [text for text in finder if "as it should be" in text]


@pytest.mark.parametrize(
    "words",
    ["Ruler in hand", "Numbers by", "wrong side up, to scale", "More: first turn", "from your last complete entry"],
)
def test_the_words_of_forms_and_drawings_are_not(found_in, words):
    assert [place for place, text in found_in.items() if re.search(words, text)] == []
