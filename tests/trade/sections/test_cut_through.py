"""A hem lies alike at the corner and in its own section: same layers, same order, same sides, as deep."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.corners.stack import Stack
from calculators.trade.corners.steps import CornerStep
from calculators.trade.sections.edge import EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.trade.sections.section import CrossSection, Run
from tests.trade.sections.cut_through import cut_through

#: Hem, turn, allowance of a facing.
MEASURES = [(F(20), F(10), F(6)), (F(13), F(13), F(5)), (F(37), F(4), F(31))]
TURNED = ["mitre", "mitre-opened-flat", "folded-mitre", "folded-corner"]
EDGE_OF = {**dict.fromkeys(TURNED, "double"), "faced": "faced", "binding": "bound"}
#: In hems with their turns: where a cut lies beside the corner, and how far in it ends. Round numbers would meet folds.
FAR, INSIDE = F(6513, 1000), F(5107, 1000)

Lying = tuple[tuple[object, ...], ...]


def lying(section: CrossSection) -> Lying:
    """Stretch by stretch: how wide, and what lies there, the lowest first; but for where it lies on the table, and for
    creases where it lies flat."""
    section = from_lowest_ends(section)
    found: list[tuple[F | None, tuple[tuple[str, bool, int, F], ...]]] = []
    for left, right in section.cells():
        layers = section.lying((left, right))
        wide = None if any(run.runs_on for run in layers) and (left, right) == section.cells()[-1] else right - left
        told = tuple((run.strip, run.right_up, run.way, (left - run.zero) * run.way) for run in layers)
        if found and told == tuple((*each[:3], each[3] + found[-1][0] * each[2]) for each in found[-1][1]):
            wider, told = found.pop()
            wide = None if wide is None else wider + wide
        found.append((wide, told))
    return tuple(found)


def from_lowest_ends(section: CrossSection) -> CrossSection:
    """The same section, each strip that has two ends measured from the one in the lower layer, or from the left one."""
    layers = list(section.layers)
    for strip in section.strips:
        near, *others = [end for end in section.ends() if end.run.strip == strip]
        for far in others:
            if (layers.index(far.run), far.at) < (layers.index(near.run), near.at):
                layers = [_from_far_end(run, far.flat) if run.strip == strip else run for run in layers]
    return CrossSection(tuple(layers))


def _from_far_end(run: Run, length: F) -> Run:
    return replace(
        run, low=length - run.high, high=length - run.low, zero=run.zero + run.way * length, way=-run.way
    )  # fmt: skip


def ways_to_lie(edge: str, hem: F, turn: F, seam: F) -> set[Lying]:
    """How the edge lies after any of its steps, seen from above or below, and before the first."""
    sections = [step.section for step in EDGES[edge].steps(EdgeMeasures(turn, hem, F(2), seam))]
    if edge in ("double", "bound"):
        piece = CrossSection().lay("piece", F(0), 1, right_up=edge == "bound")
        sections.append(piece)
    return {lying(each) for section in sections for each in (section, section.turned_over())}


def cuts(step: CornerStep, deep: F = F(30)) -> list[CrossSection]:
    """Through both edges, far from the corner; deep: a hem with its turn [mm]."""
    out, far, inside = -10 * deep, FAR * deep, INSIDE * deep
    return [cut_through(step.stack, (far, out), (far, inside)), cut_through(step.stack, (out, far), (inside, far))]


def strips_apart(section: CrossSection) -> list[CrossSection]:
    """One section of each strip of a cloth that lies in several, as they lie over one another."""
    numbers = sorted({run.strip.split(" ")[-1] for run in section.layers if run.strip[-1].isdigit()})
    if not numbers:
        return [section]
    parts = [[run for run in section.layers if not run.strip[-1].isdigit()]]
    parts += [[run for run in section.layers if run.strip.endswith(number)] for number in numbers]
    return [CrossSection(tuple(replace(run, strip="piece") for run in part)) for part in parts]


@pytest.mark.parametrize("measures", MEASURES, ids=str)
@pytest.mark.parametrize("way", EDGE_OF)
def test_every_step_of_a_corner_has_the_section_of_its_hem(way: str, measures: tuple[F, F, F]):
    hem, turn, seam = measures
    edge = EDGE_OF[way]
    steps = CONSTRUCTIONS[way].steps(Measures(hem, hem, turn=turn, facing_seam=seam))
    expected = ways_to_lie(edge, hem, turn, seam)
    crossed = 0
    for step in steps:
        for section in cuts(step, hem + turn):
            for strip in strips_apart(section) if section.layers else ():
                assert lying(strip) in expected, step.name
                crossed += 1
    assert crossed >= 2 * len(steps)
    done = EDGES[edge].steps(EdgeMeasures(turn, hem, F(2), seam))[-1].section
    finished = {lying(done), lying(done.turned_over())}
    assert {lying(each) for each in cuts(steps[-1], hem + turn)} <= finished


def test_a_single_hem_at_the_corner_has_the_section_of_a_single_hem():
    steps = CONSTRUCTIONS["folded-corner"].steps(Measures(F(20), F(20), turn=F(0)))
    assert {lying(each) for each in cuts(steps[-1])} <= ways_to_lie("single", F(20), F(0), F(6))


def test_a_corner_that_lies_otherwise_is_found():
    steps = CONSTRUCTIONS["folded-corner"].steps(Measures(F(20), F(20), turn=F(10)))
    stack = steps[-1].stack
    swapped = Stack((stack.layers[1], stack.layers[0], *stack.layers[2:]))
    expected = ways_to_lie("double", F(20), F(10), F(6))
    wrong = replace(steps[-1], stack=swapped)
    assert any(lying(each) not in expected for each in cuts(wrong))
    deeper = CONSTRUCTIONS["folded-corner"].steps(Measures(F(21), F(20), turn=F(10)))[-1]
    assert any(lying(each) not in expected for each in cuts(deeper))
