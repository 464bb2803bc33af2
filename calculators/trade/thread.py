"""Thread: how much stitching a hemmed piece takes, and how much thread goes into it."""

from fractions import Fraction


def stitching_of_a_piece(edge: Fraction, rows: int, corners: int, corner_seam: Fraction) -> Fraction:
    """All stitching of one hemmed piece.

    edge: all its hemmed sides together, finished [mm]; rows: of stitching along it, each counted as long as the edge
    itself.
    corners: all of them; corner_seam: the seam of one of them, 0 where they have none [mm].
    Returns the length of the stitching [mm].
    Source: derived, rows × edge + corners × seam. A row further in is shorter, so this is a little more than is
    stitched.
    """
    return rows * edge + corners * corner_seam


def thread_for_each_length(stitch: Fraction, thickness: Fraction) -> Fraction:
    """Thread of a lockstitch (ISO 4915, type 301), upper and lower together, for each length of stitching.

    stitch: length of one stitch [mm]; thickness: of all layers stitched through [mm].
    Returns how many times the stitching's length goes into it [mm/mm].
    Source: derived: where the threads lock in the middle, each runs along one stitch, then down half the thickness and
    up again, so
        that both together take 2 × (stitch + thickness) for a stitch. Texts for clothing makers give the same as 2 +
        2·T·S for thickness T and
        S stitches in each length (bibliography: thread-consumption).
    """
    return 2 + 2 * thickness / stitch


def seams_of_a_row(along: int, across: int) -> int:
    """How many seams one row round a piece is: one where hemmed sides meet, two where only opposite sides are hemmed.

    along, across: hemmed sides along the piece and across it [sides].
    Returns a whole number [seams].
    Source: derived.
    """
    return 1 if along and across else along + across


def thread_ends(seams: int, end: Fraction) -> Fraction:
    """Thread that hangs loose and is cut off.

    seams: rows of stitching, each with a start and a stop; end: what one thread leaves at either [mm].
    Returns the length of both threads together [mm].
    Source: derived, start and stop × upper and lower thread.
    """
    return seams * 2 * 2 * end


def whole_spools(thread: Fraction, spool: Fraction) -> int:
    """How many spools, or bobbins, hold so much thread.

    thread: needed [mm]; spool: on one of them [mm].
    Returns a whole number, rounded up.
    Source: derived, the next whole number of spools.
    """
    return -(-thread // spool)
