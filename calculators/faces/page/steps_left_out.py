"""What is said where minutes of the house stand for no kind of piece: steps that it counts for some kinds only are not
in them."""

from collections.abc import Callable, Iterator

from calculators.asking.answering import Asking
from calculators.asking.declaration import Calculator
from calculators.asking.house_method import kinds_named, on_ruler
from calculators.catalogue.thread_time_cost.from_method import minutes_for_a_piece, minutes_for_the_batch
from calculators.values.phrase import Phrase, say

_COUNTED = {minutes_for_a_piece, minutes_for_the_batch}
_BATCH = "batch"


def steps_left_out(calculator: Calculator, asking: Asking) -> Iterator[Phrase]:
    """One note that names those steps and their kinds, where such minutes are the house's and no kind of piece is
    named."""
    fields = [field for field in calculator.fields if field.from_method in _COUNTED]
    left_alone = any(
        not asking.typed.get(field.name, "").strip() and field.name not in asking.taken for field in fields
    )
    counted = {field.from_method for field in fields}
    left_out = [
        line
        for line in asking.method.steps_of_other_kinds
        if line.get("minutes") and _counted_in(on_ruler(line.get("for_each", ""), asking.ruler)) in counted
    ]
    if asking.method.kind or not left_alone or not left_out:
        return
    steps = ", ".join(f"“{line['step']}” ({', '.join(kinds_named(line))})" for line in left_out)
    yield say(
        "The minutes are those that every kind of piece takes. Not in them: {steps:text}. Name the kind in a batch, "
        "and its own are counted.",
        steps=steps,
    )


def _counted_in(each: str) -> Callable[..., str]:
    """The minutes in which a step counts that is timed for each batch, piece, corner or the like."""
    return minutes_for_the_batch if each == _BATCH else minutes_for_a_piece
