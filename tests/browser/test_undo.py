"""The last change in a calculator goes back in one tap, as if it were typed, and comes again; nothing moves by it."""

from random import Random

from playwright.sync_api import Page, expect
from pytest import approx

from tests.browser.reader import WAKING, answered, blank, calculator, one_window, reached, says

#: Everything that stands in the blanks of a calculator, the cells of its tables too.
STANDING = """it => [...it.querySelectorAll("form.asked :is(input, select)")].map((each) => each.value)"""
#: Where everything stands that a finger may be at.
PLACES = """(it, those) => [...it.querySelectorAll(those)].filter((each) => each.checkVisibility())
    .map((each) => each.getBoundingClientRect().top)"""
ASKED = "form.asked :is(input, select, summary)"
ALL = f"{ASKED}, .undo, .answer .spoken"


def undo(section):
    return section.locator("button.undo")


def standing(section) -> list[str]:
    answered(section.page)
    return section.evaluate(STANDING)


@one_window
def test_what_stood_before_comes_back_and_goes_again(page: Page):
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    expect(undo(section)).to_be_hidden()
    width = blank(section, "cloth_width")
    places = section.evaluate(PLACES, ASKED)
    first = width.input_value()
    width.fill("112")
    says(section, "2 across")
    expect(undo(section)).to_have_accessible_name(f"Undo: cloth width {first}")
    assert undo(section).evaluate("it => Math.min(it.offsetWidth, it.offsetHeight)") >= 44
    expect(page.locator(".in-hand")).to_be_visible()
    assert section.evaluate(PLACES, ASKED) == approx(places, abs=1), "the button has its place before it is needed"
    at = section.evaluate(PLACES, ALL)
    undo(section).click()
    expect(width).to_have_value(first)
    expect(page.locator(".in-hand")).to_be_hidden()
    expect(undo(section)).to_have_accessible_name("Redo: cloth width 112 cm")
    expect(undo(section)).to_be_focused()
    answered(page)
    assert section.evaluate(PLACES, ALL) == approx(at, abs=1)
    undo(section).click()
    expect(width).to_have_value("112 cm")
    says(section, "2 across")
    undo(section).click()
    page.reload()
    expect(blank(calculator(page, "pieces-from-cloth"), "cloth_width")).to_have_value(first, timeout=WAKING)


@one_window
def test_what_counts_in_place_of_a_blank_left_empty_is_said(page: Page):
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    width = blank(section, "cloth_width")
    usual = width.input_value()
    for text, count in (("112", "2 across"), ("", "3 across")):
        width.fill(text)
        width.press("Tab")
        says(section, count)
    expect(section.locator(".told-here")).to_have_text(f"Left empty, so the usual counts: cloth width {usual}.")
    expect(undo(section)).to_have_accessible_name("Undo: cloth width 112 cm")


def changes(section, chance: Random):
    """Ways to change something in a calculator, as a reader does: typed, chosen, one row more, one less, put back."""
    typed = section.locator("form.asked input[type=text]").all()
    chosen = section.locator("form.asked select").all()
    yield lambda: reached(chance.choice(typed)).fill(str(chance.randint(2, 40)))
    yield lambda: reached(chance.choice(typed)).fill("no number")
    for each in chosen[:2]:
        others = each.locator("option:not(:checked)")
        yield lambda each=each, others=others: reached(each).select_option(others.first.get_attribute("value"))
    yield lambda: reached(section.locator(".afresh")).click()
    for button in section.locator(".one-more").all()[:1] + section.locator(".leave-out").all()[:1]:
        yield lambda button=button: reached(button).click()


@one_window
def test_every_kind_of_change_goes_back_whole(page: Page):
    """By chance, on calculators of blanks, of choices and of rows: before, after, before, after."""
    chance = Random(7)
    tried = 0
    for address, name in (("./fold/hems/", "finished-size"), ("./finish/care/", "label-text")):
        page.goto(address)
        section = calculator(page, name)
        for change in list(changes(section, chance)):
            before = standing(section)
            change()
            page.locator(".md-header").click(position={"x": 2, "y": 2})  # the blank is left
            after = standing(section)
            if after == before:
                continue
            for wanted in (before, after, before):
                undo(section).click()
                assert standing(section) == wanted
            tried += 1
            undo(section).click()
    assert tried > 8


@one_window
def test_a_job_has_what_came_back(page: Page):
    page.goto("./batch/")
    page.get_by_role("button", name="Keep this as a job").click()
    expect(page.locator(".job-in-hand [name=name]")).to_be_focused(timeout=WAKING)
    ordered = blank(calculator(page, "order"), "ordered")
    first = ordered.input_value()
    ordered.fill("31")
    says(calculator(page, "order"), "31")
    ordered.blur()
    undo(calculator(page, "order")).click()
    expect(ordered).to_have_value(first)
    expect(page.locator(".job-in-hand .said")).to_contain_text("Kept")
    page.reload()
    expect(blank(calculator(page, "order"), "ordered")).to_have_value(first, timeout=WAKING)
