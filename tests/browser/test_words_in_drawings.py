"""The words in a drawing can be read beside the work and never shout: 13 to 15 px on every page, on phone, tablet and
desk, on a low window too; `test_every_page.py` looks at each."""

from playwright.sync_api import Browser

from tests.browser.reader import NO_PYTHON, elsewhere

SIZES = (12.95, 15.05)  # [px]
# A gauge to print is only shown in its place on the sheet; it is read in its true size, on paper.
OTHER_SIZES = """([smallest, largest]) => [...document.querySelectorAll("svg.to-scale[role=img]:not(.true-size) text")]
  .filter((text) => text.checkVisibility())
  .map((text) => [text.textContent,
    parseFloat(getComputedStyle(text).fontSize) * text.ownerSVGElement.getScreenCTM().a])
  .filter(([, size]) => size < smallest || size > largest)"""
WINDOWS = [(390, 844), (600, 844), (844, 390), (1280, 720), (1600, 900)]


def test_words_of_another_size_are_found(browser: Browser, served: str):
    page = elsewhere(browser, served)
    page.add_init_script(NO_PYTHON)
    page.goto("./corners/mitre/")
    assert len(page.evaluate(OTHER_SIZES, [99, 999])) >= 10
    page.context.close()
