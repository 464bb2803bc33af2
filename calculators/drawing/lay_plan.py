"""Cloths with every piece of a mixed order on them, a long cloth drawn in stretches one under another so that a phone
shows it."""

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby, islice
from math import ceil
from string import ascii_uppercase

from calculators.drawing import lines
from calculators.drawing.picture import (
    MIDDLE,
    ON_SCREENS,
    SIZES,
    WIDTH,
    Picture,
    Point,
    Real,
    Sheet,
    rectangle,
    text_width,
    thinned,
)
from calculators.trade.lay_plan.cutting import remnants, waste_boxes
from calculators.trade.lay_plan.laid import LaidPiece, Lay, Rectangle
from calculators.trade.lay_plan.marking import piece_marks
from calculators.trade.lay_plan.order import Wanted
from calculators.trade.lay_plan.planning import PlannedOrder
from calculators.values.measure import Ruler, show_length

_LEFT, _TOP, _RIGHT, _LOW = 10, 46, 10, 32  # drawing units; on the left the marks from the long edge come on top
_BAR = 16  # drawing units that the bar with the numbers of the strips takes
_BETWEEN = 60  # drawing units between two stretches, for that bar, the name of the next and its marks
_WIDE = 130  # drawing units that the width of a cloth should have on a phone
_TALLEST = 690
_SMALL = 24  # drawing units; the outline of a smaller piece is drawn fine until the drawing is enlarged
_DIGIT = 7  # drawing units
_ROW = 13  # [drawing units] that words take up and down
_FROM_CUT = 4  # [drawing units] between a cut and the mark written on it
_MOST_DRAWN, _MOST_KEYED = 6, 12
_CLOSEST = 2  # drawing units between two lines of a repeat; nearer they are one grey area


@dataclass(frozen=True)
class Stretch:
    """A length of one cloth as drawn: from start to end along it [mm], its first edge `down` the sheet [mm]."""

    lay: Lay
    start: Fraction
    end: Fraction
    down: float
    copies: int

    def place(self, x: Real, y: Real) -> tuple[float, float]:
        """A place on the cloth, x across and y along, on the sheet: the length lies across the sheet."""
        return float(y - self.start), self.down + float(x)


def lay_plan(outcome: PlannedOrder, ruler: Ruler) -> Picture:
    """Every cloth that is cut, to one scale, with its pieces, strips, flaws, remnants and marks.

    outcome: the order as planned; ruler: the one the marks are read on.
    """
    lays = _alike(outcome.lays)
    sheet, stretches = _drawn(outcome, lays[:_MOST_DRAWN], ruler, WIDTH)
    listed = _listed(outcome, ruler)
    more = f" {len(lays) - _MOST_DRAWN} more cloths are in the tables." if len(lays) > _MOST_DRAWN else ""
    title, in_words = (
        "The lay plan",
        f"{listed}.{more} Lengths lie across the sheet; every mark is in the marking table.",
    )
    picture = sheet.finish(
        title, in_words, caption=f"The lay plan, to scale. {listed}.{more}", hint="a piece to read its marks"
    )
    on_screen, fewer = _drawn(outcome, lays[:_MOST_DRAWN], ruler, ON_SCREENS) if stretches > 1 else (sheet, stretches)
    return replace(picture, wide=on_screen.finish(title, in_words).svg) if fewer < stretches else picture


def _drawn(outcome: PlannedOrder, drawn: list[tuple[Lay, int]], ruler: Ruler, width: int) -> tuple[Sheet, int]:
    """The cloths on a sheet so wide [drawing units], and in how many stretches."""
    longest = max(
        (len(bare(mark, ruler)) for lay, _ in drawn for placed in lay.placed for mark in piece_marks(placed)[1]),
        default=0,
    )
    along = any(lay.first_cut == "along" for lay, _ in drawn)
    margins = (_LEFT + longest * _DIGIT, _TOP, _RIGHT + along * _BAR, _LOW)
    room = width - margins[0] - margins[2]
    stretches, per_stretch, scale = _laid_out(drawn, room)
    bottom = max(stretch.down + float(stretch.lay.cloth.width) for stretch in stretches)
    sheet = Sheet((0, 0, float(per_stretch), bottom), margins=margins, down=True, tallest=bottom * scale, width=width)
    left_over = {id(lay): remnants(lay, outcome.order.rules.keep) for lay, _ in drawn}
    for stretch in stretches:
        within = _marks_within(sheet, stretch, ruler)
        _ground(sheet, stretch, left_over[id(stretch.lay)], within)
        _kinds(sheet, stretch)
        _repeat(sheet, stretch)
        _edges(sheet, stretch)
        _pieces(sheet, stretch, outcome, ruler, within)
        _marks(sheet, stretch, ruler)
        _marks_beside(sheet, stretch, ruler)
        for mark in within:
            sheet.words(
                mark.text, mark.place, f"dimension-text {MIDDLE}", "start", (_FROM_CUT / mark.size, 0), (mark.size,)
            )
        _strips(sheet, stretch)
        _named(sheet, stretch, ruler, room)
    for number in sorted({placed.piece for lay, _ in drawn for placed in lay.placed})[:_MOST_KEYED]:
        sheet.name(lines.kind(number), _on_one_line(named(outcome.pieces[number], number), "", lines.KEY_ROOM))
    return sheet, len(stretches)


