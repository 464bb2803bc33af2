"""Measures that a ticket is made with and of which an old method has two: one for each ruler, further apart than
rounding."""

from collections.abc import Iterator

from calculators.asking.house_method import on_ruler
from calculators.documents.house_method.sections import entries
from calculators.ticket.batch import Batch
from calculators.ticket.settings import MACHINE, TOLERANCES
from calculators.values.phrase import Phrase, say


def two_figures(batch: Batch) -> Phrase | None:
    """One sentence that names them all, and which figure of each this ticket took; None where there are none."""
    clashing = batch.step_results["order"].asking.method.clashing  # of the kind of piece that is made
    told = [
        _told(batch, name, *clashing[path])
        for name in dict.fromkeys(_settled_by_the_house(batch))
        if (path := f"measures.{name}") in clashing
    ]
    if not told:
        return None
    return say(
        "Two measures stand under one name in “{method:text}”: {told:text}. Settle which is meant before you cut.",
        method=batch.method.name,
        told="; ".join(told),
    )


def _told(batch: Batch, name: str, cm: str, inch: str) -> str:
    return f"{entries()[name].label.lower()}, {cm} and {inch} (here {on_ruler({'cm': cm, 'in': inch}, batch.ruler)})"


def _settled_by_the_house(batch: Batch) -> Iterator[str]:
    """Names of the measures that the house settles for this batch: those of blanks left alone, and what the ticket
    itself shows."""
    for step_result in batch.step_results.values():
        for field in step_result.calculator.fields:
            if (
                field.default
                and field.name not in step_result.asking.taken
                and not step_result.asking.typed.get(field.name, "").strip()
            ):
                yield field.default
    yield from (*MACHINE, *TOLERANCES)
