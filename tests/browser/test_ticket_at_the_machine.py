"""The work ticket at the machine, on a phone: one step at a time, ticked bundle by bundle, with room for the step."""

import re
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import WAKING, elsewhere
from tests.browser.work_ticket import TICKET, counted, in_focus, now, open_ticket


def test_at_the_machine_one_step_at_a_time_is_ticked_and_still_ticked_when_loaded_again(phone: Page):
    phone.get_by_role("button", name="At the machine").tap()
    expect(now(phone)).to_have_count(1)
    in_focus(phone, "Wash the cloth")
    phone.get_by_role("button", name="Done, next").tap()
    in_focus(phone, "Straighten one end")
    phone.reload()
    expect(now(phone)).to_contain_text("Straighten one end", timeout=WAKING)
    phone.get_by_role("button", name="Back", exact=True).tap()
    counted(phone, "Done.")
    expect(phone.get_by_role("button", name="Next", exact=True)).to_be_visible()
    expect(now(phone).locator(".box.ticked")).to_have_count(1)


def back_to_the_first(page: Page) -> None:
    """Back to the first step, and away from the machine, so that the next visit begins as the first did."""
    steps = page.locator(".ticket-step")
    for number in reversed(range(steps.count() - 1)):
        page.keyboard.press("ArrowLeft")
        expect(steps.nth(number)).to_have_class(re.compile(r"\bnow\b"))
    page.keyboard.press("Escape")
    expect(page.locator(".at-machine")).to_have_count(0)


#: Of every step at the machine that has a drawing: how much of it is in sight, whether more is said to stand below, and
#: how high it is.
DRAWING_IN_SIGHT = """() => {
    const what = document.querySelector(".now .what"), drawing = what.querySelector("figure.drawing");
    if (!drawing) return null;
    const [frame, box] = [what, drawing].map((each) => each.getBoundingClientRect());
    return [Math.max(0, Math.min(box.bottom, frame.bottom) - box.top) / box.height,
        document.querySelector(".machine.has-more") !== null, box.height];
}"""


@pytest.fixture(scope="module")
def small_screen(browser: Browser, served: str) -> Iterator[Page]:
    """The ticket on a screen that is touched and takes any size, for all sizes."""
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844}, has_touch=True, reduced_motion="reduce")
    open_ticket(page)
    yield page
    page.context.close()


@pytest.mark.parametrize(("across", "down"), [(390, 844), (390, 664), (360, 600), (844, 390)])
def test_at_the_machine_no_drawing_is_cut_by_the_buttons(small_screen: Page, across: int, down: int):
    page = small_screen
    page.set_viewport_size({"width": across, "height": down})
    page.get_by_role("button", name="At the machine").tap()
    steps = page.locator(".ticket-step")
    expect(steps.first).to_have_class(re.compile(r"\bnow\b"))
    seen = []
    for number in range(1, steps.count()):
        page.locator(".machine-top [data-do=next]").tap()
        expect(steps.nth(number)).to_have_class(re.compile(r"\bnow\b"))
        seen.append(page.evaluate(DRAWING_IN_SIGHT))
    back_to_the_first(page)
    drawings = [each for each in seen if each]
    assert len(drawings) == 9
    assert [share for share, *_ in drawings if 0.01 < share < 0.999] == []
    assert all(more for share, more, _ in drawings if share < 0.01), "what is out of sight is said to stand below"
    if down == 844:
        assert all(share > 0.999 for share, *_ in drawings)
    if down in (664, 600):
        below = [high for share, _, high in drawings if share < 0.01]
        assert below and min(below) > 180, "a drawing that is scrolled to has the screen for itself"


def test_bundles_are_counted_and_taken_back_with_keys_too(phone: Page):
    for _ in range(6):
        phone.keyboard.press("ArrowRight")
    expect(now(phone)).to_contain_text("Second fold")
    phone.keyboard.press("+")
    counted(phone, "1 of 3 bundles done")
    phone.get_by_role("button", name="Bundle done").tap()
    counted(phone, "2 of 3 bundles done: 12 of 18 pieces.")
    expect(phone.get_by_role("button", name="Done, next")).to_be_visible()
    phone.get_by_role("button", name="Undo", exact=True).tap()
    counted(phone, "1 of 3 bundles done: 6 of 18 pieces.")
    expect(phone.get_by_role("button", name="Bundle done")).to_be_visible()


