"""The cuts of a plan in working order, from the straightening of the ends to the last trimming cut: one list for the
page and its file."""

from dataclasses import dataclass
from fractions import Fraction

from calculators.trade.lay_plan.cutting import Cut, cuts, holds_pieces
from calculators.trade.lay_plan.laid import Lay
from calculators.trade.lay_plan.order import Rules


@dataclass(frozen=True)
class Work:
    """One line of the list.

    in_hand: what is cut: "whole cloth", "strip 2, part 1" and the like. does: how, in words. across: whether the cuts
    run from side to side.
    marks: where [mm]; empty where a strip is cut off an end or an edge. off: how wide that strip is [mm].
    each: how long each cut is [mm], None where they differ. lengths: of every single cut [mm]. waste: as in Cut.
    """

    in_hand: str
    does: str
    across: bool
    marks: tuple[Fraction, ...]
    each: Fraction | None
    lengths: tuple[Fraction, ...]
    off: Fraction = Fraction(0)
    waste: tuple[tuple[Fraction, Fraction], ...] = ()


def working_order(lay: Lay, rules: Rules) -> list[Work]:
    """Every cut of a plan in working order.

    lay: the plan of one cloth. rules: what is cut off its ends and selvedges.
    Returns the lines: the end straightened that all marks along start from, the first cuts, the selvedges, then every
    other cut. Selvedges
    stay on until the cloth is cut across, since marks are taken from them; where the first cuts run along, they are
    trimmed with these.
    Source: derived.
    """
    edges, made = lay.cloth.cloth.edges(rules), cuts(lay)
    full = lay.cloth.width + 2 * edges.strip
    ends = bool(rules.end_loss or rules.skew)
    across = lay.first_cut == "across"
    first = [_line(cut, edges.name, full) for cut in made if not cut.first]
    rest = [_line(cut, edges.name, cut.length) for cut in made if cut.first]
    start = [Work("whole cloth", "straighten the first end", True, (), full, (full,), rules.end_loss)] if ends else []
    far = (
        [Work("whole cloth", "cut off the far end, from the straight end", True, (lay.length,), full, (full,))]
        if ends and lay.used_length == lay.length
        else []
    )
    selvedges = [_selvedges(lay, edges.strip, across)] if edges.strip else []
    return [*start, *first, *far, *selvedges, *rest] if across else [*start, *far, *selvedges, *first, *rest]


def _selvedges(lay: Lay, strip: Fraction, in_strips: bool) -> Work:
    """Both selvedges off, strip after strip once the cloth is cut across, else off the whole cloth."""
    held = [lay.extent(part).length for part in lay.strips if holds_pieces(part)] if in_strips else [lay.length]
    name = "whole cloth" if not in_strips else "strip 1" if len(held) == 1 else f"strips 1 to {len(held)}, each"
    each = held[0] if len(set(held)) == 1 else None
    return Work(name, "trim both selvedges", False, (), each, tuple(length for length in held for _ in range(2)), strip)


def _line(cut: Cut, long_edge: str, each: Fraction) -> Work:
    name = "whole cloth"
    if cut.first:
        name = f"strip {cut.first}" if cut.first == cut.last else f"strips {cut.first} to {cut.last}, each"
        name += f", part {cut.within}" if cut.within else ""
    each = each if cut.across else cut.length
    way = "across, from the straight end" if cut.across else f"along, from the {long_edge}"
    return Work(
        name,
        f"{'trim ' if cut.trims else ''}{way}",
        cut.across,
        cut.marks,
        each,
        (each,) * cut.how_often,
        waste=cut.waste,
    )
