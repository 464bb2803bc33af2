"""Folding flat around one point: several folds that meet there and close at once, as when a mitre is turned out."""

from collections.abc import Sequence
from math import cos, radians, sin

from calculators.trade.corners.plane import Isometry, Line, Point
from calculators.trade.corners.stack import FoldPart


class DoesNotLieFlat(ValueError):
    """Raised when folds that meet in a point cannot all be folded flat together."""


def fan(centre: Point, folds: Sequence[Point], levels: Sequence[int], cut: int | None = None) -> list[FoldPart]:
    """The parts of the table between folds that all start at one point.

    centre: where the folds meet [mm].
    folds: their directions, counterclockwise; no two neighbours more than half a turn apart.
    levels: stacking level of the part that follows each fold. The part after the first fold stays where it is.
    cut: which of the directions is no fold but a cut, so that its two sides go their own ways.
    Raises DoesNotLieFlat unless the folds close. (A point lies flat exactly when every second angle around it adds up
    to half a turn: the theorem of Kawasaki, here checked by folding once around.)
    """
    rays = [Line(centre, direction) for direction in folds]
    movements = [Isometry()]
    for ray in rays[1:cut]:
        movements.append(Isometry.folded_over(ray).then(movements[-1]))
    if cut is None:
        if not Isometry.folded_over(rays[0]).then(movements[-1]).same_as(Isometry()):
            raise DoesNotLieFlat("these folds cannot all lie flat together")
    else:
        back = [Isometry.folded_over(rays[0])]
        for ray in reversed(rays[cut + 1 :]):
            back.append(Isometry.folded_over(ray).then(back[-1]))
        movements += reversed(back)
    following = [*rays[1:], rays[0]]
    return [
        FoldPart((ray, after.reversed()), movement, level)
        for ray, after, movement, level in zip(rays, following, movements, levels)
    ]


def turned_by(direction: Point, angle: float) -> Point:
    """A direction turned counterclockwise.

    direction: which way. angle: how far [degrees].
    Returns the direction turned, as long as before.
    Source: derived, the rotation of the plane written out in coordinates.
    """
    x, y = float(direction[0]), float(direction[1])
    sine, cosine = sin(radians(angle)), cos(radians(angle))
    return (x * cosine - y * sine, x * sine + y * cosine)
