"""The words in a drawing can be read beside the work and never shout: 13 to 15 px on every page, on phone, tablet and
desk, on a low window too."""

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


def test_words_in_drawings_are_of_one_size(browser: Browser, served: str, site):
    page = elsewhere(browser, served)
    page.add_init_script(NO_PYTHON)
    others, drawn = {}, 0
    for file in sorted(site.rglob("index.html")):
        if 'class="to-scale" role="img"' not in file.read_text(encoding="utf-8"):
            continue
        name = file.parent.relative_to(site).as_posix()
        page.goto("./" if name == "." else f"./{name}/")
        page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
        drawn += page.locator("svg.to-scale[role=img] text").count()
        for width, height in WINDOWS:
            page.set_viewport_size({"width": width, "height": height})
            if found := page.evaluate(OTHER_SIZES, SIZES):
                others[f"{name} at {width} by {height}"] = found
    planted = page.evaluate(OTHER_SIZES, [99, 999])
    page.context.close()
    assert drawn > 100 and planted
    assert others == {}
