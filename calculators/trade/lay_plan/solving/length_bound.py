"""The least length that any plan in strips needs: a bound by column generation.

Piece values are whole numbers in 1/scale units of length. They are dual feasible when no strip holds pieces worth more
than its height; then no plan is shorter than the worth of the whole order (`farley-1990` scales infeasible values
down). Good ones come in two ways: a few dozen subgradient steps, which start well but tire, then column generation,
smoothed: columns are priced at values drawn towards the best feasible ones (`wentges-1997`), which finishes. Strips met
on the way feed the programme.

Parts of strips are of no use to a maker: where the programme has fewer strips of some height than any plan
(least_strips), it
is asked for that many, and solved again with a value for each strip that is asked for (dual_values).
"""

from collections.abc import Iterator, Sequence
from itertools import accumulate, repeat
from math import fsum

from calculators.trade.lay_plan.solving.covering_program import Column, CoveringProgram
from calculators.trade.lay_plan.solving.dual_values import DualValues
from calculators.trade.lay_plan.solving.least_strips import least_strips
from calculators.trade.lay_plan.solving.strip_table import KnapsackTable, StripShapes

MANY_PIECES = 25
WARM_STEPS = 60
BATCH = 12
SMOOTHING = 0.8
ROWS_AT_A_TIME = 8


