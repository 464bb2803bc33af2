"""A construction as a maker does it: steps in order, each with the cloth as it then lies."""

from dataclasses import dataclass, field
from typing import Mapping

from calculators.folding.plane import Number, Point
from calculators.folding.stack import Stack


@dataclass(frozen=True)
class Measured:
    """A distance to show on a drawing: from one place on the table to another, under a name from the step's lengths.

    outside: whether there is room for it on the side away from the cloth.
    """

    name: str
    start: Point
    end: Point
    outside: bool = True


@dataclass(frozen=True)
class Step:
    """One step.

    name: what it is called in the workroom.
    told: what to do, with ``{name}`` where a length of this job belongs.
    stack: the cloth after it.
    lengths: the lengths told or shown [mm].
    measured: distances to show.
    from_below: shown as seen when the work is turned over.
    """

    name: str
    told: str
    stack: Stack
    lengths: Mapping[str, Number] = field(default_factory=dict)
    measured: tuple[Measured, ...] = ()
    from_below: bool = False
