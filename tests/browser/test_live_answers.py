"""Typing changes answer and drawing at once, and what was typed stays."""

import json
import re
from collections.abc import Iterator
from urllib.parse import quote

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.browser.reader import (
    ANSWERS_HELD_BACK,
    WAKING,
    answered,
    blank,
    calculator,
    choose_ruler,
    hold_back,
    let_through,
    nothing_amiss,
    one_window,
    profile,
    reached,
    refusal,
    says,
    scripts_held_back,
    spoken,
    until,
)

pytestmark = one_window
PIECES = "plan/pieces/"


def open_pieces(page: Page, path: str = PIECES):
    page.goto(f"./{path}")
    return calculator(page, "pieces-from-cloth")


@pytest.fixture(scope="module")
def one_visit(browser: Browser, served: str) -> Iterator[Page]:
    """A phone's page for whatever needs no profile of its own."""
    context = profile(browser, served, viewport={"width": 390, "height": 844}, reduced_motion="reduce")
    with nothing_amiss(context, served):
        page = context.new_page()
        page.goto(f"./{PIECES}")
        yield page


@pytest.fixture
def section(one_visit: Page, width: int) -> Iterator[Locator]:
    """A calculator with the house's numbers on the ruler that it begins with."""
    found = calculator(one_visit, "pieces-from-cloth")
    yield found
    choose_ruler(one_visit, "cm 1/10")
    afresh = found.get_by_role("button", name="house’s numbers")
    answered(one_visit)
    if afresh.is_visible():
        afresh.click()
    expect(afresh).to_be_hidden()
    answered(one_visit)


def fill(section, **texts):
    for name, text in texts.items():
        blank(section, name).fill(text)


ISSUE_CLOTH = {"cloth_width": "113 cm", "cloth_length": "252 cm", "piece_width": "36 cm", "piece_length": "36 cm"}


def test_answer_marks_and_drawing_follow_what_is_typed_without_a_page_load(page: Page):
    """Arithmetic: 113 − 2 × 1.5 = 110, 110 ÷ 36 → 3 across, 4 × 63 ÷ 36 → 7 along; at 250 cm seven fit at 250 ÷ 7 ≈
    35.7 cm."""
    section = open_pieces(page)
    page.evaluate("window.sameVisit = true")
    drawing = section.locator("figure.drawing > svg")
    before = drawing.inner_html()
    fill(section, **ISSUE_CLOTH)
    says(section, "21 pieces: 3 across, 7 along")
    assert drawing.inner_html() != before
    expect(drawing).to_have_attribute("aria-label", re.compile("7 pieces along its length, 3 across its width"))
    expect(section.locator(".marks").last.locator("li")).to_have_count(7)
    expect(section.locator(".marks").last.locator("li").last).to_contain_text("252 cm")
    fill(section, cloth_length="250 cm")
    says(section, "18 pieces: 3 across, 6 along")
    expect(section.locator("tr").filter(has_text=re.compile(r"7 along.*21")).first).to_contain_text("about 35.7 cm")
    assert page.evaluate("window.sameVisit") is True


def test_one_keystroke_after_another(section: Locator):
    """Every step on the way is either answered or asked again; the end counts."""
    piece = blank(section, "piece_width")
    piece.fill("")
    piece.press_sequentially("14 1/4 in", delay=15)
    piece.press("Tab")
    expect(refusal(section, "piece_width")).to_be_hidden(timeout=WAKING)
    says(section, "4 across")
    expect(piece).to_have_value("14 1/4 in")


def test_what_is_typed_and_left_at_once_is_kept(section: Locator):
    piece = blank(section, "piece_width")
    piece.fill("36")
    says(section, "4 across")
    piece.press("Tab")
    expect(piece).to_have_value("36 cm")
    for text, across in (("40", 3), ("50", 2), ("70", 2), ("30", 4)):
        piece.fill(text)
        piece.press("Tab")
        expect(piece).to_have_value(f"{text} cm")
        says(section, f"{across} across")


