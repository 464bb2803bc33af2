"""What the steps of a corner tell agrees with what their geometry does."""

from itertools import product

import pytest

from calculators.asking.answering import Asking, answer
from calculators.asking.corner_questions import FIELDS, WITHOUT
from calculators.asking.declaration import InvalidInput
from calculators.catalogue import calculator_named
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.corners.corner import Corner
from calculators.trade.corners.edge_stitching import edge_stitched
from calculators.trade.corners.mitre_lines import mitre_lines
from calculators.trade.corners.plane import Line, distance
from calculators.trade.corners.stack import Stack
from calculators.trade.trade_rules import brief, rule

CORNER_STEPS = calculator_named("corner-steps")


@pytest.mark.parametrize(
    ("way", "angle"),
    [case for case in product(CONSTRUCTIONS, (60.0, 75.0, 120.0, 135.0)) if case[0] != "binding" or case[1] >= 90],
)
def test_only_a_square_corner_is_told_to_be_square(way, angle):
    steps = CONSTRUCTIONS[way].steps(Measures(20.0, 20.0, angle, 5.0))
    assert steps and [step.instruction for step in steps if "square" in step.instruction] == []


@pytest.mark.parametrize(("hems", "angle"), product(((20.0, 20.0), (25.0, 20.0)), (90.0, 120.0)))
def test_the_needle_stops_where_the_row_is_as_far_from_the_next_inner_edge(hems, angle):
    """In the mitre seam with equal hems; with unequal ones the distance holds and the seam lies beside it, as the rule
    says."""
    away, corner = 2.0, Corner(*hems, angle, 5.0)
    stitched = edge_stitched(Stack.flat(corner.cloth(200)), corner, *(2 * hem - away for hem in hems))
    (stop,) = set.intersection(
        *({end for thread in seam.threads for end in (thread.start, thread.end)} for seam in stitched.seams)
    )
    for edge, hem in ((1, hems[0]), (2, hems[1])):
        assert abs(_apart(corner.parallel(edge, 2 * hem), stop) - away) < 1e-6
    inner = corner.at(2 * hems[0], 2 * hems[1])
    off_the_seam = _apart(Line.through(mitre_lines(corner).crossing, inner), stop)
    assert (off_the_seam < 1e-6) == (hems[0] == hems[1])
    assert (
        "in the mitre seam" in brief("needle-stop")
        and "Where the hems are unequal, go by that distance" in rule("needle-stop").said
    )


def _apart(line: Line, place) -> float:
    return float(distance(place, line.foot(place)))


@pytest.mark.parametrize("way", CONSTRUCTIONS)
def test_a_blank_that_changes_nothing_says_so(way):
    """Of the measures of edges and corner, those that leave every step, drawing and result as it was are just the ones
    that are named; a blank that is left empty is not named."""
    asked = {"way": way, "hem_1": "3 cm", "hem_2": "3 cm", "turn": "1 cm", "turn_2": "0.9 cm"}
    other = {"hem_1": "3.5 cm", "hem_2": "3.5 cm", "turn": "0.8 cm", "turn_2": "1.1 cm", "angle": "100"}
    plain = _made(asked)
    idle = tuple(name for name, text in other.items() if _made(asked | {name: text}) == plain)
    assert idle == WITHOUT.get(way, ())
    notes = " ".join(
        phrase.filled(Asking({}).ruler, CORNER_STEPS.kinds) for phrase in answer(CORNER_STEPS, Asking(asked)).notes
    )
    assert all(f"“{FIELDS[name].label}”" in notes for name in idle) and ("changes nothing" in notes) == bool(idle)


def _made(asked):
    try:
        steps, _ = answer(CORNER_STEPS, Asking(asked)).drawn_from
    except InvalidInput as error:
        return tuple(error.sentences)
    return [(step.instruction, step.lengths, step.stack) for step in steps]
