"""Corners turned out between two cloths: the faced corner and the mitred applied border."""

from fractions import Fraction

from calculators.trade.corners.cloth import Facet, FlatCloth
from calculators.trade.corners.convex import polygon
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.edge_stitching import EDGE_STITCH, edge_stitched
from calculators.trade.corners.fan import fan, turned_by
from calculators.trade.corners.plane import Isometry, Line, Number, Point, distance, middle
from calculators.trade.corners.stack import FoldPart, Stack
from calculators.trade.corners.steps import CornerStep, Measured, through_one_window
from calculators.trade.corners.turning_out import PokesOut
from calculators.trade.corners.window import AMPLE
from calculators.trade.trade_rules import rule

SHARPEST = 60  # [degrees], below it an allowance folded in at one edge reaches past the other
PIECE, FACING, STRIPS = "piece", "facing", ("strip 1", "strip 2")


def faced_corner(corner: Corner, clearance: Number | None, edge_stitch: Number) -> list[CornerStep]:
    """A corner faced with a shaped strip of cloth.

    corner: its hem depths are the facing's finished width, its turn the seam allowance.
    clearance: cloth left outside the corner of the seam when the point is cut across [mm]; None leaves it whole.
    edge_stitch: from the facing’s inner edge to its row of stitches [mm].
    Raises PokesOut at a corner sharper than 60°.
    """
    reach = _reach(corner)
    laid = Stack.flat(corner.cloth(AMPLE * reach, PIECE, right_side_up=True), corner.frame(AMPLE * reach, FACING))
    steps = [
        CornerStep(
            "Lay the facing on", "Lay the facing on the piece", laid, how="Right sides together, raw edges level."
        )
    ]
    steps += _seamed(laid, corner, clearance)
    turned = _turned(steps[-1].stack, corner, lowest=(FACING,))
    stitched = edge_stitched(turned, corner, corner.hem_1 - edge_stitch, corner.hem_2 - edge_stitch)
    steps += [
        _turned_over(
            "Turn the facing to the wrong side and press", turned, "Roll the seam until it just does not show."
        ),
        CornerStep(
            "Edge stitch",
            "Stitch {edge_stitch} from the facing’s neatened inner edge",
            stitched,
            {"edge_stitch": edge_stitch},
        ),
        CornerStep("Wrong side", "Turn it over", stitched, how="The finished corner, wrong side up.", from_below=True),
    ]
    return through_one_window(corner, reach, steps)


def applied_border(
    corner: Corner, inner_turn: Number, clearance: Number | None, edge_stitch: Number
) -> list[CornerStep]:
    """A border of another cloth with a mitred corner, sewn to the wrong side and turned to the right side.

    corner: equal hem depths are the border's finished width, its turn the seam allowance.
    inner_turn: turned under along the border's inner edge [mm].
    clearance: cloth left outside the corner of the seam when the point is cut across [mm]; None leaves it whole.
    edge_stitch: from the border's inner edge to its row of stitches [mm].

    The mitre seam runs from the crossing of the seam lines to the crease of the inner turn and no further at either
    end, so that allowances and turn can be folded.
    Raises PokesOut at a corner sharper than 60°.
    """
    reach = _reach(corner)
    outer, inner = corner.at(0, 0), corner.crossing
    mitre = Line.through(outer, inner)
    strip_1, strip_2 = (Facet(cloth, cloth.shape[0]) for cloth in _strips(corner, AMPLE * reach, mitre, inner_turn))
    together = Stack((strip_2.moved(Isometry.folded_over(mitre)), strip_1))
    joined = together.stitch(outer, inner)
    opened = joined.fold(mitre, over=False, take=(STRIPS[1], _on_arm(corner, 2)), pressed=False)
    opened = opened.fold(mitre.reversed(), take=(STRIPS[0], _in_allowance(strip_1, mitre)), pressed=False)
    turned_in = opened
    for edge, name in zip((1, 2), STRIPS):
        past_crease = _on_arm(corner, edge, by=inner_turn / 2)
        turned_in = turned_in.fold(corner.parallel(edge, corner.hem_1).reversed(), take=(name, past_crease))
    laid = turned_in.over(Stack.flat(corner.cloth(AMPLE * reach, PIECE)))
    cut_end = min(strip_1.flat, key=lambda place: place[0])
    lengths = {
        "strip_width": corner.turn + corner.hem_1 + inner_turn,
        "beyond_corner": distance(cut_end, (0, cut_end[1])),
        "mitre_seam": distance(outer, inner),
    }
    steps = [
        CornerStep(
            "Lay the strips together",
            "Cut the strips {strip_width} wide and {beyond_corner} longer at each end than the finished side",
            together,
            lengths,
            how="Cut the ends to the mitre and lay two of them right sides together.",
        ),
        CornerStep(
            "Stitch the mitre",
            "Stitch the mitre, {mitre_seam}",
            joined,
            lengths,
            (Measured("mitre_seam", outer, inner, outside=False),),
            how="From the crossing of the seam lines to the crease of the inner turn, and not beyond.",
            why="Beyond either end allowances and turn fold away from each other, and a longer seam would hold them.",
        ),
        CornerStep("Press", "Open the strips out and press the mitre seam open", opened),
        CornerStep(
            "Turn the inner edge",
            "Turn {inner_turn} under along the inner edges",
            turned_in,
            {"inner_turn": inner_turn},
        ),
        CornerStep(
            "Lay the border on",
            "Lay the border on the wrong side of the piece",
            laid,
            how="Its own wrong side up, raw edges level.",
        ),
        *_seamed(laid, corner, clearance),
    ]
    turned = _turned(steps[-1].stack, corner, lowest=STRIPS)
    stitched = edge_stitched(turned, corner, corner.hem_1 - edge_stitch, corner.hem_2 - edge_stitch)
    steps += [
        _turned_over("Turn the border to the right side and press", turned, from_below=True),
        CornerStep("Edge stitch", EDGE_STITCH, stitched, {"edge_stitch": edge_stitch}, from_below=True),
    ]
    return through_one_window(corner, reach, steps)


