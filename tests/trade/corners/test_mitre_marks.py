"""A mitre's measures against closed formulas, and against reflections done independently, with shapely, on polygons
really folded."""

from fractions import Fraction as F
from math import cos, hypot, isclose, radians, sin, sqrt, tan

import pytest
from hypothesis import assume, given, reject
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon
from shapely.affinity import affine_transform
from shapely.ops import nearest_points

from calculators.trade.corners.mitre_lines import CreasesMiss
from calculators.trade.corners.mitre_marks import mitre_marks
from tests.trade.corners.closed_formulas import closed_marks

INCH = F(254, 10)
FAR = 4000.0
HEMS = st.fractions(min_value=5, max_value=80, max_denominator=32)
ANGLES = st.fractions(min_value=30, max_value=150, max_denominator=8)


def reflected(shape, a, b):
    """The mirror image of a shape in the line through two points."""
    (ax, ay), (bx, by) = a, b
    dx, dy = bx - ax, by - ay
    n = dx * dx + dy * dy
    c, s = (dx * dx - dy * dy) / n, 2 * dx * dy / n
    return affine_transform(shape, [c, s, s, -c, ax - c * ax - s * ay, ay - s * ax + c * ay])


class Corner:
    """The corner as drawn lines: edges from O, creases parallel to them, found by shapely alone."""

    def __init__(self, hem_1, hem_2, angle):
        theta = radians(float(angle))
        self.direction = cos(theta), sin(theta)
        self.edge_1 = LineString([(0, 0), (FAR, 0)])
        self.edge_2 = LineString([(0, 0), (FAR * self.direction[0], FAR * self.direction[1])])
        self.crease_1 = LineString([(-FAR, 0), (FAR, 0)]).offset_curve(float(hem_1))
        through_2 = LineString(
            [(-FAR * self.direction[0], -FAR * self.direction[1]), (FAR * self.direction[0], FAR * self.direction[1])]
        )
        self.crease_2 = through_2.offset_curve(-float(hem_2))
        self.crossing = self.crease_1.intersection(self.crease_2)
        self.inner = Point(2 * self.crossing.x, 2 * self.crossing.y)

    def on_edge_2(self, distance):
        return Point(self.direction[0] * float(distance), self.direction[1] * float(distance))


def made(hem_1, hem_2, angle, turn=F(0), allowance=F(0)):
    try:
        return mitre_marks(hem_1, hem_2, angle, turn, allowance)
    except CreasesMiss:
        assume(False)


NAMES = (
    "foot_1",
    "foot_2",
    "mark_1",
    "mark_2",
    "half_line",
    "to_line_1",
    "to_line_2",
    "raw_mark_1",
    "raw_mark_2",
    "trim_1",
    "trim_2",
)


@given(
    HEMS,
    HEMS,
    st.just(F(90)) | ANGLES,
    st.fractions(min_value=0, max_value=15, max_denominator=8),
    st.fractions(min_value=0, max_value=10, max_denominator=8),
    st.none() | st.fractions(min_value=0, max_value=15, max_denominator=8),
)
def test_every_measure_agrees_with_its_closed_formula(hem_1, hem_2, angle, turn, allowance, turn_2):
    closed = closed_marks(hem_1, hem_2, angle, turn, allowance, turn if turn_2 is None else turn_2)
    if min(closed.foot_1, closed.foot_2) <= 0:
        with pytest.raises(CreasesMiss):
            mitre_marks(hem_1, hem_2, angle, turn, allowance, turn_2)
        reject()  # and is no case of a mitre that is measured: some must be left that are
    assume(min(closed.foot_1, closed.foot_2) > 1e-6)
    measured = mitre_marks(hem_1, hem_2, angle, turn, allowance, turn_2)
    for name in NAMES:
        assert float(getattr(measured, name)) == pytest.approx(getattr(closed, name), rel=1e-9, abs=1e-9), name


