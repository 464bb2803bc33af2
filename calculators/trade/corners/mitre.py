"""Mitred corners, step by step: stitched with the turn kept folded, stitched with everything opened flat, or folded."""

from collections.abc import Mapping
from fractions import Fraction

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.edge_stitching import EDGE_STITCH, edge_stitched
from calculators.trade.corners.mitre_lines import MitreLines, mitre_lines, trim_line
from calculators.trade.corners.plane import Line, Number, distance, dot, minus
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.steps import CornerStep, Measured, through_one_window
from calculators.trade.corners.turning_out import Sewing, cut_off, turning_out
from calculators.trade.corners.window import AMPLE
from calculators.trade.trade_rules import rule


def mitre_with_turn_folded(corner: Corner, sewing: Sewing) -> list[CornerStep]:
    """A mitre stitched while the first turn stays folded.

    With no turn it is the mitre of a single turned hem.
    Raises CreasesMiss when no mitre joins these hems.
    """
    lines = mitre_lines(corner)
    steps = _turned_and_creased(corner, lines)
    creased = steps[-1].stack.unfold().unfold()
    steps.append(
        CornerStep(
            "Open the hem",
            "Open the hem again",
            creased,
            how="The turn stays folded." if any(corner.turns) else "",
            check="Where the two creases cross will be the finished corner.",
        )
    )
    opened = mitre_line_drawn(creased, lines)
    steps.append(_mark_step(opened, corner, lines))
    steps += _stitched_and_trimmed(opened, corner, lines, sewing, where_cut_meets(corner, lines, sewing))
    steps += _turned_out(steps[-1].stack.unfold(), corner, lines, sewing)
    return through_one_window(corner, corner_reach(corner, lines), steps)


def mitre_opened_flat(corner: Corner, sewing: Sewing) -> list[CornerStep]:
    """A mitre stitched with turn and hem opened flat; the seam stops at the crease of the turn.

    Were the seam to run on to the raw edge, the turn could not be folded in again: beyond that crease the two halves of
    the mitre line fold away from each other.
    Raises CreasesMiss when no mitre joins these hems.
    """
    lines = mitre_lines(corner)
    steps = _turned_and_creased(corner, lines)
    opened = mitre_line_drawn(steps[-1].stack.lie_as(steps[0].stack), lines, to_raw_edge=True)
    raw = corner.raw
    places = (
        "{raw_mark_1} on both edges" if corner.has_even_edges else "{raw_mark_1} on edge 1 and {raw_mark_2} on edge 2"
    )
    lengths = {"raw_mark_1": distance(raw, lines.raw_mark_1), "raw_mark_2": distance(raw, lines.raw_mark_2)}
    steps.append(
        CornerStep(
            "Open and mark",
            f"Open turn and hem flat and mark {places}",
            opened,
            lengths,
            (Measured("raw_mark_1", raw, lines.raw_mark_1), Measured("raw_mark_2", raw, lines.raw_mark_2)),
            how="From the raw corner; rule through the crossing of the hem creases.",
        )
    )
    steps += _stitched_and_trimmed(opened, corner, lines, sewing)
    steps += _turned_out(_turn(steps[-1].stack.unfold(), corner), corner, lines, sewing)
    return through_one_window(corner, corner_reach(corner, lines), steps)


def folded_mitre(corner: Corner, sewing: Sewing) -> list[CornerStep]:
    """A mitre without a seam: the corner is folded in along the mitre line, then turn and hem are folded again.

    The edges that meet on the mitre are slip stitched by hand.
    Raises CreasesMiss when no mitre joins these hems.
    """
    lines = mitre_lines(corner)
    steps = _turned_and_creased(corner, lines)
    creased = steps[-1].stack.lie_as(steps[0].stack)
    steps.append(CornerStep("Open flat", "Open everything flat", creased))
    opened = mitre_line_drawn(creased, lines, to_raw_edge=True)
    if sewing.trimming != "left whole":
        opened = cut_off(opened.fold(lines.matching_fold, over=False, pressed=False), corner, lines, sewing).unfold()
        steps.append(
            CornerStep(
                "Cut the corner",
                "Cut the corner off, {seam_allowance} outside the mitre line",
                opened,
                {"seam_allowance": sewing.seam_allowance},
                how="The line goes through the place where the hem creases cross.",
            )
        )
    return through_one_window(corner, corner_reach(corner, lines), steps + folded_in(opened, corner, lines, sewing))


