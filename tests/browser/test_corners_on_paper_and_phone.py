"""Corner pages on paper and on a phone: no sheet for a last line alone, and no table that has to be pushed sideways."""

from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.browser.reader import elsewhere, printed

PAGES = sorted("" if path.stem == "index" else path.stem for path in Path("docs/corners").glob("*.md"))
each_page = pytest.mark.parametrize("name", PAGES, ids=lambda name: name or "index")


@pytest.fixture
def opened(browser, served, name):
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844})
    page.goto(f"./corners/{name}")
    expect(page.locator(".ruler-choice")).to_be_visible()  # the page is live
    page.evaluate("document.fonts.ready")
    yield page
    page.context.close()


@each_page
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_last_sheet_is_worth_its_paper(opened, paper):
    with printed(opened, paper) as pdf:
        words = (pdf.pages[-1].extract_text() or "").splitlines()
        assert len(words) > 3, words


@each_page
def test_tables_fit_a_phone(opened):
    tables = opened.locator(".wide")
    too_wide = "(all) => all.filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.ariaLabel)"
    assert tables.evaluate_all(too_wide) == []
    assert tables.evaluate_all("(all) => all.filter((each) => each.clientWidth > 390).length") == 0
    if tables.count():
        tables.first.evaluate("(each) => { each.firstElementChild.style.width = '500px'; }")
        assert len(tables.evaluate_all(too_wide)) == 1  # such a table would be noticed
