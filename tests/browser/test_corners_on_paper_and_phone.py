"""Corner pages on paper and on a phone: no sheet for a last line alone, and no table that has to be pushed sideways."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.browser.reader import elsewhere, one_window, printed

MM = 25.4 / 96  # [mm] a CSS pixel
RULERS = {"A4": "cm 1/10", "Letter": "in 1/16"}

PAGES = sorted("" if path.stem == "index" else path.stem for path in Path("docs/corners").glob("*.md"))


@pytest.fixture(scope="module", params=PAGES, ids=lambda name: name or "index")
def opened(browser, served, request):
    """Each page of a corner, opened once for all that is asked of it."""
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844})
    page.goto(f"./corners/{request.param}")
    expect(page.locator(".ruler-choice")).to_be_visible()  # the page is live
    page.evaluate("document.fonts.ready")
    yield page
    page.context.close()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_sheet_says_of_which_day_it_is_and_the_last_is_worth_its_paper(opened, paper):
    opened.locator(".ruler-choice select").select_option(RULERS[paper])
    with printed(opened, paper) as pdf:
        sheets = [sheet.extract_text().splitlines() for sheet in pdf.pages]
    assert all(re.search(r"The handbook’s numbers \d+ \w+ 20\d\d$", words[0]) for words in sheets)
    assert len(sheets[-1]) > 3, sheets[-1]
    if opened.url.endswith("/mitre/"):
        (words,) = sheets
        printed_words = " ".join(words)
        assert {str(number) for number in range(1, 12)} <= set(printed_words.split()), "the strip of steps"
        assert "Mark" in printed_words and "Shears" in printed_words
        assert "Sources" not in printed_words and "What goes wrong" not in printed_words


@one_window
def test_a_strip_of_steps_is_drawn_large_enough_to_work_by(page):
    """Each some 30 mm wide, in the line widths of paper."""
    page.goto("./corners/mitre/")
    page.emulate_media(media="print")
    sizes = page.locator(".in-order li > figure").evaluate_all("(all) => all.map((each) => each.offsetWidth)")
    assert {round(each * MM) for each in sizes} == {30}
    thick, thin = (
        page.locator(f".in-order li svg .{kind}").first.evaluate(
            "(line) => parseFloat(getComputedStyle(line).strokeWidth)"
        )
        for kind in ("stitch", "edge")
    )
    assert (thick * MM, thin * MM) == pytest.approx((0.7, 0.35), abs=0.01)


def test_tables_fit_a_phone(opened):
    tables = opened.locator(".wide")
    too_wide = "(all) => all.filter((each) => each.scrollWidth > each.clientWidth + 1).map((each) => each.ariaLabel)"
    assert tables.evaluate_all(too_wide) == []
    assert tables.evaluate_all("(all) => all.filter((each) => each.clientWidth > 390).length") == 0
    if tables.count():
        wide = "(each, width) => { each.firstElementChild.style.width = width; }"
        tables.first.evaluate(wide, "500px")
        assert len(tables.evaluate_all(too_wide)) == 1  # such a table would be noticed
        tables.first.evaluate(wide, "")
