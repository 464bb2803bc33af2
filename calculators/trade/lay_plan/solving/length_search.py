"""Search for the shortest set of strips that holds a whole order, one piece at a time, the most demanding piece first.

A state is what is left of the order. The next piece in a fixed order goes into some strip, so every strip that holds it
and
whose pieces are still there is tried. Fair values (length_bound) say how long the rest needs at least; states that
cannot reach the target are pruned, and of the others the most promising are kept, as many as the beam width. When it
dropped none, the search is a proof.
"""

from collections.abc import Generator, Iterator
from dataclasses import dataclass, field

from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.dual_values import DualValues
from calculators.trade.lay_plan.solving.least_strips import least_strips
from calculators.trade.lay_plan.solving.strip_contents import contents, layers_of
from calculators.trade.lay_plan.solving.strip_list import Strip, list_best_strips
from calculators.trade.lay_plan.solving.strip_table import KnapsackTable, StripShapes

# A state: (score, length so far, strips so far, state before, strip laid as (height, packed pieces)). The score is the
# least length
# of any plan that goes on from here: what the strips so far cost, and the worth of the pieces left, in 1/scale units.
State = tuple[int, int, int, "State | None", tuple[int, int] | None]
# A listed strip: (cost less worth, packed pieces, fields of pieces that could be added, height).
Listed = tuple[int, int, int, int]
FEW = 3
MADE = 6
LOOKS = 250


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
        duals: what pieces and strips are worth.
        order: packed copies wanted.
    """

    shapes: StripShapes
    counts: PackedCounts
    duals: DualValues
    order: int

    lists: StripLists = StripLists([], -1)
    complete: bool = False
    best_length: int | None = None
    _best_state: State | None = field(default=None, repr=False)

    def __post_init__(self) -> None:
        self._copies = self.counts.unpack(self.order)
        self._least = least_strips(self.shapes, self._copies)
        # up to which climb any plan has at least so many strips, from one strip on
        self._climbs_needed = [
            next(climb for least, climb in zip(reversed(self._least), reversed(self.duals.climbs)) if least > strips)
            for strips in range(self._least[0])
        ]
        self.worth = self.duals.worth(self._copies, self._least)
        pieces = [piece for piece, count in enumerate(self._copies) if count]
        self._turnable = any(len(heights) > 1 for heights in self.shapes.own_heights)
        self._by_demand = sorted(pieces, key=self._short_side if self._turnable else self._height, reverse=True)

    def _height(self, piece: int) -> tuple[int, int]:
        """What makes a piece demanding that lies one way only: its height, then its width."""
        return self.shapes.own_heights[piece][0]

    def _short_side(self, piece: int) -> tuple[int, int]:
        """What makes a piece demanding that may turn: its shorter side, then its longer one."""
        height, width = self.shapes.own_heights[piece][0]
        return min(height, width), max(height, width)

    def list_up(self, target: int, most: int) -> Iterator[None]:
        """Lists the strips that a plan of the target length can hold, at most about `most` of each height."""
        slack = max(0, target * self.duals.scale - self.worth)
        filled = self._filled = self.shapes.fill(self.duals.pieces, self._copies)
        listed: list[Listed] = []
        sure = guess = slack
        smallest = self.duals.scale // 8 + 1
        opened = {height for piece in self._by_demand for height, _ in self.shapes.own_heights[piece]}
        for height_class, height in enumerate(self.shapes.heights):
            if height not in opened:
                continue
            found, reach = self._list_class(height_class, filled[height_class], slack, guess, most)
            guess = max(smallest, 2 * reach)
            sure = min(sure, reach)
            cost = self.duals.costs[height_class]
            listed.extend([(cost - strip.worth, strip.packed, strip.could_add, height) for strip in found])
            yield
        listed.sort()
        self.lists = StripLists(listed, sure)

    def _list_class(
        self, height_class: int, filled: KnapsackTable, slack: int, guess: int, most: int
    ) -> tuple[list[Strip], int]:
        """The strips of one height, and up to which loss of height they are all there; looked for up to the guessed
        loss first."""
        cost = self.duals.costs[height_class]
        enough = min(slack, self.shapes.heights[height_class] * self.duals.scale)
        allowed = min(enough, guess)
        while True:
            least = cost - allowed
            found, sure = list_best_strips(self.shapes, self.counts, self._copies, height_class, filled, least, most)
            if sure > least:
                return found, cost - sure
            if allowed == enough:
                return found, slack
            if 3 * len(found) > most:
                return found, allowed
            allowed = min(enough, 2 * allowed)

    def run(self, target: int, beam_width: int, choices: int) -> Iterator[None]:
        """One pass for a target length, pausing often. Afterwards `best_length`, `strips` and `complete` tell what was
        found.

        Parameters:
            beam_width: how many states may be kept.
            choices: how many strips are tried from one state.
        """
        self.best_length = None
        slack = target * self.duals.scale - self.worth
        if slack < 0:
            self.complete = True
            return
        self._target, self._beam_width, self._choices = target, beam_width, choices
        self._all_listed = self.complete = slack <= self.lists.slack
        states: dict[int, State] = {self.order: (self.worth, 0, 0, None, None)}
        listed = self.lists.listed
        for piece in self._by_demand:
            mask = self.counts.field(piece)
            states = yield from self._place(piece, [strip for strip in listed if strip[1] & mask], states)
            listed = [strip for strip in listed if not strip[1] & mask]
            if not states:
                return

    def aim(self, target: int) -> None:
        """Makes a pass that goes on look for nothing longer than this."""
        self._target = min(self._target, target)

    def _place(
        self, piece: int, fitting: list[Listed], states: dict[int, State]
    ) -> Generator[None, None, dict[int, State]]:
        """Lays strips with a piece until none of it is left; returns the states that go on to other pieces."""
        mask = self.counts.field(piece)
        done: dict[int, State] = {}
        looked = 0
        while states:
            reached: dict[int, State] = {}
            for left, state in states.items():
                if not left & mask:
                    known = done.get(left)
                    if known is None or known[1] > state[1]:
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
        score, length, strips = state[0] + self._surplus(state[2], fitting), state[1], state[2] + 1
        allowed = self._target * self.duals.scale - score
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
            if known is None or known[1] > length + height:
                reached[after] = (score + lacking, length + height, strips, state, (height, packed))
        return tried

    def _surplus(self, strips: int, fitting: list[Listed]) -> int:
        """What a further strip costs more because there are as many as must be, when strips are laid from high to
        low."""
        if self._turnable or not fitting:
            return 0
        reached = self.duals.climbs[self.shapes.class_of[fitting[0][3]]]
        return max(0, reached - self._climbs_needed[strips]) if strips < len(self._climbs_needed) else reached

    def _make_strips(self, piece: int, left: int, state: State, reached: dict[int, State]) -> None:
        """Where hardly any listed strip fits: good strips around a piece, as high as the piece, from the pieces
        left."""
        shapes, unit = self.shapes, self.counts.unit(piece)
        copies = self.counts.unpack(left - unit)
        made = []
        for height, width in shapes.own_heights[piece]:
            height_class = shapes.class_of[height]
            space = shapes.width - width
            layers = layers_of(self._filled[height_class], copies, self.counts, space)
            found, _ = contents(layers, shapes.widths.floor, space, 0, MADE, looks=LOOKS)
            cost = self.duals.costs[height_class] - self.duals.pieces[piece]
            made.extend([(cost - worth, packed + unit, 0, height) for worth, packed, _ in found])
        made.sort()
        self._try_strips(made, left, state, reached)

    def _thinned(self, states: dict[int, State]) -> dict[int, State]:
        most = self._target * self.duals.scale
        kept = [(state[0], left) for left, state in states.items() if state[0] <= most]
        if len(kept) > self._beam_width:
            self.complete = False
            kept.sort()
            del kept[self._beam_width :]
        return {left: states[left] for _, left in kept}

    def strips(self) -> list[tuple[int, int]]:
        """The strips of the best plan found: pairs (height, packed pieces)."""
        laid = []
        state = self._best_state
        while state is not None and state[4] is not None:
            laid.append(state[4])
            state = state[3]
        return laid[::-1]
