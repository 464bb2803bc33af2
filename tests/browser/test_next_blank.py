"""Enter goes from blank to blank: the next one of the same calculator, table or step, its whole value selected; the
last one stays, and presses and sends nothing."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, calculator, one_window, reached
from tests.browser.test_whole_value import SELECTED, opened

#: Where blanks stand, and what holds those that belong together.
PLACES = {
    "behind more": "form",
    "order": "form",
    "batch": "form",
    "ticket": ".sizes",
    "house method": "section.house",
}
FAR_ENOUGH = 9  # blanks, of a long list

#: How many blanks of a place a reader sees; each is given its number.
SEEN = """(it, around) => [...it.closest(around).querySelectorAll("input[type=text], input:not([type])")]
    .filter((each) => each.getClientRects().length && !each.closest("details:not([open])"))
    .map((each, at) => (each.dataset.at = at)).length"""

PRESSES_NOTED = """() => { window.pressed = [];
    for (const kind of ["click", "submit"])
        addEventListener(kind, ({ target }) => pressed.push(kind, target.outerHTML.slice(0, 60)));
}"""


def focused(page: Page) -> str:
    return page.evaluate("document.activeElement.dataset.at ?? document.activeElement.outerHTML.slice(0, 80)")


@one_window
@pytest.mark.parametrize("where", PLACES)
def test_enter_goes_through_all_blanks_that_are_seen(page: Page, where: str):
    page.goto("./")
    found = opened(page, where)
    page.evaluate(PRESSES_NOTED)
    seen = found.evaluate(SEEN, PLACES[where])
    last = seen - 1
    assert last > 0
    page.locator('[data-at="0"]').focus()
    at = page.url
    for number in range(1, min(last, FAR_ENOUGH) + 1):
        assert page.evaluate("document.activeElement.enterKeyHint") == "next"
        page.keyboard.press("Enter")
        assert focused(page) == str(number)
        assert page.evaluate(f"({SELECTED})(document.activeElement)") == page.evaluate("document.activeElement.value")
    page.locator(f'[data-at="{last}"]').focus()
    assert page.evaluate("document.activeElement.enterKeyHint") == "done"
    page.keyboard.press("Enter")
    assert focused(page) == str(last)
    assert (page.evaluate("pressed"), page.url) == ([], at)


@one_window
def test_enter_in_the_last_blank_shows_the_answer_and_keeps_what_was_typed(page: Page):
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    last = section.locator(".sentence input").last
    last.fill("40")
    expect(section.locator(".afresh")).to_be_visible(timeout=WAKING)  # the script has taken it
    last.evaluate("it => scrollBy(0, it.getBoundingClientRect().bottom - innerHeight + 10)")
    last.press("Enter")
    expect(section.locator(".spoken")).to_be_in_viewport(ratio=1)
    expect(last).to_be_focused()
    last.blur()
    expect(last).to_have_value("40 cm", timeout=WAKING)


@one_window
def test_in_a_text_of_several_lines_enter_begins_a_line(page: Page):
    page.goto("./batch/")
    text = page.locator(".walk textarea").first
    text.evaluate("it => { it.closest('[hidden]').hidden = false; }")  # as once the batch is kept as a job
    reached(text).fill("one")
    text.press("Enter")
    assert text.input_value() == "one\n"
    expect(text).to_be_focused()
