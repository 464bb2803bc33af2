"""How a mitre's corner is cut and turned out, and when what is left of it is too much to lie behind the hems."""

from dataclasses import dataclass
from typing import Literal

from calculators.trade.corners.corner import Corner
from calculators.trade.corners.fan import fan, turned_by
from calculators.trade.corners.mitre_lines import MitreLines
from calculators.trade.corners.plane import Line, Number, angle_between, minus
from calculators.trade.corners.stack import FoldPart, Stack

Pressing = Literal["open", "to one side"]
Trimming = Literal["left whole", "trimmed", "trimmed, point snipped"]


class PokesOut(ValueError):
    """Raised when what is left of the corner is too much to lie behind the hems."""


@dataclass(frozen=True)
class Sewing:
    """How a mitre is sewn.

    seam_allowance: cloth left beyond the stitched line when trimming [mm].
    edge_stitch: from a hem's inner edge to its row of stitches [mm].
    trimming: whether the corner is cut away, and with it the point that would otherwise be squashed or tucked in.
    pressed: the seam allowances opened, or both laid to one side.
    """

    seam_allowance: Number
    edge_stitch: Number
    trimming: Trimming = "trimmed"
    pressed: Pressing = "open"


def cut_off(matched: Stack, corner: Corner, lines: MitreLines, sewing: Sewing) -> Stack:
    """Cut the corner off while it is folded mark on mark: so both halves of the mitre line get the same allowance.

    The point is snipped level with the finished edges, so that what is left lies behind the hems; at a blunt corner,
    where nothing would stick out, halfway between seam and fold.
    """
    trimmed = matched.trim(lines.line_1.towards(lines.inner).shifted(-sewing.seam_allowance))
    if sewing.trimming == "trimmed":
        return trimmed
    to_1, to_2 = minus(lines.mark_1, lines.crossing), minus(lines.mark_2, lines.crossing)
    behind_1, behind_2 = angle_between(to_1, corner.direction_1), angle_between(to_2, corner.direction_2)
    level = behind_1 if sewing.pressed == "to one side" else min(behind_1, behind_2)
    halfway = (180 - float(corner.angle)) / 2
    return trimmed.trim(Line(lines.crossing, turned_by(to_1, -min(level, halfway))))


def turning_out(corner: Corner, lines: MitreLines, sewing: Sewing) -> list[FoldPart]:
    """How the cloth moves when a mitre is turned out: folds around the finished corner, with the turn folded in.

    Raises PokesOut when the corner's point is neither snipped nor fits behind the hems, as at any corner under 90°.
    """
    edge_1, edge_2 = corner.direction_1, corner.direction_2
    to_1, to_2 = minus(lines.mark_1, lines.crossing), minus(lines.mark_2, lines.crossing)
    hem_angle = angle_between(to_1, edge_1)
    beyond = 180 - float(corner.angle)
    middle = turned_by(to_2, beyond)
    if sewing.trimming == "trimmed, point snipped":
        if sewing.pressed == "open":
            return fan(lines.crossing, [edge_1, edge_2, to_2, middle, to_1], levels=[0, 4, 3, 1, 2], cut=3)
        return fan(lines.crossing, [edge_1, edge_2, middle, to_1], levels=[0, 1, 2, 3], cut=2)
    if corner.angle < 90:
        raise PokesOut("the point of this corner would stick out beyond the edge")
    if sewing.pressed == "open":
        tuck_1 = turned_by(to_1, -beyond * hem_angle / float(corner.angle))
        tuck_2 = turned_by(to_2, beyond * (1 - hem_angle / float(corner.angle)))
        return fan(lines.crossing, [edge_1, edge_2, to_2, tuck_2, tuck_1, to_1], levels=[0, 5, 4, 1, 2, 3])
    if hem_angle >= beyond:
        return fan(lines.crossing, [edge_1, edge_2, middle, to_1], levels=[0, 1, 2, 3])
    tuck_1, tuck_2 = turned_by(to_1, -hem_angle), turned_by(middle, hem_angle - beyond)
    return fan(lines.crossing, [edge_1, edge_2, tuck_2, middle, tuck_1, to_1], levels=[0, 3, 2, 1, 4, 5])
