"""What several browser tests share."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.reader import nothing_amiss, profile
from tests.browser.work_ticket import open_ticket


@pytest.fixture(scope="module")
def phone(browser: Browser, served: str) -> Iterator[Page]:
    """The ticket on a phone: one page in one profile for all tests of a file, which follow one another as a day's work
    does."""
    look = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "reduced_motion": "reduce"}
    context = profile(browser, served, keeps_copy=True, **look)
    with nothing_amiss(context, served):
        page = context.new_page()
        open_ticket(page)
        yield page
