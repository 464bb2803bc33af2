"""Light or dark: as the device says or as the reader chose, settled before anything is drawn."""

import pytest
from playwright.sync_api import Browser, Page, expect

GROUNDS = {"light": "rgb(244, 240, 231)", "dark": "rgb(28, 26, 23)"}

pytestmark = pytest.mark.parametrize("width", [390], ids=["phone"])


def expect_ground(page: Page, look: str) -> None:
    expect(page.locator("body")).to_have_css("background-color", GROUNDS[look])
    expect(page.locator("html")).to_have_css("color-scheme", look)


def press(page: Page, word: str) -> None:
    page.locator(".md-header").get_by_role("button", name=word, exact=True).click()


@pytest.mark.parametrize("look", GROUNDS)
def test_the_first_picture_of_a_page_is_as_the_device_says(browser: Browser, served: str, look: str, width: int):
    context = browser.new_context(color_scheme=look)
    context.route("**/*.js", lambda route: route.abort())
    page = context.new_page()
    page.goto(served, wait_until="domcontentloaded")
    expect_ground(page, look)
    context.close()


def test_a_choice_holds_on_other_pages_and_visits_until_it_is_what_the_device_says(page: Page):
    page.emulate_media(color_scheme="light")
    page.goto("./")
    expect_ground(page, "light")
    press(page, "Dark")
    expect_ground(page, "dark")
    page.emulate_media(color_scheme="dark")
    expect_ground(page, "dark")
    page.emulate_media(color_scheme="light")
    page.goto("./plan/pieces/")
    expect_ground(page, "dark")
    press(page, "Light")
    expect_ground(page, "light")
    page.emulate_media(color_scheme="dark")  # light was what the device said, so it is followed again
    expect_ground(page, "dark")
    press(page, "Light")
    page.reload()
    expect_ground(page, "light")


def test_a_choice_is_made_with_the_keyboard(page: Page):
    page.emulate_media(color_scheme="light")
    page.goto("./")
    button = page.locator(".md-header .look")
    expect(button).to_have_text("Dark")
    button.focus()
    page.keyboard.press("Enter")
    expect(button).to_be_focused()
    expect(button).to_have_text("Light")
    expect_ground(page, "dark")


def test_the_word_stands_there_before_any_other_script(browser: Browser, served: str, width: int):
    context = browser.new_context(color_scheme="dark")
    context.route("**/*.js", lambda route: route.abort())
    page = context.new_page()
    page.goto(served, wait_until="domcontentloaded")
    expect(page.locator(".md-header .look")).to_have_text("Light")
    context.close()
