"""A maker's order: the cloths on her shelf, the pieces she wants, and the rules she cuts by. All lengths are exact
[mm]."""

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from calculators.trade.cloth import LongEdges


@dataclass(frozen=True)
class Flaw:
    """A place that no piece may cover, as it lies on the cloth before anything is cut off.

    from_end, from_selvedge: where it begins [mm]; length, width: how far it reaches along and across [mm].
    """

    from_end: Fraction
    from_selvedge: Fraction
    length: Fraction
    width: Fraction


@dataclass(frozen=True)
class Repeat:
    """A pattern that starts again.

    along, across: after which distance [mm]; None where the pattern does not repeat that way.
    first_along, first_across: where the first whole repeat starts, from the end and from the selvedge [mm].
    """

    along: Fraction | None
    across: Fraction | None
    first_along: Fraction = Fraction(0)
    first_across: Fraction = Fraction(0)


@dataclass(frozen=True)
class Cloth:
    """A cloth as it lies.

    width, length: edge to edge, end to end [mm]; length None for cloth still to be bought.
    trimmed: whether its selvedges are off already, so that nothing is trimmed from its width.
    how_many: such cloths there are. one_way: whether nothing on it may be turned.
    """

    name: str
    width: Fraction
    length: Fraction | None = None
    how_many: int = 1
    one_way: bool = False
    repeat: Repeat | None = None
    flaws: tuple[Flaw, ...] = ()
    trimmed: bool = False

    def edges(self, rules: "Rules") -> LongEdges:
        """Its long edges, where marks across start."""
        return LongEdges(self.trimmed, rules.selvedge)


@dataclass(frozen=True)
class Wanted:
    """One size of piece.

    width, length: cut size across and along the cloth [mm].
    count: how many; None for as many as fit.
    may_turn: whether its length may lie across the cloth.
    matched: whether every copy starts at the same place in the repeat.
    joined: whether it may be made of widths sewn together when it is wider than the cloth.
    matters: what one piece counts against the others.
    finished: width and length once hemmed [mm], None where the cut size was given.
    """

    name: str
    width: Fraction
    length: Fraction
    count: int | None = 1
    may_turn: bool = False
    matched: bool = False
    joined: bool = False
    matters: int = 1
    finished: tuple[Fraction, Fraction] | None = None


@dataclass(frozen=True)
class Rules:
    """How the cloth is cut.

    aim: "most" (pieces), "shortest" (the whole order on the least length of the first cloth), "buy" (the least cloth to
    buy) or
        "shelf" (the whole order from the cloths there are).
    strips: "across", "along" or "either": strips first, then pieces; "sections": strips across, those along into
    sections, then
        pieces; "free": cuts edge to edge in any order.
    gap: lost between two pieces [mm]; selvedge: trimmed off each side that is not trimmed yet [mm]; end_loss: cut off
    each end, once, to reach clean threads [mm].
    skew: how far a weft thread that starts at one corner is off at the other selvedge, before the cloth is pulled
    square [mm].
    change_length, change_width: what the wash does before anything is cut [%], negative for shrinkage.
    seam_allowance: on each edge that is joined [mm].
    keep: a remnant is worth keeping when it is at least this long and wide [mm].
    """

    aim: str = "most"
    strips: str = "across"
    gap: Fraction = Fraction(0)
    selvedge: Fraction = Fraction(0)
    end_loss: Fraction = Fraction(0)
    skew: Fraction = Fraction(0)
    change_length: Fraction = Fraction(0)
    change_width: Fraction = Fraction(0)
    seam_allowance: Fraction = Fraction(10)
    keep: Fraction = Fraction(100)


@dataclass(frozen=True)
class Order:
    """Cloths, pieces and rules together."""

    cloths: tuple[Cloth, ...]
    pieces: tuple[Wanted, ...]
    rules: Rules = field(default_factory=Rules)


class CannotPlan(ValueError):
    """Raised when an order cannot be planned.

    part: "cloths", "pieces", "flaws", "repeats", or a name of Rules. sentence: with ``{blanks}`` for the values.
    """

    def __init__(self, part: str, sentence: str, **values: Any):
        super().__init__(f"{part}: {sentence}")
        self.part, self.sentence, self.values = part, sentence, values
