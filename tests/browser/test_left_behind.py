"""Pages that are left leave nothing behind: neither their elements nor what listens in them."""

import pytest
from playwright.sync_api import CDPSession, Page, expect

from tests.browser.reader import NO_PYTHON, one_window

PAGES = ["plan/pieces/", "house/jobs/", "corners/mitre/", "house/ticket/", "house/", "plan/lay-plan/"]
ROUNDS = 4
OF_THE_THEME = {"JSEventListeners": 4, "Nodes": 100}  # of each move, at most: it has some of its own
MOVE = """async (to) => {
    const before = document.querySelector("h1");
    document.body.appendChild(Object.assign(document.createElement("a"), { href: __md_scope + to })).click();
    while (document.contains(before)) await new Promise((resolve) => setTimeout(resolve, 20));
    await new Promise((resolve) => setTimeout(resolve, 200));
}"""


def held(session: CDPSession) -> dict[str, int]:
    """What the page holds once the browser has cleared away all that it can."""
    for _ in range(3):
        session.send("HeapProfiler.collectGarbage")
    found = {each["name"]: each["value"] for each in session.send("Performance.getMetrics")["metrics"]}
    return {name: found[name] for name in OF_THE_THEME}


@pytest.mark.parametrize("width", [1280], ids=["screen"])
def test_moving_from_page_to_page_holds_on_to_none_of_them(page: Page):
    page.goto("./")
    page.wait_for_load_state("networkidle")  # the theme moves without a page load once it has the site's list of pages
    session = page.context.new_cdp_session(page)
    for domain in ("Performance", "HeapProfiler"):
        session.send(f"{domain}.enable")
    for to in PAGES:
        page.evaluate(MOVE, to)
    first = held(session)
    for to in PAGES * ROUNDS:
        page.evaluate(MOVE, to)
    last = held(session)
    moves = len(PAGES) * ROUNDS
    assert {name: (last[name] - first[name]) / moves > most for name, most in OF_THE_THEME.items()} == {
        "JSEventListeners": False,
        "Nodes": False,
    }, (first, last)


@one_window
def test_pages_left_scrolled_to_their_end_break_nothing_as_they_are_taken_apart(page: Page):
    page.add_init_script(NO_PYTHON)
    page.goto("./plan/pieces/")
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    expect(page.locator(".answer-strip")).to_be_visible()
    for to in ["batch/", *PAGES[1:]]:
        page.evaluate(MOVE, to)
