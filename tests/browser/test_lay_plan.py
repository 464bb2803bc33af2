"""A lay plan in a browser: an order is typed, the plan is seen, saved and handed on by a link."""

import csv
import io

import pytest
from playwright.sync_api import Locator, expect

from tests.browser.reader import PYTHON_SENT_AWAY, blank, both_windows, forget_typed, reached, scripts_held_back

AWAKE = 60_000


@pytest.fixture(params=[390], ids=["phone"])
def width(request) -> int:
    """One window where the same is done in any."""
    return request.param


def opened(page):
    page.goto("./plan/lay-plan/")
    return page.locator("#" + page.locator(".calculator").first.get_attribute("id"))


def cell(plan, table, row, column):
    return reached(
        plan.locator(f"table.rows[data-field={table}] tbody tr").nth(row).locator("input, select").nth(column)
    )


def write(blank: Locator, text: str) -> None:
    """Write into a cell, as one does who has gone there first: on leaving another cell its number gets its unit."""
    blank.focus()
    blank.fill(text)


@both_windows
def test_an_order_is_typed_and_its_plan_seen(page):
    plan = opened(page)
    expect(plan.locator(".spoken")).to_contain_text(
        "22 pieces from Linen: the whole order"
    )  # complete before any script
    plan.locator(".one-more[data-field=pieces]").click()
    for column, text in enumerate(("Towel", "50 cm", "70 cm", "2")):
        write(cell(plan, "pieces", 3, column), text)
    expect(plan.locator(".spoken")).to_contain_text("23 pieces of 24", timeout=AWAKE)
    write(cell(plan, "cloths", 0, 2), "7 m")
    expect(plan.locator(".spoken")).to_contain_text("24 pieces from Linen: the whole order", timeout=AWAKE)
    expect(plan.locator("figure.drawing svg:visible")).to_contain_text("Runner")
    marks = plan.locator("details.marking")
    marks.locator("summary").click()
    expect(marks.locator("table.results")).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth") <= page.viewport_size["width"]


def test_a_row_that_is_changed_before_the_scripts_have_come_is_planned(page):
    with scripts_held_back(page):
        page.goto("./plan/lay-plan/", wait_until="commit")
        plan = page.locator(".calculator").first
        row = plan.locator("table.rows[data-field=pieces] tbody tr").first
        row.locator(".open-row").focus()  # tapped, a row is open without a script
        row.locator("input").nth(3).fill("11")
    expect(plan.locator(".spoken")).to_contain_text("21 pieces", timeout=AWAKE)
    expect(cell(plan, "pieces", 0, 3)).to_have_value("11")


def test_rows_that_were_opened_for_a_number_half_typed_elsewhere_are_shut_again(page):
    plan = opened(page)
    shut = plan.locator("table.rows[data-field=pieces] .open-row[aria-expanded=false]")
    expect(shut).to_have_count(3)
    write(cell(plan, "cloths", 0, 1), "15")
    expect(plan.locator("table.rows.in-trouble")).to_have_count(1, timeout=AWAKE)
    expect(shut).to_have_count(0)
    write(cell(plan, "cloths", 0, 1), "155")
    expect(plan.locator("table.rows.in-trouble")).to_have_count(0, timeout=AWAKE)
    expect(shut).to_have_count(3)


def test_a_bad_row_is_answered_at_its_table_and_the_old_plan_stays(page):
    plan = opened(page)
    write(cell(plan, "pieces", 0, 1), "9 m")
    refusal = plan.locator(".refusal[data-field=pieces]")
    expect(refusal).to_contain_text("“Napkin” is 900 cm wide", timeout=AWAKE)
    expect(plan.locator(".old-answer")).to_be_visible()
    write(cell(plan, "pieces", 0, 1), "40 cm")
    expect(refusal).to_be_hidden(timeout=AWAKE)


TIGHT = [["Napkin", "40 cm", "40 cm", "10"], ["Placemat", "35 cm", "48 cm", "6"], ["Runner", "42 cm", "150 cm", "1"]]


