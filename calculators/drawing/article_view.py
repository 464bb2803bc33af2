"""One side of an article that is made up: which of its parts are seen there, and where."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from calculators.drawing.article_rows import OnPart, corners_of, rows_on
from calculators.drawing.article_straps import strap_hanging
from calculators.trade.articles.made_up import InSpace, Vector, layers_from_the_back, made_up
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.parts import EdgeStretch
from calculators.trade.articles.work import MakingUp

Flat = tuple[float, float]  # [mm] as it is seen; up is up
Box = tuple[float, float, float, float]

SLANT = 0.35  # of a depth, to the right and up, as it is seen at a slant


@dataclass(frozen=True)
class View:
    """The article from one side. done: the operations that have left something to be seen. lies: whether it lies flat,
    else it is seen at a slant. turned: whether it is turned half round. placed: its parts, the hindmost first."""

    work: MakingUp
    done: Sequence[Operation]
    lies: bool
    turned: bool
    placed: Sequence[InSpace]

    def seen(self, place: Vector) -> Flat:
        x, y, z = (float(each) for each in place)
        if self.turned:
            x, y = -x, y if self.lies else -y
        return (x, y) if self.lies else (x + SLANT * y, z + SLANT * y)

    def on(self, laid: InSpace, places: Iterable[OnPart]) -> list[Flat]:
        (x0, y0), (across, rises), (leans, up) = self._frames[laid.part.name]
        return [(x0 + x * across + y * leans, y0 + x * rises + y * up) for x, y in places]

    @cached_property
    def _frames(self) -> dict[str, tuple[Flat, Flat, Flat]]:
        """Of each part, where its corner is seen, and a millimetre of its width and of its length."""
        return {
            each.part.name: (self.seen(each.corner), self.seen(each.across), self.seen(each.up)) for each in self.placed
        }

    def along(self, edge: EdgeStretch) -> list[Flat]:
        laid = next(each for each in self.placed if each.part.name == edge.part.name)
        return [self.seen(laid.along(edge, place)) for place in (edge.start, edge.end)]

    def shows_right(self, laid: InSpace) -> bool:
        """Whether the right side of a part is on this side of the article."""
        turn = -1 if self.turned else 1
        x, y, z = (float(each) for each in laid.inside)
        return z * turn < 0 if self.lies else -x * turn * SLANT + y * turn - z * SLANT > 0

    @cached_property
    def parts(self) -> list[InSpace]:
        """Those of which something is seen, the furthest first."""
        if not self.lies:
            return [each for each in self.placed if self.shows_right(each)]
        order = self.placed[::-1] if self.turned else self.placed
        boxes = [box_of([self.outline(each)]) for each in order]
        return [
            each
            for number, (each, box) in enumerate(zip(order, boxes))
            if not any(_covers(over, box) for over in boxes[number + 1 :])
        ]

    def outline(self, laid: InSpace) -> list[Flat]:
        return self._outlines[laid.part.name]

    @cached_property
    def _outlines(self) -> dict[str, list[Flat]]:
        return {each.part.name: self.on(each, corners_of(each.part)) for each in self.placed}

    @cached_property
    def straps(self) -> list[list[Flat]]:
        shown = box_of(map(self.outline, self.parts))
        limit = max(shown[2] - shown[0], shown[3] - shown[1]) / 2
        ends = ([self.along(edge) for edge in each.ends] for each in self.work.hung)
        return [
            strap_hanging(each, float(strap.part.length), shown, limit) for strap, each in zip(self.work.hung, ends)
        ]

    @cached_property
    def box(self) -> Box:
        return box_of([*map(self.outline, self.parts), *self.straps])

    @property
    def closings(self) -> list[Operation]:
        """The zips and rows of buttons on this side."""
        names = {each.part.name for each in self.parts if self.shows_right(each)}
        return [
            each
            for each in self.done
            if each.verb in {"zip", "buttons"} and any(edge.part.name in names for edge in works_at(each))
        ]

    @property
    def looks(self) -> list[object]:
        """What tells it from another view."""
        return [
            *((each.part.cloth, self.shows_right(each), len([*rows_on(self.done, each.part)])) for each in self.parts),
            *(each.verb for each in self.closings),
        ]


def views_of(work: MakingUp, done: Sequence[Operation]) -> list[View]:
    """The sides that are shown of an article: the front, and the back where it looks otherwise. done: as of a view."""
    placed = made_up(work)
    lies = not any(each.inside[0] or each.inside[1] for each in placed.values())
    names = [name for layer in layers_from_the_back(work, placed) for name in layer] if lies else placed
    order = [placed[name] for name in names]
    front, back = (View(work, done, lies, turned, order) for turned in (False, True))
    is_single = lies and all(glue.angle == 0 or glue.over for glue in work.glues)
    return [front] if is_single or sorted(map(str, front.looks)) == sorted(map(str, back.looks)) else [front, back]


def works_at(operation: Operation) -> Iterator[EdgeStretch]:
    """Where an operation is seen that closes or trims an article."""
    yield from operation.along
    for glue in operation.glues:
        yield from (glue.one, glue.other)


def box_of(rings: Iterable[list[Flat]]) -> Box:
    """What shapes cover: left, lowest, right, highest."""
    xs, ys = zip(*(point for ring in rings for point in ring))
    return min(xs), min(ys), max(xs), max(ys)


def _covers(over: Box, under: Box) -> bool:
    near = 1e-6 * (over[2] - over[0])
    return (
        over[0] <= under[0] + near and over[1] <= under[1] + near
        and over[2] >= under[2] - near and over[3] >= under[3] - near
    )  # fmt: skip
