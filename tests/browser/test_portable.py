"""The copy that opens by double click: no server anywhere, only files on a disk and a browser."""

import json
import re
import shutil
from collections.abc import Iterator
from graphlib import TopologicalSorter
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit
from zipfile import ZipFile

import pytest
from playwright.sync_api import Browser, Page, expect

from calculators.catalogue import catalogue
from scripts.after_pages import portable_copy
from scripts.tools.places import BUILD
from tests.browser.reader import NO_WARM_UP, PYTHON_SENT_AWAY, every_calculator_answers
from tests.documents.exchange.test_handing import JOB

LONG = 90_000  # [ms]


@pytest.fixture(scope="module")
def copy(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("stick") / "workroom handbook"
    portable_copy.make(site, BUILD / "runtime", folder)
    return folder


@pytest.fixture
def opened(browser: Browser, copy: Path) -> Iterator[Page]:
    """The copy's home page; fails the test when a page goes against its policy, asks for anything but files, or
    breaks."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    context.set_default_timeout(LONG)
    context.add_init_script(NO_WARM_UP)
    broken: list[str] = []
    context.on("console", lambda message: broken.append(message.text) if message.type == "error" else None)
    context.on("weberror", lambda problem: broken.append(str(problem.error)))
    context.on(
        "request",
        lambda request: (
            None if urlsplit(request.url).scheme in ("file", "blob", "data") else broken.append(request.url)
        ),
    )
    page = context.new_page()
    page.goto((copy / "index.html").as_uri())
    yield page
    context.close()
    assert broken == []


def pages(copy: Path) -> list[Path]:
    return sorted(copy.rglob("*.html"))


class Links(HTMLParser):
    """Where the elements of a page lead, and what they show from elsewhere."""

    def __init__(self, page: Path) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(page.read_text())

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        self.found += [value for name, value in attributes if name in ("href", "src") and value]


def test_every_link_leads_to_a_file(copy: Path):
    missing, seen = [], 0
    for page in pages(copy):
        for link in Links(page).found:
            seen += 1
            address = urlsplit(link)
            if not address.scheme and address.path and not (page.parent / unquote(address.path)).is_file():
                missing.append(f"{page.relative_to(copy)}: {link}")
    assert missing == []
    assert seen > 1000


def test_the_zip_holds_the_same_files(copy: Path):
    with ZipFile(copy.with_name(copy.name + ".zip")) as archive:
        names = {name.partition("/")[2] for name in archive.namelist()}
    assert names == {path.relative_to(copy).as_posix() for path in copy.rglob("*") if path.is_file()}


def test_the_scripts_of_its_worker_import_one_another_in_no_circle(copy: Path):
    """Each is put together from those that it names, by `assemble.js`, in comments too."""
    start = (copy / "assets/portable/start.js").read_text()
    handbook = json.JSONDecoder().raw_decode(start.removeprefix("const HANDBOOK = "))[0]
    worker = json.JSONDecoder().raw_decode(handbook["workerStart"].removeprefix("const HANDBOOK = "))[0]
    named = {
        name: {found.rpartition("/")[2] for found in re.findall(r"""(?:from ?|import ?\(?)["'](\.[^"']+)""", text)}
        for name, text in worker["modules"].items()
    }
    assert "python-worker.js" in named
    assert list(TopologicalSorter(named).static_order())[-1] == "python-worker.js"


def test_made_again_it_replaces_itself_and_nothing_else(site: Path, tmp_path: Path):
    (tmp_path / "letters.txt").write_text("dear")
    with pytest.raises(FileExistsError):
        portable_copy.make(site, BUILD / "runtime", tmp_path)
    assert (tmp_path / "letters.txt").read_text() == "dear"


def test_every_page_opens_and_every_calculator_answers(opened: Page, copy: Path):
    """Python is woken on as few pages as hold every calculator; of the calculators' own pages, which are all alike,
    some are opened."""
    still = opened.context.new_page()
    still.add_init_script(PYTHON_SENT_AWAY)
    calculators: dict[Path, set[str]] = {}
    for path in pages(copy):
        calculators[path] = set(
            re.findall(r'<section class="calculator"[^>]* data-calculator="([^"]+)"', path.read_text())
        )
    alike = [path for path in pages(copy) if path.parent.parent.name == "reference"]
    for path in sorted({*pages(copy)} - {*alike[1:-1]}):
        still.goto(path.as_uri())
        expect(still.locator("h1")).to_have_count(1)
    answered: set[str] = set()
    while left := set(catalogue()) - answered:
        most = max(calculators, key=lambda path: len(calculators[path] & left))
        opened.goto(most.as_uri())
        found = every_calculator_answers(opened, answered, LONG)
        assert found, f"no page holds {left}"
        answered |= found


def test_the_search_finds_and_its_result_opens(opened: Page):
    opened.locator("header [for=__search]").first.click()
    opened.locator("[name=query]").press_sequentially("mitre")
    opened.locator(".md-search-result__link").first.click()
    expect(opened.locator("h1")).to_contain_text("itre")


def test_its_policy_allows_nothing_it_could_do_without(browser: Browser, copy: Path, tmp_path: Path):
    """A worker made from text takes its page's policy, and a page on a disk can make no other: so this policy must
    allow more
    than the served one. Each of the three sources more is needed: without it Python does not come."""
    page_file = copy / "plan/pieces/index.html"
    whole = page_file.read_text()
    (rule,) = re.findall(r'http-equiv="Content-Security-Policy" content="([^"]*)"', whole)
    assert "unsafe-inline" not in rule and "'unsafe-eval'" not in rule.replace("&#x27;", "'")
    for source in (
        "script-src &#x27;self&#x27; blob:",
        "&#x27;wasm-unsafe-eval&#x27;",
        "worker-src &#x27;self&#x27; blob:",
    ):
        assert source in rule
        less = source.replace(" blob:", "").replace("&#x27;wasm-unsafe-eval&#x27;", "")
        stricter = page_file.with_name("stricter.html")
        stricter.write_text(whole.replace(rule, rule.replace(source, less)))
        context = browser.new_context()
        page = context.new_page()
        with page.expect_console_message(
            lambda message: "content security policy" in message.text.lower(), timeout=LONG
        ):
            page.goto(stricter.as_uri())
        context.close()
        stricter.unlink()


#: What a copy on a disk kept of old, under the path at which it lay.
KEPT_OF_OLD = """async ([path, job]) => {
    const asked = indexedDB.open(`workroom${path}`, 1);
    asked.onupgradeneeded = ({ target: { result } }) => {
        result.createObjectStore("versions", { keyPath: ["kind", "id", "revision"] });
        result.createObjectStore("marks", { keyPath: ["job", "name"] });
        result.createObjectStore("choices", { keyPath: ["name"] });
    };
    const database = await new Promise((resolve) => { asked.onsuccess = () => resolve(asked.result); });
    const change = database.transaction("versions", "readwrite");
    const at = "2026-11-03T14:03:07+01:00";
    change.objectStore("versions").put({ kind: "job", id: "sage-napkins", revision: 1, at, text: job });
    await new Promise((resolve) => { change.oncomplete = resolve; });
    database.close();
    localStorage.setItem(`${path}ruler`, JSON.stringify("in 1/16"));
}"""


def test_under_another_drive_letter_everything_is_there(browser: Browser, copy: Path, tmp_path: Path):
    """What an older copy kept under its path is taken over and said; what is kept now is seen from wherever it lies."""
    context = browser.new_context()
    context.set_default_timeout(LONG)
    page = context.new_page()
    page.goto((copy / "assets/images/icon.svg").as_uri())
    page.evaluate(KEPT_OF_OLD, ["/E:/workroom/", JOB])
    page.goto((copy / "house/jobs/index.html").as_uri())
    expect(page.locator(".job-list")).to_contain_text("Napkins in sage linen")
    expect(page.locator("[data-topic=lost]")).to_contain_text("1 job, kept by a copy of this handbook in another place")
    page.get_by_role("button", name="Begin a new job").click()
    expect(page.locator(".job-in-hand [name=name]")).to_be_visible()
    elsewhere = tmp_path / "F" / "handbook"
    shutil.copytree(copy, elsewhere)
    page.goto((elsewhere / "house/jobs/index.html").as_uri())
    expect(page.locator(".job-list li[data-job]")).to_have_count(2)
    expect(page.locator("[data-topic=lost]")).to_have_count(0)
    page.goto((elsewhere / "plan/pieces/index.html").as_uri())
    expect(page.locator(".ruler-choice select")).to_have_value("in 1/16")
    context.close()
