"""Plans on a cloth with flaws or a repeat, ever better: strips grown quickly, then searched with a bound that sees what
is in the way."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import islice
from typing import Protocol

from calculators.trade.lay_plan.fitted import Fit
from calculators.trade.lay_plan.order import Rules, Wanted
from calculators.trade.lay_plan.solving.beam_around import BeamAround, ItemType, Obstacles
from calculators.trade.lay_plan.solving.divided_around import DividedAround
from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.plan import Part, Plan
from calculators.trade.lay_plan.solving.search_around import SearchAround
from calculators.trade.lay_plan.solving.strips_around import StripsAround
from calculators.trade.lay_plan.usable import Usable

MOST_COPIES = 2_000
BEAM_WIDTHS = (12, 40)
SEARCHES = 6  # steps of a search for one of ours: they are short


class FittingProtocol(Protocol):
    """What is known of the cloth, the pieces and the goal, as `fit.FittingProtocol` has it; gap and unit [mm]."""

    cloth: Usable
    pieces: tuple[Wanted, ...]
    rules: Rules
    goal: str
    gap: Fraction
    matched: bool
    unit: Fraction
    task: Task

    def score(self, plan: Plan) -> Fraction:
        """What a plan comes to in the measure of the goal: length [mm], or worth.

        Source: derived, whole units of the search turned back into the order's own measure.
        """

    def better(self, result: Fraction, than: Fraction) -> bool:
        """Whether one such measure is better than another."""

    def fit(self, plan: Plan, bound: Fraction | None) -> Fit:
        """A plan with a bound."""

    def bounded(self, fit: Fit, bound: Fraction | None) -> Fit:
        """The same plan with another bound."""


class FitAround:
    """A fitting on a cloth with something in the way.

    limit: what no plan could pass on the same cloth without it, in units of the goal; None where unknown.
    """

    def __init__(self, fitting: FittingProtocol, limit: Fraction | None):
        self.fitting, self.limit = fitting, limit
        strips = fitting.rules.strips
        self.in_strips = strips not in ("sections", "free")
        self.ways = (
            ["across"]
            if fitting.task.length is None
            else {"across": ["across"], "along": ["along"]}.get(strips, ["across", "along"])
        )
        self.best: Fit | None = None

    def improving(self, steps: int) -> Iterator[Fit | None]:
        """Ever better plans within so many steps of each search; None for a step that changed nothing."""
        for way in self.ways:
            for beam_width in BEAM_WIDTHS:
                grown = BeamAround(*self._sides(way), *self._ground(way), self._aimed_at() or 1)
                for _ in islice(grown.run(beam_width), steps):
                    yield None
                reached = grown.end if grown.length is None else grown.length
                if reached is not None:
                    yield self._kept(grown.cloth(reached), way)
        yield from self._shortened(steps * SEARCHES) if self.fitting.task.length is None else self._searched(steps)

    def _searched(self, steps: int) -> Iterator[Fit | None]:
        bounds = []
        for way in self.ways:
            if self._proven():
                return
            kinds, obstacles = self._ground(way)
            known = int(self.best.score / self._measure()) if self.best else 0
            search = SearchAround(
                StripsAround(*self._fixed_sides(way), kinds, obstacles),
                [kind.value for kind in kinds],
                known,
                self._aimed_at(),
            )
            for _ in islice(search.run(), steps * SEARCHES):
                yield None
            bounds.append(search.bound * self._measure())
            if search.best:
                yield self._kept(search.cloth(), way)
        if self.in_strips:
            yield self._lowered(max(bounds))
        else:
            yield from self._divided(steps)

    def _divided(self, steps: int) -> Iterator[Fit | None]:
        """Cuts the cloth in two first, which sections and cuts any way allow."""
        is_free = self.fitting.rules.strips == "free"
        for way in self.ways if is_free else ["across"]:
            if self._proven():
                return
            known = int(self.best.score / self._measure()) if self.best else 0
            divided = DividedAround(*self._fixed_sides(way), *self._ground(way), known, steps)
            for _ in islice(divided.run(), steps * SEARCHES):
                yield None
            if divided.best:
                yield self._kept(divided.best, way, None if is_free else 3)

    def _shortened(self, steps: int) -> Iterator[Fit | None]:
        """Looks for the whole order on a shorter cloth: on the shortest that could be, then half way to the best so
        far, again and again."""
        width, (kinds, obstacles) = self.fitting.task.width, self._ground("across")
        areas = [kind.ways[0][0] * kind.ways[0][1] for kind in kinds]
        everything = sum(area * kind.copies for area, kind in zip(areas, kinds))
        length = 1 if self.limit is None else self._units(self.limit + self.fitting.gap)
        none = 0  # the longest on which it was looked for and not found
        while self.best is not None and not self._proven():
            search = SearchAround(StripsAround(width, length, kinds, obstacles), areas, everything - 1)
            for _ in search.run():
                steps -= 1
                yield None
                if not steps:
                    return
            if search.best and search.value == everything:
                yield self._kept(search.cloth(whole=False), "across")
            elif search.bound < everything:
                self.limit = (length + 1) * self.fitting.unit - self.fitting.gap
                self.best = self.fitting.bounded(self.best, self.limit)
                yield self.best
            if search.value < everything:
                none = length
            length = (none + self._units(self.best.score + self.fitting.gap)) // 2
            if length <= none:
                return

    def _kept(self, cloth: Part, way: str, stages: int | None = 2) -> Fit | None:
        fitting = self.fitting
        task = replace(fitting.task, first_cut="any" if stages is None else way, stages=stages)
        plan = Plan(task, cloth.mirrored() if way == "along" else cloth)
        if self.best is not None and not fitting.better(fitting.score(plan), self.best.score):
            return None
        self.best = fitting.fit(plan, self.limit)
        return self.best

    def _lowered(self, bound: Fraction) -> Fit | None:
        if self.best is None or self.limit is not None and bound >= self.limit:
            return None
        self.limit = bound
        self.best = self.fitting.bounded(self.best, bound)
        return self.best

    def _proven(self) -> bool:
        return self.best is not None and self.best.score == self.best.score_bound

    def _measure(self) -> Fraction:
        """What a unit of the search stands for in the measure of the goal."""
        unit = self.fitting.unit
        return {"length": unit, "area": unit**2, "count": Fraction(1)}[self.fitting.goal]

    def _aimed_at(self) -> int | None:
        return None if self.limit is None else int(self.limit / self._measure())

    def _sides(self, way: str) -> tuple[int, int | None]:
        """Width and length of the cloth, turned so that its strips lie across [units]; no length where the shortest is
        looked for."""
        task = self.fitting.task
        return (task.fixed_length, task.width) if way == "along" else (task.width, task.length)

    def _fixed_sides(self, way: str) -> tuple[int, int]:
        """The same of a cloth that has a length [units]."""
        width, length = self.fitting.task.width, self.fitting.task.fixed_length
        return (length, width) if way == "along" else (width, length)

    def _ground(self, way: str) -> tuple[list[ItemType], Obstacles]:
        """The kinds of piece and what is in the way, turned so that strips lie across."""
        fitting, along = self.fitting, way == "along"
        repeat = fitting.cloth.repeat if fitting.matched else None
        obstacles = Obstacles(
            tuple(
                (
                    self._units(flaw.from_selvedge),
                    self._units(flaw.from_selvedge + flaw.width),
                    self._units(flaw.from_end),
                    self._units(flaw.from_end + flaw.length),
                )
                for flaw in fitting.cloth.flaws
            ),
            self._units(fitting.gap),
            (self._units(repeat.along or 0), self._units(repeat.first_along)) if repeat else (0, 0),
            (self._units(repeat.across or 0), self._units(repeat.first_across)) if repeat else (0, 0),
        )
        task = fitting.task
        kinds = [
            ItemType(
                tuple((y, x, turned) if along else (x, y, turned) for x, y, turned in piece.sizes()),
                min(MOST_COPIES, task.quantity(number)), piece.worth, wanted.matched and fitting.matched,
            )
            for number, (piece, wanted) in enumerate(zip(task.pieces, fitting.pieces))
        ]  # fmt: skip
        return kinds, obstacles.mirrored() if along else obstacles

    def _units(self, length: Fraction | int) -> int:
        return int(Fraction(length) / self.fitting.unit)
