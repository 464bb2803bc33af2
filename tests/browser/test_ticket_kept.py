"""What is measured, ticked and settled on a work ticket is kept: loaded again, without a network, in a job."""

import re

from playwright.sync_api import Browser, Page, expect

from tests.browser.reader import ANSWERS_HELD_BACK, WAKING, elsewhere, hold_back, let_through, reached
from tests.browser.work_ticket import now, open_ticket


def test_a_measured_size_is_compared_and_a_bad_one_gets_one_sentence(phone: Page):
    blank, said = phone.locator('[name="7.width"]'), phone.locator('[data-size="7.width"]')
    blank.fill("40 banana")
    blank.blur()
    expect(said).to_contain_text("is not a length", timeout=WAKING)
    expect(blank).to_have_attribute("aria-invalid", "true")
    phone.reload()
    expect(said).to_contain_text("is not a length", timeout=WAKING)
    expect(blank).to_have_value("40 banana")  # nothing that was typed is lost
    blank.fill("40.2")
    blank.blur()
    expect(said).to_have_text("2 mm wider than the ticket says; within 4 mm.", timeout=WAKING)
    expect(blank).to_have_value("40.2 cm")


def test_several_pieces_are_measured_with_their_diagonals(phone: Page):
    for name, text in (("8.width", "39.8"), ("7.diagonal_1", "56.6"), ("7.diagonal_2", "57.2")):
        phone.locator(f'[name="{name}"]').fill(text)
        phone.locator(f'[name="{name}"]').blur()
    expect(phone.locator('[data-size="7.square"]')).to_have_text(
        "The diagonals differ by 6 mm, more than the 5 mm allowed: not square, put it aside.", timeout=WAKING
    )
    expect(phone.locator(".all-sizes")).to_have_text(
        "Width of 2 pieces: 40 cm on average, as the ticket says; from the smallest to the largest it is 4 mm."
    )
    assert phone.evaluate("document.documentElement.scrollWidth") == 390


def test_what_is_being_measured_while_the_ticket_is_drawn_afresh_is_kept(browser: Browser, served: str):
    page = elsewhere(browser, served, viewport={"width": 390, "height": 844})
    page.context.add_init_script(ANSWERS_HELD_BACK)
    open_ticket(page)
    hold_back(page)
    page.locator("[name=cloth]").select_option("Half linen, light")
    size = page.locator('[name="7.width"]')
    size.press_sequentially("40.2")
    let_through(page)
    expect(page.locator("[data-setting=needle]")).to_contain_text("80/12", timeout=WAKING)
    expect(size).to_be_focused()
    expect(size).to_have_value("40.2")
    page.keyboard.press("Tab")
    expect(size).to_have_value("40.2 cm", timeout=WAKING)
    page.reload()
    expect(size).to_have_value("40.2 cm", timeout=WAKING)
    page.context.close()


def test_what_was_ticked_and_measured_stays_and_the_work_goes_on_without_a_network(phone: Page):
    phone.get_by_role("button", name="+1 bundle: Second fold").tap()
    expect(phone.locator('[data-ticks="hem"] .count')).to_contain_text("1 of 3 bundles", timeout=WAKING)
    phone.reload()
    expect(phone.locator('[data-ticks="hem"] .count')).to_contain_text("1 of 3 bundles", timeout=WAKING)
    expect(phone.locator('[name="7.width"]')).to_have_value("40.2 cm")
    expect(phone.locator('[name="7.diagonal_2"]')).to_have_value("57.2 cm")
    phone.wait_for_function(
        "() => navigator.serviceWorker.controller !== null", timeout=WAKING
    )  # the handbook is kept: letters not used yet come from it
    phone.context.set_offline(True)
    phone.locator('[name="bundle"]').fill("9")
    phone.locator('[name="bundle"]').blur()
    expect(phone.locator(".order")).to_contain_text("2 bundles of 9", timeout=WAKING)
    phone.get_by_role("button", name="+1 bundle: Trim").tap()
    expect(phone.locator('[data-ticks="trim"] .count')).to_contain_text("9 of 18 pieces", timeout=WAKING)
    phone.context.set_offline(False)


def test_a_job_has_its_ticket_and_keeps_what_is_ticked_and_settled_on_it(browser: Browser, served: str):
    phone = elsewhere(
        browser, served, viewport={"width": 390, "height": 844}, has_touch=True, reduced_motion="reduce"
    )  # where nothing is ticked yet that a new job could take over
    phone.goto("./batch/")
    reached(phone.locator("section[data-calculator=finished-size] [name=hem]")).fill("3 cm")
    phone.get_by_role("button", name="Keep this as a job").tap()
    name = phone.locator(".job-in-hand [name=name]")
    expect(name).to_have_value(re.compile("Job of"), timeout=WAKING)
    name.fill("Long table")
    name.blur()
    expect(phone.locator(".job-in-hand > .said")).to_contain_text("Kept", timeout=WAKING)
    phone.locator(".to-ticket").tap()
    expect(phone.locator("#ticket-name")).to_have_text("Long table", timeout=WAKING)
    assert phone.locator(".ticket-step .of-job:visible").count() == 0
    phone.get_by_role("button", name="At the machine").tap()
    expect(now(phone).locator(".place")).to_have_text(re.compile("^Step 1 of .* · Long table$"))
    expect(now(phone).locator(".of-job")).to_be_visible()
    phone.get_by_role("button", name="Leave").tap()
    phone.get_by_role("button", name="+1 bundle: Pin the corners").tap()
    expect(phone.locator('[data-ticks="pin"] .count')).to_contain_text(re.compile("1 of . bundles"), timeout=WAKING)
    phone.locator("[name=cloth]").select_option("Half linen, light")
    expect(phone.locator("[data-setting=needle]")).to_contain_text("80/12", timeout=WAKING)
    phone.reload()
    expect(phone.locator("#ticket-name")).to_have_text("Long table", timeout=WAKING)
    expect(phone.locator('[data-ticks="pin"] .count')).to_contain_text(re.compile("1 of . bundles"))
    expect(phone.locator("[data-setting=needle]")).to_contain_text("80/12")
    phone.context.close()
