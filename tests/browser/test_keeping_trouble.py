"""Where something cannot be kept or read: one clear sentence, the rest works, and everything can still be saved as a
file."""

import json
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from calculators.documents.json_text import write_json
from tests.browser.reader import LESS_PATIENT, elsewhere, move, one_window, reached
from tests.documents.exchange.test_handing import JOB, WRITTEN
from tests.documents.exchange.whole_file import read_file

#: The browser's own answer when the disk is full, given at the first thing that is put down.
FULL = """() => {
    window.put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); };
}"""
KEEP = "async ([kind, id, text]) => (await import(__md_scope + 'assets/javascript/store.js')).keep(kind, id, text, 0)"


def newest(page: Page, kind: str) -> list[str]:
    return page.evaluate(
        "async (kind) => (await (await import(__md_scope + 'assets/javascript/store.js')).newest(kind))"
        ".map(({ text }) => text)",
        kind,
    )


def everything(page: Page):
    """The file of everything, as the page saves it."""
    page.goto("./house/hand-over/")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save everything").click()
    return read_file(Path(saved.value.path()).read_text("utf-8"))


def write(page: Page, name: str, text: str) -> None:
    place = reached(page.locator(f"[name='{name}']"))
    place.fill(text)
    place.blur()


@one_window
def test_without_room_one_sentence_and_what_stands_on_the_page_is_kept_later(page: Page):
    page.goto("./house/jobs/")
    page.evaluate(KEEP, ["job", "sage-napkins", JOB])
    page.goto("./batch/#job=sage-napkins")
    expect(page.locator(".job-in-hand [name=name]")).to_have_value("Napkins in sage linen")
    page.evaluate(FULL)
    write(page, "time", "5 hours")
    expect(page.locator(".said").first).to_contain_text("no room left")
    assert newest(page, "job") == [JOB]
    page.evaluate("() => { IDBObjectStore.prototype.put = window.put; }")
    write(page, "cost", "40")
    expect(page.locator(".said").first).to_contain_text("Kept at")
    kept = json.loads(newest(page, "job")[0])
    assert (kept["time"], kept["cost"]) == ("5 hours", "40"), "what could not be kept then is kept now"


@one_window
@pytest.mark.parametrize(
    ("text", "words"),
    [("{damaged", "damaged"), (write_json({"format": "job", "version": 99, "name": "x"}), "newer handbook")],
    ids=["damaged", "to come"],
)
def test_a_record_that_cannot_be_read_is_said_left_and_saved(page: Page, text: str, words: str):
    page.goto("./house/jobs/")
    method = text.replace('"job"', '"house method"')
    for kept in (
        ["job", "odd", text],
        ["job", "sage-napkins", JOB],
        ["method", "odd", method],
        ["method", "summer-linen", WRITTEN],
    ):
        page.evaluate(KEEP, kept)
    page.evaluate("async () => (await import(__md_scope + 'assets/javascript/store.js')).choose('method', 'odd')")
    expect(page.locator(".job-list .trouble")).to_contain_text(words)
    expect(page.locator(".job-list")).to_contain_text("20 pieces")
    page.goto("./batch/#job=odd")
    expect(page.locator(".said").first).to_contain_text(words)
    expect(page.get_by_role("button", name="Keep this as a job")).to_be_visible()
    expect(page.locator(".whose-method")).to_contain_text("Until then these are the handbook’s numbers")
    page.goto("./house/")
    expect(page.locator(".house-body .trouble")).to_contain_text(words)
    saved = {(each.kind, each.identity): each.raw for each in everything(page).kept}
    assert saved == {
        ("job", "odd"): text,
        ("job", "sage-napkins"): JOB,
        ("method", "odd"): method,
        ("method", "summer-linen"): WRITTEN,
    }
    assert sorted(newest(page, "job")) == sorted([text, JOB])


