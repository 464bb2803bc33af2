"""The top of a curtain: casing, casing with a heading, heading with a tape, step by step."""

from fractions import Fraction

from calculators.trade.sections.edge import (
    FIRST_ROW,
    HEM_ROW,
    PIECE,
    SECOND_ROW,
    Edge,
    EdgeMeasures,
    EdgeStep,
    hem_takes,
)
from calculators.trade.sections.hems import folded_twice
from calculators.trade.sections.section import CrossSection

ROD, TAPE = "rod", "tape"


def _casing(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the rod is drawn half as thick as there is room: flat, half its girth has to go in, and more."""
    turned, folded = folded_twice(with_)
    edge = with_.turn + with_.hem
    row = edge + with_.hem - with_.edge_stitch
    stitched = folded.stitch(row, HEM_ROW)
    filled = stitched.put_in(ROD, edge + (row - edge) / 4, (row - edge) / 2, on=PIECE)
    lengths = {"turn": with_.turn, "hem": with_.hem, "edge_stitch": with_.edge_stitch}
    return [
        EdgeStep("First turn", "Fold the raw edge in by {turn}, wrong side up, and press", turned, lengths),
        EdgeStep("Casing folded", "Fold the casing over, {hem}, and press", folded, lengths, rules=("gauge",)),
        EdgeStep("Stitched", "Stitch {edge_stitch} from the inner fold, the ends left open", stitched, lengths,
            rules=("start-seam", "fasten")),
        EdgeStep("Rod put in", "Slide the rod in", filled, lengths,
            how="Flat, the casing is half the rod’s girth deep, and as much more as lets it slide.",
            why="A casing as deep as the rod is thick holds it fast, or bursts its row."),
    ]  # fmt: skip


def _headed_casing(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the casing's second row stands a third of the hem below its top."""
    turned, folded = folded_twice(with_)
    edge, heading = with_.turn + with_.hem, with_.hem / 3
    row = edge + with_.hem - min(with_.edge_stitch, heading)
    first = folded.stitch(row, FIRST_ROW)
    second = first.stitch(edge + heading, SECOND_ROW)
    filled = second.put_in(ROD, (edge + heading + row) / 2, (row - edge - heading) / 2, on=PIECE)
    lengths = {"turn": with_.turn, "hem": with_.hem, "heading": heading, "edge_stitch": with_.edge_stitch}
    return [
        EdgeStep("Folded", "Fold the turn in, {turn}, then heading and casing together, {hem}", folded, lengths),
        EdgeStep("First row", "Stitch {edge_stitch} from the inner fold", first, lengths,
            rules=("start-seam", "fasten")),
        EdgeStep("Second row", "Stitch again {heading} from the top fold", second, lengths,
            why="What is above it stands up as a frill when the curtain is drawn together."),
        EdgeStep("Rod put in", "Slide the rod in between the two rows", filled, lengths),
    ]  # fmt: skip


def _taped(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the tape lies with its middle on the raw edge, from half the depth of the heading down."""
    flat = CrossSection().lay(PIECE, Fraction(0), 1, right_up=False)
    folded = flat.fold(with_.hem, "left")
    wide = with_.hem
    top = with_.hem + with_.hem / 2
    laid = folded.lay(TAPE, top, 1, right_up=True, length=wide)
    for far in (False, True):
        laid = laid.neatened(TAPE, words="", far=far)
    beside = min(with_.edge_stitch, wide / 4)
    stitched = laid.stitch(top + beside, FIRST_ROW).stitch(top + wide - beside, SECOND_ROW)
    lengths = {"hem": with_.hem, "below": with_.hem / 2}
    return [
        EdgeStep("Folded", "Fold the heading to the wrong side, {hem}, and press", folded, lengths),
        EdgeStep("Tape laid on", "Lay the tape on, {below} below the top, over the raw edge", laid, lengths,
            how="Cords upwards, their ends drawn out. Knot them at one end."),
        EdgeStep("Stitched", "Stitch both edges of the tape, both in the same direction", stitched, lengths,
            how="Not over the cords.", why="Stitched to and fro, the tape twists."),
    ]  # fmt: skip


TOPS = {
    "casing": Edge("Casing", _casing, hem_takes, layers=3, through={HEM_ROW: 3}, raw=(PIECE,), turned=True),
    "headed-casing": Edge("Casing with a heading", _headed_casing, hem_takes, layers=3,
        through={FIRST_ROW: 3, SECOND_ROW: 2}, raw=(PIECE,), turned=True),
    "heading": Edge("Heading with a tape", _taped, hem_takes, layers=3, through={FIRST_ROW: 3, SECOND_ROW: 2},
        raw=(PIECE,)),
}  # fmt: skip
