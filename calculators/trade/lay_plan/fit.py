"""From a cloth and pieces in millimetres to a solver's whole numbers and back: one cloth, one plan, ever better."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from itertools import islice

from calculators.trade.lay_plan.fit_around import FitAround
from calculators.trade.lay_plan.fitted import Fit
from calculators.trade.lay_plan.kept_kinds import parted
from calculators.trade.lay_plan.laid import Lay
from calculators.trade.lay_plan.levels import by_levels
from calculators.trade.lay_plan.order import Rules, Wanted
from calculators.trade.lay_plan.solving.model import Piece, Task, whole_units
from calculators.trade.lay_plan.solving.plan import Plan
from calculators.trade.lay_plan.solving.progress import Progress
from calculators.trade.lay_plan.solving.solvers import solve
from calculators.trade.lay_plan.to_the_edges import to_the_edges
from calculators.trade.lay_plan.usable import Usable

FINEST = 60_000  # units along a side; finer ones make the solvers' tables too long
TIMES: Mapping[int | None, int] = {2: 4}  # a step in two stages is short, and others begin with a two-stage plan
MORE = 4
MANY = 200  # pieces; with as many more, a step takes about as much longer


class Fitting:
    """One cloth to be planned for a goal: "count" (what the pieces matter), "area" (their area) or "length" (all on the
    shortest).

    first: copies of a piece, by its number, that are to be kept before all else.
    """

    def __init__(
        self, cloth: Usable, pieces: tuple[Wanted, ...], rules: Rules, goal: str, first: Mapping[int, int] = {}
    ):
        self.cloth, self.ordered, self.rules, self.goal = cloth, pieces, rules, goal
        self.first, self.parted = first, parted(pieces, first)
        self.pieces = self.parted.pieces
        self.gap = rules.gap
        self.matched = bool(cloth.repeat) and any(piece.matched for piece in pieces)
        self.hindered = self.matched or bool(cloth.flaws)
        self.unit, self.exact = self._unit()
        self.task = self.parted.valued(self._task(self.pieces))

    def improving(self, steps: int) -> Iterator[Fit | None]:
        """Ever better plans within so many steps of work; None for a step that changed nothing."""
        if self.hindered:
            yield from self._around(steps)
            return
        tasks = self._tasks()
        best: Fit | None = None
        bounds: list[Fraction | None] = []
        for task in tasks:
            bounds.append(None)
            for progress in islice(solve(task), self._steps(task, steps)):
                bounds[-1] = self._bound(progress.bound)
                found = self._found(progress, best, tasks, bounds)
                best = found or best
                yield found

    def _steps(self, task: Task, steps: int) -> int:
        """Steps of a solver for so many of ours, fewer where each takes longer."""
        if task.length is None:
            return steps * TIMES.get(task.stages, MORE)
        ordered = sum(task.quantity(number) for number in range(len(task.pieces)))
        return steps * TIMES.get(task.stages, MORE) // (1 + ordered // MANY)

    def _found(
        self, progress: Progress, best: Fit | None, tasks: list[Task], bounds: list[Fraction | None]
    ) -> Fit | None:
        """A better plan or a better bound than the best so far, or None."""
        if not progress.plan:
            return None
        known = [bound for bound in bounds if bound is not None]
        bound = (min if self.goal == "length" else max)(known) if len(known) == len(tasks) else None
        if best is None or self.better(self.score(progress.plan), best.score):
            return self.fit(progress.plan, bound)
        return self.bounded(best, bound) if bound != best.score_bound else None

    def fit(self, plan: Plan, bound: Fraction | None) -> Fit:
        ordered, score = self.parted.as_ordered(plan, self._task(self.ordered).pieces), self.score(plan)
        result = score if self.parted.is_plain else self.score(ordered)
        return self.bounded(Fit(self._lay(ordered), result, None, score, None), bound)

    def bounded(self, fit: Fit, bound: Fraction | None) -> Fit:
        known = bound if self.parted.is_plain else fit.result if bound == fit.score else None
        return replace(fit, bound=known, score_bound=bound)

    def _tasks(self) -> list[Task]:
        if self.rules.strips == "free":
            return [replace(self.task, stages=None, first_cut="any")]
        if self.rules.strips == "sections":
            return [replace(self.task, stages=3)]
        ways = ["across", "along"] if self.rules.strips == "either" else [self.rules.strips]
        return [replace(self.task, first_cut=way) for way in ways if way == "across" or self.task.length is not None]

    def better(self, result: Fraction, than: Fraction) -> bool:
        return result < than if self.goal == "length" else result > than

    def _unit(self) -> tuple[Fraction, bool]:
        sizes = [size + self.gap for piece in self.pieces for size in (piece.width, piece.length)]
        if self.hindered:
            places: list[Fraction | int] = [
                place
                for flaw in self.cloth.flaws
                for place in (flaw.from_end, flaw.from_selvedge, flaw.length, flaw.width)
            ]
            repeat = self.cloth.repeat if self.matched else None
            places += [repeat.along or 0, repeat.across or 0, repeat.first_along, repeat.first_across] if repeat else []
            return whole_units([*sizes, *places, self.gap]), True
        unit = whole_units(sizes)
        finest = max(self.cloth.width, self.cloth.length or Fraction(0)) / FINEST
        return (unit, True) if unit >= finest else (finest, False)

    def _task(self, wanted: tuple[Wanted, ...]) -> Task:
        length = None if self.cloth.length is None else (self.cloth.length + self.gap) // self.unit
        pieces = tuple(self._piece(each) for each in wanted)
        return Task(
            (self.cloth.width + self.gap) // self.unit, None if self.goal == "length" else length, pieces, 2, "across"
        )

    def _piece(self, wanted: Wanted) -> Piece:
        width, length = (-((-size - self.gap) // self.unit) for size in (wanted.width, wanted.length))
        may_turn = wanted.may_turn and not self.cloth.cloth.one_way and not (wanted.matched and self.matched)
        value = width * length if self.goal == "area" else wanted.matters
        return Piece(width, length, wanted.count, value, may_turn, wanted.name)

    def _lay(self, plan: Plan) -> Lay:
        length = None if self.task.length is None or self.cloth.length is None else self.cloth.length + self.gap
        plan, unit = to_the_edges(plan, self.unit, self.cloth.width + self.gap, length)
        return Lay(self.cloth, self.ordered, by_levels(plan), unit, self.gap)

    def score(self, plan: Plan) -> Fraction:
        """What a plan comes to in the measure of the goal: length [mm], or worth.

        Source: derived, whole units of the solver turned back into the order's own measure.
        """
        return self._measured(plan.used_length if self.goal == "length" else plan.value)

    def _bound(self, bound: int | None) -> Fraction | None:
        return None if bound is None or not self.exact else self._measured(bound)

    def _measured(self, units: int) -> Fraction:
        """What a solver counts in units, in the measure of the goal: a number, an area with its gaps [mm²], or a length
        [mm]."""
        if self.goal == "length":
            return units * self.unit - self.gap
        return Fraction(units) * (self.unit**2 if self.goal == "area" else 1)

    def _around(self, steps: int) -> Iterator[Fit | None]:
        """With flaws or a repeat: the bound of the cloth without them holds all the more."""
        free = Fitting(replace(self.cloth, flaws=(), repeat=None), self.ordered, self.rules, self.goal, self.first)
        limit = None
        for fit in free.improving(steps // 3):
            limit = fit.score_bound if fit else limit
            yield None
        yield from FitAround(self, limit).improving(steps)
