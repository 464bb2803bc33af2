"""What a piece and a batch take: stitching and thread, time, cloth and cost."""

from dataclasses import dataclass
from fractions import Fraction
from types import SimpleNamespace

from calculators.asking.timing import minutes_for
from calculators.trade.costing import Costs, cloth_of_the_rows, costs_of
from calculators.trade.pieces import rows_of
from calculators.trade.thread import (
    seams_of_a_row,
    stitching_of_a_piece,
    thread_ends,
    thread_for_each_length,
    whole_spools,
)

_NANOMETRES = 10**6  # a seam measured on a fold is no exact number; so fine, it is the same on every machine


@dataclass(frozen=True)
class PieceWork:
    """One piece of the batch, whatever their number: its stitching and thread [mm], loose ends of it [mm], thread for
    each length, seam of a corner [mm]."""

    stitching: Fraction
    thread: Fraction
    ends: Fraction
    ratio: Fraction
    corner: Fraction


@dataclass(frozen=True)
class BatchSums:
    """What so many pieces of the batch take and cost. cloth: the length they are charged with [mm], and the pieces that
    so much gives."""

    cloth: tuple[Fraction, int]
    thread: Fraction
    spools: int
    time: Fraction
    costs: Costs


def piece_work(given: SimpleNamespace) -> PieceWork:
    corner = Fraction(given.mitre_seam).limit_denominator(_NANOMETRES)
    edge = given.sides_across * given.finished_width + given.sides_along * given.finished_length
    ratio = thread_for_each_length(given.stitch, given.thickness)
    if given.stitching_each is None:
        stitching = stitching_of_a_piece(edge, given.rows, given.corners, corner)
        begun = given.rows * seams_of_a_row(given.sides_along, given.sides_across) + (given.corners if corner else 0)
    else:
        stitching, begun = given.stitching_each, given.rows_each
    ends = thread_ends(begun, given.thread_end)
    return PieceWork(stitching, (stitching * ratio + ends) * (1 + given.waste / 100), ends, ratio, corner)


def cloth_for(given: SimpleNamespace, pieces: int) -> tuple[Fraction, int]:
    """The length of cloth that pieces are charged with [mm], and how many so much gives."""
    if given.gives is None or given.gives <= pieces:
        return given.cloth_bought, pieces
    rows = rows_of(pieces, given.across)
    taken = cloth_of_the_rows(given.cloth_bought, rows, rows_of(given.gives, given.across))
    return taken, min(rows * given.across, given.gives)


def batch_sums(given: SimpleNamespace, piece: PieceWork, pieces: int, cloth: tuple[Fraction, int]) -> BatchSums:
    thread = pieces * piece.thread
    spools = whole_spools(thread, given.spool)
    made, with_one_more = (minutes_for(count, given.minutes_piece, given) for count in (pieces, pieces + 1))
    time = given.minutes_batch + made
    costs = costs_of(
        pieces,
        (*cloth, given.price_cloth),
        (spools, piece.thread / given.spool, given.price_spool),
        (time, with_one_more - made, given.rate),
        given.other,
    )
    return BatchSums(cloth, thread, spools, time, costs)