def folded_in(stack: Stack, corner: Corner, lines: MitreLines, sewing: Sewing) -> list[CornerStep]:
    """The last steps of a mitre without a seam, from cloth lying flat."""
    together = "The edges meet on the mitre. Slip stitch them together."
    if corner.angle != 90:
        folded = _turn(stack, corner).fold_in_one(turning_out(corner, lines, sewing))
        do = "Fold the corner in around the crossing of the creases while you fold turn and hem again"
        return [CornerStep("Fold in", do, folded, how=together), *_edge_stitched_steps(folded, corner, sewing)]
    cornered = stack.fold(Line.through(lines.mark_1, lines.mark_2).towards(lines.inner), pressed=False)
    steps = [CornerStep("Fold the corner in", "Fold the corner in along the mitre line", cornered)]
    turned = _turn(cornered, corner)
    if any(corner.turns):
        steps.append(CornerStep("Fold the turn again", "Fold the turn again along both edges", turned))
    folded = turned.fold(corner.crease(1)).fold(corner.crease(2))
    steps.append(CornerStep("Fold the hem again", "Fold the hem again", folded, how=together))
    return [*steps, *_edge_stitched_steps(folded, corner, sewing)]


def corner_reach(corner: Corner, lines: MitreLines) -> Number:
    """How much cloth to show along each edge [mm]: half as far again as the farther mark, and past the hems."""
    marks = max(distance(corner.at(0, 0), mark) for mark in (lines.mark_1, lines.mark_2))
    across = 2 * max(corner.hem_1, corner.hem_2) / corner.direction_2[1]
    return max(marks, across) * Fraction(3, 2) + distance(corner.at(0, 0), corner.raw) + corner.lean


def _turn(stack: Stack, corner: Corner) -> Stack:
    for edge, turn in zip((1, 2), corner.turns):
        if turn:
            stack = stack.fold(corner.parallel(edge, 0))
    return stack


def _turned_and_creased(corner: Corner, lines: MitreLines) -> list[CornerStep]:
    flat = Stack.flat(corner.cloth(AMPLE * corner_reach(corner, lines)))
    steps = [CornerStep("Cut", "Lay the corner flat, wrong side up", flat)]
    turned = _turn(flat, corner)
    if any(corner.turns):
        lengths = {"turn": corner.turns[0], "turn_2": corner.turns[1]}
        steps.append(
            CornerStep(
                "First turn",
                f"Turn {_turned_under(corner)} and press",
                turned,
                {name: turn for name, turn in lengths.items() if f"{{{name}}}" in _turned_under(corner)},
                why="A first turn that is off moves the finished edge and leaves the mitre right.",
            )
        )
    hemmed = turned.fold(corner.crease(1)).fold(corner.crease(2))
    depth = "{hem_1} deep" if corner.hem_1 == corner.hem_2 else "{hem_1} deep on edge 1 and {hem_2} on edge 2"
    steps.append(
        CornerStep(
            "Second fold" if any(corner.turns) else "Fold the hem",
            f"Fold the hem, {depth}",
            hemmed,
            {"hem_1": corner.hem_1, "hem_2": corner.hem_2},
            how="Press sharply: these two creases decide the corner.",
            why="An error in the second fold counts twice: it moves the edge, and the crossing of the creases.",
        )
    )
    return steps


def _turned_under(corner: Corner) -> str:
    turn_1, turn_2 = corner.turns
    if turn_1 == turn_2:
        return "{turn} under on every side"
    if turn_1 and turn_2:
        return "{turn} under on edge 1 and {turn_2} on edge 2,"
    return "{turn} under on edge 1" if turn_1 else "{turn_2} under on edge 2"


def mitre_line_drawn(stack: Stack, lines: MitreLines, to_raw_edge: bool = False) -> Stack:
    """The mitre line marked from the crossing to both edges; to_raw_edge where the turn lies open."""
    ends = (lines.raw_mark_1, lines.raw_mark_2) if to_raw_edge else (lines.mark_1, lines.mark_2)
    return stack.mark(lines.crossing, ends[0]).mark(lines.crossing, ends[1])


