"""What travels: the files of a page before it can be read, and of the whole handbook, each as gzip makes it."""

from __future__ import annotations

import gzip
import json
from pathlib import Path
from urllib.parse import unquote, urlsplit

from playwright.sync_api import Playwright

from scripts.bench.runtime.visits import ASKED, visit


def zipped(path: Path) -> int:
    """The bytes of a file on the way: packed, where packing makes it smaller."""
    content = path.read_bytes()
    return min(len(content), len(gzip.compress(content, 9, mtime=0)))


def file_of(site: Path, address: str) -> Path:
    path = unquote(urlsplit(address).path).lstrip("/")
    return site / (f"{path}index.html" if path == "" or path.endswith("/") else path)


def page_weight(playwright: Playwright, site: Path, address: str) -> int:
    """The bytes of all that a page asks for until it is loaded, nothing of the runtime among them."""
    with visit(playwright) as page:
        asked_for: list[str] = []
        page.on("request", lambda request: asked_for.append(request.url))
        page.goto(address + ASKED["page"], wait_until="load")
        files = {file_of(site, url) for url in asked_for if urlsplit(url).scheme == "http"}
    runtime = site / "assets/runtime"
    return sum(zipped(path) for path in files if runtime not in path.parents)


def offline_weight(site: Path) -> dict[str, int]:
    """The bytes of everything that is kept for use without a network: in all, and of the runtime's files."""
    first_line = (site / "sw.js").read_text().partition("\n")[0]
    kept = json.loads(first_line.removeprefix("const HANDBOOK = ").rstrip(";"))["files"]
    sizes = {path: zipped(site / path) for path in kept}
    runtime = {Path(path).name: size for path, size in sizes.items() if path.startswith("assets/runtime/")}
    return {"everything": sum(sizes.values()) + zipped(site / "sw.js"), "runtime": sum(runtime.values()), **runtime}
