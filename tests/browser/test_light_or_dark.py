"""Light or dark: as the device says or as the reader chose, settled before anything is drawn."""

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

GROUNDS = {"light": "rgb(244, 240, 231)", "dark": "rgb(28, 26, 23)"}
AS_THE_DEVICE, LIGHT, DARK = "Light or dark as the device says", "Always light", "Always dark"

pytestmark = pytest.mark.parametrize("width", [390], ids=["phone"])


def expect_ground(page: Page, look: str) -> None:
    expect(page.locator("body")).to_have_css("background-color", GROUNDS[look])
    expect(page.locator("html")).to_have_css("color-scheme", look)


def chosen(page: Page, name: str) -> Locator:
    return page.locator(f'.md-header [type=radio][aria-label^="{name}"]')


def press(page: Page, name: str) -> None:
    page.locator(f'.md-header label[title^="{name}"]').click()


@pytest.mark.parametrize("look", GROUNDS)
def test_the_first_picture_of_a_page_is_as_the_device_says(browser: Browser, served: str, look: str, width: int):
    context = browser.new_context(color_scheme=look)
    context.route("**/*.js", lambda route: route.abort())
    page = context.new_page()
    page.goto(served, wait_until="domcontentloaded")
    expect_ground(page, look)
    context.close()


def test_a_choice_holds_on_other_pages_and_visits_until_it_is_given_back_to_the_device(page: Page):
    page.emulate_media(color_scheme="light")
    page.goto("./")
    expect(chosen(page, AS_THE_DEVICE)).to_be_checked()
    expect_ground(page, "light")
    press(page, AS_THE_DEVICE)
    expect(chosen(page, LIGHT)).to_be_checked()
    page.emulate_media(color_scheme="dark")
    expect_ground(page, "light")
    press(page, LIGHT)
    expect(chosen(page, DARK)).to_be_checked()
    page.emulate_media(color_scheme="light")
    expect_ground(page, "dark")
    page.goto("./plan/pieces/")
    expect_ground(page, "dark")
    expect(chosen(page, DARK)).to_be_checked()
    press(page, DARK)
    expect_ground(page, "light")
    page.emulate_media(color_scheme="dark")
    expect_ground(page, "dark")


def test_a_choice_is_made_with_the_keyboard(page: Page):
    page.emulate_media(color_scheme="light")
    page.goto("./")
    expect(chosen(page, AS_THE_DEVICE)).to_be_checked()
    chosen(page, AS_THE_DEVICE).focus()
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    expect(chosen(page, DARK)).to_be_focused()
    expect_ground(page, "dark")
