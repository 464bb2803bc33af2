"""Python on a bad network: reading goes on, the reader is told in one sentence, and trying again helps once the fault
is gone."""

import gzip
import json
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from scripts.tools.archives import integrity
from tests.runtime.faulty_server import FaultyServer, serving

LONG = 60_000  # [ms]
LINE = "import('./assets/javascript/python.js')"
ASK = (
    f"{LINE}.then(({{ ask }}) => ask({{ do: 'add', a: '1/3', b: '1/6' }})).then((reply) => reply.sum, (problem) => "
    "problem.message)"
)
STARTED = (
    f"{LINE}.then(({{ onState }}) => new Promise((done) =>"
    " onState((state) => state.name === 'ready' && done([state.way, state.passedOver]))))"
)
SENTENCE = "The calculators did not start, so this page shows its worked example. Reading is not affected."


@pytest.fixture
def server(small_site: Path) -> Iterator[FaultyServer]:
    with serving(small_site) as running:
        yield running


@pytest.fixture
def page(browser: Browser, server: FaultyServer) -> Iterator[Page]:
    context = browser.new_context()
    opened = context.new_page()
    yield opened
    context.close()


@pytest.mark.parametrize(
    ("file", "fault"),
    [
        *(("pyodide.asm.wasm", fault) for fault in ("truncated", "cut", "404", "500")),
        ("pyodide.asm.js", "truncated"),
        ("pyodide.asm.js", "404"),
        ("python-worker.js", "cut"),
        ("python-worker.js", "500"),
    ],
)
def test_without_a_needed_file_the_page_can_be_read_and_trying_again_helps(
    page: Page, server: FaultyServer, file: str, fault: str
):
    server.faults[file] = fault
    page.goto(server.address)
    assert page.evaluate(ASK) == SENTENCE
    told = page.locator("[data-topic=python]")
    expect(told).to_contain_text(SENTENCE)
    expect(page.get_by_text("Readable.")).to_be_visible()
    server.faults.clear()
    told.get_by_role("button", name="Try again").click()
    expect(told).to_have_count(0, timeout=LONG)
    assert page.evaluate(ASK) == "1/2"


@pytest.mark.parametrize("fault", ["truncated", "404"])
def test_without_its_snapshot_python_starts_from_its_library_and_says_why(page: Page, server: FaultyServer, fault: str):
    server.faults["snapshot.bin"] = fault
    page.goto(server.address)
    assert page.evaluate(ASK) == "1/2"
    way, why = page.evaluate(STARTED)
    assert way == "library" and why != ""


def test_a_snapshot_that_is_no_snapshot_is_passed_over(browser: Browser, small_site: Path, tmp_path: Path):
    """As after an update of Pyodide that reads another form of snapshot: all hashes are right, and yet it does not
    load."""
    site = tmp_path / "site"
    shutil.copytree(small_site, site)
    (snapshot,) = site.glob("assets/runtime/*/snapshot.bin")
    listing = site / "assets/javascript/runtime-bundle.js"
    old = json.loads(listing.read_text().partition("export default ")[2].rstrip(";\n"))["files"]["snapshot"]
    content = bytearray(gzip.decompress(snapshot.read_bytes()))
    content[:4] = b"none"
    snapshot.write_bytes(gzip.compress(bytes(content), 1))
    listing.write_text(listing.read_text().replace(old["integrity"], integrity(snapshot.read_bytes())))
    context = browser.new_context()
    with serving(site) as server:
        page = context.new_page()
        page.goto(server.address)
        assert page.evaluate(ASK) == "1/2"
        assert page.evaluate(STARTED) == ["library", "Snapshot has invalid magic number"]
    context.close()


def test_a_slow_network_takes_time_and_nothing_else(page: Page, server: FaultyServer):
    server.faults["snapshot.bin"] = "slow"
    page.goto(server.address)
    answer = page.evaluate_handle(f"({{ promise: {ASK} }})")
    expect(page.locator("[data-topic=python]")).to_contain_text("The calculators are waking up.", timeout=LONG)
    assert answer.evaluate("({ promise }) => promise") == "1/2"
    assert page.evaluate(STARTED)[0] == "snapshot"


def test_a_python_that_nobody_waits_for_wakes_without_a_word(page: Page, server: FaultyServer):
    server.faults["snapshot.bin"] = "slow"
    page.goto(server.address)
    shown = page.evaluate(
        f"""{LINE}.then(({{ onState, wake }}) => new Promise((done) => {{
            let seen = 0;
            new MutationObserver(() => (seen += document.querySelectorAll("[data-topic=python]").length))
                .observe(document.body, {{ childList: true, subtree: true }});
            const began = performance.now();
            wake();
            onState((state) => state.name === "ready" && done([seen, performance.now() - began]));
        }}))"""
    )
    assert shown[0] == 0 and shown[1] > 3000  # [ms] long enough to be worth a word to somebody who waits
