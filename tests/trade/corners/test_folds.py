"""What folding may not change: the cloth's area, and the cloth itself once it is opened again."""

import pytest
from hypothesis import given, reject, settings
from shapely import unary_union
from shapely.affinity import affine_transform
from shapely.geometry import Polygon as Shape
from shapely.geometry import box

from calculators.trade.corners.layers import cells, outline, seen_from_above
from calculators.trade.corners.plane import Isometry, Line
from calculators.trade.corners.stack import NothingThere, Stack
from tests.trade.corners.checks import passings, tears
from tests.trade.corners.cloths import (
    CLOTH,
    SIDE,
    WHOLE,
    as_shapely,
    cloth_area,
    folded,
    lines,
    places,
    shape,
    spots,
    under,
)

FEW = settings(max_examples=30)  # each example folds, cuts up and compares a whole cloth
MIDDLE = Line((SIDE // 2, 0), (0, 1))


@FEW
@given(folded())
def test_folding_keeps_the_area(stack):
    """The parts of the cloth always add up to the whole, exactly."""
    assert cloth_area(stack) == WHOLE


@FEW
@given(folded())
def test_layers_times_area_is_the_cloth(stack):
    """Every place counted as often as cloth lies there gives the cloth's area, exactly."""
    assert sum(cell.count * cell.area for cell in cells(stack)) == WHOLE


@FEW
@given(folded(), lines())
def test_unfolding_undoes_a_fold(stack, line):
    """Fold and open: every layer lies where it lay, on the same side, in the same order."""
    try:
        opened = stack.fold(line).unfold()
    except NothingThere:
        reject()
    assert [under(opened, spot) for spot in spots()] == [under(stack, spot) for spot in spots()]
    assert opened.before == stack.before


@FEW
@given(folded())
def test_opening_all_folds_gives_the_flat_cloth(stack):
    while stack.before:
        stack = stack.unfold()
    assert all(facet.lay.same_as(Isometry()) for facet in stack.layers)


@FEW
@given(folded(), lines())
def test_the_outline_is_reflection_and_union(stack, line):
    """The folded shape against shapely: what lies right of the line, reflected over it, joined to the rest."""
    before = shape(stack)
    (x, y), (dx, dy) = ((float(a), float(b)) for a, b in (line.point, line.direction))
    length = (dx * dx + dy * dy) ** 0.5
    ux, uy = dx / length, dy / length
    far = 10 * SIDE
    base = (x - far * ux, y - far * uy), (x + far * ux, y + far * uy)
    left_half = Shape(
        [
            base[0],
            base[1],
            (base[1][0] - far * uy, base[1][1] + far * ux),
            (base[0][0] - far * uy, base[0][1] + far * ux),
        ]
    )
    c, s = ux * ux - uy * uy, 2 * ux * uy
    right = affine_transform(before.difference(left_half), [c, s, s, -c, x - c * x - s * y, y - s * x + c * y])
    expected = unary_union([before.intersection(left_half), right])
    try:
        stack = stack.fold(line)
    except NothingThere:
        expected = before
    assert shape(stack).symmetric_difference(expected).area == pytest.approx(0, abs=1e-5)


@FEW
@given(folded())
def test_the_drawn_outline_is_the_union(stack):
    """The joined borders against shapely's union of the layers; holes run the other way and count against."""
    rings = [as_shapely(ring) for ring in outline(stack.in_floats())]
    signed = sum(ring.area if ring.exterior.is_ccw else -ring.area for ring in rings)
    assert signed == pytest.approx(shape(stack).area, abs=1e-5)


@FEW
@given(folded())
def test_what_is_seen_covers_the_outline_once(stack):
    seen = [as_shapely(part) for each in seen_from_above(stack.in_floats()) for part in each.parts]
    assert sum(part.area for part in seen) == pytest.approx(shape(stack).area, abs=1e-5)
    assert unary_union(seen).symmetric_difference(shape(stack)).area == pytest.approx(0, abs=1e-4)


@FEW
@given(folded())
def test_seen_is_the_top_layer(stack):
    for each in seen_from_above(stack.in_floats()):
        for part in each.parts:
            centre = as_shapely(part).representative_point()
            assert under(stack, (centre.x, centre.y))[-1][2] == each.facet.right_side_up


@FEW
@given(folded())
def test_folding_all_layers_never_tears_or_passes_through(stack):
    assert tears(stack) == []
    assert passings(stack.in_floats()) == []


@FEW
@given(folded(), places(-2 * SIDE, 3 * SIDE))
def test_turning_the_work_over_twice_changes_nothing(stack, spot):
    twice = stack.turned_over().turned_over()
    assert under(twice, spot) == under(stack, spot)
    assert len(under(stack.turned_over(), (-spot[0], spot[1]))) == len(under(stack, spot))


def test_one_fold_shows_the_other_side():
    stack = Stack.flat(CLOTH).fold(MIDDLE)
    assert [facet.right_side_up for facet in stack.layers] == [False, True]
    assert [facet.right_side_up for facet in Stack.flat(CLOTH).fold(MIDDLE, over=False).layers] == [True, False]


def test_only_the_flap_held_is_folded():
    """Fold in half, then open only the upper layer over a second line."""
    half = Stack.flat(CLOTH).fold(MIDDLE)
    line = Line((30, 0), (0, -1))
    opened = half.fold(line, take=("napkin", (115, 5)))
    assert shape(half).bounds == (0, 0, 60, 120)
    assert max(cell.count for cell in cells(opened)) == 3
    assert opened.places("napkin", (5, 5)) == [(5, 5)]
    assert tears(opened) == []


def test_nothing_beyond_the_line():
    with pytest.raises(NothingThere):
        Stack.flat(CLOTH).fold(Line((0, -1), (1, 0)))
    with pytest.raises(NothingThere):
        Stack.flat(CLOTH).trim(Line((0, -1), (1, 0)))
    with pytest.raises(NothingThere):
        Stack.flat(CLOTH).stitch((-5, -5), (-5, 200))
    with pytest.raises(NothingThere):
        Stack.flat(CLOTH).unfold()


def test_a_cut_takes_the_cloth_away():
    trimmed = Stack.flat(CLOTH).fold(MIDDLE).trim(Line((0, 20), (1, 0))).unfold()
    assert cloth_area(trimmed) == SIDE * 100
    assert shape(trimmed).equals(box(0, 20, SIDE, SIDE))
    assert trimmed.places("napkin", (5, 5)) == []
