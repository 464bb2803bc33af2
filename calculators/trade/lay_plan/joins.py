"""Pieces wider than the cloth, made of widths sewn together: one full width in the centre, equal sides."""

from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil

from calculators.trade.lay_plan.order import CannotPlan, Wanted


@dataclass(frozen=True)
class Join:
    """How one wide piece is made of widths.

    full_widths: widths of the whole cloth, side by side in the centre; full_width: cut width of each [mm].
    side_width: cut width of each of the two sides [mm]; 0 when the full widths are enough.
    """

    piece: Wanted
    full_widths: int
    full_width: Fraction
    side_width: Fraction

    @property
    def seams(self) -> int:
        return self.full_widths - 1 + (2 if self.side_width else 0)


def joined_widths(piece: Wanted, cloth_width: Fraction, allowance: Fraction) -> Join:
    """The fewest widths that make a piece, an odd number of full ones in the centre and two equal sides.

    piece: its cut size [mm]. cloth_width: usable width [mm]. allowance: on each edge of a seam [mm].
    Returns the widths to cut [mm].
    Source: derived: every seam takes two allowances, so an inner width shows cloth_width − 2·allowance. One full width
    in the
    centre, with seams towards the sides, is common practice, no source.
    Raises CannotPlan when the cloth is no wider than its seams.
    """
    if cloth_width <= 4 * allowance:
        raise CannotPlan(
            "seam_allowance",
            "Seams of {allowance:length} on both sides use up a cloth {width:length} wide. Write a smaller allowance.",
            allowance=allowance,
            width=cloth_width,
        )
    full, side = full_and_sides(piece.width, cloth_width, allowance)
    return Join(piece, full, cloth_width, side)


def full_and_sides(width: Fraction, cloth_width: Fraction, allowance: Fraction) -> tuple[int, Fraction]:
    """The fewest widths that come to a cut width.

    width: to come to [mm]. cloth_width: usable width, more than four allowances [mm]. allowance: on each edge of a seam
    [mm].
    Returns how many full ones, and what each of the two sides is cut [mm].
    Source: derived as in `joined_widths`.
    """
    shown = cloth_width - 2 * allowance
    full = max(1, ceil((width - 2 * (cloth_width - allowance)) / shown))
    full += 1 - full % 2
    return full, (width - full * shown) / 2 + allowance


def with_joins(
    pieces: tuple[Wanted, ...], cloth_width: Fraction, allowance: Fraction
) -> tuple[tuple[Wanted, ...], tuple[Join, ...]]:
    """The pieces to cut once every piece that is too wide and may be joined is taken apart.

    pieces: as ordered [mm]. cloth_width: usable width of the widest cloth [mm]. allowance: on each edge of a seam [mm].
    Returns the pieces to cut, and how they are joined.
    Source: derived, each wide piece taken apart as in `joined_widths`.
    Raises CannotPlan as joined_widths does, and where as many as fit of a joined piece are wanted: its parts would be
    cut one without the other.
    """
    cut: list[Wanted] = []
    joins = []
    for piece in pieces:
        narrowest = min(piece.width, piece.length) if piece.may_turn else piece.width
        if not piece.joined or narrowest <= cloth_width:
            cut.append(piece)
            continue
        if piece.count is None:
            raise CannotPlan(
                "pieces",
                "“{piece:text}” is joined from widths, which must be cut in the right numbers. Write how many of it "
                "you want.",
                piece=piece.name,
            )
        join = joined_widths(piece, cloth_width, allowance)
        joins.append(join)
        part = replace(piece, may_turn=False, joined=False, finished=None)
        count = piece.count
        cut.append(
            replace(
                part,
                name=f"{piece.name}, centre",
                width=join.full_width,
                count=None if count is None else count * join.full_widths,
            )
        )
        cut.append(
            replace(part, name=f"{piece.name}, side", width=join.side_width, count=None if count is None else count * 2)
        )
    return tuple(cut), tuple(joins)
