"""Steps are played by a slider, by its keys and by a button; who wants little motion sees one step after the other."""

import re

from playwright.sync_api import Browser, Page, expect

from calculators.drawing.played import LIFT
from tests.browser.reader import NO_PYTHON, WAKING, blank, calculator, elsewhere, one_window

SHOWN = ".played svg > .on"
DRAG = """(slider, place) => {
    slider.step = "any"; slider.value = place; slider.dispatchEvent(new Event("input", { bubbles: true }));
}"""


def player(page: Page, path: str):
    page.goto(path)
    found = page.locator("details.played").first
    found.locator("summary").click()
    return found, found.locator("input")


@one_window
def test_a_slider_its_keys_and_a_button_play_the_steps(browser: Browser, served: str, width: int):
    page = elsewhere(browser, served, viewport={"width": width, "height": 844})
    page.add_init_script(NO_PYTHON)
    played, slider = player(page, "./corners/mitre/")
    slider.focus()
    page.keyboard.press("ArrowRight")
    expect(slider).to_have_attribute("aria-valuetext", "First turn, step 2 of 11")
    expect(played.locator(".now")).to_have_text("2. First turn")
    expect(page.locator(SHOWN)).to_have_attribute("data-name", "First turn", timeout=5000)
    expect(played.locator("svg")).to_have_attribute("aria-label", re.compile("^First turn. "))
    page.keyboard.press("End")
    expect(page.locator(SHOWN)).to_have_attribute("data-name", "Right side")
    slider.evaluate(DRAG, 1.25)  # half-way through the first of two folds
    flap = page.locator(".played .flap.on > .rear")
    standing = re.findall(r"-?[\d.]+", flap.get_attribute("transform"))
    x, y, ux, uy = map(float, page.locator(".played .flap.on").get_attribute("data-line").split())
    a, b, c, d, e, f = map(float, standing)
    at = (x + 30 * ux + 10 * uy, y + 30 * uy - 10 * ux)  # 30 along the line, 10 beside it, where the flap will lie
    assert abs(a * at[0] + c * at[1] + e - (x + 30 * ux)) < 0.1
    assert abs(b * at[0] + d * at[1] + f - (y + 30 * uy - 10 * LIFT)) < 0.1, "it stands upright on its line"
    button = played.get_by_role("button")
    assert min(button.bounding_box()["height"], slider.bounding_box()["height"]) >= 44
    button.click()
    expect(button).to_have_text("Pause")
    before = slider.input_value()
    page.wait_for_function("(was) => document.querySelector('.played input').value !== was", arg=before)
    button.click()
    expect(button).to_have_text("Play")
    slider.evaluate(DRAG, 7.5)
    expect(played.locator(".now")).to_contain_text("not shown moving")
    page.context.close()


@one_window
def test_little_motion_is_one_step_after_the_other(browser: Browser, served: str, width: int):
    page = elsewhere(browser, served, viewport={"width": width, "height": 844}, reduced_motion="reduce")
    page.add_init_script(NO_PYTHON)
    played, slider = player(page, "./corners/mitre/")
    slider.evaluate(DRAG, 1.25)
    expect(page.locator(SHOWN)).to_have_count(1)
    expect(page.locator(SHOWN)).to_have_attribute("data-name", "First turn")
    slider.focus()
    page.keyboard.press("ArrowRight")
    assert page.locator(SHOWN).get_attribute("data-name") == played.locator(".now").text_content().split(". ")[1]
    page.context.close()


def test_what_is_played_follows_the_numbers_and_keeps_its_place(page: Page):
    played, slider = player(page, "./corners/mitre/")
    slider.evaluate(DRAG, 2)
    before = page.locator(f"{SHOWN} path").first.get_attribute("d")
    blank(calculator(page, "mitre-marks"), "hem_1").fill("3 cm")
    expect(page.locator(f"{SHOWN} path").first).not_to_have_attribute("d", before, timeout=WAKING)
    expect(played).to_have_attribute("open", "")
    expect(page.locator(SHOWN)).to_have_attribute("data-name", "Second fold")
    assert slider.input_value() == "2"
