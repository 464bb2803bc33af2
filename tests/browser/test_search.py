"""The search finds what makers write into it: the part that tells of it is among the first three."""

import json
import tomllib
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.browser.reader import elsewhere

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
