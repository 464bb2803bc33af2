"""The folded corner without a mitre: one hem over the other."""

from fractions import Fraction

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.edge_stitching import EDGE_STITCH, edge_stitched
from calculators.trade.corners.plane import Number
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.steps import CornerStep, through_one_window
from calculators.trade.corners.window import AMPLE


def folded_corner(corner: Corner, edge_stitch: Number) -> list[CornerStep]:
    """Both hems folded and stitched one after the other; the second lies over the end of the first.

    edge_stitch: from a hem's inner edge to its row of stitches [mm].
    """
    depth = max(corner.hem_1, corner.hem_2) + max(corner.turns)
    reach = depth * Fraction(9, 2) + corner.lean
    stack = Stack.flat(corner.cloth(AMPLE * reach))
    steps = [CornerStep("Cut", "Lay the corner flat, wrong side up", stack)]
    for edge, name, turn in zip((1, 2), ("first", "second"), corner.turns):
        hem = corner.hem_1 if edge == 1 else corner.hem_2
        if turn:
            stack = stack.fold(corner.parallel(edge, 0))
            do = f"Turn {{turn}} to the wrong side along the {name} edge and press"
            steps.append(CornerStep(f"Turn the {name} edge", do, stack, {"turn": turn}))
        stack = stack.fold(corner.crease(edge))
        do = f"Fold the hem, {{hem_{edge}}} deep, along the {name} edge and press"
        how = "It lies over the end of the first." if edge == 2 else ""
        steps.append(CornerStep(f"Hem the {name} edge", do, stack, {f"hem_{edge}": hem}, how=how))
    stack = edge_stitched(stack, corner, 2 * corner.hem_1 - edge_stitch, 2 * corner.hem_2 - edge_stitch)
    steps.append(CornerStep("Edge stitch", EDGE_STITCH, stack, {"edge_stitch": edge_stitch}))
    steps.append(
        CornerStep("Right side", "Turn it over", stack, how="The finished corner, right side up.", from_below=True)
    )
    return through_one_window(corner, reach, steps)
