"""Strips of cloth cut through and seen from the side, one over another, folded and stitched at measured places.

A strip is measured flat, from its raw edge. It lies along a line on the table in runs, one between two folds; the
runs of all strips lie in one order, the lowest first. A fold turns the runs on one side of a place over and lays them
on top, or underneath, so their order is reversed.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

Side = Literal["left", "right"]
AMPLE = Fraction(10_000)  # [mm] how long a strip is that runs on


@dataclass(frozen=True)
class Run:
    """A straight part of a strip, from `low` to `high` of the flat strip [mm]; what is flat at f lies at zero + way·f.

    runs_on: whether the strip goes on beyond `high`. right_up: whether its right side looks up.
    """

    strip: str
    low: Fraction
    high: Fraction
    zero: Fraction
    way: int
    right_up: bool

    def at(self, flat: Fraction) -> Fraction:
        """Where a place of the flat strip lies [mm].

        Source: derived, a run is the flat strip moved along the table, or turned over.
        """
        return self.zero + self.way * flat

    @property
    def left(self) -> Fraction:
        """Its end at the left [mm].

        Source: derived, the lesser place of its two ends.
        """
        return min(self.at(self.low), self.at(self.high))

    @property
    def right(self) -> Fraction:
        """Its end at the right [mm].

        Source: derived, the greater place of its two ends.
        """
        return max(self.at(self.low), self.at(self.high))

    @property
    def runs_on(self) -> bool:
        return self.high == AMPLE

    def folded(self, at: Fraction) -> "Run":
        """The run turned over about a place [mm]."""
        return replace(self, zero=2 * at - self.zero, way=-self.way, right_up=not self.right_up)

    def parted(self, at: Fraction) -> tuple["Run | None", "Run | None"]:
        """What of it lies to the left of a place [mm], and to the right."""
        if self.right <= at:
            return self, None
        if self.left >= at:
            return None, self
        flat = (at - self.zero) * self.way
        near, far = replace(self, high=flat), replace(self, low=flat)
        return (near, far) if self.way > 0 else (far, near)


@dataclass(frozen=True)
class Row:
    """A row of stitches through places of flat strips [mm], so that it goes along when they are folded."""

    name: str
    holds: tuple[tuple[str, Fraction], ...]


@dataclass(frozen=True)
class CrossSection:
    """Runs, the lowest first, and the rows of stitches through them."""

    layers: tuple[Run, ...] = ()
    rows: tuple[Row, ...] = ()

    def lay(self, strip: str, at: Fraction, way: int, right_up: bool) -> "CrossSection":
        """Lay a strip on top, its raw edge at a place [mm]. way: 1 where it goes on to the right, else -1."""
        return replace(self, layers=(*self.layers, Run(strip, Fraction(0), AMPLE, at, way, right_up)))

    def fold(self, at: Fraction, part: Side, over: bool = True, strips: Collection[str] = ()) -> "CrossSection":
        """Fold what lies to one side of a place [mm] over all layers or under them. strips: those folded, all where
        none are named."""
        staying: list[Run] = []
        moving: list[Run] = []
        for run in self.layers:
            if strips and run.strip not in strips:
                staying.append(run)
                continue
            left, right = run.parted(at)
            moves, stays = (left, right) if part == "left" else (right, left)
            moving += [moves.folded(at)] if moves else []
            staying += [stays] if stays else []
        moving.reverse()
        return replace(self, layers=(*staying, *moving) if over else (*moving, *staying))

    def stitch(self, at: Fraction, name: str) -> "CrossSection":
        """Stitch through all layers at a place [mm]."""
        holds = tuple((run.strip, (at - run.zero) * run.way) for run in self.layers if run.left < at < run.right)
        return replace(self, rows=(*self.rows, Row(name, holds)))

    def trim(self, strip: str, to: Fraction) -> "CrossSection":
        """Cut a strip off at a place of the flat strip [mm]."""
        kept = (
            replace(run, low=max(run.low, to)) if run.strip == strip else run
            for run in self.layers
            if run.strip != strip or run.high > to
        )
        return replace(self, layers=tuple(kept))

    @property
    def strips(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(run.strip for run in self.layers))

    def runs_of(self, strip: str) -> list[Run]:
        """The runs of a strip, from its raw edge on."""
        return sorted((run for run in self.layers if run.strip == strip), key=lambda run: run.low)

    def folds(self) -> Iterator[tuple[Run, Run]]:
        """Every two runs that meet in a fold, the one nearer to the raw edge first."""
        for strip in self.strips:
            runs = self.runs_of(strip)
            yield from zip(runs, runs[1:])

    def raw_ends(self) -> dict[str, Run]:
        """The run in which each strip has its raw edge."""
        return {strip: self.runs_of(strip)[0] for strip in self.strips}

    def at(self, strip: str, flat: Fraction) -> Fraction:
        """Where a place of a flat strip lies [mm].

        Source: derived, where the run that holds it has it.
        """
        return next(run.at(flat) for run in self.runs_of(strip) if run.low <= flat <= run.high)

    def held(self, row: str, strip: str) -> Fraction:
        """The place of the flat strip that a row goes through, the one farthest from its raw edge [mm].

        Source: derived, rows are kept by places of the flat strip.
        """
        return max(flat for each in self.rows if each.name == row for name, flat in each.holds if name == strip)

    def cells(self) -> list[tuple[Fraction, Fraction]]:
        """The stretches between the ends of runs, from the left [mm]; within each the layers are the same.

        Source: derived, layers change only where a run ends.
        """
        ends = sorted({end for run in self.layers for end in (run.left, run.right)})
        return list(zip(ends, ends[1:]))

    def over(self, cell: tuple[Fraction, Fraction]) -> list[Run]:
        """The runs that lie over a stretch, the lowest first."""
        return [run for run in self.layers if run.left <= cell[0] and run.right >= cell[1]]

    def most_layers(self) -> int:
        """At the thickest stretch."""
        return max(len(self.over(cell)) for cell in self.cells())
