"""The studio's own words: a small part of Markdown, and nothing that could do more than be read."""

from collections.abc import Mapping

import pytest
from bs4 import BeautifulSoup, Tag
from hypothesis import given
from hypothesis import strategies as st
from markdown import markdown

from calculators.faces.page.markup import html
from calculators.faces.page.studio_text import studio_text

ALLOWED = {"p", "h3", "h4", "h5", "ul", "ol", "li", "blockquote", "strong", "em", "a"}


def shown(words: str) -> str:
    return "".join(html(block) for block in studio_text(words))


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Plain words\non two lines.", "<p>Plain words\non two lines.</p>"),
        ("One.\n\nTwo.", "<p>One.</p><p>Two.</p>"),
        ("# Pressing", "<h3>Pressing</h3>"),
        ("- cool\n- flat", "<ul><li>cool</li><li>flat</li></ul>"),
        ("1. turn\n2. hem", "<ol><li>turn</li><li>hem</li></ol>"),
        ("Before:\n- cool", "<p>Before:</p><ul><li>cool</li></ul>"),
        ("> slowly", "<blockquote><p>slowly</p></blockquote>"),
        ("**thick** and *leaning*", "<p><strong>thick</strong> and <em>leaning</em></p>"),
        ("2 * 3 * 4", "<p>2 * 3 * 4</p>"),
        (r"\*not leaning\*", "<p>*not leaning*</p>"),
        ("[hems](../fold/hems/)", '<p><a href="../fold/hems/">hems</a></p>'),
        (
            "[a *mill*](https://example.org/x?y=1)",
            '<p><a href="https://example.org/x?y=1" rel="noopener noreferrer">a *mill*</a></p>',
        ),
        ("<script>alert(1)</script>", "<p>&lt;script&gt;alert(1)&lt;/script&gt;</p>"),
    ],
)
def test_what_is_known(words, expected):
    assert shown(words) == expected


@pytest.mark.parametrize(
    "address",
    [
        "javascript:alert(1)",
        "JaVaScRiPt:alert(1)",
        "data:text/html,x",
        "//elsewhere.example",
        "http:elsewhere",
        "vbscript:x",
        "https://",
        "\\\\host\\x",
        "blob:x",
        'https://a.example/"onclick=x',
        "mailto:x",
        "&#106;avascript:x",
    ],
)
def test_an_address_that_leads_elsewhere_than_a_page_stays_text(address):
    assert "<a" not in shown(f"[words]({address})")


_HOSTILE = [
    "**",
    "*",
    "[",
    "](",
    ")",
    "<script>",
    "<img src=x onerror=y>",
    "javascript:",
    "https://a.example",
    "\n",
    "\n\n",
    "- ",
    "1. ",
    "> ",
    "# ",
    "\\",
    '"',
    "&lt;",
    "'",
]


@given(st.lists(st.sampled_from(_HOSTILE) | st.text(max_size=4), max_size=25).map("".join))
def test_whatever_is_written_only_these_elements_come_out(words):
    """Read back by an independent parser of HTML (BeautifulSoup)."""
    for found in BeautifulSoup(shown(words), "html.parser").find_all(True):
        assert found.name in ALLOWED
        assert set(found.attrs) <= {"href", "rel"}
        address = found.attrs.get("href", "")
        assert address == "" or address.startswith(("http://", "https://")) or ":" not in address


@pytest.mark.parametrize(
    "words", ["*" * 10_000, "**a" * 3_000, "[" * 10_000, "[a](" * 2_500, "\\" * 10_000, "- " * 5_000, "**[*" * 2_500]
)
def test_long_nonsense_is_shown_as_it_is(words):
    assert shown(words)


_WORD = st.sampled_from(["linen", "press", "turn", "hem", "cool", "24 cm", "don’t", "a-b", "100 %"])
_MARKED = (
    _WORD
    | _WORD.map("**{}**".format)
    | _WORD.map("*{}*".format)
    | _WORD.map(r"\*{}\*".format)
    | st.builds("[{}]({})".format, _WORD, st.sampled_from(["../fold/hems/", "https://a.example/x?y=1", "#press"]))
)
_LINE = st.lists(_MARKED, min_size=1, max_size=4).map(" ".join)
_BLOCKS = (
    st.lists(_LINE, min_size=1, max_size=3).map("\n".join)
    | st.builds("{} {}".format, st.sampled_from(["#", "##", "###"]), _LINE)
    | st.lists(_LINE.map("- {}".format), min_size=1, max_size=3).map("\n".join)
    | st.lists(_LINE, min_size=1, max_size=3).map(lambda lines: "\n".join(map("{}. {}".format, range(1, 9), lines)))
    | _LINE.map("> {}".format)
)
DEEPER = {"h1": "h3", "h2": "h4", "h3": "h5"}  # a page has headings of its own above a studio's


def tree(text: str, names: Mapping[str, str] | None = None) -> list:
    """Elements with what is in them, by an independent parser: names, addresses and words, spaces run together."""

    def parts(node) -> list:
        return [
            [(names or {}).get(each.name, each.name), each.get("href"), *parts(each)]
            if isinstance(each, Tag)
            else " ".join(each.split())
            for each in node
            if isinstance(each, Tag) or each.strip()
        ]

    return parts(BeautifulSoup(text, "html.parser"))


@given(st.lists(_BLOCKS, min_size=1, max_size=4))
def test_it_reads_as_markdown_does(blocks):
    """Against Markdown itself; a paragraph stands between the blocks, since lists one after another are one list."""
    text = "\n\nand then\n\n".join(blocks)
    assert tree(shown(text)) == tree(markdown(text), DEEPER)


def test_what_reads_otherwise_is_noticed():
    assert tree(shown("**thick**")) != tree(markdown("*thick*"), DEEPER)
    assert tree(shown("# One")) != tree(markdown("## One"), DEEPER)
