"""Where care pays: what small errors in each step of a mitre do to the finished corner.

The corner is made with its errors, by the same reflections that fold cloth: each step starts from what the step before
really left, as on the ironing board. Nothing here knows which errors matter; that follows.
"""

from collections.abc import Iterator
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from math import fsum, sqrt
from random import Random

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.dual_number import DualNumber, derivative_of
from calculators.trade.corners.mitre_lines import MitreLines, mitre_lines
from calculators.trade.corners.plane import (
    Isometry,
    Line,
    Number,
    Point,
    distance,
    dot,
    middle,
    minus,
    onward,
    total,
    unit,
)


@dataclass(frozen=True)
class Errors:
    """Errors at one corner [mm].

    turn_1, turn_2: turned too deep. hem_1, hem_2: second fold too deep.
    mark_1, mark_2: marked too far from the folded corner.
    alignment: how far beyond mark 1, along edge 1, mark 2 comes to lie when the corner is folded right sides together.
    stitch_inner, stitch_outer: stitched beside the line, on the side of the hem, at the mark and at the crossing.
    """

    turn_1: Number = 0.0
    turn_2: Number = 0.0
    hem_1: Number = 0.0
    hem_2: Number = 0.0
    mark_1: Number = 0.0
    mark_2: Number = 0.0
    alignment: Number = 0.0
    stitch_inner: Number = 0.0
    stitch_outer: Number = 0.0


STEPS = {
    "turn": ("turn_1", "turn_2"),
    "hem": ("hem_1", "hem_2"),
    "marks": ("mark_1", "mark_2"),
    "alignment": ("alignment",),
    "stitching": ("stitch_inner", "stitch_outer"),
}
"""The steps of the work, and the errors made in each."""


@dataclass(frozen=True)
class CornerOutcome:
    """What became of a corner [mm], against what was meant.

    edge_1, edge_2: the finished edge lies so much too far in.
    diagonal: the finished corner lies so much too far in along the middle of the corner.
    depth_1, depth_2: the hem is so much too deep.
    inner_across, inner_along: by how much the two hems miss each other at the inner corner, across the mitre and along
    it.
    outer_across, outer_along: the same at the finished corner.
    """

    edge_1: Number
    edge_2: Number
    diagonal: Number
    depth_1: Number
    depth_2: Number
    inner_across: Number
    inner_along: Number
    outer_across: Number
    outer_along: Number


EFFECTS = {
    "edge": ("edge_1", "edge_2"),
    "diagonal": ("diagonal",),
    "depth": ("depth_1", "depth_2"),
    "inner": ("inner_across", "inner_along"),
    "point": ("outer_across", "outer_along"),
}
"""What a maker sees, and the parts of the outcome it is made of."""


@dataclass(frozen=True)
class _Meant:
    """A corner as it is meant to be: its mitre lines, how far its marks lie from the folded corner [mm], and the
    directions of its mitre and its middle."""

    lines: MitreLines
    along: tuple[Number, Number]
    mitre: Point
    middle: Point


@lru_cache(maxsize=8)
def _meant(corner: Corner) -> _Meant:
    lines, origin = mitre_lines(corner), corner.at(0, 0)
    along = distance(origin, lines.mark_1), distance(origin, lines.mark_2)
    return _Meant(lines, along, unit(minus(lines.inner, lines.crossing)), unit(minus(corner.at(1, 1), origin)))


