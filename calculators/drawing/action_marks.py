"""What is done to a corner, on the drawing of how it lies before: the line of each fold, and an arrow across it."""

from collections.abc import Sequence
from math import atan2, hypot

from calculators.drawing import lines
from calculators.drawing.picture import Sheet
from calculators.drawing.signs import put_large
from calculators.trade.corners.convex import Polygon
from calculators.trade.corners.plane import TOUCHING, Line, unit
from calculators.trade.corners.single_folds import SingleFold, single_folds
from calculators.trade.corners.steps import CornerStep
from calculators.trade.corners.window import seen_through

Box = tuple[float, float, float, float]  # left, lowest, right, highest
_LARGE = 1.5  # times as large as a sign on its own, since these drawings are shown small
_HALF = 22.0  # [drawing units] of an arrow, from its middle to its ends
_TURNING = 22.0  # [drawing units] from the cloth up to the middle of the sign for turning over
ROOM_TO_TURN = 36.0  # [drawing units] that this sign takes above the cloth
_ON_FLAP = 0.8  # of its depth: how far out an arrow begins


def action(last: CornerStep, step: CornerStep) -> tuple[SingleFold, ...]:
    """The folds that are all there is to a step, so that it is drawn as it lay before, with arrows; none where
    something else is done, or none of it can be shown so."""
    made = set(step.stack.lines) - set(last.stack.lines)
    if step.measured or step.from_below != last.from_below or any(line.kind != "crease" for line in made):
        return ()
    if {facet.cloth.name for facet in step.stack.layers} != {facet.cloth.name for facet in last.stack.layers}:
        return ()
    return single_folds(last.stack, step.stack) or ()


def to_point_out(folds: Sequence[SingleFold]) -> list[SingleFold]:
    """The folds that get an arrow: of several opened along one edge the first, since the rest lie under it."""
    told: list[SingleFold] = []
    for fold in folds:
        if not (fold.opens and any(each.opens and _is_along(each.line, fold.line) for each in told)):
            told.append(fold)
    return told


def _is_along(one: Line, other: Line) -> bool:
    (x, y), (u, v) = unit(one.direction), unit(other.direction)
    return abs(float(x * v - y * u)) < TOUCHING and float(x * u + y * v) > 0


def draw_turning(sheet: Sheet, cloth: Box) -> None:
    """Draw the sign for turning the whole work over, above the cloth in the room left for it. cloth: the box around it
    [mm]."""
    (left, _), (right, top) = sheet.at(cloth[:2]), sheet.at(cloth[2:])
    put_large(sheet, "turn-over", ((left + right) / 2, top - _TURNING), 0, _LARGE)


def draw_action(sheet: Sheet, fold: SingleFold, window: Polygon) -> None:
    """Draw the line of a fold and its arrow: a full head goes over, half a head under, a hollow one opens."""
    flap = seen_through(fold.rear if fold.opens else fold.front, window)
    places = [place for facet in flap.layers for place in facet.on_table]
    hinge = sorted({place for place in places if fold.line.side(place) == 0})
    if not hinge:
        return
    (x1, y1), (x2, y2) = sheet.at(hinge[0]), sheet.at(hinge[-1])
    long = hypot(x2 - x1, y2 - y1)
    if long < 1:
        return
    if not fold.opens:
        sheet.line(lines.FOLD, hinge[0], hinge[-1])
    out = ((y2 - y1) / long, (x1 - x2) / long)  # from the line to where the flap lies, or will lie once it is opened
    side = sum((x - x1) * out[0] + (y - y1) * out[1] for x, y in map(sheet.at, places))
    if (side < 0) != fold.opens:
        out = (-out[0], -out[1])
    deep = max(abs((x - x1) * out[0] + (y - y1) * out[1]) for x, y in map(sheet.at, places))
    begins = min(_ON_FLAP * deep, (_HALF + 2) * _LARGE)
    off = begins - _HALF * _LARGE
    at = ((x1 + x2) / 2 + off * out[0], (y1 + y2) / 2 + off * out[1])
    way = atan2(out[1], out[0]) if fold.opens else atan2(-out[1], -out[0])
    put_large(sheet, "unfold" if fold.opens else "fold-over" if fold.over else "fold-under", at, way, _LARGE)
