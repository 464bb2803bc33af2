"""Faults that can be seen, each beside the same thing as it should be: declared as what differs, without words."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import pi, sin

from calculators.drawing import lines
from calculators.drawing.machine_row import section_of_threads
from calculators.drawing.picture import Picture, Sheet
from calculators.drawing.signs import Spot, panel

WIDE, HIGH = 150.0, 84.0  # [drawing units] of one half
LEFT, RIGHT, INNER, FOLD = 4.0, 146.0, 40.0, 70.0  # of a hem: its ends, its inner fold, its finished edge
DEEP, CORNER, POINT = 26.0, (104.0, 46.0), (130.0, 72.0)  # of a corner: its hems, its inner corner, its point
Curve = Callable[[float], float]


def level(_: float) -> float:
    """What does not differ from a straight line."""
    return 0.0


@dataclass(frozen=True)
class SeenHem:
    """A hem seen from its wrong side, by how far each line is off [drawing units], along x from 0 to 1.

    row: of stitches; stitches: where along x they lie, each from and to. marks: lines on it that should not be there.
    """

    outer: Curve = level
    inner: Curve = level
    row: Curve = level
    stitches: tuple[tuple[float, float], ...] = tuple((n / 14 + 0.008, n / 14 + 0.063) for n in range(14))
    marks: tuple[tuple[Spot, ...], ...] = ()

    def draw(self, sheet: Sheet) -> None:
        """The hem on a sheet."""
        steps = [n / 48 for n in range(49)]
        outer = [(LEFT + (RIGHT - LEFT) * at, FOLD + self.outer(at)) for at in steps]
        inner = [(LEFT + (RIGHT - LEFT) * at, INNER + self.inner(at)) for at in steps]
        sheet.area(lines.CLOTH_WRONG, [*inner, (RIGHT, 2), (LEFT, 2)], pattern=True)
        sheet.area(lines.CLOTH_RIGHT, [*inner, *outer[::-1]])
        sheet.line(lines.LANDS, *inner)
        sheet.line(lines.EDGE, *outer)
        for mark in self.marks:
            sheet.line("sign", *mark)
        for start, end in self.stitches:
            sheet.line(lines.THREAD_OVER, *(
                (LEFT + (RIGHT - LEFT) * at, INNER + 7 + self.inner(at) / 2 + self.row(at)) for at in (start, end)
            ))  # fmt: skip


@dataclass(frozen=True)
class SeenCorner:
    """A mitred corner seen from its wrong side. outline: its finished edge from left to top. mitre: its seam.

    inner: the inner folds, from left to top. marks: lines on it that should not be there.
    """

    outline: tuple[Spot, ...] = ((4, 72), POINT, (130, 4))
    mitre: tuple[Spot, ...] = (CORNER, POINT)
    inner: tuple[Spot, ...] = ((4, 46), CORNER, (104, 4))
    marks: tuple[tuple[Spot, ...], ...] = ()

    def draw(self, sheet: Sheet) -> None:
        """The corner on a sheet."""
        sheet.area(lines.CLOTH_RIGHT, [*self.outline, (4, 4)])
        sheet.area(lines.CLOTH_WRONG, [*self.inner, (4, 4)], pattern=True)
        sheet.line(lines.EDGE, *self.outline)
        sheet.line(lines.LANDS, *self.inner)
        sheet.line(lines.LANDS, *self.mitre)
        for mark in self.marks:
            sheet.line("sign", *mark)


@dataclass(frozen=True)
class SeenPiece:
    """A whole piece. corners: in order round it; inwards: how far each side curves in at its middle."""

    corners: tuple[Spot, Spot, Spot, Spot] = ((35, 6), (115, 6), (115, 78), (35, 78))
    inwards: float = 0

    def draw(self, sheet: Sheet) -> None:
        """The piece on a sheet, with its diagonals."""
        ring: list[Spot] = []
        middle = (75.0, 42.0)
        for (x1, y1), (x2, y2) in zip(self.corners, (*self.corners[1:], self.corners[0])):
            for at in (n / 12 for n in range(12)):
                x, y = x1 + (x2 - x1) * at, y1 + (y2 - y1) * at
                pull = self.inwards * sin(pi * at) / 36
                ring.append((x + (middle[0] - x) * pull, y + (middle[1] - y) * pull))
        sheet.area(lines.CLOTH_RIGHT, ring)
        sheet.line(lines.EDGE, *ring, ring[0])
        for one, other in ((0, 2), (1, 3)):
            sheet.line("dimension", self.corners[one], self.corners[other])


@dataclass(frozen=True)
class SeenThreads:
    """Threads in section; lock: where they lock, from the underside, 0, to the upper side, 1."""

    lock: Fraction = Fraction(1, 2)

    def draw(self, sheet: Sheet) -> None:
        """The cloth cut through along the row."""
        section_of_threads(sheet, self.lock, 32, LEFT, RIGHT, 28)


@dataclass(frozen=True)
class Fault:
    """A fault. title: what is seen; is_so: told for who does not see it; as_is: it, beside what it should be."""

    title: str
    is_so: str
    as_is: SeenHem | SeenCorner | SeenPiece | SeenThreads

    @property
    def should_be(self) -> "SeenHem | SeenCorner | SeenPiece | SeenThreads":
        """The same kind of thing without any fault."""
        return type(self.as_is)()


def _wave(at: float) -> float:
    return 4.0 * sin(at * 8 * pi)


def _bulge(at: float) -> float:
    return -9.0 * sin(pi * at) ** 6


def _off(at: float) -> float:
    return -11.0 * sin(pi * min(max(at * 2 - 0.5, 0), 1)) ** 2


def _puckers() -> tuple[tuple[Spot, ...], ...]:
    return tuple(((x, 34.0), (x + 2, 43.0), (x, 54.0), (x + 3, 63.0)) for x in map(float, range(16, 130, 18)))


def _arc_of(middle: Spot, radius: float) -> tuple[Spot, ...]:
    """A quarter of a circle in place of a point at the lower right."""
    return tuple((middle[0] + radius * sin(pi / 2 * n / 6), middle[1] + radius * sin(pi / 2 * (6 - n) / 6))
                 for n in range(7))  # fmt: skip


#: Faults by name.
FAULTS: Mapping[str, Fault] = {
    "wavy": Fault("A wavy hem", "The finished edge waves.", SeenHem(outer=_wave, inner=lambda at: _wave(at) / 2)),
    "puckers": Fault("Puckers", "Small creases stand across the row, close together.",
                     SeenHem(marks=_puckers(), outer=lambda at: _wave(at) / 3)),
    "wider": Fault("A hem wider in one place", "The inner fold bows out in the middle.",
                   SeenHem(inner=_bulge, row=lambda at: -_bulge(at) / 2)),
    "runs-off": Fault("Stitching that runs off", "In the middle the row lies beyond the inner fold, on the cloth.",
                      SeenHem(row=_off)),
    "ridge": Fault("A ridge", "A line stands out along the middle of the border.",
                   SeenHem(marks=(((LEFT, 55.0), (RIGHT, 55.0)), ((LEFT, 57.0), (RIGHT, 57.0))))),
    "peeps": Fault("Raw threads", "Short ends of thread stand out of the inner fold.",
                   SeenHem(marks=tuple(((x, 40.0), (x - 3, 31.0)) for x in (48.0, 53.0, 57.0, 62.0, 68.0)))),
    "drags": Fault("Drag lines", "Slanting lines lie across the hem.",
                   SeenHem(marks=tuple(((x, 68.0), (x + 18, 42.0)) for x in (14.0, 40.0, 66.0, 92.0, 118.0)))),
    "skipped": Fault("Skipped stitches", "Two stitches are three times as long as the others.",
                     SeenHem(stitches=tuple((n / 14 + 0.008, (n + (3 if n in (3, 9) else 1)) / 14 - 0.008)
                                            for n in range(14) if n not in (4, 5, 10, 11)))),
    "dips": Fault("A corner that dips", "The point is cut short, and both edges bend in towards it.",
                  SeenCorner(outline=((4, 72), (70, 72), (98, 69), (118, 60), (127, 40), (130, 12), (130, 4)),
                             mitre=(CORNER, (118, 60)))),
    "bulges": Fault("A corner that bulges", "A loose fold stands beside the seam of the mitre.",
                    SeenCorner(marks=((CORNER, (113, 51), (122, 60), POINT), (CORNER, (109, 56), (117, 66), POINT)))),
    "step": Fault("A step", "The inner folds of the two hems do not meet.",
                  SeenCorner(inner=((4, 46), CORNER, (104, 38), (96, 38), (96, 4)), mitre=((96, 38), POINT))),
    "round": Fault("A round point", "The point is an arc.",
                   SeenCorner(outline=((4, 72), *_arc_of((114, 56), 16), (130, 4)), mitre=(CORNER, (125, 67)))),
    "askew": Fault("A piece askew", "It leans, and one diagonal is longer than the other.",
                   SeenPiece(((47, 6), (127, 6), (103, 78), (23, 78)))),
    "curves-in": Fault("Sides that curve in", "Every side curves in towards the middle.", SeenPiece(inwards=7)),
    "loops": Fault("Loops below", "The upper thread reaches through to the underside.", SeenThreads(Fraction(0))),
}  # fmt: skip


def halves(name: str) -> tuple[Picture, Picture]:
    """A fault as it should be and as it is."""
    fault = FAULTS[name]
    drawn = []
    for seen, told in ((fault.should_be, "As it should be."), (fault.as_is, fault.is_so)):
        sheet = panel(WIDE, HIGH)
        seen.draw(sheet)
        drawn.append(sheet.finish(fault.title, told, with_key=False))
    return drawn[0], drawn[1]
