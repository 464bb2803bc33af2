"""A corner that can be played: what stays, and both faces of each flap that turns about its line."""

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from itertools import pairwise

from calculators.drawing.action_marks import action
from calculators.drawing.folding import CROP, MARGINS, TALLEST, Box, box_of, draw_cloth
from calculators.drawing.picture import WIDTH, Sheet
from calculators.drawing.played import LIFT, PlayedStep, played, turned_over
from calculators.trade.corners.convex import Polygon
from calculators.trade.corners.single_folds import SingleFold, single_folds
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.steps import CornerStep
from calculators.trade.corners.window import seen_through


def played_corner(steps: Sequence[CornerStep], box: Box | None = None) -> ET.Element | None:
    """The steps of a construction in one drawing, at the scale of their own. box: what those cover [mm]."""
    box = box or box_of([step.seen for step in steps])
    left, low, right, high = box
    scale = min((WIDTH - MARGINS[0] - MARGINS[2]) / (right - left), TALLEST / (high - low))
    found = [single_folds(one.stack, other.stack) for one, other in pairwise(steps)]
    lifted = [_lifted(fold, step.window) for folds, step in zip(found, steps) for fold in folds or ()]
    above = max([0.0, *((top - high) * scale for top, _ in lifted)])
    below = max([0.0, *((low - foot) * scale for _, foot in lifted)])
    sheet = Sheet(box, margins=MARGINS, tallest=TALLEST)
    shown: list[PlayedStep] = []
    for number, step in enumerate(steps):
        _, own_low, _, own_high = box_of([step.seen])
        parts: list[ET.Element] = []
        folds = found[number - 1] if number else ()
        if folds:
            parts = [_fold(fold, step, sheet) for fold in folds]
        elif folds == () and number and step.from_below != steps[number - 1].from_below:
            parts = [turned_over(MARGINS[0] + (right - left) * scale / 2, upright=True)]
        drawn: list[ET.Element] = []
        if number and action(steps[number - 1], step):  # its own drawing shows how the cloth lies before
            own = Sheet((left, own_low, right, own_high), margins=MARGINS, tallest=scale * (own_high - own_low))
            drawn = [_drawn("lies", step.stack, step, own)]
        shown.append(PlayedStep(step.name, (high - own_high) * scale, parts, jumps=folds is None, drawn=drawn))
    return played(
        shown,
        (
            MARGINS[0] - CROP,
            MARGINS[1] - CROP - above,
            (right - left) * scale + 2 * CROP,
            (high - low) * scale + above + below + 2 * CROP,
        ),
    )


def _lifted(fold: SingleFold, window: Polygon) -> tuple[float, float]:
    """The highest and the lowest place of the sheet where a flap is drawn that stands upright [mm]."""
    line = fold.line
    up = LIFT if fold.over else -LIFT
    ys = []
    for facet in seen_through(fold.front, window).layers:
        for place in facet.on_table:
            foot = line.foot(place)
            away = ((place[0] - foot[0]) ** 2 + (place[1] - foot[1]) ** 2) ** 0.5
            ys.append(float(foot[1] + up * away))
    return max(ys, default=0.0), min(ys, default=0.0)


def _fold(fold: SingleFold, step: CornerStep, sheet: Sheet) -> ET.Element:
    (x1, y1), (x2, y2) = (
        sheet.at(place)
        for place in (
            fold.line.point,
            (fold.line.point[0] + fold.line.direction[0], fold.line.point[1] + fold.line.direction[1]),
        )
    )
    long = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
    made = ET.Element(
        "g", {"class": "flap", "data-line": f"{x1:.1f} {y1:.1f} {(x2 - x1) / long:.4f} {(y2 - y1) / long:.4f}"}
    )
    if fold.opens:
        made.set("data-opens", "")
    if not fold.over:
        made.set("data-under", "")
    flap = [("front", fold.front), ("rear", fold.rear)]
    for name, stack in [("stays", fold.stays), *flap] if fold.over else [*flap, ("stays", fold.stays)]:
        made.append(_drawn(name, stack, step, sheet))
    return made


def _drawn(name: str, stack: Stack, step: CornerStep, sheet: Sheet) -> ET.Element:
    whole, sheet.svg = sheet.svg, ET.Element("g", {"class": name})
    seen = seen_through(stack, step.window)
    if seen.layers:
        draw_cloth(sheet, seen, step.window, earlier=stack.lines)
    part, sheet.svg = sheet.svg, whole
    return part
