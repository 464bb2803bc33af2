"""The frame of a page: words at its head, a caution whose hazard stands in its top line, and, on a wide window, what is
asked and answered in view beside the steps."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.reader import both_windows, one_window

BOX = "it => it.getBoundingClientRect().toJSON()"
wide_window = pytest.mark.parametrize("width", [1100, 1280], ids=["narrowest", "screen"])


@one_window
def test_the_head_of_a_phones_page_speaks_in_words(page: Page):
    page.goto("./plan/pieces/")
    for word in ("Pages", "Dark", "Find"):
        found = page.locator(".md-header").get_by_text(word, exact=True)
        box = found.bounding_box()
        assert box and min(box["width"], box["height"]) >= 44
        assert box["x"] + box["width"] <= 390
    assert page.locator(".md-header__button svg:visible").count() == 0
    page.get_by_text("Find", exact=True).click()
    expect(page.get_by_role("textbox", name="Search")).to_be_focused()


@both_windows
def test_the_hazard_of_a_caution_is_cut_into_its_top_line(page: Page, width: int):
    page.goto("./cut/cutting/")
    caution = page.locator(".admonition.warning").first
    title = caution.locator(".admonition-title")
    box, words = caution.evaluate(BOX), title.evaluate(BOX)
    assert words["top"] < box["top"] < words["bottom"]
    assert box["left"] < words["left"] and words["right"] < box["right"]
    sides = "it => ['Top', 'Right', 'Bottom', 'Left'].map((side) => getComputedStyle(it)[`border${side}Width`])"
    assert caution.evaluate(sides) == ["2px"] * 4
    behind = title.evaluate("it => getComputedStyle(it).backgroundColor")
    assert behind == page.evaluate("getComputedStyle(document.body).backgroundColor")


@one_window
def test_a_link_at_a_heading_is_seen_when_it_is_pointed_at_and_is_no_stop(page: Page):
    page.goto("./cut/cutting/")
    link = page.locator("h2 .headerlink").first
    expect(link).to_have_css("opacity", "0")
    page.locator("h2").first.hover()
    expect(link).to_have_css("opacity", "1")
    link.evaluate("it => it.focus()")
    page.keyboard.press("Tab")
    assert not page.evaluate("document.activeElement.matches('.headerlink')")


@wide_window
def test_what_is_asked_and_answered_stays_in_view_while_the_rest_is_read(page: Page, width: int):
    page.goto("./plan/pieces/")
    kept, beside = page.locator(".kept-in-view"), page.locator(".beside")
    left, right = kept.evaluate(BOX), beside.evaluate(BOX)
    assert left["right"] < right["left"] and left["width"] <= 432
    assert abs(left["top"] - right["top"]) < 2
    page.evaluate("scrollTo(0, 800)")
    after, further = kept.evaluate(BOX), beside.evaluate(BOX)
    assert further["top"] == right["top"] - 800
    assert 0 <= after["top"] < 40 and after["bottom"] <= 844
    lists = "it => it.getBoundingClientRect().right > 0 && it.checkVisibility()"
    assert not any(each.evaluate(lists) for each in page.locator(".md-sidebar").all())
    expect(page.locator(".section-links [aria-current]")).to_have_text("Pieces from cloth")
    part = page.get_by_role("navigation", name="On this page").get_by_role("link", name="What goes wrong")
    part.scroll_into_view_if_needed()
    page.wait_for_timeout(500)  # the theme loses a jump that is asked for while it notes how far the page is scrolled
    part.click()
    expect(page.locator("#what-goes-wrong-and-how-you-see-it")).to_be_in_viewport()


@one_window
def test_a_phones_page_is_one_column_and_its_lists_are_in_the_drawer(page: Page):
    page.goto("./plan/pieces/")
    assert page.locator(".kept-in-view").evaluate(BOX)["width"] == page.locator(".beside").evaluate(BOX)["width"]
    expect(page.locator(":is(.section-links, .parts):visible")).to_have_count(0)
    expect(page.locator(".kept-in-view")).to_have_css("position", "static")


@both_windows
def test_what_comes_next_at_the_table_is_a_tap_away(page: Page, width: int):
    page.goto("./plan/pieces/")
    page.get_by_role("link", name="Next at the table: Mark before you cut").click()
    expect(page.locator("h1")).to_have_text(re.compile("^Mark before you cut"))
