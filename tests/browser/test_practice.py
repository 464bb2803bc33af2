"""Python practises while nothing is asked of it: once, behind every question, and without a trace on the page."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, blank, calculator, says

PAGE = "./plan/pieces/"
#: Said to a page before it is opened: what passes between it and Python is written down.
WRITTEN_DOWN = """{
    window.passed = [];
    window.Worker = class Worker extends window.Worker {
        constructor(...all) {
            super(...all);
            this.addEventListener("message", ({ data }) => passed.push(data));
        }
        postMessage(message, ...more) {
            passed.push(message);
            return super.postMessage(message, ...more);
        }
    };
}"""


@pytest.fixture
def noted(page: Page) -> Page:
    page.add_init_script(WRITTEN_DOWN)
    return page


def passed(page: Page, kind: str) -> list[dict]:
    return page.evaluate("type => passed.filter((each) => each.type === type)", kind)


def await_passing(page: Page, kind: str) -> None:
    page.wait_for_function("type => passed.some((each) => each.type === type)", arg=kind, timeout=WAKING)


def test_python_practises_once_a_visit_and_the_page_stays_as_it_was(noted: Page):
    noted.goto(PAGE)
    expect(noted.locator(".ruler-choice")).to_be_visible()  # the page is live
    section = calculator(noted, "pieces-from-cloth")
    before = section.inner_html()
    await_passing(noted, "practised")
    assert section.inner_html() == before
    (practised,) = passed(noted, "practised")
    assert practised["times"] > 1 and practised["milliseconds"] > 0
    assert passed(noted, "trouble") == passed(noted, "final") == []
    noted.locator(".md-footer__link--prev").click()
    other = calculator(noted, "finished-size")
    blank(other, "width").fill("37 cm")
    says(other, "37")
    noted.wait_for_timeout(1000)  # longer than an awake Python is left before it practises
    assert len(passed(noted, "practise")) == 1


def test_a_question_goes_before_practice(noted: Page):
    noted.add_init_script("""window.typing = setInterval(() => {
        if (!passed.some(({ type }) => type === "practise")) return;
        clearInterval(typing);
        const blank = document.querySelector('[data-calculator="pieces-from-cloth"] [name="piece_width"]');
        blank.value = "37 cm";
        blank.dispatchEvent(new Event("input", { bubbles: true }));
    }, 1)""")
    noted.goto(PAGE)
    await_passing(noted, "practised")
    order = [each["type"] for each in noted.evaluate("passed")]
    assert order.index("practise") < order.index("final") < order.index("practised")
