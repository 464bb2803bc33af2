"""The row of stitches that holds a hem down."""

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.plane import Number, distance
from calculators.trade.corners.stack import Stack

EDGE_STITCH = "Stitch {edge_stitch} from the inner edge all round"


def edge_stitched(stack: Stack, corner: Corner, inside_1: Number, inside_2: Number) -> Stack:
    """Stitch along both edges through every layer, these distances inside the folded edges, turning where the rows meet
    [mm]."""
    pivot = corner.at(inside_1, inside_2)
    far = max(float(distance(pivot, place)) for facet in stack.layers for place in facet.on_table)
    for way in (corner.direction_1, corner.direction_2):
        stack = stack.stitch(pivot, (pivot[0] + far * way[0], pivot[1] + far * way[1]))
    return stack