def test_closed_formulas_that_are_wrong_are_noticed():
    """The comparison can fail: marks swapped between the edges, as a reader might, do not agree."""
    closed, measured = closed_marks(20, 30, 90, 10, 6, 10), mitre_marks(F(20), F(30), F(90), F(10), F(6))
    assert (measured.mark_1, measured.mark_2) == (closed.mark_1, closed.mark_2) == (60, 40)
    assert measured.mark_1 != closed.mark_2


@given(HEMS, HEMS, ANGLES)
def test_the_marks_are_where_the_inner_end_of_the_mitre_falls_when_each_flap_is_folded_back(hem_1, hem_2, angle):
    marks, corner = made(hem_1, hem_2, angle), Corner(hem_1, hem_2, angle)
    on_1 = reflected(corner.inner, *corner.crease_1.coords)
    on_2 = reflected(corner.inner, *corner.crease_2.coords)
    assert (on_1.x, on_1.y) == pytest.approx((float(marks.mark_1), 0), abs=1e-6)
    assert on_2.distance(corner.on_edge_2(marks.mark_2)) < 1e-6


@given(HEMS, HEMS, ANGLES)
def test_both_halves_of_the_line_are_equal_and_become_one_seam_when_folded(hem_1, hem_2, angle):
    marks, corner = made(hem_1, hem_2, angle), Corner(hem_1, hem_2, angle)
    half_1 = LineString([(float(marks.mark_1), 0), corner.crossing])
    half_2 = LineString([corner.on_edge_2(marks.mark_2), corner.crossing])
    assert half_1.length == pytest.approx(float(marks.half_line), rel=1e-9)
    assert half_2.length == pytest.approx(float(marks.half_line), rel=1e-9)
    folded_1, folded_2 = reflected(half_1, *corner.crease_1.coords), reflected(half_2, *corner.crease_2.coords)
    assert folded_1.hausdorff_distance(folded_2) < 1e-6


@given(HEMS, HEMS, ANGLES)
def test_the_folded_hems_meet_along_the_mitre_and_nowhere_overlap(hem_1, hem_2, angle):
    """Cut along the stitched line, fold each flap back along its crease: the two flaps touch along C–D only, and cover
    the hem."""
    marks, corner = made(hem_1, hem_2, angle), Corner(hem_1, hem_2, angle)
    crossing, mark_1, mark_2 = corner.crossing, Point(float(marks.mark_1), 0), corner.on_edge_2(marks.mark_2)
    long = 40 * max(float(hem_1), float(hem_2)) + float(marks.mark_1) + float(marks.mark_2)
    flap_1 = Polygon([mark_1, crossing, (crossing.x + long, crossing.y), (mark_1.x + long, 0)])
    away = (corner.direction[0] * long, corner.direction[1] * long)
    flap_2 = Polygon(
        [mark_2, crossing, (crossing.x + away[0], crossing.y + away[1]), (mark_2.x + away[0], mark_2.y + away[1])]
    )
    folded_1, folded_2 = reflected(flap_1, *corner.crease_1.coords), reflected(flap_2, *corner.crease_2.coords)
    assert folded_1.intersection(folded_2).area < 1e-6 * (flap_1.area + flap_2.area)
    meeting = folded_1.boundary.buffer(1e-4).intersection(folded_2.boundary.buffer(1e-4))
    assert meeting.buffer(1e-3).contains(LineString([crossing, corner.inner]))


@given(HEMS, HEMS, ANGLES)
def test_from_the_corner_straight_to_the_line(hem_1, hem_2, angle):
    marks, corner = made(hem_1, hem_2, angle), Corner(hem_1, hem_2, angle)
    for mark, shown in (
        (Point(float(marks.mark_1), 0), marks.to_line_1),
        (corner.on_edge_2(marks.mark_2), marks.to_line_2),
    ):
        ahead = (corner.crossing.x - mark.x, corner.crossing.y - mark.y)
        line = LineString(
            [(mark.x - 50 * ahead[0], mark.y - 50 * ahead[1]), (mark.x + 50 * ahead[0], mark.y + 50 * ahead[1])]
        )
        assert line.distance(Point(0, 0)) == pytest.approx(shown, rel=1e-6)


