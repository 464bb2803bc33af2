"""The pieces an article is cut as: its parts with what their edges take up; parts with a fold between them are one."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import ceil

from calculators.trade.articles.parts import BOTTOM, LEFT, RIGHT, ROUND, TOP, EdgeStretch, FlatPart, Place, apart
from calculators.trade.articles.work import MakingUp
from calculators.trade.binding import square_for

Ends = tuple[Place, Place]
Line = tuple[Fraction, Fraction, Fraction]
Box = tuple[Fraction, Fraction, Fraction, Fraction]
_NOTHING, _ONE = Fraction(0), Fraction(1)
OPPOSITE = {TOP: BOTTOM, BOTTOM: TOP, LEFT: RIGHT, RIGHT: LEFT}


@dataclass(frozen=True)
class LaidPart:
    """A part laid flat on its piece of cloth. low: where its lower left corner lies [mm]. over: whether it lies turned
    over, left to right and top to bottom, because its fold is not folded yet."""

    part: FlatPart
    low: Place
    over: tuple[bool, bool] = (False, False)

    @cached_property
    def finished(self) -> Box:
        """Left, lower, right and upper edge, finished [mm].

        Source: derived, the part at its place.
        """
        return self.low[0], self.low[1], self.low[0] + self.part.width, self.low[1] + self.part.length

    def lies(self, side: str) -> str:
        """On which side of it, as it lies, one of its sides is."""
        turned = self.over[0] if side in (LEFT, RIGHT) else self.over[1]
        return OPPOSITE[side] if turned and side != ROUND else side

    def at(self, stretch: EdgeStretch) -> Ends:
        """Both ends of a stretch of one of its straight sides, as it lies [mm]."""
        ends = (self.part.place_on(stretch.side, along) for along in (stretch.start, stretch.end))
        one, other = (self._here(place) for place in ends)
        return one, other

    def side(self, name: str) -> Ends:
        """Both ends of a straight side, finished, as it lies [mm]."""
        one, other = (self._here(place) for place in self.part.ends_of(name))
        return one, other

    def _here(self, place: Place) -> Place:
        """A place on the part, counted from its lower left corner, where it lies."""
        left, low, right, high = self.finished
        return (
            right - place[0] if self.over[0] else left + place[0],
            high - place[1] if self.over[1] else low + place[1],
        )


@dataclass(frozen=True)
class ArticlePiece:
    """A piece to cut. parts: those on it, laid flat. takes: by part and side, what the edge takes up [mm]. alike: how
    many more are cut like it."""

    parts: tuple[LaidPart, ...]
    takes: Mapping[tuple[str, str], Fraction]
    alike: int = 0

    @property
    def name(self) -> str:
        return ", ".join(each.part.name for each in self.parts)

    @property
    def count(self) -> int:
        return self.parts[0].part.count + self.alike

    @property
    def cloth(self) -> str:
        """Which cloth it is cut from; empty for the article's own."""
        return self.parts[0].part.cloth

    @property
    def named_on_the_cloth(self) -> str:
        """What it is called in a plan of the cloth."""
        part = self.parts[0].part
        return f"{part.name.capitalize()}{', a square for it' if part.is_bias else ''}"

    @property
    def on_the_cloth(self) -> tuple[Fraction, Fraction]:
        """Width and length of the rectangle that is kept free for it on the cloth [mm].

        Source: derived, its cut size, sideways the other way round; of a strip on the bias the least square that it can
        be cut from round and round, by `square_for`, in whole millimetres.
        """
        part = self.parts[0].part
        if not part.is_bias:
            return (self.length, self.width) if part.is_sideways else (self.width, self.length)
        _, side = square_for(self.length, self.width, self.takes.get((part.name, LEFT), Fraction(0)))
        return Fraction(ceil(side)), Fraction(ceil(side))

    @property
    def is_round(self) -> bool:
        return self.parts[0].part.is_round

    def cut_sides(self, laid: LaidPart) -> dict[str, Ends]:
        """Every side of a part that has corners, where it is cut [mm], clockwise as the part is seen.

        Source: derived, each edge moved out by what it takes up, from where it crosses the one before to the next.
        """
        return self._all_cut_sides[laid.part.name]

    @cached_property
    def _all_cut_sides(self) -> dict[str, dict[str, Ends]]:
        return {each.part.name: self._sides_of(each) for each in self.parts if not each.part.is_round}

    def _sides_of(self, laid: LaidPart) -> dict[str, Ends]:
        sides = laid.part.sides
        low, high = laid.finished[:2], laid.finished[2:]
        middle = (low[0] + high[0]) / 2, (low[1] + high[1]) / 2
        moved = [_moved(laid.side(side), middle, self.takes.get((laid.part.name, side), Fraction(0))) for side in sides]
        corners = [_crossing(moved[number - 1], line) for number, line in enumerate(moved)]
        return {side: (corners[number], corners[(number + 1) % len(sides)]) for number, side in enumerate(sides)}

    def cut_box(self, laid: LaidPart) -> Box:
        """The least rectangle round a part with what its edges take up [mm].

        Source: derived, from its outermost corners.
        """
        left, low, right, high = laid.finished
        if laid.part.is_round:
            takes = self.takes.get((laid.part.name, ROUND), Fraction(0))
            return left - takes, low - takes, right + takes, high + takes
        xs, ys = zip(*(one for one, _ in self.cut_sides(laid).values()))
        return min(xs), min(ys), max(xs), max(ys)

    @cached_property
    def box(self) -> Box:
        """All of it [mm].

        Source: derived, the least rectangle round the cut parts.
        """
        boxes = [self.cut_box(each) for each in self.parts]
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
    left = [part for part in work.parts if not part.like]
    pieces = []
    while left:
        laid = tuple(_unfolded(left[0], work))
        pieces.append(ArticlePiece(laid, takes, sum(part.like == left[0].name for part in work.parts)))
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


def _moved(ends: Ends, middle: Place, by: Fraction) -> Line:
    """The line through both ends, moved away from the middle: a, b and c of a·x + b·y = c."""
    (x1, y1), (x2, y2) = ends
    if x1 == x2:
        return _ONE, _NOTHING, x1 + (by if middle[0] < x1 else -by)
    if y1 == y2:
        return _NOTHING, _ONE, y1 + (by if middle[1] < y1 else -by)
    a, b = y2 - y1, x1 - x2
    c = a * x1 + b * y1
    outward = 1 if a * middle[0] + b * middle[1] < c else -1
    return a, b, c + outward * by * apart(*ends)


def _crossing(one: Line, other: Line) -> Place:
    (a, b, c), (d, e, f) = one, other
    if a is e is _ONE:  # one upright, the other level: the usual case needs no arithmetic
        return c, f
    if b is d is _ONE:
        return f, c
    across = a * e - b * d
    return (c * e - b * f) / across, (a * f - c * d) / across
