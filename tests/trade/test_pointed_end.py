"""The pointed end of a runner, held to figures worked by hand and to the angles of its own corners."""

from fractions import Fraction as F
from math import acos, degrees, dist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answer, filled
from calculators.catalogue import calculator_named
from calculators.trade.pointed_end import PointedEnd

INCH = F(254, 10)


def inside(before, corner, after) -> float:
    """The angle at a corner between two others, by the law of cosines [°]."""
    a, b, c = dist(before, corner), dist(corner, after), dist(before, after)
    return degrees(acos(max(-1.0, min(1.0, (a * a + b * b - c * c) / (2 * a * b)))))


@pytest.mark.parametrize(
    ("width", "point", "tip", "side", "slant"),
    [
        (16 * INCH, 8 * INCH, 90, 135, 8 * 2**0.5 * 25.4),  # half the width is as long as the point
        (F(60), F(40), 73.7398, 143.1301, 50),  # triangles of 3, 4 and 5; published: asin 0.6 = 36.8699°
        (F(200), F(3**0.5 * 100), 60, 150, 200),  # half of it is half of an equilateral triangle
        (F(3**0.5 * 200), F(100), 120, 120, 200),  # half of a hexagon
    ],
)
def test_angles_worked_by_hand(width, point, tip, side, slant):
    end = PointedEnd(width, point)
    assert (end.tip, end.side, end.slant) == pytest.approx((tip, side, slant), abs=1e-4)


@given(st.integers(20, 3_000), st.integers(5, 3_000))
def test_the_angles_are_those_of_the_end_as_it_is_drawn(width, point):
    end = PointedEnd(F(width), F(point))
    outline = [(0, -width), (0, 0), (width / 2, point), (width, 0), (width, -width)]
    angles = [inside(*outline[at : at + 3]) for at in range(3)]
    assert angles == pytest.approx([end.side, end.tip, end.side], abs=1e-4)
    assert 2 * end.side + end.tip + 180 == pytest.approx(540)


@pytest.mark.parametrize(
    ("width", "point", "says", "keeps_silent"),
    [
        ("16 in", "8 in", "write 135° there", "too"),
        ("40 cm", "50 cm", "lay one hem over the other", "write 158"),
        ("20 cm", "60 cm", "A point under 30° is too sharp", "For the point, write"),
        ("52 cm", "45.0333 cm", "write 150° there", "too"),  # 60.00001° and 149.99999°, shown as 60 and 150
        ("52 cm", "45.034 cm", "write 150° there", "too"),  # 59.9992° and 150.0004°
        ("60 cm", "5 cm", "A point over 150° is too blunt", "For the point, write"),
    ],
)
def test_only_an_angle_that_the_mitre_takes_is_sent_there(width, point, says, keeps_silent):
    calculator, asking = calculator_named("pointed-end"), Asking({"runner_width": width, "point_length": point})
    reply = answer(calculator, asking)
    notes = " ".join(filled(note, calculator, asking.ruler) for note in reply.notes)
    assert says in notes and keeps_silent not in notes
    for angle in (reply.results["tip"], reply.results["side"]):
        if f"write {float(angle):.1f}".removesuffix(".0") in notes:
            assert (
                answer(calculator_named("mitre-marks"), Asking({"angle": f"{float(angle):.1f}"})).results["mark_1"] > 0
            )
