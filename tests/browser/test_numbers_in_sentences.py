"""Numbers in the text follow what the reader writes, on the page of the calculator and on other pages."""

from playwright.sync_api import expect

AWAKE = 60_000


def test_sentences_follow_the_blanks_above_them(page):
    page.goto("/fold/hems/")
    page.get_by_label("First turn").fill("1.2 cm")
    step = page.locator("article ol li", has_text="fold the first turn")
    expect(step).to_contain_text("1.2 cm", timeout=AWAKE)


def test_sentences_on_another_page_follow_and_say_so(page):
    page.goto("/cut/marking/")
    step = page.locator("article ol li", has_text="Mark across the straightened end")
    expect(step).to_contain_text("46 cm · 92 cm · 138 cm,")
    expect(page.locator(".follows")).to_be_hidden()
    page.goto("/plan/pieces/")
    page.get_by_label("Cloth width").fill("200 cm")
    expect(page.locator(".spoken")).to_contain_text("24 pieces", timeout=AWAKE)
    page.goto("/cut/marking/")
    expect(step).to_contain_text("46 cm · 92 cm · 138 cm · 184 cm", timeout=AWAKE)
    expect(page.locator(".follows")).to_be_visible()


def test_a_number_typed_without_its_unit_keeps_its_meaning_on_another_ruler(page):
    page.goto("/plan/pieces/")
    width = page.get_by_label("Piece width", exact=True)
    width.fill("50")  # the ruler changes before Python has woken and read it
    page.locator(".ruler-choice select").select_option("in 1/16")
    expect(width).to_have_value("50 cm", timeout=AWAKE)
