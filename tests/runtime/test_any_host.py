"""On any host, at any address, a calculator answers and the page looks as it should. In short:
`scripts/bench/hosts_all.py` goes through all that `odd_hosts.py` knows."""

import hashlib
import json
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Playwright

from scripts.bench.hosts_all import PAGE, answered
from scripts.bench.odd_hosts import RESOLVER, WAYS, WORKROOM, Way, hosting
from scripts.setup import browser as chromium
from scripts.setup import node
from scripts.tools.places import ROOT, VENV

#: The faults of many hosts at once.
TOGETHER = {
    "all as texts": Way(everything="text/plain"),
    "by a name, no types, below a path without its last slash": Way(
        name=WORKROOM, everything="", below="/linen/handbook/", redirects=False
    ),
    "HTTP/1.0, machine code as a file to save, unknown endings refused": Way(
        {".wasm": "application/octet-stream"}, protocol="HTTP/1.0", refused=(".mjs", ".gz")
    ),
    "by a name, with the policy": Way(name=WORKROOM, policy=True),
}
#: What every host knows, or sends as bytes of which a browser makes nothing.
ENDINGS = {".html", ".js", ".wasm", ".css", ".svg", ".png", ".woff2", ".json", ".webmanifest", ".txt", ".xml", ".bin"}
#: Whatever they are sent as, nothing of the handbook needs them to be right.
NOT_NEEDED = {".map", ".gz"}
OF_PYTHON = {".zip", ".whl"}  # of the way in which Python starts where its snapshot does not load


@pytest.fixture(scope="module")
def anywhere(playwright: Playwright) -> Iterator[Browser]:
    """A browser that also knows a machine by a name, which it does not take for secure."""
    launched = playwright.chromium.launch(executable_path=chromium.ensure(), args=[*chromium.ARGUMENTS, RESOLVER])
    yield launched
    launched.close()


@pytest.mark.parametrize("name", TOGETHER)
def test_a_calculator_answers_on_a_page_that_looks_as_it_should(anywhere: Browser, site: Path, name: str):
    way = TOGETHER[name]
    with hosting(site, way) as address:
        assert answered(anywhere, address + (PAGE if way.redirects else PAGE.rstrip("/")), "solid") == ""


def test_what_does_not_live_is_found_out(anywhere: Browser, site: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr("scripts.bench.hosts_all.LONG", 2000)
    with hosting(site, Way(refused=("handbook.js",))) as address:
        assert answered(anywhere, address + PAGE, "solid") != ""
    with hosting(site, Way(refused=(".css",))) as address:
        assert "not styled" in answered(anywhere, address + PAGE, "solid")


def test_there_are_ways_enough():
    assert len(WAYS) >= 14


def test_every_file_has_an_ending_that_hosts_know(site: Path):
    endings = {path.suffix for path in site.rglob("*") if path.is_file()}
    assert endings <= ENDINGS | NOT_NEEDED | OF_PYTHON
    runtime = {path.suffix for path in (site / "assets/runtime").rglob("*") if path.is_file()}
    assert runtime <= {".js", ".wasm", ".bin"} | OF_PYTHON


def test_a_page_without_a_secure_host_hashes_as_others_do():
    lengths = [*range(130), 1000, 70_001]
    program = f"""
        import {{ sha256 }} from "./docs/assets/javascript/python/sha-256.js";
        const text = (length) => Uint8Array.from({{ length }}, (_, index) => (index * 31 + length) % 256);
        console.log(JSON.stringify({lengths}.map((length) => Buffer.from(sha256(text(length))).toString("hex"))));
    """
    words = [*map(str, node.find(VENV).node), "--input-type=module", "-e", program]
    told = json.loads(subprocess.run(words, cwd=ROOT, capture_output=True, text=True, check=True).stdout)
    given = [bytes((index * 31 + length) % 256 for index in range(length)) for length in lengths]
    assert told == [hashlib.sha256(each).hexdigest() for each in given]
