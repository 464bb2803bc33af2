"""Search for the plan of most value in strips, tallest strip first, guided and pruned by the bound.

A state is what is left: cloth length and pieces. States with the same pieces left have the same value, so only the one
with
most cloth left is kept. When the beam width dropped no state, the search is a proof: no plan reaches the target
that
was not found.
"""

from collections.abc import Generator, Iterator
from dataclasses import dataclass
from operator import mul

from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.strip_list import Strip, list_strips
from calculators.trade.lay_plan.solving.value_bound import RelaxedStack, ValueBound

PAUSE_EVERY = 8_000  # strips listed

# A state: (length left, score, value so far, state before, strip taken as (height, packed pieces)); the score is value
# so far plus the multiplier of the pieces left, in 1/scale units, so score + best stack of strips in the length left is
# a bound.
# A strip that a plan can hold: what it is worth at the multipliers, packed pieces, what could be added, and its value.
Listed = tuple[int, int, int, int]
State = tuple[int, int, int, "State | None", tuple[int, int] | None]


@dataclass
class ValueSearch:
    """One pass over the strip heights for a target value.

    bound, relaxed: where multipliers and tables come from.
    target: value that a plan must reach.
    most_strips: how many strips may be listed.
    beam_width: how many states may be kept from one strip height to the next.
    """

    bound: ValueBound
    relaxed: RelaxedStack
    target: int
    most_strips: int
    beam_width: int

    complete: bool = True
    best_value: int = -1
    best_state: State | None = None

    def run(self) -> Iterator[None]:
        """Runs the pass, pausing often. Afterwards `best_value`, `strips` and `complete` tell what was found.

        Raises: TooManyStrips when the target is too far below the bound.
        """
        counts = PackedCounts(self.bound.copies)
        lists = yield from self._lists(counts)
        scale, floor = self.bound.scale, self.bound.lengths.floor
        states: dict[int, State] = {counts.all: (self.bound.length, self.relaxed.multiplier_of_all, 0, None, None)}
        nothing = self.bound.lengths.empty_table()
        for height_class in range(len(lists) - 1, -1, -1):
            if lists[height_class]:
                yield from self._lay_strips(height_class, lists[height_class], states, counts)
            lower = self.relaxed.tables[height_class - 1] if height_class else nothing
            need = self.target * scale
            kept = [
                (state[1] + lower[floor[state[0]]], left)
                for left, state in states.items()
                if state[1] + lower[floor[state[0]]] >= need
            ]
            if len(kept) > self.beam_width:
                self.complete = False
                kept.sort(reverse=True)
                del kept[self.beam_width :]
            states = {left: states[left] for _, left in kept}
            if not states:
                return
            yield

    def _lists(self, counts: PackedCounts) -> Generator[None, None, list[list[Listed]]]:
        """The strips of each height class that a plan of the target value can hold."""
        lists: list[list[Listed]] = []
        heights = self.bound.shapes.heights
        best_stack, floor = self.relaxed.tables[-1], self.bound.lengths.floor
        room = self.most_strips
        values = self.bound.values
        for height_class, filled in enumerate(self.relaxed.filled):
            beside = best_stack[floor[self.bound.length - heights[height_class]]]
            least = self.target * self.bound.scale - self.relaxed.multiplier_of_all - beside
            found = yield from list_strips(
                self.bound.shapes, counts, self.bound.copies, height_class, filled, least, room
            )
            room -= len(found)
            lists.append([])
            for start in range(0, len(found) or 1, PAUSE_EVERY):
                lists[-1] += [
                    (s.worth, s.packed, s.could_add, self._value(counts, s, values))
                    for s in found[start : start + PAUSE_EVERY]
                ]
                yield
        return lists

    @staticmethod
    def _value(counts: PackedCounts, strip: Strip, values: list[int]) -> int:
        return sum(map(mul, values, counts.unpack(strip.packed)))

    def _lay_strips(
        self, height_class: int, strips: list[Listed], states: dict[int, State], counts: PackedCounts
    ) -> Iterator[None]:
        """Adds to `states` everything reachable by more strips of one height."""
        height = self.bound.shapes.heights[height_class]
        table, floor = self.relaxed.tables[height_class], self.bound.lengths.floor
        guards, clear = counts.guards, ~counts.guards
        layer = states
        looked = 0
        while layer:
            reached: dict[int, State] = {}
            need = self.target * self.bound.scale
            for left, state in layer.items():
                length, score, value = state[0] - height, state[1], state[2]
                if length < 0:
                    continue
                least = need - score - table[floor[length]]
                guarded = left | guards
                for worth, packed, could_add, gain in strips:
                    if worth < least:
                        break
                    after = guarded - packed
                    if after & guards != guards:
                        continue
                    after &= clear
                    if after & could_add:
                        continue  # a piece left over would still fit in this strip
                    known = states.get(after) or reached.get(after)
                    if known is None or known[0] < length:
                        reached[after] = (length, score + worth, value + gain, state, (height, packed))
                        if value + gain > self.best_value:
                            self.best_value = value + gain
                            self.best_state = reached[after]
                looked += 1
                if looked % 64 == 0:
                    yield
            if len(reached) > 4 * self.beam_width:
                self.complete = False
                best = sorted(reached, key=lambda a: -(reached[a][1] + table[floor[reached[a][0]]]))
                reached = {left: reached[left] for left in best[: 4 * self.beam_width]}
            states.update(reached)
            layer = reached

    def strips(self) -> list[tuple[int, tuple[tuple[int, int], ...]]]:
        """The strips of the best plan found: pairs (height, pieces)."""
        counts = PackedCounts(self.bound.copies)
        laid = []
        state = self.best_state
        while state is not None and state[4] is not None:
            laid.append((state[4][0], counts.pairs(state[4][1])))
            state = state[3]
        return laid[::-1]
