"""An edge cut through that can be played: how each strip lies before a fold and after it, with the same places in both.

Between the two every stretch of a strip turns from its one direction to the other, and the strip is put together again
from a place that stays: so it does not tear, and at both ends it lies as the steps are drawn.
"""

import xml.etree.ElementTree as ET
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from math import atan2, cos, dist, hypot, pi, sin, tau

from calculators.drawing import lines
from calculators.drawing.picture import WIDTH, Picture, Sheet
from calculators.drawing.played import PlayedStep, played
from calculators.drawing.section import draw_layers, end_strokes, frame_of, ribbon
from calculators.drawing.section_layout import THICK, Frame, Place, SectionLayout
from calculators.trade.sections.edge import EdgeStep
from calculators.trade.sections.section import Run
from calculators.trade.sections.strip_folds import StripFold, strip_folds

FIRST = "Laid flat"
_TALLEST = 150.0  # [drawing units] above the table: what stands higher on its way runs out of the drawing
_SAME = 0.05  # [drawing units] places nearer than this are one
Edge = tuple[Place, Place]


@dataclass(frozen=True)
class BentStrip:
    """How a strip lies before a fold and after it, place by place [drawing units], y down from the lowest layer.

    name: of the strip. before, after: as many places each. holds: the number of a place that stays. turn: 1 where what
    turns goes clockwise as it is seen, else -1. about: where the strip as a whole turns, None where some of it stays.
    """

    name: str
    before: tuple[Place, ...]
    after: tuple[Place, ...]
    holds: int
    turn: int
    about: Place | None

    def on_its_way(self, share: float) -> list[Place]:
        """How it lies between the two. share: how far the fold has gone, 0 to 1.

        Source: derived, lengths and directions of its stretches lie between those before and after.
        """
        edges: list[Place] = []
        for (long_1, begin), (long_2, _), turned in zip(
            _stretches(self.before), _stretches(self.after), self._turned()
        ):
            long, way = long_1 * (1 - share) + long_2 * share, begin + share * turned
            edges.append((long * cos(way), long * sin(way)))
        held = self._held(share)
        back = accumulate(reversed(edges[: self.holds]), lambda at, way: (at[0] - way[0], at[1] - way[1]), initial=held)
        onward = accumulate(edges[self.holds :], lambda at, way: (at[0] + way[0], at[1] + way[1]), initial=held)
        return [*reversed(list(back)), *list(onward)[1:]]

    def _turned(self) -> list[float]:
        """How far each stretch turns [radians]: from the place that stays outwards, each about as far as the one before
        it, since cloth bends in rounds."""
        off = [end - begin for (_, begin), (_, end) in zip(_stretches(self.before), _stretches(self.after))]
        for order in (range(self.holds, len(off)), range(self.holds - 1, -1, -1)):
            last = self.turn * pi if self.about else 0.0
            for number in order:
                off[number] = last = last + (off[number] - last + pi) % tau - pi
        return off

    def _held(self, share: float) -> Place:
        (x1, y1), (x2, y2) = self.before[self.holds], self.after[self.holds]
        if self.about is None:
            return x1 + (x2 - x1) * share, y1 + (y2 - y1) * share
        x, y = self.about
        off = (x1 + (2 * x - x2 - x1) * share - x, y1 + (2 * y - y2 - y1) * share - y)
        turn = self.turn * pi * share
        return x + off[0] * cos(turn) - off[1] * sin(turn), y + off[0] * sin(turn) + off[1] * cos(turn)


def _stretches(places: Sequence[Place]) -> Iterator[tuple[float, float]]:
    """The length of every stretch and its direction; one without length goes on as the one before it."""
    ways = [atan2(y2 - y1, x2 - x1) for (x1, y1), (x2, y2) in pairwise(places) if dist((x1, y1), (x2, y2)) > _SAME]
    way = ways[0] if ways else 0.0
    for (x1, y1), (x2, y2) in pairwise(places):
        long = hypot(x2 - x1, y2 - y1)
        if long > _SAME:
            way = atan2(y2 - y1, x2 - x1)
        yield long, way


