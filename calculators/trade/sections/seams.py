"""Seams, step by step: two edges become one."""

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
from calculators.trade.sections.section import CrossSection

OVER_AND_OVER = "over and over"
_STITCHED = "Lay right sides together, edges even, and stitch {allowance} from them"
_RULES = ("pins-placed", "start-seam", "fasten")


def together(right_sides_in: bool) -> CrossSection:
    """Two pieces with their edges even; their bodies lie to the left of the seam, at 0, their edges to its right."""
    return CrossSection().lay(LOWER, Fraction(0), -1, right_up=right_sides_in).lay(
        UPPER, Fraction(0), -1, right_up=not right_sides_in
    )  # fmt: skip


def pressed_open(stitched: CrossSection, seam: Fraction) -> CrossSection:
    """Two pieces stitched right sides together, opened, their allowances pressed apart below.

    stitched: the two pieces; seam: where they are stitched [mm].
    Returns them opened [mm].
    Source: derived, each is folded at the seam.
    """
    return stitched.fold(seam, "right", over=False, strips=(LOWER,)).fold(seam, "left", strips=(UPPER,))


def _plain(with_: EdgeMeasures) -> list[EdgeStep]:
    seam, lengths = -with_.allowance, {"allowance": with_.allowance}
    stitched = together(right_sides_in=True).stitch(seam, FIRST_ROW)
    return [
        EdgeStep("Stitched", _STITCHED, stitched, lengths, rules=_RULES),
        EdgeStep("Pressed open", "Press it as it lies, then open it and press the allowances apart",
            pressed_open(stitched, seam), lengths,
            how="Let it cool in between. A wooden edge below keeps the allowances from showing through.",
            why="Pressed shut first, the stitches settle into the cloth."),
    ]  # fmt: skip


def _neatened(with_: EdgeMeasures) -> list[EdgeStep]:
    seam, lengths = -with_.allowance, {"allowance": with_.allowance}
    neat = together(right_sides_in=True).neatened(LOWER, UPPER)
    stitched = neat.stitch(seam, FIRST_ROW)
    return [
        EdgeStep("Stitched", "Neaten both raw edges, lay right sides together and stitch {allowance} from them",
            stitched, lengths, rules=_RULES),
        EdgeStep("Pressed open", "Open it and press the allowances apart", pressed_open(stitched, seam), lengths),
    ]  # fmt: skip


def _to_one_side(with_: EdgeMeasures) -> list[EdgeStep]:
    seam, lengths = -with_.allowance, {"allowance": with_.allowance}
    stitched = together(right_sides_in=True).stitch(seam, FIRST_ROW)
    neat = stitched.neatened(LOWER, UPPER, words="neatened together")
    return [
        EdgeStep("Stitched", _STITCHED, stitched, lengths, rules=_RULES),
        EdgeStep("Neatened", "Neaten both allowances together", neat, lengths),
        EdgeStep("Pressed", "Open the pieces and press both allowances to one side",
            neat.fold(seam, "left", strips=(UPPER,)), lengths, how="For thin cloth.",
            why="Three layers lie on one side of the seam."),
    ]  # fmt: skip


