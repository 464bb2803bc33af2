"""Notices are lines in the page: they cover nothing and move nothing that is read."""

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import elsewhere, reached


def until(page: Page, holds) -> None:
    for _ in range(300):
        if holds():
            return
        page.wait_for_timeout(100)
    raise AssertionError("it never came to that")


#: Stands for the keeper of pages, which the fixture takes away: what it says is then said by the test.
KEEPER = """Object.defineProperty(navigator, "serviceWorker", {
    value: Object.assign(new EventTarget(),
        { controller: null, startMessages() {}, register: () => new Promise(() => {}) }),
});"""
SAY_READY = 'navigator.serviceWorker.dispatchEvent(new MessageEvent("message", { data: { say: "in use" } }))'


#: Whether a notice stands in the flow of the page, below all that the page has to say.
AT_THE_FOOT = """it => {
    const fixed = (each) => each && (getComputedStyle(each).position === "fixed" || fixed(each.parentElement));
    return !fixed(it) && it.getBoundingClientRect().top >= document.querySelector(".md-footer")
        .getBoundingClientRect().bottom - 1;
}"""


def test_how_far_the_keeping_is_stands_in_a_line_at_the_foot_of_the_page_and_moves_nothing(page: Page):
    page.add_init_script(KEEPER)
    page.goto("./plan/pieces/")
    page.evaluate("document.fonts.ready.then(() => true)")
    line = page.locator(".notice")
    title = page.locator("h1").bounding_box()
    for said, told, topic in (
        ("keeping", "Keeping the handbook", "keeping"),
        ("in use", "Ready for the workroom", "ready"),
    ):
        say = SAY_READY.replace('say: "in use"', f'say: "{said}", share: 0.5, first: true')
        until(
            page, lambda say=say, topic=topic: page.evaluate(say) and page.locator(f"[data-topic={topic}]").count() == 1
        )
        expect(line).to_have_count(1)
        expect(line).to_contain_text(told)
        expect(line.get_by_role("button")).to_have_count(0)
        assert line.evaluate(AT_THE_FOOT)
        assert page.evaluate("document.body.style.paddingBlockEnd") == ""
    assert page.locator("h1").bounding_box() == title


#: Says what the keeper of pages would, once its script listens.
SAY = """data => {
    navigator.serviceWorker.dispatchEvent(new MessageEvent("message", { data }));
    return document.querySelector(".notice") !== null;
}"""
COVERS_NOTHING = """it => {
    const fixed = (each) => each && (["fixed", "sticky", "absolute"].includes(getComputedStyle(each).position) ||
        fixed(each.parentElement));
    return !fixed(it);
}"""


def test_what_can_wait_is_a_line_at_the_foot_of_the_page_with_its_button(page: Page):
    page.add_init_script(KEEPER)
    page.goto("./plan/pieces/")
    for said, told, press in (
        ({"say": "other edition"}, "A newer copy", "Use it now"),
        ({"say": "other windows"}, "open in another window", "Use it now"),
        ({"say": "not kept", "why": "room", "detail": ""}, "no room to keep", "Try again"),
    ):
        until(page, lambda said=said: page.evaluate(SAY, said))
        line = page.locator(".notice", has_text=told)
        expect(line.get_by_role("button", name=press)).to_be_visible()
        assert line.evaluate(AT_THE_FOOT) and line.evaluate(COVERS_NOTHING)
    page.context.set_offline(True)
    network = page.locator(".notice", has_text="No network")
    expect(network).to_be_visible()
    assert network.evaluate(AT_THE_FOOT) and network.evaluate(COVERS_NOTHING)


def test_the_way_back_from_what_was_offered_stands_below_its_blanks_and_covers_nothing(page: Page):
    page.goto("./plan/lay-plan/")
    page.evaluate("document.fonts.ready.then(() => true)")
    plan = page.locator("section.calculator").first
    # whatever the plan offers is of no matter here: the offer is made up, and put where offers stand
    offered = """it => { const offer = Object.assign(document.createElement("button"),
        { className: "offer", textContent: "Change it so" });
        Object.assign(offer.dataset,
            { sets: '[["strips", "along", null, null]]', does: "cut in strips along the cloth" });
        it.querySelector(".answer").append(offer); offer.click();
        return document.querySelector(".notice") !== null; }"""
    until(page, lambda: plan.evaluate(offered))
    done = page.locator(".notice", has_text="Done: cut in strips along the cloth.")
    expect(done).to_be_visible()
    assert done.evaluate(COVERS_NOTHING)
    assert done.evaluate("it => it.closest('form.asked') !== null")
    plan.get_by_role("button", name="Undo: how it is cut").click()
    expect(done).to_have_count(0)


#: A Python that never wakes, or that breaks at once.
ASLEEP = "window.Worker = class { postMessage() {} terminate() {} };"
BROKEN = """window.Worker = class {
    constructor() { setTimeout(() => this.onerror?.({ type: "error", message: "it broke" })); }
    postMessage() {} terminate() {}
};"""
#: Where a page asks Python, and in which calculator of it the reader then is.
WAITS = [("plan/pieces", 0), ("batch", 2), ("house", None)]


@pytest.mark.parametrize(("name", "used"), WAITS)
@pytest.mark.parametrize("python", [ASLEEP, BROKEN], ids=["asleep", "broken"])
def test_that_python_is_awaited_is_said_where_the_reader_waits(
    browser: Browser, served: str, python: str, name: str, used: int | None
):
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844})
    page.add_init_script(python)
    page.goto(f"./{name}/")
    if used is None:
        page.evaluate("scrollTo(0, 0)")
        place = page.locator("h1 + .told-here")
    else:
        section = page.locator("section.calculator").nth(used)
        blank = reached(section.locator("form.asked input").first)
        blank.fill("47 cm")
        place = section.locator(".told-here")
    told = page.locator(".notice[data-topic=python]")
    expect(told).to_be_visible(timeout=20_000)
    expect(place.locator(".notice")).to_have_count(1)
    assert told.evaluate(COVERS_NOTHING)
    assert told.get_by_role("button").count() == (1 if python == BROKEN else 0)
    page.context.close()
