"""An article as it looks once it is made up: from the front, and from the back where that looks otherwise; one whose
sides stand up, from above at a slant."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property
from math import cos, pi, sin

from calculators.drawing import lines
from calculators.drawing.article_rows import OnPart, corners_of, rows_on
from calculators.drawing.article_straps import strap_hanging
from calculators.drawing.article_tube import is_tube, tube
from calculators.drawing.picture import WIDTH, Picture, Sheet, text_width
from calculators.trade.articles.made_up import InSpace, Vector, layers_from_the_back, made_up, times, total
from calculators.trade.articles.parts import EdgeStretch
from calculators.trade.articles.work import MakingUp, Operation
from calculators.values.measure import Ruler, show_length

Flat = tuple[float, float]  # [mm] as it is seen; up is up
Box = tuple[float, float, float, float]

TALLEST = 150.0  # [drawing units] what is seen of the article
GAP, ROW, OVER = 24.0, 16.0, 28.0  # [drawing units] between two views; a row of words; over it, for its width
SLANT = 0.35  # of a depth, to the right and up, as it is seen at a slant
AROUND = 4.0  # [drawing units] left free around what is seen where it is shown small
APART = 2.0  # [drawing units] between an edge and a row inside it, else only the edge is drawn
_BUTTON, _BESIDE = 2.4, 2.5  # [drawing units] half a button; a cord or a zip's row beside its seam
_TURNS = [pi * number / 6 for number in range(12)]


@dataclass(frozen=True)
class _View:
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
        boxes = [_box([self.outline(each)]) for each in order]
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
        shown = _box(map(self.outline, self.parts))
        limit = max(shown[2] - shown[0], shown[3] - shown[1]) / 2
        ends = ([self.along(edge) for edge in each.ends] for each in self.work.hung)
        return [
            strap_hanging(each, float(strap.part.length), shown, limit) for strap, each in zip(self.work.hung, ends)
        ]

    @cached_property
    def box(self) -> Box:
        return _box([*map(self.outline, self.parts), *self.straps])

    @property
    def looks(self) -> list[object]:
        """What tells it from another view."""
        names = {each.part.name for each in self.parts if self.shows_right(each)}
        closings = [
            each.verb
            for each in self.done
            if each.verb in {"zip", "buttons"} and any(edge.part.name in names for edge in _closing(each))
        ]
        return [
            *((each.part.cloth, self.shows_right(each), len([*rows_on(self.done, each.part)])) for each in self.parts),
            *closings,
        ]


def article_made_up(
    work: MakingUp, size: tuple[Fraction, Fraction], ruler: Ruler, until: Operation | None = None
) -> Picture:
    """The article made up, to scale.

    work: what is put down of it. size: its finished width and length [mm]. ruler: the one sizes are read on. until: the
    last operation that is done, and seen as worked at now; all of them if None.
    """
    if is_tube(work):
        return tube(work, size, ruler)
    done = work.operations[: work.operations.index(until) + 1] if until else work.operations
    views = _views(work, done)
    told = [show_length(each, ruler) for each in size]
    left = text_width(max(told, key=text_width)) + 30
    room = (WIDTH - left - 4 - GAP * (len(views) - 1)) / len(views)
    wide, high = (max(view.box[way + 2] - view.box[way] for view in views) for way in (0, 1))
    scale = min(room / wide, TALLEST / high)
    foot = OVER + high * scale
    sheet = Sheet((0, 0, WIDTH, foot + 6 + ROW * (len(views) > 1)), margins=(0, 0, 0, 0), down=True, tallest=1e6)
    start = (WIDTH + left - 4 - len(views) * wide * scale - GAP * (len(views) - 1)) / 2
    for number, view in enumerate(views):
        beside = start + number * (wide * scale + GAP) + (wide - view.box[2] + view.box[0]) * scale / 2
        drawn = _Drawn(sheet, view, until, (beside - view.box[0] * scale, foot + view.box[1] * scale), scale)
        drawn.all()
        if not number:
            drawn.sizes(told, ruler)
        if len(views) > 1:
            name = "back" if view.turned else "front"
            sheet.words(name, (beside + (view.box[2] - view.box[0]) * scale / 2, foot + ROW))
    crop = (start - AROUND, OVER - AROUND, WIDTH + left - 4 - 2 * start + 2 * AROUND, high * scale + 2 * AROUND)
    return replace(sheet.finish("Made up", _in_words(views, told), with_key=False), crop=crop)


def _views(work: MakingUp, done: Sequence[Operation]) -> list[_View]:
    placed = made_up(work)
    lies = not any(each.inside[0] or each.inside[1] for each in placed.values())
    names = [name for layer in layers_from_the_back(work, placed) for name in layer] if lies else placed
    order = [placed[name] for name in names]
    front, back = (_View(work, done, lies, turned, order) for turned in (False, True))
    is_single = lies and all(glue.angle == 0 or glue.over for glue in work.glues)
    return [front] if is_single or sorted(map(str, front.looks)) == sorted(map(str, back.looks)) else [front, back]


def _closing(operation: Operation) -> Iterator[EdgeStretch]:
    yield from operation.along
    for glue in operation.glues:
        yield from (glue.one, glue.other)


def _box(rings: Iterable[list[Flat]]) -> Box:
    xs, ys = zip(*(point for ring in rings for point in ring))
    return min(xs), min(ys), max(xs), max(ys)


def _covers(over: Box, under: Box) -> bool:
    near = 1e-6 * (over[2] - over[0])
    return (
        over[0] <= under[0] + near and over[1] <= under[1] + near
        and over[2] >= under[2] - near and over[3] >= under[3] - near
    )  # fmt: skip


@dataclass(frozen=True)
class _Drawn:
    """One view on the sheet. now: the operation that is worked at. origin: where the origin of what is seen lies.
    scale: drawing units in a millimetre."""

    sheet: Sheet
    view: _View
    now: Operation | None
    origin: Flat
    scale: float

    def at(self, place: Flat) -> Flat:
        return self.origin[0] + place[0] * self.scale, self.origin[1] - place[1] * self.scale

    def line(self, style: str, places: Iterable[Flat], fine: bool = False) -> None:
        self.sheet.line(style, *map(self.at, places), fine=fine)

    def all(self) -> None:
        """Straps, then every part over those behind it, with what is seen on it."""
        for strap in self.view.straps:
            self._area(lines.CLOTH_RIGHT, strap)
            self.line(lines.EDGE, [*strap, strap[0]], fine=True)
        shown = {each.part.name: each for each in self.view.parts}
        operations = [each for each in self.view.done if any(e.part.name in shown for e in _closing(each))]
        for each in operations:
            if each.verb == "piping":
                self._piping()
        for laid in self.view.parts:
            self._part(laid)
        for each in operations:
            if each.verb == "zip":
                self._zip(each, shown)
            elif each.verb == "buttons":
                self._buttons(each, shown)

    def _area(self, style: str, places: Iterable[Flat]) -> None:
        self.sheet.area(style, [*map(self.at, places)], pattern=style in lines.HATCHES)

    def _part(self, laid: InSpace) -> None:
        sides = (lines.OTHER_RIGHT, lines.OTHER_WRONG) if laid.part.cloth else (lines.CLOTH_RIGHT, lines.CLOTH_WRONG)
        outline = self.view.outline(laid)
        self._area(sides[not self.view.shows_right(laid)], outline[:-1])
        self.line(lines.EDGE, outline, fine=True)
        for operation in self.view.done:
            style = lines.AT_WORK if operation == self.now else lines.STITCH
            for row in rows_on([operation], laid.part):
                if row.inset is None or row.inset * self.scale >= APART:
                    self.line(style, self.view.on(laid, row.places), fine=style == lines.STITCH)

    def _piping(self) -> None:
        """A cord round the edge."""
        left, low, right, high = _box(map(self.view.outline, self.view.parts))
        out = _BESIDE / self.scale
        ring = [(left - out, low - out), (right + out, low - out), (right + out, high + out), (left - out, high + out)]
        self._area(lines.OTHER_RIGHT, ring)
        self.line(lines.EDGE, [*ring, ring[0]], fine=True)

    def _zip(self, operation: Operation, shown: dict[str, InSpace]) -> None:
        """A row on both sides of the seam, as far as it opens."""
        edge = operation.glues[0].one
        if edge.part.name not in shown or not self.view.shows_right(shown[edge.part.name]):
            return
        shut = (edge.length - operation.lengths["length"]) / 2
        one, other = map(self.at, self.view.along(edge.between(shut, edge.length - shut)))
        for beside in (-_BESIDE, _BESIDE):
            self.sheet.line(lines.STITCH, (one[0], one[1] + beside), (other[0], other[1] + beside), fine=True)

    def _buttons(self, operation: Operation, shown: dict[str, InSpace]) -> None:
        """Evenly along the middle of the hem they are sewn on."""
        (edge,) = operation.along
        laid = shown.get(edge.part.name)
        if laid is None or not self.view.shows_right(laid):
            return
        count = next(each.count for each in self.view.work.to_buy if each.thing == "buttons")
        hem = max(each.hem for each in self.view.work.finishes if each.stretch == laid.part.side(edge.side))
        inward = times(hem / 2, laid.inward(edge.side))
        for number in range(1, count + 1):
            along = edge.start + (edge.end - edge.start) * number / (count + 1)
            x, y = self.at(self.view.seen(total(laid.along(edge, along), inward)))
            ring = [(x + _BUTTON * cos(turn), y + _BUTTON * sin(turn)) for turn in _TURNS]
            self.sheet.area(lines.CLOTH_RIGHT, ring)
            self.sheet.line(lines.EDGE, *ring, ring[0], fine=True)

    def sizes(self, told: Sequence[str], ruler: Ruler) -> None:
        """Its width over it and its length at its left; of what stands, its height too."""
        corners = [
            each.at(x, y)
            for each in self.view.placed
            for x in (Fraction(0), each.part.width)
            for y in (Fraction(0), each.part.length)
        ]
        (left, right), (low, high), (down, up) = ((min(each), max(each)) for each in zip(*corners))
        near, far, beside, under = (
            self.at(self.view.seen(place))
            for place in ((left, low, up), (left, high, up), (right, high, up), (left, low, down))
        )
        straps = self.view.box[3] * self.scale - (self.origin[1] - far[1])
        self.sheet.dimension(far, beside, told[0], away=10 + straps)
        self.sheet.dimension(near, far, told[1], away=10)
        if up > down:
            self.sheet.dimension(under, near, show_length(up - down, ruler), away=10)


def _in_words(views: Sequence[_View], told: Sequence[str]) -> str:
    sides = " and ".join("the back" if each.turned else "the front" for each in views)
    return f"{told[0]} by {told[1]}, from {sides}."
