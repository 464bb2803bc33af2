"""The built handbook after its first visit, with the server gone: every page, the search, and every calculator still
live."""

import threading
from collections.abc import Iterator
from pathlib import Path, PurePosixPath
from urllib.parse import urlsplit
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Browser, Page, expect

from calculators.catalogue import catalogue
from scripts.after_pages.policy import headers_for
from scripts.tools.places import ADDRESS_FILE
from scripts.tools.server import open_server
from tests.browser.reader import NO_PYTHON, NO_WARM_UP, every_calculator_answers, move

LONG = 90_000  # [ms]


@pytest.fixture(scope="module")
def cut_off(browser: Browser, site: Path) -> Iterator[Page]:
    """A page of a profile that has the handbook, on a machine that has lost its network; it starts at another address
    than the site was built for, below the same path."""
    context = browser.new_context()
    context.add_init_script(NO_WARM_UP)
    page = context.new_page()
    with open_server(site, 0, headers_for(site), urlsplit(ADDRESS_FILE.read_text()).path) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        page.goto(server.address)
        expect(page.locator("[data-topic=ready]")).to_be_visible(timeout=LONG)
        server.shutdown()
    context.set_default_timeout(LONG)
    yield page
    context.close()


def paths(site: Path) -> list[str]:
    return [urlsplit(name.text).path for name in ElementTree.parse(site / "sitemap.xml").iterfind(".//{*}loc")]


def test_every_page_opens(cut_off: Page, site: Path):
    """The calculators' own pages, which are all alike, are moved to in the next test; here two of them are opened."""
    still = cut_off.context.new_page()
    still.add_init_script(NO_PYTHON)
    alike = [path for path in paths(site) if PurePosixPath(path).parent.name == "reference"]
    for path in sorted({*paths(site)} - {*alike[1:-1]}):
        assert still.goto(urlsplit(cut_off.url)._replace(path=path).geturl()).ok
        expect(still.locator("h1")).to_have_count(1)
    still.close()


def test_every_calculator_answers_and_one_python_serves_them_all(cut_off: Page, site: Path):
    answered: set[str] = set()
    cut_off.reload()  # the first visit went by the network
    cut_off.evaluate("window.sameVisit = true")
    for path in [path for path in paths(site) if path != urlsplit(cut_off.url).path]:
        move(cut_off, path)
        answered |= every_calculator_answers(cut_off, answered, LONG)
    assert answered == set(catalogue())
    assert cut_off.evaluate("window.sameVisit") is True
    assert sum(worker.url.endswith("python-worker.js") for worker in cut_off.workers) == 1


def test_the_search_finds(cut_off: Page):
    cut_off.wait_for_timeout(300)  # an eighth of a second after a move to another page the theme closes the search
    cut_off.locator("[name=query]").press_sequentially("mitre")
    expect(cut_off.locator(".md-search-result__item").first).to_be_visible(timeout=LONG)
