"""A walk: several calculators in the order of the work, each taking over what the one before worked out."""

from collections.abc import Callable, Container, Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Any

from calculators.asking.answering import Asking, answer, read
from calculators.asking.declaration import Answer, Calculator, InvalidInput
from calculators.asking.house_method import HouseMethod
from calculators.batch.corner_of_a_batch import check_foldable
from calculators.catalogue import calculator_named
from calculators.catalogue.order import NO_KIND, kinds_of_piece
from calculators.trade.cloth import cloth_to_buy_for
from calculators.trade.pieces import further_length


@dataclass(frozen=True)
class Taken:
    """Where a field's value comes from: a field or a result of an earlier step.

    before: names that go before it where they hold a value other than 0, such as the hem of one side before the usual
    hem.
    rather: what is taken in its place where that holds a value, such as the pieces ordered before those that the cloth
    gives.
    """

    calculator: str
    name: str
    before: tuple[str, ...] = ()
    rather: "Taken | None" = None

    @property
    def steps(self) -> set[str]:
        """Every step that has a part in it."""
        return {self.calculator} | (self.rather.steps if self.rather else set())

    def out_of(self, known: Mapping[str, Mapping[str, Any]]) -> tuple[Any, str]:
        """The value among the fields and results of earlier steps, and the step it is from. known: calculator → its
        values."""
        if self.rather and known[self.rather.calculator][self.rather.name] is not None:
            return self.rather.out_of(known)
        values = known[self.calculator]
        return next((values[name] for name in self.before if values[name]), values[self.name]), self.calculator


@dataclass(frozen=True)
class WorkedOut:
    """A value that follows from several earlier steps together.

    steps: all of them. value: from calculator → its values to the value, None where there is none.
    """

    steps: set[str]
    value: Callable[[Mapping[str, Mapping[str, Any]]], Any]

    def out_of(self, known: Mapping[str, Mapping[str, Any]]) -> tuple[Any, str]:
        """The value, and the last of the steps it follows from. known: calculator → its values."""
        return self.value(known), next(name for name in reversed(list(known)) if name in self.steps)


@dataclass(frozen=True)
class GivenBack:
    """What a step gives to an earlier one when the maker begins there, such as the cut size of pieces ordered by their
    finished size.

    when: the field and the text that say so. calculator: the earlier step. values: its field → result given to it.
    """

    when: tuple[str, str]
    calculator: str
    values: Mapping[str, str]

    def applies(self, typed: Mapping[str, str]) -> bool:
        name, text = self.when
        return typed.get(name, "").strip().lower() == text


@dataclass(frozen=True)
class WalkStep:
    """One calculator of a walk.

    title: the heading of the step.
    taken: field name → where its value comes from.
    settled: field name → text that this walk starts from, such as one layer for a cloth whose length is already known.
    question: the sentence that asks here, where the calculator's own asks first for what this walk does not need; empty
    for that one.
    told: what is said of this step before its blanks.
    own: fields that hold no measure in hand here, since elsewhere they are about another state of the cloth.
    given_back: what it gives to an earlier step, from which it then takes nothing.
    checked: refuses, from its values and the circumstances, what the work that follows cannot be done with.
    """

    calculator: str
    title: str
    taken: Mapping[str, Taken | WorkedOut] = field(default_factory=dict)
    settled: Mapping[str, str] = field(default_factory=dict)
    question: str = ""
    told: str = ""
    own: tuple[str, ...] = ()
    given_back: GivenBack | None = None
    checked: Callable[[Mapping[str, Any], Asking], None] | None = None

    def taken_for(self, typed: Mapping[str, str]) -> Mapping[str, Taken | WorkedOut]:
        """Where its values come from, for what is typed into it."""
        if self.given_back is None or not self.given_back.applies(typed):
            return self.taken
        return {name: taken for name, taken in self.taken.items() if self.given_back.calculator not in taken.steps}


@dataclass(frozen=True)
class Walk:
    """Steps in order. Raises ValueError when a step takes something that no earlier step has.

    kind_in: step and field that name the kind of piece, whose own measures all steps then begin with.
    """

    name: str
    title: str
    steps: tuple[WalkStep, ...]
    kind_in: tuple[str, str] = ("", "")

    def __post_init__(self) -> None:
        seen: dict[str, Calculator] = {}
        for step in self.steps:
            calculator = calculator_named(step.calculator)
            for name, taken in step.taken.items():
                calculator.field(name)
                if not taken.steps <= set(seen):
                    raise ValueError(
                        f"{self.name}: {step.calculator} takes {name} from {sorted(taken.steps)}, of which no "
                        "earlier step has all"
                    )
            for taken in (
                one for each in step.taken.values() if isinstance(each, Taken) for one in (each, each.rather) if one
            ):
                if taken.calculator not in seen or not {taken.name, *taken.before} <= set(seen[taken.calculator].kinds):
                    raise ValueError(
                        f"{self.name}: {step.calculator} takes {taken.name} from {taken.calculator}, which no "
                        "earlier step has"
                    )
            seen[step.calculator] = calculator

    def kind(self, typed: Mapping[str, Mapping[str, str]]) -> str:
        """The kind of piece that is written down, empty for none."""
        calculator, name = self.kind_in
        kind = typed.get(calculator, {}).get(name, "").strip().lower()
        return "" if kind == NO_KIND else kind

    def calculator(self, step: WalkStep, method: HouseMethod) -> Calculator:
        """The calculator of a step with the sentence of the step; where it asks for the kind of piece, with those of
        the method to choose from."""
        calculator = calculator_named(step.calculator)
        calculator = replace(calculator, question=step.question) if step.question else calculator
        if step.calculator != self.kind_in[0]:
            return calculator
        fields = (
            replace(field, kind=kinds_of_piece(method)) if field.name == self.kind_in[1] else field
            for field in calculator.fields
        )
        return replace(calculator, fields=tuple(fields))


