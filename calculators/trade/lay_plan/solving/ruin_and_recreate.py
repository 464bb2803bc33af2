"""Ruin and recreate: takes a few strips of a plan up and lays their pieces again on less length.

More strips are taken when a few brought nothing. Now and then pieces count a little less, by chance, and a plan of the
same
length is good enough: it is another place to go on from. Values that were dual feasible stay so when lowered.
"""

from collections.abc import Iterator, Sequence
from itertools import accumulate
from random import Random

from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.dual_values import DualValues
from calculators.trade.lay_plan.solving.length_search import LengthSearch

Strip = tuple[int, int]  # height, packed pieces
TRIES_AT_ONE_SIZE = 6
NUMBERS = (3, 4, 5, 6, 8, 10, 14, 20)
LISTED = 100
BEAM_WIDTH, CHOICES = 40, 10
SIDEWAYS = 0.3
LOWERED = 0.02
REJECTED = 12


class RuinAndRecreate:
    """Ruins and recreates strips of a plan, chosen by a seeded chance: the same every time.

    laid: the strips of the plan; `complete` tells whether all of it was ruined at once and nothing shorter can exist.
    """

    def __init__(self, counts: PackedCounts):
        self.counts = counts
        self.random = Random(1)
        self.complete = False
        self._fruitless = 0
        self._weighed: Sequence[Strip] = ()
        self._weighed_at: DualValues | None = None

    def once(self, laid: Sequence[Strip], duals: DualValues) -> Iterator[list[Strip] | None]:
        """One try, pausing often (None); last come the strips of a plan no longer than before, if there is one."""
        sideways = self.random.random() < SIDEWAYS
        for _ in range(REJECTED):
            number = 3 + self._fruitless // TRIES_AT_ONE_SIZE
            if number > 6:
                number = self.random.choice(NUMBERS)
            taken = self._choose(laid, duals, min(number, len(laid)))
            height = sum(laid[index][0] for index in taken)
            search = LengthSearch(duals.shapes, self.counts, duals, sum(laid[index][1] for index in taken))
            self._fruitless += 1
            if search.worth <= (height - 1) * duals.scale:
                break
            if len(taken) == len(laid):
                self.complete = True
                return
        else:
            yield None
            return
        target = height - 1
        if sideways:
            search.duals = self._lowered(duals)
            target = height
        yield from search.list_up(target, LISTED)
        yield from search.run(target, BEAM_WIDTH, CHOICES)
        if search.best_length is not None:
            if search.best_length < height:
                self._fruitless = 0
            yield [strip for index, strip in enumerate(laid) if index not in taken] + search.strips()
        elif search.complete and len(taken) == len(laid) and target < height:
            self.complete = True

    def _lowered(self, duals: DualValues) -> DualValues:
        pieces = [int(value * (1 - LOWERED * self.random.random())) for value in duals.pieces]
        return DualValues(duals.shapes, duals.scale, pieces, duals.steps)

    def _choose(self, laid: Sequence[Strip], duals: DualValues, number: int) -> set[int]:
        """Which strips to take up: often those that waste most and neighbours in height, else any."""
        if laid is not self._weighed or duals is not self._weighed_at:
            self._weighed, self._weighed_at = laid, duals
            self._waste = list(accumulate(self._wasted(strip, duals) for strip in laid))
        chosen: set[int] = set()
        while len(chosen) < number:
            luck = self.random.random()
            if chosen and luck < 0.3:
                index = self.random.choice(sorted(chosen)) + self.random.choice((-1, 1))
                if not 0 <= index < len(laid):
                    continue
            elif luck < 0.7:
                index = self.random.choices(range(len(laid)), cum_weights=self._waste)[0]
            else:
                index = self.random.randrange(len(laid))
            chosen.add(index)
        return chosen

    def _wasted(self, strip: Strip, duals: DualValues) -> int:
        """What a strip costs more than its pieces are worth, and a little so that every strip has a chance."""
        height, packed = strip
        worth = sum(duals.pieces[piece] * count for piece, count in self.counts.pairs(packed))
        return max(0, duals.costs[duals.shapes.class_of[height]] - worth) + duals.scale // 8 + 1