def test_enter_neither_loads_the_page_nor_loses_anything(section: Locator):
    page = section.page
    page.evaluate("window.sameVisit = true")
    piece = blank(section, "piece_width")
    piece.fill("36 cm")
    piece.press("Enter")
    says(section, "4 across")
    assert page.evaluate("window.sameVisit") is True
    expect(piece).to_have_value("36 cm")


def test_inches_with_fractions(section: Locator):
    choose_ruler(section.page, "in 1/16")
    expect(blank(section, "piece_width")).to_have_value("18 in", timeout=WAKING)
    fill(section, cloth_width="61", cloth_length="3 yd", piece_width="14 1/4", piece_length='14 1/4"')
    says(section, "28 pieces: 4 across, 7 along")
    expect(section.locator(".marks").last.locator("li").nth(1)).to_contain_text("28 1/2 in")
    expect(section.locator("figure.drawing svg text", has_text="in").first).to_be_visible()
    blank(section, "least_width").click()
    expect(blank(section, "piece_width")).to_have_value("14 1/4 in")
    choose_ruler(section.page, "cm 1/10")
    expect(section.locator(".marks").last.locator("li").first).to_contain_text("cm", timeout=WAKING)
    says(section, "28 pieces")
    expect(blank(section, "piece_width")).to_have_value("14 1/4 in")


def test_a_bare_number_keeps_its_meaning_when_the_ruler_changes_at_once(section: Locator):
    blank(section, "piece_width").fill("36")
    choose_ruler(section.page, "in 1/16")
    expect(blank(section, "piece_width")).to_have_value("36 cm", timeout=WAKING)
    says(section, "4 across")


def test_a_bare_number_is_meant_on_the_ruler_in_hand_when_it_was_written_however_late_python_reads_it(page: Page):
    page.add_init_script(ANSWERS_HELD_BACK)
    section = open_pieces(page)
    expect(page.locator(".ruler-choice")).to_be_visible()
    hold_back(page)
    fill(section, piece_width="36")
    choose_ruler(page, "in 1/16")
    fill(section, piece_length="14 1/4")
    choose_ruler(page, "mm 1")
    fill(section, least_width="355")
    choose_ruler(page, "in 1/16")
    let_through(page)
    expect(blank(section, "piece_width")).to_have_value("36 cm", timeout=WAKING)
    expect(blank(section, "piece_length")).to_have_value("14 1/4 in")
    expect(blank(section, "least_width")).to_have_value("355 mm")
    says(section, "4 across, 8 along")


def test_the_ruler_is_kept_on_other_pages_and_after_a_reload(page: Page):
    open_pieces(page)
    choose_ruler(page, "in 1/8")
    page.goto("./corners/mitre/")
    says(calculator(page, "mitre-marks"), " in")
    expect(page.locator(".ruler-choice select")).to_have_value("in 1/8")
    page.reload()
    says(calculator(page, "mitre-marks"), " in")


def test_a_ruler_that_is_no_longer_offered_is_no_trouble(page: Page):
    open_pieces(page)
    page.evaluate(
        "for (const key of Object.keys(localStorage)) 0; localStorage.setItem('/ruler', JSON.stringify('cubit'))"
    )
    section = open_pieces(page)
    fill(section, piece_width="36 cm")
    says(section, "4 across")
    assert page.locator(".ruler-choice select").input_value() != ""


def test_what_was_typed_survives_moving_to_another_page_and_back(page: Page):
    section = open_pieces(page)
    fill(section, **ISSUE_CLOTH)
    says(section, "21 pieces")
    page.evaluate("window.sameVisit = true")
    page.locator("article a[href*='corners/mitre']").first.click() if page.locator(
        "article a[href*='corners/mitre']"
    ).count() else page.goto("./corners/mitre/")
    expect(calculator(page, "mitre-marks")).to_be_visible()
    page.go_back()
    section = calculator(page, "pieces-from-cloth")
    says(section, "21 pieces")
    expect(blank(section, "piece_width")).to_have_value("36 cm")


