"""Every hem and seam can be made by hands, shuts in the raw edges that it promises to, and takes up what is said."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.trade.hems import Hems
from calculators.trade.sections.checks import crossings, let_go, open_raw_edges, torn
from calculators.trade.sections.edges import EDGES, FIRST_ROW, HEM_ROW, LOWER, PIECE, UPPER, EdgeMeasures
from calculators.trade.sections.levels import levels
from calculators.trade.sections.section import CrossSection

MM = st.integers(1, 4_000).map(lambda tenths: Fraction(tenths, 10))
USUAL = EdgeMeasures(turn=Fraction(10), hem=Fraction(20), edge_stitch=Fraction(2), allowance=Fraction(10))


@st.composite
def measures(draw: st.DrawFn) -> EdgeMeasures:
    turn = draw(MM) + 3
    edge_stitch = 1 + draw(st.integers(0, 100)) * (turn - 2) / 100
    return EdgeMeasures(turn, turn + draw(st.integers(0, 4_000)) / Fraction(10), edge_stitch, draw(MM) + 10)


@pytest.mark.parametrize("name", EDGES)
@given(with_=measures())
@settings(max_examples=60, deadline=None)
def test_every_step_can_be_made_and_the_finished_edge_keeps_its_promises(name: str, with_: EdgeMeasures):
    edge = EDGES[name]
    steps = edge.steps(with_)
    for step in steps:
        assert list(crossings(step.section)) == [] == torn(step.section)
        assert all(template.format(**step.lengths) for template in (step.do, step.how, step.why) if template)
    done = steps[-1].section
    assert done.most_layers() == edge.layers
    assert set(open_raw_edges(done)) == set(done.strips) - set(edge.raw)
    assert let_go(done) == []
    found = levels(done)
    for cell in done.cells():
        heights = [found[run][cell] for run in done.over(cell)]
        assert heights == sorted(set(heights)), "each lies above what is below it"


@pytest.mark.parametrize(("name", "turn"), [("double", USUAL.turn), ("equal", USUAL.hem)])
def test_a_hem_takes_up_what_cut_sizes_count_for_it(name: str, turn: Fraction):
    hems = Hems(turn, *[USUAL.hem] * 4)
    assert EDGES[name].takes(EDGES[name].steps(USUAL)[-1].section) == hems.taken_up(USUAL.hem)


@pytest.mark.parametrize("name", ["plain", "felled", "french"])
def test_a_seam_takes_up_its_allowance_at_either_edge(name: str):
    done = EDGES[name].steps(USUAL)[-1].section
    row = done.rows[-1 if name == "french" else 0].name
    assert done.held(row, LOWER) == USUAL.allowance == done.held(row, UPPER)


def test_layers_of_a_french_seam_lie_in_the_order_a_schoolbook_tells():
    """The raw edges are shut in between the two pieces, whose wrong sides are in the ridge (complete-course-1922)."""
    turned = EDGES["french"].steps(USUAL)[1].section
    assert [(run.strip, run.right_up) for run in turned.layers] == [
        (LOWER, True),
        (LOWER, False),
        (UPPER, True),
        (UPPER, False),
    ]


def flat() -> CrossSection:
    return CrossSection().lay(PIECE, Fraction(0), 1, right_up=False)


def test_a_turn_deeper_than_its_hem_is_found_by_its_layers():
    folded = flat().fold(Fraction(25), "left").fold(Fraction(45), "left")
    assert folded.most_layers() > EDGES["double"].layers


def test_a_planted_crossing_is_found():
    folded = flat().fold(Fraction(10), "left")
    over = CrossSection(
        (*folded.layers[:1], *CrossSection().lay("other", Fraction(0), 1, True).layers, *folded.layers[1:])
    )
    assert list(crossings(over))


def test_a_row_that_is_torn_is_found():
    sewn = (
        CrossSection()
        .lay(LOWER, Fraction(0), -1, True)
        .lay(UPPER, Fraction(0), -1, False)
        .stitch(Fraction(-10), FIRST_ROW)
    )
    assert torn(sewn.fold(Fraction(-20), "right", strips=(UPPER,))) == [FIRST_ROW]


def test_a_row_beside_a_raw_edge_is_found():
    assert let_go(flat().fold(Fraction(20), "left").stitch(Fraction(79, 2), HEM_ROW)) == [(HEM_ROW, PIECE)]


def test_a_raw_edge_in_the_open_is_found():
    double = flat().fold(Fraction(10), "left").fold(Fraction(30), "left")
    assert open_raw_edges(double) == [PIECE], "nothing holds the hem down yet"
    assert open_raw_edges(double.stitch(Fraction(48), HEM_ROW)) == []
