"""Nothing typed is lost, however soon a page is left: what was typed last is put down at once, put back when its
document is opened next, never over something newer, and dropped once it is kept."""

import json

import pytest
from playwright.sync_api import Page, expect

from scripts.bench.leave import PLACES, Reader, left_once
from tests.browser.reader import (
    ANSWERS_HELD_BACK,
    WAKING,
    hold_back,
    let_through,
    one_window,
    reached,
    scripts_held_back,
    until,
)
from tests.browser.test_jobs import job_is, put
from tests.documents.exchange.test_handing import JOB
from tests.runtime.test_journal import COUNT_OPENED

pytestmark = one_window
JOB_PLACE, METHOD, TICKET, _ = PLACES
DRAFTS = "() => Object.keys(localStorage).filter((name) => name.includes('draft/')).length"
WARNS = """() => {
    const leaving = new Event("beforeunload", { cancelable: true });
    dispatchEvent(leaving);
    return leaving.defaultPrevented;
}"""
FULL = "() => { Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }; }"
#: Whether each stands in the files that windows write what is typed into, and as many files have one of them.
IN_FILES = """async (written) => {
    const root = await navigator.storage.getDirectory();
    const texts = [];
    for await (const folder of root.values())
        for await (const [name, file] of folder.entries())
            if (name.startsWith("typed ")) texts.push(await (await file.getFile()).text().catch(() => ""));
    const having = texts.filter((text) => written.some((each) => text.includes(each)));
    return having.length === written.length && written.every((each) => having.some((text) => text.includes(each)));
}"""
CHANGE = """async ([id, entries]) => {
    const { keep, last } = await import(__md_scope + "assets/javascript/store.js");
    const { text, revision } = await last("job", id);
    await keep("job", id, JSON.stringify({ ...JSON.parse(text), ...entries }), revision);
}"""


def drafts_are(page: Page, number: int) -> None:
    page.wait_for_function(f"({DRAFTS})() === {number}", timeout=WAKING)


def notes(page: Page):
    return page.locator(".walk [name=notes]")


def open_job(page: Page) -> None:
    page.goto("./batch/#job=sage-napkins")
    page.wait_for_selector(".walk:not([inert]) .with-job:not([hidden])", timeout=WAKING)
    reached(notes(page))


@pytest.mark.parametrize(
    ("place", "ways"),
    [(JOB_PLACE, ("reload", "close", "back")), (METHOD, ("back", "reload")), (TICKET, ("link", "close", "reload"))],
    ids=["job", "method", "ticket"],
)
def test_left_at_once_in_whatever_way_everything_typed_stands_there_again(page: Page, served: str, place, ways):
    reader = Reader(page.context, f"{served}/")
    reader.keep()
    lost = [fault for n, way in enumerate(ways, 1) for fault in left_once(reader, place, way, n, 0.02 * n)]
    assert lost == []
    drafts_are(reader.page, 0)


