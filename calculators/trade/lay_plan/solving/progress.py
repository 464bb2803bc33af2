"""What a solver tells while it works: the best plan so far, and how good any plan could be."""

from dataclasses import dataclass

from calculators.trade.lay_plan.solving.plan import Plan


@dataclass(frozen=True)
class Progress:
    """The state of a search.

    plan: the best plan so far, or None when there is none yet.
    result: its value (most value) or length (shortest length), in units.
    bound: no plan under the same rules can be better than this; None while unknown.
    finished: whether the solver has nothing left to try.
    """

    plan: Plan | None
    result: int | None
    bound: int | None
    finished: bool = False

    @property
    def proven(self) -> bool:
        """Whether the plan is known to be the best there is."""
        return self.result is not None and self.result == self.bound