def _reach(corner: Corner) -> Number:
    return 4 * (max(corner.hem_1, corner.hem_2) + corner.turn) / corner.direction_2[1] + corner.lean


def _seamed(laid: Stack, corner: Corner, clearance: Number | None) -> list[CornerStep]:
    """Stitch both edges through the corner, then cut across the point."""
    stitched = edge_stitched(laid, corner, 0, 0)
    do = "Stitch {seam_allowance} from the raw edges"
    steps = [CornerStep("Stitch the edges", do, stitched, {"seam_allowance": corner.turn}, rules=("pivot",))]
    if clearance is not None:
        across = _level(corner).shifted(-clearance)
        do = "Cut the point off {clearance} outside the corner of the seam"
        why = "Cutting across the point makes the thick place smaller; it takes no layer away."
        lengths = {"clearance": clearance}
        steps.append(CornerStep("Cut across the point", do, stitched.trim(across), lengths, why=why))
    return steps


def _turned_over(do: str, stack: Stack, how: str = "", from_below: bool = False) -> CornerStep:
    reason = rule("point-out").why
    return CornerStep("Turn", do, stack, how=how, rules=("point-out",), why=reason, from_below=from_below)


def _level(corner: Corner) -> Line:
    """The line through the finished corner that lies square to its bisector."""
    return Line(corner.at(0, 0), turned_by(corner.direction_1, float(corner.angle) / 2 - 90))


def _turned(stack: Stack, corner: Corner, lowest: tuple[str, ...]) -> Stack:
    """The seam turned out: first the point is folded in, then both allowances, and the cloth on top goes underneath."""
    if corner.angle < SHARPEST:
        raise PokesOut("the allowances of this corner would stick out beyond the edges")
    lean = 90 - float(corner.angle) / 2
    edge_1, edge_2 = corner.direction_1, corner.direction_2
    to_1, tuck_1 = turned_by(edge_1, -lean), turned_by(edge_1, -2 * lean)
    to_2, tuck_2 = turned_by(edge_2, lean), turned_by(edge_2, 2 * lean)
    body, *allowances = fan(corner.at(0, 0), [edge_1, edge_2, to_2, tuck_2, tuck_1, to_1], levels=[0, 5, 4, 1, 2, 3])
    lower = FoldPart(body.inside, body.movement, 0, lowest)
    upper = FoldPart(body.inside, body.movement, 6, (PIECE,))
    return stack.fold_in_one([lower, *allowances, upper])


def _strips(corner: Corner, reach: Number, mitre: Line, inner_turn: Number) -> list[FlatCloth]:
    """Two strips, wrong side up, each with a seam allowance beyond the mitre line."""
    inside = corner.hem_1 + inner_turn
    side_1, side_2 = corner.sides(corner.raw, (reach, reach))
    strips = []
    for edge, far, cut in (
        (1, side_1, mitre.shifted(corner.turn)),
        (2, side_2, mitre.shifted(-corner.turn)),
    ):
        raw, inner = corner.raw_edge(edge), corner.parallel(edge, inside)
        ring = polygon((raw.meets(cut), raw.meets(far), inner.meets(far), inner.meets(cut)))
        strips.append(FlatCloth(STRIPS[edge - 1], (ring,)))
    return strips


def _on_arm(corner: Corner, edge: int, by: Number | None = None) -> Point:
    """A place well along an edge: on the border's finished width, or a little past its inner crease."""
    inside = corner.hem_1 + by if by is not None else corner.hem_1 / 2
    along = Fraction(5, 2) * (corner.hem_1 + corner.turn)
    return corner.at(inside, along) if edge == 1 else corner.at(along, inside)


def _in_allowance(strip: Facet, mitre: Line) -> Point:
    """A place in the middle of a strip's mitre allowance."""
    one, other = sorted(strip.flat, key=mitre.height)[-2:]
    end = middle(one, other)
    return middle(end, mitre.foot(end))
