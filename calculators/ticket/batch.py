"""The numbers of one batch, gathered from the answers of its walk."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from calculators.asking.answering import filled, read
from calculators.asking.declaration import Answer
from calculators.asking.edge_questions import long_edges
from calculators.asking.house_method import HouseMethod, Written, on_ruler
from calculators.batch.walk import StepResult
from calculators.trade.bundles import Bundles
from calculators.trade.cloth import LongEdges
from calculators.trade.pieces import Grid
from calculators.values.kinds import Length
from calculators.values.measure import Ruler

SUMS = "thread-time-cost"
"""The step of the walk that tells what a batch takes and costs: a price that needs mending keeps nobody from
cutting."""


class NoTicketYet(ValueError):
    """Raised with one sentence when a batch has no ticket yet.

    title, calculator: the step of the walk to mend. field: the blank in it.
    """

    def __init__(self, title: str, sentence: str, calculator: str, field: str):
        self.title, self.calculator, self.field = title, calculator, field
        super().__init__(sentence)


@dataclass(frozen=True)
class Batch:
    """One batch as its ticket needs it.

    step_results: calculator name → its step of the walk.
    values: calculator name → its fields and results; every step is answered but, perhaps, that of the SUMS.
    method: the house method that all of it follows. ruler: the one in hand.
    cloth: what the cloth is called, and its line in the house method if it has one there.
    """

    step_results: Mapping[str, StepResult]
    values: Mapping[str, Mapping[str, Any]]
    method: HouseMethod
    ruler: Ruler
    cloth: str
    cloth_line: Mapping[str, Written]

    def __call__(self, calculator: str, name: str) -> Any:
        """A field or result of the walk."""
        return self.values[calculator][name]

    def answer(self, calculator: str) -> Answer:
        """What a step of the walk answered; raises KeyError where it did not, which only that of the SUMS may."""
        found = self.step_results[calculator].answer
        if found is None:
            raise KeyError(calculator)
        return found

    @property
    def bundles(self) -> Bundles:
        return Bundles(self("bundles", "pieces"), self("bundles", "bundle"))

    @property
    def grid(self) -> Grid:
        """The pieces as they lie on the cloth, of which those of this batch are cut."""
        grid: Grid = self.answer("pieces-from-cloth").drawn_from
        return replace(grid, wanted=self.bundles.pieces)

    @property
    def kind(self) -> str:
        """The kind of piece, as the house calls it; empty where none is named."""
        return self.step_results["order"].asking.method.kind

    @property
    def finished(self) -> dict[str, Fraction]:
        """Finished width and length [mm]."""
        return {"width": self("finished-size", "finished_width"), "length": self("finished-size", "finished_length")}

    def settled(self, measure: str) -> Fraction:
        """A length that the house method settles [mm]."""
        return Length().parse(on_ruler(self.method.measures[measure], self.ruler), self.ruler)


def edges_of(batch: Batch) -> LongEdges:
    """The long edges of the cloth that is marked: what is still trimmed off them, and where marks across start."""
    return long_edges(batch("pieces-from-cloth", "measured"), batch("pieces-from-cloth", "selvedge"))


def batch_of(step_results: Sequence[StepResult], method: HouseMethod, cloth: str = "") -> Batch:
    """The batch that a walk has worked out.

    cloth: what the cloth is called; empty for the one the house uses most.
    Raises NoTicketYet when a step of the walk has no answer, other than the one of its sums.
    """
    for step_result in step_results:
        if step_result.refusal and step_result.calculator.name != SUMS:
            field, first = next(iter(step_result.refusal.sentences.items()))
            raise NoTicketYet(
                step_result.step.title,
                filled(first, step_result.calculator, step_result.asking.ruler),
                step_result.calculator.name,
                field,
            )
    values = {
        step_result.calculator.name: {**read(step_result.calculator, step_result.asking), **step_result.answer.results}
        for step_result in step_results
        if step_result.answer
    }
    name = cloth or on_ruler(method.measures.get("cloth", ""), step_results[0].asking.ruler)
    return Batch(
        {step_result.calculator.name: step_result for step_result in step_results},
        values,
        method,
        step_results[0].asking.ruler,
        name,
        method.cloth_line(name),
    )
