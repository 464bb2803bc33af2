"""A corner step by step: folded cloth as it lies, drawn from the folding engine."""

from collections.abc import Collection, Sequence
from dataclasses import replace
from itertools import pairwise
from math import dist

from calculators.drawing import lines
from calculators.drawing.action_marks import ROOM_TO_TURN, action, draw_action, draw_turning, to_point_out
from calculators.drawing.folding_words import Lying, in_words, lying, side_style
from calculators.drawing.picture import WIDTH, Picture, PictureSeries, Sheet, Told, key_picture
from calculators.drawing.side_words import write_sides
from calculators.trade.corners.cloth import ClothLine, Facet
from calculators.trade.corners.convex import Edge, Polygon, moved, outlines
from calculators.trade.corners.plane import Isometry, Line, Point, steady
from calculators.trade.corners.single_folds import SingleFold
from calculators.trade.corners.stack import Stack, common_edge
from calculators.trade.corners.steps import CornerStep, Measured
from calculators.trade.corners.window import cut_off
from calculators.trade.trade_rules import brief
from calculators.values.measure import Ruler, show_length

MARGINS = (62, 26, 20, 34)
TALLEST = 236
LETTERS = 16.5  # [drawing units] how large letters are in the narrowest columns
SMALL, READABLE = 128.0, 13.0  # [px] how wide a drawing is that is shown small on a phone, and letters on it
CROP = 8  # [drawing units] left around the cloth of a drawing shown without its words; a break line stands out by 5
AS_BEFORE = " It is drawn as it lies before, with an arrow for each fold."
Box = tuple[float, float, float, float]
BORDERS = {"edge": lines.EDGE, "fold": lines.EDGE, "crease": lines.FOLD}
DRAWN = {"stitch": lines.STITCH, "mark": lines.PENCIL, "cut": lines.CUT}


def instruction(step: CornerStep, ruler: Ruler) -> str:
    """What to do in a step, with this job's lengths."""
    return _filled(step.instruction, step, ruler)


def _filled(template: str, step: CornerStep, ruler: Ruler, mark: str = "") -> str:
    """A text of a step with this job's lengths in it, each between two marks."""
    return template.format(
        **{name: f"{mark}{show_length(length, ruler)}{mark}" for name, length in step.lengths.items()}
    )


def told(step: CornerStep, ruler: Ruler) -> Told:
    """What a list of steps says beside its drawing."""
    beside = " ".join(part for part in (*map(brief, step.rules), step.how, step.check) if part)
    return Told(
        f"{_filled(step.do, step, ruler, mark='**')}.", _filled(beside, step, ruler), _filled(step.why, step, ruler)
    )


def corner_step_by_step(steps: Sequence[CornerStep], ruler: Ruler, box: Box | None = None) -> PictureSeries:
    """A drawing for every step, all at one scale and in one column, and their key. box: what they cover [mm], their
    own unless told.

    What is only folded is drawn as it lies before, with arrows; the next drawing shows what came of it.
    """
    box = box or box_of([step.seen for step in steps])
    earlier = [frozenset(), *(frozenset(step.stack.lines) for step in steps)]
    before = [None, *steps]
    acts = [(), *(action(last, step) for last, step in pairwise(steps))]
    drawn = [
        _acted(last, step, folds, box)
        if last and folds
        else state_drawn(
            step,
            lines_before,
            box,
            ruler,
            is_turned=last is not None and last.from_below != step.from_below,
            is_small=True,
        )
        for last, step, folds, lines_before in zip(before, steps, acts, earlier)
    ]
    last: list[tuple[CornerStep, Lying] | None] = [None, *((step, lay) for step, (_, lay) in zip(steps, drawn))]
    pictures = tuple(
        replace(
            sheet.finish(
                step.name,
                f"{in_words(step, lay, before)}{AS_BEFORE if folds else ''}",
                with_key=False,
                caption=instruction(step, ruler),
            ),
            told=told(step, ruler),
            crop=None if _is_measured_in(step) else _crop(sheet, box),
        )
        for step, (sheet, lay), before, folds in zip(steps, drawn, last, acts)
    )
    used = dict.fromkeys(style for sheet, _ in drawn for style in sheet.used)
    return PictureSeries(pictures, key_picture([style for style in lines.WORDS if style in used]))


def _acted(last: CornerStep, step: CornerStep, folds: Sequence[SingleFold], box: Box) -> tuple[Sheet, Lying]:
    """A step's drawing as the cloth lies before it, with arrows, and how it lies afterwards."""
    left, _, right, _ = box
    _, low, _, high = box_of([last.seen, step.seen])
    scale = _scale(box)
    sheet = Sheet((left, low, right, high), margins=MARGINS, tallest=scale * (high - low), letters=LETTERS)
    before, _ = draw_cloth(sheet, last.seen, last.window, last.stack.lines)
    for fold in to_point_out(folds):
        draw_action(sheet, fold, step.window)
    write_sides(sheet, before, _small(box))
    return sheet, lying(step.seen, step.window)


def _scale(box: Box) -> float:
    """Of all the drawings of a series [drawing units a mm]."""
    left, low, right, high = box
    return min((WIDTH - MARGINS[0] - MARGINS[2]) / (right - left), TALLEST / (high - low))


def corner_step(steps: Sequence[CornerStep], number: int, ruler: Ruler) -> Picture:
    """The drawing of one step, with its key. number: counted from 1."""
    step = steps[number - 1]
    before = steps[number - 2] if number > 1 else None
    sheet, lay = state_drawn(step, frozenset(before.stack.lines if before else ()), box_of([step.seen]), ruler)
    last = (before, lying(before.seen, before.window)) if before else None
    return sheet.finish(step.name, in_words(step, lay, last), caption=f"{step.name}. {instruction(step, ruler)}")


