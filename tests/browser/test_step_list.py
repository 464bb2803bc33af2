"""The steps of a corner on a page: small drawings beside commands, and reasons that open without
scripts."""

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import NO_PYTHON, WAKING, blank, calculator, elsewhere, one_window, refusal

SMALLEST, TO_MEASURE_IN = 127.5, 280  # [px] how wide a drawing is that shows how the cloth lies, or where to measure
CORNERS = ("mitre", "unequal", "any-angle", "folded", "faced", "border", "binding", "self-bound")
LIST = ".steps.in-order > ol > li"


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_drawings_stand_beside_their_commands_and_keep_their_size(browser: Browser, served: str, width: int):
    page = elsewhere(browser, served, viewport={"width": width, "height": 844})
    page.add_init_script(NO_PYTHON)
    for name in CORNERS:
        page.goto(f"./corners/{name}/")
        found = page.locator(LIST).evaluate_all(
            """(all) => all.filter((each) => each.checkVisibility()).map((each) => {
                const [words, drawn] = [".step-words", "svg"].map((at) =>
                    each.querySelector(at).getBoundingClientRect());
                return [each.className, drawn.width, drawn.right <= words.left, words.right <= innerWidth];
            })"""
        )
        assert len(found) > 5
        assert [
            each for each in found if each[1] < (SMALLEST if each[0] == "small" else min(TO_MEASURE_IN, width - 60))
        ] == []
        assert [each for each in found if not each[3] or (each[0] == "small" and not each[2])] == []
    page.context.close()


@one_window
def test_a_reason_opens_without_scripts(browser: Browser, served: str, width: int):
    page = elsewhere(browser, served, viewport={"width": width, "height": 844}, java_script_enabled=False)
    page.goto("./corners/mitre/")
    step = page.locator(LIST, has_text="Turn the corner right side out")
    expect(step).to_contain_text("not the shears")
    reason = step.get_by_text("Shears go through the cloth")
    expect(reason).to_be_hidden()
    step.locator("summary").click()
    expect(reason).to_be_visible()
    page.context.close()


def test_a_reason_that_was_opened_stays_open_when_the_numbers_change(page: Page):
    page.goto("./corners/mitre/")
    step = page.locator(LIST, has_text="Turn the corner right side out")
    step.locator("summary").click()
    blank(calculator(page, "mitre-marks"), "hem_1").fill("3 cm")
    expect(page.locator(LIST, has_text="Fold the hem, ")).to_contain_text("3 cm", timeout=WAKING)
    expect(step.locator("details")).to_have_attribute("open", "")


def test_what_only_the_steps_refuse_is_seen_although_their_form_is_folded(page: Page):
    """The marks take a corner of 25°, the folding does not."""
    page.goto("./corners/mitre/")
    marks, steps = calculator(page, "mitre-marks"), calculator(page, "corner-steps")
    blank(marks, "angle").fill("25")
    expect(refusal(steps, "angle")).to_be_visible(timeout=WAKING)
    blank(marks, "angle").fill("90")
    expect(steps.locator("details.asked-besides")).not_to_have_attribute("open", "", timeout=WAKING)


@pytest.mark.parametrize("width", [1280])
def test_on_a_wide_window_the_step_that_is_read_shows_its_drawing_over_the_answers(page: Page, width: int):
    """Whether it is scrolled to or in use; silently, and only there."""
    page.goto("./corners/mitre/")
    shown, steps = page.locator(".step-in-view"), page.locator(LIST)
    answers = page.locator(".kept-in-view .answer > figure.drawing")
    expect(shown).to_have_count(0)
    steps.nth(4).evaluate("(step) => step.scrollIntoView({ block: 'center' })")
    expect(shown).to_contain_text("5 Mark")
    over, own = shown.bounding_box(), answers.bounding_box()
    assert over == own and over["y"] >= 0, "its place is the answer's, and is seen"
    assert shown.evaluate("(it) => it.ariaHidden === 'true' && !it.closest('[aria-live], [role=status]')")
    steps.nth(7).locator("summary").focus()
    expect(shown).to_contain_text("8 Trim")
    blank(calculator(page, "mitre-marks"), "hem_1").focus()
    expect(shown).to_have_count(0)
    steps.nth(1).evaluate("(step) => step.scrollIntoView({ block: 'center' })")
    expect(shown).to_contain_text("2 Turn")
    page.set_viewport_size({"width": 1000, "height": 800})
    expect(shown).to_have_count(0)
    page.set_viewport_size({"width": 1280, "height": 800})
    page.evaluate("scrollTo(0, 0)")
    expect(shown).to_have_count(0)


@one_window
def test_a_mark_leads_to_its_note_and_the_note_back(page: Page, width: int):
    page.goto("./fold/hems/")
    mark = page.locator("sup.noted a").first
    mark.scroll_into_view_if_needed()
    page.wait_for_timeout(500)  # the theme notes where a page was scrolled to a little later
    mark.click()
    note = page.locator(".page-notes li").first
    expect(note).to_be_in_viewport()
    page.wait_for_timeout(500)
    note.locator(".way-back").first.click()
    expect(mark).to_be_in_viewport()
