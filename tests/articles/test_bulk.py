"""Layers of an article, held against the corner engine, which folds the cloth itself, and counted by hand."""

import pytest

from calculators.articles import articles
from calculators.asking.answering import Asking, answer
from calculators.catalogue import calculator_named


def layers(name, **typed):
    results = answer(calculator_named(name), Asking(typed)).results
    return results["layers"], results["layers_crossing"]


def in_a_corner(way):
    """What the corner engine counts in a corner made in a certain way."""
    made = answer(calculator_named("corner-bulk"), Asking({})).results["ways"]
    return next(each["layers"] for each in made if each["way"] == way)


def of_an_edge(name):
    """What the section engine counts in a finished edge."""
    return answer(calculator_named("edge-steps"), Asking({"edge": name})).results["layers"]


@pytest.mark.parametrize(
    ("article", "edge", "corner"),
    [
        ("napkin", "double", "Folded, no mitre"),
        ("cushion-zip", "faced", "Faced, point left whole"),
        ("bread-cloth", "bound", "Binding, mitres laid opposite ways"),
    ],
)
def test_edge_and_corner_are_as_thick_as_where_they_are_folded_one_by_one(article, edge, corner):
    assert layers(article) == (of_an_edge(edge), in_a_corner(corner))


@pytest.mark.parametrize(
    ("article", "typed", "along", "crossing"),
    [
        # a loop folded in four, both its ends under a double hem
        ("tea-towel", {}, 3 + 2 * 4, 3 + 2 * 4),
        # front and both backs with an allowance each; where the hem of one back runs into the seam, 2 + 3 × 2 + 2
        ("cushion-overlap", {}, 6, 10),
        # without a turn a hem is two layers
        ("napkin", {"turn": "0"}, 2, 4),
        # a French seam of five layers, across a hem folded twice
        ("curtain", {"seam": "french"}, 5, 15),
        # the same felled: three
        ("curtain", {"seam": "felled"}, 3, 9),
        # three layers bound together; at the corner with the loop 3 + 2 × 4 + 2 × 4
        ("pot-holder", {}, 3 + 4, 19),
        # a hem folded twice, one of its straps in four under it; at a point two such hems cross
        ("apron", {}, 3 + 4, 3 * 3 + 4),
        ("runner-pointed", {}, 3, 3 * 3),
        # round, nothing crosses
        ("tablecloth-round", {}, 3, 3),
        ("tablecloth-round", {"turn": "0"}, 2, 2),
        # round its edge mat and border, each with its allowance; at its corner the mat's two allowances over each other
        # are four, and beside the mitre, pressed open, a border and its allowance folded in once more are four
        ("mat-bordered", {}, 2 + 2, 4 + 4),
        # an allowance pressed back; where that at the zip runs into the seam of an end, both
        ("bolster", {}, 2, 2 * 2),
    ],
)
def test_counted_by_hand(article, typed, along, crossing):
    assert layers(article, **typed) == (along, crossing)


def test_every_article_has_a_count():
    assert [name for name in articles() if None in layers(name)] == []
