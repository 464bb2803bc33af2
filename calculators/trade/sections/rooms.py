"""The air between layers: from where to where one could get without passing cloth or stitches.

The air over each stretch is divided by its layers into rooms, one below the lowest, one above the highest. Where a
stretch ends, rooms of both sides meet, unless a layer that goes on, a fold or a row of stitches stands between.
"""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise

from calculators.trade.sections.section import CrossSection, CutEnd, Run

Cell = tuple[Fraction, Fraction]
Room = tuple[Cell, int]
Gap = tuple[int, ...]
_FAR = Fraction(1_000_000)  # [mm] beyond everything


def outside(section: CrossSection) -> set[Room]:
    """All rooms that hang together with the air around the work."""
    doors = _doors(section)
    found: set[Room] = set()
    waiting = [(_stretches(section)[0], 0)]
    while waiting:
        room = waiting.pop()
        if room not in found:
            found.add(room)
            waiting += doors.get(room, ())
    return found


def rooms_beside(section: CrossSection, end: CutEnd) -> set[Room]:
    """The rooms below and above the end of a strip."""
    cells = _stretches(section)
    cell = next(each for each in cells if each[0 if end.way > 0 else 1] == end.at)
    number = section.lying(cell).index(end.run)
    return {(cell, number), (cell, number + 1)}


def _stretches(section: CrossSection) -> list[Cell]:
    """From far left to far right, divided where runs end and where rows stand."""
    ends = {end for run in section.layers for end in (run.left, run.right)}
    rows = {section.at(*row.holds[0]) for row in section.rows}
    return list(pairwise(sorted({-_FAR, *ends, *rows, _FAR})))


def _doors(section: CrossSection) -> Mapping[Room, list[Room]]:
    """Each room with those that it meets."""
    doors: dict[Room, list[Room]] = {}
    for left, right in pairwise(_stretches(section)):
        meeting: dict[tuple[Gap, ...], list[Room]] = {}
        for cell in (left, right):
            for number, walls in enumerate(_walls(section, cell, left[1])):
                if walls is not None:
                    meeting.setdefault(walls, []).append((cell, number))
        for rooms in meeting.values():
            for room in rooms:
                doors.setdefault(room, []).extend(each for each in rooms if each != room)
    return doors


def _walls(section: CrossSection, cell: Cell, at: Fraction) -> Iterator[tuple[Gap, ...] | None]:
    """For each room over a stretch what stands around it at one end of the stretch: the layers that go on below it and
    the folds around it. None where stitches close it."""
    lying = section.lying(cell)
    order = {run: number for number, run in enumerate(section.layers)}
    folds = [
        tuple(sorted((order[one], order[other])))
        for one, other in section.folds()
        if one.at(one.high) == at and one in lying
    ]
    going_on = [order[run] for run in lying if run.left < at < run.right]
    held = list(_held(section, at, order))
    for number in range(len(lying) + 1):
        below = order[lying[number - 1]] if number else -1
        above = order[lying[number]] if number < len(lying) else len(order)
        if any(low <= below and above <= high for low, high in held):
            yield None
        else:
            around = [fold for fold in folds if fold[0] <= below and above <= fold[1]]
            yield ((sum(each <= below for each in going_on),), *around)


def _held(section: CrossSection, at: Fraction, order: Mapping[Run, int]) -> Iterator[tuple[int, int]]:
    """The lowest and the highest layer that each row at a place holds."""
    for row in section.rows:
        if section.at(*row.holds[0]) == at:
            held = [
                order[run] for strip, flat in row.holds for run in section.runs_of(strip) if run.low <= flat <= run.high
            ]
            yield min(held), max(held)