def _mark_step(stack: Stack, corner: Corner, lines: MitreLines) -> CornerStep:
    origin = corner.at(0, 0)
    measured = (
        Measured("mark_1", origin, lines.mark_1),
        Measured("mark_2", origin, lines.mark_2),
        Measured("half_line", lines.crossing, lines.mark_1, outside=False),
    )
    same = corner.hem_1 == corner.hem_2
    return CornerStep(
        "Mark",
        "Mark {mark_1} on both edges" if same else "Mark {mark_1} on edge 1 and {mark_2} on edge 2",
        stack,
        {each.name: distance(each.start, each.end) for each in measured},
        measured,
        how="From the folded corner; rule from each mark to the crossing of the creases, {half_line} on either side.",
        why=_why_there(corner),
    )


def _why_there(corner: Corner) -> str:
    """Why the marks lie where they do."""
    if corner.angle != 90:
        return "A mark lies twice as far from the folded corner as the crossing of the creases does, along its edge."
    if corner.hem_1 == corner.hem_2:
        return "On a square corner with equal hems both marks lie twice the hem depth from the folded corner."
    return "Each mark is twice the hem of the other edge."


def where_cut_meets(corner: Corner, lines: MitreLines, sewing: Sewing) -> dict[str, Number]:
    """How far from the folded corner the line to trim along meets each edge [mm]; nothing where it misses one."""
    origin, ends = corner.at(0, 0), trim_line(corner, lines, sewing.seam_allowance)
    ways = (corner.direction_1, corner.direction_2)
    met = [dot(minus(end, origin), way) for end, way in zip((ends[0], ends[-1]), ways)]
    return {"trim_1": met[0], "trim_2": met[1]} if min(met) > 0 else {}


def _stitched_and_trimmed(
    stack: Stack, corner: Corner, lines: MitreLines, sewing: Sewing, met: Mapping[str, Number] | None = None
) -> list[CornerStep]:
    """The seam of a mitre. met: how far from the corner the cut meets each edge, where that can be measured [mm]."""
    same = corner.hem_1 == corner.hem_2
    matched = stack.fold(lines.matching_fold, over=False, pressed=False)
    stitched = matched.stitch(lines.crossing, lines.mark_1)
    level = (
        "The folded edges lie level." if same else "Line on line; with unequal hems the folded edges do not lie level."
    )
    steps = [
        CornerStep(
            "Right sides together",
            "Fold the corner right sides together, mark on mark",
            matched,
            how=level,
            rules=("pins-placed",),
            check="One pin goes through the two marks, one beside the line.",
        ),
        CornerStep(
            "Stitch",
            "Stitch {half_line}, from the mark to the crossing of the creases",
            stitched,
            {"half_line": lines.half_line},
            (Measured("half_line", lines.crossing, lines.mark_1, outside=False),),
            rules=("fasten", "start-seam"),
            why=rule("fasten").why,
        ),
    ]
    if sewing.trimming != "left whole":
        steps.append(
            CornerStep(
                "Trim",
                "Trim {seam_allowance} outside the stitches",
                cut_off(stitched, corner, lines, sewing),
                {"seam_allowance": sewing.seam_allowance, **(met or {})},
                how="Snip the tip at the fold, not the stitches." if "snipped" in sewing.trimming else "",
                rules=("look-first",),
                check=_cut_meets(same) if met else "",
                why=rule("look-first").why,
            )
        )
    return steps


def _cut_meets(same: bool) -> str:
    places = "both edges {trim_1}" if same else "edge 1 {trim_1} and edge 2 {trim_2}"
    return f"The cut meets {places} from the folded corner."


def _turned_out(stack: Stack, corner: Corner, lines: MitreLines, sewing: Sewing) -> list[CornerStep]:
    turned_out = stack.fold_in_one(turning_out(corner, lines, sewing))
    turning = CornerStep(
        "Turn out",
        "Turn the corner right side out and press",
        turned_out,
        how="The hems meet on the mitre.",
        rules=("point-out",),
        why=rule("point-out").why,
    )
    return [turning, *_edge_stitched_steps(turned_out, corner, sewing)]


def _edge_stitched_steps(stack: Stack, corner: Corner, sewing: Sewing) -> list[CornerStep]:
    stitched = edge_stitched(stack, corner, *(2 * hem - sewing.edge_stitch for hem in (corner.hem_1, corner.hem_2)))
    return [
        CornerStep("Edge stitch", EDGE_STITCH, stitched, {"edge_stitch": sewing.edge_stitch}),
        CornerStep("Right side", "Turn it over", stitched, how="The finished corner, right side up.", from_below=True),
    ]
