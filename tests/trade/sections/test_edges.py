"""Every hem, seam and closing can be made by hands, and keeps what its name promises, whatever its measures."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calculators.trade.hems import Hems
from calculators.trade.sections.checks import HELD, crossings, held_by, let_go, open_raw_edges, struck, torn
from calculators.trade.sections.edge import LOWER, UPPER, EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.trade.sections.levels import levels

TENTHS = st.integers(0, 4_000).map(lambda tenths: Fraction(tenths, 10))
USUAL = EdgeMeasures(turn=Fraction(10), hem=Fraction(20), edge_stitch=Fraction(2), allowance=Fraction(10))
EVEN = replace(USUAL, turn=USUAL.hem)  # the turn as deep as the hem, where most layers lie over one another
HEMS_WITH_A_TURN = [name for name, edge in EDGES.items() if edge.turned]
SEAMED = [name for name, edge in EDGES.items() if edge.seamed]


def fits(name: str, with_: EdgeMeasures) -> bool:
    """Whether an edge can be made with these measures; where it cannot, `edge-steps` asks again or says so."""
    room = EDGES[name].room
    beside_raw_edge = abs(with_.hem - with_.turn - with_.hem / 3) < HELD  # where a headed casing has its second row
    return (room is None or with_.allowance < room(with_)) and not (name == "headed-casing" and beside_raw_edge)


@st.composite
def measures(draw: st.DrawFn) -> EdgeMeasures:
    turn = draw(TENTHS) + 3
    edge_stitch = 1 + draw(st.integers(0, 100)) * (turn - 2) / 100
    return EdgeMeasures(turn, max(turn, 8) + draw(TENTHS), edge_stitch, draw(TENTHS) + 10)


@pytest.mark.parametrize("name", EDGES)
@given(with_=measures())
@settings(max_examples=40, deadline=None)
def test_every_step_can_be_made(name: str, with_: EdgeMeasures):
    edge = EDGES[name]
    assume(fits(name, with_))
    for step in edge.steps(with_):
        section = step.section
        assert list(crossings(section)) == []
        assert torn(section) == []
        assert struck(section) == []
        assert let_go(section) == []
        assert section.most_layers() <= max(edge.layers, 2)
        found = levels(section)
        for cell in section.cells():
            heights = [found[run][cell] for run in section.lying(cell)]
            assert heights == sorted(set(heights)), "each lies above what is below it"
        assert all(template.format(**step.lengths) for template in (step.do, step.how, step.why) if template)


@pytest.mark.parametrize("name", EDGES)
@given(with_=measures())
@settings(max_examples=40, deadline=None)
def test_a_finished_edge_keeps_its_promises(name: str, with_: EdgeMeasures):
    edge = EDGES[name]
    assume(fits(name, with_))
    done = edge.steps(with_)[-1].section
    raw = {end.run.strip for end in done.ends() if not end.neat}
    assert raw == {*edge.raw, *edge.bare}, "the others are neatened"
    assert set(open_raw_edges(done)) == set(edge.bare)
    assert {row.name for row in done.rows} == set(edge.through)
    assert all(held_by(done, row) >= layers for row, layers in edge.through.items())


@pytest.mark.parametrize("name", EDGES)
def test_an_edge_of_usual_measures_has_the_layers_that_are_said(name: str):
    edge = EDGES[name]
    usual, even = (edge.steps(each)[-1].section for each in (USUAL, EVEN))
    assert {row: held_by(usual, row) for row in edge.through} == edge.through
    assert even.most_layers() == edge.layers


@pytest.mark.parametrize("name", EDGES)
def test_raw_edges_are_shut_in_by_the_last_of_its_steps_and_not_before(name: str):
    """So the check sees a difference: an edge that shuts raw edges in has them open at its first step."""
    edge = EDGES[name]
    first = edge.steps(USUAL)[0].section
    if edge.raw and name not in {"lined", "overlap", "buttoned"}:  # these begin with a finished hem
        assert open_raw_edges(first)


@given(with_=measures())
@settings(max_examples=60, deadline=None)
def test_cut_sizes_count_what_the_folded_hem_takes_up(with_: EdgeMeasures):
    def counted(turn: Fraction) -> Fraction:
        return Hems(turn, with_.hem, with_.hem, with_.hem, with_.hem).taken_up(with_.hem)

    def folded(name: str) -> Fraction:
        return EDGES[name].takes(EDGES[name].steps(with_)[-1].section)

    assert {folded(name) for name in HEMS_WITH_A_TURN} == {counted(with_.turn)}
    assert folded("equal") == folded("narrow") == counted(with_.hem)
    assert folded("single") == folded("heading") == counted(Fraction(0))
    assert folded("bound") == 0


@pytest.mark.parametrize("name", SEAMED)
@given(with_=measures())
@settings(max_examples=20, deadline=None)
def test_a_seam_takes_up_its_allowance(name: str, with_: EdgeMeasures):
    edge = EDGES[name]
    assume(fits(name, with_))
    assert edge.takes(edge.steps(with_)[-1].section) == with_.allowance


@pytest.mark.parametrize("name", ["plain", "felled", "french", "piped"])
def test_a_seam_takes_up_as_much_of_either_piece(name: str):
    done = EDGES[name].steps(USUAL)[-1].section
    row = "second row" if name == "french" else "first row"
    assert done.held(row, LOWER) == USUAL.allowance == done.held(row, UPPER)
