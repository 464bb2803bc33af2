"""The single folds between two steps of an edge cut through, so that they can be played."""

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from calculators.trade.sections.section import CrossSection, Run


@dataclass(frozen=True)
class StripFold:
    """A part of the work that turns about a place.

    before, after: the edge. at: the place [mm]. clockwise: which way it turns, as it is seen. moved: the runs of
    `after` that have turned.
    """

    before: CrossSection
    after: CrossSection
    at: Fraction
    clockwise: bool
    moved: frozenset[Run]


def strip_folds(earlier: CrossSection, later: CrossSection) -> tuple[StripFold, ...] | None:
    """The folds that lead from one step of an edge to the next, in order.

    earlier, later: the edge at both steps.
    Returns no fold where nothing moves, None where what moves is not known as single folds.
    Source: derived, a section knows what it was folded from.
    """
    if _lies_alike(earlier, later):
        return ()
    shared = len(earlier.before)
    made = [*later.before[shared:], later]
    if (
        any(one is not other for one, other in zip(earlier.before, later.before))
        or len(made) < 2
        or set(made[0].strips) != set(earlier.strips)
        or not _lies_alike(earlier, made[0])
    ):
        return None
    folds = [_fold(one, other) for one, other in pairwise(made)]
    found = tuple(each for each in folds if each)
    return found if len(found) == len(folds) else None


def is_turned_over(earlier: CrossSection, later: CrossSection) -> bool:
    """Whether the whole work has been turned over between two steps."""
    return earlier.turned_over().layers == later.layers


def _lies_alike(earlier: CrossSection, later: CrossSection) -> bool:
    """Whether all that is left of the earlier cloth lies as it did; more may have been laid with it."""
    return set(earlier.strips) <= set(later.strips) and all(
        _lay(earlier, run) == (run.zero, run.way) for run in later.layers if run.strip in earlier.strips
    )


def _lay(section: CrossSection, run: Run) -> tuple[Fraction, int]:
    """How that part of a strip lies in a section."""
    middle = (run.low + run.high) / 2
    there = next(each for each in section.runs_of(run.strip) if each.low <= middle <= each.high)
    return there.zero, there.way


def _fold(before: CrossSection, after: CrossSection) -> StripFold | None:
    lays = {run: _lay(before, run) for run in after.layers}
    moved = {run for run, lay in lays.items() if lay != (run.zero, run.way)}
    places = {(run.zero + lays[run][0]) / 2 for run in moved if lays[run][1] != run.way}
    if len(places) != 1 or any(lays[run][1] == run.way for run in moved):
        return None
    (at,) = places
    over = after.layers[-1] in moved
    from_left = all(run.left >= at for run in moved)
    return StripFold(before, after, at, over == from_left, frozenset(moved))
