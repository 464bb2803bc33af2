"""The frame of the built pages: what comes next at the table, cautions named by their hazard, no stop at a heading."""

import re
from pathlib import Path
from urllib.parse import urljoin

import yaml
from bs4 import BeautifulSoup

from calculators.drawing.signs import SIGNS
from scripts.tools.places import ROOT

DOCS = ROOT / "docs"
AT_THE_TABLE = ("prepare", "plan", "cut", "fold", "stitch", "corners")
KEY = "/reference/signs/"  # what the signs and lines of drawings mean
HAZARD = re.compile(r'^!!! (?:warning|danger) "(.*)"$', re.MULTILINE)


def front_matter(page: Path) -> dict[str, str]:
    return yaml.safe_load(page.read_text("utf-8").split("---\n")[1])


def test_every_page_of_the_work_says_what_comes_next_at_the_table(built):
    told = {page: front_matter(page).get("next") for part in AT_THE_TABLE for page in (DOCS / part).glob("*.md")}
    assert [page.name for page, after in told.items() if not after] == []
    for page, after in told.items():
        assert after is not None and (DOCS / after).is_file() and DOCS / after != page, page
        path = "/" + page.relative_to(DOCS).as_posix().removesuffix(".md").removesuffix("index").rstrip("/") + "/"
        link = built[path].select_one(".md-footer .next-page")
        assert link and link.get_text().strip().startswith("Next at the table:"), path
        there = (DOCS / after).read_text("utf-8")
        assert f"# {built_title(built, after)}" in there


def test_every_page_with_drawings_leads_to_what_their_signs_mean(built):
    with_drawings = {path for path, page in built.items() if page.select_one("article svg.to-scale:not(.fillings)")}
    links = {path: page.select_one(".md-footer a.signs-key") for path, page in built.items()}
    leads = {path for path, link in links.items() if link and urljoin(path, link["href"]) == KEY}
    assert len(with_drawings) > 20 and with_drawings - leads == {KEY}
    key = built[KEY]
    assert {each["id"] for each in key.select(".signs-list dt")} == set(SIGNS)


def built_title(built: dict[str, BeautifulSoup], page: str) -> str:
    heading = built["/" + page.removesuffix(".md").removesuffix("index").rstrip("/") + "/"].h1
    assert heading
    return heading.find(string=True, recursive=False) or ""


def test_what_comes_next_is_told_once():
    assert [page.name for page in DOCS.rglob("*.md") if re.search(r"^Next: ", page.read_text("utf-8"), re.M)] == []


def test_a_caution_is_named_by_its_hazard():
    named = [(page.name, words) for page in DOCS.rglob("*.md") for words in HAZARD.findall(page.read_text("utf-8"))]
    assert len(named) > 30
    assert [each for each in named if "care" in each[1].lower()] == []


def test_no_link_at_a_heading_is_a_stop_of_the_keyboard(built):
    links = [link for page in built.values() for link in page.select("a.headerlink")]
    assert len(links) > 100
    assert [link["href"] for link in links if link.get("tabindex") != "-1"] == []


def test_every_part_of_a_page_stands_in_its_line_of_words_or_has_a_drawing_that_leads_to_it(built):
    for path, page in built.items():
        parts, drawn = (
            [link["href"].removeprefix("#") for link in page.select(f"{place} a")]
            for place in ("nav.parts", ".articles")
        )
        headings = [each["id"] for each in page.select("article h2:has(> .headerlink)")]
        if len(headings) > 1 and path != "/":
            assert parts == [each for each in headings if each not in drawn], path


def test_every_page_of_a_section_stands_in_the_row_below_its_tab(built):
    rows = {path: page.select(".section-links a") for path, page in built.items()}
    assert sum(bool(row) for row in rows.values()) > 40
    for path, row in rows.items():
        assert len([link for link in row if link.get("aria-current") == "page"]) == bool(row), path