def test_a_change_that_is_offered_is_made_kept_and_undone_by_keyboard(page):
    plan = opened(page)
    offer, strips = (
        plan.get_by_role("button", name="Change it so: cut in strips along the cloth"),
        plan.locator("select[name=strips]"),
    )
    for row, texts in enumerate(TIGHT):
        for column, text in enumerate(texts):
            write(cell(plan, "pieces", row, column), text)
    write(cell(plan, "cloths", 0, 1), "140 cm")
    write(cell(plan, "cloths", 0, 2), "300 cm")
    expect(plan.locator(".notes")).to_contain_text("Cut in strips along the cloth: all 17 fit.", timeout=AWAKE)
    expect(plan.locator(".notes")).not_to_contain_text("buy")
    assert offer.bounding_box()["height"] >= 44
    offer.focus()
    page.keyboard.press("Enter")
    expect(strips).to_have_value("along")
    expect(strips).to_be_focused()
    expect(plan.locator(".spoken")).to_contain_text("17 pieces from Linen: the whole order", timeout=AWAKE)
    expect(page.get_by_role("status").filter(has_text="Done: cut in strips along the cloth.")).to_be_visible()
    page.reload()
    expect(strips).to_have_value("along")  # kept as if she had chosen it
    strips.select_option("across")
    offer.click(timeout=AWAKE)
    expect(plan.locator(".spoken")).to_contain_text("17 pieces", timeout=AWAKE)
    page.get_by_role("button", name="Undo: how it is cut in strips across the cloth").press("Enter")
    expect(strips).to_have_value("across")
    expect(plan.locator(".spoken")).to_contain_text("12 pieces of 17", timeout=AWAKE)
    expect(offer).to_be_visible(timeout=AWAKE)


def test_a_row_that_may_turn_after_all_is_changed_where_it_stands(page):
    plan = opened(page)
    pieces = [["Square", "30 cm", "30 cm", "2"], ["Band", "100 cm", "30 cm", "1"], ["Towel", "30 cm", "40 cm", "1"]]
    for row, texts in enumerate(pieces):
        for column, text in enumerate(texts):
            write(cell(plan, "pieces", row, column), text)
    write(cell(plan, "cloths", 0, 1), "103 cm")  # two selvedges of 1.5
    write(cell(plan, "cloths", 0, 2), "64 cm")  # two ends of 1 and a slant of 2
    for washed in ("change_length", "change_width"):
        blank(plan, washed).fill("0")
    plan.get_by_role("button", name="Change it so: let “Towel” turn").click(timeout=AWAKE)
    expect(cell(plan, "pieces", 2, 4)).to_have_value("yes")
    expect(plan.locator(".spoken")).to_contain_text("4 pieces from Linen: the whole order", timeout=AWAKE)
    page.get_by_role("button", name="Undo").click()
    expect(cell(plan, "pieces", 2, 4)).to_have_value("no")


def test_what_was_done_is_told_until_it_is_read_and_longer_while_the_reader_is_at_it(page):
    plan = opened(page)
    for row, texts in enumerate(TIGHT):
        for column, text in enumerate(texts):
            write(cell(plan, "pieces", row, column), text)
    write(cell(plan, "cloths", 0, 1), "140 cm")
    write(cell(plan, "cloths", 0, 2), "300 cm")
    offer = plan.get_by_role("button", name="Change it so: cut in strips along the cloth")
    expect(offer).to_be_visible(timeout=AWAKE)
    page.clock.install()
    offer.click()
    done = page.locator(".notice").filter(has_text="Done: cut in strips along the cloth.")
    expect(done).to_be_visible()
    page.clock.run_for(9_000)
    done.hover()
    page.clock.run_for(60_000)
    expect(done).to_be_visible()
    page.mouse.move(1, 1)
    page.clock.run_for(9_000)
    expect(done).to_be_visible()
    page.clock.run_for(9_000)
    expect(done).to_have_count(0)


def test_the_marking_table_is_saved_as_it_stands(page):
    plan = opened(page)
    with page.expect_download() as saving:
        reached(plan.locator("a", has_text="Save the marking table")).click()
    rows = list(csv.DictReader(io.StringIO(saving.value.path().read_bytes().decode())))
    assert saving.value.suggested_filename == "marking-table.csv"
    along = [row["mark [mm]"] for row in rows if row["direction"] == "along"]
    assert (
        along[0] == "480" and along[-1] == "4244"
    )  # 450 cm less 4.8 % in the wash, 1 cm at each end and a slant of 2 cm


