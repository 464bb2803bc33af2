"""The least length that any plan in strips needs: a bound by column generation.

Piece values are whole numbers in 1/scale units of length. They are fair when no strip holds pieces worth more than its height;
then no plan is shorter than the worth of the whole order (Farley 1990 scales unfair values down; from memory). Good fair
values come in two ways: a few dozen subgradient steps, which start well but tire, then the linear programme with pricing at
values drawn towards the best fair ones (Wentges 1997; from memory), which finishes. Strips met on the way feed the programme.
"""

from collections.abc import Iterator, Sequence

from calculators.layplan.covering_program import Column, CoveringProgram
from calculators.layplan.strip_table import Filled, StripShapes

MANY_PIECES = 45
WARM_STEPS = 60
BATCH = 25
PULL = 0.7


class LengthBound:
    """Bounds the length of cloth for the order in `shapes.copies`.

    After any step `values` are fair whole-number values, and `bound` is the least length they prove; `warm` tells when
    rough ones are good enough to guide a search while the programme is still to be solved.
    """

    def __init__(self, shapes: StripShapes):
        self.shapes = shapes
        self.ordered = shapes.copies
        self.scale = max(1, min(1 << 16, (1 << 29) // shapes.heights[-1]))
        self.values: list[int] = [0] * len(self.ordered)
        self.worth = 0  # of the whole order, in 1/scale units
        self.strips: list[tuple[float, Column]] = []
        self.warm = False
        self._pool: dict[Column, None] = {}

    @property
    def bound(self) -> int:
        """No plan is shorter [units]."""
        return -(-self.worth // self.scale)

    def improving(self) -> Iterator[None]:
        """Improves values and bound step by step until the linear programme is solved."""
        if len(self.ordered) > MANY_PIECES:
            yield from self._warm_up()
            self.warm = True
        program = CoveringProgram(self.ordered, self._one_piece_strips())
        yield from self._price_pool(program)
        yield from self._generate(program)
        self.strips = program.solution()

    def _one_piece_strips(self) -> list[Column]:
        best: dict[int, tuple[float, Column]] = {}
        for height, ways in zip(self.shapes.heights, self.shapes.ways_in):
            for way in ways:
                count = min(self.shapes.width // way.width, self.ordered[way.piece])
                column = (height / count, (height, ((way.piece, count),)))
                if way.piece not in best or column[0] < best[way.piece][0]:
                    best[way.piece] = column
        return [best[piece][1] for piece in range(len(self.ordered))]

    def _fair(self, values: Sequence[int]) -> tuple[list[Filled], float]:
        """Fills strips at these values, keeps the values scaled to be fair if they prove more, and tells the worst ratio of
        worth to height."""
        filled = self.shapes.fill(values)
        height, value = 1, 0
        for strip_height, strip in zip(self.shapes.heights, filled):
            if strip.value * height > value * strip_height:
                height, value = strip_height, strip.value
        full = height * self.scale
        if value == 0:
            return filled, 0.0
        fair = list(values) if value <= full else [v * full // value for v in values]
        worth = sum(v * c for v, c in zip(fair, self.ordered))
        if worth > self.worth:
            self.worth, self.values = worth, fair
        return filled, value / full

    def _warm_up(self) -> Iterator[None]:
        """Subgradient steps from area values: pieces that the most crowded strips use too often become cheaper."""
        shapes, ordered = self.shapes, self.ordered
        values = [0] * len(ordered)
        for ways in shapes.ways_in:
            for way in ways:
                values[way.piece] = way.width * way.height * self.scale // shapes.width
        aim = sum(v * c for v, c in zip(values, ordered)) * 1.05
        pace, stalled = 1.0, 0
        for _ in range(WARM_STEPS):
            before = self.worth
            filled, ratio = self._fair(values)
            now = sum(v * c for v, c in zip(values, ordered)) / ratio
            stalled = 0 if self.worth > before else stalled + 1
            aim = max(aim, now * 1.03)
            crowded = self._crowded(filled, 0.98 * ratio)[:6]
            slope = [-float(count) for count in ordered]
            for height, content in crowded:
                share = aim / (self.scale * height * len(crowded))
                for piece, count in content:
                    slope[piece] += count * share
            step = pace * (aim - now) / (sum(s * s for s in slope) or 1)
            values = [max(0, int(v / ratio - step * s)) for v, s in zip(values, slope)]
            if stalled >= 8:
                pace *= 0.7
                stalled = 0
                values = list(self.values)
            yield

    def _crowded(self, filled: list[Filled], least_ratio: float) -> list[Column]:
        """The strips whose worth is at least this part of their height, most crowded first; they join the pool."""
        lower = 0
        found = []
        for height, strip in zip(self.shapes.heights, filled):
            if strip.value > lower and strip.value >= least_ratio * height * self.scale:
                found.append((strip.value / height, height, strip))
            lower = max(lower, strip.value)
        found.sort(key=lambda entry: -entry[0])
        columns = [(height, self.shapes.content(strip)) for _, height, strip in found[:BATCH]]
        self._pool.update(dict.fromkeys(columns))
        return columns

    def _price_pool(self, program: CoveringProgram) -> Iterator[None]:
        while True:
            useful = sorted((program.reduced_height(column) / column[0], column) for column in self._pool)
            if not any([program.bring_in(column) for reduced, column in useful[:8] if reduced < -1e-7]):
                return
            yield

    def _generate(self, program: CoveringProgram) -> Iterator[None]:
        pull = PULL if self.worth else 0.0
        misses = 0
        while True:
            program.drop_surplus()
            exact = [max(0, int(value * self.scale)) for value in program.values]
            values = exact
            if pull:
                values = [int(pull * best + (1 - pull) * now) for best, now in zip(self.values, exact)]
            filled, ratio = self._fair(values)
            yield
            total = sum(v * c for v, c in zip(exact, self.ordered))
            if self.worth >= total * (1 - 1e-7) or (not pull and ratio < 1 + 1e-7):
                return
            entered = [program.bring_in(column) for column in self._crowded(filled, 0.97)]
            if any(entered):
                misses = 0
                pull = PULL
            elif pull:
                misses += 1
                pull = 0.0 if misses > 3 else max(0.0, pull - 0.3)
            else:
                return
