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


#: Stands for the keeper of pages, which the fixture takes away: what it says is then said by the test.
KEEPER = """Object.defineProperty(navigator, "serviceWorker", {
    value: Object.assign(new EventTarget(), { controller: null, startMessages() {}, register: () => new Promise(() => {}) }),
});"""
SAY_READY = 'navigator.serviceWorker.dispatchEvent(new MessageEvent("message", { data: { say: "in use" } }))'


def test_that_all_is_ready_is_said_and_passes_unless_the_reader_is_at_it(page: Page):
    page.add_init_script(KEEPER)
    page.clock.install()
    page.goto("/")
    ready = page.locator("[data-topic=ready]")
    until(page, lambda: page.evaluate(SAY_READY) and ready.count() == 1)
    page.clock.run_for(9_000)
    expect(ready).to_contain_text("Ready for the workroom")  # six words are read aloud in three seconds
    ready.get_by_role("button", name="Close").focus()
    page.clock.run_for(60_000)
    expect(ready).to_be_visible()
    ready.get_by_role("button", name="Close").blur()
    ready.hover()
    page.clock.run_for(60_000)
    expect(ready).to_be_visible()
    page.mouse.move(1, 1)
    page.clock.run_for(9_000)
    expect(ready).to_be_visible()
    page.clock.run_for(9_000)
    expect(ready).to_have_count(0)
