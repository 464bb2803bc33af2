"""Things along an edge come out even: laid down one after another with a tape, and counted by trying every number."""

from fractions import Fraction as F

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.trade.spacing import Spacing, divided

MM = st.integers(1, 400).map(lambda halves: F(halves, 2))
EDGE = st.integers(200, 3000).map(F)
AN_EDGE = st.builds(Spacing, EDGE, st.just(F(0)) | MM, st.none() | MM)


@given(AN_EDGE, st.integers(1, 60))
def test_laid_one_after_another_they_end_where_the_edge_does(edge, count):
    assume(edge.fits(count))
    places, space = edge.begins(count), edge.space(count)
    assert len(places) == count
    assert places[0] == edge.edge - (places[-1] + edge.width)
    if edge.from_end is not None and count > 1:
        assert places[0] == edge.from_end
    if edge.from_end is None:
        assert 2 * places[0] == space
    assert all(after - (before + edge.width) == space for before, after in zip(places, places[1:]))


@settings(max_examples=30)
@given(AN_EDGE, MM, st.sampled_from([(0, 1), (0,), (1,)]))
def test_no_other_number_comes_nearer_to_the_space_that_is_wanted(edge, wanted, allowed):
    found = edge.nearest(wanted, allowed)
    off = {
        count: abs(edge.space(count) - wanted)
        for count in range(1, 6100)
        if count % 2 in allowed and edge.space(count) is not None and edge.space(count) >= 0 and edge.fits(count)
    }
    assert (found in off and off[found] == min(off.values())) if off else found in {None, 1}


def test_what_has_no_room_does_not_fit():
    assert Spacing(F(100), F(10), F(0)).fits(10)
    assert not Spacing(F(100), F(10), F(0)).fits(11)
    assert not Spacing(F(100), F(0), F(50)).fits(2)


@given(EDGE, EDGE, st.integers(2, 60))
def test_two_edges_are_divided_alike(one, other, parts):
    assert [mark / one for mark in divided(one, parts)] == [mark / other for mark in divided(other, parts)]
    assert len(divided(one, parts)) == parts - 1


@pytest.mark.parametrize("count, middle", [(3, True), (4, False)])
def test_an_odd_number_has_one_in_the_middle(count, middle):
    assert (F(500) in Spacing(F(1000), F(0), F(30)).begins(count)) is middle