@dataclass(frozen=True)
class Departure:
    """A value written by hand where a step of the walk gives another. title: the heading of that step."""

    name: str
    title: str
    value: Any


@dataclass(frozen=True)
class StepResult:
    """What one step of a walk came to: an answer, a refusal to mend here, or waiting for the step named in `waits_for`.

    departures: what was written by hand and differs from what the other steps give.
    """

    step: WalkStep
    calculator: Calculator
    asking: Asking
    answer: Answer | None = None
    refusal: InvalidInput | None = None
    waits_for: str = ""
    departures: tuple[Departure, ...] = ()


def go(walk: Walk, typed: Mapping[str, Mapping[str, str]], asking: Asking) -> list[StepResult]:
    """Work through a walk.

    typed: calculator name → field name → text, only what the person filled in.
    asking: the circumstances shared by all steps (method and ruler).
    Returns one stop per step; a step that takes something from one in trouble waits for it.
    """
    return [*stops(walk, typed, asking)]


def stops(walk: Walk, typed: Mapping[str, Mapping[str, str]], asking: Asking) -> Iterator[StepResult]:
    """The same one after another, for who needs no more than the first of them."""
    titles = {step.calculator: step.title for step in walk.steps}
    asking, has_kind = for_its_kind(walk, typed, asking)
    known, troubled = _known_beforehand(walk, typed, asking)
    for step in walk.steps:
        calculator = walk.calculator(step, asking.method)
        own = {**step.settled, **typed.get(step.calculator, {})}
        sources = {**step.taken_for(own), **given_to(step.calculator, walk, typed)}
        needed = [taken for name, taken in sources.items() if not own.get(name, "").strip()]
        waits_for = next((troubled[name] for taken in needed for name in sorted(taken.steps) if name in troubled), "")
        if not has_kind and _begins_with_its_kind(calculator, own, sources, asking.method):
            waits_for = waits_for or titles[walk.kind_in[0]]
        if waits_for:
            yield StepResult(step, calculator, replace(asking, typed=own), waits_for=waits_for)
            troubled[step.calculator] = waits_for
            continue
        found = {name: taken.out_of(known) for name, taken in sources.items() if taken.steps <= set(known)}
        found = {name: each for name, each in found.items() if each[0] is not None}
        values = {name: value for name, (value, _) in found.items()}
        here = replace(asking, typed=own, taken=values)
        try:
            reply = answer(calculator, here)
            known_here = {**read(calculator, here), **reply.results}
            if step.checked:
                step.checked(known_here, here)
        except InvalidInput as refusal:
            yield StepResult(step, calculator, here, refusal=refusal)
            troubled[step.calculator] = step.title
            continue
        known[step.calculator] = known_here
        departures = tuple(
            Departure(name, titles[found[name][1]], value)
            for name, value in values.items()
            if own.get(name, "").strip() and known[step.calculator][name] != value
        )
        yield StepResult(step, calculator, here, answer=reply, departures=departures)


def for_its_kind(walk: Walk, typed: Mapping[str, Mapping[str, str]], asking: Asking) -> tuple[Asking, bool]:
    """The circumstances with the measures of the kind of piece written down, and whether the method has that kind."""
    kind = walk.kind(typed)
    try:
        return (replace(asking, method=asking.method.for_kind(kind)) if kind else asking), True
    except KeyError:
        return asking, False


def _begins_with_its_kind(
    calculator: Calculator, own: Mapping[str, str], elsewhere: Container[str], method: HouseMethod
) -> bool:
    """Whether a blank left alone begins with a measure that a kind of piece may have for itself. elsewhere: fields
    filled from other steps."""
    return any(
        each.default in method.measures_by_kind and each.name not in elsewhere and not own.get(each.name, "").strip()
        for each in calculator.fields
    )


def _known_beforehand(
    walk: Walk, typed: Mapping[str, Mapping[str, str]], asking: Asking
) -> tuple[dict[str, dict[str, Any]], dict[str, str]]:
    """What steps that give back come to, and the titles of those in trouble, each by its calculator."""
    known, troubled = {}, {}
    for step in walk.steps:
        own = {**step.settled, **typed.get(step.calculator, {})}
        if step.given_back and step.given_back.applies(own):
            calculator, here = calculator_named(step.calculator), replace(asking, typed=own)
            try:
                known[step.calculator] = {**read(calculator, here), **answer(calculator, here).results}
            except InvalidInput:
                troubled[step.calculator] = step.title
    return known, troubled


