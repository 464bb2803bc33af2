"""Whether anything typed is lost when a page is left at once: typed, then within 100 ms reloaded, gone back from, left
by a link, closed, or the whole browser killed; opened again, everything must stand there.

    python scripts/bench/leave.py                       120 leavings; a table
    python scripts/bench/leave.py --times 30 --only kill --json FILE

Run it with the project's own Python (.venv) after a build.
"""

import argparse
import json
import os
import random
import signal
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from playwright.sync_api import BrowserContext, Error, Page, Playwright, sync_playwright
from playwright.sync_api import TimeoutError as TooLate

from calculators.asking.house_method import FORMAT, VERSION
from calculators.documents.job.change import begun
from scripts.after_pages.policy import headers_for
from scripts.setup import browser as chromium
from scripts.tools.command_error import run_main
from scripts.tools.places import ADDRESS_FILE, SITE
from scripts.tools.server import open_server

PATIENCE = 60_000  # [ms] Python wakes at each page that is loaded
SOON = 0.1  # [s] the longest that what is typed stands there before the page is left
REACHING = 0.4  # [s] from a tap on a blank to the first letter
TYPE = """async ([texts, soon]) => {
    for (const [selector, text] of texts) {
        const blank = document.querySelector(selector);
        blank.value = text;
        blank.dispatchEvent(new Event("input", { bubbles: true }));
    }
    await new Promise((resolve) => requestAnimationFrame(resolve));
    await new Promise((resolve) => setTimeout(resolve, soon * 1000));
}"""
STANDS = """(texts) => texts.every(([selector, text]) =>
    (document.querySelector(selector)?.value ?? "").startsWith(text))"""
LOST = """(texts) => texts.flatMap(([selector, text]) => {
    const stands = document.querySelector(selector)?.value;
    return stands?.startsWith(text) ? [] : [`${selector}: “${text}” was typed, “${stands}” stands`];
})"""
#: Keep documents unless they are there.
KEEP = """async (documents) => {
    const { choose, keep, last } = await import(__md_scope + "assets/javascript/store.js");
    for (const [kind, id, text] of documents) if (!(await last(kind, id))) await keep(kind, id, text, 0);
    await choose("method", "leave");
}"""
DOCUMENTS = [
    ["job", "leave", json.dumps(begun("leave", "Leaving", "batch", ""))],
    ["method", "leave", json.dumps({"format": FORMAT, "version": VERSION, "id": "leave", "name": "Leaving"})],
]


@dataclass(frozen=True)
class Place:
    """A page with something to fill in.

    ready: what is there once it can be filled in. opens: what has to be pressed before, on a page opened afresh.
    texts: the selector of each blank → what the nth text for it is.
    """

    name: str
    path: str
    ready: str
    texts: dict[str, Callable[[int], str]]
    opens: str = ""


PLACES = (
    Place(
        "job",
        "batch/#job=leave",
        ".walk:not([inert]) .with-job:not([hidden])",
        {
            "[data-calculator=finished-size] [name=hem]": lambda n: f"{2 + n / 100:.2f} cm",
            ".job-in-hand [name=name]": lambda n: f"Napkins {n}.",
            ".walk [name=notes]": lambda n: f"Note {n}.",
        },
    ),
    Place(
        "method",
        "house/",
        ".house-body [name=name]",
        {
            ".house-body [name=name]": lambda n: f"Linen {n}.",
            '.house-body [name="measures.turn"]': lambda n: f"{1 + n / 100:.2f} cm",
            '.house-body [name="texts.hems"]': lambda n: f"Press {n} times.",
        },
        opens=".house-method [data-do=edit]",
    ),
    Place(
        "ticket",
        "house/ticket/#job=leave",
        ".ticket.is-live .settle [name=bundle]",
        {
            '.ticket-body [name="7.width"]': lambda n: f"40.{n % 9 + 1}",
            '.ticket-body [name="7.note"]': lambda n: f"Note {n}.",
        },
    ),
    Place(
        "numbers of no job",
        "plan/pieces/",
        ".calculator [name=piece_width]",
        {".calculator [name=piece_width]": lambda n: f"{30 + n / 100:.2f} cm"},
    ),
)


class Reader:
    """Somebody at a browser that is open."""

    def __init__(self, context: BrowserContext, address: str):
        self.context, self.address = context, address
        self.page: Page = context.new_page()

    def close_page(self) -> None:
        before, self.page = self.page, self.context.new_page()
        before.close(run_before_unload=True)

    def open(self, place: Place) -> None:
        """Open a page as far as it can be filled in; a page that crashes, as one may on a busy machine, once more."""
        try:
            self._open(place)
        except Error as problem:
            if "crashed" not in str(problem):
                raise
            self.page = self.context.new_page()
            self._open(place)

    def _open(self, place: Place) -> None:
        self.page.goto(self.address)
        self.page.goto(self.address + place.path)
        if place.opens:
            self.page.wait_for_selector(f"{place.ready}, {place.opens}:visible")
            if not self.page.locator(place.ready).is_visible():
                self.page.click(place.opens)
        self.page.wait_for_selector(place.ready, state="attached")
        self.page.evaluate("document.querySelectorAll('.walk-step').forEach((step) => { step.open = true; })")

    def keep(self) -> None:
        """Keep the documents that are filled in."""
        self.page.goto(f"{self.address}house/jobs/")
        self.page.evaluate(KEEP, DOCUMENTS)


