"""General-purpose libraries on the same cases: independent judges of values and proofs, and something to measure
against.

HiGHS and CP-SAT solve the strip model of Lodi and Monaci (2003; from memory): copies sorted by height, each may open a
strip, each lies in
at most one strip opened by a copy at least as high. It covers two stages without turning; for other cases they do not
answer.
PackingSolver knows edge-to-edge cuts and answers all cases. rectpack drops the rule of edge-to-edge cuts: what it finds
is a picture of what that
rule costs, no plan that could be cut so.
"""

import importlib.util
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from time import perf_counter
from typing import Any

from calculators.trade.lay_plan.solving.model import Task
from scripts.plan_cases.cases import Case

#: A variable of a judge, or what is reckoned of some: each judge has classes of its own, and says nothing of types.
Term = Any


@dataclass(frozen=True)
class Verdict:
    """What a library found: value, whether it proved it, and in which time."""

    value: int | None
    proven: bool
    seconds: float


@dataclass(frozen=True)
class StripModel:
    """The copies of a two-stage task, highest first: pairs (width, height), values, and which copy may lie in whose
    strip."""

    width: int
    length: int | None
    sizes: list[tuple[int, int]]
    values: list[int]
    pairs: list[tuple[int, int]]


def strip_model(task: Task) -> StripModel | None:
    """The model of a task, or None where it does not apply."""
    if (
        task.stages != 2
        or any(piece.may_turn for piece in task.pieces)
        or any(piece.quantity is None for piece in task.pieces)
    ):
        return None
    if task.first_cut == "along":
        task = task.mirrored()
    copies = sorted(
        (
            (p.length, p.width, p.worth)
            for number, p in enumerate(task.pieces)
            for _ in range(task.quantity(number))
            if p.width <= task.width
        ),
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


def _constrain(
    model: StripModel,
    opened: Sequence[Term],
    beside: Mapping[tuple[int, int], Term],
    add: Callable[[Term], object],
    total: Callable[[list[Term]], Term],
) -> Term:
    """Adds the constraints of the strip model; returns what is to be least or most."""
    copies = range(len(model.sizes))
    in_strip: dict[int, list[Term]] = {copy: [] for copy in copies}
    over: dict[int, list[Term]] = {copy: [] for copy in copies}
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


def packing_solver(case: Case, limit: float) -> Verdict:
    """PackingSolver, with as many stages as the case has and a last trimming cut."""
    import packingsolver.rectangleguillotine as solver

    task, way = case.task, solver.CutOrientation
    builder = solver.InstanceBuilder()
    builder.set_objective(solver.Objective.OpenDimensionY if task.length is None else solver.Objective.Knapsack)
    builder.set_cut_type(solver.CutType.NonExact)
    builder.set_first_stage_orientation({"across": way.Horizontal, "along": way.Vertical}.get(task.first_cut, way.Any))
    if task.stages is None:
        builder.set_number_of_stages_unlimited()
    else:
        builder.set_number_of_stages(task.stages)
    builder.add_bin_type(task.width, task.length or _length_enough(task))
    for number, piece in enumerate(task.pieces):
        builder.add_item_type(
            piece.width, piece.length, oriented=not piece.may_turn, profit=piece.worth, copies=task.quantity(number)
        )
    asked = solver.OptimizeParameters()
    asked.time_limit, asked.messages_to_stdout, asked.verbosity_level = limit, False, 0
    start = perf_counter()
    found = solver.optimize(builder.build(), asked)
    seconds = perf_counter() - start
    if task.length is None:
        whole = found.solution.number_of_items() == sum(task.quantity(number) for number in range(len(task.pieces)))
        value = found.solution.height() if whole else None
    else:
        value = round(found.solution.profit())
    return Verdict(value, bool(found.is_proven_optimal()), seconds)


def rect_pack(case: Case, limit: float) -> Verdict | None:
    """rectpack by its best maximal-rectangles rule, for the shortest length; it takes no limit of time."""
    import rectpack

    task = case.task
    if task.length is not None or any(piece.quantity is None for piece in task.pieces):
        return None
    copies = [
        (piece.width, piece.length) for number, piece in enumerate(task.pieces) for _ in range(task.quantity(number))
    ]
    start = perf_counter()

    def fits(length: int) -> bool:
        packer = rectpack.newPacker(
            rotation=all(piece.may_turn for piece in task.pieces), pack_algo=rectpack.MaxRectsBssf
        )
        for width, height in copies:
            packer.add_rect(width, height)
        packer.add_bin(task.width, length)
        packer.pack()
        return len(packer.rect_list()) == len(copies)

    low, high = 0, _length_enough(task)
    while high - low > 1 and perf_counter() - start < limit:
        middle = (low + high) // 2
        low, high = (low, middle) if fits(middle) else (middle, high)
    return Verdict(high, False, perf_counter() - start)


def _length_enough(task: Task) -> int:
    """A length on which every piece finds a strip of its own."""
    return sum(max(piece.width, piece.length) * task.quantity(number) for number, piece in enumerate(task.pieces))


JUDGES: dict[str, tuple[str, Callable[[Case, float], Verdict | None]]] = {
    "HiGHS": ("highspy", highs),
    "CP-SAT": ("ortools", cp_sat),
    "PackingSolver": ("packingsolver", packing_solver),
    "rectpack (not edge to edge)": ("rectpack", rect_pack),
}


def at_hand() -> dict[str, Callable[[Case, float], Verdict | None]]:
    """The judges whose library is installed (extra `bench`)."""
    return {name: judge for name, (package, judge) in JUDGES.items() if importlib.util.find_spec(package)}
