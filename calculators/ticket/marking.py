"""The marking table: every mark from one straight end or side, and the reading that proves them."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.ticket.batch import Batch, edges_of
from calculators.values.measure import Ruler, show_length
from calculators.values.phrase import Phrase, say


@dataclass(frozen=True)
class Marking:
    """Marks in one direction.

    title: which way they run. origin: where all of them are measured from.
    readings: each mark as it is read off the ruler, without its unit, in order.
    rounded: whether any of them lies between two divisions.
    check: what proves them at the far end.
    """

    title: str
    origin: str
    readings: tuple[str, ...]
    rounded: bool
    check: Phrase


def markings(batch: Batch) -> tuple[Marking, Marking]:
    """The marks along the cloth and across it.

    Each reading is rounded from its own exact place, so that rounding never adds up.
    """
    grid, ruler = batch.grid, batch.ruler
    all_rows = grid.rows == grid.along
    along = Marking(
        "Along the cloth",
        "the straightened end",
        *_readings(grid.marks_along, ruler),
        say(
            "Check: the last mark must read {last:length}"
            + (", and the far end {end:length_down}. If either does not, " if all_rows else ". If it does not, ")
            + "measure again before cutting.",
            last=grid.marks_along[-1],
            end=grid.cloth_length,
        ),
    )
    across = Marking(
        "Across the cloth",
        edges_of(batch).start(ruler),
        *_readings(grid.marks_across, ruler),
        say(
            "Check: the last mark must read {last:length}, and the far {side:text} {end:length_down}.",
            last=grid.marks_across[-1],
            side=edges_of(batch).name,
            end=grid.cloth_width,
        ),
    )
    return along, across


def _readings(marks: list[Fraction], ruler: Ruler) -> tuple[tuple[str, ...], bool]:
    shown = [show_length(mark, ruler) for mark in marks]
    return tuple(each.removeprefix("about ").removesuffix(f" {ruler.unit}") for each in shown), any(
        each.startswith("about ") for each in shown
    )
