"""Search for the shortest set of strips that holds a whole order, one piece at a time, the most demanding piece first.

A state is what is left of the order. The next piece in a fixed order goes into some strip, so every strip that holds it and
whose pieces are still there is tried. Fair piece values (length_bound) say how long the rest needs at least; states that
cannot reach the target are dropped, and of many the most promising are kept. When nothing but hopeless states was dropped, the
search is a proof.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from calculators.layplan.counts import PackedCounts
from calculators.layplan.strip_list import Strip, TooManyStrips, list_contents, list_strips
from calculators.layplan.strip_table import StripShapes

# A state: (score, length so far, state before, strip laid as (height, packed pieces)); the score is the length so far plus the
# worth of the pieces left, in 1/scale units: the least length of any plan that goes on from here.
State = tuple[int, int, "State | None", tuple[int, int] | None]
# A listed strip: (height less worth, packed pieces, fields of pieces that could be added, height).
Listed = tuple[int, int, int, int]
FEW = 3


@dataclass(frozen=True)
class StripLists:
    """The best strips for given piece values.

    listed: strips, best first.
    slack: a strip that loses no more than this is surely listed, in 1/scale units.
    """

    listed: list[Listed]
    slack: int


@dataclass
class LengthSearch:
    """Searches over an order (or a part of one) with fixed piece values.

    Parameters:
        values, scale: fair values of the pieces, in 1/scale units of length.
        order: packed copies wanted.
    """

    shapes: StripShapes
    counts: PackedCounts
    values: Sequence[int]
    scale: int
    order: int

    lists: StripLists = StripLists([], -1)
    complete: bool = False
    best_length: int | None = None
    _best_state: State | None = field(default=None, repr=False)

    def __post_init__(self):
        self._copies = self.counts.unpack(self.order)
        self.worth = sum(value * count for value, count in zip(self.values, self._copies))
        pieces = [piece for piece, count in enumerate(self._copies) if count]
        turnable = any(len(heights) > 1 for heights in self.shapes.own_heights)
        self._by_demand = sorted(pieces, key=self._short_side if turnable else self._height, reverse=True)

    def _height(self, piece: int) -> tuple[int, int]:
        """What makes a piece demanding that lies one way only: its height, then its width."""
        return self.shapes.own_heights[piece][0]

    def _short_side(self, piece: int) -> tuple[int, int]:
        """What makes a piece demanding that may turn: its shorter side, then its longer one."""
        height, width = self.shapes.own_heights[piece][0]
        return min(height, width), max(height, width)

    def list_up(self, target: int, most: int) -> Iterator[None]:
        """Lists the strips that a plan of the target length can hold, at most about `most` of each height."""
        slack = max(0, target * self.scale - self.worth)
        filled = self.shapes.fill(self.values, self._copies)
        listed: list[Listed] = []
        sure = slack
        for height_class, height in enumerate(self.shapes.heights):
            found, reach = self._list_class(height_class, filled[height_class], slack, most)
            sure = min(sure, reach)
            full = height * self.scale
            listed.extend([(full - strip.worth, strip.packed, strip.could_add, height) for strip in found])
            yield
        listed.sort()
        self.lists = StripLists(listed, sure)

    def _list_class(self, height_class: int, filled, slack: int, most: int) -> tuple[list[Strip], int]:
        """The strips of one height, and up to which loss of height they are all there."""
        full = self.shapes.heights[height_class] * self.scale
        allowed = min(slack, full // 64)
        best: list[Strip] | None = None
        while True:
            try:
                found = list_strips(self.shapes, self.counts, self._copies, height_class, filled, full - allowed, most)
            except TooManyStrips:
                allowed //= 2
                if best is not None:
                    return best, allowed
                if allowed == 0:
                    return [], -1
                continue
            if allowed >= min(slack, full):
                return found, slack
            if 3 * len(found) > most or best is not None and allowed * 2 > full:
                return found, allowed
            best = found
            allowed = min(slack, allowed * 2)

    def run(self, target: int, breadth: int, choices: int) -> Iterator[None]:
        """One pass for a target length, pausing often. Afterwards `best_length`, `strips` and `complete` tell what was found.

        Parameters:
            breadth: how many states may be kept.
            choices: how many strips are tried from one state.
        """
        self.best_length = None
        slack = target * self.scale - self.worth
        if slack < 0:
            self.complete = True
            return
        self._target, self._breadth, self._choices = target, breadth, choices
        self._all_listed = self.complete = slack <= self.lists.slack
        states: dict[int, State] = {self.order: (self.worth, 0, None, None)}
        listed = self.lists.listed
        for piece in self._by_demand:
            mask = self.counts.field(piece)
            states = yield from self._place(piece, [strip for strip in listed if strip[1] & mask], states)
            listed = [strip for strip in listed if not strip[1] & mask]
            if not states:
                return

    def _place(self, piece: int, fitting: list[Listed], states: dict[int, State]) -> Iterator[None]:
        """Lays strips with a piece until none of it is left; returns the states that go on to other pieces."""
        mask = self.counts.field(piece)
        done: dict[int, State] = {}
        looked = 0
        while states:
            reached: dict[int, State] = {}
            for left, state in states.items():
                if not left & mask:
                    known = done.get(left)
                    if known is None or known[0] > state[0]:
                        done[left] = state
                    continue
                if self._try_strips(fitting, left, state, reached) < FEW and not self._all_listed:
                    self._make_strips(piece, left, state, reached)
                    yield
                looked += 1
                if looked % 32 == 0:
                    yield
            finished = reached.pop(0, None)
            if finished is not None and (self.best_length is None or finished[1] < self.best_length):
                self.best_length, self._best_state = finished[1], finished
                self._target = finished[1] - 1
            states = self._thinned(reached)
        return self._thinned(done)

    def _try_strips(self, fitting: list[Listed], left: int, state: State, reached: dict[int, State]) -> int:
        guards, clear = self.counts.guards, ~self.counts.guards
        score, length = state[0], state[1]
        allowed = self._target * self.scale - score
        guarded = left | guards
        tried = 0
        for lacking, packed, could_add, height in fitting:
            if lacking > allowed:
                break
            after = guarded - packed
            if after & guards != guards:
                continue
            after &= clear
            if after & could_add:
                continue  # a piece left over would still fit in this strip
            if tried == self._choices:
                self.complete = False
                break
            tried += 1
            known = reached.get(after)
            if known is None or known[0] > score + lacking:
                reached[after] = (score + lacking, length + height, state, (height, packed))
        return tried

    def _make_strips(self, piece: int, left: int, state: State, reached: dict[int, State]) -> None:
        """Where hardly any listed strip fits: the best strips around a piece, as high as the piece, from the pieces left."""
        copies = self.counts.unpack(left)
        copies[piece] -= 1
        made = []
        for height, width in self.shapes.own_heights[piece]:
            for strip in self._best_around(height, width, copies):
                lacking = height * self.scale - strip.worth - self.values[piece]
                made.append((lacking, strip.packed + self.counts.unit(piece), strip.could_add, height))
        made.sort()
        self._try_strips(made, left, state, reached)

    def _best_around(self, height: int, width: int, copies: Sequence[int]) -> list[Strip]:
        """The best contents for what a piece `width` wide leaves of a strip."""
        height_class = self.shapes.class_of[height]
        space = self.shapes.width - width
        filled = self.shapes.fill_class(height_class, self.values, copies)
        best = filled.table[self.shapes.positions.floor[space]]
        found: list[Strip] = []
        for part in (0.99, 0.9, 0.6, 0.0):
            try:
                found = list_contents(self.shapes, self.counts, copies, height_class, filled, int(best * part), 60, space)
            except TooManyStrips:
                break
            if len(found) >= FEW:
                break
        return found or [Strip(best, self.counts.pack(self.shapes.content(filled, space)), 0)]

    def _thinned(self, states: dict[int, State]) -> dict[int, State]:
        most = self._target * self.scale
        kept = [(state[0], left) for left, state in states.items() if state[0] <= most]
        if len(kept) > self._breadth:
            self.complete = False
            kept.sort()
            del kept[self._breadth :]
        return {left: states[left] for _, left in kept}

    def strips(self) -> list[tuple[int, int]]:
        """The strips of the best plan found: pairs (height, packed pieces)."""
        laid = []
        state = self._best_state
        while state is not None and state[3] is not None:
            laid.append(state[3])
            state = state[2]
        return laid[::-1]
