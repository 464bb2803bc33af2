"""The linear programme behind the shortest length: cover the order with strips of least total height.

    minimise   sum of height(s) * x(s)   over strips s
    such that  sum of count(s, p) * x(s) >= ordered(p)   for every piece p,   x >= 0
    and        sum of x(s) over strips at least h high >= number(h)   for some heights h, added one by one,

solved by the revised simplex method (`dantzig-1951`) with an explicit inverse of the basis, which suits the few dozen
rows here. Columns
are brought in from outside as they are found (`gilmore-gomory-1961`). Floating point is good enough:
bounds
are taken from whole-number values elsewhere, never from here. Sums are `fsum`: Pythons differ in how `sum` rounds, and
with it they would find different plans.
"""

from collections.abc import Iterable, Sequence
from math import fsum
from operator import itemgetter

Column = tuple[int, tuple[tuple[int, int], ...]]  # height, pieces as pairs (piece, count)

TINY = 1e-9
WORTHWHILE = 1e-7  # of its height must bringing in a strip save
AT_A_TIME = 12
NEARLY = 0.8  # of what a column promised; one of much less use by now would soon leave again
NOISE = 1e-11  # of rounding
NUDGE = 0.01  # spread over the right-hand sides so that pivots seldom tie


class CoveringProgram:
    """The programme restricted to the columns brought in so far. Rows are the pieces, then the strip numbers asked for.

    Parameters:
        ordered: copies of each piece.
        start: for each piece one column with that piece alone.

    values: what one more copy of a piece, or one more strip asked for, would cost [units of height].
    """

    def __init__(self, ordered: Sequence[int], start: Sequence[Column]):
        size = len(ordered)
        self.pieces = size
        self.levels: list[tuple[int, int]] = []
        self.basis: list[Column | None] = list(start)
        self.inverse = [[0.0] * size for _ in range(size)]
        self.amounts = [0.0] * size
        self.values = [0.0] * size
        for piece, (height, content) in enumerate(start):
            count = content[0][1]
            self.inverse[piece][piece] = 1 / count
            self.amounts[piece] = (ordered[piece] + NUDGE * (piece * 7919 % 101) / 101) / count
            self.values[piece] = height / count

    def add_strip_row(self, height: int, number: int, dearer: int) -> None:
        """Adds a row: at least `number` strips at least so high, of which the programme so far has fewer.

        dearer: what raising the next lower strip to this height costs; the row begins with raised strips.
        """
        self.levels.append((height, dearer))
        had = [row for row, column in enumerate(self.basis) if column and column[0] >= height]
        line = (
            [-fsum(entries) for entries in zip(*(self.inverse[row] for row in had))]
            if had
            else [0.0] * len(self.values)
        )
        for other in self.inverse:
            other.append(0.0)
        self.inverse.append([*line, 1.0])
        self.amounts.append(max(0.0, number - fsum(self.amounts[row] for row in had)))
        self.values = [value + dearer * entry for value, entry in zip(self.values, line)] + [float(dearer)]
        self.basis.append(None)

    def strips_at_least(self, height: int) -> float:
        """How many strips at least so high the programme has now [strips].

        Source: derived, the amounts in the basis added up.
        """
        return fsum(amount for amount, column in zip(self.amounts, self.basis) if column and column[0] >= height)

    def _rows(self, column: Column) -> Sequence[tuple[int, int]]:
        if not self.levels:
            return column[1]
        return [
            *column[1],
            *((self.pieces + number, 1) for number, (height, _) in enumerate(self.levels) if height <= column[0]),
        ]

    def reduced_height(self, column: Column) -> float:
        """Height of a strip less the worth of its pieces [units]: below 0 when bringing it in shortens the total.

        Source: gilmore-gomory-1961, the reduced cost of a column.
        """
        values = self.values
        return column[0] - fsum([values[row] * count for row, count in self._rows(column)])

    def enter_best(self, columns: Iterable[Column]) -> int:
        """Lets those of the columns enter the basis that promise most, as long as they still do; returns how many
        did."""
        promising = sorted(
            [
                (promise, column)
                for column in columns
                if (promise := self.reduced_height(column) / column[0]) < -WORTHWHILE
            ]
        )
        entered = 0
        for promise, column in promising[:AT_A_TIME]:
            reduced = self.reduced_height(column)
            if reduced < NEARLY * promise * column[0]:
                entered += self._pivot(self._rows(column), reduced, column)
        return entered

    def enter_slacks(self) -> None:
        """Lets more be cut than is asked for wherever a value has become negative, and strips be raised where one is
        too high."""
        for row in sorted(range(len(self.values)), key=self.values.__getitem__)[:10]:
            if self.values[row] < -TINY:
                self._pivot(((row, -1),), self.values[row], None)
        for number, (_, dearer) in enumerate(self.levels):
            row = self.pieces + number
            if self.values[row] > dearer + TINY:
                self._pivot(((row, 1),), dearer - self.values[row], None)

    def _pivot(self, content: Sequence[tuple[int, int]], reduced: float, column: Column | None) -> bool:
        if reduced > -TINY:
            return False
        inverse, amounts = self.inverse, self.amounts
        if len(content) == 1:
            row, count = content[0]
            change = [line[row] * count for line in inverse]
        else:
            entries = itemgetter(*[row for row, count in content for _ in range(count)])
            change = [fsum(entries(line)) for line in inverse]
        leaving, least = -1, float("inf")
        for row, amount in enumerate(change):
            if amount > TINY:
                ratio = amounts[row] / amount
                if ratio < least - 1e-12 or (ratio < least + 1e-12 and amount > change[leaving]):
                    least, leaving = ratio, row
        if leaving < 0:
            return False
        pivot = change[leaving]
        line = inverse[leaving] = [entry / pivot if entry else 0.0 for entry in inverse[leaving]]
        self._clear(change, leaving, line, amounts[leaving] / pivot)
        self.values = [value + reduced * entry for value, entry in zip(self.values, line)]
        self.basis[leaving] = column
        return True

    def _clear(self, change: list[float], leaving: int, line: list[float], amount: float) -> None:
        """Clears the entering column from all other rows."""
        inverse, amounts = self.inverse, self.amounts
        filled = [(place, entry) for place, entry in enumerate(line) if entry]
        sparse = len(filled) * 3 < len(line)
        for row, factor in enumerate(change):
            if row == leaving or -NOISE < factor < NOISE:
                continue
            if sparse:
                other = inverse[row]
                for place, entry in filled:
                    other[place] -= factor * entry
            else:
                inverse[row] = [old - factor * entry for old, entry in zip(inverse[row], line)]
            amounts[row] = max(0.0, amounts[row] - factor * amount)
        amounts[leaving] = amount

    def solution(self) -> list[tuple[float, Column]]:
        """The strips in use: pairs (how often [strips], column).

        Source: derived, the columns of the basis that are used at all.
        """
        return [(amount, column) for amount, column in zip(self.amounts, self.basis) if column and amount > TINY]