def test_the_one_large_button_ticks_bundle_after_bundle_and_goes_on_when_all_are_done(browser: Browser, served: str):
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844}, has_touch=True, reduced_motion="reduce")
    open_ticket(page)
    page.get_by_role("button", name="At the machine").tap()
    onward, titles = page.locator("[data-do=onward]"), page.locator(".ticket-step h3").all_text_contents()
    for at, title in enumerate(titles):
        expect(now(page).locator("h3")).to_have_text(title)
        page.wait_for_timeout(450)  # a touch sooner would count as the second half of the one before
        for left in range(int(now(page).locator(".done").get_attribute("data-left")), 0, -1):
            last = "Done" if at == len(titles) - 1 else "Done, next"
            expect(onward).to_have_text("Bundle done" if left > 1 else last, use_inner_text=True)
            onward.tap()
            expect(page.locator(".ticket-step").nth(at).locator(".done")).to_have_attribute("data-left", str(left - 1))
    expect(onward).to_have_attribute("aria-disabled", "true")
    assert page.locator(".done:not(.whole)").count() == 0
    page.get_by_role("button", name="Back", exact=True).tap()
    expect(now(page).locator("h3")).to_have_text(titles[-2])
    expect(onward).to_have_text("Next", use_inner_text=True)
    page.context.close()


def test_two_touches_at_once_tick_one_step_only(browser: Browser, served: str):
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844}, reduced_motion="reduce")
    open_ticket(page)
    page.get_by_role("button", name="At the machine").click()
    expect(now(page)).to_have_count(1)
    twice = """async () => {
        const press = document.querySelector("[data-do=onward]"), first = document.querySelector(".ticket-step.now");
        press.click();
        while (first.classList.contains("now")) await new Promise((soon) => setTimeout(soon, 1));
        press.click();
        await new Promise((later) => setTimeout(later, 300));
        return [...document.querySelectorAll(".done.whole")].map((each) => each.dataset.ticks);
    }"""
    assert page.evaluate(twice) == ["wash"]
    page.context.close()


#: What stands around a step at the machine, against the step: [share of the height that the step has, what is wrong].
AROUND_THE_STEP = """() => {
    const frame = document.querySelector(".at-machine"), what = frame.querySelector(".now .what"), wrong = [];
    const placed = [what,
        ...frame.querySelectorAll(".machine-top, .more-below, .now .boxed, .now .count, .machine-ways button")]
            .filter((each) => each.checkVisibility());
    const boxes = placed.map((each) => [each.className || each.textContent, each.getBoundingClientRect()]);
    for (const [at, [one, a]] of boxes.entries()) {
        if (a.left < -1 || a.right > innerWidth + 1) wrong.push(`${one} leaves the window`);
        for (const [other, b] of boxes.slice(at + 1)) if (a.left < b.right - 1 && b.left < a.right - 1 &&
            a.top < b.bottom - 1 && b.top < a.bottom - 1) wrong.push(`${one} lies on ${other}`);
    }
    for (const each of frame.querySelectorAll("button")) {
        if (!each.checkVisibility()) continue;
        const { width, height } = each.getBoundingClientRect();
        if (Math.min(width, height) < 44) wrong.push(`${each.textContent}: ${width} × ${height}`);
        if (each.scrollWidth > each.clientWidth + 1) wrong.push(`${each.textContent} is cut`);
    }
    if (frame.scrollWidth > frame.clientWidth + 1) wrong.push("it scrolls sideways");
    const last = frame.querySelector(".machine-ways");
    frame.scrollTo(0, 1e6);
    if (last.getBoundingClientRect().bottom > innerHeight + 1) wrong.push("the buttons are out of reach");
    frame.scrollTo(0, 0);
    return [what.getBoundingClientRect().height / innerHeight, wrong];
}"""


@pytest.fixture(scope="module")
def devices(browser: Browser, served: str) -> Iterator[Callable[[bool], Page]]:
    """Gives the ticket on a device that is held in a hand or is not, the same for all sizes of screen and letters."""
    opened: dict[bool, Page] = {}

    def device(held: bool) -> Page:
        if held not in opened:
            opened[held] = elsewhere(browser, served, has_touch=held, is_mobile=held, reduced_motion="reduce")
            open_ticket(opened[held])
        return opened[held]

    yield device
    for page in opened.values():
        page.context.close()


