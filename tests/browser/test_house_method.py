"""A studio sets down its own method in the browser, and the whole handbook speaks its numbers."""

import json
import re

import pytest
from playwright.sync_api import Page, expect

from calculators.documents.house_method.reading import read_method
from tests.browser.reader import ANSWERS_HELD_BACK, QUESTIONS_NOTED, hold_back, let_through, move, one_window, until


def begin(page: Page, name: str = "Summer linen") -> None:
    """Set down a new method under a name; the page then stands open for filling in."""
    page.goto("./house/")
    expect(page.get_by_role("combobox", name="Ruler in hand")).to_be_visible()  # it moves what stands below it
    page.get_by_role("button", name="Set down your own").click()
    expect(blank(page, "name")).to_be_focused()
    fill(page, "name", name)
    expect(page.get_by_role("combobox", name="Method followed")).to_contain_text(name)


def blank(page: Page, path: str):
    return page.locator(f'.house-body [name="{path}"]')


def fill(page: Page, path: str, text: str) -> None:
    blank(page, path).fill(text)
    blank(page, path).blur()


def kept(page: Page) -> str:
    """The text of the method in hand as the store has it."""
    return page.evaluate(
        "async () => (await (await import(__md_scope + 'assets/javascript/store.js')).newest('method')).at(-1).text"
    )


