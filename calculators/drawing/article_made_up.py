"""An article as it looks once it is made up: from the front, and from the back where that looks otherwise; one whose
sides stand up, from above at a slant."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import cos, pi, sin

from calculators.drawing import lines
from calculators.drawing.article_rows import rows_on
from calculators.drawing.article_tube import is_tube, tube
from calculators.drawing.article_view import Flat, View, box_of, views_of, works_at
from calculators.drawing.picture import WIDTH, Picture, Sheet, text_width
from calculators.trade.articles.made_up import InSpace, times, total
from calculators.trade.articles.operation import Operation
from calculators.trade.articles.work import MakingUp, listed
from calculators.values.measure import Ruler, show_length

TALLEST, LOWEST = 150.0, 64.0  # [drawing units] what is seen of the article at most; the sheet at least
GAP, ROW, OVER = 24.0, 16.0, 28.0  # [drawing units] between two views; a row of words; over it, for its width
AROUND = 4.0  # [drawing units] left free around what is seen where it is shown small
APART = 2.0  # [drawing units] between an edge and a row inside it, else only the edge is drawn
_BUTTON, _BESIDE = 2.4, 2.5  # [drawing units] half a button; a cord or a zip's row beside its seam
_NAMED = 5  # parts that are named to those who do not see them
_TURNS = [pi * number / 6 for number in range(12)]


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
    views = views_of(work, done)
    told = [show_length(each, ruler) for each in size]
    left = text_width(max(told, key=text_width)) + 30
    room = (WIDTH - left - 4 - GAP * (len(views) - 1)) / len(views)
    wide, high = (max(view.box[way + 2] - view.box[way] for view in views) for way in (0, 1))
    scale = min(room / wide, TALLEST / high)
    foot = OVER + high * scale
    below = max(foot + 6 + ROW * (len(views) > 1), LOWEST)
    sheet = Sheet((0, 0, WIDTH, below), margins=(0, 0, 0, 0), down=True, tallest=1e6)
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


@dataclass(frozen=True)
class _Drawn:
    """One view on the sheet. now: the operation that is worked at. origin: where the origin of what is seen lies.
    scale: drawing units in a millimetre."""

    sheet: Sheet
    view: View
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
        operations = [each for each in self.view.done if any(e.part.name in shown for e in works_at(each))]
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
        for each in self.view.done:  # what is stitched through all layers is seen on both sides
            for laid in self.view.placed:
                if any(edge.part.name == laid.part.name for edge in each.along):
                    self._rows(each, laid)

    def _area(self, style: str, places: Iterable[Flat]) -> None:
        self.sheet.area(style, [*map(self.at, places)], pattern=style in lines.HATCHES)

    def _part(self, laid: InSpace) -> None:
        sides = (lines.OTHER_RIGHT, lines.OTHER_WRONG) if laid.part.cloth else (lines.CLOTH_RIGHT, lines.CLOTH_WRONG)
        outline = self.view.outline(laid)
        self._area(sides[not self.view.shows_right(laid)], outline[:-1])
        self.line(lines.EDGE, outline, fine=True)
        for operation in self.view.done:
            if not operation.along:
                self._rows(operation, laid)

    def _rows(self, operation: Operation, laid: InSpace) -> None:
        style = lines.AT_WORK if operation == self.now else lines.STITCH
        for row in rows_on([operation], laid.part):
            if row.inset is None or row.inset * self.scale >= APART:
                self.line(style, self.view.on(laid, row.places), fine=style == lines.STITCH)

    def _piping(self) -> None:
        """A cord round the edge."""
        left, low, right, high = box_of(map(self.view.outline, self.view.parts))
        out = _BESIDE / self.scale
        ring = [(left - out, low - out), (right + out, low - out), (right + out, high + out), (left - out, high + out)]
        self._area(lines.OTHER_RIGHT, ring)
        self.line(lines.EDGE, [*ring, ring[0]], fine=True)

    def _zip(self, operation: Operation, shown: Mapping[str, InSpace]) -> None:
        """A row on both sides of the seam, as far as it opens."""
        edge = operation.glues[0].one
        if edge.part.name not in shown or not self.view.shows_right(shown[edge.part.name]):
            return
        shut = (edge.length - operation.lengths["length"]) / 2
        one, other = map(self.at, self.view.along(edge.between(shut, edge.length - shut)))
        for beside in (-_BESIDE, _BESIDE):
            self.sheet.line(lines.STITCH, (one[0], one[1] + beside), (other[0], other[1] + beside), fine=True)

    def _buttons(self, operation: Operation, shown: Mapping[str, InSpace]) -> None:
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


def _in_words(views: Sequence[View], told: Sequence[str]) -> str:
    sides = (f"From the {'back' if each.turned else 'front'}: {listed(_seen_on(each))}." for each in views)
    return f"{told[0]} by {told[1]}. {' '.join(sides)}"


def _seen_on(view: View) -> list[str]:
    """The parts whose right side is seen, the furthest first and a few of many, then its closings and its straps."""
    parts = [each.part.name for each in view.parts if view.shows_right(each)] or ["the wrong side"]
    named = parts if len(parts) <= _NAMED else [*parts[: _NAMED - 1], "others like them"]
    hung = dict.fromkeys(each.part.name for each in view.work.hung)
    return [*named, *(each.verb for each in view.closings), *hung]
