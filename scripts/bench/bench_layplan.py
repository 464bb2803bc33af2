"""Lay plans against published instances and against general-purpose solvers, in one run.

    python scripts/bench/bench_layplan.py             the instances of the test suite, 2 seconds each
      --instances FILE … --limit 5                    other files of the same forms
      --browser                                       the same also under Pyodide, and the ratio of times
      --growth                                        10 to 500 pieces, 1 to 20 sizes
      --alone --json                                  without the other solvers; rows as JSON

Run it with the project's own Python (.venv). The other solvers are those of the extra `bench` that are installed.
"""

import argparse
import json
import subprocess
import sys
from dataclasses import asdict
from pathlib import Path
from statistics import mean, median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from scripts.plan_cases import judges
from scripts.plan_cases.cases import Case, Row, behind, read, run, times_slower
from scripts.plan_cases.growth import orders
from scripts.tools.places import ROOT

INSTANCES = sorted((ROOT / "tests" / "trade" / "lay_plan" / "instances").glob("*.json"))
HEADINGS = ("instance", "rule", "best known", "ours", "bound", "proven", "behind %", "gap to bound %", "seconds")


def arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--instances", nargs="+", type=Path, default=INSTANCES, metavar="FILE")
    parser.add_argument("--limit", type=float, default=2.0, metavar="SECONDS")
    parser.add_argument("--browser", action="store_true", help="the same under Pyodide in Node")
    parser.add_argument(
        "--growth", action="store_true", help="made-up orders of growing size instead of published instances"
    )
    parser.add_argument("--alone", action="store_true", help="without the other solvers")
    parser.add_argument("--json", action="store_true", help="rows as JSON instead of a table")
    return parser.parse_args()


def cells(case: Case, row: Row) -> list[str]:
    """A row as a reader sees it."""
    late = behind(case, row.ours)
    gap = "" if row.gap is None else f"{row.gap:.2f}"
    proven = "yes" if row.proven else ""
    return [
        row.instance,
        row.rule,
        *map(str, (row.best_known or "", row.ours, row.bound)),
        proven,
        "" if late is None else f"{late:.2f}",
        gap,
        f"{row.seconds:.2f}",
    ]


def verdict_cell(verdict: judges.Verdict | None) -> str:
    if verdict is None:
        return "–"
    return f"{verdict.value}{' proven' if verdict.proven else ''} in {verdict.seconds:.2f}"


def in_browser(files: list[Path], limit: float) -> list[Row]:
    """The rows of the same files under Pyodide."""
    command = [
        "node",
        str(ROOT / "scripts" / "plan_cases" / "browser.mjs"),
        str(ROOT),
        str(limit),
        *map(str, files),
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return [Row(**json.loads(line)) for line in done.stdout.splitlines() if line.startswith("{")]


def summary(found: list[tuple[Case, Row]]) -> list[str]:
    """What a reader wants to know of each rule."""
    lines = []
    for rule in dict.fromkeys(case.rule for case, _ in found):
        rows = [(case, row) for case, row in found if case.rule == rule]
        reached = [
            by
            for case, row in rows
            if case.best_known and row.ours is not None and (by := behind(case, row.ours)) is not None
        ]
        gaps = [row.gap for _, row in rows if row.gap is not None]
        times = [row.seconds for _, row in rows]
        known = (
            f"{sum(1 for each in reached if each <= 0)} of {len(reached)} best values reached "
            f"({sum(1 for each in reached if each < 0)} bettered), mean {mean(reached):.3f} % behind; "
            if reached
            else ""
        )
        lines.append(
            f"{rule}: {known}{sum(row.proven for _, row in rows)} of {len(rows)} proven; mean gap to the bound "
            f"{mean(gaps):.3f} %; "
            f"median {median(times):.2f} s, longest {max(times):.2f} s, longest step "
            f"{max(row.longest for _, row in rows):.2f} s"
        )
    return lines


def main() -> None:
    asked = arguments()
    others = {} if asked.alone or asked.growth else judges.at_hand()
    cases = list(orders()) if asked.growth else [case for file in asked.instances for case in read(file.read_text())]
    if not asked.json:
        print(" | ".join([*HEADINGS, *others]))
    found, verdicts = [], []
    for case in cases:
        row = run(case, asked.limit)
        beside = {name: judge(case, asked.limit) for name, judge in others.items()}
        found.append((case, row))
        verdicts.append(beside)
        if not asked.json:
            print(" | ".join([*cells(case, row), *map(verdict_cell, beside.values())]), flush=True)
    browser = in_browser(asked.instances, asked.limit) if asked.browser and not asked.growth else []
    if asked.json:
        rows = [
            asdict(row) | {name: verdict and asdict(verdict) for name, verdict in beside.items()}
            for (_, row), beside in zip(found, verdicts)
        ]
        print(json.dumps({"here": rows, "browser": [asdict(row) for row in browser]}, indent=1))
        return
    print("\n" + "\n".join(summary(found)))
    if browser:
        print("\nUnder Pyodide:\n" + "\n".join(summary([(case, row) for (case, _), row in zip(found, browser)])))
        ratios = [ratio for (_, here), there in zip(found, browser) if (ratio := times_slower(here, there))]
        if ratios:
            print(
                f"Time under Pyodide ÷ time here for the same steps, over {len(ratios)} cases: median "
                f"{median(ratios):.2f}, {min(ratios):.2f} to {max(ratios):.2f}"
            )
        else:
            print("No case took long enough to compare times.")


if __name__ == "__main__":
    main()
