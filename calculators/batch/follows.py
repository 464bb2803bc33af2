"""What measures in hand come to on pages that ask for others: the cut size of a finished one, cloth once washed."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from calculators.asking.answering import Asking, answer, written
from calculators.asking.declaration import Calculator, InvalidInput
from calculators.batch.in_hand import measured
from calculators.batch.walk import Walk, for_its_kind, given_to
from calculators.catalogue import calculator_named


@dataclass(frozen=True)
class _Followed:
    """Where a measure comes from if it was not written itself.

    needs: names of measures, of which one at least is in hand. result: of the calculator. given: its field → text.
    filled: its field → the name of a measure that comes from others in its turn.
    """

    needs: tuple[str, ...]
    calculator: str
    result: str
    given: Mapping[str, str] = field(default_factory=dict)
    filled: Mapping[str, str] = field(default_factory=dict)


def _size(start_from: str, other: str) -> dict[str, _Followed]:
    return {
        f"{other}_{way}": _Followed(
            (f"{start_from}_{way}",), "finished-size", f"{other}_{way}", {"start_from": start_from}
        )
        for way in ("width", "length")
    }


#: Name of a measure → where it comes from.
FOLLOWS: Mapping[str, _Followed] = {
    **_size("finished", "cut"),
    **_size("cut", "finished"),
    "change_length": _Followed(("before_length", "after_length"), "wash-test", "change_length"),
    "change_width": _Followed(("before_width", "after_width"), "wash-test", "change_width"),
    "cloth_width": _Followed(("unwashed_width",), "wash-test", "washed_width"),
    "folded_length": _Followed(("cloth_length",), "wash-test", "washed_length"),
    "usable_length": _Followed(
        ("cloth_length", "folded_length"),
        "usable-cloth",
        "usable_length",
        {"layers": "1", "extra_length": "0"},
        {"folded_length": "folded_length"},
    ),
}


def following(calculator: Calculator, asking: Asking, measures: Mapping[str, Asking]) -> dict[str, Any]:
    """What stands in fields that hold a measure which nobody wrote, but which others in hand come to: field name →
    exact value.

    measures: name → how it was written, ``typed`` under that name.
    """
    there = measured(calculator, asking, measures)
    found = {
        asks: _worked_out(name, asking, measures)
        for asks, name in measured(calculator, asking, FOLLOWS).items()
        if asks not in there
    }
    return {asks: value for asks, value in found.items() if value is not None}


def into_walk(
    walk: Walk, typed: Mapping[str, Mapping[str, str]], measures: Mapping[str, Asking], asking: Asking
) -> dict[str, dict[str, str]]:
    """What is typed into a walk of no job, and beside it what measures in hand come to in blanks that nobody wrote and
    no step fills, such as the cut size of a finished one.

    typed: calculator → field → text. measures: name → how it was written. asking: the circumstances.
    """
    found = {calculator: dict(texts) for calculator, texts in typed.items()}
    asking, _ = for_its_kind(walk, typed, asking)
    for step in walk.steps:
        own = {**step.settled, **typed.get(step.calculator, {})}
        calculator = walk.calculator(step, asking.method)
        filled = {*step.taken_for(own), *given_to(step.calculator, walk, typed), *(name for name in own if own[name])}
        for name, value in following(calculator, replace(asking, typed=own), measures).items():
            if name not in filled:
                text = calculator.field(name).kind.write_exactly(value, asking.ruler)
                found.setdefault(step.calculator, {})[name] = text
    return found


def takes_over(calculator: Calculator) -> bool:
    """Whether a field of it can hold such a measure."""
    return any(name in FOLLOWS or "{" in name for each in calculator.fields for name in each.names_in_hand)


def _worked_out(name: str, asking: Asking, measures: Mapping[str, Asking]) -> Any:
    """What a measure comes to, None where nothing that it needs is in hand, or what is cannot be used."""
    source = FOLLOWS[name]
    if not any(each in measures for each in source.needs):
        return None
    calculator = calculator_named(source.calculator)
    typed = dict(source.given)
    for asks, known_as in measured(calculator, replace(asking, typed=typed), measures).items():
        then = measures[known_as]
        read = written(calculator, replace(then, typed={asks: then.typed[known_as]}))
        if not read:
            return None
        typed |= read
    taken = {asks: _worked_out(other, asking, measures) for asks, other in source.filled.items() if asks not in typed}
    if None in taken.values():
        return None
    try:
        return answer(calculator, replace(asking, typed=typed, taken=taken)).results[source.result]
    except InvalidInput:
        return None