@given(HEMS, HEMS, ANGLES, st.fractions(min_value=1, max_value=10, max_denominator=8))
def test_the_trim_runs_parallel_to_the_line_at_the_allowance(hem_1, hem_2, angle, allowance):
    marks, corner = made(hem_1, hem_2, angle, allowance=allowance), Corner(hem_1, hem_2, angle)
    assume(allowance < min(marks.to_line_1, marks.to_line_2))
    for mark, trim, edge in (
        (Point(float(marks.mark_1), 0), marks.trim_1, corner.edge_1),
        (corner.on_edge_2(marks.mark_2), marks.trim_2, corner.edge_2),
    ):
        ahead = (corner.crossing.x - mark.x, corner.crossing.y - mark.y)
        length = hypot(*ahead)
        line = LineString(
            [(mark.x - 60 * ahead[0], mark.y - 60 * ahead[1]), (mark.x + 60 * ahead[0], mark.y + 60 * ahead[1])]
        )
        sides = (line.offset_curve(float(allowance)), line.offset_curve(-float(allowance)))
        outside = min(sides, key=lambda each: each.distance(Point(0, 0)))
        meeting = outside.intersection(edge)
        assert meeting.distance(Point(0, 0)) == pytest.approx(trim, rel=1e-6, abs=1e-6 * length)
        assert 0 < trim < mark.distance(Point(0, 0))


@given(HEMS, HEMS, ANGLES, st.fractions(min_value=0, max_value=15, max_denominator=8))
def test_raw_marks_are_where_the_line_meets_the_raw_edge_once_the_turn_is_opened(hem_1, hem_2, angle, turn):
    marks, corner = made(hem_1, hem_2, angle, turn=turn), Corner(hem_1, hem_2, angle)
    raw_1 = LineString([(-FAR, -float(turn)), (FAR, -float(turn))])
    through_2 = LineString(
        [
            (-FAR * corner.direction[0], -FAR * corner.direction[1]),
            (FAR * corner.direction[0], FAR * corner.direction[1]),
        ]
    )
    raw_2 = through_2.offset_curve(float(turn)) if turn else through_2
    raw_corner = raw_1.intersection(raw_2)
    for mark, raw, shown in (
        (Point(float(marks.mark_1), 0), raw_1, marks.raw_mark_1),
        (corner.on_edge_2(marks.mark_2), raw_2, marks.raw_mark_2),
    ):
        back = (mark.x - corner.crossing.x, mark.y - corner.crossing.y)
        line = LineString([corner.crossing, (corner.crossing.x + 60 * back[0], corner.crossing.y + 60 * back[1])])
        meeting = nearest_points(line, raw)[0]
        assert line.distance(raw) < 1e-6
        assert meeting.distance(raw_corner) == pytest.approx(float(shown), rel=1e-6, abs=1e-6)


@given(HEMS, HEMS)
def test_at_a_square_corner_marks_are_exact_and_the_halves_make_one_line(hem_1, hem_2):
    marks = mitre_marks(hem_1, hem_2, F(90), F(10), F(0))
    assert (marks.mark_1, marks.mark_2) == (2 * hem_2, 2 * hem_1)
    assert (
        marks.raw_mark_1 == 2 * hem_2 + hem_2 * 10 / hem_1 + 10
        and marks.raw_mark_2 == 2 * hem_1 + hem_1 * 10 / hem_2 + 10
    )
    assert all(
        isinstance(getattr(marks, name), F)
        for name in ("foot_1", "foot_2", "mark_1", "mark_2", "raw_mark_1", "raw_mark_2")
    )
    assert 2 * marks.half_line == pytest.approx(hypot(marks.mark_1, marks.mark_2))
    assert marks.mark_1 * marks.mark_2 / 2 == 2 * hem_1 * hem_2  # the corner that is cut off, folded


