"""Whoever comes back finds what was in hand, by its name, and begins a job wherever numbers stand."""

import json

from playwright.sync_api import Page, expect

from tests.browser.reader import WAKING, blank, calculator, move, one_window, reached
from tests.browser.test_jobs import put
from tests.documents.exchange.test_handing import JOB

pytestmark = one_window
NAME = json.loads(JOB)["name"]


def test_a_new_window_begins_with_the_job_that_was_in_hand_last_until_it_is_put_down(page: Page):
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    page.goto("./batch/#job=sage-napkins")
    expect(page.locator(".job-in-hand [name=name]")).to_have_value(NAME, timeout=WAKING)
    new = page.context.new_page()
    page.close()
    new.goto("./house/ticket/")
    expect(new.locator(".ticket-body")).to_contain_text(NAME, timeout=WAKING)
    move(new, "./corners/mitre/")
    line = new.locator(".in-hand")
    expect(line.locator("summary")).to_contain_text(f"Your measures: {NAME}", timeout=WAKING)
    line.locator("summary").click()
    line.get_by_role("link", name="Its batch").click()
    expect(new.locator(".job-in-hand [name=name]")).to_have_value(NAME, timeout=WAKING)
    new.locator(".in-hand summary").click()
    new.locator("[data-job-put-down]").click()
    expect(new.locator(".job-in-hand .without-job")).to_be_visible(timeout=WAKING)
    expect(new.locator(".in-hand")).not_to_contain_text(NAME)
    third = new.context.new_page()
    third.goto("./batch/")
    expect(third.locator(".job-in-hand .without-job")).to_be_visible(timeout=WAKING)


def test_a_finished_job_is_in_no_hand(page: Page):
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    page.goto("./batch/#job=sage-napkins")
    expect(page.locator(".job-in-hand [name=name]")).to_have_value(NAME, timeout=WAKING)
    move(page, "./house/jobs/")
    page.get_by_role("button", name="Move to finished jobs").click()
    expect(page.locator(".jobs-page .said")).to_contain_text("finished jobs", timeout=WAKING)
    new = page.context.new_page()
    for each in (page, new):
        each.goto("./batch/")
        expect(each.locator(".job-in-hand .without-job")).to_be_visible(timeout=WAKING)


def test_a_job_is_begun_from_any_calculator_with_what_is_in_hand(page: Page):
    page.goto("./fold/hems/")
    section = calculator(page, "finished-size")
    hem = blank(section, "hem")
    hem.fill("3.3 cm")
    hem.blur()
    section.get_by_role("link", name="Begin a job").click()
    name = page.locator(".job-in-hand [name=name]")
    expect(name).to_be_focused(timeout=WAKING)
    name.fill("Long table")
    name.blur()
    hem = page.locator("[data-calculator=finished-size] [name=hem]")
    reached(hem)
    expect(hem).to_have_value("3.3 cm", timeout=WAKING)
    expect(page.locator(".in-hand summary")).to_contain_text("Long table", timeout=WAKING)
    page.goto("./fold/hems/")
    expect(blank(calculator(page, "finished-size"), "hem")).to_have_value("3.3 cm", timeout=WAKING)
    expect(page.get_by_role("link", name="Begin a job")).to_be_hidden()
