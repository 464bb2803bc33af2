"""What a frame of a played fold costs on a slow processor.

    .venv/bin/python scripts/bench/played_frames.py [TIMES]    after a build; TIMES as slow, 4 unless told

Each page's first played drawing, once Python is awake, is taken through all its places while the processor is slowed
down; printed is how long the script works for a frame, with style and layout, in milliseconds: the middle one, the 95th
of a hundred, the longest. 60 frames a second leave 16.7 ms for each.
"""

import argparse
import sys
import threading
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from playwright.sync_api import sync_playwright

from scripts.after_pages.policy import headers_for
from scripts.setup import browser as chromium
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import ADDRESS_FILE, SITE
from scripts.tools.server import open_server

PAGES = ("corners/mitre/", "corners/border/", "corners/self-bound/", "stitch/seams/", "fold/hems/")
WOKEN = 5_000  # [ms] by then Python has woken and warmed up, which is no part of a frame
FRAMES = """async () => {
    const player = document.querySelector("details.played");
    for (let each = player; each; each = each.parentElement) if (each.matches("details")) each.open = true;
    await new Promise((done) => setTimeout(done, 500));
    const slider = player.querySelector("input");
    slider.step = "any";
    const times = [];
    for (let n = 0; n <= 200; n++) {
        await new Promise(requestAnimationFrame);
        const begun = performance.now();
        slider.value = (slider.max * n) / 200;
        slider.dispatchEvent(new Event("input", { bubbles: true }));
        player.querySelector("svg").getBoundingClientRect();
        times.push(performance.now() - begun);
    }
    return times.sort((one, other) => one - other);
}"""


def main() -> int:
    parser = argparse.ArgumentParser(description="Measure what a frame of a played fold costs.")
    parser.add_argument("times", nargs="?", type=float, default=4.0, help="how many times as slow the processor is")
    times = parser.parse_args().times
    if not (SITE / "sitemap.xml").is_file():
        raise CommandError("Build the site first: python3 scripts/serve.py --build")
    server = open_server(SITE, int(ADDRESS_FILE.read_text().rstrip("/").rpartition(":")[2]), headers_for(SITE))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    print(f"{'page':24}{'middle':>8}{'95 %':>8}{'longest':>9}   ms a frame, processor {times:g} times as slow")
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=chromium.ensure(), args=[*chromium.ARGUMENTS])
        context = opened.new_context(viewport={"width": 390, "height": 844}, base_url=server.address)
        context.add_init_script("delete Navigator.prototype.serviceWorker")
        page = context.new_page()
        context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": times})
        for path in PAGES:
            page.goto(f"./{path}", wait_until="networkidle")
            page.wait_for_timeout(WOKEN)
            found = page.evaluate(FRAMES)
            print(f"{path:24}{found[100]:8.1f}{found[190]:8.1f}{found[-1]:9.1f}", flush=True)
        opened.close()
    server.shutdown()
    return 0


if __name__ == "__main__":
    run_main(main)
