"""How soon and how fast the browser's Python answers, and what it weighs, in one run against a plain start of Pyodide.

    python scripts/bench/bench_runtime.py                       7 pairs of starts; a table
    python scripts/bench/bench_runtime.py --pairs 15 --json FILE   more pairs, and the figures as JSON
    python scripts/bench/bench_runtime.py --before CLONE        an older state too, built in a clone of its own, in turn

Run it with the project's own Python (.venv) after a build. Starts come in pairs, ours and the plain page in turn, each
in a
browser with an empty profile, so that a busy machine is as hard on one as on the other; compare ratios, not seconds.
"""

import argparse
import functools
import json
import os
import sys
import tempfile
import threading
from collections.abc import Callable
from contextlib import ExitStack
from pathlib import Path
from statistics import median, quantiles
from typing import Any
from urllib.parse import urlsplit

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from playwright.sync_api import sync_playwright

from scripts.after_pages.policy import headers_for
from scripts.bench.runtime import plain, visits, weights
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import ADDRESS_FILE, ROOT, SITE
from scripts.tools.server import HeadersFor, no_more_headers, open_server

#: What is aimed at, by figure.
GOALS = {
    "first answer, ours : plain": 0.25,
    "typed → redrawn, p95 [ms]": 16,
    "second page in place → answer [ms]": 20,
    "page before it is readable [kB]": 300,
    "everything offline [MB]": 12,
}
COLD = 50  # keystrokes after which the browser has made fast code of what Python uses most
QUESTION = {
    "ask": "calculator",
    "calculator": visits.ASKED["name"],
    "given": {},
    "typed": {visits.ASKED["field"]: visits.FIRST_TEXT},
    "ruler": "",
}


def measure(pairs: int, keystrokes: int, before: Path | None, say: Callable[[str], None]) -> dict[str, Any]:
    with ExitStack() as stack, sync_playwright() as playwright:
        plain_site = Path(stack.enter_context(tempfile.TemporaryDirectory()))
        plain.make(plain_site, QUESTION)
        baseline = serve(stack, plain_site, 0)
        roots = {"ours": ROOT} | ({"before": before} if before else {})
        served = {whose: serve_built(stack, root) for whose, root in roots.items()}
        figures: dict[str, Any] = {
            whose: {
                "page": weights.page_weight(playwright, roots[whose] / SITE.name, address),
                "offline": weights.offline_weight(roots[whose] / SITE.name),
                "starts": [], "typed": [], "second": [], "memory": [],
            }
            for whose, address in served.items()
        }  # fmt: skip
        turns = ["plain", *served]
        for number in range(pairs):
            took = {}
            for whose in turns[number % len(turns) :] + turns[: number % len(turns)]:
                if whose == "plain":
                    took[whose] = visits.first_answer_plain(playwright, baseline)
                    continue
                with visits.visit(playwright) as page:
                    took[whose] = visits.first_answer(page, served[whose])
                    visits.wait_until_kept(page)
                    figures[whose]["typed"].append(visits.typed_to_redrawn(page, keystrokes))
                    figures[whose]["second"].append(visits.second_page(page))
                    figures[whose]["memory"].append(visits.worker_memory(page))
            for whose in served:
                figures[whose]["starts"].append({"ours": took[whose], "plain": took["plain"]})
            each = ", ".join(f"{whose} {time:.0f} ms" for whose, time in took.items())
            say(f"pair {number + 1}: {each}, ratio {took['ours'] / took['plain']:.3f}")
        return {"of": figures, "load": os.getloadavg()[0]}


def serve_built(stack: ExitStack, root: Path) -> str:
    """The site that was built below a root, at the address that it was built for."""
    site = root / SITE.name
    port = urlsplit((root / ADDRESS_FILE.relative_to(ROOT)).read_text()).port or 0
    return serve(stack, site, port, headers_for(site))


def serve(stack: ExitStack, folder: Path, port: int, headers: HeadersFor = no_more_headers) -> str:
    server = stack.enter_context(open_server(folder, port, headers))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    stack.callback(server.shutdown)
    return server.address


def spread(values: list[float]) -> dict[str, float]:
    """Middle value, and the least and greatest beside it."""
    return {"median": median(values), "least": min(values), "greatest": max(values)}


def percentile(values: list[float], share: int) -> float:
    return quantiles(values, n=100, method="inclusive")[share - 1]


def summary(figures: dict[str, Any]) -> dict[str, dict[str, float]]:
    """The figures by name, each with its spread over the pairs."""
    starts, offline = figures["starts"], figures["offline"]
    return {
        "first answer, ours : plain": spread([each["ours"] / each["plain"] for each in starts]),
        "first answer, ours [ms]": spread([each["ours"] for each in starts]),
        "first answer, plain [ms]": spread([each["plain"] for each in starts]),
        "typed → redrawn, p50 [ms]": spread([percentile(each, 50) for each in figures["typed"]]),
        "typed → redrawn, p95 [ms]": spread([percentile(each, 95) for each in figures["typed"]]),
        f"typed → redrawn, p95 once warm (after {COLD}) [ms]": spread(
            [percentile(each[COLD:], 95) for each in figures["typed"]]
        ),
        "second page in place → answer [ms]": spread([in_place for in_place, _ in figures["second"]]),
        "link pressed → answer there [ms]": spread([pressed for _, pressed in figures["second"]]),
        "page before it is readable [kB]": {"median": figures["page"] / 1e3},
        "everything offline [MB]": {"median": offline["everything"] / 1e6},
        "of it the runtime [MB]": {"median": offline["runtime"] / 1e6},
        "worker, Python's memory [MB]": spread([each["buffers"] / 1e6 for each in figures["memory"]]),
        "worker, JavaScript [MB]": spread([each["javascript"] / 1e6 for each in figures["memory"]]),
    }


def table(rows: dict[str, dict[str, float]]) -> str:
    lines = ["| figure | median | least – greatest | goal | met |", "| --- | ---: | ---: | ---: | --- |"]
    for name, row in rows.items():
        goal = GOALS.get(name)
        met = "" if goal is None else "yes" if row["median"] <= goal else "no"
        span = f"{row['least']:.3g} – {row['greatest']:.3g}" if "least" in row else ""
        lines.append(f"| {name} | {row['median']:.3g} | {span} | {'' if goal is None else f'≤ {goal:g}'} | {met} |")
    return "\n".join(lines)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--pairs", type=int, default=7, help="starts of each kind (7)")
    parser.add_argument(
        "--keystrokes", type=int, default=100, help=f"typed in each of our visits, more than {COLD} (100)"
    )
    parser.add_argument("--before", type=Path, metavar="CLONE", help="a clone of an older state, with its site built")
    parser.add_argument("--json", type=Path, metavar="FILE", help="write the figures here too")
    asked = parser.parse_args()
    if not (SITE / "sw.js").is_file():
        raise CommandError("Build the site first: python3 scripts/serve.py --build")
    say = functools.partial(print, file=sys.stderr, flush=True)
    figures = measure(asked.pairs, asked.keystrokes, asked.before, say)
    rows = {whose: summary(each) for whose, each in figures["of"].items()}
    if asked.json:
        asked.json.write_text(json.dumps({"goals": GOALS, "figures": rows, "measured": figures}, indent=1))
    for whose, of_site in rows.items():
        print(f"{whose}\n\n{table(of_site)}\n")
    print(f"Load of the machine while measuring: {figures['load']:.1f} on {os.cpu_count()} processors.")
    return 0


if __name__ == "__main__":
    run_main(main)
