"""The hems and seams of an article, cut through: all of them, each once, told apart."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.articles import articles
from calculators.asking.answering import Asking, answer
from calculators.catalogue import calculator_named
from calculators.drawing.article_edges import edges_cut_through
from tests.articles.test_articles import lopsided


def captions(name, **typed):
    drawn = answer(calculator_named(name), Asking(typed))
    return [each.caption for each in calculator_named(name).edges(drawn.drawn_from, Asking({}).ruler)]


@pytest.mark.parametrize("name", articles())
@settings(max_examples=10)
@given(data=st.data())
def test_each_kind_is_drawn_once_whatever_the_measures(name, data):
    work = data.draw(lopsided(name)).work
    drawn = edges_cut_through(work, Asking({}).ruler)
    assert {each.section for each in work.operations if each.section} <= {""} or drawn
    assert len({each.caption for each in drawn}) == len(drawn)


def test_two_of_a_kind_are_told_apart_by_their_sides_and_their_cloth():
    assert captions("cushion-overlap") == ["Double hem", "Plain seam, pressed open"]
    assert captions("pillowcase") == ["Double hem: top", "Double hem: bottom", "French seam"]
    assert captions("curtain-lined")[1:3] == ["Double hem: bottom", "Double hem: bottom of the lining"]
    assert captions("bread-cloth") == ["Bound edge"]
