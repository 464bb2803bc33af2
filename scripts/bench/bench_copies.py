"""How long a copy of everything takes to save, to open and to keep, and what single step of Python is the longest.

    python scripts/bench/bench_copies.py                     1,000 and 5,000 jobs of 10 states each
    python scripts/bench/bench_copies.py --jobs 200          so many

Run it with the project's own Python (.venv) after a build. The browser's tools slow the page down four times; they
cannot slow down a worker, so take a step of Python four times. A step that the machine broke off for something else
counts whole: compare the longest with the 99 of 100.
"""

import argparse
import json
import sys
import tempfile
import threading
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from playwright.sync_api import Page, expect, sync_playwright

from calculators.asking.site_method import site_document
from calculators.documents.job.change import begun, changed
from calculators.documents.job.reading import opened, written_down
from scripts.after_pages.policy import headers_for
from scripts.setup import browser as chromium
from scripts.tools.command_error import run_main
from scripts.tools.places import ADDRESS_FILE, SITE
from scripts.tools.server import open_server

STATES, SLOWED = 10, 4
LONG = 3_600_000  # [ms] nothing is given up here
#: In the worker: between a sign of life and the next lies one step.
STEPS = """() => {
    const post = self.postMessage.bind(self);
    self.steps = [];
    let before = 0;
    self.postMessage = (message) => {
        const now = performance.now();
        if (before) self.steps.push(now - before);
        before = ["working", "partial"].includes(message.type) ? now : 0;
        post(message);
    };
}"""
FILL = """async ([states, from, to]) => {
    const { keepMany } = await import(__md_scope + 'assets/javascript/store.js');
    const at = '2026-11-20T09:00:00+01:00';
    const documents = [];
    for (let number = from; number < to; number++) {
        const id = `job-${number}`;
        const texts = states.map((text) => text.replaceAll('its-id', id));
        documents.push({ kind: 'job', id, states: texts.map((text) => ({ at, text })), after: 0 });
    }
    await keepMany(documents);
}"""


def job_states() -> list[str]:
    """A job as it was after each of ten changes, some 2 to 3 kB."""
    measures = {name: site_document()["measures"][name] for name in list(site_document()["measures"])[:12]}
    method = {"format": "house method", "version": 2, "name": "Summer linen", "measures": measures}
    start = begun("its-id", "Napkins its-id", "batch", json.dumps(method))
    made = changed(opened(start), {"typed.pieces-from-cloth.piece_width": "46 cm", "notes": "Pressed twice. " * 40})
    texts = [written_down(made)]
    for number in range(STATES - 1):
        row = {f"measured.{number}.width": "40.2 cm", f"measured.{number}.note": "left of the fold", "ticks.hem": "3"}
        made = changed(opened(made), row)
        texts.append(written_down(made))
    return texts


class Timed:
    """One piece of work after another on a page: how long each took, and its longest step of Python."""

    def __init__(self, page: Page, say: Callable[[str], None]) -> None:
        self.page, self.say = page, say
        (self.worker,) = [each for each in page.workers if "python-worker" in each.url]
        self.worker.evaluate(STEPS)

    def __call__(self, what: str, act: Callable[[], Any]) -> Any:
        self.worker.evaluate("() => { self.steps = []; }")
        began = time.perf_counter()
        found = act()
        took = time.perf_counter() - began
        steps = sorted(self.worker.evaluate("() => self.steps"))
        half, most, longest = (steps[int(part * (len(steps) - 1))] for part in (0.5, 0.99, 1))
        self.say(
            f"  {what:<28} {took:7.1f} s, Python {sum(steps) / 1000:6.1f} s in {len(steps):6} steps: half within "
            f"{half:4.1f}, 99 of 100 within {most:4.0f}, the longest {longest:4.0f} ms"
        )
        return found


def measure(jobs: int, say: Callable[[str], None], address: str, playwright: Any) -> None:
    states = job_states()
    say(f"{jobs:,} jobs of {STATES} states of {len(states[0]):,} to {len(states[-1]):,} characters")
    browser = playwright.chromium.launch(executable_path=chromium.ensure(), args=[*chromium.ARGUMENTS])
    full, empty = (new_page(browser, address) for _ in range(2))
    began = time.perf_counter()
    for start in range(0, jobs, 100):
        full.evaluate(FILL, [states, start, min(start + 100, jobs)])
    say(f"  {'put into the browser':<28} {time.perf_counter() - began:7.1f} s")
    said = full.locator(".kept .said")

    def save() -> Path:
        with full.expect_download(timeout=LONG) as download:
            full.get_by_role("button", name="Save everything").click()
        expect(said).to_contain_text("Saved:", timeout=LONG)
        target = Path(tempfile.mkdtemp()) / "workroom.json"
        download.value.save_as(target)
        return target

    file = Timed(full, say)("saved and read back", save)
    say(f"  {'the file':<28} {file.stat().st_size / 1e6:7.1f} MB")
    timed, said = Timed(empty, say), empty.locator(".kept .said")

    def open_it() -> None:
        empty.locator("[name=file]").set_input_files(file)
        expect(said).to_contain_text("Nothing is kept yet", timeout=LONG)

    def keep_all() -> None:
        empty.get_by_role("button", name="Keep all that is new here").click()
        expect(said).to_contain_text("All that was new", timeout=LONG)

    timed("opened", open_it)
    timed("all kept", keep_all)

    def listed() -> None:
        empty.evaluate("() => document.querySelector('a[href$=\"house/jobs/\"]').click()")
        expect(empty.locator(".job-list li")).to_have_count(min(50, jobs), timeout=LONG)

    def all_listed() -> None:
        empty.get_by_role("button", name="Show all").click()
        expect(empty.locator(".job-list li")).to_have_count(jobs, timeout=LONG)

    timed("the first 50 jobs listed", listed)
    if jobs > 50:
        timed("all jobs listed", all_listed)
    browser.close()


def new_page(browser: Any, address: str) -> Page:
    """The page of handing over, slowed down, in a profile of its own, with Python awake."""
    context = browser.new_context(base_url=address)
    context.set_default_timeout(LONG)
    context.add_init_script("delete Navigator.prototype.serviceWorker")
    page: Page = context.new_page()
    page.goto("./house/hand-over/")
    page.locator("[name=file]").set_input_files({"name": "x", "mimeType": "application/json", "buffer": b"{}"})
    expect(page.locator(".kept .said")).to_contain_text("Choose", timeout=LONG)
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    return page


def main(arguments: list[str] | None = None) -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--jobs", type=int, nargs="*", default=[1_000, 5_000], help="how many jobs")
    chosen = parser.parse_args(arguments)
    below = ADDRESS_FILE.read_text()
    port, path = int(below.split(":")[2].split("/")[0]), "/" + below.split("/", 3)[3]
    with open_server(SITE, port, headers_for(SITE), path) as server, sync_playwright() as playwright:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        for jobs in chosen.jobs:
            measure(jobs, lambda words: print(words, flush=True), server.address, playwright)
        server.shutdown()
    return 0


if __name__ == "__main__":
    run_main(main)
