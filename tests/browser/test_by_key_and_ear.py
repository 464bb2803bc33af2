"""For whoever goes by the keyboard and hears the page: the first blank is near, tables that do not scroll are no stops,
and a change is told in one summary of what differs."""

from playwright.sync_api import Browser, Page, expect

from scripts.tools.places import SITE
from tests.browser.reader import (
    ANSWERS_HELD_BACK,
    NO_PYTHON,
    WAKING,
    answered,
    blank,
    calculator,
    hold_back,
    let_through,
    one_window,
    profile,
    refusal,
    says,
)

STOPS = 10
AT_A_BLANK = "document.activeElement.matches('form.asked :is(input, select)')"

#: What a page has to say to those who hear it, as it is put into its live regions.
SAID_ALOUD = """() => { window.aloud = [];
    const live = "[role=status], [role=alert], [aria-live], output";
    new MutationObserver((all) => {
        const regions = all.map(({ target }) => (target.closest ? target : target.parentElement)?.closest(live));
        for (const each of new Set(regions.filter(Boolean))) aloud.push(each.textContent.trim());
    }).observe(document.body, { subtree: true, childList: true, characterData: true }); }"""


def stops(page: Page) -> int:
    """How often the Tab key is pressed until the first blank is reached; the way past the head of a page is a stop."""
    for pressed in range(1, STOPS + 1):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('.md-skip')"):
            page.keyboard.press("Enter")
            page.wait_for_function(f"() => {AT_A_BLANK}")  # the browser goes to a part of a page in its own time
        if page.evaluate(AT_A_BLANK):
            return pressed
    return STOPS + 1


def test_the_first_blank_of_every_page_is_near(browser: Browser, served: str):
    context = profile(browser, served, viewport={"width": 1280, "height": 844}, reduced_motion="reduce")
    context.add_init_script(NO_PYTHON)
    page = context.new_page()
    asking = [path.parent for path in SITE.rglob("index.html") if 'class="asked"' in path.read_text()]
    assert len(asking) > 15
    far = {}
    for folder in asking:
        page.goto(f"./{folder.relative_to(SITE).as_posix()}/")
        if (pressed := stops(page)) > STOPS:
            far[folder.name] = pressed
    page.set_viewport_size({"width": 320, "height": 844})
    page.goto("./reference/house-method/")
    boxes = page.locator("article .wide")
    boxes.evaluate_all("them => { them.find((it) => it.checkVisibility()).firstChild.style.minWidth = '900px'; }")
    page.keyboard.press("Tab")
    scrolls = boxes.evaluate_all("them => them.map((it) => [it.tabIndex, it.scrollWidth > it.clientWidth + 1])")
    context.close()
    assert far == {}
    assert [0, True] in scrolls and [-1, False] in scrolls
    assert all((index == 0) == does for index, does in scrolls)


@one_window
def test_a_change_is_told_once_and_only_what_differs(page: Page):
    page.goto("./batch/")
    order = calculator(page, "order")
    pieces = blank(order, "ordered")
    answered(page)
    page.evaluate(SAID_ALOUD)
    pieces.fill("31")
    says(order, "31")
    said = page.locator(".summary")
    expect(said).to_contain_text("31", timeout=WAKING)
    assert page.evaluate("aloud.filter(Boolean)") == [said.text_content()]
    assert "Mark" not in (said.text_content() or ""), "corners are as they were"
    page.evaluate("aloud.length = 0")
    pieces.fill("many")
    expect(refusal(order, "ordered")).to_be_visible(timeout=WAKING)
    sentence = refusal(order, "ordered").inner_text()
    expect(said).to_contain_text(sentence, timeout=WAKING)
    assert len(page.evaluate("aloud.filter(Boolean)")) == 1
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    blank(section, "piece_width").fill("36 cm")
    expect(said).not_to_be_empty(timeout=WAKING)
    told = said.text_content()
    blank(section, "piece_width").fill("360 mm")
    expect(said).to_have_text("The answer stays the same.", timeout=WAKING)
    assert told == section.locator(".spoken").text_content()


@one_window
def test_nothing_is_told_while_an_answer_is_on_its_way(page: Page):
    page.add_init_script(ANSWERS_HELD_BACK)
    page.goto("./batch/")
    order = calculator(page, "order")
    answered(page)
    page.evaluate(SAID_ALOUD)
    blank(order, "ordered").fill("30")
    says(order, "30")
    hold_back(page)
    blank(order, "ordered").fill("31")
    page.wait_for_timeout(1500)  # more than twice as long as an answer rests before it is told
    assert page.evaluate("aloud.filter(Boolean)") == []
    let_through(page)
    expect(page.locator(".summary")).to_contain_text("31", timeout=WAKING)
    assert page.evaluate("aloud.filter(Boolean)") == [page.locator(".summary").text_content()]
