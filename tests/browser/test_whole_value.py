"""Coming to a blank selects its whole value, by touch, mouse and keyboard; what cannot be read is never kept as if it
were a value."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.browser.reader import (
    ANSWERS_HELD_BACK,
    WAKING,
    answered,
    blank,
    calculator,
    choose_ruler,
    elsewhere,
    move,
    one_window,
    reached,
    refusal,
    says,
)
from tests.browser.test_house_method import begin

PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
SELECTED = "it => it.value.slice(it.selectionStart, it.selectionEnd)"


@pytest.fixture(scope="module", params=["touch", "mouse", "keyboard"])
def by(request: pytest.FixtureRequest) -> str:
    """What she comes to a blank by."""
    return request.param


@pytest.fixture(scope="module")
def visitor(browser: Browser, served: str, by: str) -> Iterator[Page]:
    """A page for all that is done by touch, by mouse or by keyboard; it stands at home."""
    page = elsewhere(browser, served, **(PHONE if by == "touch" else {}))
    page.goto("./")
    yield page
    page.context.close()


def opened(page: Page, where: str) -> Locator:
    """A blank with a value in it, one for every place where blanks stand, on a page that is of the site already."""
    if where == "house method":
        begin(page)
        found = page.locator('.house-body [name="measures.hem"]')
        found.fill("3")
        found.blur()
        expect(found).to_have_value("3 cm", timeout=WAKING)
        return found
    address, selector = {
        "calculator": ("./plan/pieces/", 'section.calculator [name="piece_width"]'),
        "behind more": ("./fold/hems/", 'section.calculator [name="hem_top"]'),
        "order": ("./plan/lay-plan/", "table.rows[data-field=pieces] tbody tr:first-child td:nth-child(3) input"),
        "batch": ("./batch/", '.walk [name="cloth_width"]'),
        "ticket": ("./house/ticket/", ".ticket-body .size input"),
        "bundles": ("./house/ticket/", ".ticket .settle [name=bundle]"),
    }[where]
    if not page.url.endswith(address.removeprefix(".")):
        move(page, address)
    found = page.locator(selector).first
    found.wait_for(state="attached")
    reached(found)
    if where == "ticket":
        page.locator(".ticket .tools button").first.wait_for()
    if not found.input_value():
        found.fill("40 cm")
        found.blur()
    return found


def centre(found: Locator) -> tuple[float, float]:
    found.scroll_into_view_if_needed()
    box = found.evaluate(
        "it => { it.scrollIntoView({ block: 'center' }); const { x, y, height } = it.getBoundingClientRect(); return "
        "{ x, y, height }; }"
    )
    return box["x"] + 14, box["y"] + box["height"] / 2


def comes_to(page: Page, found: Locator, by: str) -> None:
    if by == "touch":
        page.touchscreen.tap(*centre(found))
    elif by == "mouse":
        page.mouse.click(*centre(found))
    else:
        centre(found)
        found.focus()
        page.keyboard.press("Tab")
        page.keyboard.press("Shift+Tab")


@pytest.mark.parametrize("where", ["ticket", "bundles", "calculator", "behind more", "order", "batch", "house method"])
def test_coming_to_a_blank_selects_its_whole_value(visitor: Page, where: str, by: str):
    found = opened(visitor, where)
    visitor.evaluate("document.activeElement.blur()")
    before = found.input_value()
    comes_to(visitor, found, by)
    expect(found).to_be_focused()
    visitor.wait_for_timeout(150)
    assert found.evaluate(SELECTED) == before != ""
    visitor.keyboard.type("112")
    assert found.input_value() == "112"
    found.fill(before)
    found.blur()


def test_a_blank_that_moves_from_under_the_finger_is_written_over_too(browser, served):
    page = elsewhere(browser, served, **PHONE)
    page.goto("./projects/curtains/")
    choose_ruler(page, "in 1/4")
    curtains = calculator(page, "curtains")
    for name, text in {"rod": "94 1/2", "drop": "82 1/4", "cloth_width": "54"}.items():
        found = blank(curtains, name)
        before = found.bounding_box()
        found.tap()
        page.keyboard.type(text)
        assert found.input_value() == text
        says(curtains, "widths")
        page.wait_for_timeout(400)
    assert found.bounding_box() != before, "the blank that was left must have grown under this one"
    page.context.close()


@pytest.mark.parametrize("by", ["touch", "mouse"], indirect=True)
def test_a_second_tap_places_the_cursor(visitor: Page, by: str):
    found = opened(visitor, "calculator")
    visitor.evaluate("document.activeElement.blur()")
    comes_to(visitor, found, by)
    visitor.wait_for_timeout(600)  # else it is a double tap
    comes_to(visitor, found, by)
    visitor.wait_for_timeout(150)
    assert found.evaluate(SELECTED) == ""


def brought_to(page: Page, where: str) -> Locator:
    """A blank that a button brings the reader to, with a value in it."""
    if where == "name of a job":
        page.goto("./batch/")
        page.get_by_role("button", name="Keep this as a job").tap()
        found = page.locator(".job-in-hand [name=name]")
    elif where == "name of a method":
        page.goto("./house/")
        page.get_by_role("button", name="Set down your own").tap()
        found = page.locator('.house-body [name="name"]')
    else:
        page.goto("./plan/pieces/")
        section = calculator(page, "pieces-from-cloth")
        blank(section, "piece_width").fill("40 cm")
        says(section, "pieces")
        section.get_by_role("button", name="Back to the house’s numbers").tap()
        found = blank(section, "cloth_width")
    expect(found).to_be_focused(timeout=WAKING)
    if not found.input_value():
        page.keyboard.type("40")
    return found


@pytest.mark.parametrize("where", ["name of a job", "name of a method", "house’s numbers"])
def test_the_first_tap_on_a_blank_that_a_button_led_to_selects_it(browser, served, where):
    page = elsewhere(browser, served, **PHONE)
    found = brought_to(page, where)
    page.wait_for_timeout(600)  # else it is a double tap
    comes_to(page, found, "touch")
    page.wait_for_timeout(150)
    assert found.evaluate(SELECTED) == found.input_value() != ""
    comes_to(page, found, "touch")
    page.keyboard.type("7")
    assert len(found.input_value()) > 1, "a second tap places the cursor"
    page.context.close()


@one_window
def test_part_of_a_value_can_be_drawn_over_at_once(page: Page):
    page.goto("./")
    found = opened(page, "calculator")
    x, y = centre(found)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 12, y, steps=4)
    page.mouse.up()
    part = found.evaluate(SELECTED)
    assert 0 < len(part) < len(found.input_value())


def test_tap_type_done(browser, served):
    """Tap, type 112: read 147112 cm, and still there after the page was opened again."""
    page = elsewhere(browser, served, **PHONE)
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    width = blank(section, "cloth_width")
    page.touchscreen.tap(*centre(width))
    page.keyboard.type("112")
    says(section, "2 across")
    page.keyboard.press("Tab")
    expect(width).to_have_value("112 cm")
    page.reload()
    expect(blank(calculator(page, "pieces-from-cloth"), "cloth_width")).to_have_value("112 cm")
    page.context.close()


@one_window
def test_what_was_refused_is_shown_as_refused_when_the_page_is_opened_again(page: Page):
    """Before Python has woken, with its sentence; the text typed is still there, and no other page takes it for a
    value."""
    bad = {"cloth_width": "147112 cm", "cloth_length": "46 bananas", "piece_width": "1½0 cm"}
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    sentences = {}
    for name, text in bad.items():
        blank(section, name).fill(text)
        expect(refusal(section, name)).to_be_visible(timeout=WAKING)
        sentences[name] = refusal(section, name).inner_text()
        blank(section, name).blur()
    page.add_init_script(ANSWERS_HELD_BACK + "window.heldBack = [];")  # Python never answers
    page.reload()
    section = calculator(page, "pieces-from-cloth")
    for name, text in bad.items():
        expect(blank(section, name)).to_have_value(text)
        expect(refusal(section, name)).to_have_text(sentences[name])
        expect(blank(section, name)).to_have_attribute("aria-invalid", "true")
    expect(section.locator(".old-answer")).to_be_visible()
    expect(section.locator(".answer")).to_have_class(re.compile("is-old"))


@one_window
def test_a_refused_value_is_followed_nowhere_and_mended_in_place(page: Page):
    page.goto("./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    blank(section, "cloth_width").fill("46 bananas")
    expect(refusal(section, "cloth_width")).to_be_visible(timeout=WAKING)
    move(page, "./cut/marking/")
    choose_ruler(page, "mm 1")  # so that an answer comes
    expect(page.locator("article [data-number]").first).to_contain_text("mm", timeout=WAKING)
    answered(page)
    expect(page.locator(".follows")).to_be_hidden()
    move(page, "./plan/pieces/")
    section = calculator(page, "pieces-from-cloth")
    expect(refusal(section, "cloth_width")).to_be_visible()
    blank(section, "cloth_width").fill("112 cm")
    says(section, "2 across")
    expect(refusal(section, "cloth_width")).to_be_hidden()
    page.reload()
    section = calculator(page, "pieces-from-cloth")
    says(section, "2 across")
    expect(refusal(section, "cloth_width")).to_be_hidden()
