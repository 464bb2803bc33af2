"""A construction as a maker does it: steps in order, each with the cloth as it then lies."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from calculators.trade.corners.convex import Polygon
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.plane import Number, Point
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.window import seen_through, window
from calculators.trade.trade_rules import brief


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
class CornerStep:
    """One step. Its texts have ``{name}`` where a length of this job belongs.

    name: what it is called in the workroom.
    do: what to do, as one command without its full stop.
    stack: the cloth after it.
    lengths: the lengths told or shown [mm].
    measured: distances to show.
    how: what belongs to doing it, in whole sentences.
    rules: keys of the trade's rules that it needs.
    check: by what one sees that it is right; a page has room for it, a ticket has not.
    why: the reason, which a page folds away.
    from_below: shown as seen when the work is turned over.
    window: what is shown of the table, the same in every step of a construction.
    """

    name: str
    do: str
    stack: Stack
    lengths: Mapping[str, Number] = field(default_factory=dict)
    measured: tuple[Measured, ...] = ()
    how: str = ""
    rules: tuple[str, ...] = ()
    check: str = ""
    why: str = ""
    from_below: bool = False
    window: Polygon = ()

    @property
    def instruction(self) -> str:
        """All that a ticket tells of it."""
        return " ".join([f"{self.do}.", *([self.how] if self.how else []), *map(brief, self.rules)])

    @cached_property
    def seen(self) -> Stack:
        """What the window shows of the cloth, in floats."""
        return seen_through(self.stack, self.window)


def through_one_window(corner: Corner, reach: Number, steps: Iterable[CornerStep]) -> list[CornerStep]:
    """The steps of a construction, all seen through one window that reaches so far along each edge from the raw corner
    [mm]."""
    ring = window(corner, reach)
    return [replace(step, window=ring) for step in steps]