def box_of(stacks: Sequence[Stack]) -> Box:
    """What all these stacks cover on the table: left, lowest, right, highest [mm]."""
    xs, ys = zip(*((float(x), float(y)) for stack in stacks for facet in stack.layers for x, y in facet.on_table))
    return min(xs), min(ys), max(xs), max(ys)


def _crop(sheet: Sheet, box: Box) -> tuple[float, float, float, float]:
    """The part of a sheet that holds the cloth, as wide for every step of a series: left, top, width, height [drawing
    units]."""
    above = sheet.margins[1] - MARGINS[1]
    left, top = sheet.margins[0] - CROP, MARGINS[1] - CROP
    return left, top, (box[2] - box[0]) * sheet.scale + 2 * CROP, above + sheet.drawn_height + 2 * CROP


def state_drawn(
    step: CornerStep,
    earlier: frozenset[ClothLine],
    box: Box,
    ruler: Ruler,
    is_turned: bool = False,
    is_small: bool = False,
) -> tuple[Sheet, Lying]:
    """The cloth as a step leaves it, and how it lies. earlier: lines that were there before; box: what all the drawings
    of the series cover [mm]; is_turned: whether the step turns the work over; is_small: whether it may be shown small.
    """
    stack, window = step.seen, step.window
    if step.from_below:
        middle = (box[0] + box[2]) / 2
        stack, window = stack.turned_over(middle), moved(window, Isometry.folded_over(Line((middle, 0), (0, 1))))
    left, _, right, _ = box
    scale = _scale(box)
    own = box_of([stack])
    sheet = Sheet(
        (left, own[1], right, own[3]),
        margins=(MARGINS[0], MARGINS[1] + (ROOM_TO_TURN if is_turned else 0), *MARGINS[2:]),
        tallest=scale * (own[3] - own[1]),
        letters=LETTERS,
    )
    lay, cuts = draw_cloth(sheet, stack, window, earlier)
    if cuts:  # layers are cut together: the word stands once
        sheet.along("cut", *min(cuts, key=_longest_first))
    if is_turned:
        draw_turning(sheet, own)
    for measured in step.measured:
        _dimension(sheet, measured, _middle(own), show_length(step.lengths[measured.name], ruler))
    write_sides(sheet, lay, _small(box) if is_small and not _is_measured_in(step) else LETTERS)
    return sheet, lay


def _is_measured_in(step: CornerStep) -> bool:
    """Whether a step's drawing is to be measured in, and stays large."""
    return any(each.outside for each in step.measured)


def _small(box: Box) -> float:
    """How large letters must be to be read on a drawing shown small [drawing units]. box: as it is shown [mm]."""
    return READABLE * ((box[2] - box[0]) * _scale(box) + 2 * CROP) / SMALL


def draw_cloth(sheet: Sheet, stack: Stack, window: Polygon, earlier: Collection[ClothLine]) -> tuple[Lying, list[Edge]]:
    """Draw what is seen of cloth: its sides, borders and lines. earlier: lines made before this step.

    Returns how it lies, and the cuts that were drawn.
    """
    cuts: list[Edge] = []
    lay = lying(stack, window)
    for group in lay.groups:
        sheet.rings(side_style(group[0][0]), outlines(facet.on_table for facet, _ in group))
        for facet, around in group:
            for kind, edge in around:
                sheet.line(BORDERS[kind], *edge)
            fold_edges = [edge for kind, edge in around if kind == "fold"]
            for style, edge, is_new in _lines_on(facet, stack.lines, fold_edges, earlier):
                sheet.line(style, *edge, fine=not is_new)
                if style == lines.CUT:
                    cuts.append(edge)
    for edge in cut_off(stack, window):
        sheet.cut_off(*edge)
    return lay, cuts


def _longest_first(edge: Edge) -> tuple[int, ...]:
    """What to sort lines by: the longer first; of those as long as each other the one that starts farther left, then
    lower."""
    return -steady(dist(*edge)), *(steady(at) for end in edge for at in end)


def _lines_on(
    facet: Facet, cloth_lines: Sequence[ClothLine], fold_edges: Sequence[Edge], earlier: Collection[ClothLine]
) -> list[tuple[str, Edge, bool]]:
    """The lines to be seen on a facet, each with whether it is new: pencil on its own side until it is stitched over, a
    cut where it has just been made, no stitch that lies inside a fold."""
    found: dict[str, list[tuple[Edge, bool]]] = {"mark": [], "cut": [], "stitch": []}
    for line in cloth_lines:
        seen = line.on_right_side in (None, facet.right_side_up) and not (line.kind == "cut" and line in earlier)
        if line.kind in found and seen and (edge := line.over(facet)):
            found[line.kind].append((edge, line not in earlier))
    hidden_by = {"mark": [edge for edge, _ in found["stitch"]], "cut": [], "stitch": fold_edges}
    return [
        (DRAWN[kind], edge, is_new)
        for kind, each in found.items()
        for edge, is_new in each
        if not any(common_edge(edge, over) for over in hidden_by[kind])
    ]


def _middle(box: Box) -> Point:
    return (box[0] + box[2]) / 2, (box[1] + box[3]) / 2


def _dimension(sheet: Sheet, measured: Measured, inside: Point, text: str) -> None:
    """A dimension on the side away from the middle of the cloth, or else towards it."""
    start, end = ((float(x), float(y)) for x, y in (measured.start, measured.end))
    if (Line.through(start, end).side(inside) > 0) == measured.outside:
        start, end = end, start
    sheet.dimension(start, end, text, away=14)
