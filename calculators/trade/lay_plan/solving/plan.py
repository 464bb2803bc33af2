"""A lay plan: the cloth cut edge to edge into parts, those into parts again, down to pieces and offcuts."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from calculators.trade.lay_plan.solving.model import Task


@dataclass(frozen=True, slots=True)
class Part:
    """A rectangle of cloth and how it is cut further.

    x, y: the corner nearest the first selvedge and the straight end [units].
    width, length: its size [units].
    cut: "across" or "along" when it is cut into `parts` side by side, else "".
    piece: number of the piece that lies in its corner, or None. The piece may be smaller in one direction: a trimming
    cut.
    turned: whether that piece lies turned.
    """

    x: int
    y: int
    width: int
    length: int
    cut: str = ""
    parts: tuple["Part", ...] = ()
    piece: int | None = None
    turned: bool = False

    def mirrored(self) -> "Part":
        """The part with width and length changing places."""
        cut = {"across": "along", "along": "across", "": ""}[self.cut]
        return Part(
            self.y,
            self.x,
            self.length,
            self.width,
            cut,
            tuple(p.mirrored() for p in self.parts),
            self.piece,
            self.turned,
        )

    def moved(self, x: int, y: int) -> "Part":
        """The part moved along both directions."""
        parts = tuple(part.moved(x, y) for part in self.parts)
        return Part(self.x + x, self.y + y, self.width, self.length, self.cut, parts, self.piece, self.turned)

    def leaves(self) -> Iterator["Part"]:
        """The parts that are not cut further."""
        if not self.parts:
            yield self
        for part in self.parts:
            yield from part.leaves()

    def held(self) -> Iterator[tuple[int, "Part"]]:
        """Every piece by its number, with the part that it lies in, in cutting order."""
        for leaf in self.leaves():
            if leaf.piece is not None:
                yield leaf.piece, leaf


@dataclass(frozen=True, slots=True)
class Placement:
    """Where one piece lies [units]."""

    piece: int
    x: int
    y: int
    width: int
    length: int
    turned: bool


@dataclass(frozen=True)
class Plan:
    """A task with the cloth cut up for it."""

    task: Task
    cloth: Part

    def placements(self) -> list[Placement]:
        """Every piece, in cutting order."""
        placed = []
        for piece, part in self.cloth.held():
            width, length = piece_size(self.task, piece, part.turned)
            placed.append(Placement(piece, part.x, part.y, width, length, part.turned))
        return placed

    def counts(self) -> Counter[int]:
        """How many of each piece."""
        return Counter(piece for piece, _ in self.cloth.held())

    @property
    def value(self) -> int:
        """What all the pieces count together."""
        return sum(self.task.pieces[piece].worth * count for piece, count in self.counts().items())

    @property
    def used_length(self) -> int:
        """How far along the cloth the pieces reach [units]."""
        return max((placed.y + placed.length for placed in self.placements()), default=0)


def piece_size(task: Task, number: int, turned: bool) -> tuple[int, int]:
    """Width and length of a piece as it lies [units]."""
    piece = task.pieces[number]
    return (piece.length, piece.width) if turned else (piece.width, piece.length)


def row_of_parts(x: int, y: int, width: int, length: int, cut: str, parts: Iterable[Part]) -> Part:
    """A part cut into parts that already lie one after the other from its corner; what is left becomes an offcut."""
    parts = list(parts)
    if cut == "across":
        end = parts[-1].y + parts[-1].length if parts else y
        if end < y + length:
            parts.append(Part(x, end, width, y + length - end))
    else:
        end = parts[-1].x + parts[-1].width if parts else x
        if end < x + width:
            parts.append(Part(end, y, x + width - end, length))
    if len(parts) == 1 and not parts[0].parts and parts[0].piece is None:
        return parts[0]
    return Part(x, y, width, length, cut, tuple(parts))


def stacked_strips(
    task: Task,
    strips: Iterable[tuple[int, Iterable[tuple[int, int]]]],
    length: int,
    x: int = 0,
    width: int | None = None,
) -> Part:
    """The cloth (or a section of it) cut across into strips.

    Parameters:
        strips: pairs (height, pieces as pairs (piece, count)), in order along the cloth; in each strip the pieces lie
        side by
            side, highest first, in the way that is narrowest in that strip.
        length: length of the cloth [units].
        x, width: where the section begins and how wide it is; the whole cloth when not given.
    """
    width = task.width if width is None else width
    rows = []
    y = 0
    for height, content in strips:
        laid = []
        for piece, count in content:
            size = min((x, -y, turned) for x, y, turned in task.pieces[piece].sizes() if y <= height)
            laid.extend([(size[1], size[0], piece, size[2])] * count)
        laid.sort()
        at = x
        parts = []
        for _, across, piece, turned in laid:
            parts.append(Part(at, y, across, height, piece=piece, turned=turned))
            at += across
        rows.append(row_of_parts(x, y, width, height, "along", parts))
        y += height
    return row_of_parts(x, 0, width, length, "across", rows)
