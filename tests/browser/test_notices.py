"""Notices at the foot of the window leave the foot of the page in reach."""

from playwright.sync_api import Page, expect

SHOW = """() => {
    for (const sentence of ["A sentence that is long enough to take two lines on a telephone that is held upright.", "Another such sentence, no shorter than the first."]) {
        const row = Object.assign(document.createElement("div"), { className: "notice" });
        row.append(Object.assign(document.createElement("p"), { textContent: sentence }), Object.assign(document.createElement("button"), { textContent: "Close" }));
        document.querySelector(".notices").append(row);
    }
}"""
CLEAR = "document.querySelector('.notices').replaceChildren()"
#: Whether the last link of the page can be pressed once the page is scrolled to its end.
IN_REACH = """() => {
    scrollTo(0, document.documentElement.scrollHeight);
    const link = [...document.querySelectorAll("footer a, main a")].filter((each) => each.getClientRects().length).at(-1), box = link.getBoundingClientRect();
    return document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2).closest("a") === link;
}"""


def until(page: Page, holds) -> None:
    for _ in range(300):
        if holds():
            return
        page.wait_for_timeout(100)
    raise AssertionError("it never came to that")


def test_the_foot_of_the_page_stays_in_reach_above_them(page: Page):
    page.goto("/batch/")
    page.evaluate("document.fonts.ready.then(() => true)")  # letters that come later change the height
    height = page.evaluate("document.documentElement.scrollHeight")
    page.evaluate(SHOW)
    shelf = page.locator(".notices")
    expect(shelf.locator(".notice")).to_have_count(2)
    until(page, lambda: page.evaluate("document.documentElement.scrollHeight") >= height + shelf.evaluate("it => it.offsetHeight") - 2)
    until(page, lambda: page.evaluate(IN_REACH))  # the theme fits its side lists in after a scroll
    assert shelf.evaluate("it => it.offsetHeight <= innerHeight * 0.45 + 1")
    page.evaluate(CLEAR)
    until(page, lambda: page.evaluate("document.documentElement.scrollHeight") <= height + 2)
