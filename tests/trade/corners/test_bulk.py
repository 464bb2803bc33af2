"""Layers counted over every point, against a count by sampling, and side by side for every way."""

from random import Random

import pytest

from calculators.trade.corners.bulk import bulk
from calculators.trade.corners.comparison import VARIANTS, compared
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.corners.convex import area, holds

SQUARE = Measures(20.0, 20.0, 90.0, 10.0)


@pytest.mark.parametrize("way", CONSTRUCTIONS)
def test_patches_count_what_lies_there(way):
    """At random places the patch says as many layers as facets lie there; together they are all the cloth."""
    stack = CONSTRUCTIONS[way].steps(SQUARE)[-1].stack.in_floats()
    found = bulk(stack)
    random = Random(3)
    for _ in range(200):
        spot = (random.uniform(0, 60), random.uniform(0, 60))
        layers = sum(holds(facet.on_table, spot) for facet in stack.layers)
        assert [count for patch, count in found.patches if holds(patch, spot)] == ([layers] if layers else [])
    cloth = sum(area(facet.flat) for facet in stack.layers)
    assert sum(count * area(patch) for patch, count in found.patches) == pytest.approx(cloth)
    assert sum(count * area(ring) for count, rings in found.shapes.items() for ring in rings) == pytest.approx(
        cloth, rel=1e-4
    )


def test_thickness_is_layers_times_cloth():
    assert bulk(CONSTRUCTIONS["folded-corner"].steps(SQUARE)[-1].stack).thickness(0.4) == pytest.approx(3.6)


def test_every_way_beside_the_others():
    """Real counts: mitring halves the bulk of a folded corner only once it is trimmed."""
    layers = {way.name: way.bulk.thickest for way in compared(SQUARE)}
    assert set(layers) == set(VARIANTS)
    assert layers["folded-corner"] == layers["mitre-whole"] == 9
    assert layers["mitre-whole-side"] == 15
    assert layers["mitre-snipped"] == layers["mitre-trimmed"] == 5
    assert (layers["binding-same"], layers["binding"]) == (13, 9)


def test_ways_that_a_sharp_corner_does_not_allow():
    sharp = {way.name: way.bulk for way in compared(Measures(20.0, 20.0, 50.0, 5.0))}
    assert sharp["mitre-whole"] is None and sharp["binding"] is None and sharp["faced"] is None
    assert sharp["mitre-snipped"] is not None and sharp["folded-corner"] is not None