def _felled(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the allowance in three equal parts: left of the narrow edge, turned in, and between them."""
    seam = -with_.allowance
    narrow = with_.allowance / 3
    lengths = {"allowance": with_.allowance, "narrow": narrow, "fell": 2 * narrow}
    stitched = together(right_sides_in=True).stitch(seam, FIRST_ROW)
    trimmed = stitched.trim(UPPER, with_.allowance - narrow)
    turned = trimmed.fold(seam + 2 * narrow, "right", strips=(LOWER,))
    opened = turned.fold(seam, "left", strips=(UPPER,))
    felled = opened.stitch(seam + 2 * narrow - min(with_.edge_stitch, narrow / 2), SECOND_ROW)
    return [
        EdgeStep("Stitched", _STITCHED, stitched, lengths, rules=_RULES),
        EdgeStep("Trimmed", "Trim the upper allowance to {narrow}", trimmed, lengths),
        EdgeStep("Turned in", "Fold the wider allowance over the narrow one, its fold {fell} from the seam, and press",
            turned, lengths),
        EdgeStep("Laid flat", "Open the pieces and lay the fell flat, all the same way", opened, lengths,
            why="Then the shadow falls on the same side everywhere."),
        EdgeStep("Stitched down", "Edge-stitch along the fold, or hem it by hand", felled, lengths),
    ]  # fmt: skip


def _french(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the first row at two fifths of the allowance, as the house has it, the second at the rest."""
    first = with_.allowance * 2 / 5
    second = with_.allowance - first
    lengths = {"first": first, "second": second}
    stitched = together(right_sides_in=False).stitch(-first, FIRST_ROW)
    turned = turned_out(stitched, -first)
    closed = turned.stitch(-first + second, SECOND_ROW)
    opened = closed.fold(-first + second, "right", strips=(UPPER,))
    return [
        EdgeStep("First row", "Lay wrong sides together, edges even, and stitch {first} from them", stitched,
            lengths, how="Cut off every loose thread.", why="One that is caught shows on the right side for ever."),
        EdgeStep("Turned", "Turn the right sides together, crease exactly at the stitching, and press", turned,
            lengths),
        EdgeStep("Second row", "Stitch {second} from the fold, so that the raw edges are shut in", closed, lengths,
            rules=("start-seam", "fasten")),
        EdgeStep("Opened", "Open the pieces and press the ridge to one side", opened, lengths),
    ]  # fmt: skip


def turned_out(stitched: CrossSection, seam: Fraction) -> CrossSection:
    """Two pieces stitched together, turned so that their allowances lie between them.

    stitched: the two pieces; seam: where they are stitched [mm].
    Returns them turned [mm].
    Source: derived, each is folded at the seam.
    """
    return stitched.fold(seam, "left", strips=(UPPER,)).fold(seam, "left", over=False, strips=(LOWER,))


def _lapped(with_: EdgeMeasures) -> list[EdgeStep]:
    seam, row = -with_.allowance, min(with_.edge_stitch, with_.allowance / 2)
    lengths = {"allowance": with_.allowance, "row": row, "lap": with_.allowance}
    lap = CrossSection().lay(UPPER, 2 * seam, 1, right_up=True).neatened(UPPER)
    turned = lap.fold(seam, "left", over=False)
    laid = turned.over(CrossSection().lay(LOWER, Fraction(0), -1, right_up=True).neatened(LOWER))
    return [
        EdgeStep("Folded under", "Neaten both edges; fold one under by {allowance} and press", turned, lengths),
        EdgeStep("Lapped", "Lay its fold over the other edge by {lap}, both right side up", laid, lengths,
            rules=("pins-placed",)),
        EdgeStep("Stitched", "Stitch {row} from the fold", laid.stitch(seam + row, FIRST_ROW), lengths,
            rules=("start-seam", "fasten"), why="It can be matched and stitched from the right side."),
    ]  # fmt: skip


def _selvedges(with_: EdgeMeasures) -> list[EdgeStep]:
    """Source: derived, the thread goes round both selvedges, so that next to nothing is taken up."""
    even = together(right_sides_in=True).neatened(LOWER, UPPER, words="selvedge")
    sewn = even.whip(Fraction(0), OVER_AND_OVER)
    return [
        EdgeStep("Sewn", "Lay right sides together, selvedges even, and sew over and over through both by hand", sewn,
            how="Small stitches, close together, a thread or two deep.",
            why="There is nothing to fray. A selvedge tighter than the cloth puckers the join: cut it off, and fell."),
        EdgeStep("Opened", "Open it and press it flat", sewn.fold(Fraction(0), "left", strips=(UPPER,))),
    ]  # fmt: skip


SEWN = seam_takes(FIRST_ROW)
SEAMS = {
    "plain": Edge("Plain seam, pressed open", _plain, SEWN, layers=2, through={FIRST_ROW: 2}, bare=(LOWER, UPPER),
        deep=False, seamed=True, iso_4916=1),
    "neatened": Edge("Plain seam, neatened", _neatened, SEWN, layers=2, through={FIRST_ROW: 2}, deep=False,
        seamed=True, iso_4916=1),
    "to-one-side": Edge("Seam pressed to one side", _to_one_side, SEWN, layers=3, through={FIRST_ROW: 2}, deep=False,
        seamed=True),
    "felled": Edge("Felled seam", _felled, SEWN, layers=3, through={FIRST_ROW: 2, SECOND_ROW: 3},
        raw=(LOWER, UPPER), deep=False, seamed=True),
    "french": Edge("French seam", _french, seam_takes(SECOND_ROW), layers=5, through={FIRST_ROW: 2, SECOND_ROW: 2},
        raw=(LOWER, UPPER), deep=False, seamed=True, iso_4916=1),
    "lapped": Edge("Lapped seam", _lapped, lambda done: done.runs_of(UPPER)[-1].low, layers=3, through={FIRST_ROW: 3},
        deep=False, seamed=True, iso_4916=2),
    "selvedges": Edge("Selvedge to selvedge", _selvedges, lambda done: done.held(OVER_AND_OVER, LOWER), layers=1,
        through={OVER_AND_OVER: 2}, deep=False),
}  # fmt: skip
