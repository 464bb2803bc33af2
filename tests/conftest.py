"""What many tests share: the built site, served, and a browser that must not leave it."""

# ruff: noqa: E402 - the house is chosen before whatever asks for its method is imported

import gc
import os
import threading
from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from hypothesis import HealthCheck, settings

from calculators.asking import site_method

# Tests have a method of their own, so that a studio may change the handbook's; SITE_HOUSE names another to try.
site_method.read_from(Path(os.environ.get("SITE_HOUSE") or Path(__file__).with_name("house")))

from playwright.sync_api import Browser, Page, Playwright, expect, sync_playwright

from scripts.after_pages.policy import headers_for
from scripts.setup import browser as chromium
from scripts.tools.places import ADDRESS_FILE, SITE
from scripts.tools.server import open_server
from tests.browser.reader import nothing_amiss, profile

# The same examples at every run; `--hypothesis-profile=search` looks for new ones. How many of them fit depends a
# little on which modules were imported before, whose numbers hypothesis tries too; how soon they come on the machine.
BY_CHANCE = [HealthCheck.filter_too_much, HealthCheck.too_slow]
settings.register_profile("steady", derandomize=True, deadline=None, suppress_health_check=BY_CHANCE)
settings.register_profile("search", derandomize=False, deadline=None, max_examples=2000)
settings.load_profile("steady")

# What the tests hold, the pages of the built site above all, was gone through for garbage so often that reading those
# pages took half as long again.
gc.set_threshold(100_000, 50, 100)

expect.set_options(timeout=30_000)  # [ms] Python may still be waking on a busy machine

# Playwright then also reports what a service worker asks for.
os.environ["PW_EXPERIMENTAL_SERVICE_WORKER_NETWORK_EVENTS"] = "1"


@pytest.fixture(scope="session")
def site() -> Path:
    """The folder of the built site."""
    assert (SITE / "index.html").is_file(), "Build the site first: python3 scripts/serve.py --build"
    return SITE


@contextmanager
def serving_site() -> Iterator[str]:
    """The built site, served at the address it was built for."""
    address = urlsplit(ADDRESS_FILE.read_text())
    with open_server(SITE, address.port, headers_for(SITE), address.path) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield server.address
        server.shutdown()


@pytest.hookimpl(wrapper=True)
def pytest_runtestloop(session: pytest.Session) -> Iterator[None]:
    """Where tests run side by side, the process that hands them out serves the site to all."""
    with serving_site() if session.config.getoption("numprocesses", None) else nullcontext():
        return (yield)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The longest go first, so that no processor waits for one long file at the end."""
    items.sort(key=lambda item: not set(item.path.parts) & {"browser", "pyodide", "runtime"})


@pytest.fixture(scope="session")
def served(site: Path, request: pytest.FixtureRequest) -> Iterator[str]:
    """The built site's address on this machine, without the closing slash."""
    side_by_side = hasattr(request.config, "workerinput")
    with nullcontext(ADDRESS_FILE.read_text()) if side_by_side else serving_site() as address:
        yield address.rstrip("/")


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """What drives browsers; there can be one only."""
    with sync_playwright() as started:
        yield started


#: What Playwright switches off, and two things that cost each window a sixth of its work: pages of the browser's own
#: frame, and a renderer for a page that may come.
UNUSED = ",".join(
    ["AvoidUnnecessaryBeforeUnloadCheckSync", "DestroyProfileOnBrowserClose", "HttpsUpgrades", "LensOverlay"]
    + ["HttpsFirstBalancedModeAutoEnable", "MediaRouter", "PaintHolding", "ThirdPartyStoragePartitioning"]
    + ["AvoidCorsURLLoaderRestartOnRedirect", "OptimizationHints", "NetworkTimeServiceQuerying", "PreconnectToSearch"]
    + ["PreloadTopChromeWebUI", "SpareRendererForSitePerProcess"]
)


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    """The machine's own Chromium, which knows no host but this one."""
    only_here = "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1"
    # Python runs in each window for a moment only: to make its machine code a second time, and better, does not pay
    once = "--js-flags=--liftoff-only"
    launched = playwright.chromium.launch(
        executable_path=chromium.ensure(),
        args=[*chromium.ARGUMENTS, only_here, once, f"--disable-features={UNUSED}"],
    )
    yield launched
    launched.close()


@pytest.fixture(params=[390, 1280], ids=["phone", "screen"])
def width(request) -> int:
    """The width of the page in CSS pixels: a phone beside the table, then a computer's screen."""
    return request.param


@pytest.fixture
def page(browser: Browser, served: str, width: int) -> Iterator[Page]:
    """A page in a fresh profile, which keeps no copy of the site; `page.goto("./")` opens the home page.

    Fails the test when anything was asked for beyond the served site, when a script of a page broke, or when a page
    went
    against the site's policy.
    """
    context = profile(browser, served, viewport={"width": width, "height": 844}, reduced_motion="reduce")
    with nothing_amiss(context, served):
        yield context.new_page()