def test_a_link_carries_the_numbers_and_waits_to_be_told(page):
    plan = opened(page)
    write(cell(plan, "pieces", 0, 0), '<b>"é & #1')
    write(cell(plan, "pieces", 0, 3), "5")
    expect(plan.locator(".spoken")).to_contain_text("15 pieces", timeout=AWAKE)
    expect(plan.locator(".refusal[data-field=pieces]")).to_be_hidden()
    address = plan.get_by_role("link", name="Link that carries these numbers").get_attribute("href")
    page.evaluate("document.activeElement.blur()")  # on leaving a blank it is kept once more
    forget_typed(page)
    page.goto("about:blank")
    page.goto(address)
    expect(cell(plan, "pieces", 0, 3)).to_have_value("12")
    page.get_by_role("button", name="Use these numbers").click()
    expect(cell(plan, "pieces", 0, 3)).to_have_value("5")
    expect(cell(plan, "pieces", 0, 0)).to_have_value('<b>"é & #1')
    expect(plan.locator(".spoken")).to_contain_text("15 pieces", timeout=AWAKE)
    assert "#" not in page.url


def test_a_link_that_carries_nonsense_is_passed_over(page):
    for nonsense in (
        "#carries=",
        "#carries=%7B",
        "#carries=%7B%22name%22%3A%22lay-plan%22%2C%22texts%22%3A%7B%22pieces%22%3A5%7D%7D",
    ):
        page.goto("about:blank")
        page.goto("./plan/lay-plan/" + nonsense)
        expect(page.locator(".spoken").first).to_contain_text("22 pieces")
        expect(page.locator(".offered")).to_have_count(0)


@both_windows
def test_a_piece_tells_its_marks_and_the_drawing_can_be_enlarged(page):
    plan = opened(page)
    drawing, told = plan.locator("figure.drawing"), plan.locator(".told")
    drawing.locator(".pointed-at").first.click()
    expect(told).to_contain_text(
        "Placemat, strip 1: from the straight end 0\u00a0cm to 48\u00a0cm, from the trimming line 0\u00a0cm to "
        "35\u00a0cm"
    )
    page.keyboard.press("ArrowRight")
    expect(told).to_contain_text(
        "strip 2: from the straight end 48\u00a0cm to 96\u00a0cm, from the trimming line 0\u00a0cm"
    )
    page.keyboard.press("ArrowDown")
    expect(told).to_contain_text(
        "strip 2: from the straight end 48\u00a0cm to 96\u00a0cm, from the trimming line 35\u00a0cm"
    )
    expect(plan.get_by_role("button", name="Placemat, strip 2", pressed=True)).to_have_count(1)
    before = drawing.locator(".frame > svg").bounding_box()["width"]
    button = plan.get_by_role("button", name="4×")
    assert min(button.bounding_box()["width"], button.bounding_box()["height"]) >= 44
    button.click()
    assert drawing.locator(".frame > svg").bounding_box()["width"] > 3.9 * before
    write(cell(plan, "pieces", 0, 3), "11")
    expect(plan.locator(".spoken")).to_contain_text("21 pieces", timeout=AWAKE)
    expect(button).to_have_attribute("aria-pressed", "true")  # a new answer keeps the size
    assert page.evaluate("document.documentElement.scrollWidth") <= page.viewport_size["width"]


def test_who_points_at_a_piece_is_told_of_it_again_when_the_plan_changes(page):
    plan = opened(page)
    plan.locator("figure.drawing .pointed-at").nth(1).click()
    told = plan.locator(".told")
    expect(told).to_contain_text(
        "strip 1: from the straight end 0\u00a0cm to 48\u00a0cm, from the trimming line 35\u00a0cm to 70\u00a0cm"
    )
    cell(plan, "pieces", 0, 1).evaluate(
        "(blank) => { blank.value = '34 cm'; blank.dispatchEvent(new Event('input', { bubbles: true })); }"
    )
    expect(told).to_contain_text("from the trimming line 34\u00a0cm to 68\u00a0cm", timeout=AWAKE)
    expect(plan.locator("figure.drawing .pointed-at").nth(1)).to_be_focused()
    expect(plan.get_by_role("button", name="from the trimming line 34", pressed=True)).to_have_count(1)