class Killable(Reader):
    """Somebody with a browser of her own, which may be killed."""

    def __init__(self, playwright: Playwright, address: str, profile: Path):
        self.playwright, self.profile = playwright, profile
        self.start(address)

    def start(self, address: str) -> None:
        port = self.profile / "DevToolsActivePort"
        port.unlink(missing_ok=True)
        command = [chromium.ensure(), *chromium.ARGUMENTS, "--headless", "--remote-debugging-port=0"]
        self.process = subprocess.Popen(
            [*command, f"--user-data-dir={self.profile}"],
            start_new_session=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        deadline = time.monotonic() + PATIENCE / 1000
        while not (port.is_file() and len(lines := port.read_text().splitlines()) > 1):
            assert time.monotonic() < deadline and self.process.poll() is None, "the browser did not start"
            time.sleep(0.01)
        try:
            browser = self.playwright.chromium.connect_over_cdp(f"http://127.0.0.1:{lines[0]}", timeout=PATIENCE)
        except Exception:
            self.end()
            raise
        browser.contexts[0].add_init_script("delete Navigator.prototype.serviceWorker")
        browser.contexts[0].set_default_timeout(PATIENCE)
        super().__init__(browser.contexts[0], address)

    def end(self) -> None:
        os.killpg(self.process.pid, signal.SIGKILL)
        self.process.wait()

    def kill(self) -> None:
        self.end()
        self.start(self.address)


WAYS: dict[str, Callable[[Any], Any]] = {
    "reload": lambda reader: reader.page.reload(wait_until="commit"),
    "back": lambda reader: reader.page.go_back(wait_until="commit"),
    "link": lambda reader: reader.page.evaluate("document.querySelector('a.md-logo').click()"),
    "close": Reader.close_page,
    "kill": lambda reader: reader.kill(),
}


def left_once(reader: Reader, place: Place, way: str, number: int, soon: float) -> list[str]:
    """What was lost of the texts of a place, typed and left so. soon: how long they stood on the screen [s]."""
    reader.open(place)
    texts = [[selector, text(number)] for selector, text in place.texts.items()]
    reader.page.locator(next(iter(place.texts))).evaluate("(blank) => blank.focus()")
    time.sleep(REACHING)
    reader.page.evaluate(TYPE, [texts, soon])
    WAYS[way](reader)
    reader.open(place)
    try:
        reader.page.wait_for_function(STANDS, arg=texts, timeout=5_000)
    except TooLate:
        lost: list[str] = reader.page.evaluate(LOST, texts)
        return [f"{place.name}, {way}, after {soon * 1000:.0f} ms: {each}" for each in lost]
    return []


@contextmanager
def reading(playwright: Playwright, address: str, profile: Path) -> Iterator[Killable]:
    """A reader with a browser of her own, who has a job and a method."""
    reader = Killable(playwright, address, profile)
    try:
        reader.keep()
        yield reader
    finally:
        reader.end()


def main() -> int:
    parser = argparse.ArgumentParser(description="Leave pages at once after something was typed; count what is lost.")
    parser.add_argument("--times", type=int, default=120, help="how many leavings (120)")
    parser.add_argument("--only", choices=WAYS, help="one way of leaving")
    parser.add_argument("--json", metavar="FILE", help="write the figures to a file")
    asked = parser.parse_args()
    chance = random.Random(7)
    ways = [asked.only] if asked.only else [*WAYS]
    counted: dict[str, list[int]] = {f"{place.name}, {way}": [0, 0] for place in PLACES for way in ways}
    lost: list[str] = []
    site_address = urlsplit(ADDRESS_FILE.read_text())
    with (
        tempfile.TemporaryDirectory() as profile,
        open_server(SITE, site_address.port or 0, headers_for(SITE), site_address.path) as server,
        sync_playwright() as playwright,
    ):
        threading.Thread(target=server.serve_forever, daemon=True).start()
        with reading(playwright, server.address, Path(profile)) as reader:
            for number in range(1, asked.times + 1):
                place, way = PLACES[number % len(PLACES)], ways[number // len(PLACES) % len(ways)]
                found = left_once(reader, place, way, number, SOON if way == "kill" else chance.random() * SOON)
                counted[f"{place.name}, {way}"][0] += len(place.texts)
                counted[f"{place.name}, {way}"][1] += len(found)
                lost += found
                for each in found:
                    print(each)
        server.shutdown()
    for name, (texts, gone) in counted.items():
        print(f"{name:<28}{texts:>5} texts {gone:>5} lost")
    print(f"{asked.times} leavings, {sum(texts for texts, _ in counted.values())} texts, {len(lost)} lost")
    if asked.json:
        Path(asked.json).write_text(json.dumps({"counted": counted, "lost": lost}, indent=1))
    return 1 if lost else 0


if __name__ == "__main__":
    run_main(main)
