"""The cut list, carried out: from the whole cloth, cut by cut, every piece must come free."""

from dataclasses import replace
from fractions import Fraction as F

from hypothesis import given, reject, settings
from hypothesis import strategies as st

from calculators.trade.lay_plan.cutting import cuts, holds_pieces, remnants
from calculators.trade.lay_plan.laid import Rectangle
from calculators.trade.lay_plan.marking import marked
from calculators.trade.lay_plan.order import CannotPlan, Cloth, Flaw, Order, Rules, Wanted
from calculators.trade.lay_plan.planning import plan_order


def carried_out(lay):
    """Every rectangle in hand once all cuts are made; fails when a cut does not run from edge to edge of one in
    hand."""
    in_hand = {Rectangle(F(0), F(0), lay.cloth.width, lay.length)}
    boxes = dict(enumerate((lay.extent(part) for part in lay.strips if holds_pieces(part)), start=1))
    for cut in cuts(lay):
        for number in range(cut.first, cut.last + 1):
            part = cut.part
            if number > cut.first:
                part = replace(
                    part,
                    x=part.x + boxes[number].x - boxes[cut.first].x,
                    y=part.y + boxes[number].y - boxes[cut.first].y,
                )
            assert part in in_hand, (cut, number)
            assert cut.length == (part.width if cut.across else part.length)
            in_hand.remove(part)
            start, end = (part.y, part.end) if cut.across else (part.x, part.right)
            places = [start, *cut.marks, end]
            assert places == sorted(set(places)), "every mark lies within what is cut"
            for low, high in zip(places, places[1:]):
                in_hand.add(
                    replace(part, y=low, length=high - low) if cut.across else replace(part, x=low, width=high - low)
                )
    return in_hand


SIZES = st.integers(8, 60).map(lambda n: F(n * 10))
PIECES = st.lists(
    st.builds(Wanted, st.sampled_from("abc"), SIZES, SIZES, st.none() | st.integers(1, 5), st.booleans()),
    min_size=1,
    max_size=4,
)


@settings(max_examples=80)
@given(
    st.integers(60, 120), st.integers(80, 200), PIECES, st.sampled_from(["across", "along", "either", "free"]),
    st.sampled_from([0, 0, 3]),
    st.lists(st.builds(Flaw, st.integers(0, 700).map(F), st.integers(0, 500).map(F), st.just(F(35)), st.just(F(35))),
        max_size=2),
)  # fmt: skip
def test_every_piece_comes_free_and_remnants_are_what_is_left(width, length, pieces, way, gap, flaws):
    cloth = Cloth("c", F(width * 10), F(length * 10), flaws=tuple(flaws))
    try:
        *_, best = (
            each for each in plan_order(Order((cloth,), tuple(pieces), Rules(strips=way, gap=F(gap))), 10) if each
        )
    except CannotPlan:
        reject()
    (lay,) = best.lays
    in_hand = carried_out(lay)
    assert all(placed.box in in_hand for placed in lay.placed)
    for box in remnants(lay, F(80)):
        assert gap or any(
            box.x >= held.x and box.y >= held.y and box.right <= held.right and box.end <= held.end for held in in_hand
        )
        assert all(
            box.right <= p.box.x or p.box.right <= box.x or box.end <= p.box.y or p.box.end <= box.y for p in lay.placed
        )
        assert min(box.width, box.length) >= 80 and box.right <= lay.cloth.width and box.end <= lay.length


def unnamed_rooms(lay, gap):
    """What lies between two marks of a strip, before a piece and holding none, and is not called waste."""
    for line in marked(lay):
        if line.within or not line.strip:
            continue
        ways = [
            (box.y, box.end) if not line.along else (box.x, box.right)
            for box in (placed.box for placed in lay.placed if placed.strip == line.strip)
        ]
        places = [F(0), *line.marks]
        for low, high in zip(places, places[1:]):
            if (
                high - low > gap
                and any(start >= high for start, _ in ways)
                and not any(start < high and low < end for start, end in ways)
                and (low, high) not in line.waste
            ):
                yield line.strip, low, high


@settings(max_examples=60)
@given(
    st.integers(80, 120), st.integers(100, 200), PIECES,
    st.sampled_from(["across", "along", "either", "sections", "free"]), st.sampled_from([0, 3]),
    st.lists(st.builds(Flaw, st.integers(100, 700).map(F), st.integers(100, 500).map(F), st.just(F(50)),
        st.just(F(50))), min_size=1, max_size=2),
)  # fmt: skip
def test_room_left_before_a_piece_is_named_waste_by_its_marks(width, length, pieces, way, gap, flaws):
    cloth = Cloth("c", F(width * 10), F(length * 10), flaws=tuple(flaws))
    try:
        *_, best = (
            each for each in plan_order(Order((cloth,), tuple(pieces), Rules(strips=way, gap=F(gap))), 10) if each
        )
    except CannotPlan:
        reject()
    assert list(unnamed_rooms(best.lays[0], gap)) == []


def planned(width, length, *pieces, **rules):
    *_, best = (each for each in plan_order(Order((Cloth("c", F(width), F(length)),), pieces, Rules(**rules))) if each)
    return best.lays[0]


def test_strips_cut_alike_stand_in_one_row():
    lay = planned(1250, 2050, Wanted("n", F(400), F(400), None))
    across, along = cuts(lay)
    assert across.marks == (400, 800, 1200, 1600, 2000) and (across.length, across.how_often) == (1250, 5)
    assert along.marks == (400, 800, 1200) and (along.first, along.last, along.how_often) == (1, 5, 15)


def test_a_strip_that_is_one_piece_needs_no_cut_of_its_own():
    lay = planned(600, 1000, Wanted("n", F(600), F(400), 2))
    (only,) = cuts(lay)
    assert only.marks == (400, 800)


def test_a_gap_is_marked_on_both_its_sides():
    lay = planned(806, 400, Wanted("n", F(400), F(400), None), gap=F(6))
    (only,) = cuts(lay)
    assert only.marks == (400, 406) and not only.across


def test_remnants_smaller_than_what_is_kept_are_not_listed():
    lay = planned(1250, 2050, Wanted("n", F(400), F(400), None))
    assert [(box.width, box.length) for box in remnants(lay, F(50))] == [(1250, 50), *[(50, 400)] * 5]
    assert remnants(lay, F(51)) == []
