"""Plans with limited quantities in three stages, from the section tables at good multipliers (see `constrained_pass`).

A cell is (SIDE, width index), (STACK, width index, length index) or (STRIP, width index, height class).
"""

from collections.abc import Iterator, Sequence
from operator import itemgetter

from calculators.trade.lay_plan.solving.constrained_pass import BeamWidth, ConstrainedPass, Content, Cut
from calculators.trade.lay_plan.solving.counts import PackedCounts
from calculators.trade.lay_plan.solving.plan import Part, row_of_parts, stacked_strips
from calculators.trade.lay_plan.solving.section_tables import Sections, SectionTables

Cell = tuple[int, ...]
Layer = tuple[Sequence[int], int, int, int, int]  # the table before a piece, its width, most copies, value, unit
Strip = tuple[int, tuple[tuple[int, int], ...]]  # height, pieces
SIDE, STACK, STRIP = 0, 1, 2
MANY_WIDTHS = 1_500


class SectionRecursion(ConstrainedPass[Cell]):
    """One pass for a target.

    Parameters:
        tables, sections: the recursion without quantities, and what it gives.
        least, counts, beam_width: see `ConstrainedPass`.
    """

    def __init__(
        self, tables: SectionTables, sections: Sections, least: int, counts: PackedCounts, beam_width: BeamWidth
    ):
        super().__init__((SIDE, tables.widths.last), least, counts, beam_width)
        self.tables, self.sections = tables, sections
        self.top = tables.lengths.last
        self.pause_every = 1 + 15 // (1 + tables.widths.last // MANY_WIDTHS)
        self._columns: dict[int, tuple[list[int], list[int]]] = {}
        self._entries: dict[int, tuple[list[Layer], list[int]]] = {}

    def most(self, cell: Cell) -> int:
        if cell[0] == SIDE:
            return self.sections.beside[cell[1]]
        return self._column(cell[1])[0 if cell[0] == STRIP else 1][cell[2]]

    def size(self, cell: Cell) -> int:
        if cell[0] == STRIP:
            return 0
        return 1 + cell[2] if cell[0] == STACK else 2 + self.top + cell[1]

    def cuts(self, cell: Cell, least: int) -> list[Cut[Cell]]:
        if cell[0] == SIDE:
            return self._side_cuts(cell[1], least)
        return self._stack_cuts(cell[1], cell[2], least) if cell[0] == STACK else []

    def _side_cuts(self, x: int, least: int) -> list[Cut[Cell]]:
        beside, section = self.sections.beside, self.sections.section
        value = beside[x]
        cuts: list[Cut[Cell]] = [(value - section[x], ((STACK, x, self.top),))] if section[x] >= least else []
        if x and beside[x - 1] >= least:
            cuts.append((value - beside[x - 1], ((SIDE, x - 1),)))
        rests = self.tables.rests_beside(x)
        for part, together in enumerate(self.tables.beside_smallest(beside, section, x), start=1):
            if together >= least:
                cuts.append((value - together, ((STACK, part, self.top), (SIDE, rests[part - 1]))))
        return cuts

    def _stack_cuts(self, x: int, y: int, least: int) -> list[Cut[Cell]]:
        strips, stacks = self._column(x)
        value = stacks[y]
        cuts: list[Cut[Cell]] = []
        if y and stacks[y - 1] >= least:
            cuts.append((value - stacks[y - 1], ((STACK, x, y - 1),)))
        for height_class in range(self.tables.fitting[y]):
            if strips[height_class] >= least:
                cuts.append((value - strips[height_class], ((STRIP, x, height_class),)))
        for height_class, rest in enumerate(self.tables.rests[y]):
            together = strips[height_class] + stacks[rest]
            if together >= least:
                cuts.append((value - together, ((STRIP, x, height_class), (STACK, x, rest))))
        return cuts

    def _column(self, x: int) -> tuple[list[int], list[int]]:
        """The best strip of each height class and the best stack within each length, of a width."""
        known = self._columns.get(x)
        if known is None:
            sections = self.sections
            strips = [sections.strip(height_class)[x] for height_class in range(len(self.tables.heights))]
            stacks = [sections.stack(y)[x] for y in range(self.top + 1)]
            known = self._columns[x] = strips, stacks
        return known

    def uncut(self, cell: Cell, least: int) -> Sequence[Content]:
        """The best contents of a strip; each holds a piece of the strip's height."""
        if cell[0] != STRIP:
            return ()
        entries, still_full = self._layers(cell[2])
        floor, kept, depth = self.tables.widths.floor, self.beam_width.kept, len(entries)
        found: list[Content] = []
        stack = [(0, self.tables.widths.points[cell[1]], 0, 0)]
        while stack:
            layer, space, worth, packed = stack.pop()
            if not (packed & still_full[0] or still_full[1 + layer]):
                continue
            if layer == depth:
                if worth >= least:
                    found.append((worth, packed, (cell,)))
                    if len(found) > 2 * kept:
                        self.complete = False
                        found.sort(key=itemgetter(0), reverse=True)
                        del found[kept:]
                        least = found[-1][0]
                continue
            before, width, copies, value, unit = entries[layer]
            layer += 1
            for _ in range(copies + 1):
                if space < 0:
                    break
                if worth + before[floor[space]] >= least:
                    stack.append((layer, space, worth, packed))
                space -= width
                worth += value
                packed += unit
        return found

    def _layers(self, height_class: int) -> tuple[list[Layer], list[int]]:
        """What may lie in a strip, last entered first; then the counts of all full-height pieces, and of those from
        each layer on."""
        known = self._entries.get(height_class)
        if known is None:
            height = self.tables.heights[height_class]
            entries, full = [], []
            for entry in reversed(self.sections.entries[height_class]):
                piece = entry.way.piece
                entries.append(
                    (
                        self.sections.tables.listed(entry.before),
                        entry.way.width,
                        entry.copies,
                        entry.value,
                        self.counts.unit(piece),
                    )
                )
                full.append(self.counts.field(piece) if entry.way.height == height else 0)
            still = [0] * (len(full) + 1)
            for layer in range(len(full) - 1, -1, -1):
                still[layer] = still[layer + 1] | full[layer]
            known = self._entries[height_class] = entries, [still[0], *still]
        return known

    def cloth(self, content: Content) -> Part:
        """A content of the whole cloth as a tree of cuts."""
        task = self.tables.task
        length = task.fixed_length
        parts, at = [], 0
        for width, strips in self._sections_of(content):
            if not strips:
                continue
            ordered = sorted(strips, reverse=True)
            parts.append(stacked_strips(task, ordered, length, at, width))
            at += width
        return row_of_parts(0, 0, task.width, length, "along", parts)

    def _sections_of(self, content: Content) -> Iterator[tuple[int, list[Strip]]]:
        """Each section: its width, and its strips as pairs (height, pieces)."""
        while content[2]:
            made = content[2]
            if made[0][0] != SIDE:
                yield self._strips_of(content)
                return
            yield self._strips_of(made[2])
            content = made[3]

    def _strips_of(self, content: Content) -> tuple[int, list[Strip]]:
        width, strips = 0, []
        while content[2]:
            made = content[2]
            strip, rest = (content, None) if made[0][0] == STRIP else (made[2], made[3])
            if strip[2]:  # one that is left empty is waste
                _, x, height_class = strip[2][0]
                width = self.tables.widths.points[x]
                strips.append((self.tables.heights[height_class], self.counts.pairs(strip[1])))
            if rest is None:
                break
            content = rest
        return width, strips
