"""A page is read in glances: on a phone the answer and its drawing come within a screen, rows and steps are a line each
until they are tapped, and the answer stays in sight; `test_every_page.py` looks at how far down both are."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, blank, calculator, elsewhere, one_window, refusal, says

OF_THE_DAY = r"The handbook’s numbers \d{1,2} [A-Z][a-z]+ 20\d\d$"
LONGEST = {"corners/mitre/": 6000, "projects/curtains/": 6500}  # [px]

#: What stands at the head of a sheet while a page prints, and how many heads there are once it is printed.
HEAD_OF_A_SHEET = """() => {
    dispatchEvent(new Event("beforeprint"));
    const heads = [...document.querySelectorAll(".md-content__inner > .sheet-head:first-child")];
    const said = heads.map((each) => [...each.querySelectorAll("span")].at(-2).textContent + " " +
        each.querySelector(".day").textContent);
    dispatchEvent(new Event("afterprint"));
    return [...said, document.querySelectorAll(".sheet-head").length];
}"""


@one_window
def test_a_row_is_one_line_that_says_what_stands_in_it_until_it_is_tapped(page: Page):
    page.goto("./plan/lay-plan/")
    row = page.locator("table.rows[data-field=pieces] tbody tr").first
    line, blanks = row.locator(".open-row"), row.locator("input, select")
    expect(line).to_have_text("12× Napkin, 46\N{NO-BREAK SPACE}cm × 46\N{NO-BREAK SPACE}cm")
    expect(blanks.first).to_be_hidden()
    assert row.bounding_box()["height"] < 60  # [CSS px] a line to tap
    expect(page.locator("table.rows.live").first).to_be_visible()
    line.press("Enter")
    expect(line).to_have_attribute("aria-expanded", "true")
    assert [each.is_visible() for each in blanks.all()] == [True] * 4 + [False] * 3
    more = row.locator(".open-more")
    more.press("Enter")
    expect(more).to_have_attribute("aria-expanded", "true")
    assert all(each.is_visible() for each in blanks.all())
    blanks.nth(3).fill("10")
    expect(line).to_contain_text("10× Napkin")
    line.press("Enter")
    expect(blanks.first).to_be_hidden()
    page.get_by_role("button", name="One more piece").click()
    new = page.locator("table.rows[data-field=pieces] tbody tr").last
    expect(new.locator("input").first).to_be_focused()
    expect(new.locator(".open-row")).to_have_text("Piece")


@one_window
def test_a_row_in_trouble_is_open_when_the_page_comes_back(page: Page):
    page.goto("./plan/lay-plan/")
    row = page.locator("table.rows[data-field=pieces] tbody tr").first
    row.locator(".open-row").click()
    row.locator("input").nth(1).fill("46 banana")
    expect(page.locator(".refusal[data-field=pieces]")).to_be_visible(timeout=WAKING)
    page.reload()
    expect(page.locator(".refusal[data-field=pieces]")).to_be_visible(timeout=WAKING)
    expect(row.locator("input").nth(1)).to_be_visible()


def test_rows_are_open_without_scripts(browser, served):
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844}, java_script_enabled=False)
    page.goto("./plan/lay-plan/")
    row = page.locator("table.rows[data-field=pieces] tbody tr").first
    expect(row.locator("input").first).to_be_visible()
    expect(row.locator(".open-row")).to_be_hidden()
    page.context.close()


@one_window
def test_the_batch_is_a_list_of_its_steps_with_their_answers(page: Page):
    page.goto("./batch/")
    steps = page.locator(".walk-step")
    assert not any(each.is_visible() for each in page.locator(".walk .calculator").all())
    assert page.evaluate("document.documentElement.scrollHeight") < 4 * 844
    pieces = steps.filter(has=page.get_by_role("heading", name="4. Pieces and marks"))
    expect(pieces.locator(".step-answer")).to_have_text("18 pieces: 3 across, 6 along.")
    wash = calculator(page, "wash-test")
    blank(wash, "cloth_width").fill("100 cm")
    expect(pieces.locator(".step-answer")).to_contain_text("2 across", timeout=WAKING)
    blank(calculator(page, "usable-cloth"), "selvedge").fill("36 banana")
    expect(refusal(calculator(page, "usable-cloth"), "selvedge")).to_be_visible(timeout=WAKING)
    usable = steps.filter(has=page.get_by_role("heading", name="3. What can be used of it"))
    usable.locator("summary").first.click()
    expect(usable.locator(".step-answer")).to_contain_text("banana")
    expect(pieces.locator(".step-answer")).to_contain_text("waits for")


@one_window
def test_the_answer_stays_in_sight_once_it_has_scrolled_away(page: Page):
    page.goto("./corners/mitre/")
    strip, section = page.locator(".answer-strip"), calculator(page, "mitre-marks")
    expect(strip).to_be_hidden()
    blank(section, "hem_1").fill("2.5 cm")
    blank(section, "hem_2").fill("2.5 cm")
    says(section, re.compile("5.cm"))
    page.get_by_role("heading", name="What goes wrong").scroll_into_view_if_needed()
    expect(strip).to_be_visible()
    expect(strip.locator("span")).to_have_text(re.compile("^Mark 5.cm$"))
    box = strip.bounding_box()
    assert 44 <= box["height"] < 50 and box["y"] + box["height"] == pytest.approx(844, abs=1)
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    foot = page.locator(".md-footer").bounding_box()
    expect(strip).to_be_visible()
    assert strip.bounding_box()["y"] + strip.bounding_box()["height"] <= foot["y"] + 1
    button = strip.get_by_role("button", name="Change the numbers")
    assert button.bounding_box()["height"] >= 44
    button.press("Enter")
    expect(blank(section, "hem_1")).to_be_focused()
    expect(strip).to_be_hidden()


@one_window
def test_the_strip_is_for_phones_and_never_on_paper(browser, served, page: Page):
    page.goto("./corners/mitre/")
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    expect(page.locator(".answer-strip")).to_be_visible()
    page.emulate_media(media="print")
    expect(page.locator(".answer-strip")).to_be_hidden()
    wide = elsewhere(browser, served, viewport={"width": 1280, "height": 844})
    wide.goto("./corners/mitre/")
    wide.evaluate("scrollTo(0, document.body.scrollHeight)")
    expect(wide.locator(".answer-strip:visible")).to_have_count(0)
    wide.context.close()
