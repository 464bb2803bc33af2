"""The work ticket on a phone: ticked, carried on after the page is loaded again, measured, and printed on two pages."""

import io
import re
from collections.abc import Iterator

import pdfplumber
import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import ANSWERS_HELD_BACK, WAKING, elsewhere, hold_back, let_through
from tests.same_origin import strangers

TICKET = "./house/ticket/"


@pytest.fixture(scope="module")
def phone(browser: Browser, served: str) -> Iterator[Page]:
    """One page in one profile for all tests of this file, which follow one another as a day's work does."""
    context = browser.new_context(
        base_url=f"{served}/", viewport={"width": 390, "height": 844}, has_touch=True, reduced_motion="reduce"
    )
    asked_for: list[str] = []
    broken: list[str] = []
    context.on("request", lambda request: asked_for.append(request.url))
    context.on("weberror", lambda problem: broken.append(str(problem.error)))
    context.on(
        "console", lambda message: broken.append(message.text) if "Content Security Policy" in message.text else None
    )
    page = context.new_page()
    page.goto(TICKET)
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)
    yield page
    context.close()
    assert strangers(asked_for, served) == []
    assert broken == []


def now(page: Page):
    return page.locator(".ticket-step.now")


def in_focus(page: Page, words: str) -> None:
    """Wait until what has the focus says this: a tap may arrive in the page after the next question to it."""
    expect(page.locator(":focus")).to_have_text(words)


def counted(page: Page, words: str) -> None:
    expect(now(page).locator(".count")).to_contain_text(words, timeout=WAKING)


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


#: Of every step at the machine that has a drawing: how much of it is in sight, whether more is said to stand below, and
#: how high it is.
DRAWING_IN_SIGHT = """() => {
    const what = document.querySelector(".now .what"), drawing = what.querySelector("figure.drawing");
    if (!drawing) return null;
    const [frame, box] = [what, drawing].map((each) => each.getBoundingClientRect());
    return [Math.max(0, Math.min(box.bottom, frame.bottom) - box.top) / box.height,
        document.querySelector(".machine.has-more") !== null, box.height];
}"""


@pytest.mark.parametrize(("across", "down"), [(390, 844), (390, 664), (360, 600), (844, 390)])
def test_at_the_machine_no_drawing_is_cut_by_the_buttons(browser: Browser, served: str, across: int, down: int):
    page = elsewhere(
        browser, served, viewport={"width": across, "height": down}, has_touch=True, reduced_motion="reduce"
    )
    page.goto(TICKET)
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)
    page.get_by_role("button", name="At the machine").tap()
    steps = page.locator(".ticket-step")
    expect(steps.first).to_have_class(re.compile(r"\bnow\b"))
    seen = []
    for number in range(1, steps.count()):
        page.locator(".machine-top [data-do=next]").tap()
        expect(steps.nth(number)).to_have_class(re.compile(r"\bnow\b"))
        seen.append(page.evaluate(DRAWING_IN_SIGHT))
    page.context.close()
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
    page.goto(TICKET)
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)
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
    page.goto(TICKET)
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)
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
    browser: Browser, served: str, across: int, down: int, text: float, least: float
):
    page = elsewhere(
        browser,
        served,
        viewport={"width": across, "height": down},
        has_touch=across < 1000,
        is_mobile=across < 1000,
        reduced_motion="reduce",
    )
    page.goto(TICKET)
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)
    page.evaluate(
        "text => { const root = document.documentElement; root.style.fontSize = "
        "`${parseFloat(getComputedStyle(root).fontSize) * text}px`; }",
        text,
    )
    page.get_by_role("button", name="At the machine").click()
    steps, seen = page.locator(".ticket-step"), []
    for number in range(steps.count()):
        expect(steps.nth(number)).to_have_class(re.compile(r"\bnow\b"))
        seen.append(page.evaluate(AROUND_THE_STEP))
        page.keyboard.press("ArrowRight")
    page.context.close()
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


