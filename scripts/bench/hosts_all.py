"""Every way of serving the built site that `odd_hosts.py` knows, and a copy on a disk under two drive letters: each
time a calculator is typed into and answers, the page is styled, and nothing is asked of another host.

    .venv/bin/python scripts/bench/hosts_all.py [WORDS OF A NAME]    after a build; two minutes
"""

import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from playwright.sync_api import Browser, sync_playwright

from scripts.after_pages import portable_copy
from scripts.bench.odd_hosts import RESOLVER, WAYS, hosting
from scripts.setup import browser as chromium
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import BUILD, SITE

PAGE = "plan/pieces/"
LONG = 30_000  # [ms]
#: Types into the first blank and waits for the answer that follows it.
ANSWER = """async (patience) => {
    const end = performance.now() + patience;
    const pause = () => new Promise((resolve) => setTimeout(resolve, 20));
    const section = document.querySelector("section.calculator");
    const spoken = section.querySelector(".answer .spoken");
    const blank = section.querySelector("form.asked input[type=text]");
    spoken.append(Object.assign(document.createElement("i"), { className: "before" }));
    blank.value += " ";
    blank.dispatchEvent(new Event("input", { bubbles: true }));
    while (spoken.querySelector(".before") && performance.now() < end) await pause();
    return spoken.querySelector(".before") ? "" : spoken.textContent.trim();
}"""
STYLED = "getComputedStyle(document.querySelector('.kept-in-view')).borderTopStyle"


def answered(browser: Browser, address: str, styled: str) -> str:
    """What is wrong with the page at an address, or nothing. styled: as `STYLED` gives it where all is right."""
    context = browser.new_context()
    asked: list[str] = []
    context.on("request", lambda request: asked.append(request.url))
    page = context.new_page()
    try:
        page.goto(address)
        page.locator(".ruler-choice").wait_for(timeout=LONG)
        told = page.evaluate(ANSWER, LONG)
        looks = page.evaluate(STYLED)
    except Exception as problem:
        return str(problem).splitlines()[0]
    finally:
        context.close()
    home = "/".join(address.split("/")[:3])
    strangers = [each for each in asked if not each.startswith((home, "data:", f"blob:{home}", "blob:null", "file:"))]
    if strangers:
        return f"asked for {strangers[0]}"
    if not told:
        return "answered nothing"
    return "" if looks == styled or not styled else f"is not styled: {looks}"


def main() -> int:
    if not (SITE / "index.html").is_file():
        raise CommandError("Build the site first: python3 scripts/serve.py --build")
    wanted = " ".join(sys.argv[1:])
    failed = 0
    with sync_playwright() as started, tempfile.TemporaryDirectory() as folder:
        browser = started.chromium.launch(executable_path=chromium.ensure(), args=[*chromium.ARGUMENTS, RESOLVER])

        def report(name: str, address: str, styled: str) -> None:
            nonlocal failed
            began = time.monotonic()
            wrong = answered(browser, address, styled)
            failed += bool(wrong)
            print(f"{'FAILS' if wrong else 'lives'}  {time.monotonic() - began:5.1f} s  {name}  {wrong}", flush=True)

        for name, way in WAYS.items():
            if wanted in name:
                with hosting(SITE, way) as address:
                    report(name, address + (PAGE if way.redirects else PAGE.rstrip("/")), "solid")
        for drive in ("D", "E"):
            name = f"a copy on a disk, {drive}:"
            if wanted in name:
                copy = Path(folder, drive, "handbook")
                portable_copy.make(SITE, BUILD / "runtime", copy)
                report(name, (copy / PAGE / "index.html").as_uri(), "solid")
        browser.close()
    return 1 if failed else 0


if __name__ == "__main__":
    run_main(main)
