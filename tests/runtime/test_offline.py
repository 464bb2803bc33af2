"""The offline copy: whole and in one version, or not there; offered and never forced."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from tests.runtime.faulty_server import FAULTS, FaultyServer, serving

PAGES = ("", "second/", "third/")
LONG = 60_000  # [ms]


@pytest.fixture
def server(small_site: Path) -> Iterator[FaultyServer]:
    with serving(small_site) as running:
        yield running


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    opened = browser.new_context()
    yield opened
    opened.close()


def notice(page: Page, topic: str):
    return page.locator(f"[data-topic={topic}]")


def kept(context: BrowserContext, address: str) -> Page:
    page = context.new_page()
    page.goto(address)
    expect(notice(page, "ready")).to_contain_text("Ready for the workroom: no network needed.", timeout=LONG)
    return page


def edition(page: Page) -> str:
    """The edition of the page, once its other file has been seen to be of the same one."""
    text = page.locator("#edition").inner_text()
    assert (
        page.evaluate(
            "fetch(new URL('assets/edition.txt', document.baseURI.replace(/(second|third)\\/$/, ''))).then((each) => "
            "each.text())"
        )
        == text
    )
    return text


def stop(server: FaultyServer) -> None:
    server.shutdown()
    server.server_close()


def test_every_page_and_python_work_once_the_server_is_gone(context: BrowserContext, server: FaultyServer):
    page = kept(context, server.address)
    stop(server)
    for name in PAGES:
        assert page.goto(server.address + name).ok
        assert edition(page) == "first"
    assert page.goto(server.address + "second").url == server.address + "second/"
    assert page.goto(server.address + "second/?from=here#there").ok
    assert page.goto(server.address + "nowhere/").status == 404
    page.goto(server.address)
    answer = page.evaluate(
        "import('./assets/javascript/python.js').then(({ ask }) => ask({ do: 'add', a: '1/3', b: '1/6' }))"
    )
    assert answer["sum"] == "1/2"


def test_a_page_that_was_loaded_past_a_copy_in_force_is_taken_over(context: BrowserContext, server: FaultyServer):
    page = kept(context, server.address)
    with page.expect_event("load"):
        context.new_cdp_session(page).send("Page.reload", {"ignoreCache": True})  # as Shift and the reload key do
    assert not page.evaluate("navigator.serviceWorker.controller")
    expect(notice(page, "ready")).to_be_visible(timeout=LONG)
    assert page.evaluate("navigator.serviceWorker.controller.state") == "activated"


def test_a_page_says_when_there_is_no_network(context: BrowserContext, server: FaultyServer):
    page = kept(context, server.address)
    context.set_offline(True)
    expect(notice(page, "network")).to_contain_text("No network. Everything here still works.")
    context.set_offline(False)
    expect(notice(page, "network")).to_have_count(0)


def test_the_site_map_names_where_the_copy_lies(context: BrowserContext, server: FaultyServer):
    page = kept(context, server.address)
    assert f"<loc>{server.address}second/</loc>" in page.evaluate("fetch('sitemap.xml').then((each) => each.text())")


def test_a_slow_network_keeps_the_whole_copy(context: BrowserContext, server: FaultyServer):
    server.faults["assets/edition.txt"] = "slow"
    page = kept(context, server.address)
    stop(server)
    assert page.goto(server.address + "third/").ok and edition(page) == "first"


@pytest.mark.parametrize("fault", sorted({*FAULTS} - {"slow"}))
def test_a_fault_while_keeping_leaves_nothing_half_kept_and_trying_again_helps(
    context: BrowserContext, server: FaultyServer, fault: str
):
    server.faults["assets/edition.txt"] = fault
    page = context.new_page()
    page.goto(server.address)
    told = notice(page, "keeping")
    expect(told).to_contain_text("could not be kept", timeout=LONG)
    assert page.evaluate("navigator.serviceWorker.controller") is None
    assert page.goto(server.address + "second/").ok
    expect(told).to_contain_text("could not be kept", timeout=LONG)
    server.faults.clear()
    told.get_by_role("button", name="Try again").click()
    expect(notice(page, "ready")).to_be_visible(timeout=LONG)
    stop(server)
    assert page.goto(server.address + "third/").ok and edition(page) == "first"


def test_trying_again_fetches_only_what_is_missing(context: BrowserContext, server: FaultyServer):
    server.faults["third/"] = "404"
    page = context.new_page()
    page.goto(server.address)
    expect(notice(page, "keeping")).to_contain_text("could not be kept", timeout=LONG)
    server.faults.clear()
    server.asked_for.clear()
    notice(page, "keeping").get_by_role("button", name="Try again").click()
    expect(notice(page, "ready")).to_be_visible(timeout=LONG)
    assert [path for path in server.asked_for if "wasm" in path] == []


def test_a_newer_copy_is_offered_and_changes_nothing_until_it_is_taken(
    context: BrowserContext, server: FaultyServer, make_site: Callable[[str], Path]
):
    page = kept(context, server.address)
    server.folder = make_site("second")
    page.reload()
    expect(notice(page, "newer")).to_contain_text("A newer copy of the handbook is ready.", timeout=LONG)
    for name in PAGES:
        page.goto(server.address + name)
        assert edition(page) == "first"
    expect(notice(page, "newer")).to_be_visible(timeout=LONG)
    with page.expect_navigation():
        notice(page, "newer").get_by_role("button", name="Use it now").click()
    stop(server)
    for name in PAGES:
        page.goto(server.address + name)
        assert edition(page) == "second"
    assert len(page.evaluate("caches.keys()")) == 1


def test_a_newer_copy_waits_while_another_window_reads_the_older_one(
    context: BrowserContext, server: FaultyServer, make_site: Callable[[str], Path]
):
    page = kept(context, server.address)
    other = context.new_page()
    other.goto(server.address + "second/")
    server.folder = make_site("second")
    page.reload()
    button = notice(page, "newer").get_by_role("button", name="Use it now")
    button.click(timeout=LONG)
    expect(notice(page, "newer")).to_contain_text("open in another window too")
    assert edition(other) == "first" and edition(page) == "first"
    other.close()
    with page.expect_navigation():
        button.click()
    expect(page.locator("#edition")).to_have_text("second")


def test_a_half_arrived_newer_copy_is_not_used(
    context: BrowserContext, server: FaultyServer, make_site: Callable[[str], Path]
):
    page = kept(context, server.address)
    server.folder = make_site("second")
    server.faults["third/"] = "500"
    page.reload()
    expect(notice(page, "keeping")).to_contain_text("could not be kept", timeout=LONG)
    stop(server)
    for name in PAGES:
        page.goto(server.address + name)
        assert edition(page) == "first"


def test_two_sites_on_one_host_keep_to_themselves(
    context: BrowserContext, make_site: Callable[[str], Path], tmp_path: Path
):
    (tmp_path / "one").symlink_to(make_site("first"))
    (tmp_path / "two").symlink_to(make_site("second"))
    with serving(tmp_path) as server:
        for folder in ("one/", "two/"):
            page = kept(context, server.address + folder)
        assert len(page.evaluate("caches.keys()")) == 2
        stop(server)
        for folder, expected in (("one/", "first"), ("two/", "second")):
            for name in PAGES:
                page.goto(server.address + folder + name)
                assert edition(page) == expected