def test_a_measured_size_is_compared_and_a_bad_one_gets_one_sentence(phone: Page):
    blank, said = phone.locator('[name="7.width"]'), phone.locator('[data-size="7.width"]')
    blank.fill("40 banana")
    blank.blur()
    expect(said).to_contain_text("is not a length", timeout=WAKING)
    expect(blank).to_have_attribute("aria-invalid", "true")
    phone.reload()
    expect(said).to_contain_text("is not a length", timeout=WAKING)
    expect(blank).to_have_value("40 banana")  # nothing that was typed is lost
    blank.fill("40.2")
    blank.blur()
    expect(said).to_have_text("2 mm wider than the ticket says; within 4 mm.", timeout=WAKING)
    expect(blank).to_have_value("40.2 cm")


def test_several_pieces_are_measured_with_their_diagonals(phone: Page):
    for name, text in (("8.width", "39.8"), ("7.diagonal_1", "56.6"), ("7.diagonal_2", "57.2")):
        phone.locator(f'[name="{name}"]').fill(text)
        phone.locator(f'[name="{name}"]').blur()
    expect(phone.locator('[data-size="7.square"]')).to_have_text(
        "The diagonals differ by 6 mm, more than the 5 mm allowed: not square, put it aside.", timeout=WAKING
    )
    expect(phone.locator(".all-sizes")).to_have_text(
        "Width of 2 pieces: 40 cm in the mean, as the ticket says; from the smallest to the largest it is 4 mm."
    )
    assert phone.evaluate("document.documentElement.scrollWidth") == 390


def test_on_paper_what_is_said_of_a_size_has_the_line_below_its_blanks(phone: Page):
    phone.emulate_media(media="print")
    line = phone.locator(".size-line", has=phone.locator('[name="7.width"]'))
    whole, which, blank, said = (
        each.bounding_box()
        for each in (
            line,
            line.locator(".which"),
            line.locator('[name="7.width"]'),
            line.locator('[data-size="7.width"]'),
        )
    )
    phone.emulate_media(media="null")
    assert said["width"] > 0.6 * whole["width"] and said["y"] >= blank["y"] + blank["height"] - 1
    assert which["x"] + which["width"] <= blank["x"] and abs(which["y"] - blank["y"]) < blank["height"]


def test_what_is_being_measured_while_the_ticket_is_drawn_afresh_is_kept(browser: Browser, served: str):
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844})
    page.context.add_init_script(ANSWERS_HELD_BACK)
    page.goto(TICKET)
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)
    hold_back(page)
    page.locator("[name=cloth]").select_option("Half linen, light")
    size = page.locator('[name="7.width"]')
    size.press_sequentially("40.2")
    let_through(page)
    expect(page.locator("[data-setting=needle]")).to_contain_text("80/12", timeout=WAKING)
    expect(size).to_be_focused()
    expect(size).to_have_value("40.2")
    page.keyboard.press("Tab")
    expect(size).to_have_value("40.2 cm", timeout=WAKING)
    page.reload()
    expect(size).to_have_value("40.2 cm", timeout=WAKING)
    page.context.close()


def test_what_was_ticked_and_measured_stays_and_the_work_goes_on_without_a_network(phone: Page):
    phone.reload()
    expect(phone.locator('[data-ticks="hem"] .count')).to_contain_text("1 of 3 bundles", timeout=WAKING)
    expect(phone.locator('[name="7.width"]')).to_have_value("40.2 cm")
    expect(phone.locator('[name="7.diagonal_2"]')).to_have_value("57.2 cm")
    phone.wait_for_function(
        "() => navigator.serviceWorker.controller !== null", timeout=WAKING
    )  # the handbook is kept: letters not used yet come from it
    phone.context.set_offline(True)
    phone.locator('[name="bundle"]').fill("9")
    phone.locator('[name="bundle"]').blur()
    expect(phone.locator(".order")).to_contain_text("2 bundles of 9", timeout=WAKING)
    phone.get_by_role("button", name="+1 bundle: Trim").tap()
    expect(phone.locator('[data-ticks="trim"] .count')).to_contain_text("9 of 18 pieces", timeout=WAKING)
    phone.context.set_offline(False)


