"""What must hold of any edge, whatever it is made of: each finds what hands could not make, or a maker would not."""

from collections.abc import Iterator
from fractions import Fraction

from calculators.trade.sections.section import CrossSection, Run

HELD = Fraction(1)  # [mm] of cloth at least between a row of stitches and a raw edge


def crossings(section: CrossSection) -> Iterator[tuple[Run, Run]]:
    """Folds that another run passes through: it lies between the two runs of the fold and goes on beyond it."""
    order = {run: number for number, run in enumerate(section.layers)}
    for one, other in section.folds():
        at = one.at(one.high)
        low, high = sorted((order[one], order[other]))
        for run in section.layers[low + 1 : high]:
            if run.left < at < run.right:
                yield one, run
    folds = list(section.folds())
    for number, (one, other) in enumerate(folds):
        for third, fourth in folds[number + 1 :]:
            if one.at(one.high) == third.at(third.high) and _same_side(one, third):
                first, last = sorted((order[one], order[other]))
                inside = [first < order[each] < last for each in (third, fourth)]
                if inside[0] != inside[1]:
                    yield one, third


def _same_side(one: Run, other: Run) -> bool:
    """Whether two runs come to a place from the same side."""
    at = one.at(one.high)
    return (one.left < at) == (other.left < at)


def torn(section: CrossSection) -> list[str]:
    """Rows whose places no longer lie at one place of the table."""
    return [
        row.name
        for row in section.rows
        if len({section.at(strip, flat) for strip, flat in row.holds if _is_there(section, strip, flat)}) > 1
    ]


def _is_there(section: CrossSection, strip: str, flat: Fraction) -> bool:
    return any(run.low <= flat <= run.high for run in section.runs_of(strip))


def let_go(section: CrossSection) -> list[tuple[str, str]]:
    """(row, strip) where the row is nearer than `HELD` to the strip's raw edge, or beyond it."""
    return [
        (row.name, strip)
        for row in section.rows
        for strip, flat in row.holds
        if flat < section.raw_ends()[strip].low + HELD
    ]


def open_raw_edges(section: CrossSection) -> list[str]:
    """Strips whose raw edge is not shut in: neither between layers that a fold or a row closes on its far side.

    A raw edge is shut in where the slot that it lies in is closed on both sides by a fold around it, or by a row of
    stitches through the layer below and the layer above.
    """
    order = {run: number for number, run in enumerate(section.layers)}
    open_ones = []
    for strip, run in section.raw_ends().items():
        at, number = run.at(run.low), order[run]
        walls = [*_fold_walls(section, order, number), *_row_walls(section, order, number)]
        if not (any(wall <= at for wall in walls) and any(wall >= at for wall in walls)):
            open_ones.append(strip)
    return open_ones


def _fold_walls(section: CrossSection, order: dict[Run, int], number: int) -> Iterator[Fraction]:
    """Where a fold closes the place of a run: one of its runs is below, the other above."""
    for one, other in section.folds():
        low, high = sorted((order[one], order[other]))
        if low < number < high or (number in (low, high) and section.layers[number].low != one.low):
            yield one.at(one.high)


def _row_walls(section: CrossSection, order: dict[Run, int], number: int) -> Iterator[Fraction]:
    """Where a row closes it: it holds a layer below and one above."""
    for row in section.rows:
        for strip, flat in row.holds:
            at = section.at(strip, flat)
            held = [order[run] for run in section.layers for name, place in row.holds
                    if run.strip == name and run.low <= place <= run.high]  # fmt: skip
            if min(held) < number < max(held):
                yield at
