"""The handbook speaks British English of the workroom, and plainly: words that readers stumbled on do not come back."""

import re

import pytest

from tests.pages.told_words import prose_of_page, prose_of_python, told

#: What is not said → what is said in its place.
NOT_SAID = {
    r"bast(?:e[sd]?|ing)\b": "tack",
    r"stoves?\b": "hob",
    r"spools?\b": "reel",
    r"ravel\w*|unravel\w*": "fray",
    r"overcast\w*\b(?! by hand)": "neaten",
    r"miter(?:s|ed|ing)?\b(?<!\(miter)(?<!\(mitered)(?<!\*miter)(?<!\*mitered)": "mitre",
    r"colors?\b|fibers?\b|centers?\b|inseams?\b|serger?\b": "the British spelling",
    r"type it afresh": "type it again",
    r"here must stand": "is needed here",
    r"(?:signs|text) that cannot be shown": "characters that cannot be shown",
    r"how you call it": "give it a name",
    r"it is willing": "it pulls square easily by hand",
    r"enters\s+twice": "counts twice",
    r"what no plan can pass": "the most any plan could give",
    r"tap what you have": "choose what you have",
    r"mend the blank": "correct the marked box",
}


def said(text: str) -> list[str]:
    """Each word or phrase of a text that the handbook does not say, with what it says instead."""
    return [
        f"{found.group()}: say {better}"
        for not_said, better in NOT_SAID.items()
        for found in re.finditer(rf"\b(?:{not_said})", text, re.IGNORECASE)
    ]


def test_nothing_is_told_in_words_that_make_a_reader_stumble():
    assert [(where, each) for where, text in told() for each in said(text)] == []


@pytest.mark.parametrize(
    "sentence",
    [
        "Baste both cloths.",
        "Keep it off the stove.",
        "Two spools.",
        "Its edge ravels.",
        "Overcast the edges.",
        "A mitered corner.",
        "Type it afresh.",
    ],
)
def test_a_word_that_is_not_said_would_be_noticed(sentence):
    assert said(sentence)


def test_only_what_is_told_is_read():
    assert list(
        prose_of_python('"""A spool."""\nfrom x import y\nKEY = "spool"\nTOLD = "a reel", f"{KEY} of thread"\n')
    ) == ["a reel", "· of thread"]
    assert "miter" not in prose_of_page("mitre\n:   A seam. Also: miter,\n    mitered corner.\n")
