"""Search for the shortest stack of strips that holds a whole order, tallest strip first.

A state is what is left of the order. At each strip height the pieces that can only lie in strips at least so high are due: the
widest of them goes into the next strip (every plan can be sorted like this). Fair piece values (length_bound) say how
long the rest needs at least; states that cannot reach the target are dropped. When nothing else was dropped, the
search is a proof.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from calculators.layplan.counts import PackedCounts
from calculators.layplan.strip_list import TooManyStrips, list_strips
from calculators.layplan.strip_table import StripShapes

# A state: (score, length so far, state before, strip laid as (height, packed pieces)); the score is the length so far plus the
# worth of the pieces left, in 1/scale units: the least length of any plan that goes on from here.
State = tuple[int, int, "State | None", tuple[int, int] | None]
# A listed strip: (height less worth, packed pieces, fields of pieces that could be added).
Listed = tuple[int, int, int]


@dataclass
class LengthSearch:
    """One pass for a target length over an order (or a part of one).

    Parameters:
        values, scale: fair values of the pieces, in 1/scale units of length.
        order: packed copies wanted.
        target: length to be reached.
        breadth: how many states may be kept.
        choices: how many strips are tried from one state.
        most_strips: how many strips may be listed; with `whole_lists` more raise TooManyStrips, else the best are taken.
    """

    shapes: StripShapes
    counts: PackedCounts
    values: Sequence[int]
    scale: int
    order: int
    target: int
    breadth: int
    choices: int
    most_strips: int
    whole_lists: bool = False

    complete: bool = True
    best_length: int | None = None
    best_state: State | None = field(default=None, repr=False)

    def run(self) -> Iterator[None]:
        """Runs the pass, pausing often. Afterwards `best_length`, `strips` and `complete` tell what was found.

        Raises: TooManyStrips with `whole_lists`.
        """
        copies = self.counts.unpack(self.order)
        worth = sum(value * count for value, count in zip(self.values, copies))
        slack = self.target * self.scale - worth
        if slack < 0:
            return
        lists = yield from self._lists(copies, slack)
        states: dict[int, State] = {self.order: (worth, 0, None, None)}
        for height_class in range(len(self.shapes.heights) - 1, -1, -1):
            if not lists[height_class] and not self._due[height_class]:
                continue
            states = yield from self._lay_strips(height_class, lists[height_class], states)
            if not states:
                return

    def _lists(self, copies: Sequence[int], slack: int) -> Iterator[None]:
        """The strips of each height that can be in a plan of the target length."""
        self._due = _due_pieces(self.shapes, copies)
        while True:
            filled = self.shapes.fill(self.values, copies)
            yield
            lists: list[list[Listed]] = []
            room = self.most_strips
            try:
                for height_class, height in enumerate(self.shapes.heights):
                    full = height * self.scale
                    found = list_strips(self.shapes, self.counts, copies, height_class, filled[height_class], full - slack, room)
                    room -= len(found)
                    lists.append([(full - strip.worth, strip.packed, strip.could_add) for strip in found])
                return lists
            except TooManyStrips:
                if self.whole_lists:
                    raise
                self.complete = False
                slack //= 2
                yield

    def _lay_strips(self, height_class: int, listed: list[Listed], states: dict[int, State]) -> Iterator[None]:
        """Lays strips of one height until none of its pieces is due; returns the states that go on to lower strips."""
        due = self._due[height_class]
        by_widest: dict[int, list[Listed]] = {}
        done: dict[int, State] = {}
        looked = 0
        while states:
            reached: dict[int, State] = {}
            for left, state in states.items():
                widest = next((piece for piece, mask in due if left & mask), None)
                if widest is None:
                    known = done.get(left)
                    if known is None or known[0] > state[0]:
                        done[left] = state
                    fitting = listed
                else:
                    if widest not in by_widest:
                        mask = self.counts.field(widest)
                        by_widest[widest] = [strip for strip in listed if strip[1] & mask]
                    fitting = by_widest[widest]
                tried = self._try_strips(height_class, fitting, left, state, reached)
                if widest is not None and tried == 0 and not self._all_listed:
                    self._fill_up(height_class, widest, left, state, reached)
                    yield
                looked += 1
                if looked % 64 == 0:
                    yield
            finished = reached.pop(0, None)
            if finished is not None and (self.best_length is None or finished[1] < self.best_length):
                self.best_length, self.best_state = finished[1], finished
                self.target = finished[1] - 1
            states = self._thinned(reached)
        return self._thinned(done)

    @property
    def _all_listed(self) -> bool:
        """Whether every strip that could be in a plan of the target length is listed."""
        return self.complete

    def _try_strips(self, height_class: int, fitting: list[Listed], left: int, state: State, reached: dict[int, State]) -> int:
        guards, clear = self.counts.guards, ~self.counts.guards
        height = self.shapes.heights[height_class]
        score, length = state[0], state[1] + height
        allowed = self.target * self.scale - score
        guarded = left | guards
        tried = 0
        for lacking, packed, could_add in fitting:
            if lacking > allowed:
                break
            after = guarded - packed
            if after & guards != guards:
                continue
            after &= clear
            if after & could_add:
                continue  # a piece left over would still fit in this strip
            if tried == self.choices:
                self.complete = False
                break
            tried += 1
            known = reached.get(after)
            if known is None or known[0] > score + lacking:
                reached[after] = (score + lacking, length, state, (height, packed))
        return tried

    def _fill_up(self, height_class: int, widest: int, left: int, state: State, reached: dict[int, State]) -> None:
        """When no listed strip fits: the best strip around a piece that is due, from the pieces left."""
        copies = self.counts.unpack(left)
        copies[widest] -= 1
        width = next(way.width for way in self.shapes.ways_in[height_class] if way.piece == widest)
        filled = self.shapes.fill_class(height_class, self.values, copies)
        content = self.shapes.content(filled, self.shapes.width - width)
        packed = self.counts.pack([(widest, 1), *content])
        height = self.shapes.heights[height_class]
        worth = self.values[widest] + sum(self.values[piece] * count for piece, count in content)
        score = state[0] + height * self.scale - worth
        if score > self.target * self.scale:
            return
        after = left - packed
        known = reached.get(after)
        if known is None or known[0] > score:
            reached[after] = (score, state[1] + height, state, (height, packed))

    def _thinned(self, states: dict[int, State]) -> dict[int, State]:
        most = self.target * self.scale
        kept = [(state[0], left) for left, state in states.items() if state[0] <= most]
        if len(kept) > self.breadth:
            self.complete = False
            kept.sort()
            del kept[self.breadth :]
        return {left: states[left] for _, left in kept}

    def strips(self) -> list[tuple[int, int]]:
        """The strips of the best plan found: pairs (height, packed pieces)."""
        laid = []
        state = self.best_state
        while state is not None and state[3] is not None:
            laid.append(state[3])
            state = state[2]
        return laid[::-1]


def _due_pieces(shapes: StripShapes, copies: Sequence[int]) -> list[list[tuple[int, int]]]:
    """For each height class the pieces that cannot lie in any lower strip, widest first, with their count fields."""
    counts = PackedCounts(shapes.copies)
    due: list[list[tuple[int, int, int]]] = []
    for height, ways in zip(shapes.heights, shapes.ways_in):
        here = [way for way in ways if way.height == height == shapes.lowest[way.piece] and copies[way.piece]]
        due.append([(way.piece, counts.field(way.piece)) for way in sorted(here, key=lambda way: -way.width)])
    return due
