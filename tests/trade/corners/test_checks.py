"""The checks that judge a construction can fail: cloth torn, layers passed through, seams pulled open."""

from dataclasses import replace

import pytest

from calculators.trade.corners.fan import DoesNotLieFlat, fan
from calculators.trade.corners.plane import Isometry, Line
from calculators.trade.corners.stack import Stack
from tests.trade.corners.checks import passings, tears, widest_gap
from tests.trade.corners.cloths import CLOTH, SIDE

HALF, QUARTER = Line((60, 0), (0, 1)), Line((30, 0), (0, 1))


def test_a_part_pulled_away_is_a_tear():
    stack = Stack.flat(CLOTH).fold(HALF).unfold()
    pulled = replace(stack.layers[0], lay=Isometry(e=3))
    assert tears(replace(stack, layers=(pulled, *stack.layers[1:])))


def test_a_layer_through_a_fold_is_found():
    """Four layers, two folds on one line, put in an order that no hands could make."""
    stack = Stack.flat(CLOTH).fold(HALF).fold(QUARTER)
    assert passings(stack) == []
    a, b, c, d = stack.layers
    assert passings(replace(stack, layers=(b, a, c, d)))


def test_a_layer_that_sticks_out_of_a_fold_is_found():
    folded = Stack.flat(CLOTH).fold(HALF)
    other = Stack.flat(replace(CLOTH, name="other")).layers[0]
    assert passings(replace(folded, layers=(folded.layers[0], other, folded.layers[1])))
    assert passings(replace(folded, layers=(other, *folded.layers))) == []


def test_a_seam_opens_when_its_layers_part():
    stitched = Stack.flat(CLOTH).fold(HALF).stitch((50, 10), (50, 110))
    assert widest_gap(stitched, stitched.seams[0]) == 0
    assert widest_gap(stitched.unfold(), stitched.seams[0]) == 20


def test_a_seam_beside_a_cut_stays():
    stitched = Stack.flat(CLOTH).fold(HALF).stitch((50, 10), (50, 110)).trim(Line((0, 40), (1, 0)))
    assert widest_gap(stitched, stitched.seams[0]) == 0


def test_folds_that_do_not_close():
    """Three folds in one point cannot lie flat; four at right angles can (Kawasaki's theorem)."""
    centre = (SIDE // 2, SIDE // 2)
    with pytest.raises(DoesNotLieFlat):
        fan(centre, [(1, 0), (0, 1), (-1, -1)], [0, 1, 2])
    with pytest.raises(DoesNotLieFlat):
        fan(centre, [(1, 0), (0, 1), (-1, 0), (1, -1)], [0, 1, 2, 3])
    stack = Stack.flat(CLOTH).fold_in_one(fan(centre, [(1, 0), (0, 1), (-1, 0), (0, -1)], [0, 3, 2, 1]))
    assert tears(stack) == []
    assert passings(stack) == []
    assert {facet.lay.place((0, 0)) for facet in stack.layers if (0, 0) in facet.flat} == {(SIDE, SIDE)}
