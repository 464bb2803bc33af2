"""Bundles and the boxes ticked for them."""

from hypothesis import given
from hypothesis import strategies as st

from calculators.trade.bundles import Bundles, TickBox


@given(pieces=st.integers(1, 3000), size=st.integers(1, 60), most=st.integers(1, 30))
def test_the_boxes_hold_every_piece_once_and_are_never_too_many(pieces, size, most):
    boxes = Bundles(pieces, size).boxes(most)
    assert [piece for box in boxes for piece in range(box.first, box.last + 1)] == list(range(1, pieces + 1))
    assert len(boxes) <= most
    assert all((box.last - box.first + 1) % size == 0 for box in boxes[:-1])


def test_five_hundred_pieces_have_few_boxes():
    """500 ÷ 10 = 50 bundles; with at most 20 boxes each stands for 3 bundles, which makes 17 boxes."""
    boxes = Bundles(500, 10).boxes(20)
    assert (len(boxes), boxes[0], boxes[-1]) == (17, TickBox(1, 30), TickBox(481, 500))


@given(pieces=st.integers(1, 500), size=st.integers(1, 60))
def test_one_more_as_often_as_there_are_bundles_does_them_all_and_back(pieces, size):
    bundles, done = Bundles(pieces, size), 0
    for count in range(1, bundles.count + 1):
        done = bundles.after_one_more(done)
        assert bundles.done(done) == count
    assert done == pieces == bundles.after_one_more(done)
    for count in reversed(range(bundles.count)):
        done = bundles.after_one_less(done)
        assert bundles.done(done) == count
    assert done == 0 == bundles.after_one_less(done)


def test_pieces_done_keep_their_meaning_in_bundles_of_another_size():
    assert Bundles(18, 10).done(12) == 1
    assert Bundles(18, 10).after_one_less(12) == 10
    assert Bundles(18, 5).done(12) == 2
    assert Bundles(18, 10).done(40) == 2