def test_what_was_typed_survives_a_reload(page: Page):
    section = open_pieces(page)
    fill(section, **ISSUE_CLOTH, least_width="30 cm")
    says(section, "21 pieces")
    page.reload()
    section = calculator(page, "pieces-from-cloth")
    says(section, "21 pieces")
    assert {name: section.locator(f'[name="{name}"]').input_value() for name in ISSUE_CLOTH} == ISSUE_CLOTH
    expect(section.locator('[name="least_width"]')).to_have_value("30 cm")


def test_a_width_kept_or_linked_before_selvedges_were_asked_for_stays_one_without_them(page: Page):
    """Arithmetic: 110 cm hold 3 pieces of 36 cm; less two selvedges of 1.5 cm they would hold 2."""
    section = open_pieces(page)
    fill(section, cloth_width="110 cm", piece_width="36 cm", least_width="30 cm")
    says(section, "2 across")
    page.evaluate(
        """() => {
            const key = Object.keys(localStorage).find((name) => name.endsWith("typed/pieces-from-cloth"));
            for (const name of Object.keys(localStorage)) if (name.includes("in-hand/")) localStorage.removeItem(name);
            const texts = { cloth_width: "110 cm", piece_width: "36 cm" };
            localStorage.setItem(key, JSON.stringify({ texts, readOn: "" }));
        }"""
    )
    page.reload()
    says(section, "3 across")
    expect(blank(section, "measured")).to_have_value("trimmed")
    blank(section, "measured").select_option("selvedges")
    says(section, "2 across")
    page.reload()
    says(section, "2 across")
    page.goto("./#")
    page.goto(
        "./plan/pieces/#carries="
        + quote(json.dumps({"name": "pieces-from-cloth", "texts": {"cloth_width": "110 cm", "piece_width": "36 cm"}}))
    )
    page.get_by_role("button", name="Use these numbers").click()
    says(section, "3 across")


def test_until_python_is_awake_the_page_s_own_answer_is_not_shown_as_the_answer_to_what_was_typed(page: Page):
    section = open_pieces(page)
    fill(section, **ISSUE_CLOTH)
    says(section, "21 pieces")
    page.route("**/assets/runtime/**", lambda route: None)  # never answered: Python keeps waking
    page.reload()
    section = calculator(page, "pieces-from-cloth")
    expect(section.locator('[name="piece_width"]')).to_have_value("36 cm")
    expect(section.locator(".answer")).to_have_class(re.compile("is-old"))
    expect(section.locator(".old-answer")).to_be_visible()


def test_a_measure_that_two_calculators_of_a_page_ask_for_is_written_once(page: Page):
    """Equal hems of 3 cm at a square corner: mark at twice the hem, 6 cm."""
    page.goto("./corners/mitre/")
    marks, steps = calculator(page, "mitre-marks"), calculator(page, "corner-steps")
    fill(marks, hem_1="3", hem_2="3 cm")
    says(marks, "Mark 6 cm")
    expect(blank(steps, "hem_1")).to_have_value("3 cm", timeout=WAKING)
    expect(blank(steps, "hem_2")).to_have_value("3 cm")
    expect(steps.locator("li", has_text="Fold the hem, ")).to_contain_text("3 cm", timeout=WAKING)
    blank(steps, "hem_2").fill("5 banana")
    for each in (marks, steps):
        expect(refusal(each, "hem_2")).to_contain_text("5 banana", timeout=WAKING)
    blank(steps, "hem_2").fill("5 cm")
    blank(steps, "hem_2").blur()
    says(marks, re.compile("Mark 10.cm on edge 1 and 6.cm on edge 2"))
    page.goto("./corners/self-bound/")
    page.goto("./corners/mitre/")
    for each in (marks, steps):
        expect(blank(each, "hem_2")).to_have_value("5 cm")
    marks.get_by_role("button", name="Back to the house’s numbers").click()
    says(marks, "Mark 4 cm")
    expect(blank(steps, "hem_2")).to_have_value("2 cm", timeout=WAKING)
    expect(steps.get_by_role("button", name="Back to the house’s numbers")).to_be_hidden()