@one_window
def test_every_page_follows_the_method_and_goes_back(page):
    begin(page)
    fill(page, "measures.hem", "3")
    expect(blank(page, "measures.hem")).to_have_value("3 cm")
    expect(page.locator(".said")).to_contain_text("Kept at")
    move(page, "./corners/mitre/")
    expect(page.locator(".whose-method")).to_contain_text("Summer linen")
    expect(page.locator(".answer .figure").first).to_have_text("Mark 6 cm")
    number = page.locator("[data-number*='raw_mark_1']").first  # from the raw corner: two turns of 1 cm more
    expect(number).to_have_text("8 cm")
    page.get_by_role("button", name="Show the handbook’s numbers").click()
    expect(number).to_have_text("6 cm")
    expect(page.locator(".answer .figure").first).to_have_text("Mark 4 cm")
    page.get_by_role("button", name="Show those of Summer linen").click()
    expect(number).to_have_text("8 cm")


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_one_change_is_worked_through_once(page):
    page.context.add_init_script(QUESTIONS_NOTED)
    begin(page)
    expect(page.locator(".whose-method")).to_contain_text("Summer linen")
    page.wait_for_timeout(1000)  # what the name has set going comes to rest
    page.evaluate("() => { asked.length = 0; }")
    fill(page, "measures.hem", "3")
    expect(page.locator(".said")).to_contain_text("Kept at")
    page.wait_for_timeout(1000)  # and what the hem sets going
    asked = page.evaluate("asked")
    assert sorted(asked) == sorted(set(asked)) and "method change" in asked


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_what_is_typed_is_kept_without_leaving_its_blank_and_a_refused_value_stays(page):
    begin(page)
    blank(page, "measures.hem").fill("3")
    until(
        page,
        "async () => (await (await "
        "import(__md_scope + 'assets/javascript/store.js')).newest('method')).at(-1).text.includes('\"3 cm\"')",
    )
    fill(page, "measures.turn", "36 banana")
    expect(page.locator('.refusal[data-field="measures.turn"]')).to_contain_text("is not a length")
    page.locator(".ruler-choice select").select_option("mm 1")
    expect(blank(page, "measures.hem")).to_have_attribute("value", "3 cm")  # the page is drawn afresh
    expect(blank(page, "measures.turn")).to_have_value("36 banana")
    expect(page.locator('.refusal[data-field="measures.turn"]')).to_contain_text("is not a length")


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_the_form_explains_refuses_falls_back_and_is_undone(page):
    begin(page)
    fallback = page.locator('.fallback[data-for="measures.turn"]')
    expect(fallback).to_have_text(re.compile(r"Left empty: the handbook’s 1\scm"))
    fill(page, "measures.turn", "36 banana")
    expect(page.locator('.refusal[data-field="measures.turn"]')).to_contain_text("is not a length")
    fill(page, "measures.turn", "1.5")
    expect(page.locator('.refusal[data-field="measures.turn"]')).to_be_hidden()
    expect(fallback).to_be_hidden()
    fill(page, "why.measures.turn", "Loose <b>weave</b>")
    expect(page.locator(".said")).to_contain_text("Kept at")
    page.get_by_role("button", name="Done").click()
    row = page.locator(".settled > div", has_text="First turn")
    expect(row).to_contain_text("1.5 cm")
    expect(row).to_contain_text("Loose <b>weave</b>")
    expect(page.locator(".settled > div", has_text="Hem depth").locator(".whose")).to_have_text("the handbook’s")
    page.locator(".house-changes summary").click()
    expect(page.locator(".changes li").nth(1)).to_contain_text("First turn, the handbook’s 1 cm (3/8 in) → 1.5 cm")
    page.locator(".changes li").nth(1).get_by_role("button", name="Back to before this").click()
    expect(page.locator(".changes li").first).to_contain_text("1.5 cm → the handbook’s 1 cm")
    expect(row).not_to_contain_text("1.5 cm")


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_what_is_typed_while_the_page_is_being_drawn_afresh_stands_there_afterwards(page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    begin(page)
    hold_back(page)
    page.locator(".ruler-choice select").select_option("mm 1")  # the page is drawn afresh
    blank(page, "measures.hem").evaluate("it => { it.dataset.before = ''; }")
    fill(page, "measures.hem", "30")
    let_through(page)
    expect(page.locator("[data-before]")).to_have_count(0)
    expect(blank(page, "measures.hem")).to_have_value("30 mm")
    expect(page.locator('.fallback[data-for="measures.hem"]')).to_be_hidden()


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_the_sheet_shows_what_was_typed_just_before(page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    begin(page)
    hold_back(page)
    fill(page, "measures.turn", "1.5 cm")
    page.get_by_role("button", name="Done").click()
    let_through(page)
    expect(page.locator(".settled > div", has_text="First turn")).to_contain_text(re.compile(r"1\.5\scm"))


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_lines_are_added_and_taken_out(page):
    begin(page)
    page.locator("summary", has_text="Add a kind of piece").click()
    fill(page, "tables.pieces.4.hem", "2")
    expect(page.locator('.refusal[data-field="tables.pieces.4.hem"]')).to_contain_text("Name a kind of piece first")
    fill(page, "tables.pieces.4.piece", "Apron")
    page.locator("details.line > summary", has_text="Apron").wait_for()
    fill(page, "tables.pieces.4.hem", "4")
    expect(blank(page, "tables.pieces.4.hem")).to_have_value("4 cm")
    page.locator("details.line > summary", has_text="Placemat").click()
    page.get_by_role("button", name="Take out Placemat").click()
    expect(page.locator("details.line > summary", has_text="Placemat")).to_have_count(0)
    assert [line["piece"] for line in json.loads(kept(page))["tables"]["pieces"]] == [
        "Napkin",
        "Runner",
        "Tea towel",
        "Apron",
    ]


@pytest.mark.parametrize("width", [1280], ids=["screen"])
def test_two_methods_are_compared_and_one_removed(page):
    begin(page)
    fill(page, "measures.hem", "3")
    expect(blank(page, "measures.hem")).to_have_value("3 cm")
    page.get_by_role("button", name="Copy it").click()
    expect(blank(page, "name")).to_have_value("Summer linen, a copy")
    fill(page, "measures.hem", "4")
    expect(blank(page, "measures.hem")).to_have_value("4 cm")
    page.get_by_role("button", name="Done").click()
    page.locator(".house-compare summary").click()
    page.locator(".house-compare select").select_option(label="Summer linen")
    rows = page.locator(".house-compare tbody tr")
    expect(rows).to_have_count(2)
    expect(rows.nth(1)).to_contain_text("4 cm3 cm")
    page.get_by_role("button", name="Remove it").click()
    expect(page.locator(".said")).to_contain_text("Press again")
    page.get_by_role("button", name="Remove it").click()
    expect(page.locator(".whose-method")).to_contain_text("Numbers by The linen workroom.")
    expect(page.get_by_role("combobox", name="Method followed")).not_to_contain_text("a copy")
    expect(page.get_by_role("combobox", name="Method followed")).to_contain_text("Summer linen")


@pytest.mark.parametrize("width", [1280], ids=["screen"])
def test_two_windows_change_one_method_and_neither_loses_a_change(page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    begin(page)
    other = page.context.new_page()
    other.goto("./house/")
    other.get_by_role("button", name="Change it").click()
    expect(blank(other, "name")).to_have_value("Summer linen")
    # The other window is kept from hearing of it, as when both are changed in the same moment.
    other.evaluate("async () => { BroadcastChannel.prototype.postMessage = () => {}; }")
    page.evaluate("async () => { BroadcastChannel.prototype.postMessage = () => {}; }")
    fill(page, "measures.turn", "1.5")
    expect(blank(page, "measures.turn")).to_have_value("1.5 cm")
    fill(other, "measures.hem", "3")
    expect(blank(other, "measures.hem")).to_have_value("3 cm")
    _, method, _ = read_method(kept(page))
    assert [method.measures[name]["cm"] for name in ("turn", "hem")] == ["1.5 cm", "3 cm"]
    hold_back(page)  # so that the other window is first
    fill(page, "measures.hem", "4")
    fill(other, "measures.hem", "3.5")
    expect(blank(other, "measures.hem")).to_have_value("3.5 cm")
    let_through(page)
    expect(page.locator(".said")).to_contain_text(
        "changed in another window too. Hem depth: here “4 cm” stands, there it was “3.5 cm”"
    )
    other.close()


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_a_window_hears_what_another_has_kept(page):
    begin(page)
    other = page.context.new_page()
    other.goto("./corners/mitre/")
    number = other.locator("[data-number*='raw_mark_1']").first  # two turns of 1 cm more than the mark
    expect(number).to_have_text("6 cm")
    fill(page, "measures.hem", "3")
    expect(number).to_have_text("8 cm")
    other.close()


@one_window
def test_the_form_begins_with_a_list_of_its_sections_that_leads_to_each(page: Page):
    page.goto("./house/")
    page.get_by_role("button", name="Set down your own").click()
    expect(page.locator("[name=name]")).to_be_visible(timeout=30_000)
    links = page.get_by_role("navigation", name="Sections of the method").get_by_role("link")
    assert links.all_inner_texts() == page.locator(".house h2").all_inner_texts()
    links.filter(has_text="Prices").focus()
    page.keyboard.press("Enter")
    expect(page.locator("#house-prices")).to_be_in_viewport()
    page.emulate_media(media="print")
    expect(links.first).to_be_hidden()


@one_window
def test_on_paper_a_rare_blank_left_empty_is_left_out(page: Page):
    page.goto("./fold/hems/")
    rare = page.locator("section.calculator .more .field:has([name=hem_top])").first
    page.locator("section.calculator details.more > summary").first.click()
    expect(rare).to_be_visible()
    page.emulate_media(media="print")
    expect(rare).to_be_hidden()
    page.emulate_media(media="screen")
    rare.locator("input").fill("3 cm")
    page.emulate_media(media="print")
    expect(rare).to_be_visible()


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_a_measure_written_on_one_ruler_is_followed_on_the_other_and_an_old_pair_is_mended_in_one_press(page):
    begin(page)
    page.locator(".ruler-choice select").select_option("in 1/16")
    page.locator("details.line > summary", has_text="Napkin").click()
    expect(blank(page, "tables.pieces.0.hem")).to_have_value("3/4 in")
    fill(page, "tables.pieces.0.hem", "1/2")
    beside = page.locator('.other-ruler[data-for="tables.pieces.0.hem"]')
    expect(beside).to_have_text(re.compile(r"On the centimetre ruler: 1\.3\scm, which follows it\."))
    page.locator(".ruler-choice select").select_option("cm 1/10")
    expect(blank(page, "tables.pieces.0.hem")).to_have_value("1.3 cm")
    expect(beside).to_contain_text("Follows 1/2 in")
    old = {**json.loads(kept(page)), "measures": {"hem": {"cm": "2 cm", "in": "1/2 in"}}}
    page.evaluate(
        """async (text) => {
        const { keep, newest } = await import(__md_scope + 'assets/javascript/store.js');
        const { id, revision } = (await newest('method')).at(-1);
        await keep('method', id, text, revision);
    }""",
        json.dumps(old),
    )
    clash = page.locator(".clash")
    expect(clash).to_contain_text("Two measures stand under this one name")
    clash.get_by_role("button", name="Keep 1/2 in").click()
    expect(clash).to_have_count(0)
    expect(blank(page, "measures.hem")).to_have_value("1.3 cm")
    assert json.loads(kept(page))["measures"] == {"hem": "1/2 in"}


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_the_last_cloth_taken_out_brings_none_of_the_handbooks_back_and_nothing_old_is_said(page):
    begin(page)
    cloths = page.locator('details[data-line^="tables.cloths."] > summary')
    for cloth in ("Washed linen, medium", "Loomstate linen, heavy", "Half linen, light"):
        cloths.filter(has_text=cloth).evaluate("(it) => { it.parentElement.open = true; }")
        page.get_by_role("button", name=f"Take out {cloth}").click()
        expect(cloths.filter(has_text=cloth)).to_have_count(0)
    assert json.loads(kept(page))["tables"]["cloths"] == []
    page.reload()
    page.get_by_role("button", name="Change it").click()
    expect(cloths).to_have_text(["Add a cloth"])
    page.get_by_role("button", name="Back to the handbook’s list").click()
    expect(cloths).to_have_count(4)
    page.get_by_role("button", name="Done").click()
    expect(page.locator(".sheet-name")).to_have_text(re.compile(r"Summer linen, as of \d+ \w+ \d{4}"))
    for _ in range(2):
        page.get_by_role("button", name="Remove it").click()
    expect(page.locator(".said")).to_have_text("Removed.")
    page.get_by_role("button", name="Print it").evaluate("() => { window.print = () => {}; }")
    page.get_by_role("button", name="Print it").click()
    expect(page.locator(".said")).to_have_text("")


@pytest.mark.parametrize("width", [390], ids=["phone"])
def test_an_amount_typed_under_the_old_money_stands_there_and_is_kept_under_the_new_in_one_press(page):
    begin(page)
    move(page, "./plan/cost/")
    rate = page.locator("section.calculator [name=rate]")
    rate.fill("20")
    rate.blur()
    expect(rate).to_have_value("€20")
    move(page, "./house/")
    page.get_by_role("button", name="Change it").click()
    fill(page, "measures.money", "£")
    expect(page.locator(".said")).to_contain_text("Kept at")
    move(page, "./plan/cost/")
    refusal = page.locator(".refusal[data-field=rate]")
    expect(refusal).to_contain_text("“€20” is in €, but the house’s money is £.")
    expect(rate).to_have_value("€20")
    refusal.get_by_role("button", name="Make it £20").click()
    expect(rate).to_have_value("£20")
    expect(refusal).to_be_hidden()
    expect(page.locator("[data-calculator=thread-time-cost] .answer .spoken")).to_contain_text("£")