def played_edge(
    steps: Sequence[EdgeStep], pictures: Sequence[Picture], frame: Frame | None = None
) -> ET.Element | None:
    """The steps of an edge in one drawing, at the scale of their own. pictures: of the steps; frame: of theirs."""
    frame = frame or frame_of([step.section for step in steps])
    first = steps[0].section
    ways = [strip_folds(one.section, other.section) for one, other in pairwise(steps)]
    lead = strip_folds(first.before[0], first) if first.before else ()
    bends = [[bent(fold, frame) for fold in each or ()] for each in (lead, *ways)]
    tables = [float(each.svg.get("data-table", "0")) for each in pictures]
    feet = [float(each.svg.get("viewBox", "").split()[3]) - table for each, table in zip(pictures, tables)]
    tops = (
        -y for each in bends for strips in each for strip in strips for share in (0.25, 0.5, 0.75)
        for _, y in strip.on_its_way(share)
    )  # fmt: skip
    high = max(*tables, min(max(tops, default=0.0) + THICK, _TALLEST))
    sheet = Sheet((0, -high, WIDTH, max(feet)), margins=(0, 0, 0, 0), down=True, tallest=high + max(feet))
    shown = [PlayedStep(FIRST, drawn=[_flat(sheet, SectionLayout(first.before[0], frame))], ahead=True)] if lead else []
    for step, table, way, strips in zip(steps, tables, (lead, *ways), bends):
        parts = [_drawn(sheet, fold, each, frame) for fold, each in zip(way or (), strips)]
        shown.append(PlayedStep(step.name, high - table, parts, jumps=way is None))
    made = played(shown, (0, 0, WIDTH, high + max(feet)))
    if made is not None:
        made.set("data-table", f"{high:.1f}")
    return made


def _flat(sheet: Sheet, drawn: SectionLayout) -> ET.Element:
    whole, sheet.svg = sheet.svg, ET.Element("g")
    draw_layers(sheet, drawn)
    part, sheet.svg = sheet.svg, whole
    return part


def bent(fold: StripFold, frame: Frame) -> list[BentStrip]:
    """How every strip lies before and after a fold."""
    before, after = SectionLayout(fold.before, frame), SectionLayout(fold.after, frame)
    at = before.x(fold.at)
    heights = [place[1] for strip in fold.after.strips for place in after.path(strip)]
    hinge = at, (max(heights) + min(heights)) / 2
    turn = 1 if fold.clockwise else -1
    made = []
    for strip in fold.after.strips:
        pairs = list(
            _matched(
                before, after, strip, [flat for row in fold.after.rows for name, flat in row.holds if name == strip]
            )
        )
        runs = fold.after.runs_of(strip)
        stays = [runs[0] not in fold.moved, runs[-1] not in fold.moved]
        made.append(
            BentStrip(
                strip, tuple(one for one, _ in pairs), tuple(other for _, other in pairs),
                len(pairs) - 1 if stays[1] or not stays[0] else 0, turn, None if any(stays) else hinge,
            )
        )  # fmt: skip
    return made


def _matched(before: SectionLayout, after: SectionLayout, strip: str, flats: Iterable[Fraction]) -> Iterator[Edge]:
    """Where the same places of a strip are drawn before and after, from its raw edge on. flats: places of the flat
    strip that are to be among them."""
    old_runs, old_parts = before.section.runs_of(strip), before.parts(strip)
    runs, parts = after.section.runs_of(strip), after.parts(strip)
    for number, run in enumerate(runs):
        n = next(i for i, each in enumerate(old_runs) if each.low <= run.low and run.high <= each.high)
        old = _between(_straight(old_parts, n), before, old_runs[n], run)
        new = _straight(parts, number)
        middle = [after.x(run.at(flat)) for flat in flats if run.low < flat < run.high]
        yield from _paired(old, new, middle, run.runs_on)
        if number + 1 < len(runs):
            rounds = parts[2 * number + 1]
            had = old_runs[n].high == run.high
            yield from zip(old_parts[2 * n + 1] if had else [old[-1]] * len(rounds), rounds)


def _straight(parts: list[list[Place]], number: int) -> list[Place]:
    """A run from the end of one round fold to the beginning of the next."""
    before = parts[2 * number - 1][-1:] if number else []
    after = parts[2 * number + 1][:1] if 2 * number + 1 < len(parts) else []
    return [*before, *parts[2 * number], *after]


def _between(places: list[Place], drawn: SectionLayout, old: Run, run: Run) -> list[Place]:
    """The part of a run's path that became a run of its own."""
    for flat, is_low in ((run.low, True), (run.high, False)):
        if flat in (old.low, old.high):
            continue
        x = drawn.x(old.at(flat))
        along = _length_at(places, x)
        cut = _place_at(places, along)
        lengths = _lengths(places)
        if is_low:
            places = [cut, *(place for place, long in zip(places, lengths) if long > along + _SAME)]
        else:
            places = [*(place for place, long in zip(places, lengths) if long < along - _SAME), cut]
    return places