def test_back_to_the_house_s_numbers(page: Page):
    section = open_pieces(page)
    house = {name: section.locator(f'[name="{name}"]').input_value() for name in ISSUE_CLOTH}
    sentence = spoken(section).inner_text()
    afresh = section.get_by_role("button", name="house’s numbers")
    expect(afresh).to_be_hidden()
    fill(section, **ISSUE_CLOTH)
    says(section, "21 pieces")
    afresh.click()
    says(section, sentence)
    for name, text in house.items():
        expect(section.locator(f'[name="{name}"]')).to_have_value(text)
    expect(afresh).to_be_hidden()
    page.reload()
    expect(section.locator('[name="piece_width"]')).to_have_value(house["piece_width"])


def test_a_blank_that_is_emptied_and_left_goes_back_to_the_house_s_number(section: Locator):
    piece = blank(section, "piece_width")
    house, sentence = piece.input_value(), spoken(section).inner_text()
    piece.fill("36 cm")
    says(section, "4 across")
    piece.fill("")
    expect(refusal(section, "piece_width")).to_contain_text("such as", timeout=WAKING)
    piece.press("Tab")
    expect(refusal(section, "piece_width")).to_be_hidden()
    says(section, sentence)
    expect(piece).to_have_value(house)
    expect(piece).not_to_have_attribute("aria-invalid", "true")


def test_what_is_typed_never_becomes_part_of_the_page(section: Locator):
    page = section.page
    page.evaluate("window.alert = () => (window.alerted = true); 0")
    for nasty in ("<img src=x onerror=alert(1)>", "<script>alert(1)</script>", '"><svg onload=alert(1)>'):
        fill(section, piece_width=nasty)
        expect(refusal(section, "piece_width")).to_contain_text(nasty[:10], timeout=WAKING)
    assert section.locator("img, script, [onload], [onerror]").count() == 0
    assert page.evaluate("window.alerted") is None


def test_open_drawers_stay_open_while_the_answer_changes(section: Locator):
    working = section.locator("details.working")
    working.locator("summary").click()
    fill(section, piece_width="36 cm")
    says(section, "4 across")
    expect(working).to_have_attribute("open", "")


def pythons(page: Page) -> list:
    return [worker for worker in page.workers if worker.url.endswith("python-worker.js")]


def test_what_is_written_before_the_scripts_have_come_is_answered(page: Page):
    with scripts_held_back(page):
        page.goto(f"./{PIECES}", wait_until="commit")
        section = calculator(page, "pieces-from-cloth")
        fill(section, **ISSUE_CLOTH)
    says(section, "21 pieces: 3 across, 7 along")
    expect(blank(section, "piece_width")).to_have_value("36 cm")
    page.reload()
    says(section, "21 pieces: 3 across, 7 along")


def test_two_calculators_on_one_visit_answer_from_one_python(page: Page):
    section = open_pieces(page)
    fill(section, piece_width="36 cm")
    says(section, "4 across")
    assert len(pythons(page)) == 1
    page.locator("nav a[href*='corners/mitre']").first.evaluate("link => link.click()")
    mitre = calculator(page, "mitre-marks")
    blank(mitre, "hem_1").fill("1 in")
    blank(mitre, "hem_2").fill("1 in")
    says(mitre, "about 5.1 cm")
    assert len(pythons(page)) == 1


def test_where_the_browser_is_full_the_visit_remembers_what_was_typed_last(page):
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    blank(section, "piece_width").fill("40 cm")
    says(section, "3 across")
    page.evaluate(
        "() => { Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }; }"
    )
    blank(section, "piece_width").fill("36 cm")
    says(section, "4 across")
    page.evaluate(
        "document.body.appendChild(Object.assign(document.createElement('a'), "
        "{ href: '../../corners/mitre/' })).click()"
    )
    expect(page.locator("h1")).to_contain_text("Mitre")
    page.go_back()
    expect(blank(calculator(page, "pieces-from-cloth"), "piece_width")).to_have_value("36 cm")


