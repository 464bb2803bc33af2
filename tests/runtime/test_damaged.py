"""A kept file that the device has damaged is put right as soon as there is a network; until then one sentence says what
to do."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from tests.runtime.faulty_server import FaultyServer, serving
from tests.runtime.test_faults import ASK
from tests.runtime.test_offline import kept, notice

LONG = 60_000  # [ms]
MENDED = "is put right"
#: What is written over a kept file: its first half, as after a disk error.
DAMAGE = """async (part) => {
    const [name] = await caches.keys();
    const cache = await caches.open(name);
    const found = (await cache.keys()).filter(({ url }) => new URL(url).pathname.includes(part));
    for (const request of found) {
        const { headers } = await cache.match(request);
        const bytes = await (await cache.match(request)).arrayBuffer();
        await cache.put(request, new Response(bytes.slice(0, bytes.byteLength / 2), { headers }));
    }
    return found.length;
}"""
WHOLE = """async () => {
    const [name] = await caches.keys();
    const cache = await caches.open(name);
    const { promise, resolve } = Promise.withResolvers();
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    navigator.serviceWorker.controller.postMessage({ say: "mend" }, [port2]);
    return promise;
}"""
OF_PYTHON = ["pyodide.asm.wasm", "pyodide.js", "pyodide.asm.js", "snapshot.bin"]
OF_PAGES = ["python-worker.js", "runtime-bundle.js", "python-notice.js", "offline.js", "second/index.html", "theme.js"]


@pytest.fixture(scope="module")
def server(small_site: Path) -> Iterator[FaultyServer]:
    with serving(small_site) as running:
        yield running


@pytest.fixture(scope="module")
def context(browser: Browser, server: FaultyServer) -> Iterator[BrowserContext]:
    """A reader whose device keeps the site; what a test damages is whole again at its end."""
    opened = browser.new_context()
    kept(opened, server.address).close()
    yield opened
    opened.close()


def damaged(context: BrowserContext, server: FaultyServer, part: str) -> Page:
    """A page of a kept copy in which a file has been damaged, while its keeper was asleep."""
    page = context.new_page()
    page.goto(f"{server.address}assets/edition.txt")
    assert page.evaluate(DAMAGE, part) >= 1
    asleep(page)
    return page


def asleep(page: Page) -> None:
    """The keeper is stopped, as browsers do when nothing has been asked of it for a while."""
    session = page.context.new_cdp_session(page)
    session.send("ServiceWorker.enable")
    session.send("ServiceWorker.stopAllWorkers")
    session.detach()


@pytest.mark.parametrize("part", [*OF_PYTHON, *OF_PAGES])
def test_with_a_network_a_damaged_file_is_put_right(context: BrowserContext, server: FaultyServer, part: str):
    page = damaged(context, server, part)
    page.goto(f"{server.address}second/")
    assert page.evaluate(ASK.replace("./assets", "../assets")) == "1/2"
    expect(page.locator("#edition")).to_have_text("first")
    expect(notice(page, "python")).to_have_count(0)
    page.evaluate(WHOLE)  # once what was begun is over
    assert page.evaluate(WHOLE) == {"mended": 0, "broken": 0}
    page.close()


@pytest.mark.parametrize("part", ["pyodide.asm.wasm", "python-notice.js"])
def test_without_one_a_sentence_says_what_to_do(context: BrowserContext, server: FaultyServer, part: str):
    page = damaged(context, server, part)
    server.faults[""] = "500"
    page.goto(f"{server.address}second/")
    if part in OF_PYTHON:
        assert MENDED in page.evaluate(ASK.replace("./assets", "../assets"))
        expect(notice(page, "python")).to_contain_text(MENDED, timeout=LONG)
    else:
        expect(page.get_by_text(MENDED)).to_be_visible(timeout=LONG)
    expect(page.get_by_text("Readable.")).to_be_visible()
    server.faults.clear()
    page.reload()
    assert page.evaluate(ASK.replace("./assets", "../assets")) == "1/2"
    expect(page.get_by_text(MENDED)).to_have_count(0)
    page.close()


@pytest.mark.parametrize("name", ["constructor", "toString", "__proto__", "constructor/", "%E0%A4%A"])
def test_an_address_that_is_a_word_of_the_language_is_none_of_the_handbook(
    context: BrowserContext, server: FaultyServer, name: str
):
    page = context.new_page()
    assert page.goto(server.address + name).status == 404
    server.faults[""] = "500"
    assert page.goto(server.address + name).status == 404
    server.faults.clear()
    page.close()
