"""The best sections side by side when quantities bind only within a strip: strips in sections, sections across the
cloth.

One set of strip tables serves sections of every width; strips stack along the cloth for all widths at once, and a
knapsack
across the cloth sets sections side by side (recursion: `gilmore-gomory-1965`). With multipliers on the
pieces that is a bound for plans in three stages (see `multipliers`).
"""

from bisect import bisect_right
from collections.abc import Generator, Sequence
from dataclasses import dataclass, field
from operator import add
from typing import Any

from calculators.trade.lay_plan.solving.model import Task
from calculators.trade.lay_plan.solving.normal_patterns import NormalPatterns
from calculators.trade.lay_plan.solving.strip_table import Orientation, StripShapes
from calculators.trade.lay_plan.solving.width_tables import WidthTables, width_tables

PAUSE_EVERY = 8  # lengths of the table
PAUSE_EVERY_WIDTHS = 400


@dataclass(frozen=True, slots=True)
class TableEntry:
    """One piece entered into the table of a strip height: the table before it, and how it was entered."""

    before: Any
    way: Orientation
    copies: int
    value: int


@dataclass
class Sections:
    """The tables for pieces of given worth.

    strips: the strip table of each height class, with its entries in `entries`; stacks: the best stack of strips for
    each length; section:
    the best section of each width index; beside: the best sections side by side in it.
    """

    tables: WidthTables
    strips: list[Any]
    entries: list[list[TableEntry]]
    stacks: list[Any]
    section: Sequence[int]
    beside: list[int]
    _listed: dict[tuple[str, int], Sequence[int]] = field(default_factory=dict)

    def strip(self, height_class: int) -> Sequence[int]:
        """The best strip of a height class, for each width index."""
        return self._list("strip", height_class, self.strips)

    def stack(self, length: int) -> Sequence[int]:
        """The best stack within a length index, for each width index."""
        return self._list("stack", length, self.stacks)

    def _list(self, name: str, number: int, tables: list[Any]) -> Sequence[int]:
        known = self._listed.get((name, number))
        if known is None:
            known = self._listed[name, number] = self.tables.listed(tables[number])
        return known


