"""The batch walk hands its values on, and everything can be done from the keyboard."""

import re

from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, blank, calculator, refusal, says, spoken


def test_a_change_at_the_start_reaches_every_step(page: Page):
    page.goto("/batch/")
    pieces, usable = calculator(page, "pieces-from-cloth"), calculator(page, "usable-cloth")
    before = spoken(pieces).inner_text()
    wash = calculator(page, "wash-test")
    blank(wash, "cloth_width").fill("100 cm")
    expect(spoken(pieces)).not_to_have_text(before, timeout=WAKING)
    says(usable, re.compile("by 9[0-9]"))
    assert blank(pieces, "cloth_width").input_value().startswith(("9", "about 9"))


def test_a_step_in_trouble_stops_those_behind_it_and_only_those(page: Page):
    page.goto("/batch/")
    usable = calculator(page, "usable-cloth")
    blank(usable, "selvedge").fill("36 banana")
    expect(refusal(usable, "selvedge")).to_be_visible(timeout=WAKING)
    expect(calculator(page, "pieces-from-cloth").locator(".old-answer")).to_contain_text("waits")
    expect(calculator(page, "wash-test").locator(".old-answer")).to_be_hidden()
    blank(usable, "selvedge").fill("2 cm")
    expect(calculator(page, "pieces-from-cloth").locator(".old-answer")).to_be_hidden(timeout=WAKING)


def test_keyboard_alone_fills_in_reads_and_goes_back(page: Page):
    page.goto("/plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    first = blank(section, "cloth_width")
    for _ in range(150):
        page.keyboard.press("Tab")
        if first.evaluate("it => it === document.activeElement"):
            break
    else:
        raise AssertionError("the first blank cannot be reached by Tab")
    assert first.evaluate("it => { const style = getComputedStyle(it); return style.outlineStyle !== 'none' || style.boxShadow !== 'none'; }")
    page.keyboard.press("Control+a")
    page.keyboard.type("110 cm")
    says(section, "2 across")
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('details.more > summary')"):
            break
    page.keyboard.press("Enter")
    expect(section.locator("details.more")).to_have_attribute("open", "")
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('.afresh')"):
            break
    page.keyboard.press("Enter")
    says(section, "3 across")
