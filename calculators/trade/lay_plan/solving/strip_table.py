"""Knapsacks along a strip: what is the best content of a strip of each height?

A strip is a part of the cloth between two cuts across the whole width; it is as high as its highest piece. Pieces enter
one
knapsack table in order of height, so a single pass serves every strip height (`gilmore-gomory-1965`).

A piece that may turn has a low and a high way to lie. In a strip high enough for both, the high way is the narrower one
and
so never worse; a strip table therefore gives every piece exactly one way to lie a strip height. The low way then counts
only
in a range of strip heights, and the tables are made by halving the range of heights (each item enters at the widest
sub-ranges that it covers whole), which keeps every table exact at a few times the cost of one pass.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from calculators.trade.lay_plan.solving.normal_patterns import NormalPatterns
from calculators.trade.lay_plan.solving.width_tables import WidthTables, fields_serve, width_tables

# What entered a table: the table before, width of a copy, most copies, value of a copy, piece.
Entry = tuple[Sequence[int], int, int, int, int]
# The piece, its width, most copies, value of a copy.
Entered = tuple[int, int, int, int]
# What may enter, with the first and the last height class whose tables it enters.
Item = tuple[Entered, int, int]
# A way with the first and the last height class in whose strips it is used.
Span = tuple["Orientation", int, int]


LIMITS = ((1 << 31) - 1, (1 << 62) - 1, 1 << 512)


@dataclass(frozen=True, slots=True)
class Orientation:
    """One way for a piece to lie in a strip: `width` along the strip, `height` across it."""

    piece: int
    width: int
    height: int


class KnapsackTable:
    """A table over widths with the last piece that entered it, and the table before that.

    entered: the piece that entered last, how wide a copy is, how many may be used, and what each is worth.
    below: the table before; None where nothing has entered yet.
    """

    __slots__ = ("_tables", "_kept", "_table", "_entries", "below", "entered")

    def __init__(
        self, tables: WidthTables, kept: Any, below: "KnapsackTable | None" = None, entered: Entered = (-1, 0, 0, 0)
    ):
        self._tables, self._kept, self.below, self.entered = tables, kept, below, entered
        self._table: Sequence[int] | None = None
        self._entries: list[Entry] | None = None

    def with_piece(self, entered: Entered) -> "KnapsackTable":
        """The table after some copies of a piece may be used."""
        tables, kept = self._tables, self._kept
        _, width, copies, gain = entered
        return KnapsackTable(tables, tables.with_item(kept, width, gain, copies) if gain else kept, self, entered)

    @property
    def value(self) -> int:
        """Best value of a whole strip."""
        return self._tables.whole(self._kept)

    @property
    def table(self) -> Sequence[int]:
        """The best values at the widths that tables know (StripShapes.widths)."""
        if self._table is None:
            below = self.below
            same = below is not None and below._kept is self._kept
            self._table = below.table if below and same else self._tables.listed(self._kept)
        return self._table

    @property
    def entries(self) -> list[Entry]:
        """What entered, last first, each with the table before it."""
        if self._entries is None:
            self._entries = list(self.last_first())
        return self._entries

    def last_first(self) -> Iterator[Entry]:
        """What entered, last first, each with the table before it, which is made only once it is come to."""
        at = self
        while at.below is not None:
            piece, width, copies, gain = at.entered
            yield at.below.table, width, copies, gain, piece
            at = at.below


class StripShapes:
    """The strip heights of a task and which way each piece lies in each of them.

    Parameters:
        width: width of the cloth, the length of each strip.
        ways: every way in which a piece fits.
        copies: for each piece the most copies in all.
    """

    def __init__(self, width: int, ways: Sequence[Orientation], copies: Sequence[int]):
        self.width = width
        self.ways = list(ways)
        self.copies = list(copies)
        self.heights = sorted({way.height for way in ways})
        self.class_of = {height: index for index, height in enumerate(self.heights)}
        self.positions = NormalPatterns([(way.width, copies[way.piece]) for way in ways], width)
        self.lowest = _lowest_heights(ways, len(copies))
        self.own_heights = [[(w.height, w.width) for w in ways if w.piece == piece] for piece in range(len(copies))]
        self._spans = self._spans_of(ways)
        self._one_span_each = all(last == len(self.heights) - 1 for _, _, last in self._spans)

    def _spans_of(self, ways: Sequence[Orientation]) -> list[Span]:
        """Each way with its first and last strip height class, low ways ending where the narrower high way begins."""
        top = len(self.heights) - 1
        spans = []
        by_piece: dict[int, list[Orientation]] = {}
        for way in ways:
            by_piece.setdefault(way.piece, []).append(way)
        for found in by_piece.values():
            found.sort(key=lambda way: way.height)
            for way, following in zip(found, [*found[1:], None]):
                end = top if following is None else self.class_of[following.height] - 1
                spans.append((way, self.class_of[way.height], end))
        spans.sort(key=lambda span: (span[0].height, span[0].width))
        return spans

    @cached_property
    def ways_in(self) -> list[list[Orientation]]:
        """For each height class the ways used in its strips, in order of height; the ones as high as the strip come
        last."""
        return [
            [way for way, first, last in self._spans if first <= height_class <= last]
            for height_class in range(len(self.heights))
        ]

    @cached_property
    def widths(self) -> NormalPatterns:
        """The widths that strip tables know: every single one where they are kept all at once, else those pieces can
        reach."""
        return NormalPatterns([(1, self.width)], self.width) if fields_serve(self.positions) else self.positions

    def _nothing(self, values: Sequence[int]) -> KnapsackTable:
        """An empty table for pieces of these values."""
        most = max(self.width * values[way.piece] // way.width for way in self.ways)
        for limit, tables in self._tables:
            if most <= limit:
                return KnapsackTable(tables, tables.nothing)
        raise ValueError("Values too large for a table.")

    @cached_property
    def _tables(self) -> list[tuple[int, WidthTables]]:
        """Kinds of tables with the largest values that they hold, the quickest first."""
        return [(limit, width_tables(self.widths, limit)) for limit in LIMITS]

    def fill_class(self, height_class: int, values: Sequence[int], copies: Sequence[int]) -> KnapsackTable:
        """The best strip of one height class."""
        filled = self._nothing(values)
        for way in self.ways_in[height_class]:
            most = min(copies[way.piece], self.width // way.width)
            if most > 0:
                filled = filled.with_piece((way.piece, way.width, most, values[way.piece]))
        return filled

    def fill(self, values: Sequence[int], copies: Sequence[int] | None = None) -> list[KnapsackTable]:
        """The best strip of every height class for these whole-number piece values, none below 0."""
        copies = self.copies if copies is None else copies
        items = [
            ((way.piece, way.width, min(copies[way.piece], self.width // way.width), values[way.piece]), first, last)
            for way, first, last in self._spans
            if copies[way.piece] > 0
        ]
        filled: list[KnapsackTable] = []
        if self._one_span_each:
            self._fill_in_order(items, self._nothing(values), filled)
        else:
            self._fill_by_halves(items, self._nothing(values), 0, len(self.heights) - 1, filled)
        return filled

    def _fill_in_order(self, items: Sequence[Item], current: KnapsackTable, filled: list[KnapsackTable]) -> None:
        for item, first, _ in items:
            filled.extend([current] * (first - len(filled)))
            current = current.with_piece(item)
        filled.extend([current] * (len(self.heights) - len(filled)))

    def _fill_by_halves(
        self, items: Sequence[Item], current: KnapsackTable, first: int, last: int, filled: list[KnapsackTable]
    ) -> None:
        rest = []
        for item in items:
            if item[1] <= first and item[2] >= last:
                current = current.with_piece(item[0])
            else:
                rest.append(item)
        if not rest:
            filled.extend([current] * (last - first + 1))
            return
        middle = (first + last) // 2
        self._fill_by_halves([item for item in rest if item[1] <= middle], current, first, middle, filled)
        self._fill_by_halves([item for item in rest if item[2] > middle], current, middle + 1, last, filled)

    def content(self, filled: KnapsackTable, width: int | None = None) -> tuple[tuple[int, int], ...]:
        """The pieces of the best strip (or of the best part of it `width` wide): pairs (piece, copies)."""
        points, floor = self.widths.points, self.widths.floor
        index = self.widths.last if width is None else floor[width]
        value = filled.table[index]
        pieces = []
        for before, across, _, gain, piece in filled.last_first() if value else ():
            if before[index] == value:
                continue
            count, space = 1, points[index] - across
            while before[floor[space]] + count * gain != value:
                count += 1
                space -= across
            pieces.append((piece, count))
            index = floor[space]
            value = before[index]
            if not value:
                break
        return tuple(pieces)


def _lowest_heights(ways: Sequence[Orientation], pieces: int) -> list[int]:
    lowest = [0] * pieces
    for way in ways:
        known = lowest[way.piece]
        lowest[way.piece] = min(known, way.height) if known else way.height
    return lowest
