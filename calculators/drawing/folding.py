"""A corner step by step: folded cloth as it lies, drawn from the folding engine."""

from collections.abc import Sequence
from math import dist

from calculators.drawing import lines
from calculators.drawing.picture import WIDTH, Picture, PictureSeries, Sheet, key_picture
from calculators.trade.corners.borders import BorderKind, borders
from calculators.trade.corners.cloth import ClothLine, Facet
from calculators.trade.corners.convex import Edge, Polygon, moved, outlines
from calculators.trade.corners.layers import seen_from_above
from calculators.trade.corners.plane import Isometry, Line, Point, steady
from calculators.trade.corners.stack import Stack, common_edge
from calculators.trade.corners.steps import CornerStep, Measured
from calculators.trade.corners.window import cut_off
from calculators.values.measure import Ruler, show_length

MARGINS = (62, 26, 20, 34)
TALLEST = 236
LETTERS = 16.5  # [drawing units] how large letters are in the narrowest columns
FIRST_CLOTHS = {"piece", "top cloth"}
Borders = list[tuple[BorderKind, Edge]]
Box = tuple[float, float, float, float]
BORDERS = {"edge": lines.EDGE, "fold": lines.EDGE, "crease": lines.FOLD}
DRAWN = {"stitch": lines.STITCH, "mark": lines.PENCIL, "cut": lines.CUT}


def instruction(step: CornerStep, ruler: Ruler) -> str:
    """What to do in a step, with this job's lengths."""
    return step.instruction.format(**{name: show_length(length, ruler) for name, length in step.lengths.items()})


def corner_step_by_step(steps: Sequence[CornerStep], ruler: Ruler) -> PictureSeries:
    """A drawing for every step, all at one scale and in one column, and their key."""
    box = _box([step.seen for step in steps])
    earlier = [frozenset(), *(frozenset(step.stack.lines) for step in steps)]
    sheets = [_drawn(step, before, box, ruler) for step, before in zip(steps, earlier)]
    pictures = tuple(
        sheet.finish(step.name, _in_words(step, sheet), with_key=False, caption=instruction(step, ruler))
        for sheet, step in zip(sheets, steps)
    )
    used = dict.fromkeys(style for sheet in sheets for style in sheet.used)
    return PictureSeries(pictures, key_picture([style for style in lines.WORDS if style in used]))


def corner_step(steps: Sequence[CornerStep], number: int, ruler: Ruler) -> Picture:
    """The drawing of one step, with its key. number: counted from 1."""
    step = steps[number - 1]
    before = frozenset(steps[number - 2].stack.lines) if number > 1 else frozenset()
    sheet = _drawn(step, before, _box([step.seen]), ruler)
    return sheet.finish(step.name, _in_words(step, sheet), caption=f"{step.name}. {instruction(step, ruler)}")


def _box(stacks: Sequence[Stack]) -> Box:
    """What all these stacks cover on the table: left, lowest, right, highest [mm]."""
    xs, ys = zip(*((float(x), float(y)) for stack in stacks for facet in stack.layers for x, y in facet.on_table))
    return min(xs), min(ys), max(xs), max(ys)


def _drawn(step: CornerStep, earlier: frozenset[ClothLine], box: Box, ruler: Ruler) -> Sheet:
    stack, window = step.seen, step.window
    if step.from_below:
        middle = (box[0] + box[2]) / 2
        stack, window = stack.turned_over(middle), moved(window, Isometry.folded_over(Line((middle, 0), (0, 1))))
    left, low, right, high = box
    scale = min((WIDTH - MARGINS[0] - MARGINS[2]) / (right - left), TALLEST / (high - low))
    _, own_low, _, own_high = _box([stack])
    sheet = Sheet(
        (left, own_low, right, own_high), margins=MARGINS, tallest=scale * (own_high - own_low), letters=LETTERS
    )
    cuts: list[Edge] = []
    for group in _lying_as_one(stack, window):
        sheet.rings(side_style(group[0][0]), outlines(facet.on_table for facet, _ in group))
        for facet, around in group:
            for kind, edge in around:
                sheet.line(BORDERS[kind], *edge)
            fold_edges = [edge for kind, edge in around if kind == "fold"]
            for style, edge in _lines_on(facet, stack.lines, fold_edges, earlier):
                sheet.line(style, *edge)
                if style == lines.CUT:
                    cuts.append(edge)
    for edge in cut_off(stack, window):
        sheet.cut_off(*edge)
    if cuts:  # layers are cut together: the word stands once
        sheet.along("cut", *min(cuts, key=_longest_first))
    for measured in step.measured:
        _dimension(sheet, measured, _middle(_box([stack])), show_length(step.lengths[measured.name], ruler))
    return sheet


def _longest_first(edge: Edge) -> tuple[int, ...]:
    """What to sort lines by: the longer first; of those as long as each other the one that starts farther left, then
    lower."""
    return -steady(dist(*edge)), *(steady(at) for end in edge for at in end)


def _lying_as_one(stack: Stack, window: Polygon) -> list[list[tuple[Facet, Borders]]]:
    """The facets to be seen with their borders, the lowest first, those together that lie next in order and as flat as
    one."""
    visible = {id(seen.facet) for seen in seen_from_above(stack)}
    groups: list[list[tuple[Facet, Borders]]] = []
    for facet, around in zip(stack.layers, borders(stack, window)):
        if id(facet) not in visible:
            continue
        before = groups[-1][-1][0] if groups else None
        if before and before.cloth == facet.cloth and before.lay.same_as(facet.lay):
            groups[-1].append((facet, around))
        else:
            groups.append([(facet, around)])
    return groups


def side_style(facet: Facet) -> str:
    """The style that tells which side of which cloth is up."""
    if facet.cloth.name in FIRST_CLOTHS:
        return lines.CLOTH_RIGHT if facet.right_side_up else lines.CLOTH_WRONG
    return lines.OTHER_RIGHT if facet.right_side_up else lines.OTHER_WRONG


def _lines_on(
    facet: Facet, cloth_lines: Sequence[ClothLine], fold_edges: Sequence[Edge], earlier: frozenset[ClothLine]
) -> list[tuple[str, Edge]]:
    """The lines to be seen on a facet: pencil on its own side until it is stitched over, a cut where it has just been
    made,
    no stitch that lies inside a fold."""
    found: dict[str, list[Edge]] = {"mark": [], "cut": [], "stitch": []}
    for line in cloth_lines:
        seen = line.on_right_side in (None, facet.right_side_up) and not (line.kind == "cut" and line in earlier)
        if line.kind in found and seen and (edge := line.over(facet)):
            found[line.kind].append(edge)
    hidden_by = {"mark": found["stitch"], "cut": [], "stitch": fold_edges}
    return [
        (DRAWN[kind], edge)
        for kind, each in found.items()
        for edge in each
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


def _in_words(step: CornerStep, sheet: Sheet) -> str:
    """What a drawing shows: which sides can be seen, and what has been sewn and cut."""
    sides = [lines.WORDS[style] for style in sheet.used if style in lines.AREAS]
    made = {line.kind for line in step.stack.lines}
    words = [
        f"{'The back' if step.from_below else 'The work'} as it lies: to be seen are the {' and the '.join(sides)}."
    ]
    words += ["A row of stitches holds the layers."] if "stitch" in made else []
    words += ["Part of the corner is cut away."] if "cut" in made else []
    return " ".join(words)