@pytest.mark.parametrize(("paper", "ruler", "check"), [("A4", "cm 1/10", "276 cm"), ("Letter", "in 1/16", "108 in")])
def test_it_prints_on_two_pages_with_the_check_mark(phone: Page, paper: str, ruler: str, check: str):
    phone.locator(".ruler-choice select").select_option(ruler)
    expect(phone.locator(".check-mark").first).to_contain_text(check, timeout=WAKING)
    with pdfplumber.open(io.BytesIO(phone.pdf(format=paper, prefer_css_page_size=True))) as pdf:
        words = [page.extract_text() for page in pdf.pages]
        assert len(words) == 2
        assert f"last mark must read {check}" in words[0].replace("\n", " ")
        assert "Second fold" in words[1] and "Measured sizes" in words[1]
        assert words[1].startswith("Steps: This batch"), "the second page may lie alone"
        today = re.compile(r"Printed \d{1,2} [A-Z][a-z]+ 20\d\d")
        assert all(today.search(page.split("Begun")[0][:300]) for page in words), "and either says of which day it is"
        assert "At the machine" not in words[0] + words[1]


def test_a_job_has_its_ticket_and_keeps_what_is_ticked_and_settled_on_it(browser: Browser, served: str):
    phone = elsewhere(
        browser, served, viewport={"width": 390, "height": 844}, has_touch=True, reduced_motion="reduce"
    )  # where nothing is ticked yet that a new job could take over
    phone.goto("./batch/")
    phone.locator("section[data-calculator=finished-size] [name=hem]").fill("3 cm")
    phone.get_by_role("button", name="Keep this as a job").tap()
    name = phone.locator(".job-in-hand [name=name]")
    expect(name).to_have_value(re.compile("Job of"), timeout=WAKING)
    name.fill("Long table")
    name.blur()
    expect(phone.locator(".job-in-hand > .said")).to_contain_text("Kept", timeout=WAKING)
    phone.locator(".to-ticket").tap()
    expect(phone.locator("#ticket-name")).to_have_text("Long table", timeout=WAKING)
    assert phone.locator(".ticket-step .of-job:visible").count() == 0
    phone.get_by_role("button", name="At the machine").tap()
    expect(now(phone).locator(".place")).to_have_text(re.compile("^Step 1 of .* · Long table$"))
    expect(now(phone).locator(".of-job")).to_be_visible()
    phone.get_by_role("button", name="Leave").tap()
    phone.get_by_role("button", name="+1 bundle: Pin the corners").tap()
    expect(phone.locator('[data-ticks="pin"] .count')).to_contain_text(re.compile("1 of . bundles"), timeout=WAKING)
    phone.locator("[name=cloth]").select_option("Half linen, light")
    expect(phone.locator("[data-setting=needle]")).to_contain_text("80/12", timeout=WAKING)
    phone.reload()
    expect(phone.locator("#ticket-name")).to_have_text("Long table", timeout=WAKING)
    expect(phone.locator('[data-ticks="pin"] .count')).to_contain_text(re.compile("1 of . bundles"))
    expect(phone.locator("[data-setting=needle]")).to_contain_text("80/12")
    phone.context.close()


#: A box on paper against the words of the step beside it: [box side in mm, whether it lies on a title].
BOXES = """() => [...document.querySelectorAll(".ticket-step")].flatMap((step) => {
    const range = document.createRange();
    range.selectNodeContents(step.querySelector("h3"));
    const words = [...range.getClientRects()];
    return [...step.querySelectorAll(".box")].map((each) => {
        const box = each.getBoundingClientRect();
        const on = words.some((line) => line.right > box.left + 1 && line.left < box.right - 1 &&
            line.bottom > box.top + 1 && line.top < box.bottom - 1);
        return [(Math.min(box.width, box.height) * 25.4) / 96, on];
    });
})"""


