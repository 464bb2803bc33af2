"""What a reader does on a page: the calculators, their blanks and their answers, by what she sees."""

import re
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

WAKING = 30_000  # [ms] Python wakes on first use; on a busy machine that takes a while


def calculator(page: Page, name: str) -> Locator:
    return page.locator(f'section.calculator[data-calculator="{name}"]').first


def blank(section: Locator, name: str) -> Locator:
    """A blank, with the drawer it may lie in pulled open."""
    found = section.locator(f'[name="{name}"]')
    if not found.is_visible():
        section.locator("details.more > summary").click()
    return found


def spoken(section: Locator) -> Locator:
    return section.locator(".answer .spoken")


def says(section: Locator, words: str | re.Pattern) -> None:
    """Wait until the answer says this, and is not marked as an old one."""
    expect(spoken(section)).to_contain_text(words, timeout=WAKING)
    expect(section.locator(".answer")).not_to_have_class(re.compile("is-old"), timeout=WAKING)
    expect(section.locator(".old-answer")).to_be_hidden()


def refusal(section: Locator, name: str) -> Locator:
    return section.locator(f'.refusal[data-field="{name}"]')


def choose_ruler(page: Page, ruler: str) -> None:
    page.locator(".ruler-choice select").select_option(ruler)


def open_file(page: Page, file: str | Path | dict) -> None:
    """Open a file that was handed over, once the page can take one."""
    expect(page.get_by_role("button", name="Save everything")).to_be_visible()
    page.locator("[name=file]").set_input_files(file)