def given_to(calculator: str, walk: Walk, typed: Mapping[str, Mapping[str, str]]) -> dict[str, Taken]:
    """What later steps give back to a calculator, as they do where the maker begins there: its fields, and from
    where."""
    found: dict[str, Taken] = {}
    for step in walk.steps:
        back = step.given_back
        if back and back.calculator == calculator and back.applies({**step.settled, **typed.get(step.calculator, {})}):
            found |= {name: Taken(step.calculator, result) for name, result in back.values.items()}
    return found


def _cloth_for_the_rest(known: Mapping[str, Mapping[str, Any]]) -> Fraction | None:
    """The further cloth, unwashed, that the order takes where what is in hand gives fewer pieces [mm].

    None where it gives enough, and where the cloth was written down as it can be used: then nobody knows what it was
    unwashed.
    """
    pieces, usable, wash = known["pieces-from-cloth"], known["usable-cloth"], known["wash-test"]
    lacking = known["bundles"]["pieces"] - pieces["count"]
    if lacking <= 0 or (pieces["cloth_length"], pieces["usable_width"]) != (
        usable["usable_length"],
        usable["usable_width"],
    ):
        return None
    further = further_length(lacking, pieces["across"], pieces["marks_along"][0])
    return cloth_to_buy_for(further, 2 * usable["end_loss"] + usable["skew"], wash["change_length"])


BATCH = Walk(
    "batch",
    "A batch, from cloth to corners",
    (
        WalkStep("order", "The order", told="The kind of piece brings its turn and hem from your house method."),
        WalkStep(
            "wash-test",
            "The cloth and its wash test",
            settled={"needed_length": "", "needed_width": ""},
            told="Not tested yet? Leave the test square as it stands for a first plan, and write your own over it "
            "before you cut.",
            question="The cloth, unwashed, is {cloth_length} long and {cloth_width} wide. A test square of it, marked "
            "{before_length} apart along the length and {before_width} across, "
            "measures {after_length} and {after_width} between the same marks after the wash.",
        ),
        WalkStep(
            "usable-cloth",
            "What can be used of it",
            taken={
                "full_width": Taken("wash-test", "washed_width"),
                "folded_length": Taken("wash-test", "washed_length"),
            },
            settled={"layers": "1", "extra_length": "0"},
            own=("measured",),
        ),
        WalkStep(
            "pieces-from-cloth",
            "Pieces and marks",
            told="The cloth is washed and trimmed already? Write its width and length here.",
            taken={
                "cloth_width": Taken("usable-cloth", "full_width"),
                "measured": Taken("usable-cloth", "measured"),
                "selvedge": Taken("usable-cloth", "selvedge"),
                "cloth_length": Taken("usable-cloth", "usable_length"),
            },
            question="Cloth {cloth_width} wide and {cloth_length} long; each piece is cut {piece_width} wide and "
            "{piece_length} long.",
        ),
        WalkStep(
            "finished-size",
            "Turn, hem and finished size",
            told="The order names the finished size? Choose it here: the cut size goes up to step 4 by itself.",
            taken={
                "width": Taken("pieces-from-cloth", "piece_width"),
                "length": Taken("pieces-from-cloth", "piece_length"),
            },
            given_back=GivenBack(
                ("start_from", "finished"),
                "pieces-from-cloth",
                {"piece_width": "cut_width", "piece_length": "cut_length"},
            ),
        ),
        WalkStep(
            "mitre-marks",
            "Corners",
            taken={
                "hem_1": Taken("finished-size", "hem", before=("hem_left", "hem_right")),
                "hem_2": Taken("finished-size", "hem", before=("hem_top", "hem_bottom")),
                "turn": Taken("finished-size", "turn"),
            },
            checked=check_foldable,
        ),
        WalkStep(
            "bundles",
            "Bundles for the ticket",
            taken={"pieces": Taken("pieces-from-cloth", "count", rather=Taken("order", "pieces"))},
        ),
        WalkStep(
            "thread-time-cost",
            "Thread, time and cost",
            told="Only a part of the cloth is for this batch? Write here what that part measured when you bought it.",
            taken={
                "pieces": Taken("bundles", "pieces"),
                "finished_width": Taken("finished-size", "finished_width"),
                "finished_length": Taken("finished-size", "finished_length"),
                "sides_along": Taken("finished-size", "hemmed_along"),
                "sides_across": Taken("finished-size", "hemmed_across"),
                "corners": Taken("finished-size", "hemmed_corners"),
                "mitre_seam": Taken("mitre-marks", "seam_length"),
                "cloth_bought": Taken("wash-test", "cloth_length"),
                "across": Taken("pieces-from-cloth", "across"),
                "gives": Taken("pieces-from-cloth", "count"),
                "cloth_more": WorkedOut(
                    {"wash-test", "usable-cloth", "pieces-from-cloth", "bundles"}, _cloth_for_the_rest
                ),
            },
        ),
    ),
    kind_in=("order", "piece"),
)
WALKS = {BATCH.name: BATCH}
