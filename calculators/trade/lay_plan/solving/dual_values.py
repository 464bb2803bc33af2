"""Dual feasible values: what pieces and the strips themselves are worth, so that worth tells how long any plan must
be."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate

from calculators.trade.lay_plan.solving.strip_table import StripShapes


@dataclass(frozen=True)
class DualValues:
    """Values at which no strip holds pieces worth more than its cost, all whole numbers in 1/scale units of length.

    pieces: value of each piece. steps: for each height class the value of a strip being at least so high. The cost of a
    strip
    is its height less the steps up to it. Any plan for some copies is then at least as long as the copies are worth and
    the
    steps of as many strips as it cannot do without (least_strips).
    """

    shapes: StripShapes
    scale: int
    pieces: Sequence[int]
    steps: Sequence[int]

    @cached_property
    def climbs(self) -> list[int]:
        """For each height class the steps up to it."""
        return list(accumulate(self.steps))

    @cached_property
    def costs(self) -> list[int]:
        """For each height class what the pieces of a strip may be worth at most."""
        return [height * self.scale - climb for height, climb in zip(self.shapes.heights, self.climbs)]

    def worth(self, copies: Sequence[int], least: Sequence[int]) -> int:
        """The least length of any plan for these copies, given how many strips of each height it has at least."""
        return sum(v * c for v, c in zip(self.pieces, copies)) + sum(s * n for s, n in zip(self.steps, least) if s)
