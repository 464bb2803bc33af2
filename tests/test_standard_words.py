"""Code calls things what the field calls them: private words that once stood for them do not come back."""

import io
import tokenize
from collections.abc import Iterator, Mapping

import pytest

from scripts.tools.places import ROOT

EVERYWHERE = {
    "AskAgain": "InvalidInput",
    "Refused": "InvalidValue",
    "Unreadable": "InvalidDocument",
    "NotANumber": "InvalidNumber",
    "NotALength": "InvalidLength",
    "trouble": "error",
    "troubles": "messages",
    "brought_up": "migrated",
    "misfits": "violations",
    "said_as": "format_specs",
    "thin_picture": "thin_snapshot",
    "Sloping": "DualNumber",
}
#: In rooms where the word has no other sense.
IN = {
    "calculators/trade/lay_plan/solving/": {
        "price": "multiplier",
        "prices": "multipliers",
        "fair": "duals",
        "breadth": "beam_width",
        "pace": "step_factor",
        "drift": "momentum",
        "slope": "subgradient",
        "pull": "smoothing",
        "take_up": "ruin_and_recreate",
        "TakeUp": "RuinAndRecreate",
        "limited": "constrained",
    },
    "calculators/trade/corners/": {"slope": "derivative", "told": "instruction"},
    "calculators/asking/": {"asked": "question, or field"},
    "calculators/catalogue/": {"asked": "fields", "said": "messages", "answered": "answer"},
    "scripts/runtime/": {"picture": "snapshot"},
}


def names(path: str, text: str) -> Iterator[tuple[int, str]]:
    """The name of a module, and every name in it, without the underscore of a private one; with the line it stands
    on."""
    yield 0, path.rpartition("/")[2].removesuffix(".py")
    for token in tokenize.generate_tokens(io.StringIO(text).readline):
        if token.type == tokenize.NAME:
            yield token.start[0], token.string.lstrip("_")


def private_words(sources: Mapping[str, str]) -> list[str]:
    """Each private word in these modules (path → text), with the word of the field."""
    found = []
    for path, text in sources.items():
        standard = EVERYWHERE | {
            word: each for room, words in IN.items() if path.startswith(room) for word, each in words.items()
        }
        found += [
            f"{path}:{line}: {name} is called {standard[name]}" for line, name in names(path, text) if name in standard
        ]
    return found


def test_no_private_word_stands_for_a_thing_with_a_name():
    files = [file for folder in ("calculators", "scripts", "tests") for file in sorted((ROOT / folder).rglob("*.py"))]
    assert private_words({file.relative_to(ROOT).as_posix(): file.read_text() for file in files}) == []


@pytest.mark.parametrize(
    ("path", "text", "word"),
    [
        ("calculators/faces/x.py", "class AskAgain(ValueError): pass", "InvalidInput"),
        ("calculators/trade/lay_plan/solving/prices.py", "", "multipliers"),
        ("calculators/trade/lay_plan/solving/x.py", "def search(breadth): pass", "beam_width"),
        ("calculators/documents/x.py", "_troubles = {}", "messages"),
    ],
)
def test_a_private_word_is_found(path, text, word):
    (found,) = private_words({path: text})
    assert found.endswith(f"is called {word}")


def test_the_same_word_in_another_room_is_left():
    assert private_words({"calculators/trade/costing.py": "price = 3  # a troubled prices, fair"}) == []
