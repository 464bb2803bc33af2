"""A plan on one cloth with how good any plan could be."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.lay_plan.laid import Lay


@dataclass(frozen=True)
class Fit:
    """A plan on one cloth and how good any plan could be.

    result, bound: what the pieces count, their area with the gaps that follow them [mm²], or the length they need [mm],
    as the goal
        asks. bound None: not known; where pieces are to be kept before all else, it is that of plans that keep as many.
    score, score_bound: the same with what those pieces count more than all others together.
    """

    lay: Lay
    result: Fraction
    bound: Fraction | None
    score: Fraction
    score_bound: Fraction | None

    @property
    def proven(self) -> bool:
        """Whether no plan under the same rules can be better."""
        return self.result == self.bound
