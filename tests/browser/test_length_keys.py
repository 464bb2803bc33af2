"""Above a phone's number keyboard stand the keys that a length needs; with a mouse there are none."""

from playwright.sync_api import Page, expect

from tests.browser.reader import blank, calculator, choose_ruler, elsewhere, one_window, says
from tests.browser.test_whole_value import PHONE, centre

#: How far the lower edge of the keys lies from that of what is seen, and its left edge from there.
OFF = """it => { const { left, bottom } = it.getBoundingClientRect(), seen = visualViewport;
    return [left - seen.offsetLeft, bottom - seen.offsetTop - seen.height].map(Math.round); }"""


def test_a_fraction_is_written_with_the_keys_of_the_ruler_in_hand(browser, served):
    page = elsewhere(browser, served, **PHONE)
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    keys = page.get_by_role("toolbar", name="Keys for lengths")
    choose_ruler(page, "in 1/8")
    width = blank(section, "piece_width")
    expect(width).to_have_attribute("inputmode", "decimal")
    expect(keys).to_be_hidden()
    page.touchscreen.tap(*centre(width))
    expect(keys).to_be_visible()
    names = keys.get_by_role("button").all_inner_texts()
    assert {"1/2", "1/4", "3/4", "1/8", "7/8", "space", "/", "in"} <= set(names) and "1/16" not in names
    assert all(min(size) >= 44 for size in keys.locator("button").evaluate_all(
        "them => them.map((it) => [it.offsetWidth, it.offsetHeight])"))  # fmt: skip
    page.keyboard.type("14")
    for key in ("1/4", "in"):
        keys.get_by_role("button", name=key, exact=True).tap()
        expect(width).to_be_focused()
    expect(width).to_have_value("14 1/4 in")
    width.evaluate("it => it.setSelectionRange(2, 6)")
    keys.get_by_role("button", name="space").tap()
    page.keyboard.type("3")
    keys.get_by_role("button", name="fraction stroke").tap()
    page.keyboard.type("8")
    expect(width).to_have_value("14 3/8 in")
    page.keyboard.press("Tab")
    page.touchscreen.tap(*centre(blank(section, "piece_length")))
    page.keyboard.type("14 3/8")
    says(section, "pieces")
    assert keys.evaluate(OFF) == [0, 0]
    page.context.new_cdp_session(page).send("Emulation.setPageScaleFactor", {"pageScaleFactor": 2})
    page.wait_for_function(f"() => visualViewport.scale === 2 && !({OFF})(document.querySelector('.length-keys'))[1]")
    page.emulate_media(media="print")
    expect(keys).to_be_hidden()
    page.emulate_media(media="screen")
    expect(keys).to_be_visible()
    page.evaluate("document.activeElement.blur()")
    expect(keys).to_be_hidden()
    page.context.close()


@one_window
def test_with_a_mouse_there_are_no_keys(page: Page):
    page.goto("./plan/pieces/")
    blank(calculator(page, "pieces-from-cloth"), "piece_width").click()
    page.keyboard.type("14")
    expect(page.locator(".length-keys")).to_be_hidden()