def _lengths(places: Sequence[Place]) -> list[float]:
    return list(accumulate((dist(one, other) for one, other in pairwise(places)), initial=0.0))


def _length_at(places: Sequence[Place], x: float) -> float:
    """How far along a path a place across the sheet is reached."""
    for (one, other), long in zip(pairwise(places), _lengths(places)):
        if min(one[0], other[0]) - _SAME <= x <= max(one[0], other[0]) + _SAME and one[0] != other[0]:
            return long + dist(one, other) * (x - one[0]) / (other[0] - one[0])
    near = min((one, other) for one, other in zip((abs(place[0] - x) for place in places), _lengths(places)))
    return near[1]


def _place_at(places: Sequence[Place], along: float) -> Place:
    for (one, other), (low, high) in zip(pairwise(places), pairwise(_lengths(places))):
        if along <= high and high > low:
            share = max(along - low, 0.0) / (high - low)
            return one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share
    return places[-1]


def _paired(old: list[Place], new: list[Place], middle: Iterable[float], runs_on: bool) -> Iterator[Edge]:
    """The same places of a run before and after: all where either turns, and those at `middle` across the sheet."""
    lengths, others = _lengths(old), _lengths(new)
    scale = 1.0 if runs_on or not others[-1] else lengths[-1] / others[-1]
    wanted = [*(long * scale for long in others), *(_length_at(new, x) * scale for x in middle)]
    stops: list[float] = []
    for long in sorted([*lengths, *wanted]):
        if not stops or long - stops[-1] > _SAME:
            stops.append(long)
    for along in stops:
        yield _place_at(old, min(along, lengths[-1])), _place_at(new, min(along / (scale or 1.0), others[-1]))


def _drawn(sheet: Sheet, fold: StripFold, strips: Sequence[BentStrip], frame: Frame) -> ET.Element:
    """What a script needs: the lines of each strip and where they lie before and after; what is drawn on them."""
    after, made = SectionLayout(fold.after, frame), ET.Element("g", {"class": "bend"})
    before = SectionLayout(fold.before, frame)
    for one, other in zip(fold.before.solids, fold.after.solids):
        (x, y), reach = before.ellipse(one)
        to, _ = after.ellipse(other)
        ET.SubElement(made, "ellipse", {
            "class": "solid", "rx": f"{reach[0]:.1f}", "ry": f"{reach[1]:.1f}",
            "data-before": _written(sheet, [(x, y)]), "data-after": _written(sheet, [to]),
        })  # fmt: skip
    for strip in strips:
        told = {
            "class": "strip", "data-turn": str(strip.turn), "data-holds": str(strip.holds),
            "data-before": _written(sheet, strip.before), "data-after": _written(sheet, strip.after),
        }  # fmt: skip
        if strip.about:
            told["data-about"] = _written(sheet, [strip.about])
        ribbon_of = ET.SubElement(made, "g", told)
        for style, off in ribbon(fold.after, strip.name):
            ET.SubElement(ribbon_of, "polyline", {"class": style, **({"data-off": f"{off:.1f}"} if off else {})})
    names = [strip.name for strip in strips]
    for end in fold.after.ends():
        number = names.index(end.run.strip)
        last = end.flat == end.run.high
        for style, *strokes in end_strokes(end):
            points = " ".join(f"{x:.1f},{y:.1f}" for x, y in strokes)
            on = f"{number} {len(strips[number].after) - 1 if last else 0}"
            ET.SubElement(made, "polyline", {"class": style, "data-on": on, "points": points})
    for row in fold.after.rows:
        through = [
            (names.index(name), _nearest(strips[names.index(name)], after.height_of(name, flat)))
            for name, flat in row.holds
            if after.has(name, flat)
        ]
        through.sort(key=lambda each: strips[each[0]].before[each[1]][1])
        told_of = " ".join(f"{strip} {place}" for strip, place in (through[0], through[-1]))
        ET.SubElement(made, "polyline", {"class": lines.SEWN_THROUGH, "data-through": told_of})
    return made


def _nearest(strip: BentStrip, place: Place) -> int:
    return min(range(len(strip.after)), key=lambda number: dist(strip.after[number], place))


def _written(sheet: Sheet, places: Iterable[Place]) -> str:
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in map(sheet.at, places))
