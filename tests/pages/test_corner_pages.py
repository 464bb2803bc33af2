"""Every way to make a corner has its page: drawn step by step in pictures that say what they show, with a table, the
faults, and what to take care of."""

from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from calculators.trade.corners.constructions import CONSTRUCTIONS

SMALL = 15_000  # [bytes]
PARTS = {
    "steps drawn": "section.calculator[data-calculator='corner-steps'] figure.drawing svg",
    "a table": "section.calculator .answer table.results",
    "what goes wrong": "h2[id^='what-goes-wrong'] ~ ul > li strong",
    "care": ".admonition.warning",
}
#: Ways shown beside their sister on its page, by a choice in the first blank.
CHOSEN_BESIDE = {"mitre-opened-flat": "mitre", "folded-mitre": "mitre"}
each_page = pytest.mark.parametrize("page", sorted(path.stem for path in Path("docs/corners").glob("*.md")))


def read(site: Path, page: str) -> BeautifulSoup:
    return BeautifulSoup(
        (site / "corners" / ("" if page == "index" else page) / "index.html").read_text("utf-8"), "html.parser"
    )


def missing(page: BeautifulSoup) -> list[str]:
    return [part for part, where in PARTS.items() if not page.select(where)]


def shown(page: BeautifulSoup) -> set[str]:
    """The ways that a page draws step by step."""
    chosen = page.select("section.calculator[data-calculator='corner-steps'] select[name='way'] option[selected]")
    return {option["value"] for option in chosen}


def test_every_way_has_a_page_with_all_its_parts(site):
    ways = {}
    for path in Path("docs/corners").glob("*.md"):
        page = read(site, path.stem)
        for way in shown(page):
            ways.setdefault(way, []).append((path.stem, missing(page)))
    assert set(CONSTRUCTIONS) - set(ways) == set(CHOSEN_BESIDE)
    assert {way: lacks for way, lacks in ways.items() if any(parts for _, parts in lacks)} == {}


def test_a_page_without_its_faults_would_be_noticed(site):
    page = read(site, "mitre")
    page.select_one("h2[id^='what-goes-wrong']").decompose()
    assert missing(page) == ["what goes wrong"]


@each_page
def test_every_drawing_is_small_and_said_in_words(site, page):
    drawings = read(site, page).select("svg.to-scale:not(.fillings, .played svg)")
    assert drawings
    for drawing in drawings:
        assert len(str(drawing).encode()) < SMALL
        assert drawing["role"] == "img" and len(drawing["aria-label"].split()) > 1
