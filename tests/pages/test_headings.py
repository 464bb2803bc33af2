"""Whoever goes by headings finds every calculator, and no level is left out."""

from bs4 import BeautifulSoup

HEADINGS = ["h1", "h2", "h3", "h4", "h5", "h6"]


def skipped(page: BeautifulSoup) -> list[str]:
    """The headings of a page's text that lie more than one level below the one before."""
    found = page.select_one("article").find_all(HEADINGS)
    levels = [0, *(int(each.name[1]) for each in found)]
    return [each.get_text() for each, before, level in zip(found, levels, levels[1:]) if level > before + 1]


def test_every_calculator_has_a_heading_in_its_place(built):
    without = []
    for path, page in built.items():
        assert skipped(page) == [], path
        for section in page.select("section.calculator"):
            step = section.find_parent("details", class_="walk-step")
            heading = step.summary.find(HEADINGS) if step else section.find(HEADINGS, recursive=False)
            if heading is None or not heading.get_text(strip=True):
                without.append(f"{path} {section['data-calculator']}")
    assert without == []


def test_a_planted_fault_is_found():
    assert skipped(BeautifulSoup("<article><h1>a</h1><h3>b</h3></article>", "html.parser")) == ["b"]