def letter(number: int) -> str:
    """The letter that stands for a piece where its name has no room."""
    return ascii_uppercase[number % 26] * (number // 26 + 1)


def named(piece: Wanted, number: int) -> str:
    """A kind of piece as it is named wherever there is room: its letter, then its own name."""
    return f"{letter(number)} {piece.name}"


def bare(mark: Fraction, ruler: Ruler) -> str:
    """A mark as it stands beside its tick, without its unit."""
    return show_length(mark, ruler).removeprefix("about ").removesuffix(f" {ruler.unit}")


def _alike(lays: tuple[Lay, ...]) -> list[tuple[Lay, int]]:
    """Each plan once, with how many cloths are cut by it."""
    found: list[tuple[Lay, int]] = []
    for lay in lays:
        if found and found[-1][0].plan.cloth == lay.plan.cloth and found[-1][0].cloth == lay.cloth:
            found[-1] = (found[-1][0], found[-1][1] + 1)
        else:
            found.append((lay, 1))
    return found


def _laid_out(lays: list[tuple[Lay, int]], room: int) -> tuple[list[Stretch], Fraction, float]:
    """The stretches to draw, the length of the longest [mm], and the scale: as large as the height of the sheet
    allows."""
    longest = max(lay.length for lay, _ in lays)
    widest = max(lay.cloth.width for lay, _ in lays)
    shortest_drawn = widest / 2
    parts = max(1, ceil(_WIDE * longest / (room * widest)))
    length = max(longest / parts, shortest_drawn)
    while True:
        scale = room / float(length)
        stretches = _stretches(lays, length, scale)
        if (stretches[-1].down + float(stretches[-1].lay.cloth.width)) * scale <= _TALLEST:
            return stretches, length, scale
        parts -= 1
        length = longest / parts if parts > 0 and longest / parts > length else length * 5 / 4


def _stretches(lays: list[tuple[Lay, int]], per_stretch: Fraction, scale: float) -> list[Stretch]:
    made, down = [], 0.0
    for lay, copies in lays:
        start = Fraction(0)
        while start < lay.length:
            end = _break(lay, start, start + per_stretch)
            made.append(Stretch(lay, start, end, down, copies))
            down += float(lay.cloth.width) + _BETWEEN / scale
            start = end
    return made


def _break(lay: Lay, start: Fraction, latest: Fraction) -> Fraction:
    """Where a stretch ends: between two strips where that is not much sooner than it must."""
    if latest >= lay.length:
        return lay.length
    if lay.first_cut != "across":
        return latest
    before = bisect_right(lay.strip_boxes, latest, key=lambda box: box.end)
    last = lay.strip_boxes[before - 1].end if before else start
    return last if last >= start + (latest - start) * 3 / 4 else latest


def _seen(stretch: Stretch, box: Rectangle) -> list[Point] | None:
    """What of a rectangle lies in a stretch, as corners on the sheet."""
    start, end = max(box.y, stretch.start), min(box.end, stretch.end)
    if end <= start:
        return None
    (left, top), (right, low) = stretch.place(box.x, start), stretch.place(box.right, end)
    return rectangle(left, top, right, low)


def _ground(sheet: Sheet, stretch: Stretch, left_over: list[Rectangle], within: list["_Within"]) -> None:
    lay = stretch.lay
    if whole := _seen(stretch, Rectangle(Fraction(0), Fraction(0), lay.cloth.width, lay.length)):
        sheet.area("cloth", whole)
    for box in left_over:
        if seen := _seen(stretch, box):
            sheet.area(lines.REMNANT, seen, pattern=True)
    for box in waste_boxes(lay, lay.plan.cloth):
        if box not in left_over and (seen := _seen(stretch, box)):
            sheet.area(lines.WASTE, seen, pattern=True)
            _label(sheet, seen, lines.WORDS[lines.WASTE], "", within)
    for flaw in lay.cloth.flaws:
        if seen := _seen(stretch, Rectangle(flaw.from_selvedge, flaw.from_end, flaw.width, flaw.length)):
            sheet.area(lines.FLAW, seen, pattern=True)


def _kinds(sheet: Sheet, stretch: Stretch) -> None:
    """The pieces of each kind in a hatch of their own."""
    alike: dict[int, list[Rectangle]] = {}
    for placed in stretch.lay.placed:
        alike.setdefault(placed.piece, []).append(placed.box)
    for number, boxes in sorted(alike.items()):
        sheet.boxes(lines.kind(number), [seen for box in _merged(boxes) if (seen := _seen(stretch, box))])


def _merged(boxes: list[Rectangle]) -> list[Rectangle]:
    """The boxes with those that touch along their whole length made one."""
    found: list[Rectangle] = []
    for box in sorted(boxes, key=lambda box: (box.y, box.x)):
        last = found[-1] if found else None
        if last and (last.y, last.length, last.right) == (box.y, box.length, box.x):
            found[-1] = replace(last, width=last.width + box.width)
        else:
            found.append(box)
    return found


def _repeat(sheet: Sheet, stretch: Stretch) -> None:
    """Where the pattern starts again, along the cloth and across it."""
    cloth, repeat = stretch.lay.cloth, stretch.lay.cloth.repeat
    if not repeat:
        return
    for at in _starts(repeat.first_along, repeat.along, stretch.end, sheet.scale):
        if at > stretch.start:
            sheet.line(lines.REPEAT, stretch.place(0, at), stretch.place(cloth.width, at))
    for at in _starts(repeat.first_across, repeat.across, cloth.width, sheet.scale):
        sheet.line(lines.REPEAT, stretch.place(at, stretch.start), stretch.place(at, stretch.end))


def _starts(first: Fraction, distance: Fraction | None, end: Fraction, scale: float) -> list[Fraction]:
    """Where a pattern starts again; nowhere if its lines would lie on each other even where they are drawn largest."""
    if distance is None or float(distance) * scale * max(SIZES) < _CLOSEST:
        return []
    return [first + number * distance for number in range(ceil((end - first) / distance))]


def _pieces(sheet: Sheet, stretch: Stretch, outcome: PlannedOrder, ruler: Ruler, within: list["_Within"]) -> None:
    for placed in stretch.lay.placed:
        if not (seen := _seen(stretch, placed.box)):
            continue
        with sheet.pointed_at(_marks_in_words(stretch.lay, placed, outcome, ruler)):
            sheet.line(
                lines.CUT,
                *seen,
                seen[0],
                fine=min(placed.box.width, placed.box.length) * Fraction(sheet.scale) < _SMALL,
            )
            if placed.box.y >= stretch.start:
                name = named(stretch.lay.pieces[placed.piece], placed.piece)
                _label(sheet, seen, name, letter(placed.piece), within)


def _label(sheet: Sheet, seen: list[Point], name: str, short: str, within: list["_Within"]) -> None:
    """A piece's letter and name, or its letter alone where the name has no room, at every size of the drawing at which
    there is room beside the marks that are written there."""
    (left, top), _, (right, low), _ = seen
    shown: dict[tuple[str, float], list[int]] = {}
    for size in SIZES:
        (begins, above), (ends, below) = (
            [at * size for at in sheet.at(corner)] for corner in ((left, top), (right, low))
        )
        beside = [mark.ends for mark in within if mark.size == size and mark.lies_by(begins, ends, (above + below) / 2)]
        taken = max(beside, default=begins) - begins
        across = ends - begins - taken
        text = name if max(len(name) * 7 + 4, len(name) * 8) <= across else short
        if text and below - above >= _ROW and max(len(text) * 8, text_width(short)) <= across:
            shown.setdefault((text, taken / 2 / size), []).append(size)
    for (text, shift), sizes in shown.items():
        place = ((left + right) / 2, (top + low) / 2)
        sheet.words(text, place, style=f"label {MIDDLE}", shift=(shift, 0), sizes=sizes)


def _marks_in_words(lay: Lay, placed: LaidPiece, outcome: PlannedOrder, ruler: Ruler) -> str:
    along, across = ([show_length(mark, ruler).replace(" ", "\u00a0") for mark in pair] for pair in piece_marks(placed))
    edge = lay.cloth.cloth.edges(outcome.order.rules).name
    turned = ", turned" if placed.turned else ""
    where = f"{lay.cloth.cloth.name}, strip {placed.strip}" if len(outcome.lays) > 1 else f"strip {placed.strip}"
    return (
        f"{letter(placed.piece)} {lay.pieces[placed.piece].name}{turned}, {where}: from the straight end {along[0]} "
        f"to {along[1]}, "
        f"from the {edge} {across[0]} to {across[1]}."
    )


def _edges(sheet: Sheet, stretch: Stretch) -> None:
    width, first, last = stretch.lay.cloth.width, stretch.start == 0, stretch.end == stretch.lay.length
    a, b = stretch.place(0, stretch.start), stretch.place(0, stretch.end)
    c, d = stretch.place(width, stretch.end), stretch.place(width, stretch.start)
    if first and last:
        sheet.line(lines.EDGE, a, b, c, d, a)
    elif first:
        sheet.line(lines.EDGE, b, a, d, c)
    elif last:
        sheet.line(lines.EDGE, a, b, c, d)
    else:
        sheet.line(lines.EDGE, a, b)
        sheet.line(lines.EDGE, d, c)


def _marks(sheet: Sheet, stretch: Stretch, ruler: Ruler) -> None:
    lay = stretch.lay
    marks = sorted(
        {
            place
            for placed in lay.placed
            for place in (placed.box.y, placed.box.end)
            if stretch.start < place <= stretch.end
        }
    )
    if lay.first_cut == "across":
        marks = sorted(
            {
                mark
                for part in lay.strips
                for mark in (lay.extent(part).y, lay.extent(part).end)
                if stretch.start < mark <= stretch.end
            }
            & set(marks)
        )
    labels = [_Label(mark, bare(mark, ruler), sheet.at(stretch.place(0, mark)), sheet.width) for mark in marks]
    shown = {size: _with_room(labels, size) for size in SIZES}
    for label in labels:
        at = stretch.place(0, label.mark)
        sheet.tick(at, (0, 4))
        if sizes := [size for size in SIZES if label in shown[size]]:
            sheet.words(
                label.text,
                at,
                style="dimension-text",
                anchor="end" if label.last else "middle",
                shift=(6 if label.last else 0, -7),
                sizes=sizes,
            )


@dataclass(frozen=True)
class _Within:
    """A mark from the long edge that is written within the cloth, on a drawing enlarged so many times."""

    text: str
    place: tuple[float, float]
    size: int
    x: float
    y: float

    @property
    def ends(self) -> float:
        """Where its words end [drawing units, enlarged]."""
        return self.x + _FROM_CUT + len(self.text) * _DIGIT + 2

    def lies_by(self, begins: float, ends: float, height: float) -> bool:
        """Whether it would be touched by words at a height, between where they may begin and end [drawing units,
        enlarged]."""
        return self.x < ends and self.ends > begins and abs(self.y - height) < _ROW


def _marks_of_strips(stretch: Stretch) -> Iterator[tuple[Fraction, Fraction, list[Fraction]]]:
    """Of each strip that is cut otherwise than the last: where it begins and ends, and its marks from the long edge."""
    lay = stretch.lay
    before: list[Fraction] = []
    for held in _held(lay) if lay.first_cut == "across" else [[placed.box for placed in lay.placed]]:
        starts = max(min(box.y for box in held), stretch.start)
        if starts >= stretch.end:
            continue
        marks = sorted({mark for box in held if box.y <= starts < box.end for mark in (box.x, box.right) if mark})
        if marks and marks != before:
            yield starts, max(box.end for box in held), marks
            before = marks


def _marks_beside(sheet: Sheet, stretch: Stretch, ruler: Ruler) -> None:
    """The marks from the long edge of a stretch's first strip, beside the cloth."""
    for _, _, marks in islice(_marks_of_strips(stretch), 1):
        for size in SIZES:
            for mark in _apart(marks, sheet.scale * size, 15):
                place, style = stretch.place(mark, stretch.start), f"dimension-text {MIDDLE}"
                sheet.words(bare(mark, ruler), place, style, "end", (-7 / size, 0), (size,))
        for mark in marks:
            sheet.tick(stretch.place(mark, stretch.start), (4, 0))


def _marks_within(sheet: Sheet, stretch: Stretch, ruler: Ruler) -> list[_Within]:
    """The marks from the long edge of the further strips, with room in their own strip and off the bar that counts
    the strips."""
    width, found = stretch.lay.cloth.width, []
    for starts, end, marks in islice(_marks_of_strips(stretch), 1, None):
        for size in SIZES:
            for mark in _apart([mark for mark in marks if mark < width], sheet.scale * size, 28):
                text, place = bare(mark, ruler), stretch.place(mark, starts)
                x, y = sheet.at(place)
                made = _Within(text, place, size, x * size, y * size)
                room = float(end - starts) * sheet.scale * size
                if made.ends - made.x <= room - 2 and float(width - mark) * sheet.scale * size >= _DIGIT:
                    found.append(made)
    return found


def _held(lay: Lay) -> list[list[Rectangle]]:
    """The pieces of each strip in turn."""
    return [[placed.box for placed in held] for _, held in groupby(lay.placed, key=lambda placed: placed.strip)]


def _apart(marks: list[Fraction], scale: float, room: int) -> list[Fraction]:
    """The marks with room for their words, also from the long edge itself; the last always among them."""
    return [marks[index] for index in thinned(marks, scale, room)]


def _strips(sheet: Sheet, stretch: Stretch) -> None:
    """A bar beside the cloth with the number of each strip, as the marking table has it."""
    lay = stretch.lay
    across = lay.first_cut == "across"
    for number, held in enumerate(_held(lay), start=1):
        box = Rectangle(min(box.x for box in held), min(box.y for box in held), Fraction(0), Fraction(0))
        box = replace(
            box, width=max(each.right for each in held) - box.x, length=max(each.end for each in held) - box.y
        )
        if not (seen := _seen(stretch, box)):
            continue
        (left, top), _, (right, low), _ = seen
        away = _BAR / 2 / sheet.scale
        edge = stretch.down + float(lay.cloth.width) + away if across else float(stretch.end - stretch.start) + away
        ends = [(left, edge), (right, edge)] if across else [(edge, top), (edge, low)]
        sheet.line(lines.STRIP, *ends)
        for end in ends:
            sheet.tick(end, (0, 3) if across else (3, 0), style=lines.STRIP)
        middle = ((ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2)
        length = (right - left if across else low - top) * sheet.scale
        if sizes := [size for size in SIZES if length * size >= max(13, _DIGIT * len(str(number)) + 4)]:
            sheet.words(str(number), middle, style=f"label {MIDDLE}", sizes=sizes)


@dataclass(frozen=True)
class _Label:
    """What is read at a mark, which stands at a place on a sheet so wide [drawing units]."""

    mark: Fraction
    text: str
    at: Point
    sheet: int

    @property
    def last(self) -> bool:
        """Whether it stands so far right that its text must end there."""
        return self.at[0] > self.sheet - max(24, self.wide / 2)

    @property
    def wide(self) -> float:
        return len(self.text) * _DIGIT

    def ends(self, size: int) -> tuple[float, float]:
        """From where to where the text reaches on a drawing enlarged so many times."""
        right = float(self.at[0]) * size + (6 if self.last else self.wide / 2)
        return right - self.wide, right


def _with_room(labels: list[_Label], size: int) -> list[_Label]:
    """The labels that do not run into one another, the last always among them."""
    kept: list[_Label] = []
    for label in reversed(labels):
        if not kept or label.ends(size)[1] + _DIGIT <= kept[-1].ends(size)[0]:
            kept.append(label)
    return kept


def _named(sheet: Sheet, stretch: Stretch, ruler: Ruler, room: int) -> None:
    """The cloth's name over its marks, on one line; the first stretch also tells the way of the grain and the unit of
    the marks."""
    name = stretch.lay.cloth.cloth.name
    if stretch.start:
        after = f", from {show_length(stretch.start, ruler)} on"
    else:
        copies = f", {stretch.copies} cut alike" if stretch.copies > 1 else ""
        after = f"{copies}; grain ↔; marks in {ruler.unit_to_read}"
    sheet.words(
        _on_one_line(name, after, room),
        stretch.place(0, stretch.start),
        style="dimension-text",
        anchor="start",
        shift=(0, -28),
    )


def _on_one_line(name: str, after: str, room: int) -> str:
    """A name shortened until it fits into the room on the sheet with what comes after it: a second line would run into
    the marks."""
    shown = name
    while text_width(shown + after) > room and len(shown) > 1:
        shown = shown.removesuffix("…")[:-1].rstrip() + "…"
    return shown + after


def _listed(outcome: PlannedOrder, ruler: Ruler) -> str:
    counts = outcome.counts
    return "; ".join(
        f"{named(piece, number)}, {show_length(piece.width, ruler)} by {show_length(piece.length, ruler)}: "
        f"{counts[number]}"
        for number, piece in enumerate(outcome.pieces)
        if counts[number]
    )