#: Said to a page before it is opened: what Chromium answers where the browser's own settings block a site's data.
DENIED = """{
    const denied = (words) => new DOMException(words, 'SecurityError');
    for (const name of ['localStorage', 'sessionStorage'])
        Object.defineProperty(window, name, { get() { throw denied(`Access to ${name} is denied.`); } });
    IDBFactory.prototype.open = () => Object.create(IDBOpenDBRequest.prototype, {
        error: { value: new DOMException('The user denied permission to access the database.', 'UnknownError') },
        addEventListener: { value: (kind, hear) => kind === 'error' && setTimeout(hear, 0, new Event(kind)) },
        removeEventListener: { value() {} },
    });
    StorageManager.prototype.getDirectory = async () => { throw denied('Storage directory access is denied.'); };
}"""


def test_where_nothing_may_be_kept_it_says_so_and_works(browser: Browser, served: str):
    page = elsewhere(browser, served)
    page.add_init_script(DENIED)
    page.goto("./batch/")
    page.get_by_role("button", name="Keep this as a job").click()
    expect(page.locator(".said").first).to_contain_text("keeps nothing for this site")
    write(page, "name", "Towels")
    page.get_by_role("link", name="All jobs").click()
    expect(page.locator(".job-list li")).to_contain_text("Towels")
    page.get_by_role("navigation").get_by_role("link", name="Share and keep safe").first.click()
    expect(page.locator(".said")).to_contain_text("keeps nothing for this site")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save everything").click()
    assert [each.newest.document["name"] for each in read_file(Path(saved.value.path()).read_text("utf-8")).kept] == [
        "Towels"
    ]
    page.context.close()


#: Said to a page before it is opened: what is asked of the browser's database stays without an answer.
NO_ANSWER = """const never = (kind) => () => Object.create(kind.prototype, {
    addEventListener: { value() {} }, removeEventListener: { value() {} } });"""
NEVER_OPENS = f"{NO_ANSWER} IDBFactory.prototype.open = never(IDBOpenDBRequest);"
NEVER_READS = f"{NO_ANSWER} for (const name of ['get', 'getAll', 'getAllKeys']) " + (
    "IDBObjectStore.prototype[name] = never(IDBRequest);"
)
NO_PRIVATE_FILES = "delete StorageManager.prototype.getDirectory;"


@one_window
@pytest.mark.parametrize("fault", [NEVER_OPENS, NEVER_READS], ids=["never opens", "never reads"])
def test_a_database_that_never_answers_is_said_on_every_page_that_shows_what_is_kept(page: Page, fault: str):
    page.add_init_script(fault + NO_PRIVATE_FILES + LESS_PATIENT)
    page.goto("./")
    for path in ("./house/", "./house/jobs/", "./house/ticket/", "./house/hand-over/"):
        move(page, path)
        expect(page.locator(".said").first).to_contain_text("does not answer", timeout=60_000)
        page.wait_for_timeout(300)
        expect(page.locator(".said").first).to_contain_text("Nothing is deleted")


@one_window
def test_what_the_browser_lost_is_back_and_said_on_whatever_page_is_opened_first(page: Page):
    page.goto("./house/jobs/")
    page.evaluate(KEEP, ["job", "sage-napkins", JOB])
    page.evaluate("""async () => {
        for (const { name } of await indexedDB.databases())
            await new Promise((resolve, reject) => Object.assign(indexedDB.deleteDatabase(name),
                { onsuccess: resolve, onerror: reject }));
    }""")
    page.goto("./plan/pieces/")
    told = page.locator(".notice[data-topic=lost]")
    expect(told).to_contain_text("It is back, out of the second copy: 1 job.")
    told.get_by_role("button").click()
    expect(page.get_by_role("button", name="Save everything")).to_be_visible()
    page.goto("./house/jobs/")
    expect(page.locator(".job-list li")).to_contain_text("Napkins in sage linen")
    expect(told).to_have_count(0)
