"""How fast the browser's Python answers for every article, in the middle and at the slowest twentieth.

    .venv/bin/python scripts/bench/bench_articles.py              40 questions an article
    .venv/bin/python scripts/bench/bench_articles.py --asked 200 napkin curtain-lined

Run it after a build. Python runs under Node, from the bundle that the site ships, as in the tests; what is timed is a
whole question: read, worked out, drawn and written as the page shows it. Compare the articles with each other: the
machine is noisy.
"""

import argparse
import json
import random
import subprocess
import sys
import time
from pathlib import Path
from statistics import median, quantiles

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from calculators.articles import articles
from calculators.articles.line import size_fields
from calculators.asking.answering import Asking
from calculators.values.measure import show_exactly
from scripts.setup import node
from scripts.tools.command_error import CommandError, run_main
from scripts.tools.places import BUILD, ROOT, VENV

PROGRAM = ROOT / "tests/pyodide/answers.mjs"
GOAL = 50  # [ms]
WARMING = 5  # questions before any is timed


def typed(name: str, chance: random.Random) -> dict[str, str]:
    """Sizes near the usual ones, no two alike."""
    asking = Asking({})
    return {
        each.name: show_exactly(round(asking.value(each) * chance.uniform(0.95, 1.15)), "cm")
        for each in size_fields(articles()[name])
    }


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--asked", type=int, default=40, help="questions an article (40)")
    parser.add_argument("name", nargs="*", help="articles; all of them where none is named")
    asked = parser.parse_args()
    bundle = BUILD / "runtime"
    if not (bundle / "listing.json").is_file():
        raise CommandError("Build the site first: python3 scripts/serve.py --build")
    chance, all_times = random.Random(0), []
    found = node.find(VENV)
    if found is None:
        raise CommandError("Set up first: python3 scripts/test.py --setup")
    words = [*map(str, found.node), str(PROGRAM), str(bundle)]
    with subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8") as python:
        assert python.stdin and python.stdout
        for name in asked.name or articles():
            times = []
            for number in range(asked.asked + WARMING):
                question = {"ask": "calculator", "calculator": name, "given": {}, "typed": typed(name, chance)}
                began = time.perf_counter()
                python.stdin.write(json.dumps(question | {"ruler": ""}) + "\n")
                python.stdin.flush()
                python.stdout.readline()
                if number >= WARMING:
                    times.append(1000 * (time.perf_counter() - began))
            all_times += times
            print(f"{name:24} middle {median(times):6.1f} ms, slowest twentieth {slowest(times):6.1f} ms", flush=True)
        python.stdin.close()
    print(f"all: slowest twentieth {slowest(all_times):.1f} ms, aimed at {GOAL} ms")
    return 0


def slowest(times: list[float]) -> float:
    """What one in twenty takes longer than [ms]."""
    return quantiles(times, n=20, method="inclusive")[-1]


if __name__ == "__main__":
    run_main(main)