class SectionTables:
    """The strips, lengths and widths of a task whose sections lie side by side; it has a way for at least one piece."""

    def __init__(self, task: Task, ways: Sequence[Orientation]):
        self.task = task
        length = task.fixed_length
        copies = [task.quantity(number) for number in range(len(task.pieces))]
        self.shapes = StripShapes(task.width, ways, copies)
        self.heights = self.shapes.heights
        self.widths = self.shapes.positions
        # Strips are always stacked from the end of the cloth, so that only lengths some rest of it can use matter.
        self.lengths = NormalPatterns([(height, length // height) for height in self.heights], length).reduced()
        # Of several strips in a stack, one is not higher than half of it.
        self.fitting = [bisect_right(self.heights, point) for point in self.lengths.points]
        self.rests = [
            [self.lengths.floor[point - h] for h in self.heights if 2 * h <= point] for point in self.lengths.points
        ]
        self._dense = len(self.widths.points) == task.width + 1

    def beside_smallest(self, beside: Sequence[int], section: Sequence[int], index: int) -> list[int]:
        """The values of a width with a section of index 1, 2, … cut off it, up to half of it."""
        return list(map(add, section[1:], map(beside.__getitem__, self.rests_beside(index))))

    def rests_beside(self, index: int) -> Sequence[int]:
        """What is left of a width beside a section of index 1, 2, … up to half of it."""
        points, floor = self.widths.points, self.widths.floor
        if self._dense:
            return range(index - 1, index - 1 - index // 2, -1)
        point = points[index]
        return [floor[point - part] for part in points[1 : bisect_right(points, point // 2)]]

    def made(self, worth: Sequence[int]) -> Generator[None, None, Sections]:
        """The tables for pieces of this worth, with pauses."""
        cells = self.task.width * self.task.fixed_length
        most = max(cells * worth[way.piece] // (way.width * way.height) for way in self.shapes.ways)
        tables = width_tables(self.widths, most)
        strips, entries = self._strips(tables, worth)
        yield
        useful = []
        below = None
        for _, strip in zip(self.heights, strips):
            useful.append(strip is not below and strip != below)
            below = strip
        stacks = [tables.nothing]
        for fitting, rests in zip(self.fitting[1:], self.rests[1:]):
            options = [tables.sum(stacks[rest], strip) for rest, strip, use in zip(rests, strips, useful) if use]
            stacks.append(tables.largest([stacks[-1], strips[fitting - 1], *options]))
            if len(stacks) % PAUSE_EVERY == 0:
                yield
        section = tables.listed(stacks[-1])
        beside: list[int] = [0]
        for index in range(1, len(self.widths.points)):
            best = max(section[index], beside[-1])
            beside.append(max([best, *self.beside_smallest(beside, section, index)]))
            if index % PAUSE_EVERY_WIDTHS == 0:
                yield
        return Sections(tables, strips, entries, stacks, section, beside)

    def _strips(self, tables: WidthTables, worth: Sequence[int]) -> tuple[list[Any], list[list[TableEntry]]]:
        strips: list[Any] = []
        entries: list[list[TableEntry]] = []
        for height_class in range(len(self.heights)):
            ways = self.shapes.ways_in[height_class]
            known = entries[-1] if entries else []
            same = 0
            while same < min(len(known), len(ways)) and known[same].way == ways[same]:
                same += 1
            table = known[same].before if same < len(known) else strips[-1] if strips else tables.nothing
            made = known[:same]
            for way in ways[same:]:
                copies = min(self.shapes.copies[way.piece], self.task.width // way.width)
                made.append(TableEntry(table, way, copies, worth[way.piece]))
                table = tables.with_item(table, way.width, worth[way.piece], copies)
            strips.append(table)
            entries.append(made)
        return strips, entries

    def content(self, sections: Sections, height_class: int, index: int) -> list[tuple[int, int]]:
        """The pieces of the best strip of a height class and a width index: pairs (piece, copies)."""
        points, floor = self.widths.points, self.widths.floor
        value = sections.strip(height_class)[index]
        pieces = []
        for entry in reversed(sections.entries[height_class]):
            if value == 0:
                break
            before = sections.tables.listed(entry.before)
            count, space = 0, points[index]
            while before[floor[space]] + count * entry.value != value:
                count += 1
                space -= entry.way.width
            if count:
                pieces.append((entry.way.piece, count))
                index = floor[space]
                value = before[index]
        return pieces

    def used(self, sections: Sections) -> list[int]:
        """How often the best plan uses each piece."""
        used = [0] * len(self.task.pieces)
        for index in self._chosen(sections):
            for height_class in self._stacked(sections, index):
                for piece, count in self.content(sections, height_class, index):
                    used[piece] += count
        return used

    def _chosen(self, sections: Sections) -> list[int]:
        """The width indices of the best sections side by side."""
        found = []
        index = self.widths.last
        beside = sections.beside
        while beside[index]:
            while beside[index - 1] == beside[index]:
                index -= 1
            if sections.section[index] == beside[index]:
                found.append(index)
                break
            part = self.beside_smallest(beside, sections.section, index).index(beside[index])
            found.append(part + 1)
            index = self.rests_beside(index)[part]
        return found

    def _stacked(self, sections: Sections, index: int) -> list[int]:
        """The height classes of the strips in the best section of a width."""
        classes = []
        at = self.lengths.last
        while value := sections.stack(at)[index]:
            while sections.stack(at - 1)[index] == value:
                at -= 1
            if sections.strip(self.fitting[at] - 1)[index] == value:
                classes.append(self.fitting[at] - 1)
                break
            for height_class, rest in enumerate(self.rests[at]):
                if sections.stack(rest)[index] + sections.strip(height_class)[index] == value:
                    classes.append(height_class)
                    at = rest
                    break
        return classes
