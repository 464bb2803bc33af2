"""The home page: what the handbook does in a sentence, five drawings on one thread, the ways in, and the work that was
begun."""

import json
import re

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.reader import WAKING, blank, calculator, one_window
from tests.browser.test_jobs import put
from tests.documents.exchange.test_handing import JOB

MOST = 2000  # [CSS px] how long the page is on a phone
TOP = "it => it.getBoundingClientRect().top + scrollY"
DRAWN = "it => [...it.querySelectorAll('[points]')].map((each) => each.getAttribute('points')).join()"
LEFT_EMPTY = """() => [...document.querySelectorAll("figure.small > svg")].filter((svg) => {
    const { width, height } = svg.getBoundingClientRect();
    return width < 60 || height < 20;
}).length"""


def go_on(page: Page) -> Locator:
    return page.locator(".go-on a")


def named(name: str, **more: object) -> str:
    """A job of that name."""
    return json.dumps({**json.loads(JOB), "name": name, **more})


@one_window
def test_it_says_what_it_is_for_and_is_read_in_a_glance(page: Page):
    page.goto("./")
    expect(page.locator("h1")).to_contain_text("hemmed home textiles")
    assert page.evaluate("document.documentElement.scrollHeight") <= MOST
    page.evaluate("document.querySelector('.ways').style.paddingTop = '700px'")
    assert page.evaluate("document.documentElement.scrollHeight") > MOST


def test_five_drawings_hang_on_one_thread_and_four_show_the_ways_in(page: Page):
    page.goto("./")
    expect(page.locator(".thread li figure svg")).to_have_count(5)
    expect(page.locator(".ways li figure svg")).to_have_count(4)
    expect(page.locator("figure.small :is(text, figcaption)")).to_have_count(0)
    assert page.evaluate(LEFT_EMPTY) == 0
    names = page.locator(".thread li, .ways li a").all_inner_texts()
    assert all(names) and len(set(names)) == 9


@one_window
def test_drawings_and_numbers_are_the_readers_own(page: Page):
    page.goto("./")
    built = page.locator(".ways li:nth-child(3) svg").evaluate(DRAWN)
    whose = page.locator(".ways [data-hers]")
    expect(whose).to_have_text(["Our linen"] * 4)
    page.goto("./corners/mitre/")
    section = calculator(page, "mitre-marks")
    for hem in ("hem_1", "hem_2"):
        blank(section, hem).fill("5")
    expect(section.locator(".spoken")).to_contain_text("10 cm", timeout=WAKING)
    page.goto("./")
    expect(page.locator(".ways li:nth-child(3) .number")).to_have_text("10 cm", timeout=WAKING)
    expect(whose.nth(2)).to_have_text("Yours")
    expect(whose.nth(3)).to_have_text("Our linen")
    after = page.locator(".ways li:nth-child(3) svg").evaluate(DRAWN)
    assert after != built
    expect(page.locator(".ways figure.small text")).to_have_count(0)


@one_window
def test_the_job_in_work_comes_first_and_nothing_moves_for_it(page: Page):
    page.goto("./")
    expect(go_on(page)).to_have_attribute("href", re.compile("/batch/$"))
    place = page.locator("h2").first.evaluate(TOP)
    name = "Napkins <b>with</b> a name that goes on for longer than any phone is wide"
    put(page, "job", "old", named("Older"))
    page.wait_for_timeout(1100)  # when it was kept is known to the second
    put(page, "job", "a", named(name))
    expect(go_on(page).locator("strong")).to_have_text(f"Go on with {name}")
    assert page.locator("h2").first.evaluate(TOP) == place
    page.reload()
    go_on(page).click()
    page.wait_for_url("**/batch/")
    expect(page.locator(".job-in-hand [name=name]")).to_have_value(name, timeout=WAKING)


@one_window
def test_a_finished_job_or_a_broken_one_is_not_gone_on_with(page: Page):
    page.goto("./")
    put(page, "job", "a", named("Done", archived=True))
    put(page, "job", "b", "{")
    page.reload()
    page.wait_for_function("() => document.querySelector('.go-on a')")
    expect(go_on(page)).to_have_attribute("href", re.compile("/batch/$"))
    put(page, "job", "c", named("In work"))
    expect(go_on(page).locator("strong")).to_have_text("Go on with In work")


@pytest.mark.parametrize("width", [390, 820, 1280])
def test_every_entry_is_a_target_for_a_thumb(page: Page, width: int):
    page.goto("./")
    small = page.evaluate("""() => [...document.querySelectorAll(".ways a, .lines a, .go-on a")]
        .filter((it) => it.getBoundingClientRect().height < 44).map((it) => it.textContent)""")
    assert small == []
