"""Notices at the foot of the window leave the foot of the page in reach."""

from playwright.sync_api import Page, expect

SHOW = """() => {
    for (const sentence of ["A sentence that is long enough to take two lines on a telephone that is held upright.",
        "Another such sentence, no shorter than the first."]) {
        const row = Object.assign(document.createElement("div"), { className: "notice" });
        row.append(Object.assign(document.createElement("p"), { textContent: sentence }),
            Object.assign(document.createElement("button"), { textContent: "Close" }));
        document.querySelector(".notices").append(row);
    }
}"""
CLEAR = "document.querySelector('.notices').replaceChildren()"
#: Whether the last link of the page can be pressed once the page is scrolled to its end.
IN_REACH = """() => {
    scrollTo(0, document.documentElement.scrollHeight);
    const link = [...document.querySelectorAll("footer a, main a")].filter((each) => each.getClientRects().length)
        .at(-1), box = link.getBoundingClientRect();
    return document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2).closest("a") === link;
}"""


def until(page: Page, holds) -> None:
    for _ in range(300):
        if holds():
            return
        page.wait_for_timeout(100)
    raise AssertionError("it never came to that")


def test_the_foot_of_the_page_stays_in_reach_above_them(page: Page):
    page.goto("./batch/")
    page.evaluate("document.fonts.ready.then(() => true)")  # letters that come later change the height
    height = page.evaluate("document.documentElement.scrollHeight")
    page.evaluate(SHOW)
    shelf = page.locator(".notices")
    expect(shelf.locator(".notice")).to_have_count(2)
    until(
        page,
        lambda: (
            page.evaluate("document.documentElement.scrollHeight")
            >= height + shelf.evaluate("it => it.offsetHeight") - 2
        ),
    )
    until(page, lambda: page.evaluate(IN_REACH))  # the theme fits its side lists in after a scroll
    assert shelf.evaluate("it => it.offsetHeight <= innerHeight * 0.45 + 1")
    page.evaluate(CLEAR)
    until(page, lambda: page.evaluate("document.documentElement.scrollHeight") <= height + 2)


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
    const fixed = (each) => each && (["fixed", "sticky"].includes(getComputedStyle(each).position) ||
        fixed(each.parentElement));
    return !fixed(it) && !document.querySelector(".notices").childElementCount;
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
    done.get_by_role("button", name="Undo").click()
    expect(done).to_have_count(0)


def test_what_has_the_focus_comes_out_from_under_a_notice_that_must_be_seen_at_once(page: Page):
    page.goto("./batch/")
    page.evaluate("document.fonts.ready.then(() => true)")
    under = """() => { const box = document.activeElement.getBoundingClientRect();
        return box.bottom - document.querySelector(".notices").getBoundingClientRect().top; }"""
    blank = page.locator("section.calculator input:visible").nth(2)
    blank.focus()
    blank.evaluate("it => scrollBy(0, it.getBoundingClientRect().bottom - innerHeight + 2)")
    page.evaluate(SHOW)
    until(page, lambda: page.evaluate(under) <= 0)
    page.evaluate(CLEAR)
    until(page, lambda: page.evaluate("document.documentElement.style.scrollPaddingBlockEnd") == "")
    blank.evaluate("it => scrollBy(0, it.getBoundingClientRect().bottom - innerHeight + 2)")
    page.evaluate(SHOW)
    until(page, lambda: page.evaluate(under) <= 0)  # a second time too
