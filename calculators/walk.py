"""A walk: several calculators in the order of the work, each taking over what the one before worked out."""

from dataclasses import dataclass, field, replace
from typing import Any, Mapping

from calculators.answering import Asking, answer, read
from calculators.catalogue import calculator_named
from calculators.declaration import Answer, AskAgain, Calculator
from calculators.phrase import say


@dataclass(frozen=True)
class Taken:
    """Where a field's value comes from: a field or a result of an earlier step.

    before: names that go before it where they hold a value other than 0, such as the hem of one side before the usual hem.
    """

    calculator: str
    name: str
    before: tuple[str, ...] = ()

    def out_of(self, known: Mapping[str, Any]) -> Any:
        """The value among the fields and results of the earlier step."""
        return next((known[name] for name in self.before if known[name]), known[self.name])


@dataclass(frozen=True)
class Step:
    """One calculator of a walk.

    title: the heading of the step.
    taken: field name → where its value comes from.
    settled: field name → text that this walk starts from, such as one layer for a cloth whose length is already known.
    held: field name → the only text that this walk takes, lest two steps contradict each other.
    """

    calculator: str
    title: str
    taken: Mapping[str, Taken] = field(default_factory=dict)
    settled: Mapping[str, str] = field(default_factory=dict)
    held: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Walk:
    """Steps in order. Raises ValueError when a step takes something that no earlier step has."""

    name: str
    title: str
    steps: tuple[Step, ...]

    def __post_init__(self):
        seen: dict[str, Calculator] = {}
        for step in self.steps:
            calculator = calculator_named(step.calculator)
            for name, taken in step.taken.items():
                calculator.field(name)
                if taken.calculator not in seen or not {taken.name, *taken.before} <= set(seen[taken.calculator].kinds):
                    raise ValueError(f"{self.name}: {step.calculator} takes {taken.name} from {taken.calculator}, which no earlier step has")
            seen[step.calculator] = calculator


@dataclass(frozen=True)
class Stop:
    """What one step of a walk came to: an answer, a refusal to mend here, or waiting for the step named in `waits_for`."""

    step: Step
    calculator: Calculator
    asking: Asking
    answer: Answer | None = None
    refusal: AskAgain | None = None
    waits_for: str = ""


def go(walk: Walk, typed: Mapping[str, Mapping[str, str]], asking: Asking) -> list[Stop]:
    """Work through a walk.

    typed: calculator name → field name → text, only what the person filled in.
    asking: the circumstances shared by all steps (method and ruler).
    Returns one stop per step; a step after one in trouble waits when it takes something from it.
    """
    stops: list[Stop] = []
    known: dict[str, dict[str, Any]] = {}
    troubled: dict[str, str] = {}
    for step in walk.steps:
        calculator = calculator_named(step.calculator)
        own = {**step.settled, **step.held, **typed.get(step.calculator, {})}
        needed = [taken for name, taken in step.taken.items() if not own.get(name, "").strip()]
        waits_for = next((troubled[taken.calculator] for taken in needed if taken.calculator in troubled), "")
        if waits_for:
            stops.append(Stop(step, calculator, replace(asking, typed=own), waits_for=waits_for))
            troubled[step.calculator] = waits_for
            continue
        values = {name: taken.out_of(known[taken.calculator]) for name, taken in step.taken.items() if taken.calculator in known}
        here = replace(asking, typed=own, taken=values)
        try:
            _keep_to_what_is_held(step, calculator, here)
            reply = answer(calculator, here)
        except AskAgain as refusal:
            stops.append(Stop(step, calculator, here, refusal=refusal))
            troubled[step.calculator] = step.title
            continue
        known[step.calculator] = {**read(calculator, here), **reply.results}
        stops.append(Stop(step, calculator, here, answer=reply))
    return stops


def _keep_to_what_is_held(step: Step, calculator: Calculator, asking: Asking) -> None:
    fields = [calculator.field(name) for name, text in step.held.items() if asking.typed[name].strip().lower() not in ("", text)]
    if fields:
        raise AskAgain({each.name: say(_HELD, label=each.label, only=each.kind.show(step.held[each.name], asking.ruler)) for each in fields})


_HELD = "{label:text}: the steps before this one work with the {only:text}. Choose {only:text} here; elsewhere in the handbook either can stand."

BATCH = Walk(
    "batch",
    "A batch, from cloth to corners",
    (
        Step("wash-test", "The cloth and its wash test"),
        Step(
            "usable-cloth",
            "What can be used of it",
            taken={"full_width": Taken("wash-test", "washed_width"), "folded_length": Taken("wash-test", "washed_length")},
            settled={"layers": "1", "extra_length": "0"},
        ),
        Step(
            "pieces-from-cloth",
            "Pieces and marks",
            taken={"cloth_width": Taken("usable-cloth", "usable_width"), "cloth_length": Taken("usable-cloth", "usable_length")},
        ),
        Step(
            "finished-size",
            "Turn, hem and finished size",
            taken={"width": Taken("pieces-from-cloth", "piece_width"), "length": Taken("pieces-from-cloth", "piece_length")},
            held={"start_from": "cut"},
        ),
        Step(
            "mitre-marks",
            "Corners",
            taken={
                "hem_1": Taken("finished-size", "hem", before=("hem_left", "hem_right")),
                "hem_2": Taken("finished-size", "hem", before=("hem_top", "hem_bottom")),
                "turn": Taken("finished-size", "turn"),
            },
        ),
        Step("bundles", "Bundles for the ticket", taken={"pieces": Taken("pieces-from-cloth", "count")}),
    ),
)
WALKS = {BATCH.name: BATCH}
