"""The gauge finder's distances against a ruler moved about by brute force."""

from fractions import Fraction as F
from math import cos, hypot, isclose, radians, sin

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calculators.asking.answering import Asking
from calculators.catalogue import calculator_named
from calculators.faces.page.plain import plain_answer
from calculators.trade.corners.mitre_lines import CreasesMiss
from calculators.trade.corners.mitre_marks import mitre_marks
from calculators.trade.corners.ruler_gauge import layings, mark_found, nearest, off, ways
from calculators.values.measure import CENTIMETRES, SIXTEENTHS

HEMS = st.fractions(min_value=5, max_value=80, max_denominator=32)
ANGLES = st.just(F(90)) | st.fractions(min_value=40, max_value=140, max_denominator=8)
OFF = st.floats(-0.9, 0.9)


def made(hem_1, hem_2, angle):
    try:
        return mitre_marks(hem_1, hem_2, angle, F(0), F(0))
    except CreasesMiss:
        assume(False)


def corner_seen_from(marks, edge):
    """The mark's own edge laid along the x axis: where the crossing is, and how far along the mark should be."""
    foot, hem, mark = (
        (marks.foot_1, marks.hem_1, marks.mark_1) if edge == 1 else (marks.foot_2, marks.hem_2, marks.mark_2)
    )
    return (float(foot), float(hem)), float(mark)


def nearest_place(distance_from, wanted, start, way):
    """The place along the edge, nearest to start, from which a measured distance is as wanted: tried step by step, then
    halved."""
    step, tried = 0.02, start
    while (distance_from(tried) - wanted) * (distance_from(tried + way * step) - wanted) > 0:
        tried += way * step
        if abs(tried - start) > 6:
            return None
    low, high = tried, tried + way * step
    for _ in range(60):
        mid = (low + high) / 2
        low, high = (mid, high) if (distance_from(low) - wanted) * (distance_from(mid) - wanted) > 0 else (low, mid)
    return (low + high) / 2


def brute(distance_from, wanted, mark):
    found = [place for way in (1, -1) if (place := nearest_place(distance_from, wanted, mark, way)) is not None]
    return min(found, key=lambda place: abs(place - mark), default=None)


@given(HEMS, HEMS, ANGLES, st.sampled_from([1, 2]), OFF)
def test_a_ruler_held_on_the_crossing(hem_1, hem_2, angle, edge, error):
    marks = made(hem_1, hem_2, angle)
    (x, y), mark = corner_seen_from(marks, edge)
    read = float(marks.half_line) + error
    tried = brute(lambda place: hypot(place - x, y), read, mark)
    assume(tried is not None)
    assert mark_found(marks, "crossing", edge, read) == pytest.approx(tried, abs=1e-6)


@given(HEMS, HEMS, ANGLES, st.sampled_from([1, 2]), OFF)
def test_a_ruler_held_on_the_crossing_and_level_with_the_corner(hem_1, hem_2, angle, edge, error):
    """The line through the crossing and a place on the edge lies `read` from the corner, measured square to it."""
    marks = made(hem_1, hem_2, angle)
    (x, y), mark = corner_seen_from(marks, edge)
    assume(not isclose(x, y, rel_tol=0.1))  # there the line only touches, see below
    read = float(marks.to_line_1 if edge == 1 else marks.to_line_2) + error
    tried = brute(lambda place: place * y / hypot(place - x, y), read, mark)
    assume(tried is not None)
    assert mark_found(marks, "line", edge, read) == pytest.approx(tried, abs=1e-5)


@given(HEMS, OFF)
def test_a_line_laid_across_a_square_corner_with_equal_hems(hem, error):
    """Both edges read alike, so the line cuts off a triangle with two equal sides; its height is read."""
    marks = made(hem, hem, F(90))
    read = float(marks.to_line_1) + error
    tried = brute(lambda place: place * cos(radians(45)), read, float(marks.mark_1))
    assert mark_found(marks, "line", 1, read) == mark_found(marks, "line", 2, read) == pytest.approx(tried, abs=1e-6)


@given(HEMS, HEMS, ANGLES)
def test_every_distance_read_exactly_finds_its_mark(hem_1, hem_2, angle):
    marks = made(hem_1, hem_2, angle)
    for way in ways(marks):
        error = off(marks, way, way.distance)
        if way.name == "line" and error is None:
            continue  # a hair beyond what the line can touch
        tolerance = 1e-3 if way.name == "line" else 1e-6
        assert error == pytest.approx(0, abs=tolerance), way


@given(HEMS, HEMS, ANGLES, st.sampled_from([CENTIMETRES, SIXTEENTHS]))
def test_a_division_read_is_the_nearest_one(hem_1, hem_2, angle, ruler):
    marks = made(hem_1, hem_2, angle)
    for way in ways(marks):
        read, _ = nearest(marks, way, ruler)
        assert abs(float(read) - float(way.distance)) <= float(ruler.step_mm) / 2 + 1e-9
        assert (read / ruler.step_mm).denominator == 1


@given(HEMS, HEMS, ANGLES)
def test_the_crossing_lies_as_far_from_both_marks(hem_1, hem_2, angle):
    """By coordinates: mark 2 laid out along edge 2, its distance from the crossing measured."""
    marks = made(hem_1, hem_2, angle)
    theta = radians(float(angle))
    mark_2 = float(marks.mark_2) * cos(theta), float(marks.mark_2) * sin(theta)
    crossing = float(marks.foot_1), float(marks.hem_1)
    (found,) = (way for way in ways(marks) if way.name == "crossing")
    assert found.edges == (1, 2)
    assert float(found.distance) == pytest.approx(hypot(mark_2[0] - crossing[0], mark_2[1] - crossing[1]))


def test_a_ruler_too_short_to_reach_finds_no_mark():
    marks = mitre_marks(F(20), F(20), F(90), F(0), F(0))
    assert mark_found(marks, "crossing", 1, 19) is None
    unequal = mitre_marks(F(30), F(20), F(90), F(0), F(0))
    assert mark_found(unequal, "line", 1, float(unequal.half_line) + 1) is None


def test_one_laying_a_corner_where_the_line_is_straight():
    square, open_corner = (mitre_marks(F(20), F(20), F(angle), F(0), F(0)) for angle in (90, 120))
    assert [layings(square, name) for name in ("edge", "crossing", "line")] == [3, 1, 1]
    assert [layings(open_corner, name) for name in ("edge", "crossing")] == [4, 2]


def test_the_trade_s_own_gauge():
    """Common practice, no source: a 2.5 cm hem has its marks about 3.5 cm from the crossing; on a ruler in mm they are
    then 0.5 mm short."""
    answer = plain_answer(calculator_named("gauge-finder"), Asking({"hem_1": "2.5 cm", "hem_2": "2.5 cm"}))
    row = next(row for row in answer["results"]["ways"] if row["way"].startswith("Crossing"))
    assert row["on_cm"] == 35
    assert row["off_cm"] == pytest.approx(25 - (35**2 - 25**2) ** 0.5)
    assert row["on_in"] == pytest.approx(1.375 * 25.4)
