"""General-purpose libraries on the same cases: independent judges of values and proofs, and something to measure against.

Both solve the strip model of Lodi and Monaci (2003; from memory): copies sorted by height, each may open a strip, each lies in
at most one strip opened by a copy at least as high. It covers two stages without turning; for other cases they do not answer.
"""

import importlib.util
from collections.abc import Callable
from dataclasses import dataclass
from time import perf_counter

from calculators.layplan.model import Task
from scripts.layplan_bench.cases import Case


@dataclass(frozen=True)
class Verdict:
    """What a library found: value, whether it proved it, and in which time."""

    value: int | None
    proven: bool
    seconds: float


@dataclass(frozen=True)
class StripModel:
    """The copies of a two-stage task, highest first: pairs (width, height), values, and which copy may lie in whose strip."""

    width: int
    length: int | None
    sizes: list[tuple[int, int]]
    values: list[int]
    pairs: list[tuple[int, int]]


def strip_model(task: Task) -> StripModel | None:
    """The model of a task, or None where it does not apply."""
    if task.stages != 2 or any(piece.may_turn for piece in task.pieces) or any(piece.quantity is None for piece in task.pieces):
        return None
    if task.first_cut == "along":
        task = task.mirrored()
    copies = sorted(
        ((p.length, p.width, p.worth) for number, p in enumerate(task.pieces) for _ in range(task.quantity(number)) if p.width <= task.width),
        reverse=True,
    )
    sizes = [(width, height) for height, width, _ in copies]
    pairs = [
        (strip, copy)
        for strip in range(len(sizes))
        for copy in range(strip + 1, len(sizes))
        if sizes[strip][0] + sizes[copy][0] <= task.width
    ]
    return StripModel(task.width, task.length, sizes, [value for _, _, value in copies], pairs)


def highs(case: Case, limit: float) -> Verdict | None:
    """HiGHS on the strip model."""
    import highspy

    model = strip_model(case.task)
    if model is None:
        return None
    start = perf_counter()
    solver = highspy.Highs()
    solver.setOptionValue("log_to_console", False)
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("time_limit", limit)
    solver.setOptionValue("threads", 1)
    opened = [solver.addBinary() for _ in model.sizes]
    beside = {pair: solver.addBinary() for pair in model.pairs}
    aim = _constrain(model, opened, beside, solver.addConstr, solver.qsum)
    (solver.minimize if model.length is None else solver.maximize)(aim)
    info = solver.getInfo()
    found = info.primal_solution_status == 2
    value = round(info.objective_function_value) if found else None
    return Verdict(value, solver.getModelStatus() == highspy.HighsModelStatus.kOptimal, perf_counter() - start)


def cp_sat(case: Case, limit: float) -> Verdict | None:
    """CP-SAT of OR-Tools on the strip model."""
    from ortools.sat.python import cp_model

    model = strip_model(case.task)
    if model is None:
        return None
    start = perf_counter()
    program = cp_model.CpModel()
    opened = [program.new_bool_var(f"strip {copy}") for copy in range(len(model.sizes))]
    beside = {pair: program.new_bool_var(f"{pair}") for pair in model.pairs}
    aim = _constrain(model, opened, beside, program.add, sum)
    (program.minimize if model.length is None else program.maximize)(aim)
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = limit
    solver.parameters.num_workers = 1
    status = solver.solve(program)
    value = round(solver.objective_value) if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else None
    return Verdict(value, status == cp_model.OPTIMAL, perf_counter() - start)


def _constrain(model: StripModel, opened: list, beside: dict, add: Callable, total: Callable):
    """Adds the constraints of the strip model; returns what is to be least or most."""
    copies = range(len(model.sizes))
    in_strip = {copy: [] for copy in copies}
    over = {copy: [] for copy in copies}
    for (strip, copy), chosen in beside.items():
        in_strip[strip].append(model.sizes[copy][0] * chosen)
        over[copy].append(chosen)
    for copy in copies:
        used = total([opened[copy], *over[copy]])
        add(used == 1 if model.length is None else used <= 1)
        if in_strip[copy]:
            add(total(in_strip[copy]) <= (model.width - model.sizes[copy][0]) * opened[copy])
    height = total([model.sizes[copy][1] * opened[copy] for copy in copies])
    if model.length is None:
        return height
    add(height <= model.length)
    return total([model.values[copy] * chosen for copy in copies for chosen in [opened[copy], *over[copy]]])


JUDGES: dict[str, tuple[str, Callable[[Case, float], Verdict | None]]] = {"HiGHS": ("highspy", highs), "CP-SAT": ("ortools", cp_sat)}


def at_hand() -> dict[str, Callable[[Case, float], Verdict | None]]:
    """The judges whose library is installed (extra `bench`)."""
    return {name: judge for name, (package, judge) in JUDGES.items() if importlib.util.find_spec(package)}
