"""Where the layers of an edge cut through lie on the sheet: their paths, their round folds, what is solid in them.

Across, it is to scale; layers are drawn thick and a little apart, so that they can be counted.
"""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import cos, hypot, pi, sin

from calculators.drawing.picture import WIDTH
from calculators.trade.sections.closings import BUTTON
from calculators.trade.sections.levels import levels
from calculators.trade.sections.section import CrossSection, CutEnd, Run

PITCH = 15.0  # [drawing units] from layer to layer
THICK = 9.5  # of a layer
SHORTEST = 2 * PITCH  # as wide as the narrowest stretch is drawn at least
EDGE_WIDE = 230.0  # as wide as all that is folded is drawn at most
RAMP = 1.6 * PITCH  # in which a strip rises over an edge below it
END = 5.0  # of the sheet left free at its sides
_TALLEST, _BUTTON = 5.0, 1.0  # [layers] how high what is solid is drawn at most, and a button
Place = tuple[float, float]
Frame = tuple[float, float, float]


class SectionLayout:
    """A section laid out on the sheet. x of the sheet is left + scale · (mm - low)."""

    def __init__(self, section: CrossSection, frame: Frame) -> None:
        self.section = section
        self.low, self.scale, self.left = frame
        self.heights = {each.strip: self._height(each) for each in section.solids}
        self.levels = levels(section, self.heights)
        self.tallest = max(
            max(each.values()) + self.heights.get(run.strip, 1.0) - 1 for run, each in self.levels.items()
        )

    def _height(self, solid: Run) -> float:
        """How high something solid is [layers]: as high as it is wide, but for a button."""
        if solid.strip == BUTTON:
            return _BUTTON
        return min(max(float(solid.right - solid.left) * self.scale / PITCH, 1.0), _TALLEST)

    def ellipse(self, solid: Run) -> tuple[Place, Place]:
        """The middle of something solid, and how far it reaches across and up [drawing units]."""
        high = self.heights[solid.strip]
        at = (solid.left + solid.right) / 2
        up = (high * PITCH - (PITCH - THICK)) / 2
        wide = float(solid.right - solid.left) * self.scale / 2
        return (self.x(at), self.y(self.level_at(solid, solid.left) + (high - 1) / 2)), (
            wide if solid.strip == BUTTON else up,
            up,
        )

    def x(self, at: Fraction) -> float:
        return min(max(self.left + (float(at) - self.low) * self.scale, END), WIDTH - END)

    def y(self, level: float) -> float:
        """Counted up from the lowest layer, 0."""
        return -level * PITCH

    def level_at(self, run: Run, at: Fraction) -> float:
        """The height of a run at one of its ends."""
        cells = sorted(self.levels[run])
        return self.levels[run][cells[0] if at == run.left else cells[-1]]

    def path(self, strip: str) -> list[Place]:
        """The middle of a strip from its raw edge on."""
        return [place for part in self.parts(strip) for place in part]

    def parts(self, strip: str) -> list[list[Place]]:
        """The same in parts: by turns what lies straight or on a slope, and what goes round a fold."""
        runs = self.section.runs_of(strip)
        parts: list[list[Place]] = []
        for number, run in enumerate(runs):
            start, end = run.at(run.low), run.at(run.high)
            places: list[Place] = []
            if number == 0:
                places.append((self.x(start) + run.way * self._inset_of_end(run, start), self._height_at(run, start)))
            places += self._along(run)
            if number + 1 == len(runs):
                inset = 0 if run.runs_on else self._inset_of_end(run, end)
                places.append((self.x(end) - run.way * inset, self._height_at(run, end)))
            parts.append(places)
            if number + 1 < len(runs):
                parts.append(self._round(run, runs[number + 1]))
        return parts

    def end(self, end: CutEnd) -> Place:
        """Where the end of a strip is drawn."""
        return self.x(end.at) + end.way * self._inset_of_end(end.run, end.at), self._height_at(end.run, end.at)

    def _height_at(self, run: Run, at: Fraction) -> float:
        return self.y(self.level_at(run, at))

    def _along(self, run: Run) -> list[Place]:
        """Where a run rises or sinks between its ends, in its own direction."""
        cells = sorted(self.levels[run])
        heights = [self.levels[run][cell] for cell in cells]
        found: list[Place] = []
        for (before, after), (low, high) in zip(pairwise(cells), pairwise(heights)):
            if low == high:
                continue
            at = self.x(before[1])
            lower = after if low > high else before
            ramp = min(RAMP, 0.45 * (self.x(lower[1]) - self.x(lower[0])))
            begin = at if low > high else at - ramp
            found += [
                (begin + ramp * part, self.y(low) + (self.y(high) - self.y(low)) * (1 - cos(pi * part)) / 2)
                for part in (0, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1)
            ]
        return found if run.way > 0 else found[::-1]

    def _round(self, one: Run, other: Run) -> list[Place]:
        """The round end of a fold between two runs, its outer side where the fold is."""
        at = one.at(one.high)
        side = -1 if one.left < at else 1  # whence the cloth comes, from the fold
        tip = self.x(at) + side * (THICK / 2 + self._inset(one, other))
        y1, y2 = self.y(self.level_at(one, at)), self.y(self.level_at(other, at))
        radius = abs(y2 - y1) / 2 if self._goes_round(one, other) else min(abs(y2 - y1) / 2, PITCH)
        down = 1 if y2 > y1 else -1
        quarter = [pi / 2 * part / 6 for part in range(7)]
        first = [
            (tip + side * (radius - radius * sin(turn)), y1 + down * (radius - radius * cos(turn))) for turn in quarter
        ]
        last = [
            (tip + side * (radius - radius * cos(turn)), y2 - down * (radius - radius * sin(turn))) for turn in quarter
        ]
        return [*first, *last]

    def _goes_round(self, one: Run, other: Run) -> bool:
        """Whether a fold lies close round something solid."""
        first, last = self._span(one, other)
        at = one.at(one.high)
        return any(each.solid and at in (each.left, each.right) for each in self.section.layers[first:last])

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

    def _inset_of_end(self, run: Run, at: Fraction) -> float:
        """How far the end of a strip is drawn back because a fold goes round it at the same place, or another end butts
        it."""
        order = self.section.layers.index(run)
        rounds = [
            each for each in self.section.folds()
            if each[0].at(each[0].high) == at and self._span(*each)[0] < order < self._span(*each)[1]
        ]  # fmt: skip
        butts = any(
            other.run is not run and other.at == at and self.level_at(run, at) == self.level_at(other.run, at)
            for other in self.section.ends()
        )
        return (PITCH * len(rounds) + 2 if rounds else 0) + (1.5 if butts else 0)

    def has(self, strip: str, flat: Fraction) -> bool:
        """Whether a place of a flat strip has not been cut off."""
        return any(run.low <= flat <= run.high for run in self.section.runs_of(strip))

    def height_of(self, strip: str, flat: Fraction) -> Place:
        """Where a place of a flat strip is drawn; half-way round where it is a fold, on top of what is solid."""
        runs = [run for run in self.section.runs_of(strip) if run.low <= flat <= run.high]
        at = runs[0].at(flat)
        heights = [self._level_over(run, at) + self.heights.get(strip, 1.0) - 1 for run in runs]
        height = self.y(sum(heights) / len(heights))
        if len(runs) > 1:
            side = -1 if runs[0].left < at else 1
            return self.x(at) + side * THICK / 2, height
        return self.x(at), height

    def _level_over(self, run: Run, at: Fraction) -> float:
        return next(level for cell, level in self.levels[run].items() if cell[0] <= at <= cell[1])


def beside(path: Sequence[Place], off: float) -> list[Place]:
    """A line beside a path, to its right as seen going along it where `off` is positive and y points down."""
    found = []
    for number, (x, y) in enumerate(path):
        (x1, y1), (x2, y2) = path[max(number - 1, 0)], path[min(number + 1, len(path) - 1)]
        length = hypot(x2 - x1, y2 - y1) or 1.0
        found.append((x - (y2 - y1) / length * off, y + (x2 - x1) / length * off))
    return found