def test_the_link_that_carries_the_numbers_is_copied(page):
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.goto("./corners/mitre/")
    section = calculator(page, "mitre-marks")
    blank(section, "hem_1").fill("3 cm")
    says(section, "6 cm")
    section.locator(".carry").click()
    expect(section.locator(".carry")).to_have_text("Link copied")
    assert "#carries=" in page.evaluate("navigator.clipboard.readText()") and "#" not in page.url
    page.evaluate("async () => (location.hash = new URL(await navigator.clipboard.readText()).hash)")
    expect(page.locator(".offered")).to_have_count(1)


def test_numbers_that_came_with_a_link_wait_until_she_has_answered(page):
    page.goto("./corners/mitre/#carries=" + quote(json.dumps({"name": "mitre-marks", "texts": {"hem_1": "3 cm"}})))
    offered = page.locator(".offered")
    expect(offered).to_have_count(1)

    def away_and_back() -> None:
        for path in ("plan/pieces/", "corners/mitre/"):
            page.evaluate(
                "(href) => document.body.appendChild(Object.assign(document.createElement('a'), { href })).click()",
                f"../../{path}",
            )
            expect(page).to_have_url(re.compile(f"{path}$"))
        expect(blank(calculator(page, "mitre-marks"), "hem_1")).to_have_value(re.compile("cm"))

    away_and_back()
    expect(offered).not_to_contain_text("the ones you wrote here")  # she has written none
    offered.get_by_role("button", name="Leave them out").click()
    away_and_back()
    blank(calculator(page, "mitre-marks"), "hem_1").fill("4 cm")
    says(calculator(page, "mitre-marks"), "8 cm")
    expect(offered).to_have_count(0)
    arrived = quote(json.dumps({"name": "mitre-marks", "texts": {"hem_1": "5 cm"}}))
    page.evaluate("(arrived) => (location.hash = `#carries=${arrived}`)", arrived)
    expect(offered).to_contain_text("the ones you wrote here")
    offered.get_by_role("button", name="Keep mine").click()
    expect(blank(calculator(page, "mitre-marks"), "hem_1")).to_have_value("4 cm")


def test_the_pieces_of_an_article_go_along_to_the_lay_plan(page):
    page.goto("./projects/cushion-covers/")
    cover = calculator(page, "cushion-zip")
    reached(blank(cover, "count")).fill("6")
    link = cover.get_by_role("link", name="Lay them out on the cloth")
    expect(cover.locator(".notes")).to_contain_text("To cut: 18 pieces.")
    link.click()
    page.get_by_role("button", name="Use these numbers").click()
    says(calculator(page, "lay-plan"), "18 pieces")


def test_what_is_written_on_arrival_is_answered_before_what_follows_it(page):
    page.goto(f"./{PIECES}")
    blank(calculator(page, "pieces-from-cloth"), "piece_width").fill("37 cm")
    says(calculator(page, "pieces-from-cloth"), "pieces")
    page.evaluate("""() => {
        window.asked = [];
        const { postMessage } = Worker.prototype;
        Worker.prototype.postMessage = function (message, ...rest) {
            const question = message.request && JSON.parse(message.request);
            if (question?.typed?.turn === "1.3 cm") window.asked.push(question.calculator);
            return postMessage.call(this, message, ...rest);
        };
        document$.subscribe(({ body }) => {
            const turn = body.querySelector('[data-calculator="mitre-marks"] [name="turn"]');
            if (!turn) return;
            turn.value = "1.3 cm";
            turn.dispatchEvent(new Event("input", { bubbles: true }));
        });
        const home = document.querySelector(".md-header__button.md-logo").href;
        const link = Object.assign(document.createElement("a"), { href: new URL("corners/mitre/", home).href });
        document.body.appendChild(link).click();
    }""")
    until(page, "() => new Set(window.asked).size > 1")
    assert page.evaluate("window.asked[0]") == "mitre-marks"
