"""The self-bound edge: the backing is cut larger and folded to the front as a hem over the edge of the top cloth."""

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.mitre import corner_reach, folded_in, mitre_line_drawn
from calculators.trade.corners.mitre_lines import mitre_lines
from calculators.trade.corners.plane import distance
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.steps import CornerStep, Measured, through_one_window
from calculators.trade.corners.turning_out import Sewing, cut_off
from calculators.trade.corners.window import AMPLE

BACKING, TOP = "backing", "top cloth"


def self_bound_edge(corner: Corner, sewing: Sewing) -> list[CornerStep]:
    """A backing folded twice over the edge of the top cloth, its corner folded in as a mitre.

    corner: its hem depths are the visible border, its turn the first turn; the top cloth's edges lie on the hem
    creases.
    Raises CreasesMiss when no mitre joins these borders.
    """
    lines = mitre_lines(corner)
    reach = corner_reach(corner, lines)
    top = corner.cloth(AMPLE * reach, TOP, inside=(corner.hem_1, corner.hem_2), right_side_up=True)
    laid = Stack.flat(corner.cloth(AMPLE * reach, BACKING), top)
    turn_1, turn_2 = corner.turns
    margins = {"margin_1": corner.hem_1 + turn_1, "margin_2": corner.hem_2 + turn_2}
    beyond = (
        "{margin_1} beyond the top cloth"
        if corner.has_even_edges
        else "{margin_1} beyond the top cloth on edge 1 and {margin_2} on edge 2"
    )
    do = f"Trim the backing to {beyond}"
    steps = [CornerStep("Lay together", do, laid, margins, how="The two lie wrong sides together.")]
    ready = mitre_line_drawn(laid, lines, to_raw_edge=True)
    raw = corner.raw
    marks = {"raw_mark_1": distance(raw, lines.raw_mark_1), "raw_mark_2": distance(raw, lines.raw_mark_2)}
    places = (
        "{raw_mark_1} on both edges" if corner.has_even_edges else "{raw_mark_1} on edge 1 and {raw_mark_2} on edge 2"
    )
    how = "From its raw corner; rule from mark to mark through the corner of the top cloth."
    measured = (Measured("raw_mark_1", raw, lines.raw_mark_1), Measured("raw_mark_2", raw, lines.raw_mark_2))
    steps.append(CornerStep("Mark", f"Mark {places} of the backing", ready, marks, measured, how=how))
    if sewing.trimming != "left whole":
        ready = cut_off(ready.fold(lines.matching_fold, over=False, pressed=False), corner, lines, sewing).unfold()
        do = "Cut the backing’s corner off, {seam_allowance} outside the mitre line"
        steps.append(CornerStep("Cut the corner", do, ready, {"seam_allowance": sewing.seam_allowance}))
    steps += folded_in(ready, corner, lines, sewing)
    steps[-1] = CornerStep(
        "Back", "Turn it over", steps[-1].stack, how="On the back the backing runs on unbroken.", from_below=True
    )
    return through_one_window(corner, reach, steps)
