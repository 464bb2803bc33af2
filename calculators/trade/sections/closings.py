"""Openings that close, and a piped edge, step by step: zips, an overlap, buttons, piping."""

from fractions import Fraction

from calculators.trade.sections.edge import (
    FIRST_ROW,
    LOWER,
    SECOND_ROW,
    UPPER,
    Edge,
    EdgeMeasures,
    EdgeStep,
    seam_takes,
)
from calculators.trade.sections.seams import pressed_open, together, turned_out
from calculators.trade.sections.section import CrossSection

ZIP, TEETH, TACKING = "zip", "teeth", "tacking"
PIPING, CORD, CORD_ROW = "piping", "cord", "row along the cord"
BUTTON, BUTTON_ROW = "button", "button’s thread"
UPPER_HEM, LOWER_HEM = "upper hem row", "lower hem row"
_NEATEN = "Neaten both edges, "


def _with_zip(section: CrossSection, middle: Fraction, half: Fraction, teeth: Fraction, face_up: bool) -> CrossSection:
    """A zip laid on top, its teeth at a place, on its right side."""
    below = section if face_up else section.put_in(TEETH, middle, teeth)
    laid = below.lay(ZIP, middle - half, 1, right_up=face_up, length=2 * half)
    for far in (False, True):
        laid = laid.neatened(ZIP, words="", far=far)
    return laid.put_in(TEETH, middle, teeth) if face_up else laid


