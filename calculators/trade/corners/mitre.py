"""Mitred corners, step by step: stitched with the turn kept folded, stitched with everything opened flat, or folded."""

from fractions import Fraction

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.edge_stitching import EDGE_STITCH, edge_stitched
from calculators.trade.corners.mitre_lines import MitreLines, mitre_lines
from calculators.trade.corners.plane import Line, Number, distance
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.steps import CornerStep, Measured, through_one_window
from calculators.trade.corners.turning_out import Sewing, cut_off, turning_out
from calculators.trade.corners.window import AMPLE
from calculators.trade.trade_rules import brief


def mitre_with_turn_folded(corner: Corner, sewing: Sewing) -> list[CornerStep]:
    """A mitre stitched while the first turn stays folded.

    With no turn it is the mitre of a single turned hem.
    Raises CreasesMiss when no mitre joins these hems.
    """
    lines = mitre_lines(corner)
    steps = _turned_and_creased(corner, lines)
    creased = steps[-1].stack.unfold().unfold()
    instruction = "Open the hem again; the turn stays folded." if corner.turn else "Open the hem again."
    steps.append(CornerStep("Open the hem", instruction, creased))
    opened = mitre_line_drawn(creased, lines)
    steps.append(_mark_step(opened, corner, lines))
    steps += _stitched_and_trimmed(opened, corner, lines, sewing)
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
    raw = corner.at(-corner.turn, -corner.turn)
    places = (
        "{raw_mark_1} on both edges"
        if corner.hem_1 == corner.hem_2
        else "{raw_mark_1} on edge 1 and {raw_mark_2} on edge 2"
    )
    lengths = {"raw_mark_1": distance(raw, lines.raw_mark_1), "raw_mark_2": distance(raw, lines.raw_mark_2)}
    steps.append(
        CornerStep(
            "Open and mark",
            f"Open turn and hem flat. Mark {places}, from the raw corner, and rule through the crossing of the hem "
            "creases.",
            opened,
            lengths,
            (Measured("raw_mark_1", raw, lines.raw_mark_1), Measured("raw_mark_2", raw, lines.raw_mark_2)),
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
    steps.append(CornerStep("Open flat", "Open everything flat.", creased))
    opened = mitre_line_drawn(creased, lines, to_raw_edge=True)
    if sewing.trimming != "left whole":
        opened = cut_off(opened.fold(lines.matching_fold, over=False, pressed=False), corner, lines, sewing).unfold()
        steps.append(
            CornerStep(
                "Cut the corner",
                "Rule the mitre line through the crossing of the hem creases and cut the corner off, "
                "{seam_allowance} outside it.",
                opened,
                {"seam_allowance": sewing.seam_allowance},
            )
        )
    return through_one_window(corner, corner_reach(corner, lines), steps + folded_in(opened, corner, lines, sewing))


def folded_in(stack: Stack, corner: Corner, lines: MitreLines, sewing: Sewing) -> list[CornerStep]:
    """The last steps of a mitre without a seam, from cloth lying flat."""
    instruction = "the edges meet on the mitre. Slip stitch them together."
    if corner.angle != 90:
        folded = _turn(stack, corner).fold_in_one(turning_out(corner, lines, sewing))
        instruction = (
            f"Fold the corner in around the crossing of the creases while you fold turn and hem again; {instruction}"
        )
        return [CornerStep("Fold in", instruction, folded), *_edge_stitched_steps(folded, corner, sewing)]
    cornered = stack.fold(Line.through(lines.mark_1, lines.mark_2).towards(lines.inner), pressed=False)
    steps = [CornerStep("Fold the corner in", "Fold the corner in along the mitre line.", cornered)]
    turned = _turn(cornered, corner)
    if corner.turn:
        steps.append(CornerStep("Fold the turn again", "Fold the turn again along both edges.", turned))
    folded = turned.fold(corner.crease(1)).fold(corner.crease(2))
    steps.append(CornerStep("Fold the hem again", f"Fold the hem again; {instruction}", folded))
    return [*steps, *_edge_stitched_steps(folded, corner, sewing)]


def corner_reach(corner: Corner, lines: MitreLines) -> Number:
    """How much cloth to show along each edge [mm]: half as far again as the farther mark, and past the hems."""
    marks = max(distance(corner.at(0, 0), mark) for mark in (lines.mark_1, lines.mark_2))
    across = 2 * max(corner.hem_1, corner.hem_2) / corner.direction_2[1]
    return (
        max(marks, across) * Fraction(3, 2)
        + distance(corner.at(0, 0), corner.at(-corner.turn, -corner.turn))
        + corner.lean
    )


def _turn(stack: Stack, corner: Corner) -> Stack:
    if not corner.turn:
        return stack
    return stack.fold(corner.parallel(1, 0)).fold(corner.parallel(2, 0))


def _turned_and_creased(corner: Corner, lines: MitreLines) -> list[CornerStep]:
    flat = Stack.flat(corner.cloth(AMPLE * corner_reach(corner, lines)))
    steps = [CornerStep("Cut", "Lay the corner flat, wrong side up.", flat)]
    turned = _turn(flat, corner)
    if corner.turn:
        steps.append(
            CornerStep("First turn", "Turn {turn} under on every side and press.", turned, {"turn": corner.turn})
        )
    hemmed = turned.fold(corner.crease(1)).fold(corner.crease(2))
    depth = "{hem_1} deep" if corner.hem_1 == corner.hem_2 else "{hem_1} deep on edge 1 and {hem_2} on edge 2"
    steps.append(
        CornerStep(
            "Second fold" if corner.turn else "Fold the hem",
            f"Fold the hem, {depth}, and press sharply: these two creases decide the corner.",
            hemmed,
            {"hem_1": corner.hem_1, "hem_2": corner.hem_2},
        )
    )
    return steps


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
    places = (
        "{mark_1} along both edges"
        if corner.hem_1 == corner.hem_2
        else "{mark_1} along edge 1 and {mark_2} along edge 2"
    )
    return CornerStep(
        "Mark",
        f"Mark {places}, from the folded corner; rule from each mark to the crossing of the creases, {{half_line}} "
        "on either side.",
        stack,
        {each.name: distance(each.start, each.end) for each in measured},
        measured,
    )


def _stitched_and_trimmed(stack: Stack, corner: Corner, lines: MitreLines, sewing: Sewing) -> list[CornerStep]:
    matched = stack.fold(lines.matching_fold, over=False, pressed=False)
    stitched = matched.stitch(lines.crossing, lines.mark_1)
    edges = (
        "the folded edges level"
        if corner.hem_1 == corner.hem_2
        else "line on line; with unequal hems the folded edges do not lie level"
    )
    steps = [
        CornerStep("Right sides together", f"Fold the corner right sides together, mark on mark, {edges}.", matched),
        CornerStep(
            "Stitch",
            "Stitch from the mark to the crossing of the creases, {half_line}. " + brief("fasten"),
            stitched,
            {"half_line": lines.half_line},
            (Measured("half_line", lines.crossing, lines.mark_1, outside=False),),
        ),
    ]
    if sewing.trimming != "left whole":
        steps.append(
            CornerStep(
                "Trim",
                "Trim {seam_allowance} outside the stitches.",
                cut_off(stitched, corner, lines, sewing),
                {"seam_allowance": sewing.seam_allowance},
            )
        )
    return steps


def _turned_out(stack: Stack, corner: Corner, lines: MitreLines, sewing: Sewing) -> list[CornerStep]:
    turned_out = stack.fold_in_one(turning_out(corner, lines, sewing))
    instruction = "Turn the corner right side out and press; the hems meet on the mitre. " + brief("point-out")
    return [CornerStep("Turn out", instruction, turned_out), *_edge_stitched_steps(turned_out, corner, sewing)]


def _edge_stitched_steps(stack: Stack, corner: Corner, sewing: Sewing) -> list[CornerStep]:
    stitched = edge_stitched(stack, corner, *(2 * hem - sewing.edge_stitch for hem in (corner.hem_1, corner.hem_2)))
    return [
        CornerStep("Edge stitch", EDGE_STITCH, stitched, {"edge_stitch": sewing.edge_stitch}),
        CornerStep("Right side", "The finished corner from the right side.", stitched, from_below=True),
    ]
