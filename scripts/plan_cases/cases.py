"""Published instances as tasks, and one timed run of ours. Runs in CPython and, unchanged, in the browser's Python."""

import json
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from time import perf_counter
from typing import Any

from calculators.trade.lay_plan.solving.model import Piece, Task
from calculators.trade.lay_plan.solving.solvers import solve
from tests.trade.lay_plan.checker import faults

MILESTONE = 25


@dataclass(frozen=True)
class Case:
    """One instance under one rule, with the best value known (listed values without `proven` may be beaten)."""

    name: str
    rule: str
    task: Task
    best_known: int


@dataclass(frozen=True)
class Row:
    """What came out of one run.

    bound: what any plan could reach at best; proven: whether the plan reaches it; gap: what lies between, in percent.
    seconds: till the proof, or till time was up; first: till the first plan; found: till the best plan.
    longest: the longest time between two moments at which the run could have been broken off.
    at_steps: the time at which the run had made MILESTONE steps, twice as many, and so on. Steps are the same on every
    machine, so
        that these times can be compared between machines whatever the limit.
    """

    instance: str
    rule: str
    best_known: int
    ours: int | None
    bound: int | None
    proven: bool
    gap: float | None
    seconds: float
    first: float
    found: float
    longest: float
    at_steps: tuple[float, ...] = ()


def read(text: str) -> Iterator[Case]:
    """The cases of an instance file's text, in the forms described in the README beside the published files."""
    for entry in json.loads(text):
        turned = entry.get("may_turn", False)
        pieces = tuple(Piece(p["width"], p["length"], p["quantity"], p["value"], turned) for p in entry["pieces"])
        size = entry["width"], entry["length"]
        if "best_two_stage" in entry:
            for name, first_cut in (("strips_across_width", "across"), ("strips_along_length", "along")):
                best = entry["best_two_stage"][name]["value"]
                yield Case(entry["name"], f"2 stages, {first_cut}", Task(*size, pieces, 2, first_cut), best)
        else:
            yield Case(
                entry["name"],
                _rule(entry),
                Task(*size, pieces, entry["stages"], _first_cut(entry)),
                entry["best_known"],
            )


def _first_cut(entry: dict[str, Any]) -> str:
    return {"L": "across", "W": "along", "any": "any"}[entry["first_cut"]]


def _rule(entry: dict[str, Any]) -> str:
    stages = f"{entry['stages']} stages, {_first_cut(entry)}" if entry["stages"] else "any stages"
    aim = ", shortest" if entry["length"] is None else ""
    unlimited = ", unlimited" if entry["pieces"][0]["quantity"] is None else ""
    return f"{stages}{aim}{unlimited}{', turned' if entry.get('may_turn') else ''}"


def run(case: Case, limit: float) -> Row:
    """Runs ours for at most about `limit` seconds and checks the plan; raises AssertionError for a plan that is not
    sound."""
    start = last = perf_counter()
    first = found = longest = 0.0
    best = None
    at_steps: list[float] = []
    for step, progress in enumerate(solve(case.task), start=1):
        now = perf_counter()
        if step == MILESTONE << len(at_steps):
            at_steps.append(now - start)
        longest = max(longest, now - last)
        last = now
        if progress.plan is not None and progress.result != best:
            first = first or now - start
            best, found = progress.result, now - start
        if progress.finished or now - start > limit:
            break
    seconds = perf_counter() - start
    if progress.plan is not None:
        assert not (wrong := faults(progress.plan)), wrong
        reached = progress.plan.used_length if case.task.length is None else progress.plan.value
        assert reached == progress.result, (reached, progress.result)
    gap = None
    if progress.result is not None and progress.bound:
        gap = 100 * abs(progress.bound - progress.result) / max(1, progress.bound)
    return Row(
        case.name,
        case.rule,
        case.best_known,
        progress.result,
        progress.bound,
        progress.proven,
        gap,
        seconds,
        first,
        found,
        longest,
        tuple(at_steps),
    )


def behind(case: Case, result: int | None) -> float | None:
    """How far a result is behind the best value known, in percent; below 0 when it is better."""
    if result is None or not case.best_known:
        return None
    worse = result - case.best_known if case.task.length is None else case.best_known - result
    return 100 * worse / case.best_known


def times_slower(here: Row, there: Row, least: float = 0.02) -> float | None:
    """How many times longer the same steps took there; None where they took less than `least` seconds here."""
    both = list(zip(here.at_steps, there.at_steps))
    return both[-1][1] / both[-1][0] if both and both[-1][0] >= least else None


def rows_as_json(text: str, limit: float) -> Iterator[str]:
    """Runs every case of an instance file's text; a JSON text each (for the browser's Python)."""
    for case in read(text):
        yield json.dumps(asdict(run(case, limit)))
