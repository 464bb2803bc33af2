"""Numbers in the text follow what the reader writes, on the page of the calculator and on other pages."""

from playwright.sync_api import expect

from tests.browser.reader import one_window, reached

AWAKE = 60_000


def test_sentences_follow_the_blanks_above_them(page):
    page.goto("./fold/hems/")
    page.get_by_label("First turn").first.fill("1.2 cm")
    step = page.locator("article ol li", has_text="fold the first turn")
    expect(step).to_contain_text("1.2 cm", timeout=AWAKE)


@one_window
def test_sentences_on_another_page_follow_and_say_so(page):
    page.goto("./cut/marking/")
    step = page.locator("article ol li", has_text="Mark across the straightened end")
    expect(step).to_contain_text("46 cm · 92 cm · 138 cm.")
    expect(page.locator(".follows")).to_be_hidden()
    page.goto("./plan/pieces/")
    page.get_by_label("Cloth width").fill("200 cm")
    expect(page.locator(".spoken")).to_contain_text("24 pieces", timeout=AWAKE)
    page.goto("./cut/marking/")
    expect(step).to_contain_text("46 cm · 92 cm · 138 cm · 184 cm", timeout=AWAKE)
    expect(page.locator(".follows")).to_be_visible()


def test_a_number_typed_without_its_unit_keeps_its_meaning_on_another_ruler(page):
    page.goto("./plan/pieces/")
    width = page.get_by_label("Piece width", exact=True)
    width.fill("50")  # the ruler changes before Python has woken and read it
    page.locator(".ruler-choice select").select_option("in 1/16")
    expect(width).to_have_value("50 cm", timeout=AWAKE)


def test_numbers_of_one_sentence_belong_to_one_calculation(page):
    """Flat: 84 in x 2 + 2 x 4 + 3 in; gathered: all of it x 2. A refused value makes all of them wait, and none change
    alone."""
    page.goto("./projects/curtains/")
    page.locator(".ruler-choice select").select_option("in 1/16")
    section = page.locator("section.calculator")
    numbers = page.locator("article [data-number]")
    section.locator("[name=rod]").fill("84 in")
    expect(page.locator("""article [data-number*='"rod"']""")).to_have_text("84 in", timeout=AWAKE)

    def text(name, but):
        found = page.locator(f"article [data-number*='\"{name}\"'][data-number*=': \"{but}\"']")
        return reached(found).inner_text().replace("\u00a0", " ")

    assert text("flat_width", "flat") == "179 in" and text("flat_width", "gathered") == "190 in"
    before = numbers.all_text_contents()
    section.locator("[name=rod]").fill("84 bananas")
    expect(section.locator('.refusal[data-field="rod"]')).to_be_visible(timeout=AWAKE)
    section.locator("[name=fullness]").fill("3")
    page.wait_for_timeout(800)
    assert numbers.all_text_contents() == before
