"""Knapsacks along a strip: what is the best content of a strip of each height?

A strip is a part of the cloth between two cuts across the whole width; it is as high as its highest piece. Pieces enter one
knapsack table in order of height, so a single pass serves every strip height (Gilmore and Gomory 1965; from memory).

A piece that may turn has a low and a high way to lie. In a strip high enough for both, the high way is the narrower one and
so never worse; a strip table therefore gives every piece exactly one way to lie a strip height. The low way then counts only
in a range of strip heights, and the tables are made by halving the range of heights (each item enters at the widest
sub-ranges that it covers whole), which keeps every table exact at a few times the cost of one pass.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from calculators.layplan.positions import Positions, Table


@dataclass(frozen=True, slots=True)
class Way:
    """One way for a piece to lie in a strip: `width` along the strip, `height` across it."""

    piece: int
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class Layer:
    """One piece entered into a table: the table before it, and how it was entered."""

    before: Table
    width: int
    copies: int
    value: int
    piece: int
    below: "Layer | None"


@dataclass(frozen=True, slots=True)
class Filled:
    """The finished table of one strip height, with the layers that made it."""

    table: Table
    top: Layer | None

    @property
    def value(self) -> int:
        """Best value of a whole strip."""
        return self.table[-1]


class StripShapes:
    """The strip heights of a task and which way each piece lies in each of them.

    Parameters:
        width: width of the cloth, the length of each strip.
        ways: every way in which a piece fits.
        copies: for each piece the most copies in all.
    """

    def __init__(self, width: int, ways: Sequence[Way], copies: Sequence[int]):
        self.width = width
        self.ways = list(ways)
        self.copies = list(copies)
        self.heights = sorted({way.height for way in ways})
        self.class_of = {height: index for index, height in enumerate(self.heights)}
        self.positions = Positions([(way.width, copies[way.piece]) for way in ways], width)
        self.lowest = _lowest_heights(ways, len(copies))
        self.own_heights = [[(w.height, w.width) for w in ways if w.piece == piece] for piece in range(len(copies))]
        self._spans = self._spans_of(ways)
        self._one_span_each = all(last == len(self.heights) - 1 for _, _, last in self._spans)

    def _spans_of(self, ways: Sequence[Way]) -> list[tuple[Way, int, int]]:
        """Each way with its first and last strip height class, low ways ending where the narrower high way begins."""
        top = len(self.heights) - 1
        spans = []
        by_piece: dict[int, list[Way]] = {}
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
    def ways_in(self) -> list[list[Way]]:
        """For each height class the ways used in its strips, in order of height; the ones as high as the strip come last."""
        return [
            [way for way, first, last in self._spans if first <= height_class <= last]
            for height_class in range(len(self.heights))
        ]

    def fill_class(self, height_class: int, values: Sequence[int], copies: Sequence[int]) -> Filled:
        """The best strip of one height class."""
        filled = Filled(self.positions.empty_table(), None)
        for way in self.ways_in[height_class]:
            most = min(copies[way.piece], self.width // way.width)
            if most > 0:
                filled = self._entered(filled, Layer([], way.width, most, values[way.piece], way.piece, None))
        return filled

    def fill(self, values: Sequence[int], copies: Sequence[int] | None = None) -> list[Filled]:
        """The best strip of every height class for these whole-number piece values, none below 0."""
        copies = self.copies if copies is None else copies
        items = [
            (Layer([], way.width, min(copies[way.piece], self.width // way.width), values[way.piece], way.piece, None), a, b)
            for way, a, b in self._spans
            if copies[way.piece] > 0
        ]
        start = Filled(self.positions.empty_table(), None)
        if self._one_span_each:
            return self._fill_in_order(items, start)
        filled: list[Filled] = []
        self._fill_by_halves(items, start, 0, len(self.heights) - 1, filled)
        return filled

    def _fill_in_order(self, items, start: Filled) -> list[Filled]:
        filled = []
        current = start
        following = 0
        for height_class in range(len(self.heights)):
            while following < len(items) and items[following][1] <= height_class:
                current = self._entered(current, items[following][0])
                following += 1
            filled.append(current)
        return filled

    def _fill_by_halves(self, items, current: Filled, first: int, last: int, filled: list[Filled]) -> None:
        rest = []
        for item in items:
            if item[1] <= first and item[2] >= last:
                current = self._entered(current, item[0])
            else:
                rest.append(item)
        if first == last:
            filled.append(current)
            return
        middle = (first + last) // 2
        self._fill_by_halves([item for item in rest if item[1] <= middle], current, first, middle, filled)
        self._fill_by_halves([item for item in rest if item[2] > middle], current, middle + 1, last, filled)

    def _entered(self, current: Filled, item: Layer) -> Filled:
        layer = Layer(current.table, item.width, item.copies, item.value, item.piece, current.top)
        if item.value == 0:
            return Filled(current.table, layer)
        return Filled(self.positions.with_item(current.table, item.width, item.value, item.copies), layer)

    def content(self, filled: Filled, width: int | None = None) -> tuple[tuple[int, int], ...]:
        """The pieces of the best strip (or of the best part of it `width` wide): pairs (piece, copies)."""
        points, floor = self.positions.points, self.positions.floor
        index = self.positions.last if width is None else floor[width]
        value = filled.table[index]
        layer = filled.top
        pieces = []
        while layer is not None and value > 0:
            count = 0
            space = points[index]
            while layer.before[floor[space]] + count * layer.value != value:
                count += 1
                space -= layer.width
            if count:
                pieces.append((layer.piece, count))
                index = floor[space]
                value = layer.before[index]
            layer = layer.below
        return tuple(pieces)


def _lowest_heights(ways: Sequence[Way], pieces: int) -> list[int]:
    lowest = [0] * pieces
    for way in ways:
        known = lowest[way.piece]
        lowest[way.piece] = min(known, way.height) if known else way.height
    return lowest
