"""Lighthouse, mobile preset, on a home, a technique and a calculator page of the built site: scores, and what keeps
each from 100.

    .venv/bin/python scripts/bench/lighthouse.py [PATH …]    after a build; a PATH is such as corners/mitre/

Its npm package is brought in at the first run. The site is served packed with gzip, as hosts on the web do.
"""

import argparse
import gzip
import json
import subprocess
import sys
import tempfile
import threading
import time
from functools import partial
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from scripts.after_pages.policy import headers_for
from scripts.setup import browser as chromium
from scripts.setup import node
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import ADDRESS_FILE, ROOT, SITE, VENV
from scripts.tools.server import HOST, SiteHandler, SiteServer

TOOL = ROOT / "scripts/bench/lighthouse_tool"
PAGES = ("", "fold/hems/", "plan/pieces/")
PACKED = {".html", ".css", ".js", ".mjs", ".json", ".svg", ".wasm", ".xml"}
PATIENCE = 30  # [s] for Chromium to open its port


class PackingHandler(SiteHandler):
    """Serves files packed, where that is worth it."""

    def do_GET(self) -> None:
        path = Path(self.translate_path(self.path))
        if path.is_dir():
            path /= "index.html"
        if path.suffix not in PACKED or not path.is_file():
            super().do_GET()
            return
        body = gzip.compress(path.read_bytes(), mtime=0)
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(path.name))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)


def run(pages: list[str]) -> list[dict[str, Any]]:
    """Lighthouse's words about each page."""
    port = int(ADDRESS_FILE.read_text().rstrip("/").rpartition(":")[2])
    with (
        SiteServer((HOST, port), partial(PackingHandler, directory=str(SITE), headers_for=headers_for(SITE))) as server,
        tempfile.TemporaryDirectory() as profile,
    ):
        threading.Thread(target=server.serve_forever, daemon=True).start()
        opened = subprocess.Popen(
            [
                chromium.ensure(),
                *chromium.ARGUMENTS,
                "--headless",
                "--remote-debugging-port=0",
                f"--user-data-dir={profile}",
            ],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        try:
            addresses = [server.address + page for page in pages]
            words = [*node.found(VENV).node, str(TOOL / "run.mjs"), str(debugging_port(Path(profile))), *addresses]
            done = subprocess.run(words, cwd=TOOL, stdout=subprocess.PIPE, text=True)
        finally:
            opened.terminate()
            opened.wait()
            server.shutdown()
    if done.returncode:
        raise CommandError("Lighthouse did not finish; the lines above say why.")
    return [json.loads(line) for line in done.stdout.splitlines() if line.startswith("{")]


def debugging_port(profile: Path) -> int:
    """The port that Chromium chose. Raises: Trouble when it does not come up."""
    written = profile / "DevToolsActivePort"
    deadline = time.monotonic() + PATIENCE
    while not (written.is_file() and written.read_text()):
        if time.monotonic() > deadline:
            raise CommandError("Chromium did not start.")
        time.sleep(0.1)
    return int(written.read_text().splitlines()[0])


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("pages", nargs="*", default=PAGES, metavar="PATH")
    asked = parser.parse_args()
    if not (SITE / "sw.js").is_file():
        raise CommandError("Build the site first: python3 scripts/serve.py --build")
    node.ensure_packages(TOOL, node.ensure(ROOT, VENV))
    for said in run(list(asked.pages)):
        print(said["address"])
        for category, score in said["scores"].items():
            print(f"  {category}: {score}", *(f"\n    {reason}" for reason in said["below"][category]))
    return 0


if __name__ == "__main__":
    run_main(main)
