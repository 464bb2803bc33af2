"""The drawer of pages on a phone: within reach when it is open, and only then."""

import pytest
from playwright.sync_api import Page, expect


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_the_drawer_of_pages_is_out_of_reach_of_the_keyboard_while_it_is_shut(page: Page):
    page.goto("./")
    within = page.get_by_role("navigation", name="Navigation").get_by_role("link", name="Jobs")
    expect(within).to_have_count(0)
    page.locator(".md-header label[for=__drawer]").click()
    page.get_by_role("navigation", name="Navigation").locator("label.md-nav__link", has_text="House").click()
    within.click()
    page.wait_for_url("**/house/jobs/")