def test_it_is_said_quietly_and_the_draft_is_dropped_once_it_is_kept(page: Page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    open_job(page)
    said = page.locator(".job-in-hand > .said")
    hold_back(page)
    notes(page).fill("Shrinks")
    assert page.evaluate(DRAFTS) == 1
    assert not page.evaluate(WARNS), "the draft holds it"
    page.wait_for_timeout(800)  # it is on its way
    notes(page).fill("Shrinks more")
    page.reload()
    expect(said).to_have_text("What you typed last was restored.", timeout=WAKING)
    expect(notes(page)).to_have_value("Shrinks more")
    job_is(page, notes="Shrinks more")
    drafts_are(page, 0)
    page.reload()
    page.wait_for_selector(".walk:not([inert]) .with-job:not([hidden])", timeout=WAKING)
    expect(said).to_have_text("")
    reached(notes(page))
    heard = []
    for text in ("once", "twice"):
        notes(page).fill(text)
        expect(said).to_contain_text("Kept at", timeout=WAKING)
        heard.append(said.text_content())
        said.evaluate("(it) => { it.textContent = ''; }")
        page.wait_for_timeout(1000)
    assert heard[0] != heard[1]


def test_each_window_has_its_own_drafts_and_what_another_kept_later_stays(page: Page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    open_job(page)
    hold_back(page)
    notes(page).fill("from the first")
    other = page.context.new_page()
    open_job(other)
    expect(notes(other)).to_have_value(json.loads(JOB).get("notes", ""))
    assert other.evaluate(DRAFTS) == 1, "the first window is there and keeps it itself"
    other.evaluate(CHANGE, ["sage-napkins", {"notes": "later, elsewhere"}])
    page.close()
    other.reload()
    told = other.locator(".notice", has_text="Not put back")
    expect(told).to_contain_text("Notes “from the first”", timeout=WAKING)
    expect(notes(other)).to_have_value("later, elsewhere")
    other.goto("./house/jobs/")
    open_job(other)
    expect(told).to_contain_text("Notes “from the first”", timeout=WAKING)
    told.get_by_role("button", name="Let it go").click()
    drafts_are(other, 0)


def test_what_was_typed_into_a_job_that_was_then_deleted_is_told(page: Page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    open_job(page)
    hold_back(page)
    notes(page).fill("Shrinks more")
    page.goto("./house/jobs/")
    page.evaluate("async () => (await import(__md_scope + 'assets/javascript/store.js')).remove('job', 'sage-napkins')")
    page.reload()
    told = page.locator(".notice", has_text="no longer kept here")
    expect(told).to_contain_text("“Shrinks more”", timeout=WAKING)
    told.get_by_role("button", name="Let it go").click()
    expect(told).to_have_count(0)
    assert page.evaluate(DRAFTS) == 0


def test_where_no_draft_can_be_put_down_the_visit_goes_on_and_who_leaves_is_warned(page: Page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    open_job(page)
    page.evaluate(FULL)
    assert not page.evaluate(WARNS)
    hold_back(page)
    notes(page).fill("Shrinks more")
    assert page.evaluate(WARNS)
    let_through(page)
    job_is(page, notes="Shrinks more")
    page.wait_for_function(f"!({WARNS})()", timeout=WAKING)


def test_what_was_typed_before_the_scripts_came_goes_into_the_job_in_hand(page: Page):
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    page.evaluate("sessionStorage.setItem(__md_scope.pathname + 'job', 'sage-napkins')")
    hem = page.locator("[data-calculator=finished-size] [name=hem]")
    with scripts_held_back(page):
        page.goto("./batch/", wait_until="commit")
        reached(hem).fill("3.3 cm")
    page.wait_for_selector(".walk:not([inert]) .with-job:not([hidden])", timeout=WAKING)
    expect(hem).to_have_value("3.3 cm")
    typed = json.loads(JOB)["typed"]
    job_is(page, typed={**typed, "finished-size": {**typed.get("finished-size", {}), "hem": "3.3 cm"}})


def test_a_tick_whose_page_is_left_at_once_is_ticked_once(page: Page):
    page.context.add_init_script(ANSWERS_HELD_BACK)
    page.goto("./house/jobs/")
    put(page, "job", "sage-napkins", JOB)
    page.goto("./house/ticket/#job=sage-napkins")
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)
    hold_back(page)
    page.get_by_role("button", name="At the machine").click()
    for _ in range(2):
        page.keyboard.press("+")
    page.reload()
    expect(page.locator(".ticket .said")).to_have_text("What you ticked last was restored.", timeout=WAKING)
    first = page.locator(".ticket-step").first
    done = first.locator(".count").text_content()
    drafts_are(page, 0)
    page.reload()
    expect(page.locator(".ticket.is-live")).to_be_visible(timeout=WAKING)
    assert first.locator(".count").text_content() == done


def test_two_windows_write_at_once_each_letter_into_a_file_that_is_open_already(page: Page):
    windows = {"piece_width": page, "piece_length": page.context.new_page()}
    for name, each in windows.items():
        each.goto("./plan/pieces/")
        each.wait_for_selector(".calculator .answer", timeout=WAKING)
        each.locator(f".calculator [name={name}]").first.fill("30")
    until(page, IN_FILES, ['"cut_width":"30"', '"cut_length":"30"'])
    writers = [next(each for each in window.workers if "journal" in each.url) for window in windows.values()]
    for each in writers:
        each.evaluate(COUNT_OPENED)
    for letter in ".25 cm":
        for name, each in windows.items():
            each.locator(f".calculator [name={name}]").first.press_sequentially(letter)
    until(page, IN_FILES, ['"cut_width":"30.25 cm"', '"cut_length":"30.25 cm"'])
    opened = [name for each in writers for name in each.evaluate("() => self.opened")]
    assert [name for name in opened if name.startswith("typed ")] == []
