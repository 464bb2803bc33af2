"""The handbook in other engines than Chromium: live, kept, and live again without a network. Runs where they are
installed."""

import json
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from calculators.faces.browser import replies
from scripts.after_pages.policy import headers_for
from scripts.tools.server import SiteServer, open_server
from tests.engines import firefox, webkit
from tests.engines.firefox import Firefox
from tests.engines.webkit import WebKit

ENGINES = [
    pytest.param(
        Firefox, id="firefox", marks=pytest.mark.skipif(firefox.MISSING is not None, reason=firefox.MISSING or "")
    ),
    pytest.param(
        WebKit, id="webkit", marks=pytest.mark.skipif(webkit.MISSING is not None, reason=webkit.MISSING or "")
    ),
]
ANSWER = """async (name, field, text) => {
    // not yet live
    while (document.querySelector(".ruler-choice").hidden) await new Promise((resolve) => setTimeout(resolve, 20));
    const section = document.querySelector(`section.calculator[data-calculator="${name}"]`);
    const spoken = section.querySelector(".answer .spoken");
    const changed = new Promise((resolve) => new MutationObserver(resolve).observe(spoken, { childList: true }));
    section.querySelector(`[name="${field}"]`).value = text;
    section.querySelector(`[name="${field}"]`).dispatchEvent(new Event("input", { bubbles: true }));
    await changed;
    return spoken.textContent;
}"""
STATE = """async (home) => {
    const { onState } = await import(`${home}assets/javascript/python.js`);
    return new Promise((resolve) =>
        onState((state) => state.name === "ready" && resolve([state.way, state.passedOver])));
}"""
KEPT = """async () => {
    while (!navigator.serviceWorker.controller) await new Promise((resolve) => setTimeout(resolve, 100));
    return true;
}"""
MOVE = """async (address) => {
    document.querySelector("h1").id = "before";
    window.sameVisit = true;
    document.body.appendChild(Object.assign(document.createElement("a"), { href: address })).click();
    while (document.querySelector("h1#before") || !document.querySelector("h1"))
        await new Promise((resolve) => setTimeout(resolve, 50));
    return window.sameVisit === true;
}"""


@pytest.fixture
def server(site: Path) -> Iterator[SiteServer]:
    with open_server(site, 0, headers_for(site)) as running:
        threading.Thread(target=running.serve_forever, daemon=True).start()
        yield running
        running.shutdown()


def expected(name: str, **typed: str) -> str:
    """The answer that this machine's own Python speaks."""
    *_, last = replies(json.dumps({"ask": "calculator", "calculator": name, "given": {}, "typed": typed, "ruler": ""}))
    return BeautifulSoup(json.loads(last)["answer"], "html.parser").select_one(".spoken").get_text()


@pytest.mark.parametrize("engine", ENGINES)
def test_live_then_kept_then_live_without_a_network(engine: type[Firefox | WebKit], server: SiteServer, tmp_path: Path):
    home = server.address
    browser = engine(tmp_path / "profile")
    try:
        browser.open(home + "plan/pieces/")
        assert browser.run(ANSWER, "pieces-from-cloth", "piece_width", "30 cm") == expected(
            "pieces-from-cloth", piece_width="30 cm"
        )
        assert browser.run(STATE, home) == ["snapshot", ""]
        assert browser.run(KEPT)
        server.shutdown()
        server.server_close()
        browser.open(home + "plan/pieces/")
        assert browser.run(ANSWER, "pieces-from-cloth", "piece_width", "20 cm") == expected(
            "pieces-from-cloth", piece_width="20 cm"
        )
        assert browser.run(STATE, home) == ["snapshot", ""]
        assert browser.run(MOVE, home + "corners/mitre/")
        assert browser.run(ANSWER, "mitre-marks", "turn", "1.4 cm") == expected("mitre-marks", turn="1.4 cm")
    finally:
        browser.close()
