"""The page that tells where things are kept says what is so here, and tries each place at a press."""

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.reader import one_window
from tests.browser.test_keeping_trouble import FULL, KEEP, newest
from tests.documents.exchange.test_handing import JOB

PLACES = ["database", "journal", "texts", "handbook"]
LEFT = """async () => {
    const root = await navigator.storage.getDirectory();
    const names = [];
    for await (const [folder, handle] of root.entries())
        if (handle.kind === "directory") for await (const name of handle.keys()) names.push(name);
    return [...names, ...Object.keys(localStorage)].filter((name) => /test/.test(name));
}"""


def here(page: Page, place: str) -> Locator:
    return page.locator(f"[data-place={place}] .so-here")


def tried_out(page: Page) -> list[str]:
    page.get_by_role("button", name="Test it now").click()
    expect(page.locator(".tested li")).to_have_count(len(PLACES))
    return page.locator(".tested li").all_inner_texts()


@one_window
def test_each_place_says_what_it_holds_and_passes_and_nothing_is_left_behind(page: Page):
    page.goto("./house/kept/")
    expect(here(page, "database")).to_have_text("Nothing yet.")
    expect(page.locator(".lasting")).to_contain_text("promised")
    page.evaluate(KEEP, ["job", "sage-napkins", JOB])
    expect(here(page, "database")).to_have_text("1 job.")
    expect(here(page, "journal")).to_have_text("The same.")
    expect(page.locator(".where-kept .reminder")).to_contain_text("1 job is kept in this browser only")
    assert tried_out(page) == [
        "✓ The browser’s database: written, read back and deleted.",
        "✓ A journal beside it: written, read back and deleted.",
        "✓ The browser’s notebook: written, read back and deleted.",
        "✓ The kept handbook: it is not kept here.",
    ]
    assert newest(page, "test") == [] and newest(page, "job") == [JOB]
    assert page.evaluate(LEFT) == []
    expect(here(page, "database")).to_have_text("1 job.")


@one_window
@pytest.mark.parametrize(
    ("fault", "failing"),
    [
        (FULL, "The browser’s database"),
        ("() => { Storage.prototype.setItem = () => { throw new Error('no room.'); }; }", "The browser’s notebook"),
        ("() => { Storage.prototype.getItem = () => 'silk'; }", "The browser’s notebook"),
    ],
    ids=["full", "refused", "damaged"],
)
def test_a_place_that_does_not_hold_is_found_out(page: Page, fault: str, failing: str):
    page.goto("./house/kept/")
    expect(here(page, "database")).to_have_text("Nothing yet.")
    page.evaluate(fault)
    lines = tried_out(page)
    assert [line.partition(": ")[0] for line in lines if line.startswith("✗")] == [f"✗ {failing}"]
    assert [line for line in lines if line.startswith("✓")] != []
