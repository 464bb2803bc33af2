"""Steps are played by a slider, by its keys and by a button; who wants little motion sees one step after the other."""

import re

from playwright.sync_api import Browser, Page, expect

from calculators.drawing.in_step import together
from calculators.drawing.played import LIFT
from calculators.drawing.played_section import BentStrip
from tests.browser.reader import NO_PYTHON, WAKING, blank, calculator, elsewhere, one_window

SHOWN = ".played svg > .step.on"
DRAG = """(slider, place) => {
    slider.step = "any"; slider.value = place; slider.dispatchEvent(new Event("input", { bubbles: true }));
}"""


def places(told):
    return [tuple(map(float, each.split(","))) for each in told.split()]


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
    button.click()  # from the first step on
    page.wait_for_function("(slider) => Number(slider.value) < 2", arg=slider.element_handle())
    button.click()
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
    expect(played.locator(".now")).to_have_text("3. Second fold")
    expect(page.locator(SHOWN)).to_have_attribute("data-name", "Second fold")
    page.context.close()


def test_what_is_played_follows_the_numbers_and_keeps_its_place(page: Page):
    played, slider = player(page, "./corners/mitre/")
    slider.evaluate(DRAG, 2)
    before = page.locator(".played svg > .on path").first.get_attribute("d")
    blank(calculator(page, "mitre-marks"), "hem_1").fill("3 cm")
    expect(page.locator(".played svg > .on path").first).not_to_have_attribute("d", before, timeout=WAKING)
    expect(played).to_have_attribute("open", "")
    expect(page.locator(SHOWN)).to_have_attribute("data-name", "Second fold")
    assert slider.input_value() == "2"


@one_window
def test_a_strip_is_bent_as_the_engine_says(browser: Browser, served: str, width: int):
    page = elsewhere(browser, served, viewport={"width": width, "height": 844})
    page.add_init_script(NO_PYTHON)
    _, slider = player(page, "./stitch/seams/")
    slider.evaluate(DRAG, 0.7)  # two fifths through the second of two folds
    strips = page.locator(".played .bend.on > .strip")
    expect(strips).to_have_count(2)
    for strip in strips.all():
        told = strip.evaluate("(each) => ({ ...each.dataset })")
        about = places(told["about"])[0] if "about" in told else None
        before, after = places(told["before"]), places(told["after"])
        bent = BentStrip("", tuple(before), tuple(after), int(told["holds"]), int(told["turn"]), about)
        shown = places(strip.locator(".layer-edge").get_attribute("points"))
        far = [max(abs(x - u), abs(y - v)) for (x, y), (u, v) in zip(shown, bent.on_its_way(0.4), strict=True)]
        assert max(far) < 0.2
    page.context.close()


STANDS = """(svg) => {
    const steps = [...svg.querySelectorAll(":scope > .step")];
    return [steps.findIndex((each) => each.matches(".on")), svg.querySelector(":scope > .on")?.getAttribute("class")];
}"""


def wrongly_placed(played, slider, stops):
    """At which places of the slider a drawing does not stand where it is to stand."""
    found = []
    for place, wanted in enumerate(stops):
        slider.evaluate(DRAG, place)
        shown = tuple(svg.evaluate(STANDS)[0] for svg in played.locator(".stage > svg").all())
        found += [(place, shown)] if shown != wanted else []
    return found


@one_window
def test_one_slider_takes_two_ways_on_together(browser: Browser, served: str, width: int):
    page = elsewhere(browser, served, viewport={"width": width, "height": 844})
    page.add_init_script(NO_PYTHON)
    page.goto("./fold/hems/")
    played = page.locator(".in-step > .played")
    slider = played.locator("input")
    expect(page.locator(".in-step > .states")).to_be_hidden()
    stops = together(["Laid flat", "First turn", "Second fold", "Stitched"], ["Neatened", "Folded", "Stitched"])
    expect(slider).to_have_value("3")  # finished, where the two can be told apart
    assert wrongly_placed(played, slider, stops) == []
    slider.evaluate(DRAG, 1.5)
    assert [svg.evaluate(STANDS)[1] for svg in played.locator(".stage > svg").all()] == ["bend on", "bend on"]
    slider.evaluate(DRAG, 0.5)
    expect(played.locator(".now")).to_have_text(["1. First turn", "1. Neatened: waits"])
    slider.focus()
    page.keyboard.press("End")
    expect(slider).to_have_attribute(
        "aria-valuetext", "Double hem: Stitched, step 3 of 3; Single turned hem: Stitched, step 3 of 3"
    )
    button = played.get_by_role("button")
    assert min(button.bounding_box()["height"], slider.bounding_box()["height"]) >= 44
    page.emulate_media(media="print")
    expect(page.locator(".in-step > .states figure")).to_have_count(4)
    expect(page.locator(".in-step > .states")).to_be_visible()
    expect(played).to_be_hidden()
    page.emulate_media(media="screen")
    page.locator(".in-step svg[data-stops]").last.evaluate("(svg) => { svg.dataset.stops = '0 1 1 2'; }")
    assert wrongly_placed(played, slider, stops) == [(1, (1, 1))]
    page.context.close()
