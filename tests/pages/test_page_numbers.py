"""No measured number stands bare in a page: each is a live result, or a value with its source or marked as common
practice."""

import re
from pathlib import Path

import pytest

from scripts.pages.markers import MARKER, PageMarkers, UnknownMarker

ROOT = Path(__file__).parents[2]

DOCS = ROOT / "docs"
PAGES = sorted(DOCS.rglob("*.md"))

_DIGITS = r"\d+(?:[.,]\d+)?(?:\s*(?:-|\s)?\s*\d+/\d+|/\d+)?"
_WORDS = (
    r"(?:half|a quarter|three[- "
    r"]quarters|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty"
    r"|fifty|sixty|seventy|eighty|ninety|a hundred|hundred|a thousand|thousand|a dozen)"
)
_UNIT_WORDS = (
    r"(?:milli|centi|deci|kilo)?(?:metres?|meters?|grams?)|inch(?:es)?|yards?|feet|degrees?|layers?|thicknesses|per "
    r"?cent|stitches|threads"
    r"|minutes?|hours?|days?|weeks?"
)
_UNIT_SIGNS = (
    r"(?:mm|cm|dm|m|km|in(?! "
    r"(?:all|each|every|one|the)\b)|ft|yd|kg|g|tex|denier|lea|mg|min|h)(?![a-z])|%|‰|°|º|″|′|\"|''|foot\b|seconds?\b"
)

BARE = re.compile(
    "|".join(
        (
            rf"{_DIGITS}\s*-?(?:{_UNIT_SIGNS}|(?:{_UNIT_WORDS})\b)",  # 2.5 cm, 14 1/4 in, 8-inch, 3 %
            # two layers, half an inch
            rf"\b(?!one (?:layer|thread)\b){_WORDS}(?:[ -](?:of )?(?:an? )?|[ -]and[ -]a[ -]half )(?:{_UNIT_WORDS})\b",
            # an inch away
            r"(?<!stitches )(?<!threads )\ban? (?:(?:milli|centi)?met(?:re|er)|inch|yard)\b(?! "
            r"(?:ruler|tape|stick|rule))",
            r"[¼½¾⅛⅜⅝⅞⅓⅔]|\b\d+/\d+\b",  # any fraction
            r"\d\s*[×x]\s*\d",  # 46 × 46
            r"\b\d+[.,]\d+\b",  # 2.5 on the dial
            r"\b(?:needles?|size|dial|tension|no\.)\s+(?:size\s+)?\d+",  # needle 90
        )
    ),
    re.IGNORECASE,
)
_NOT_READ = re.compile(r"\]\([^)]*\)|\{[:#.][^}]*\}|<[^>]*>")  # where links lead, ids and classes, tags


def bare_numbers(markdown: str) -> list[str]:
    """Measured numbers of a page that stand outside every marker, each with a few words around it."""
    text = _NOT_READ.sub("]", MARKER.sub("·", markdown))
    return [text[max(0, found.start() - 20) : found.end() + 10].replace("\n", " ") for found in BARE.finditer(text)]


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(DOCS)))
def test_every_measured_number_of_a_page_has_its_source(page):
    assert bare_numbers(page.read_text("utf-8")) == []


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(DOCS)))
def test_every_marker_of_a_page_can_be_read(page):
    PageMarkers(home="").take_out(page.read_text("utf-8"))


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(DOCS)))
def test_a_page_has_one_title_and_says_in_one_line_what_it_is_for(page):
    text = page.read_text("utf-8")
    assert re.match(r"---\n(?:\w+:.*\n(?: +.*\n)*)*?description: \S.{30,}\n", text)
    assert len(re.findall(r"^# \S", text, re.MULTILINE)) == 1


PLANTED = (
    "Trim to 2.5 cm.", "Leave 14 1/4 in.", "A 36mm mark.", "It shrank 3 %.", "It shrank by 3 per cent.", "At 200 °C.",
    "Cut at 45°.",
    "A quarter of an inch.", "About half an inch more.", "Two layers of cloth.", "In 4 layers.",
    "Three-quarters of an inch.",
    "Ten stitches an inch.", "Set 2.5 on the dial.", "A square of 46 × 46.", "Trim to 1/8.", "Leave ¼ all round.",
    "A 90/14 needle.",
    "Use needle size 90.", "Marks 24 in apart.", "Move it an inch away.", "Buy a metre more.", "Wash for 30 min.",
    "Leave it for two hours.", "An 8-inch hem.",
    "| luncheon | 13–18 in |", "**6** mm is 6 mm.", "description: hems of 2 cm", "5 m of linen", '9" square',
    "2'' deep", "90 degrees",
)  # fmt: skip


@pytest.mark.parametrize("sentence", PLANTED)
def test_a_bare_number_is_found(sentence):
    assert bare_numbers(f"# A page\n\nGood words first. {sentence} Good words after.\n")


@pytest.mark.parametrize(
    "sentence",
    (
        'Trim to {{ value "2.5 cm" practice }}.',
        'Luncheon napkins: {{ value "13–18 in" american-womans-cook-book }}.',
        'Mark {{ number mitre-marks mark_1 hem_1="3 cm" hem_2="3 cm" }} from the corner.',
        '{{ calculator pieces-from-cloth piece_width="40 cm" }}',
        "1. First, edge 1 and edge 2.",
        "Twice the hem depth; fold twice; draw one thread, measure one layer; the second fold.",
        "Read it on an inch ruler; so many stitches an inch.",
        "See [the sizes](../plan/sizes.md#a-5-cm-hem).",
        "Twelve napkins in three sizes, 24 in all.",
    ),
)
def test_what_is_sourced_or_not_measured_is_left_alone(sentence):
    assert bare_numbers(sentence) == []


@pytest.mark.parametrize(
    "marker",
    ('{{ value "2.5 cm" }}', '{{ value "2.5 cm" hearsay }}', "{{ number mitre-marks mark_9 }}", "{{ cm 2.5 }}"),
)
def test_a_value_without_a_known_source_stops_the_build(marker):
    with pytest.raises(UnknownMarker):
        PageMarkers(home="").take_out(marker)
