"""A lay plan on paper: a cutting list on two sheets, however it is printed, each with the order, the house and the
day."""

from collections.abc import Iterator
from datetime import date

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import (
    WAKING,
    blank,
    calculator,
    choose_ruler,
    elsewhere,
    move,
    one_window,
    printed,
    reached,
    refusal,
    says,
)

PAPERS = ("A4", "Letter")
SMALLEST = 7.5  # [pt]
NO_HOUSE = "The handbook’s numbers"  # whose they are where the reader has no house of her own
OWN_BESIDE = "Own numbers; the rest the handbook’s"  # where she has written some into the page


def sheets(page: Page, paper: str = "A4") -> list[str]:
    """The words of every printed sheet, as by the browser's menu."""
    with printed(page, paper) as pdf:
        assert all(
            word["x1"] < sheet.width and word["bottom"] < sheet.height
            for sheet in pdf.pages
            for word in sheet.extract_words()
        )
        small = {letter["text"] for sheet in pdf.pages for letter in sheet.chars if letter["size"] < SMALLEST}
        assert small - {" ", "\N{NO-BREAK SPACE}"} == set(), "too small to read beside the work"
        return [sheet.extract_text().replace("\N{NO-BREAK SPACE}", " ") for sheet in pdf.pages]


def today() -> str:
    now = date.today()
    return f"{now.day} {now:%B %Y}"


def opened(page: Page):
    page.goto("./plan/lay-plan/")
    expect(page.get_by_role("button", name="Print the cutting list")).to_be_visible(timeout=WAKING)
    return calculator(page, "lay-plan")


@pytest.fixture(scope="module")
def untouched(browser: Browser, served: str) -> Iterator[Page]:
    """The plan that the page came with, for all that is asked of it."""
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844})
    opened(page)
    yield page
    page.context.close()


@pytest.mark.parametrize(("paper", "ruler"), [("A4", "cm 1/10"), ("Letter", "in 1/16")])
def test_the_browsers_own_print_gives_the_cutting_list_on_two_sheets(untouched: Page, paper: str, ruler: str):
    choose_ruler(untouched, ruler)
    says(calculator(untouched, "lay-plan"), "22 pieces")
    first, second = sheets(untouched, paper)
    assert (
        "The order" in first
        and "22 pieces" in first
        and "Marking table" in second
        and "Cuts in working order" in second
    )
    assert "How to read the plan" not in first + second
    assert (
        untouched.evaluate("document.documentElement.className.includes('only-sheets')") is False
    )  # the screen is as it was


def test_the_button_prints_the_same_sheets(untouched: Page):
    menu = sheets(untouched)
    untouched.evaluate("print = () => (window.printed = true)")
    untouched.get_by_role("button", name="Print the cutting list").click()
    assert untouched.evaluate("window.printed") and sheets(untouched) == menu


@one_window
def test_each_sheet_bears_the_open_jobs_name_the_house_and_the_day(page: Page):
    page.goto("./house/")
    page.get_by_role("button", name="Set down your own").click()
    name = page.locator('.house-body [name="name"]')
    name.fill("Blue door workroom")
    name.blur()
    expect(page.get_by_role("combobox", name="Method followed")).to_contain_text("Blue door workroom")
    move(page, "./batch/")
    page.get_by_role("button", name="Keep this as a job").click()
    job = page.locator(".job-in-hand [name=name]")
    expect(job).to_be_visible(timeout=WAKING)
    job.fill("Long table")
    job.blur()
    expect(page.locator(".job-in-hand > .said")).to_contain_text("Kept", timeout=WAKING)
    plan = opened(page)
    expect(page.locator(".whose-method")).to_contain_text("Blue door workroom")
    says(plan, "22 pieces")
    heading = f"Order Long table Blue door workroom {today()}"
    assert [sheet.splitlines()[0] for sheet in sheets(page)] == [heading, heading]
    blank(plan, "order").fill("Christening, six places")
    expect(plan.locator(".headed .name").first).to_have_text("Christening, six places", timeout=WAKING)
    says(plan, "22 pieces")
    assert [sheet.splitlines()[0] for sheet in sheets(page)] == [
        heading.replace("Long table", "Christening, six places")
    ] * 2
    blank(plan, "order").fill("")
    expect(plan.locator(".headed .name").first).to_be_empty(timeout=WAKING)
    says(plan, "22 pieces")
    assert [sheet.splitlines()[0] for sheet in sheets(page)] == [heading, heading]


def test_without_a_job_or_a_house_of_her_own_the_day_and_whose_numbers_stand_are_written(untouched: Page):
    assert [sheet.splitlines()[0] for sheet in sheets(untouched)] == [f"Order {NO_HOUSE} {today()}"] * 2


@one_window
def test_sheets_of_numbers_that_were_since_refused_say_so(page: Page):
    plan = opened(page)
    blank(plan, "selvedge").fill("9 m")
    expect(refusal(plan, "selvedge")).to_be_visible(timeout=WAKING)
    assert "This answer is for the numbers this page came with." in sheets(page)[0].replace("\n", " ")


@one_window
def test_the_sheets_name_each_cloth_as_bought_and_what_the_wash_takes(page: Page):
    plan = opened(page)
    blank(plan, "change_length").fill("-8.1")
    blank(plan, "change_width").fill("-3")
    says(plan, "of 22 ordered can be cut")
    expect(plan.locator(".answer")).to_contain_text("413.6 cm", timeout=WAKING)
    expect(plan.locator(".answer")).to_contain_text("145.5 cm", timeout=WAKING)
    for paper in PAPERS:
        first, _ = sheets(page, paper)
        assert (
            "Linen 150 cm 450 cm on; 1.5 cm off each −8.1 % along, −3 % across 145.5 cm about 413.6 cm"
            in first.replace("\n", " ")
        )


@one_window
def test_every_sheet_of_a_long_list_bears_its_order_and_no_head_of_a_table_ends_one(page: Page):
    plan = opened(page)
    blank(plan, "order").fill("Long hall")
    row, cloth = (plan.locator(f"table.rows[data-field={each}] tbody tr").nth(0) for each in ("pieces", "cloths"))
    reached(row.locator("input").nth(3)).fill("290")
    reached(cloth.locator("input").nth(2)).fill("54 m")
    says(plan, "300 pieces")
    heads = ("Strip From To", "Step Cut At", "Cloth Width", "Piece Cut", "cut is")
    for paper in PAPERS:
        listed = sheets(page, paper)
        assert len(listed) > 4
        assert [sheet.splitlines()[0] for sheet in listed] == [f"Order Long hall {OWN_BESIDE} {today()}"] * len(listed)
        assert [sheet.splitlines()[-1] for sheet in listed if sheet.splitlines()[-1].startswith(heads)] == []
        with printed(page, paper) as pdf:
            drawn = [each for each in pdf.pages[0].curves + pdf.pages[0].rects + pdf.pages[0].lines if each["top"] > 90]
            high = max(each["bottom"] for each in drawn) - min(each["top"] for each in drawn)
        assert high > pdf.pages[0].height * 0.6, "a drawing of many stretches fills its sheet"
