"""What a reader looks at stays where it is: when the page comes alive, and when she takes another ruler."""

import re

from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, blank, calculator, choose_ruler, scripts_held_back

HEIGHT = "it => it.getBoundingClientRect().height"


def test_the_choice_of_a_ruler_has_its_place_before_it_works_and_keeps_its_width(page: Page):
    choice = page.locator(".ruler-choice")
    with scripts_held_back(page):
        page.goto("./plan/pieces/", wait_until="commit")
        page.wait_for_function(
            "() => performance.getEntriesByName('first-contentful-paint').length"
        )  # its style sheets are there
        expect(choice).to_be_hidden()
        kept_place = choice.evaluate(HEIGHT)
    expect(choice).to_be_visible()
    assert kept_place == choice.evaluate(HEIGHT) > 40  # [CSS px] a line to press
    page.evaluate("document.fonts.ready.then(() => true)")
    select = choice.locator("select")
    before = select.bounding_box()
    width = blank(calculator(page, "pieces-from-cloth"), "piece_width")
    for ruler, unit in (("in 1/16", "in"), ("mm 1", "cm")):
        choose_ruler(page, ruler)
        assert select.bounding_box() == before
        expect(width).to_have_value(re.compile(rf" {unit}$"), timeout=WAKING)
        assert select.bounding_box() == before


def test_style_sheets_stay_as_they_were_loaded_from_the_first_page_to_the_last(page: Page):
    """A style sheet whose address is written anew is loaded anew, and for a moment the page stands there without it."""
    page.add_init_script(
        """window.touched = [];
        new MutationObserver((records) => {
            for (const { type, target, addedNodes, removedNodes } of records) {
                const sheets = type === "attributes" ? [target] : [...addedNodes, ...removedNodes];
                touched.push(...sheets.filter((each) => each.rel === "stylesheet")
                    .map(() => `${type} at ${document.readyState}`));
            }
        }).observe(document, { subtree: true, childList: true, attributeFilter: ["href"] });"""
    )
    page.goto("./plan/pieces/")
    expect(page.locator(".ruler-choice")).to_be_visible()
    assert page.evaluate("touched") == ["childList at loading"]
    for link, title in (
        ("Sources", "Sources"),
        ("Workroom handbook", "Workroom handbook"),
        ("Pieces from cloth", "Pieces from cloth"),
    ):
        page.evaluate(
            "text => [...document.querySelectorAll('.md-nav a, .md-logo')].find((each) => each.textContent.trim() "
            "=== text || each.title === text).click()",
            link,
        )
        expect(page).to_have_title(re.compile(f"^{title}"))
        expect(page.locator("article h1")).to_be_visible()
    assert page.evaluate("touched") == ["childList at loading"]
    assert page.locator("h1").evaluate("it => getComputedStyle(it).fontFamily").startswith("Brygada")
