"""The pieces an article is cut as: its parts with what their edges take up; parts with a fold between them are one."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.articles.parts import BOTTOM, LEFT, RIGHT, ROUND, SIDES, TOP, EdgeStretch, FlatPart
from calculators.trade.articles.work import MakingUp

Place = tuple[Fraction, Fraction]
Box = tuple[Fraction, Fraction, Fraction, Fraction]
OPPOSITE = {TOP: BOTTOM, BOTTOM: TOP, LEFT: RIGHT, RIGHT: LEFT}


@dataclass(frozen=True)
class LaidPart:
    """A part laid flat on its piece of cloth. low: where its lower left corner lies [mm]. over: whether it lies turned
    over, left to right and top to bottom, because its fold is not folded yet."""

    part: FlatPart
    low: Place
    over: tuple[bool, bool] = (False, False)

    @property
    def finished(self) -> Box:
        """Left, lower, right and upper edge, finished [mm].

        Source: derived, the part at its place.
        """
        return self.low[0], self.low[1], self.low[0] + self.part.width, self.low[1] + self.part.length

    def lies(self, side: str) -> str:
        """On which side of it, as it lies, one of its sides is."""
        turned = self.over[0] if side in (LEFT, RIGHT) else self.over[1]
        return OPPOSITE[side] if turned and side != ROUND else side

    def at(self, stretch: EdgeStretch) -> tuple[Place, Place]:
        """Both ends of a stretch of one of its sides, as it lies [mm]."""
        left, low, right, high = self.finished
        side = self.lies(stretch.side)

        def place(along: Fraction) -> Place:
            if side in (TOP, BOTTOM):
                return (right - along if self.over[0] else left + along), (high if side == TOP else low)
            return (left if side == LEFT else right), (high - along if self.over[1] else low + along)

        return place(stretch.start), place(stretch.end)


@dataclass(frozen=True)
class ArticlePiece:
    """A piece to cut. parts: those on it, laid flat. takes: by part and side, what the edge takes up [mm]."""

    parts: tuple[LaidPart, ...]
    takes: Mapping[tuple[str, str], Fraction]

    @property
    def name(self) -> str:
        return ", ".join(each.part.name for each in self.parts)

    @property
    def count(self) -> int:
        return self.parts[0].part.count

    @property
    def is_round(self) -> bool:
        return self.parts[0].part.is_round

    def cut(self, laid: LaidPart) -> Box:
        """A part with what its edges take up: left, lower, right and upper edge [mm].

        Source: derived, each edge moved out by what it takes up.
        """
        left, low, right, high = laid.finished
        if laid.part.is_round:
            takes = self.takes.get((laid.part.name, ROUND), Fraction(0))
            return left - takes, low - takes, right + takes, high + takes
        out = {laid.lies(side): self.takes.get((laid.part.name, side), Fraction(0)) for side in SIDES}
        return left - out[LEFT], low - out[BOTTOM], right + out[RIGHT], high + out[TOP]

    @property
    def box(self) -> Box:
        """All of it [mm].

        Source: derived, the least rectangle round the cut parts.
        """
        boxes = [self.cut(each) for each in self.parts]
        lefts, lows, rights, highs = zip(*boxes)
        return min(lefts), min(lows), max(rights), max(highs)

    @property
    def width(self) -> Fraction:
        """Cut width [mm].

        Source: derived, from its left to its right edge.
        """
        return self.box[2] - self.box[0]

    @property
    def length(self) -> Fraction:
        """Cut length [mm].

        Source: derived, from its lower to its upper edge.
        """
        return self.box[3] - self.box[1]


def cut_pieces(work: MakingUp) -> list[ArticlePiece]:
    """The pieces to cut for one article, in the order of its parts."""
    takes: dict[tuple[str, str], Fraction] = {}
    for each in work.finishes:
        key = each.stretch.part.name, each.stretch.side
        takes[key] = max(each.takes, takes.get(key, Fraction(0)))
    left = list(work.parts)
    pieces = []
    while left:
        laid = tuple(_unfolded(left[0], work))
        pieces.append(ArticlePiece(laid, takes))
        left = [part for part in left if part not in {each.part for each in laid}]
    return pieces


def _unfolded(first: FlatPart, work: MakingUp) -> Iterator[LaidPart]:
    """A part, and those cut in one piece with it, laid flat."""
    placed = {first.name: LaidPart(first, (Fraction(0), Fraction(0)))}
    waiting = [first]
    while waiting:
        here = waiting.pop(0)
        yield placed[here.name]
        for glue in work.folds:
            for one, other in ((glue.one, glue.other), (glue.other, glue.one)):
                if one.part.name == here.name and other.part.name not in placed:
                    placed[other.part.name] = _beside(placed[here.name], one, other)
                    waiting.append(other.part)


def _beside(laid: LaidPart, one: EdgeStretch, other: EdgeStretch) -> LaidPart:
    """The part of the other stretch laid beside a part, over the fold between them."""
    side, part = laid.lies(one.side), other.part
    upright = side in (LEFT, RIGHT)
    if (other.side in (LEFT, RIGHT)) != upright:
        raise ValueError(f"{one.part.name} and {part.name} are folded at an upright and a level side")
    turned = other.side != OPPOSITE[side]
    over = (turned, laid.over[1]) if upright else (laid.over[0], turned)
    there = LaidPart(part, (Fraction(0), Fraction(0)), over)
    (x, y), (seen_x, seen_y) = min(laid.at(one)), min(there.at(other))
    return LaidPart(part, (x - seen_x, y - seen_y), over)