@pytest.mark.parametrize(
    ("across", "down", "text", "least"),
    [
        (390, 844, 1, 0.71),
        (320, 568, 1, 0.6),
        (844, 390, 1, 0.85),
        (1280, 800, 1, 0.69),
        (390, 844, 2, 0.3),
        (844, 390, 2, 0.4),
    ],
)
def test_at_the_machine_nothing_lies_on_anything_and_the_step_has_the_room(
    devices: Callable[[bool], Page], across: int, down: int, text: float, least: float
):
    page = devices(across < 1000)
    page.set_viewport_size({"width": across, "height": down})
    page.evaluate(
        "text => { const root = document.documentElement; root.style.fontSize = ''; root.style.fontSize = "
        "`${parseFloat(getComputedStyle(root).fontSize) * text}px`; }",
        text,
    )
    page.get_by_role("button", name="At the machine").click()
    steps, seen = page.locator(".ticket-step"), []
    for number in range(steps.count()):
        expect(steps.nth(number)).to_have_class(re.compile(r"\bnow\b"))
        seen.append(page.evaluate(AROUND_THE_STEP))
        page.keyboard.press("ArrowRight")
    back_to_the_first(page)
    assert [wrong for _, wrong in seen if wrong] == []
    assert min(share for share, _ in seen) >= least


def test_any_bundle_is_ticked_by_its_own_box(phone: Page):
    third = phone.get_by_role("button", name="Bundle 3: Second fold")
    third.tap()
    counted(phone, "2 of 3 bundles done: 12 of 18 pieces.")
    expect(third).to_have_attribute("aria-pressed", "true")
    expect(phone.get_by_role("button", name="Bundle 2: Second fold")).to_have_attribute("aria-pressed", "false")
    phone.reload()
    expect(third).to_have_attribute("aria-pressed", "true", timeout=WAKING)
    expect(now(phone)).to_have_count(1)  # it takes the focus when it goes on
    third.focus()
    phone.keyboard.press("Enter")
    counted(phone, "1 of 3 bundles done: 6 of 18 pieces.")
    assert phone.evaluate("document.activeElement.textContent").lstrip("✓") == "Bundle 3: Second fold, to piece 18", (
        "the finger of a keyboard stays where it was"
    )


def test_every_button_at_the_machine_is_large_and_nothing_around_it_can_be_reached(phone: Page):
    boxes = phone.locator(".at-machine button:visible:not(.boxed)").evaluate_all(
        "them => them.map((it) => it.getBoundingClientRect()).map(({ width, height }) => [width, height])"
    )
    assert len(boxes) == 5 and all(min(box) >= 44 for box in boxes)
    to_tick = phone.locator(".now button.boxed").evaluate_all(
        "them => them.map((it) => it.getBoundingClientRect()).map(({ width, height }) => [width, height])"
    )
    assert len(to_tick) == 3 and all(min(box) >= 44 for box in to_tick)
    ways = [phone.locator(f".machine-ways [data-do={each}]").bounding_box() for each in ("back", "less", "onward")]
    assert all(each["y"] > 844 * 0.75 and min(each["width"], each["height"]) >= 64 for each in ways)
    assert len({each["y"] for each in ways}) == 1, "they share a row"
    assert (
        phone.evaluate(
            "[...document.querySelectorAll('a, button, input, select')].filter((it) => it.checkVisibility() && "
            "!it.closest('[inert]') && !it.closest('.at-machine')).length"
        )
        == 0
    )


def test_the_way_back_of_the_device_does_not_leave(phone: Page):
    before = phone.evaluate("history.length")
    phone.evaluate(
        "new Promise((gone) => { addEventListener('popstate', gone, { once: true }); history.back(); }).then(() => "
        "undefined)"
    )
    expect(now(phone)).to_contain_text("Second fold", timeout=WAKING)
    assert phone.url.endswith(TICKET[1:]) and phone.evaluate("history.length") >= before


def test_it_says_plainly_whether_the_screen_stays_on(phone: Page):
    said = phone.locator(".wake")
    expect(said).to_have_text(re.compile("The screen stays on|may go dark"))
    phone.evaluate("Object.defineProperty(navigator, 'wakeLock', { value: undefined, configurable: true })")
    phone.get_by_role("button", name="Leave").tap()
    in_focus(phone, "At the machine")
    expect(phone.locator(".at-machine")).to_have_count(0)
    phone.get_by_role("button", name="At the machine").tap()
    expect(said.locator("[data-wake=off]")).to_be_visible()
    phone.keyboard.press("Escape")
    expect(phone.locator(".at-machine")).to_have_count(0)
