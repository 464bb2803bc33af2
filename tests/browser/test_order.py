"""An order of several articles: put together from their pages, on a phone and on paper."""

import json
import re

from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, blank, calculator, one_window, printed, reached, says, until

PHONE = {"width": 390, "height": 844}
#: Whether the link into the order carries what was typed last.
CARRIES = """([name, texts]) => {
    const link = document.querySelector(`[data-calculator="${name}"] a.onward[data-adds]`);
    return texts.every((text) => decodeURIComponent(link.href).includes(text));
}"""


def put_in(page: Page, path: str, name: str, **typed: str) -> None:
    """Make an article on its own page and put it into the order."""
    page.goto(path)
    section = calculator(page, name)
    for field, text in typed.items():
        reached(blank(section, field)).fill(text)
    carried = [json.dumps(json.dumps(text))[1:-1] for text in typed.values()]  # a row in a text
    until(page, CARRIES, [name, carried])
    link = section.locator("a.onward", has_text="Put it in an order")
    link.click()
    page.get_by_role("button", name="Put it in").click()


def test_articles_are_put_in_one_below_the_other_and_what_they_lack_is_asked(page):
    page.set_viewport_size(PHONE)
    put_in(page, "./projects/small-pieces/", "bread-cloth", width="47 cm", count="5")
    order = calculator(page, "whole-order")
    says(order, "for 5 articles")
    put_in(page, "./projects/small-pieces/", "pot-holder", width="19 cm", count="3")
    rows = order.locator('table[data-field="lines"] .open-row')
    expect(rows).to_have_text(["5× Bread cloth with a bound edge, 47 cm × 45 cm", "3× Pot holder, 19 cm × 20 cm"])
    told = order.locator('.refusal[data-field="cloths"]')
    expect(told).to_contain_text("Row 2, Pot holder, is cut from wadding too", timeout=WAKING)
    order.locator('.one-more[data-field="cloths"]').click()
    cells = order.locator('table[data-field="cloths"] tbody tr').last.locator("input")
    cells.nth(0).fill("wadding")
    cells.nth(1).fill("90 cm")
    says(order, re.compile("of wadding for 8 articles"))
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    order.locator('.one-more[data-field="lines"]').click()
    expect(order.locator('table[data-field="lines"] tbody tr').last.locator("select").first).to_have_value("")
    says(order, re.compile("for 8 articles"))


def test_the_measures_of_a_line_do_not_widen_the_page(page):
    page.set_viewport_size({"width": 1280, "height": 844})
    put_in(page, "./projects/curtains-piece-by-piece/", "curtain", rod="210 cm")
    says(calculator(page, "whole-order"), "for 2 articles")
    assert page.evaluate("document.documentElement.scrollWidth") <= 1280


def test_cutting_list_and_work_list_come_on_paper(page):
    page.goto("./plan/order/")
    text = "".join(sheet.extract_text() for sheet in printed(page, "A4").pages)
    for words in ("Cutting list", "Work list", "Turn right side out", "Cushion cover with an overlap"):
        assert words in text


@one_window
def test_the_corner_of_a_curtain_takes_its_hems_along_into_a_fold(page):
    page.goto("./projects/curtains-piece-by-piece/")
    section = calculator(page, "curtain")
    reached(blank(section, "lower_hem")).fill("12 cm")
    until(page, """() => [...document.querySelectorAll("[data-calculator=curtain] a.onward")].some((each) =>
        decodeURIComponent(each.href).includes("12 cm"))""")  # fmt: skip
    reached(section.locator("a.onward", has_text="See such a corner folded")).click()
    page.get_by_role("button", name="Use these numbers").click()
    corner = calculator(page, "corner-steps")
    expect(corner.locator(".answer .steps")).to_contain_text(
        "12 cm deep on edge 1 and 2.5 cm on edge 2", timeout=WAKING
    )
    expect(corner.locator(".answer")).not_to_have_class(re.compile("is-old"))
    expect(corner.locator("select[name=way], select[name=trimming]")).to_have_count(0)


def test_the_sizes_of_a_line_are_called_as_its_article_calls_them(page):
    page.goto("./plan/order/")
    line = calculator(page, "whole-order").locator('table[data-field="lines"] tbody tr').first
    line.locator(".open-row").click()
    reached(line.get_by_label("Finished length", exact=True)).fill("46 cm")
    line.get_by_label("Article").select_option("curtain-lined")
    expect(line.get_by_label("Rod or track", exact=True)).to_be_visible()
    expect(line.get_by_label("Finished drop", exact=True)).to_have_value("46 cm")
    line.get_by_label("Article").select_option("")
    expect(line.get_by_label("By", exact=True)).to_be_visible()
