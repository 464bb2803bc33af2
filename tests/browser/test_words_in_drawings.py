"""The words in a drawing can be read on a phone that lies beside the work: at least 13 px on every page."""

from playwright.sync_api import Browser

SMALLEST = 12.95  # [px]
# A gauge to print is only shown in its place on the sheet; it is read in its true size, on paper.
SMALL_WORDS = """(smallest) => [...document.querySelectorAll("svg.to-scale[role=img]:not(.true-size) text")]
  .filter((text) => text.checkVisibility())
  .map((text) => [text.textContent,
    parseFloat(getComputedStyle(text).fontSize) * text.ownerSVGElement.getScreenCTM().a])
  .filter(([, size]) => size < smallest)"""


def test_words_in_drawings_are_large_enough_on_a_phone(browser: Browser, served: str, site):
    context = browser.new_context(
        base_url=f"{served}/", viewport={"width": 390, "height": 844}, service_workers="block", java_script_enabled=True
    )
    context.add_init_script("window.Worker = class { postMessage() {} terminate() {} };")
    page = context.new_page()
    small, drawn = {}, 0
    for file in sorted(site.rglob("index.html")):
        if 'class="to-scale" role="img"' not in file.read_text(encoding="utf-8"):
            continue
        name = file.parent.relative_to(site).as_posix()
        page.goto("./" if name == "." else f"/{name}/")
        page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
        drawn += page.locator("svg.to-scale[role=img] text").count()
        if found := page.evaluate(SMALL_WORDS, SMALLEST):
            small[name] = found
    planted = page.evaluate(SMALL_WORDS, 99)
    context.close()
    assert drawn > 100 and planted
    assert small == {}