@given(HEMS, ANGLES)
def test_equal_hems_mark_twice_the_hem_over_the_tangent_of_half_the_angle(hem, angle):
    marks = mitre_marks(hem, hem, angle, F(0), F(0))
    assert float(marks.mark_1) == pytest.approx(2 * float(hem) / tan(radians(float(angle)) / 2))
    assert isclose(marks.mark_1, marks.mark_2)


@given(HEMS, HEMS, ANGLES, st.integers(2, 5))
def test_a_corner_twice_as_large_has_marks_twice_as_far(hem_1, hem_2, angle, times):
    small, large = (
        made(hem_1, hem_2, angle, F(5), F(2)),
        made(times * hem_1, times * hem_2, angle, F(5 * times), F(2 * times)),
    )
    for name in (
        "mark_1",
        "mark_2",
        "half_line",
        "raw_mark_1",
        "raw_mark_2",
        "trim_1",
        "trim_2",
        "to_line_1",
        "to_line_2",
    ):
        assert float(getattr(large, name)) == pytest.approx(times * float(getattr(small, name)))


@given(HEMS, HEMS, ANGLES)
def test_naming_the_edges_the_other_way_round_changes_only_the_names(hem_1, hem_2, angle):
    one, other = made(hem_1, hem_2, angle, F(5), F(2)), made(hem_2, hem_1, angle, F(5), F(2))
    for name in ("mark", "raw_mark", "trim", "to_line"):
        assert float(getattr(one, f"{name}_1")) == pytest.approx(float(getattr(other, f"{name}_2")))


def test_common_values_of_the_trade():
    """Common practice, no source: 2.5 cm → 5 cm marks and about 3.5 cm from the crossing to each edge; 1 in → 2 in."""
    marks = mitre_marks(F(25), F(25), F(90), F(10), F(0))
    assert (marks.mark_1, marks.mark_2) == (50, 50)
    assert marks.half_line == pytest.approx(25 * sqrt(2)) == pytest.approx(35, abs=0.5)
    assert mitre_marks(INCH, INCH, F(90), F(0), F(0)).mark_1 == 2 * INCH


@pytest.mark.parametrize(("allowance", "inches"), [(F(1, 4), 2.146), (F(1, 8), 2.323)])
def test_where_the_cut_meets_the_raw_edge(allowance, inches):
    """Sources: Home and School Sewing, ch. XV (turn 1/4 in, crease 1 in further, cut 1/4 in outside); School Sewing, §
    146
    (1/8 in). Derived there from: 2·1 1/4 in − allowance·√2 along the raw edge."""
    marks = mitre_marks(INCH, INCH, F(90), INCH / 4, allowance * INCH)
    met = float(marks.raw_mark_1) - (float(marks.mark_1) - marks.trim_1)
    assert met / 25.4 == pytest.approx(inches, abs=0.0005)


def test_marks_on_the_raw_edge_with_equal_hems():
    """Derived: 2·(hem + turn), trimmed at that less allowance·√2: hems 20, turn 10, allowance 6 → 60 and 51.51 mm."""
    equal = mitre_marks(F(20), F(20), F(90), F(10), F(6))
    assert equal.raw_mark_1 == equal.raw_mark_2 == 60
    assert float(equal.raw_mark_1) - (float(equal.mark_1) - equal.trim_1) == pytest.approx(51.51, abs=0.005)


def test_marks_on_the_raw_edge_with_unequal_hems():
    """Derived by reflection: hems 20 and 10, turns 10 → 70 and 35 mm, not 60 and 40."""
    unequal = mitre_marks(F(20), F(10), F(90), F(10), F(0))
    assert {unequal.raw_mark_1, unequal.raw_mark_2} == {F(70), F(35)}
    assert unequal.raw_mark_1 == 35  # D2 + h2·D1/h1 lies on the edge of the deeper hem


@pytest.mark.parametrize(("hem_1", "hem_2", "angle"), [(80, 10, 150), (10, 80, 150), (100, 50, 120)])
def test_creases_that_do_not_cross_inside_the_corner_are_refused(hem_1, hem_2, angle):
    with pytest.raises(CreasesMiss):
        mitre_marks(F(hem_1), F(hem_2), F(angle), F(0), F(0))