class LengthBound:
    """Bounds the length of cloth for the order in `shapes.copies`.

    After any step `duals` holds the best dual feasible values, and `bound` is the least length that is proven; `warm`
    tells when rough ones are good enough to guide a search while the programme is still to be solved.
    """

    def __init__(self, shapes: StripShapes):
        self.shapes = shapes
        self.ordered = shapes.copies
        self.scale = max(1, min(1 << 16, (1 << 29) // shapes.heights[-1]))
        self.least = least_strips(shapes, shapes.copies)
        self.rises = [high - low for low, high in zip([0, *shapes.heights], shapes.heights)]
        self.duals = DualValues(shapes, self.scale, [0] * len(self.ordered), [0] * len(shapes.heights))
        self.worth = 0  # of the whole order at the dual feasible values, in 1/scale units
        self._from_numbers = sum(rise * number for rise, number in zip(self.rises, self.least))
        self._counted: list[int] = []  # height classes with a row of their own in the programme
        self.strips: list[tuple[float, Column]] = []
        self.warm = False
        self._pool: dict[Column, None] = {}

    @property
    def bound(self) -> int:
        """No plan is shorter [units]."""
        return max(self._from_numbers, -(-self.worth // self.scale))

    def improving(self) -> Iterator[None]:
        """Improves values and bound step by step until the linear programme is solved."""
        if len(self.ordered) > MANY_PIECES:
            yield from self._warm_up()
            self.warm = True
        program = CoveringProgram(self.ordered, self._one_piece_strips())
        yield from self._price_out_pool(program)
        yield from self._generate_columns(program)
        self.strips = program.solution()
        while self._count_strips(program):
            yield from self._generate_columns(program)
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

    def _count_strips(self, program: CoveringProgram) -> bool:
        """Asks for the strips that any plan has and the programme lacks, where that matters most."""
        lacking = []
        for height_class, (height, least) in enumerate(zip(self.shapes.heights, self.least)):
            if height_class not in self._counted:
                short = least - program.strips_at_least(height)
                if short > 1e-6:
                    lacking.append((short, height_class))
        lacking.sort(reverse=True)
        for _, height_class in lacking[:ROWS_AT_A_TIME]:
            height = self.shapes.heights[height_class]
            if self.least[height_class] - program.strips_at_least(height) > 1e-6:
                self._counted.append(height_class)
                program.add_strip_row(height, self.least[height_class], self.rises[height_class])
        return bool(lacking)

    def _scaled_to_feasible(self, values: Sequence[int], steps: Sequence[int]) -> tuple[list[KnapsackTable], float]:
        """Fills strips at these values, keeps the values scaled to be dual feasible if they prove more, and tells the
        worst ratio of worth to height."""
        filled = self.shapes.fill(values)
        height, value = 1, 0
        for strip_height, climb, strip in zip(self.shapes.heights, accumulate(steps), filled):
            if (strip.value + climb) * height > value * strip_height:
                height, value = strip_height, strip.value + climb
        full = height * self.scale
        if value == 0:
            return filled, 0.0
        if value > full:
            values, steps = ([v * full // value for v in each] for each in (values, steps))
        duals = DualValues(self.shapes, self.scale, list(values), list(steps))
        worth = duals.worth(self.ordered, self.least)
        if worth > self.worth:
            self.worth, self.duals = worth, duals
        return filled, value / full

    def _warm_up(self) -> Iterator[None]:
        """Subgradient steps from area values: pieces that the strips worth most use too often become cheaper."""
        shapes, ordered = self.shapes, self.ordered
        values = [0] * len(ordered)
        for ways in shapes.ways_in:
            for way in ways:
                values[way.piece] = way.width * way.height * self.scale // shapes.width
        aim = sum(v * c for v, c in zip(values, ordered)) * 1.05
        no_steps = [0] * len(shapes.heights)
        step_factor, stalled = 1.0, 0
        best, best_values = 0.0, values
        for _ in range(WARM_STEPS):
            filled, ratio = self._scaled_to_feasible(values, no_steps)
            now = sum(v * c for v, c in zip(values, ordered)) / ratio
            stalled += 1
            if now > best:
                best, best_values, stalled = now, [int(v / ratio) for v in values], 0
            aim = max(aim, now * 1.03)
            best_columns = self._most_worth(filled, 0.98 * ratio)[:6]
            subgradient = [-float(count) for count in ordered]
            for height, content in best_columns:
                share = aim / (self.scale * height * len(best_columns))
                for piece, count in content:
                    subgradient[piece] += count * share
            step = step_factor * (aim - now) / (fsum(s * s for s in subgradient) or 1)
            values = [max(0, int(v / ratio - step * s)) for v, s in zip(values, subgradient)]
            if stalled >= 8:
                step_factor *= 0.7
                stalled = 0
                values = best_values
            yield

    def _most_worth(
        self, filled: list[KnapsackTable], least_ratio: float, steps: Sequence[int] | None = None
    ) -> list[Column]:
        """The strips whose worth is at least this part of their height, most worth for their height first; they join
        the pool."""
        lower = 0
        found = []
        for height, climb, strip in zip(self.shapes.heights, accumulate(steps) if steps else repeat(0), filled):
            worth = strip.value + climb
            if strip.value > lower and worth >= least_ratio * height * self.scale:
                found.append((worth / height, height, strip))
            lower = max(lower, strip.value)
        found.sort(key=lambda entry: -entry[0])
        columns = [(height, self.shapes.content(strip)) for _, height, strip in found[:BATCH]]
        self._pool.update(dict.fromkeys(columns))
        return columns

    def _price_out_pool(self, program: CoveringProgram) -> Iterator[None]:
        while program.enter_best(self._pool):
            yield

    def _generate_columns(self, program: CoveringProgram) -> Iterator[None]:
        smoothing = SMOOTHING if self.worth else 0.0
        misses = 0
        pieces = len(self.ordered)
        while True:
            program.enter_slacks()
            exact = [max(0, int(value * self.scale)) for value in program.values[:pieces]]
            exact_steps = [0] * len(self.shapes.heights)
            for height_class, value in zip(self._counted, program.values[pieces:]):
                exact_steps[height_class] = max(0, int(value * self.scale))
            values, steps = exact, exact_steps
            if smoothing:
                values, steps = (
                    [int(smoothing * best + (1 - smoothing) * now) for best, now in zip(*each)]
                    for each in ((self.duals.pieces, exact), (self.duals.steps, exact_steps))
                )
            filled, ratio = self._scaled_to_feasible(values, steps)
            yield
            total = DualValues(self.shapes, self.scale, exact, exact_steps).worth(self.ordered, self.least)
            if self.worth >= total * (1 - 1e-7) or (not smoothing and ratio < 1 + 1e-7):
                return
            if program.enter_best(self._most_worth(filled, 0.97, steps)):
                misses = 0
                smoothing = SMOOTHING
            elif smoothing:
                misses += 1
                smoothing = 0.0 if misses > 3 else max(0.0, smoothing - 0.3)
            else:
                return