def _zip_in_seam(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the tape reaches over two thirds of each allowance, and is stitched in its middle."""
    seam, third = -with_.allowance, with_.allowance / 3
    tacked = together(right_sides_in=True).neatened(LOWER, UPPER).stitch(seam, TACKING)
    opened = pressed_open(tacked, seam).turned_over()
    laid = _with_zip(opened, seam, 2 * third, third / 2, face_up=False)
    stitched = laid.stitch(seam - third, FIRST_ROW).stitch(seam + third, SECOND_ROW)
    done = stitched.unpick(TACKING).turned_over()
    lengths = {"allowance": with_.allowance, "from_seam": third}
    return [
        EdgeStep("Tacked shut", _NEATEN + "lay right sides together and stitch {allowance} from them in long stitches",
            tacked, lengths, how="Beyond both ends of the zip, in stitches of the usual length."),
        EdgeStep("Pressed open", "Press the seam open, wrong side up", opened, lengths),
        EdgeStep("Zip laid on", "Lay the zip face down, its teeth on the seam, and tack it", laid, lengths),
        EdgeStep("Stitched", "Stitch {from_seam} from the seam on both sides, in the same direction", stitched, lengths,
            rules=("start-seam", "fasten"),
            why="Stitched up on one side and down on the other, the seam is pulled askew."),
        EdgeStep("Opened", "Take the long stitches out, seen from the right side", done, lengths,
            how="Leave the zip partly open before you close the last seam."),
    ]  # fmt: skip


def _lapped_zip(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, of an allowance a sixth stands beyond the seam line beside the teeth, half is lapped over; the
    teeth are an eighth as wide."""
    wide = with_.allowance
    beyond, teeth = wide / 6, wide / 8
    under = CrossSection().lay(LOWER, wide, -1, right_up=True).neatened(LOWER).fold(beyond, "right", over=False)
    tape = _with_zip(CrossSection(), beyond + teeth / 2, wide * 3 / 5, teeth, face_up=True)
    first = under.over(tape).stitch(beyond / 2, FIRST_ROW)
    lap = CrossSection().lay(UPPER, -wide, 1, right_up=True).neatened(UPPER).fold(Fraction(0), "left", over=False)
    lapped = lap.over(first)
    second = lapped.stitch(wide / 2, SECOND_ROW)
    lengths = {"allowance": wide, "narrower": wide - beyond, "beyond": beyond, "from_fold": wide / 2}
    return [
        EdgeStep("Folded under", _NEATEN + "fold one under by {narrower}, {beyond} beyond the seam line", under,
            lengths),
        EdgeStep("First row", "Lay its fold beside the teeth, right side up, and stitch close to the fold", first,
            lengths, rules=("start-seam", "fasten")),
        EdgeStep("Lapped", "Fold the other edge under by {allowance} and lay it over, fold on the seam line", lapped,
            lengths, how="It hides the teeth and the first row."),
        EdgeStep("Second row", "Stitch {from_fold} from the fold, across the end, through all layers", second, lengths,
            how="Open the zip before you close the last seam."),
    ]  # fmt: skip


def _hemmed_pair(with_: EdgeMeasures, overlap: Fraction) -> tuple[CrossSection, CrossSection]:
    """Two hemmed edges, right side up: the lower one's edge at the overlap, the upper one's at 0 over it."""
    takes = with_.turn + with_.hem
    lower = CrossSection().lay(LOWER, overlap + takes, -1, right_up=True)
    lower = lower.fold(overlap + with_.hem, "right", over=False).fold(overlap, "right", over=False)
    upper = CrossSection().lay(UPPER, -takes, 1, right_up=True)
    upper = upper.fold(-with_.hem, "left", over=False).fold(Fraction(0), "left", over=False)
    row = with_.hem - with_.edge_stitch
    return lower.stitch(overlap - row, LOWER_HEM), upper.stitch(row, UPPER_HEM)


def _overlap(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, drawn with an overlap of three hems."""
    lower, upper = _hemmed_pair(with_, 3 * with_.hem)
    lengths = {"turn": with_.turn, "hem": with_.hem}
    return [
        EdgeStep("Hemmed", "Hem both edges of the opening: turn {turn}, hem {hem}", lower, lengths),
        EdgeStep("Lapped", "Lay one over the other, both right side up, and stitch across both ends", upper.over(lower),
            lengths, how="Within the seam allowance, so that the two parts can be sewn in as one."),
    ]  # fmt: skip


def _buttoned(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, drawn with an overlap as wide as the hems, and a button half as wide in its middle."""
    lower, upper = _hemmed_pair(with_, with_.hem)
    lapped = upper.over(lower)
    sewn = lapped.put_in(BUTTON, with_.hem / 2, with_.hem / 2).stitch(with_.hem / 2, BUTTON_ROW, (LOWER, BUTTON))
    lengths = {"turn": with_.turn, "hem": with_.hem}
    return [
        EdgeStep("Hemmed", "Hem both edges of the opening: turn {turn}, hem {hem}", lower, lengths),
        EdgeStep("Lapped", "Make the buttonholes in one, and lap it over the other by the width of the hem", lapped,
            lengths),
        EdgeStep("Buttoned", "Sew the buttons to the hem below, and button it", sewn, lengths,
            how="A scrap of cloth under each keeps it from tearing out.", rules=("small-parts",)),
    ]  # fmt: skip


def _piped(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, drawn with a cord half as thick as the allowance is wide; its strip is folded round it."""
    wide = with_.allowance
    loop = wide * 3 / 4
    cut = 2 * (wide + loop)
    seam, edge = -wide, -(wide + loop)
    strip = CrossSection().lay(PIPING, Fraction(0), -1, right_up=False, length=cut)
    corded = strip.put_in(CORD, edge + wide / 4, wide / 2).fold(edge, "left")
    made = corded.stitch(seam + wide / 16, CORD_ROW)
    laid = made.over(CrossSection().lay(LOWER, Fraction(0), -1, right_up=True))
    sewn = laid.lay(UPPER, Fraction(0), -1, right_up=False).stitch(seam, FIRST_ROW)
    lengths = {"allowance": wide}
    return [
        EdgeStep("Cord covered", "Fold the bias strip round the cord, right side out, and stitch beside the cord", made,
            lengths, how="Not close to it yet."),
        EdgeStep("Laid on", "Lay it on the right side of one piece, raw edges even", laid, lengths),
        EdgeStep("Stitched", "Lay the other piece on, right sides together, and stitch {allowance} in",
            sewn, lengths, how="Close to the cord, just inside the first row, from the side where that row shows.",
            rules=("start-seam", "fasten")),
        EdgeStep("Turned", "Turn it right side out: the piping stands at the edge", turned_out(sewn, seam), lengths),
    ]  # fmt: skip


CLOSINGS = {
    "zip": Edge("Zip in a seam", _zip_in_seam, lambda done: done.runs_of(LOWER)[-1].low, layers=3,
        through={FIRST_ROW: 3, SECOND_ROW: 3}, deep=False, seamed=True),
    "lapped-zip": Edge("Lapped zip", _lapped_zip, lambda done: done.runs_of(UPPER)[-1].low, layers=5,
        through={FIRST_ROW: 3, SECOND_ROW: 3}, deep=False, seamed=True),
    "overlap": Edge("Overlapping opening", _overlap, lambda done: done.runs_of(LOWER)[-1].low, layers=4,
        through={LOWER_HEM: 3, UPPER_HEM: 3}, raw=(LOWER, UPPER), turned=True),
    "buttoned": Edge("Buttoned opening", _buttoned, lambda done: done.runs_of(LOWER)[-1].low, layers=6,
        through={LOWER_HEM: 3, UPPER_HEM: 3, BUTTON_ROW: 2}, raw=(LOWER, UPPER), turned=True),
    "piped": Edge("Piped edge", _piped, seam_takes(FIRST_ROW), layers=6, through={CORD_ROW: 2, FIRST_ROW: 4},
        bare=(LOWER, UPPER, PIPING), deep=False, seamed=True),
}  # fmt: skip
