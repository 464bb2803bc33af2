"""Strips of cloth cut through and seen from the side, one over another, folded and stitched at measured places.

A strip is measured flat, from its raw edge. It lies along a line on the table in runs, one between two folds; the
runs of all strips lie in one order, the lowest first. A fold turns the runs on one side of a place over and lays them
on top, or underneath, so their order is reversed. What is solid, such as a rod, is a run
that cannot be folded.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Literal

Side = Literal["left", "right"]
AMPLE = Fraction(10_000)  # [mm] how long a strip is that runs on


@dataclass(frozen=True)
class Run:
    """A straight part of a strip, from `low` to `high` of the flat strip [mm]; what is flat at f lies at zero + way·f.

    right_up: whether its right side looks up. solid: whether it is no cloth but a rod, a cord, a button.
    """

    strip: str
    low: Fraction
    high: Fraction
    zero: Fraction
    way: int
    right_up: bool
    solid: bool = False

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
        """Whether the strip goes on beyond what is looked at."""
        return self.high == AMPLE

    def folded(self, at: Fraction) -> "Run":
        """The run turned over about a place [mm]."""
        return replace(self, zero=2 * at - self.zero, way=-self.way, right_up=not self.right_up)

    def parted(self, at: Fraction) -> tuple["Run | None", "Run | None"]:
        """What of it lies to the left of a place [mm], and to the right."""
        if self.right <= at or (self.solid and self.left + self.right <= 2 * at):
            return self, None
        if self.left >= at or self.solid:
            return None, self
        flat = (at - self.zero) * self.way
        near, far = replace(self, high=flat), replace(self, low=flat)
        return (near, far) if self.way > 0 else (far, near)


@dataclass(frozen=True)
class Row:
    """A row of stitches through places of flat strips [mm], so that it goes along when they are folded.

    whipped: whether its thread goes over the edges of the strips that it holds.
    """

    name: str
    holds: tuple[tuple[str, Fraction], ...]
    whipped: bool = False


@dataclass(frozen=True)
class CutEnd:
    """Where a strip ends: the run in which it does, and the place of the flat strip [mm].

    words: what it is called; neat: whether it cannot fray.
    """

    run: Run
    flat: Fraction
    words: str
    neat: bool

    @property
    def at(self) -> Fraction:
        """Where it lies [mm].

        Source: derived, where its run has it.
        """
        return self.run.at(self.flat)

    @property
    def way(self) -> int:
        """1 where the strip goes on to the right of it, else -1."""
        return self.run.way if self.flat == self.run.low else -self.run.way


@dataclass(frozen=True)
class CrossSection:
    """Runs, the lowest first, and the rows of stitches through them.

    neat: strip and end, False for the one it is measured from → what that end is called, since it cannot fray. before:
    the sections it was folded from, latest last. turned: how many times the whole work was turned over.
    """

    layers: tuple[Run, ...] = ()
    rows: tuple[Row, ...] = ()
    neat: Mapping[tuple[str, bool], str] = field(default_factory=dict)
    before: tuple["CrossSection", ...] = field(default=(), compare=False, repr=False)
    turned: int = field(default=0, compare=False, repr=False)

    def lay(
        self, strip: str, at: Fraction, way: int, right_up: bool, length: Fraction = AMPLE, under: bool = False
    ) -> "CrossSection":
        """Lay a strip on top or underneath, its raw edge at a place [mm]. way: 1 where it goes on to the right, else
        -1. length: of one that does not run on [mm]."""
        run = Run(strip, Fraction(0), length, at, way, right_up)
        return replace(self, layers=(run, *self.layers) if under else (*self.layers, run))

    def put_in(self, name: str, middle: Fraction, wide: Fraction, on: str = "") -> "CrossSection":
        """Put something solid, such as a rod, on the lowest layer of a strip, or on top of all; middle, wide [mm]."""
        run = Run(name, Fraction(0), wide, middle - wide / 2, 1, True, solid=True)
        below = [
            number for number, each in enumerate(self.layers) if each.strip == on and each.left < middle < each.right
        ]
        above = below[0] + 1 if on else len(self.layers)
        return replace(self, layers=(*self.layers[:above], run, *self.layers[above:]))

    def over(self, lower: "CrossSection") -> "CrossSection":
        """This work laid on other work as it lies."""
        return CrossSection(
            lower.layers + self.layers, lower.rows + self.rows, {**lower.neat, **self.neat}, turned=lower.turned
        )

    def turned_over(self) -> "CrossSection":
        """The whole work turned over on the table, end for end along the edge, so that its edge stays on its side."""
        layers = tuple(replace(run, right_up=not run.right_up) for run in reversed(self.layers))
        return replace(self, layers=layers, before=(), turned=self.turned + 1)

    def neatened(self, *strips: str, words: str = "neatened edge", far: bool = False) -> "CrossSection":
        """Finish the ends of strips so that they cannot fray. far: the other end, of a strip that has one."""
        return replace(self, neat={**self.neat, **{(strip, far): words for strip in strips}})

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
        layers = (*staying, *moving) if over else (*moving, *staying)
        return replace(self, layers=layers, before=(*self.before, self))

    def stitch(self, at: Fraction, name: str, strips: Collection[str] = (), upper: int | None = None) -> "CrossSection":
        """Stitch through all layers at a place [mm]. strips: those taken, all cloth where none are named. upper: how
        many layers from the top are taken, as by hand; all where none are counted."""
        met = [
            run for run in self.layers
            if run.left < at < run.right and (run.strip in strips if strips else not run.solid)
        ]  # fmt: skip
        holds = tuple((run.strip, (at - run.zero) * run.way) for run in met[-(upper or len(met)) :])
        return replace(self, rows=(*self.rows, Row(name, holds)))

    def whip(self, at: Fraction, name: str) -> "CrossSection":
        """Sew over and over the edges that lie at a place [mm]."""
        holds = tuple((end.run.strip, end.flat) for end in self.ends() if end.at == at)
        return replace(self, rows=(*self.rows, Row(name, holds, whipped=True)))

    def unpick(self, name: str) -> "CrossSection":
        """Take a row out."""
        return replace(self, rows=tuple(row for row in self.rows if row.name != name))

    def trim(self, strip: str, to: Fraction) -> "CrossSection":
        """Cut a strip off at a place of the flat strip [mm]."""
        kept = (
            replace(run, low=max(run.low, to)) if run.strip == strip else run
            for run in self.layers
            if run.strip != strip or run.high > to
        )
        neat = {end: words for end, words in self.neat.items() if end != (strip, False)}
        return replace(self, layers=tuple(kept), neat=neat)

    @property
    def strips(self) -> tuple[str, ...]:
        """The names of all that is cloth."""
        return tuple(dict.fromkeys(run.strip for run in self.layers if not run.solid))

    @property
    def solids(self) -> tuple[Run, ...]:
        """All that is no cloth."""
        return tuple(run for run in self.layers if run.solid)

    def runs_of(self, strip: str) -> list[Run]:
        """The runs of a strip, from its raw edge on."""
        return sorted((run for run in self.layers if run.strip == strip), key=lambda run: run.low)

    def folds(self) -> Iterator[tuple[Run, Run]]:
        """Every two runs that meet in a fold, the one nearer to the raw edge first."""
        for strip in self.strips:
            runs = self.runs_of(strip)
            yield from zip(runs, runs[1:])

    def ends(self) -> Iterator[CutEnd]:
        """Every end of a strip: its raw edge, and the other one where it does not run on."""
        for strip in self.strips:
            runs = self.runs_of(strip)
            for far, run in ((False, runs[0]), (True, runs[-1])):
                if far and run.runs_on:
                    continue
                words = self.neat.get((strip, far))
                yield CutEnd(
                    run, run.high if far else run.low, "raw edge" if words is None else words, words is not None
                )

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

    def lying(self, cell: tuple[Fraction, Fraction]) -> list[Run]:
        """The runs that lie over a stretch, the lowest first."""
        return [run for run in self.layers if run.left <= cell[0] and run.right >= cell[1]]

    def most_layers(self) -> int:
        """Of cloth, at the thickest stretch."""
        return max(sum(not run.solid for run in self.lying(cell)) for cell in self.cells())
