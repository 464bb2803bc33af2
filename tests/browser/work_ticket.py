"""The work ticket in a browser: opened, and read at the machine."""

from playwright.sync_api import Locator, Page, expect

from tests.browser.reader import WAKING

TICKET = "./house/ticket/"


def open_ticket(page: Page) -> None:
    """The ticket, once Python answers."""
    page.goto(TICKET)
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)


def now(page: Page) -> Locator:
    """The step at the machine."""
    return page.locator(".ticket-step.now")


def in_focus(page: Page, words: str) -> None:
    """Wait until what has the focus says this: a tap may arrive in the page after the next question to it."""
    expect(page.locator(":focus")).to_have_text(words)


def counted(page: Page, words: str) -> None:
    expect(now(page).locator(".count")).to_contain_text(words, timeout=WAKING)
