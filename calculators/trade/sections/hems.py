"""Hems folded of the piece itself, step by step."""

from dataclasses import replace
from fractions import Fraction

from calculators.trade.sections.edge import HAND_ROW, HEM_ROW, PIECE, Edge, EdgeMeasures, EdgeStep, hem_takes
from calculators.trade.sections.section import CrossSection

_FLAT = CrossSection().lay(PIECE, Fraction(0), 1, right_up=False)


def folded_twice(with_: EdgeMeasures) -> tuple[CrossSection, CrossSection]:
    """A piece, wrong side up, with its turn folded in, then with its hem folded over; neither stitched."""
    turned = _FLAT.fold(with_.turn, "left")
    return turned, turned.fold(with_.turn + with_.hem, "left")


def _single(with_: EdgeMeasures) -> list[EdgeStep]:
    flat = _FLAT.neatened(PIECE)
    folded = flat.fold(with_.hem, "left")
    stitched = folded.stitch(2 * with_.hem - with_.edge_stitch, with_.hem_row)
    lengths = {"hem": with_.hem, "edge_stitch": with_.edge_stitch}
    return [
        EdgeStep("Neatened", "Neaten the raw edge, wrong side up", flat,
            how="A selvedge needs none.", why="It stays in sight on the wrong side."),
        EdgeStep("Folded", "Fold the hem, {hem}, and press", folded, lengths, rules=("gauge",)),
        EdgeStep("Stitched", "Stitch {edge_stitch} from the neatened edge", stitched, lengths),
    ]  # fmt: skip


def _double(with_: EdgeMeasures) -> list[EdgeStep]:
    turned, folded = folded_twice(with_)
    stitched = folded.stitch(with_.turn + 2 * with_.hem - with_.edge_stitch, with_.hem_row)
    lengths = {"turn": with_.turn, "hem": with_.hem, "edge_stitch": with_.edge_stitch}
    return [
        EdgeStep("First turn", "Fold the raw edge in by {turn}, wrong side up, and press", turned, lengths,
            why="It is hidden: what it is off shifts nothing that is seen."),
        EdgeStep("Second fold", "Fold the hem over, {hem}, and press", folded, lengths,
            rules=("gauge",), why="This fold is the finished edge."),
        EdgeStep("Stitched", "Stitch {edge_stitch} from the inner fold", stitched, lengths,
            why="Nearer to the fold, the needle slips off it."),
    ]  # fmt: skip


def _equal(with_: EdgeMeasures) -> list[EdgeStep]:
    return _double(replace(with_, turn=with_.hem))


def _narrow(with_: EdgeMeasures) -> list[EdgeStep]:
    """The hem rolled by hand, as narrow as it will go."""
    turned, folded = folded_twice(replace(with_, turn=with_.hem))
    hemmed = folded.stitch(with_.hem * 5 / 2, HAND_ROW)
    lengths = {"hem": with_.hem}
    return [
        EdgeStep("Rolled once", "Roll the raw edge in by {hem}, wrong side up", turned, lengths,
            how="Cut it clean along a thread first, a hand’s length at a time.", why="Whiskers left on it work out."),
        EdgeStep("Rolled again", "Roll it over once more, as narrow", folded, lengths),
        EdgeStep("Hemmed", "Hem it by hand, small stitches close to the inner fold", hemmed, lengths),
    ]  # fmt: skip


HEMS = {
    "single": Edge("Single turned hem", _single, hem_takes, layers=2, through={HEM_ROW: 2}, iso_4916=6),
    "double": Edge("Double hem", _double, hem_takes, layers=3, through={HEM_ROW: 3}, raw=(PIECE,), turned=True,
        iso_4916=6),
    "equal": Edge("Hem in equal folds", _equal, hem_takes, layers=3, through={HEM_ROW: 3}, raw=(PIECE,),
        iso_4916=6),
    "narrow": Edge("Narrow rolled hem", _narrow, hem_takes, layers=3, through={HAND_ROW: 3}, raw=(PIECE,),
        iso_4916=6),
}  # fmt: skip
