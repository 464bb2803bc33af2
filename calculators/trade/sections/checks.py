"""What must hold of any edge, whatever it is made of: each finds what hands could not make, or a maker would not."""

from collections.abc import Iterator
from fractions import Fraction

from calculators.trade.sections.rooms import outside, rooms_beside
from calculators.trade.sections.section import CrossSection, CutEnd, Run

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
    """(row, strip) where the row is nearer than `HELD` to an end of the strip, or beyond it."""
    return [
        (row.name, strip)
        for row in section.rows
        if not row.whipped
        for strip, flat in row.holds
        if any(
            (flat - end.flat) * (1 if end.flat == end.run.low else -1) < HELD
            for end in section.ends()
            if end.run.strip == strip
        )
    ]


def held_by(section: CrossSection, name: str) -> int:
    """How many layers of cloth a row goes through; a fold that it meets counts as one.

    Source: derived, rows are kept by places of flat strips.
    """
    held = {each for row in section.rows if row.name == name for each in row.holds}
    return sum(strip in section.strips for strip, _ in held)


def struck(section: CrossSection) -> list[tuple[str, str]]:
    """(row, thing) where the needle would meet something solid that is not sewn on, such as a rod."""
    order = {run: number for number, run in enumerate(section.layers)}
    found = []
    for row in section.rows:
        held = [run for strip, flat in row.holds for run in section.runs_of(strip) if run.low <= flat <= run.high]
        at = section.at(*row.holds[0])
        lowest, highest = min(map(order.__getitem__, held)), max(map(order.__getitem__, held))
        found += [
            (row.name, each.strip)
            for each in section.solids
            if each not in held and each.left < at < each.right and lowest < order[each] < highest
        ]
    return found


def open_raw_edges(section: CrossSection) -> list[str]:
    """Strips with a raw edge that is not shut in: one could get to it from outside without passing cloth or stitches.
    One that was neatened is not raw."""
    return list(dict.fromkeys(end.run.strip for end in section.ends() if not end.neat and _is_open(section, end)))


def _is_open(section: CrossSection, end: CutEnd) -> bool:
    return bool(rooms_beside(section, end) & outside(section))
