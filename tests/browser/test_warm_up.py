"""Python warms up while nothing is asked of it: once, behind every question, and without a trace on the page."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import WAKING, blank, calculator, nothing_amiss, one_window, profile, says

PAGE = "./plan/pieces/"
#: Said to a page before it is opened: what passes between it and Python is written down; the journal has no types.
WRITTEN_DOWN = """{
    window.passed = [];
    window.Worker = class Worker extends window.Worker {
        constructor(...all) {
            super(...all);
            this.addEventListener("message", ({ data }) => data.type && passed.push(data));
        }
        postMessage(message, ...more) {
            if (message.type) passed.push(message);
            return super.postMessage(message, ...more);
        }
    };
}"""


@pytest.fixture
def noted(browser: Browser, served: str, width: int) -> Iterator[Page]:
    context = profile(browser, served, warms_up=True, viewport={"width": width, "height": 844})
    context.add_init_script(WRITTEN_DOWN)
    with nothing_amiss(context, served):
        yield context.new_page()


def passed(page: Page, kind: str) -> list[dict]:
    return page.evaluate("type => passed.filter((each) => each.type === type)", kind)


def await_passing(page: Page, kind: str) -> None:
    page.wait_for_function("type => passed.some((each) => each.type === type)", arg=kind, timeout=WAKING)


@one_window
def test_python_warms_up_once_a_visit_and_the_page_stays_as_it_was(noted: Page):
    noted.goto(PAGE)
    expect(noted.locator(".ruler-choice")).to_be_visible()  # the page is live
    section = calculator(noted, "pieces-from-cloth")
    before = section.inner_html()
    await_passing(noted, "warmed up")
    assert section.inner_html() == before
    (warmed_up,) = passed(noted, "warmed up")
    assert warmed_up["times"] > 1 and warmed_up["milliseconds"] > 0
    assert passed(noted, "trouble") == passed(noted, "final") == []
    noted.locator("article a[href$='sizes/']").first.click()
    other = calculator(noted, "finished-size")
    blank(other, "width").fill("37 cm")
    says(other, "37")
    noted.wait_for_timeout(1000)  # longer than an awake Python is left before it warms up
    assert len(passed(noted, "warm up")) == 1


@one_window
def test_a_question_goes_before_the_warm_up(noted: Page):
    noted.add_init_script("""window.typing = setInterval(() => {
        if (!passed.some(({ type }) => type === "warm up")) return;
        clearInterval(typing);
        const blank = document.querySelector('[data-calculator="pieces-from-cloth"] [name="piece_width"]');
        blank.value = "37 cm";
        blank.dispatchEvent(new Event("input", { bubbles: true }));
    }, 1)""")
    noted.goto(PAGE)
    await_passing(noted, "warmed up")
    order = [each["type"] for each in noted.evaluate("passed")]
    assert order.index("warm up") < order.index("final") < order.index("warmed up")
