"""How long every page of the built site is on a phone, and how far down its answer and its drawing stand.

    .venv/bin/python scripts/bench/page_lengths.py [PATH …]    after a build; a PATH is such as corners/mitre/

Height in CSS pixels at 390 × 844, as a page is opened. Of a page with calculators: where the first answer and its
drawing begin and end, in screens from the top. Words: those that are read without opening anything.
"""

import argparse
import sys
import threading
from pathlib import Path
from urllib.parse import urlsplit
from xml.etree import ElementTree

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from playwright.sync_api import Page, sync_playwright

from scripts.after_pages.policy import headers_for
from scripts.setup import browser as chromium
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import ADDRESS_FILE, SITE
from scripts.tools.server import open_server

WIDTH, HEIGHT = 390, 844  # [CSS px]
MEASURE = """() => {
    const [article] = document.getElementsByTagName("article");
    const texts = document.createTreeWalker(article, NodeFilter.SHOW_TEXT);
    let words = 0;
    while (texts.nextNode())
        if (texts.currentNode.parentElement.checkVisibility({ visibilityProperty: true }))
            words += texts.currentNode.data.split(/\\s+/).filter(Boolean).length;
    const screens = (y) => (y + scrollY) / innerHeight;
    const top = (element) => element?.checkVisibility() ? screens(element.getBoundingClientRect().top) : null;
    const end = (element) => element?.checkVisibility() ? screens(element.getBoundingClientRect().bottom) : null;
    const walk = article.querySelector(".walk");
    const answer = walk ? walk.querySelector(".step-answer, .spoken") : article.querySelector(".calculator .spoken");
    const drawing = walk ? null : answer?.closest(".answer").querySelector("figure.drawing:not(.key *)");
    const high = document.documentElement.scrollHeight;
    return { high, words, answer: top(answer), drawing: top(drawing), end: end(drawing) };
}"""


def paths() -> list[str]:
    """Every page that the site map names, by its path in the site."""
    below = urlsplit(ADDRESS_FILE.read_text()).path
    found = ElementTree.parse(SITE / "sitemap.xml").iterfind(".//{*}loc")
    return [urlsplit(each.text or "").path.removeprefix(below) for each in found]


def measured(page: Page, path: str) -> dict[str, float | None]:
    """What a page comes to once its letters are there."""
    page.goto(f"./{path}")
    page.evaluate("document.fonts.ready.then(() => true)")
    found: dict[str, float | None] = page.evaluate(MEASURE)
    return found


def line(path: str, found: dict[str, float | None]) -> str:
    places = (f"{found[name]:8.2f}" if found[name] is not None else " " * 8 for name in ("answer", "drawing", "end"))
    return f"{path or '(home)':34}{found['high']:8.0f}{found['words']:7.0f}{''.join(places)}"


def main() -> int:
    parser = argparse.ArgumentParser(description="Measure every page of the built site on a phone.")
    parser.add_argument("pages", nargs="*", help="such as corners/mitre/; all when none is named")
    asked = parser.parse_args()
    if not (SITE / "sitemap.xml").is_file():
        raise CommandError("Build the site first: python3 scripts/serve.py --build")
    server = open_server(SITE, int(ADDRESS_FILE.read_text().rstrip("/").rpartition(":")[2]), headers_for(SITE))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    print(f"{'page':34}{'height':>8}{'words':>7}{'answer':>8}{'drawing':>8}{'its end':>8}")
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=chromium.ensure(), args=[*chromium.ARGUMENTS])
        context = opened.new_context(viewport={"width": WIDTH, "height": HEIGHT}, base_url=server.address)
        context.add_init_script("delete Navigator.prototype.serviceWorker")
        page = context.new_page()
        for path in asked.pages or paths():
            print(line(path, measured(page, path)), flush=True)
        opened.close()
    server.shutdown()
    return 0


if __name__ == "__main__":
    run_main(main)