@both_windows
def test_a_screen_shows_a_long_cloth_laid_out_for_it_and_phone_and_paper_do_not(page, width):
    page.add_init_script(PYTHON_SENT_AWAY)
    page.goto("./plan/lay-plan/")
    drawing = reached(page.locator("figure.drawing:has(.on-screens)").first)
    shown = drawing.locator("svg:visible")
    expect(shown).to_have_count(1)
    assert shown.evaluate("(svg) => svg.matches('.on-screens')") == (width == 1280)
    expect(shown.get_by_text("from 240")).to_have_count(0 if width == 1280 else 1)  # where a second stretch begins
    page.evaluate("print = () => {}")  # without it, what is explained is not printed
    page.get_by_role("button", name="Print the whole page").click()
    page.emulate_media(media="print")
    expect(shown).to_have_count(1)
    assert not shown.evaluate("(svg) => svg.matches('.on-screens')")


def test_what_cannot_be_planned_is_said_in_one_sentence_at_its_table(page):
    plan = opened(page)
    plan.locator("details.more > summary").click()
    for table, row, field, part in (
        ("pieces", ("Napkin", "46 cm", "46 cm", "1000000"), "pieces", "from 1 to 1000"),
        ("pieces", ("Napkin", "46 cm", "46 cm", "0"), "pieces", "from 1"),
        ("pieces", ("Napkin", "9 m", "9 m", "1"), "pieces", "900 cm"),
        ("flaws", ("9 m", "10 cm", "5 cm", "5 cm"), "flaws", "lies outside"),
        ("repeats", ("0", "30 cm"), "repeats", "repeat of 0"),
    ):
        good = [cell(plan, table, 0, column).input_value() for column in range(len(row))]
        for column, text in enumerate(row):
            write(cell(plan, table, 0, column), text)
        refusal = plan.locator(f".refusal[data-field={field}]")
        expect(refusal).to_contain_text(part, timeout=AWAKE)
        assert refusal.inner_text().count(". ") <= 1 and plan.locator(".refusal:visible").count() == 1
        expect(plan.locator(".old-answer")).to_be_visible()
        for column, text in enumerate(good):
            write(cell(plan, table, 0, column), text)
        expect(refusal).to_be_hidden(timeout=AWAKE)


def test_five_hundred_pieces_are_drawn_told_and_listed_and_the_next_keystroke_breaks_in(page):
    plan = opened(page)
    for row, copies in enumerate(("300", "150", "50")):
        write(cell(plan, "pieces", row, 3), copies)
    write(cell(plan, "cloths", 0, 2), "95 m")
    expect(plan.locator(".spoken")).to_contain_text("500 pieces from Linen: the whole order", timeout=AWAKE)
    refusal = plan.locator(".refusal[data-field=pieces]")
    write(cell(plan, "pieces", 0, 3), "0")  # whether or not the plan could still be bettered
    expect(refusal).to_contain_text("from 1", timeout=AWAKE)
    expect(plan.locator(".old-answer")).to_be_visible()
    write(cell(plan, "pieces", 0, 3), "300")
    expect(refusal).to_be_hidden(timeout=AWAKE)
    pieces = plan.locator("figure.drawing svg:visible .pointed-at")
    expect(pieces).to_have_count(500, timeout=AWAKE)
    expect(plan.locator(".notes")).not_to_contain_text("still being looked for", timeout=AWAKE)
    listed = plan.locator("table.results", has_text="Marking table").locator("tbody tr")
    assert listed.count() > 50
    for wide in (390, 1280):
        page.set_viewport_size({"width": wide, "height": 844})
        expect(pieces).to_have_count(500)
        plan.locator(".told").evaluate("(it) => { it.textContent = ''; }")
        pieces.nth(499).click()
        expect(plan.locator(".told")).to_contain_text("from the straight end")
        assert page.evaluate("document.documentElement.scrollWidth") <= wide


@both_windows
def test_the_cuts_of_a_plan_are_read_without_pushing_the_table_aside(page):
    page.add_init_script(PYTHON_SENT_AWAY)
    plan = opened(page)
    cuts = plan.locator(".wide", has_text="Cuts in working order")
    marks = plan.locator(".wide", has_text="Marking table")
    for table in map(reached, (cuts, marks)):
        assert table.evaluate("(box) => box.scrollWidth - box.clientWidth") <= 0
