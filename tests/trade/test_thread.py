"""Stitching and thread against sums written out by hand."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.thread import (
    seams_of_a_row,
    stitching_of_a_piece,
    thread_ends,
    thread_for_each_length,
    whole_spools,
)


def test_stitching_of_a_napkin():
    """40 by 30 cm: once round is 2 × (40 + 30) = 140 cm; two rows 280 cm; four corner seams of 2.5 cm are 10 cm;
    together 290 cm."""
    assert stitching_of_a_piece(F(1400), 2, 4, F(25)) == 2900
    assert stitching_of_a_piece(F(1400), 1, 4, F(0)) == 1400
    assert stitching_of_a_piece(F(1400), 0, 4, F(25)) == 100


def test_thread_as_texts_for_clothing_makers_print_it():
    """2 + 2·T·S with T = 0.01 in and S = 10 stitches an inch: 2.2 in of thread for an inch of seam (bibliography:
    thread-consumption)."""
    assert thread_for_each_length(F(254, 100), F(254, 1000)) == F(22, 10)


def test_thread_counted_stitch_by_stitch():
    """100 stitches of 3 mm through 1.5 mm: each thread lies along 300 mm and goes 0.75 mm down and up again 100 times,
    150 mm; both together 900 mm, three times 300 mm."""
    assert 300 * thread_for_each_length(F(3), F(3, 2)) == 2 * (300 + 100 * 2 * F(3, 4)) == 900


@given(st.fractions(F(1, 2), 50), st.fractions(0, 50))
def test_a_thicker_hem_or_a_shorter_stitch_never_takes_less(stitch, thickness):
    ratio = thread_for_each_length(stitch, thickness)
    assert ratio >= 2
    assert thread_for_each_length(stitch, thickness + 1) > ratio
    assert thread_for_each_length(stitch / 2, thickness) >= ratio


def test_ends_hang_at_start_and_stop_of_both_threads():
    """One row and four corners: 5 seams × 2 ends × 2 threads × 8 cm = 160 cm."""
    assert thread_ends(5, F(80)) == 1600


@pytest.mark.parametrize(
    ("thread", "spool", "spools"),
    [(F(0), F(100), 0), (F(1), F(100), 1), (F(100), F(100), 1), (F(10_001, 100), F(100), 2)],
)
def test_spools_are_whole(thread, spool, spools):
    assert whole_spools(thread, spool) == spools


@pytest.mark.parametrize(
    ("along", "across", "seams"), [(2, 2, 1), (1, 2, 1), (1, 1, 1), (2, 0, 2), (0, 2, 2), (1, 0, 1), (0, 0, 0)]
)
def test_a_row_goes_on_round_a_corner_and_stops_at_a_selvedge(along, across, seams):
    assert seams_of_a_row(along, across) == seams
