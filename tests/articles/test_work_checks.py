"""Each check of the operations finds its planted fault, and finds nothing in good work."""

from dataclasses import replace
from fractions import Fraction

from calculators.trade.articles.operation import Operation, SeamKind
from calculators.trade.articles.work import MakingUp
from tests.articles.work_checks import amiss

PLAIN = SeamKind("plain seam", Fraction(15), 1, "plain")


def cover(turned=Fraction(300), angle=180):
    """A cover with a zip across its back and buttons on the lower part's hem."""
    work = MakingUp()
    front = work.rectangle("front", Fraction(400), Fraction(500))
    upper = work.rectangle("upper", Fraction(400), Fraction(300))
    lower = work.rectangle("lower", Fraction(400), Fraction(200))
    work.zip((upper.bottom, lower.top), kind=PLAIN, length=Fraction(300))
    work.hem(upper.top, turn=Fraction(5), hem=Fraction(20))
    work.buttons(upper.top, 2)
    work.seam(
        (front.bottom, lower.bottom),
        *((front.side(side).between(200, 500), upper.side(side)) for side in ("left", "right")),
        *((front.side(side).between(0, 200), lower.side(side)) for side in ("left", "right")),
        kind=PLAIN, angle=angle,
    )  # fmt: skip
    if turned:
        work.turn_out(turned)
    return work


def test_good_work_has_no_fault():
    assert amiss(cover()) == []


def test_an_opening_that_is_not_the_zip_and_a_cover_that_is_never_turned_are_found():
    for turned in (Fraction(270), None):
        assert amiss(cover(turned)) == ["turned out through another opening than 300 mm"]


def test_buttons_in_a_seam_and_buttons_before_the_hem_are_found():
    work = cover()
    buttons = work.operations[2]
    work.operations[2] = replace(buttons, along=(work.parts[1].left,))
    assert amiss(work) == ["upper left is buttoned and not hemmed"]
    work.operations[1:3] = buttons, work.operations[1]
    assert amiss(work) == ["upper top is buttoned and not hemmed"]


def test_an_operation_that_does_nothing_and_one_with_less_than_nothing_are_found():
    work = cover()
    work.do(Operation("seam", "Join the widths", rows=1))
    assert amiss(work) == ["seam does nothing"]
    work.operations[-1] = Operation("hem", "Turn {turn}", {"turn": Fraction(-1)}, along=(work.parts[0].top,))
    assert amiss(work) == ["hem has less than nothing"]


def test_a_seam_that_lies_otherwise_than_it_is_described_is_found():
    work = cover()
    seam = work.operations[3]
    work.operations[3] = replace(seam, glues=(*seam.glues[:-1], replace(seam.glues[-1], angle=90)))
    assert amiss(work) == ["front and lower are joined at no such angle"]
    work.operations[3] = replace(seam, glues=(*seam.glues[:-1], replace(seam.glues[-1], angle=89)))
    assert amiss(work) == amiss(work, is_bent=True) == ["front and lower are joined at no such angle"]