def made(corner: Corner, errors: Errors) -> CornerOutcome:
    """Make a mitred corner with errors.

    corner: as it is meant to be; marks are taken from its measures.
    errors: what goes wrong [mm].
    """
    meant = _meant(corner)
    ways = (corner.direction_1, corner.direction_2)
    depths = errors.turn_1 + corner.hem_1 + errors.hem_1, errors.turn_2 + corner.hem_2 + errors.hem_2
    folded_corner, crossing = corner.at(errors.turn_1, errors.turn_2), corner.at(*depths)
    mark_1 = onward(folded_corner, ways[0], meant.along[0] + errors.mark_1)
    mark_2 = onward(folded_corner, ways[1], meant.along[1] + errors.mark_2)
    match = _fold_onto(mark_2, onward(mark_1, ways[0], errors.alignment))
    inwards = unit((crossing[1] - mark_1[1], mark_1[0] - crossing[0]))  # square to the seam, towards the hem
    sewn = (onward(mark_1, inwards, errors.stitch_inner), onward(crossing, inwards, errors.stitch_outer))
    hem_over = [Isometry.folded_over(corner.parallel(edge, depth)) for edge, depth in zip((1, 2), depths)]
    inner, outer = (minus(hem_over[0].place(end), hem_over[1].place(match.place(end))) for end in sewn)
    across = (-meant.mitre[1], meant.mitre[0])
    return CornerOutcome(
        edge_1=errors.turn_1 + errors.hem_1,
        edge_2=errors.turn_2 + errors.hem_2,
        diagonal=dot(minus(crossing, meant.lines.crossing), meant.middle),
        depth_1=errors.hem_1,
        depth_2=errors.hem_2,
        inner_across=dot(inner, across),
        inner_along=dot(inner, meant.mitre),
        outer_across=dot(outer, across),
        outer_along=dot(outer, meant.mitre),
    )


def _fold_onto(moving: Point, target: Point) -> Isometry:
    """The fold that lays one place on another."""
    run = minus(target, moving)
    return Isometry.folded_over(Line(middle(moving, target), (-run[1], run[0])))


def derivatives(corner: Corner) -> dict[str, CornerOutcome]:
    """For each error by name, how fast everything changes with it [mm for each mm], exactly."""
    found = {}
    for each in fields(Errors):
        outcome = made(corner, replace(Errors(), **{each.name: DualNumber(0.0, 1.0)}))
        found[each.name] = CornerOutcome(
            *(derivative_of(getattr(outcome, part.name)) for part in fields(CornerOutcome))
        )
    return found


def effects(corner: Corner, likely: dict[str, float]) -> dict[str, dict[str, float]]:
    """What the likely error of each step does to each thing a maker sees, to first order.

    corner: the corner that is made [mm]. likely: step → likely error [mm]; made independently on both edges or at both
    ends
    of the seam.
    Returns step → thing seen → likely effect [mm]. Effects of independent errors add as squares.
    Source: derived, each derivative of the corner times its error; independent errors added as squares.
    """
    found = derivatives(corner)

    def effect(step: str, seen: str) -> float:
        squares = [float(getattr(found[error], part)) ** 2 for error in STEPS[step] for part in EFFECTS[seen]]
        return likely[step] * sqrt(fsum(squares))

    return {step: {seen: effect(step, seen) for seen in EFFECTS} for step in STEPS}


@dataclass(frozen=True)
class MadePiece:
    """A finished piece of four corners [mm]: how it differs from what was meant.

    width: at one end. diagonals: by how much they differ. unevenness: widest hem less narrowest.
    inner: the largest miss at an inner corner.
    """

    width: Number
    diagonals: Number
    unevenness: Number
    inner: float


def pieces(corner: Corner, likely: dict[str, float], seed: int = 7) -> Iterator[MadePiece]:
    """Pieces made one after another with likely errors, the same ones for the same seed.

    corner: each of the four corners [mm]. likely: step → likely error [mm], the standard deviation of a normal spread.
    seed: of the chance.
    Returns pieces without end, with what a maker sees of each [mm].
    Source: derived, four corners made with errors by chance, seen along the sides between them.
    """
    random = Random(seed)
    while True:
        corners = [made(corner, _chance(random, likely)) for _ in range(4)]
        diagonals = total(-each.diagonal if n % 2 else each.diagonal for n, each in enumerate(corners))
        depths = [depth for each in corners for depth in (each.depth_1, each.depth_2)]
        yield MadePiece(
            -(corners[0].edge_1 + corners[1].edge_1),
            diagonals,
            max(depths) - min(depths),
            max(sqrt(each.inner_across**2 + each.inner_along**2) for each in corners),
        )


def _chance(random: Random, likely: dict[str, float]) -> Errors:
    return Errors(**{error: random.gauss(0, likely[step]) for step, errors in STEPS.items() for error in errors})
