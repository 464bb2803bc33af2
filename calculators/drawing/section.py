"""An edge cut through and seen from the side: layers, folds, raw edges and stitches, each named where it stands.

Across, it is to scale; layers are drawn thick and a little apart, so that they can be counted. What runs on beyond the
edge is broken off.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import product
from math import cos, hypot, pi, sin

from calculators.drawing import lines
from calculators.drawing.picture import LETTERS, WIDTH, Picture, PictureSeries, Sheet, Told, key_picture, text_width
from calculators.trade.sections.edges import EdgeStep
from calculators.trade.sections.levels import levels
from calculators.trade.sections.section import CrossSection, Run
from calculators.trade.trade_rules import brief
from calculators.values.measure import Ruler, show_length

PITCH = 13.0  # [drawing units] from layer to layer
THICK = 8.0  # of a layer
SHORTEST = 2 * PITCH  # as wide as the narrowest stretch is drawn at least
EDGE_WIDE = 190.0  # as wide as all that is folded is drawn at most
RAMP = 1.6 * PITCH  # in which a strip rises over an edge below it
ROW = 16.0  # from one row of words to the next
END = 3.0  # of the sheet left free at its sides
Place = tuple[float, float]


@dataclass(frozen=True)
class Leader:
    """Words for a thing that stands at a place [drawing units]."""

    words: str
    at: Place


class _Drawn:
    """A section laid out on the sheet. x of the sheet is left + scale · (mm - low)."""

    def __init__(self, section: CrossSection, frame: tuple[float, float, float]) -> None:
        self.section = section
        self.low, self.scale, self.left = frame
        self.levels = levels(section)
        self.tallest = max(max(each.values()) for each in self.levels.values())

    def x(self, at: Fraction) -> float:
        return min(max(self.left + (float(at) - self.low) * self.scale, END), WIDTH - END)

    def y(self, level: float) -> float:
        """Counted up from the lowest layer, 0."""
        return -level * PITCH

    def level_at(self, run: Run, at: Fraction) -> int:
        """The height of a run at one of its ends."""
        cells = sorted(self.levels[run])
        return self.levels[run][cells[0] if at == run.left else cells[-1]]

    def path(self, strip: str) -> list[Place]:
        """The middle of a strip from its raw edge on."""
        runs = self.section.runs_of(strip)
        places: list[Place] = []
        for number, run in enumerate(runs):
            start, end = run.at(run.low), run.at(run.high)
            if number == 0:
                inset = self._inset_of_end(run)
                places.append((self.x(start) + run.way * inset, self.y(self.level_at(run, start))))
            places += self._along(run)
            if number + 1 < len(runs):
                places += self._round(run, runs[number + 1])
            else:
                places.append((self.x(end), self.y(self.level_at(run, end))))
        return places

    def _along(self, run: Run) -> list[Place]:
        """Where a run rises or sinks between its ends, in its own direction."""
        cells = sorted(self.levels[run])
        heights = [self.levels[run][cell] for cell in cells]
        found: list[Place] = []
        for before, (low, high) in zip(cells, zip(heights, heights[1:])):
            if low == high:
                continue
            at = self.x(before[1])
            begin = at if low > high else at - RAMP
            found += [
                (begin + RAMP * part, self.y(low) + (self.y(high) - self.y(low)) * (1 - cos(pi * part)) / 2)
                for part in (0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1)
            ]
        return found if run.way > 0 else found[::-1]

    def _round(self, one: Run, other: Run) -> list[Place]:
        """The round end of a fold between two runs, its outer side where the fold is."""
        at = one.at(one.high)
        side = -1 if one.left < at else 1  # whence the cloth comes, from the fold
        tip = self.x(at) + side * (THICK / 2 + self._inset(one, other))
        y1, y2 = self.y(self.level_at(one, at)), self.y(self.level_at(other, at))
        radius = min(abs(y2 - y1) / 2, PITCH)
        down = 1 if y2 > y1 else -1
        quarter = [pi / 2 * part / 6 for part in range(7)]
        first = [
            (tip + side * (radius - radius * sin(turn)), y1 + down * (radius - radius * cos(turn))) for turn in quarter
        ]
        last = [
            (tip + side * (radius - radius * cos(turn)), y2 - down * (radius - radius * sin(turn))) for turn in quarter
        ]
        return [*first, *last]

    def _inset(self, one: Run, other: Run) -> float:
        """How far a fold is drawn back because it lies inside others at the same place."""
        at = one.at(one.high)
        mine = self._span(one, other)
        around = [
            each for each in self.section.folds()
            if each[0].at(each[0].high) == at and (each[0].left < at) == (one.left < at)
            and self._span(*each)[0] < mine[0] and self._span(*each)[1] > mine[1]
        ]  # fmt: skip
        return PITCH * len(around)

    def _span(self, one: Run, other: Run) -> tuple[int, int]:
        order = self.section.layers
        low, high = sorted((order.index(one), order.index(other)))
        return low, high

    def _inset_of_end(self, run: Run) -> float:
        """How far a raw end is drawn back because a fold goes round it at the same place, or another end butts it."""
        at, order = run.at(run.low), self.section.layers.index(run)
        rounds = [
            each for each in self.section.folds()
            if each[0].at(each[0].high) == at and self._span(*each)[0] < order < self._span(*each)[1]
        ]  # fmt: skip
        butts = any(
            other is not run
            and other.at(other.low) == at
            and other.way == -run.way
            and self._same_level(run, other, at)
            for other in self.section.raw_ends().values()
        )
        return (PITCH * len(rounds) + 2 if rounds else 0) + (1.5 if butts else 0)

    def _same_level(self, run: Run, other: Run, at: Fraction) -> bool:
        return self.level_at(run, at) == self.level_at(other, at)

    def has(self, strip: str, flat: Fraction) -> bool:
        """Whether a place of a flat strip has not been cut off."""
        return any(run.low <= flat <= run.high for run in self.section.runs_of(strip))

    def height_of(self, strip: str, flat: Fraction) -> Place:
        """Where a place of a flat strip is drawn; half-way round where it is a fold."""
        runs = [run for run in self.section.runs_of(strip) if run.low <= flat <= run.high]
        at = runs[0].at(flat)
        heights = [self._level_over(run, at) for run in runs]
        height = self.y(sum(heights) / len(heights))
        if len(runs) > 1:
            side = -1 if runs[0].left < at else 1
            return self.x(at) + side * THICK / 2, height
        return self.x(at), height

    def _level_over(self, run: Run, at: Fraction) -> int:
        return next(level for cell, level in self.levels[run].items() if cell[0] <= at <= cell[1])


def edge_step_by_step(steps: Sequence[EdgeStep], ruler: Ruler) -> PictureSeries:
    """A drawing for every step, all at one scale, and what their lines are."""
    frame = _frame([step.section for step in steps])
    pictures = tuple(
        replace(_picture(step.name, step.section, frame, _filled(step.do, step, ruler)), told=told(step, ruler))
        for step in steps
    )
    return PictureSeries(pictures, key_picture([lines.STITCH, lines.LAYER_WRONG, lines.BREAK]))


def edge_step(steps: Sequence[EdgeStep], number: int, ruler: Ruler) -> Picture:
    """The drawing of one step. number: counted from 1."""
    step = steps[number - 1]
    caption = f"{step.name}. {_filled(step.do, step, ruler)}."
    return _picture(step.name, step.section, _frame([step.section]), caption)


def told(step: EdgeStep, ruler: Ruler) -> Told:
    """What a list of steps says beside its drawing."""
    beside = " ".join(part for part in (*map(brief, step.rules), step.how) if part)
    return Told(f"{_filled(step.do, step, ruler, '**')}.", _filled(beside, step, ruler), _filled(step.why, step, ruler))


def _filled(template: str, step: EdgeStep, ruler: Ruler, mark: str = "") -> str:
    return template.format(
        **{name: f"{mark}{show_length(length, ruler)}{mark}" for name, length in step.lengths.items()}
    )


def _frame(sections: Sequence[CrossSection]) -> tuple[float, float, float]:
    """Where all sections of a series stand: the lowest place [mm], the scale, and where that place is on the sheet."""
    ends = [_ends(section) for section in sections]
    low, high = float(min(map(min, ends))), float(max(map(max, ends)))
    narrowest = min(
        float(right - left) for each in ends for left, right in zip(sorted(each), sorted(each)[1:])
    ) if any(len(each) > 1 for each in ends) else high - low or 1.0  # fmt: skip
    wide = max(high - low, narrowest) or 1.0
    scale = min(max(EDGE_WIDE / wide, SHORTEST / narrowest), (WIDTH - 4 * RAMP) / wide)
    return low, scale, (WIDTH - wide * scale) / 2


def _ends(section: CrossSection) -> set[Fraction]:
    """The places where something ends or is folded, but for where the cloth runs on."""
    return {
        end for run in section.layers for end, flat in ((run.at(run.low), run.low), (run.at(run.high), run.high))
        if not (run.runs_on and flat == run.high)
    }  # fmt: skip


def _picture(name: str, section: CrossSection, frame: tuple[float, float, float], caption: str) -> Picture:
    drawn = _Drawn(section, frame)
    above, below = _labels(drawn)
    top, foot = drawn.y(drawn.tallest) - THICK / 2, THICK / 2
    placed_above, rows_above = _placed(above, top, -1)
    placed_below, rows_below = _placed(below, foot, 1)
    box = (0.0, top - 10, float(WIDTH), foot + 10)
    sheet = Sheet(box, margins=(0, 4 + ROW * rows_above, 0, 4 + ROW * rows_below), down=True, tallest=box[3] - box[1])
    for strip in section.strips:
        _ribbon(sheet, drawn, strip)
    for row in section.rows:
        _thread(sheet, drawn, row.holds)
    for run in section.layers:
        if run.runs_on:
            x = WIDTH - END if run.way > 0 else END
            y = drawn.y(drawn.level_at(run, run.at(run.high)))
            sheet.cut_off((x, y - THICK), (x, y + THICK))
    for label, words_at in (*placed_above, *placed_below):
        sheet.line("leader", label.at, (label.at[0], words_at[1] + (4 if words_at[1] < label.at[1] else -11)))
        sheet.words(label.words, words_at)
    return sheet.finish(name, in_words(section), with_key=False, caption=caption)


def _ribbon(sheet: Sheet, drawn: _Drawn, strip: str) -> None:
    path = drawn.path(strip)
    look = "other" if strip != drawn.section.strips[0] else "first"
    sheet.line("layer-edge", *path)
    sheet.line(f"layer-cloth {look}", *path)
    run = drawn.section.runs_of(strip)[0]
    up = 1 if run.right_up else -1  # the wrong side is the lower one
    sheet.line(lines.LAYER_WRONG, *_beside(path, up * run.way * THICK / 4))
    (x, y), way = path[0], run.way
    for part in (-1, 0, 1):
        sheet.line("raw-end", (x, y + part * THICK / 3), (x - way * 4, y + part * THICK / 2.2))


def _beside(path: Sequence[Place], off: float) -> list[Place]:
    """A line beside a path, to its right as seen going along it where `off` is positive and y points down."""
    found = []
    for number, (x, y) in enumerate(path):
        (x1, y1), (x2, y2) = path[max(number - 1, 0)], path[min(number + 1, len(path) - 1)]
        length = hypot(x2 - x1, y2 - y1) or 1.0
        found.append((x - (y2 - y1) / length * off, y + (x2 - x1) / length * off))
    return found


def _thread(sheet: Sheet, drawn: _Drawn, holds: Iterable[tuple[str, Fraction]]) -> None:
    """A row of stitches: through every layer that it holds, with a little of the thread above and below."""
    places = [drawn.height_of(strip, flat) for strip, flat in holds if drawn.has(strip, flat)]
    x = sum(each for each, _ in places) / len(places)
    high, low = min(y for _, y in places) - THICK / 2 - 2, max(y for _, y in places) + THICK / 2 + 2
    sheet.line(lines.STITCH, (x - 5, high), (x, high), (x, low), (x + 5, low))


def _labels(drawn: _Drawn) -> tuple[list[Leader], list[Leader]]:
    """What is named above the edge, and what below it."""
    section = drawn.section
    middle = drawn.y(drawn.tallest) / 2
    found: list[Leader] = []
    for row in section.rows:
        places = [drawn.height_of(strip, flat) for strip, flat in row.holds if drawn.has(strip, flat)]
        x = sum(each for each, _ in places) / len(places)
        found.append(Leader(row.name, (x, min(y for _, y in places) - THICK / 2 - 2)))
    for run in section.raw_ends().values():
        x = drawn.x(run.at(run.low)) + run.way * 2
        found.append(Leader("raw edge", (x, drawn.y(drawn.level_at(run, run.at(run.low))))))
    for one, other in list(section.folds())[-1:]:
        at = one.at(one.high)
        y = drawn.y((drawn.level_at(one, at) + drawn.level_at(other, at)) / 2)
        found.append(Leader("fold", (drawn.x(at) + (-2 if one.left < at else 2), y)))
    above = [label for label in found if label.at[1] <= middle or label.words.endswith("row")]
    below = [label for label in found if label not in above]
    for run in section.layers:
        if run.runs_on:
            x = WIDTH - 60 if run.way > 0 else 60
            y = drawn.y(drawn.level_at(run, run.at(run.high)))
            named = "" if len(section.strips) == 1 else f"{run.strip.removesuffix(' piece')}, "
            beside = [each for each in section.layers if each.runs_on and each.way == run.way]
            if run == beside[-1]:
                above.append(Leader(f"{named}{'right' if run.right_up else 'wrong'} side", (float(x), y - THICK / 2)))
            if run == beside[0]:
                below.append(Leader(f"{named}{'wrong' if run.right_up else 'right'} side", (float(x), y + THICK / 2)))
    return above, below


def _placed(labels: Sequence[Leader], edge: float, way: int) -> tuple[list[tuple[Leader, Place]], int]:
    """Each label with where its words stand, in rows away from the edge, so that none lies on another nor on another's
    line; and how many rows there are."""
    best: list[tuple[int, float]] = []

    def box(number: int, row: int, shift: float) -> tuple[float, float]:
        half = text_width(labels[number].words, LETTERS) / 2
        x = min(max(labels[number].at[0] + shift * half, half + 1), WIDTH - half - 1)
        return x - half - 4, x + half + 4

    def fits(chosen: list[tuple[int, float]]) -> bool:
        number, (row, shift) = len(chosen) - 1, chosen[-1]
        left, right = box(number, row, shift)
        line = labels[number].at[0]
        if not left + 2 <= line <= right - 2:
            return False
        for other, (its_row, its_shift) in enumerate(chosen[:-1]):
            its_left, its_right = box(other, its_row, its_shift)
            if row == its_row and left < its_right and its_left < right:
                return False
            if row > its_row and its_left < line < its_right:
                return False
            if its_row > row and left < labels[other].at[0] < right:
                return False
        return True

    def search(chosen: list[tuple[int, float]]) -> bool:
        if len(chosen) == len(labels):
            best[:] = chosen
            return True
        return any(
            fits([*chosen, choice]) and search([*chosen, choice]) for choice in product(range(4), (0, -0.8, 0.8))
        )

    if not search([]):
        return _placed(labels[:-1], edge, way)
    rows = max((row for row, _ in best), default=-1) + 1
    placed = []
    for number, (row, shift) in enumerate(best):
        left, right = box(number, row, shift)
        y = edge + way * (10 + ROW * row) + (-2 if way < 0 else 12)
        placed.append((labels[number], ((left + right) / 2, y)))
    return placed, rows


def in_words(section: CrossSection) -> str:
    """What lies over what, for those who do not see it."""

    def told(run: Run) -> str:
        return f"{run.strip}, {'right' if run.right_up else 'wrong'} side up"

    cells = section.cells()
    thickest = max(cells, key=lambda cell: len(section.over(cell)))
    stack = "; ".join(map(told, section.over(thickest)))
    held = "; ".join(f"{row.name} through {len(row.holds)} layers" for row in section.rows)
    return f"From the lowest layer: {stack}.{f' Stitched: {held}.' if held else ''}"
