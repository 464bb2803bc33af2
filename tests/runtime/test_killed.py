"""The browser is killed at six moments of a first keeping and of an update, at more with `KILLED_AT=20`: afterwards the
copy is whole, in one version."""

import os
import shutil
import signal
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Page, Playwright, expect

from scripts.after_pages import join_scripts, offline
from scripts.setup import browser as chromium
from tests.runtime.faulty_server import FaultyServer, serving

MOMENTS = int(os.environ.get("KILLED_AT", 6))
FILES = 36
LONG = 60_000  # [ms]
PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Kept</title></head>
<body><p id="edition">{edition}</p>
<script src="/assets/theme.js"></script>
<script type="module" src="/assets/javascript/offline.js"></script></body></html>"""


def make_site(site: Path, edition: str) -> Path:
    """A site without Python, so that what is killed is the keeping alone; every file of it says its edition."""
    join_scripts.join(site / "assets/javascript")
    (site / "assets/theme.js").write_text(f"window.document$ = {{ subscribe: (hear) => hear(document) }}; // {edition}")
    for name in ("index.html", "404.html"):
        (site / name).write_text(PAGE.format(edition=edition))
    (site / "sitemap.xml").write_text("<urlset></urlset>")
    for number in range(FILES):
        (site / f"assets/{number}.txt").write_text(f"{edition}\n" * 15_000)
    offline.put_service_worker_into(site, "http://built.for/")
    made = {"first": 1_000_000_000, "second": 1_100_000_000}[edition]  # servers tell versions apart by whole seconds
    for path in site.rglob("*"):
        os.utime(path, (made, made))
    return site


@pytest.fixture(scope="module")
def sites(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    folder = tmp_path_factory.mktemp("sites")
    return make_site(folder / "first", "first"), make_site(folder / "second", "second")


@contextmanager
def opened(playwright: Playwright, profile: Path, address: str) -> Iterator[Page]:
    context = playwright.chromium.launch_persistent_context(
        str(profile), executable_path=chromium.ensure(), args=chromium.ARGUMENTS
    )
    page = context.new_page()
    try:
        page.goto(address)
        yield page
    finally:
        context.close()


def kill_after(requests: int, profile: Path, server: FaultyServer) -> None:
    """Open the site in a browser of its own, and kill it once its service worker has made so many requests."""
    server.asked_for.clear()
    command = [chromium.ensure(), *chromium.ARGUMENTS, "--headless", f"--user-data-dir={profile}", server.address]
    process = subprocess.Popen(command, start_new_session=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    deadline = time.monotonic() + LONG / 1000
    try:
        while "/sw.js" not in server.asked_for or len(server.asked_for) - server.asked_for.index("/sw.js") <= requests:
            assert time.monotonic() < deadline and process.poll() is None, server.asked_for
            time.sleep(0.0005)
    finally:
        os.killpg(process.pid, signal.SIGKILL)
        process.wait()


def editions(page: Page) -> set[str]:
    """The editions of all that the page can get, which is everything or this fails."""
    return set(
        page.evaluate(
            """async (count) => {
                const files = Array.from({ length: count }, (_, number) => `/assets/${number}.txt`);
                const texts = await Promise.all(files.map(async (file) => (await (await fetch(file)).text()).trim()
                    .split("\\n")));
                const theme = (await (await fetch("/assets/theme.js")).text()).split("// ")[1];
                return [document.querySelector("#edition").textContent, theme, ...new Set(texts.flat())];
            }""",
            FILES,
        )
    )


def moments() -> list[int]:
    """Spread over the requests of one keeping, from its first to its last; an update fetches only what has changed."""
    return [round(step * FILES / (MOMENTS - 1)) for step in range(MOMENTS)]


def stop(server: FaultyServer) -> None:
    server.shutdown()
    server.server_close()


@pytest.mark.parametrize("requests", moments())
def test_killed_while_first_keeping_the_next_visit_keeps_it_whole(
    requests: int, sites: tuple[Path, Path], tmp_path: Path, playwright: Playwright
):
    with serving(sites[0]) as server:
        kill_after(requests, tmp_path, server)
        with opened(playwright, tmp_path, server.address) as page:
            page.wait_for_function("navigator.serviceWorker.controller", timeout=LONG)
            stop(server)
            page.goto(server.address)
            assert editions(page) == {"first"}


@pytest.fixture(scope="module")
def with_first(
    sites: tuple[Path, Path], tmp_path_factory: pytest.TempPathFactory, playwright: Playwright
) -> Iterator[tuple[Path, FaultyServer]]:
    """A profile that has kept the first edition, and its server."""
    profile = tmp_path_factory.mktemp("profile")
    with serving(sites[0]) as server:
        with opened(playwright, profile, server.address) as page:
            expect(page.locator("[data-topic=ready]")).to_be_visible(timeout=LONG)
        server.folder = sites[1]
        yield profile, server


@pytest.mark.parametrize("requests", moments())
def test_killed_while_updating_there_is_one_whole_version(
    requests: int, with_first: tuple[Path, FaultyServer], tmp_path: Path, playwright: Playwright
):
    profile, server = with_first
    mine = tmp_path / "profile"
    shutil.copytree(profile, mine, ignore=shutil.ignore_patterns("Singleton*"))
    kill_after(requests, mine, server)
    server.faults["/"] = "500"  # as good as gone: every file there is refused
    try:
        with opened(playwright, mine, server.address) as page:
            assert editions(page) in ({"first"}, {"second"})
    finally:
        server.faults.clear()
