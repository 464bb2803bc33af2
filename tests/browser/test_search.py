"""The search finds what makers write into it: the part that tells of it is among the first three."""

import json
import re
import tomllib
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.browser.reader import elsewhere, one_window

QUERIES = tomllib.loads(Path(__file__).with_name("makers_queries.toml").read_text(encoding="utf-8"))
FIRST = 3

#: What the theme's own search finds, asked as the theme asks it: for each query the places of each page it found.
FOUND = """async ([address, queries]) => {
    const search = new Worker(address);
    const ask = (type, data) => new Promise((resolve) => {
        search.onmessage = ({ data }) => resolve(data.data);
        search.postMessage({ type, data });
    });
    const index = await (await fetch("../../search/search_index.json")).json();
    await ask(0, { ...index, options: { suggest: true } });
    const found = [];
    for (const query of queries) {
        const { items } = await ask(2, query);
        found.push(items.map((page) => page.map(({ location }) => location)));
    }
    search.terminate();
    return found;
}"""


def is_among(found: list[list[str]], part: str) -> bool:
    """Whether a part, or a page, is among the first that are shown."""
    if part.endswith("/"):
        return any(places[0].partition("#")[0] == part for places in found[:FIRST])
    return any(part in places[: FIRST + 1] for places in found[:FIRST])  # the page itself stands at their head


def test_what_makers_write_is_found(browser, served, site):
    queries = [(query, part) for part, several in QUERIES.items() for query in several]
    assert len({query for query, _ in queries}) >= 150
    page = elsewhere(browser, served)
    (worker,) = (site / "assets/javascripts/workers").glob("search.*.js")
    page.goto("./finish/faults/")
    found = page.evaluate(FOUND, [f"../../{worker.relative_to(site).as_posix()}", [query for query, _ in queries]])
    page.context.close()
    missed = {
        query: [part, [places[:2] for places in places_found[:FIRST]]]
        for (query, part), places_found in zip(queries, found, strict=True)
        if not is_among(places_found, part)
    }
    assert missed == {}, json.dumps(missed, indent=1)


def test_a_fault_is_found_by_itself_and_its_line_is_shown(page: Page):
    page.goto("./")
    page.keyboard.press("f")
    box = page.locator(".md-search__input")
    box.press_sequentially("thump")
    first = page.locator(".md-search-result__item").first
    expect(first).to_contain_text("The needle thumps")
    expect(first).to_contain_text("Blunt, bent, or the wrong point")
    expect(first.locator(".md-tag:visible")).to_have_text(["thump", "thumping"])
    first.locator("a").filter(has_text="The needle thumps").click()
    expect(page.locator("tr:target")).to_contain_text("The needle thumps")
    expect(page.locator("tr:target")).to_be_in_viewport()


@one_window
def test_the_search_finds_after_a_way_to_another_folder_and_is_written_over_when_it_is_opened_again(page: Page):
    page.goto("./")
    page.get_by_role("link", name="A corner to mitre").click()
    expect(page).to_have_url(re.compile(r"/corners/mitre/$"))
    page.keyboard.press("f")
    expect(page.locator(".md-search__input")).to_be_focused()
    page.keyboard.type("thump")
    first = page.locator(".md-search-result__item").first
    expect(first).to_contain_text("The needle thumps")
    page.keyboard.press("Escape")
    page.locator(".md-header__button[for=__search]").click()
    expect(page.locator(".md-search__input")).to_be_focused()
    page.keyboard.type("jig")
    expect(first).to_contain_text("Gauges to print")
    words_found = """(item) => {
        const text = item.querySelector("p, h1, h2").parentElement;
        text.insertAdjacentHTML("beforeend", '<nav class="md-tags"><span class="md-tag"><mark>jig</mark></span></nav>');
        return getComputedStyle(text.lastElementChild).display;
    }"""
    assert first.evaluate(words_found) == "flex", "the words that were found are not glued to the text before them"


@one_window
def test_the_name_in_the_head_leads_home_and_that_of_the_page_to_its_top(page: Page):
    page.goto("./corners/mitre/")
    page.evaluate("scrollTo(0, 2000)")
    page.locator(".md-header__topic a", has_text="Mitred corners").click()
    expect(page.locator("h1")).to_be_in_viewport()
    page.locator(".md-header__topic a", has_text="Workroom handbook").click()
    expect(page).to_have_url(re.compile(r":\d+/$"))
    expect(page.locator("h1")).to_contain_text("Say what cloth you have")
