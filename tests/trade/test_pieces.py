"""Pieces from one cloth, against brute force."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.pieces import other_counts, pieces_from_cloth

CLOTH = st.fractions(min_value=20, max_value=4000, max_denominator=16)
PIECE = st.fractions(min_value=20, max_value=1500, max_denominator=16)


def fits(cloth, piece):
    """How many times a piece can be laid down one after another, by laying them down."""
    laid, place = 0, F(0)
    while place + piece <= cloth:
        place += piece
        laid += 1
    return laid


@given(CLOTH, CLOTH, PIECE, PIECE, st.booleans())
def test_as_many_as_can_be_laid_down(cloth_width, cloth_length, width, length, may_turn):
    grid = pieces_from_cloth(cloth_width, cloth_length, width, length, may_turn)
    upright = fits(cloth_width, width) * fits(cloth_length, length)
    turned = fits(cloth_width, length) * fits(cloth_length, width) if may_turn else 0
    assert grid.count == max(upright, turned)
    assert grid.turned == (turned > upright)


@given(CLOTH, CLOTH, PIECE, PIECE, st.booleans())
def test_marks_are_cumulative_and_end_within_the_cloth(cloth_width, cloth_length, width, length, may_turn):
    grid = pieces_from_cloth(cloth_width, cloth_length, width, length, may_turn)
    for marks, lie, cloth, left in (
        (grid.marks_across, grid.lie_width, cloth_width, grid.left_width),
        (grid.marks_along, grid.lie_length, cloth_length, grid.left_length),
    ):
        if not grid.count:
            assert marks == []
            continue
        assert [after - before for before, after in zip([0, *marks], marks)] == [lie] * len(marks)
        assert marks[-1] + left == cloth
        assert 0 <= left < lie
    if grid.count:
        assert len(grid.marks_across) * len(grid.marks_along) == grid.count


@given(CLOTH, CLOTH, PIECE, PIECE, st.booleans())
def test_other_counts_say_what_is_true(cloth_width, cloth_length, width, length, may_turn):
    grid = pieces_from_cloth(cloth_width, cloth_length, width, length, may_turn)
    for entry in other_counts(grid):
        across = entry.direction == "across"
        cloth, lie, now, beside = (
            (cloth_width, grid.lie_width, grid.across, grid.along)
            if across
            else (cloth_length, grid.lie_length, grid.along, grid.across)
        )
        n = entry.in_direction
        assert n > 0 and entry.count == n * beside
        assert fits(cloth, entry.size) == n
        assert fits(cloth, entry.size + F(1, 1000)) < n
        assert fits(cloth + entry.more_cloth, lie) >= n
        if n <= now:
            assert entry.more_cloth == 0 and entry.size >= lie
        else:
            assert fits(cloth + entry.more_cloth - F(1, 1000), lie) == n - 1 and entry.size < lie
    directions = [(entry.direction, entry.in_direction) for entry in other_counts(grid)]
    assert directions == sorted(set(directions))
    assert ("across", grid.across + 1) in directions and ("along", grid.along + 1) in directions


@pytest.mark.parametrize(("cloth_length", "along"), [(4 * 630, 7), (2500, 6)])
def test_a_cloth_of_110_cm_gives_three_of_36_across(cloth_length, along):
    """Arithmetic: 110 ÷ 36 → 3; 4 × 63 cm → 7 of 36 cm; 250 cm is 2 cm short of 7."""
    grid = pieces_from_cloth(F(1100), F(cloth_length), F(360), F(360), False)
    assert (grid.across, grid.along) == (3, along)


def test_at_250_cm_seven_fit_of_a_slightly_smaller_piece():
    """Arithmetic: 250 ÷ 7 = 35.714… cm."""
    grid = pieces_from_cloth(F(1100), F(2500), F(360), F(360), False)
    seven = next(entry for entry in other_counts(grid) if (entry.direction, entry.in_direction) == ("along", 7))
    assert (seven.size, seven.more_cloth, seven.count) == (F(2500, 7), 20, 21)


def test_pieces_turn_only_when_that_gives_more():
    assert not pieces_from_cloth(F(1000), F(1000), F(300), F(200), True).turned
    assert pieces_from_cloth(F(600), F(1000), F(500), F(300), True).turned
    assert not pieces_from_cloth(F(600), F(1000), F(500), F(300), False).turned


def test_a_piece_larger_than_the_cloth_gives_no_pieces_and_no_marks():
    grid = pieces_from_cloth(F(300), F(3000), F(400), F(400), True)
    assert (grid.count, grid.marks_across, grid.marks_along) == (0, [], [])
