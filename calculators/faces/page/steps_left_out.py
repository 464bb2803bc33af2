"""What is said where minutes of the house stand for no kind of piece: steps that it counts for some kinds only are not
in them."""

from collections.abc import Callable, Iterator

from calculators.asking.answering import Asking
from calculators.asking.declaration import Calculator
from calculators.asking.house_method import kinds_named, on_ruler
from calculators.asking.timing import BATCH, WAITING
from calculators.catalogue.thread_time_cost.from_method import (
    minutes_for_a_piece,
    minutes_for_the_batch,
    waiting_of_the_batch,
)
from calculators.values.phrase import Phrase, say

_COUNTED = {BATCH: minutes_for_the_batch, WAITING: waiting_of_the_batch}  # what is done to pieces counts for each


def steps_left_out(calculator: Calculator, asking: Asking) -> Iterator[Phrase]:
    """One note that names those steps and their kinds, where such minutes are the house's and no kind of piece is
    named."""
    fields = [each for each in calculator.fields if each.from_method in (minutes_for_a_piece, minutes_for_the_batch)]
    left_alone = any(
        not asking.typed.get(field.name, "").strip() and field.name not in asking.taken for field in fields
    )
    counted = {each.from_method for each in calculator.fields}
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
    return _COUNTED.get(each, minutes_for_a_piece)
