"""Edges that another strip covers: faced, bound and lined, step by step."""

from fractions import Fraction

from calculators.trade.sections.edge import (
    BINDING,
    FACING,
    FIRST_ROW,
    HAND_ROW,
    HEM_ROW,
    LINING,
    PIECE,
    Edge,
    EdgeMeasures,
    EdgeStep,
    hem_takes,
    seam_takes,
)
from calculators.trade.sections.hems import folded_twice
from calculators.trade.sections.section import CrossSection

_RIGHT_SIDE_UP = CrossSection().lay(PIECE, Fraction(0), 1, right_up=True)


def _faced(with_: EdgeMeasures) -> list[EdgeStep]:
    seam, wide = with_.allowance, with_.allowance + with_.hem
    laid = _RIGHT_SIDE_UP.lay(FACING, Fraction(0), 1, right_up=False, length=wide).neatened(FACING, far=True)
    seamed = laid.stitch(seam, FIRST_ROW)
    opened = seamed.fold(seam, "right", strips=(FACING,))
    turned = opened.fold(seam, "left", over=False).turned_over()
    stitched = turned.stitch(wide - with_.edge_stitch, HEM_ROW)
    lengths = {"wide": wide, "seam": seam, "hem": with_.hem, "edge_stitch": with_.edge_stitch}
    return [
        EdgeStep("Laid on", "Lay the facing, {wide} wide, on the right side, raw edges even", laid, lengths,
            how="Right sides together; its inner edge is neatened first."),
        EdgeStep("Seamed", "Stitch {seam} from the raw edges", seamed, lengths,
            rules=("pins-placed", "start-seam", "fasten")),
        EdgeStep("Opened out", "Fold the facing away over both allowances, and press", opened, lengths,
            how="Where it should not roll out, stitch the facing to the allowances close beside the seam."),
        EdgeStep("Turned", "Turn the facing to the wrong side, seen from that side, and press", turned, lengths,
            how="Roll the seam until it just does not show on the right side."),
        EdgeStep("Stitched", "Stitch {edge_stitch} from the facing’s inner edge", stitched, lengths),
    ]  # fmt: skip


def _room_in_facing(with_: EdgeMeasures) -> Fraction:
    """How wide the allowances can be that lie in a facing [mm].

    Source: derived, they end before its row.
    """
    return with_.hem - with_.edge_stitch


def _bound(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, a single binding is four times its finished width, as that of a corner."""
    wide = with_.hem
    laid = _RIGHT_SIDE_UP.lay(BINDING, Fraction(0), 1, right_up=False, length=4 * wide)
    seamed = laid.stitch(wide, FIRST_ROW)
    opened = seamed.fold(wide, "right", strips=(BINDING,))
    turned = opened.fold(-wide, "left", over=False, strips=(BINDING,))
    wrapped = turned.fold(Fraction(0), "left", over=False, strips=(BINDING,)).turned_over()
    sewn = wrapped.stitch(wide - min(with_.edge_stitch, wide / 2), HAND_ROW, upper=3)
    lengths = {"wide": wide, "cut": 4 * wide}
    return [
        EdgeStep("Laid on", "Lay the strip, {cut} wide, on the right side, raw edges even", laid, lengths,
            how="Right sides together."),
        EdgeStep("First row", "Stitch {wide} from the raw edges", seamed, lengths,
            rules=("pins-placed", "start-seam", "fasten")),
        EdgeStep("Folded away", "Fold the strip away from the piece, over its allowance", opened, lengths),
        EdgeStep("Turned in", "Fold its far edge in by {wide}", turned, lengths),
        EdgeStep("Wrapped", "Wrap it round the raw edges, seen from the wrong side", wrapped, lengths,
            how="Its fold lies along the seam.", why="Then its stitches are as far from the edge on either side."),
        EdgeStep("Sewn down", "Hem the fold down by hand, through to the piece but not to its right side", sewn,
            lengths),
    ]  # fmt: skip


def _lined(with_: EdgeMeasures) -> list[EdgeStep]:
    """The lining lies half a hem back from the edge; it is turned in as deep as the hem's first turn."""
    _, folded = folded_twice(with_)
    edge = with_.turn + with_.hem
    hemmed = folded.stitch(edge + with_.hem - with_.edge_stitch, HEM_ROW)
    back = with_.hem / 2
    lining = CrossSection().lay(LINING, edge + back - with_.turn, 1, right_up=True)
    turned = lining.fold(edge + back, "left", over=False)
    laid = turned.over(hemmed)
    sewn = laid.stitch(edge + back + min(with_.edge_stitch, with_.turn / 2, back / 2), HAND_ROW, upper=3)
    lengths = {"turn": with_.turn, "hem": with_.hem, "back": back}
    return [
        EdgeStep("Hemmed", "Hem the piece: turn {turn}, hem {hem}", hemmed, lengths),
        EdgeStep("Lining laid on", "Fold the lining’s edge under by {turn} and lay it on, {back} from the edge", laid,
            lengths, how="Wrong sides together; smooth it, do not stretch it.",
            why="A tight lining draws the edge up."),
        EdgeStep("Slip-stitched", "Slip-stitch its fold to the hem, not through to the right side", sewn, lengths),
    ]  # fmt: skip


COVERED = {
    "faced": Edge("Faced hem", _faced, seam_takes(FIRST_ROW, PIECE), layers=4, through={FIRST_ROW: 2, HEM_ROW: 2},
        raw=(PIECE, FACING), seamed=True, room=_room_in_facing),
    "bound": Edge("Bound edge", _bound, lambda done: Fraction(0), layers=5, through={FIRST_ROW: 2, HAND_ROW: 3},
        raw=(PIECE, BINDING), iso_4916=3),
    "lined": Edge("Lined edge", _lined, hem_takes, layers=5, through={HEM_ROW: 3, HAND_ROW: 3}, raw=(PIECE,),
        bare=(LINING,), turned=True),
}  # fmt: skip
