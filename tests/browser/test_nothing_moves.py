"""What a reader looks at stays where it is: when the page comes alive, and when she takes another ruler."""

from playwright.sync_api import Page, expect

from tests.browser.reader import choose_ruler

BEFORE_IT_IS_LIVE = """
    const look = () => {
        const choice = document.querySelector(".ruler-choice[hidden]");
        const sentence = document.querySelector(".calculator .sentence");
        if (choice && sentence) window.keptPlace = choice.getBoundingClientRect().height;
        else requestAnimationFrame(look);
    };
    look();
"""


def test_the_choice_of_a_ruler_has_its_place_before_it_works_and_keeps_its_width(page: Page):
    page.add_init_script(BEFORE_IT_IS_LIVE)
    page.goto("/plan/pieces/")
    choice = page.locator(".ruler-choice")
    expect(choice).to_be_visible()
    assert page.evaluate("window.keptPlace") == choice.bounding_box()["height"] > 40  # [CSS px] a line to press
    select = choice.locator("select")
    before = select.bounding_box()
    for ruler in ("in 1/16", "mm 1"):
        choose_ruler(page, ruler)
        assert select.bounding_box() == before
