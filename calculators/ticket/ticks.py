"""Which bundles of a step are done: one after another, or any of them by itself.

What is kept is a count of pieces while bundles are done in order, so that it still says the truth when the bundles
become
larger or smaller; the numbers of the bundles once one was left out.
"""

from collections.abc import Set

from calculators.trade.bundles import Bundles, TickBox

Kept = int | list[int]


def done(kept: Kept, bundles: Bundles) -> frozenset[int]:
    """The numbers of the bundles that are whole, counted from 1. kept: pieces done, or bundles."""
    if isinstance(kept, list):
        return frozenset(each for each in kept if each <= bundles.count)
    return frozenset(range(1, bundles.done(kept) + 1))


def pieces_done(kept: Kept, bundles: Bundles) -> int:
    """How many pieces are done, those of a bundle begun with them."""
    if not isinstance(kept, list):
        return min(kept, bundles.pieces)
    return sum(bundles.last if each == bundles.count else bundles.size for each in done(kept, bundles))


def to_keep(whole: Set[int], bundles: Bundles) -> Kept:
    """What is kept for bundles that are whole."""
    in_order = whole == set(range(1, len(whole) + 1))
    return min(bundles.pieces, len(whole) * bundles.size) if in_order else sorted(whole)


def of_box(box: TickBox, bundles: Bundles) -> frozenset[int]:
    """The bundles that a box stands for."""
    return frozenset(range((box.first - 1) // bundles.size + 1, (box.last - 1) // bundles.size + 2))


def turned(kept: Kept, box: TickBox, bundles: Bundles) -> Kept:
    """With the bundles of a box ticked, or taken back where all of them were."""
    whole, own = done(kept, bundles), of_box(box, bundles)
    return to_keep(whole - own if own <= whole else whole | own, bundles)


def one_more(kept: Kept, bundles: Bundles) -> Kept:
    """With the first bundle that was not whole ticked, too."""
    whole = done(kept, bundles)
    lacking = [each for each in range(1, bundles.count + 1) if each not in whole]
    return to_keep(whole | set(lacking[:1]), bundles)


def one_less(kept: Kept, bundles: Bundles) -> Kept:
    """With the last bundle ticked taken back; in order, one that is begun is taken back first."""
    if not isinstance(kept, list):
        return bundles.after_one_less(kept)
    return to_keep(done(kept, bundles) - {max(done(kept, bundles), default=0)}, bundles)


def in_other_bundles(kept: Kept, before: Bundles, after: Bundles) -> Kept:
    """The same pieces once they go in other bundles: done is each bundle of which every piece was."""
    if not isinstance(kept, list):
        return kept
    ranges = (range((each - 1) * before.size, min(each * before.size, before.pieces)) for each in done(kept, before))
    pieces = {piece for each in ranges for piece in each}
    whole = {
        each
        for each in range(1, after.count + 1)
        if pieces.issuperset(range((each - 1) * after.size, min(each * after.size, after.pieces)))
    }
    return to_keep(whole, after)