@pytest.mark.parametrize(("pieces", "cloth"), [(1, ""), (24, "6 m"), (54, "16 m"), (90, "16 m"), (519, "84 m")])
def test_any_order_prints_on_two_pages_with_boxes_to_tick_by_hand(
    browser: Browser, served: str, pieces: int, cloth: str
):
    page = elsewhere(browser, served, viewport={"width": 722, "height": 1000})  # as wide as the text of an A4 page
    page.goto("./batch/")
    page.locator("[data-calculator=order] [name=ordered]").fill(str(pieces))
    if cloth:
        page.locator("[data-calculator=wash-test] details.more > summary").click()
        page.locator("[data-calculator=wash-test] [name=cloth_length]").fill(cloth)
    page.goto(TICKET)
    expect(page.locator(".ticket.is-live .order")).to_contain_text(re.compile(f"^{pieces} piece"), timeout=WAKING)
    for paper in ("A4", "Letter"):
        with pdfplumber.open(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True))) as pdf:
            words = [each.extract_text() for each in pdf.pages]
            outside = [
                word["text"]
                for each in pdf.pages
                for word in each.extract_words()
                if word["x1"] > each.width or word["bottom"] > each.height or word["x0"] < 0
            ]
        assert len(words) == 2, paper
        assert outside == []
        assert "The maker’s manual of each tool" in words[0] and "Measured sizes" in words[1]
    page.emulate_media(media="print")
    found = page.evaluate(BOXES)
    page.context.close()
    assert min(side for side, _ in found) >= 4 - 0.05
    assert not any(on for _, on in found), "no box lies on a title"


@pytest.mark.parametrize(
    ("figure", "name"),
    [
        ("five spools of the grey", "Long table"),
        ("five spools of the grey thread from the second shelf " * 8, "Long table, again " * 4),
        ("M" * 400, "N" * 80),
    ],
)
def test_own_figures_stand_on_the_printed_ticket_and_leave_it_on_two_pages(
    browser: Browser, served: str, figure: str, name: str
):
    """However long her own words are; on the screen they stand whole, and the page is no wider than a phone."""
    context = browser.new_context(base_url=f"{served}/", viewport={"width": 722, "height": 1000})
    context.add_init_script("delete Navigator.prototype.serviceWorker")
    page = context.new_page()
    page.goto("./batch/")
    page.get_by_role("button", name="Keep this as a job").click()
    expect(page.locator(".job-in-hand [name=name]")).to_be_visible(timeout=WAKING)
    page.locator("[data-calculator=order] [name=ordered]").fill("54")
    page.locator("[data-calculator=wash-test] details.more > summary").click()
    page.locator("[data-calculator=wash-test] [name=cloth_length]").fill("16 m")
    for blank, text in {
        "input[name=name]": name,
        "input[name=cloth]": name,
        "textarea[name=thread]": figure,
        "textarea[name=time]": f"two days {figure}",
        "textarea[name=cost]": f"seven hundred {figure}",
    }.items():
        page.locator(f".jobs {blank}").fill(text)
        page.locator(f".jobs {blank}").blur()
    page.wait_for_timeout(1000)
    page.goto(TICKET)
    expect(page.locator("[data-setting=sum-cost]")).to_contain_text(f"seven hundred {figure.strip()}", timeout=WAKING)
    for paper in ("A4", "Letter"):
        with pdfplumber.open(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True))) as pdf:
            words = [each.extract_text() for each in pdf.pages]
        assert len(words) == 2, paper
        assert (
            "The maker’s manual of each tool" in words[0]
            and "two days" in words[0]
            and (figure[:20] in words[0] or " " not in figure)
        )
    page.set_viewport_size({"width": 390, "height": 844})
    assert page.evaluate("document.documentElement.scrollWidth") == 390
    assert page.evaluate(
        "[...document.querySelectorAll('.settings dd')].every((each) => each.scrollHeight <= each.clientHeight + 1)"
    ), "nothing is cut off on the screen"
    context.close()
